#include "bench/fitting.h"

namespace tubewright {

Length stack_length(const Fitting& fitting) {
    Length sum;
    for (const SlideOn& piece : fitting.slide_on) sum += piece.length;
    return sum;
}

}  // namespace tubewright
