#pragma once
// The best order of bends there is: every bend's place in the order and which end is on the hook.

#include <cstdint>
#include <functional>
#include <variant>

#include "bench/order_weights.h"
#include "bench/springback.h"

namespace tubewright {

/// What the person wants kept, and what can't be otherwise any more.
struct OrderWish {
    std::vector<std::size_t> opening;  ///< these bends first, in this order: one is a pinned start, all are an order by hand
    std::optional<End> hook = {};      ///< always hold this end
    /// Of a tube that is cut: the bends that are made, as they were made. Whatever order is found begins so, and of these
    /// nothing is asked: they are there. `opening` comes after them. None: nothing is cut yet.
    std::optional<std::vector<Placing>> begun = {};
    bool operator==(const OrderWish&) const = default;
};

struct OrderQuestion {
    Layout layout;
    Bender bender;
    Springback springback;
    SetUp set_up;  ///< carried for whoever asks about the geometry; the search itself does not look at it
    OrderWeights weights;
    Hand hand;
    OrderWish wish;
    Length pieces_a, pieces_b;  ///< loose pieces slid on at each end: hook and follower need the straight beside them
};

/// Whether the bend can be loaded, swung and taken off with these bends made (bit i for bend i of the part).
/// Asked as late and as seldom as possible, and at most once for each pair. Straights and the angle are
/// looked at by the search itself.
using CanBend = std::function<bool(std::uint64_t made, const Placing& placing)>;

/// Told now and then how much is done, from 0 to 1, never falling; false stops the search.
using Progress = std::function<bool(double share)>;

struct ShortStraight { bool hook_side; Length has, needed; bool operator==(const ShortStraight&) const = default; };
struct BeyondAngle { Angle set, limit; bool operator==(const BeyondAngle&) const = default; };
struct NoPlaceForInk { bool operator==(const NoPlaceForInk&) const = default; };  ///< every mark of the bender falls on bent tube
struct InTheWay { bool operator==(const InTheWay&) const = default; };  ///< CanBend said no: ask the geometry what
struct AgainstWish { bool operator==(const AgainstWish&) const = default; };
using WhyNot = std::variant<ShortStraight, BeyondAngle, NoPlaceForInk, InTheWay, AgainstWish>;

/// One bend that can't be made that way with these made.
struct Blocked {
    std::uint64_t made;
    Placing placing;
    WhyNot why;
    bool operator==(const Blocked&) const = default;
};

struct OrderFound {
    std::vector<Placing> order;
    OrderCost cost;
    bool proven;  ///< that no order costs less; of equal ones always the same is found
};
struct NoOrder {
    std::vector<Placing> furthest;  ///< the most bends that were found to be possible one after the other
    std::vector<Blocked> blocked;   ///< after these: what stops each bend left, on either hook
    bool proven;                    ///< that there is none
};
struct Cancelled {};
using OrderAnswer = std::variant<OrderFound, NoOrder, Cancelled>;

/// Lines with more bends than this are searched by keeping the best few hundred beginnings: not proven.
inline constexpr std::size_t most_bends_proven = 18;

OrderAnswer best_order(const OrderQuestion& question, const CanBend& can_bend, const Progress& progress = {});
/// How many sets of made bends may still be looked at. It is what bounds a look for ways out, whatever the machine: a set
/// is asked about with each bend and each hook.
struct Patience {
    std::size_t sets;
};
/// Whether there is any order at all, the best or not: much sooner told. Nothing where it was stopped, or where `patience` ran out
/// before it was known; what was looked at is taken off it. Without patience, of lines too long to be proven true only
/// where one was found.
std::optional<bool> order_exists(const OrderQuestion& question, const CanBend& can_bend, const Progress& progress = {}, Patience* patience = nullptr);

/// What the bender itself says: nothing where straights and angle suffice.
std::optional<WhyNot> bender_stops(const OrderQuestion& question, std::uint64_t made, const Placing& placing);
/// The same and the geometry; the wish is not looked at.
std::optional<Blocked> blocked(const OrderQuestion& question, const CanBend& can_bend, std::uint64_t made, const Placing& placing);

}  // namespace tubewright
