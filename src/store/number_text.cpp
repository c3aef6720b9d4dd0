#include "store/number_text.h"

#include <charconv>
#include <cmath>
#include <limits>

namespace tubewright {
namespace {

std::string digits_of(double value, int digits) {
    char text[40];
    return {text, std::to_chars(text, text + sizeof text, value, std::chars_format::general, digits).ptr};
}

double as_read(const std::string& text) {
    double value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

}  // namespace

std::string typed(double value) {
    if (value == 0) return "0";
    // Whole thousands as people write them, and not as 1e+03.
    const bool plain = std::abs(value) >= 1e-5 && std::abs(value) < 1e9;
    char text[64];
    const auto end = plain ? std::to_chars(text, text + sizeof text, value, std::chars_format::fixed).ptr : std::to_chars(text, text + sizeof text, value).ptr;
    return {text, end};
}

std::string typed(Angle angle) { return typed(angle.deg); }

std::string typed(Length length, Unit unit) {
    const double scale = mm_in(unit), nearest = length.mm / scale;
    if (unit == Unit::mm || !std::isfinite(nearest)) return typed(nearest);
    constexpr int most_digits = std::numeric_limits<double>::max_digits10;
    for (const double reached : {length.mm, nearest * scale})
        for (int digits = 1; digits <= most_digits; ++digits)
            if (const double value = as_read(digits_of(nearest, digits)); value * scale == reached) return typed(value);
    return typed(nearest);
}

}  // namespace tubewright
