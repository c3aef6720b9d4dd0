#include "base/quantity.h"

#include <cmath>

namespace tubewright {

Angle wrapped(Angle angle) {
    const double turn = std::remainder(angle.deg, 360.0);  // -180 to 180, both ends possible
    return {turn == -180.0 ? 180.0 : turn + 0.0};          // + 0.0 makes a plain zero of -0.0
}

}  // namespace tubewright
