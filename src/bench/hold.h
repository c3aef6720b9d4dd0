#pragma once
// One bend in hand with one end on the hook: how its two sides move, and what a piece of them hits. For
// bench/handling alone.

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <unordered_map>
#include <vector>

#include "bench/handling.h"
#include "bench/sweep.h"
#include "bench/tube_side.h"

namespace tubewright {

/// What stays the same for all bends of a line at one bender. Lengths in mm.
struct Surroundings {
    Layout layout;
    Springback springback;
    double tube_radius, form_radius, hook_straight, lever_straight, share_stretched;
    double apart_along;  ///< places nearer than this along the tube can't have turned back to each other
    std::vector<PlacedSolid> solids;
    std::array<std::vector<std::size_t>, 3> standing;  ///< which solids, by Stands
    double extent = 0;                                 ///< of the furthest solid
};

/// A contact, with all that is needed to say how far it goes.
struct Hit {
    Obstacle::When when;
    std::optional<std::size_t> solid;
    std::optional<TubePiece> still;
    bool still_on_hook_side = false;
    TubePiece piece;
    bool on_hook_side;
    Motion motion;
    double t;
    double lever;  ///< radians
};

/// Says whether to look no further.
using OnHit = std::function<bool(const Hit&)>;

/// Along how many ways the tube may come and go: straight, over its whole length, from the side of the normal,
/// from outside, from below, and between.
inline constexpr std::size_t way_count = 5;

/// Everything about one bend in hand with one end on the hook.
class Hold {
public:
    /// `around` has to outlive it.
    Hold(const Surroundings& around, const Placing& placing);

    /// Each says whether it was stopped. An element of the hook side against everything but the lever side;
    bool hook_hits(const Element& element, const OnHit& on_hit) const;
    /// one of the lever side, over the swing and while the lever goes back;
    bool lever_hits(const Element& element, const OnHit& on_hit) const;
    /// one of the lever side, over the swing, against one of the hook side;
    bool pair_hits(const Element& lever_element, const Element& hook_element, const OnHit& on_hit) const;
    /// and one of either that is laid in or taken out on one of the ways.
    bool way_hits(const Element& element, bool hook_side, bool out, std::size_t way, const OnHit& on_hit) const;

    TubeSide hook, lever;
    std::unordered_map<std::uint64_t, std::uint8_t> pairs;  ///< what is known of two sides together

    const Placing& placing() const { return placing_; }

private:
    using OnContact = std::function<bool(std::size_t, const TubePiece&, double)>;
    bool hits(const Element& element, Stands stands, const Motion& motion, const OnContact& on_contact) const;
    bool arc_hits(const Element& element, const OnHit& on_hit) const;
    Element released(const Element& element, double beyond_end) const;

    const Surroundings* around_;
    Placing placing_;
    double set_, target_;  ///< angles, in radians
    double taken_;         ///< straight tube that the bend takes
    Motion sweep_;         ///< of the lever side
    Motion slide_;         ///< of the lever side as seen from the lever
    Motion pass_;          ///< of the hook side as seen from the lever
    Motion back_;          ///< of the released lever side as seen from the lever that goes back
    std::vector<TubePiece> arc_;  ///< of the bend in hand on the form
};

}  // namespace tubewright
