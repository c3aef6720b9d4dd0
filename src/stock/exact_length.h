#pragma once
// A length of tube as it is counted: whole micrometres, so that sums are exact and a rack balances to the last of them.

#include <cmath>
#include <compare>
#include <cstdint>

#include "base/quantity.h"

namespace tubewright {

/// An inch is 25,400 of them, exactly; 1/64 in is 396.875 and counts as 397, once, when it is written down.
struct ExactLength {
    std::int64_t um = 0;
    constexpr auto operator<=>(const ExactLength&) const = default;
};

constexpr ExactLength operator+(ExactLength a, ExactLength b) { return {a.um + b.um}; }
constexpr ExactLength operator-(ExactLength a, ExactLength b) { return {a.um - b.um}; }
constexpr ExactLength operator*(std::int64_t count, ExactLength a) { return {count * a.um}; }
constexpr ExactLength& operator+=(ExactLength& a, ExactLength b) { a.um += b.um; return a; }
constexpr ExactLength& operator-=(ExactLength& a, ExactLength b) { a.um -= b.um; return a; }

/// The one place where a measured length is rounded to be counted. It has to be finite and below 1000 km. A half goes up, also one
/// that lost its last bit on the way: 3/16 in is 4762.5, and neither 0.1875 in nor 4.7625 mm may make another tube of it.
inline ExactLength exact(Length length) { return {std::llround(length.mm * 1000 + 1e-6)}; }
constexpr Length measured(ExactLength length) { return {static_cast<double>(length.um) / 1000}; }

/// In hundredths of whatever the shop pays in.
struct Money {
    std::int64_t cents = 0;
    constexpr auto operator<=>(const Money&) const = default;
};
constexpr Money operator+(Money a, Money b) { return {a.cents + b.cents}; }
constexpr Money& operator+=(Money& a, Money b) { a.cents += b.cents; return a; }
constexpr Money operator*(std::int64_t count, Money a) { return {count * a.cents}; }

/// So much for so much tube: what is true of a stick stays true of each offcut of it.
struct Price {
    Money money;
    ExactLength per;  ///< nothing: the price is not known, and the tube counts as free
    bool operator==(const Price&) const = default;
};

/// Rounded to the nearest cent. The product stays below 2^63 for any price below 100,000 and any length below 900 m.
constexpr Money cost(const Price& price, ExactLength length) {
    if (price.per.um <= 0) return {};
    return {(price.money.cents * length.um + price.per.um / 2) / price.per.um};
}

}  // namespace tubewright
