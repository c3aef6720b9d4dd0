#pragma once
// Lengths and angles: the two quantities a bench knows. A bare double has no unit, so a Length
// can't be added to an Angle.

#include <compare>
#include <numbers>

namespace tubewright {

/// A distance along, or across, the tube. Held in millimetres.
struct Length {
    double mm = 0.0;
    constexpr double inch() const { return mm / 25.4; }  // exact by definition of the inch
    constexpr auto operator<=>(const Length&) const = default;
};

/// A bend, a turn or a reading of the protractor. Held in degrees, so that 90 is still exactly 90
/// after it has been saved and loaded.
struct Angle {
    double deg = 0.0;
    constexpr double rad() const { return deg * std::numbers::pi / 180.0; }
    constexpr auto operator<=>(const Angle&) const = default;
};

constexpr Length operator+(Length a, Length b) { return {a.mm + b.mm}; }
constexpr Length operator-(Length a, Length b) { return {a.mm - b.mm}; }
constexpr Length operator-(Length a) { return {-a.mm}; }
constexpr Length operator*(double factor, Length a) { return {factor * a.mm}; }
constexpr Length operator/(Length a, double divisor) { return {a.mm / divisor}; }
constexpr double operator/(Length a, Length b) { return a.mm / b.mm; }
constexpr Length& operator+=(Length& a, Length b) { a.mm += b.mm; return a; }
constexpr Length& operator-=(Length& a, Length b) { a.mm -= b.mm; return a; }

constexpr Angle operator+(Angle a, Angle b) { return {a.deg + b.deg}; }
constexpr Angle operator-(Angle a, Angle b) { return {a.deg - b.deg}; }
constexpr Angle operator-(Angle a) { return {-a.deg}; }
constexpr Angle operator*(double factor, Angle a) { return {factor * a.deg}; }
constexpr Angle& operator+=(Angle& a, Angle b) { a.deg += b.deg; return a; }

/// How much tube an arc of this radius uses.
constexpr Length arc_length(Length radius, Angle angle) { return {radius.mm * angle.rad()}; }

/// The same direction, given in -180 < x <= 180.
Angle wrapped(Angle angle);

namespace literals {
constexpr Length operator""_mm(long double value) { return {static_cast<double>(value)}; }
constexpr Length operator""_mm(unsigned long long value) { return {static_cast<double>(value)}; }
constexpr Length operator""_in(long double value) { return {static_cast<double>(value) * 25.4}; }
constexpr Length operator""_in(unsigned long long value) { return {static_cast<double>(value) * 25.4}; }
constexpr Angle operator""_deg(long double value) { return {static_cast<double>(value)}; }
constexpr Angle operator""_deg(unsigned long long value) { return {static_cast<double>(value)}; }
}  // namespace literals

}  // namespace tubewright
