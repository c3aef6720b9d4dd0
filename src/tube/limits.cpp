#include "tube/limits.h"

#include <cmath>

#include "base/tolerance.h"

namespace tubewright {

std::optional<int> dash_number(Length od) {
    const double sixteenths = od.inch() * 16;
    const double whole = std::round(sixteenths);
    if (whole < 1 || std::abs(sixteenths - whole) > tolerance::arithmetic * whole) return std::nullopt;
    return static_cast<int>(whole);
}

Length least_flattened(Length od) { return 0.75 * od; }

double outer_strain(Length od, Length radius) { return od / (2 * radius); }

}  // namespace tubewright
