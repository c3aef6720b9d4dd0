#include "base/quantity.h"

#include <cmath>

namespace tubewright {

Angle wrapped(Angle angle) {
    if (angle.deg > -180.0 && angle.deg <= 180.0) return {angle.deg + 0.0};  // the library's remainder is slow
    const double turn = std::remainder(angle.deg, 360.0);  // -180 to 180, both ends possible
    return {turn == -180.0 ? 180.0 : turn + 0.0};          // + 0.0 makes a plain zero of -0.0
}

}  // namespace tubewright
