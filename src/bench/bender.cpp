#include "bench/bender.h"

namespace tubewright {

std::size_t usual_mark(const Bender& bender) {
    for (std::size_t i = 0; i < bender.marks.size(); ++i)
        if (bender.marks[i].name == bender.preferred_mark) return i;
    return 0;
}

}  // namespace tubewright
