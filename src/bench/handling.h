#pragma once
// The tube as it is handled at the bender: whether it can be laid in, swept and taken out again, with
// these bends already made.

#include <cstdint>
#include <memory>
#include <optional>

#include "bench/bender.h"
#include "bench/layout.h"
#include "bench/line.h"
#include "bench/order.h"
#include "bench/springback.h"

namespace tubewright {

/// What is in the tube's way. Stretches count as in tube/clearance: 2k is straight k, 2k + 1 the bend that
/// follows it, both from 0; a bend that is not made yet is a straight stretch there.
struct Obstacle {
    enum class When { laid_in, swept, taken_out };
    When when = When::laid_in;
    std::optional<std::size_t> solid;  ///< place in the bender's body, or:
    std::optional<std::size_t> other;  ///< another stretch of the tube
    std::size_t stretch = 0;           ///< of the tube, that hits it
    Angle lever;    ///< where the lever is when they first come within tolerance::handling_room
    /// How far they run into each other, surface to surface, were the tube moved on regardless: the most over
    /// the rest of the motion. Where a thing is thinner than that, no more than its half and the tube's radius.
    /// 0 where they only come too close.
    Length depth;
    bool operator==(const Obstacle&) const = default;
};

/// The same for a line whose ends' fittings say which pieces are slid on.
Length straight_needed(const Line& line, const Placing& placing, bool hook_side, bool runs_to_end);

/// Made once for a line on a bender, then asked for many sets of made bends: what it has found out about one
/// side of a bend, or two sides together, it keeps. Not to be asked from two threads at once.
///
/// The tube is laid in with its made bends on the finished radius, the others straight. Its hook side lies
/// still; its lever side rolls off on to the form, of the bender's radius, until the lever is at the set angle.
/// Where the card says that the bender holds the tube - hook_straight before the start, the arc, and
/// lever_straight past its end - its own fixed and lever solids are not looked at; the bench is. Nor are the
/// fixed ones for a straight hook side, nor the lever's for a straight lever side: any bender lets them be laid in.
class Handling {
public:
    Handling(const Layout& layout, Length od, const Bender& bender, const SetUp& set_up, const Springback& springback);
    Handling(Handling&&) noexcept;
    ~Handling();

    /// Whether nothing is in the way. Bit i of `made` stands for bend i; at most 64 bends, the one in hand
    /// not among the made. Quick.
    bool is_free(std::uint64_t made, const Placing& placing);

    /// What is in the way first, and how far; worked out anew for each set that is not free.
    std::optional<Obstacle> obstacle(std::uint64_t made, const Placing& placing);

private:
    struct Works;
    std::unique_ptr<Works> works_;
};

}  // namespace tubewright
