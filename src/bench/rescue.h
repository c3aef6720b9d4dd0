#pragma once
// A tube with a bend that came out a little off, and what to change in the bends still to come so that its ends fit.

#include <optional>
#include <string>
#include <vector>

#include "bench/as_made.h"
#include "bench/laid_over.h"

namespace tubewright {

/// Every choice of the rescue, in this one place. All are ours; no source.
struct RescueLimits {
    EndTolerance ends;
    double aim = 0.5;                ///< share of it that is aimed for: the bends still to come will not be perfect either
    Angle most_angle{20};            ///< that a bend still to come is changed by
    Angle most_turn{45};
    Length most_mark{2 * 25.4};
    Length most_cut_off{2 * 25.4};   ///< more than planned
    Angle least_bend{5};             ///< what a changed bend still turns
    Angle angle_nuisance{1};         ///< changes that are thought equally small: they are added up in these
    Angle turn_nuisance{2};
    Length mark_nuisance{25.4 / 16};
    Length cut_nuisance{25.4 / 8};
    Angle angle_step{0.5};           ///< as finely as a change is said
    Angle turn_step{0.5};
    Length length_step{25.4 / 64};
    std::size_t ways = 3;
    bool operator==(const RescueLimits&) const = default;
};

/// `sheet` is the one that the tube was inked by, with the order of work that it follows.
struct RescueQuestion {
    Sheet sheet;
    std::optional<Part> wanted;                ///< where that is another than the sheet's: of a tube that was saved before
    std::size_t steps_done = 0;
    AsMade made;                               ///< of those steps
    bool a_finished = false, b_finished = false;  ///< that end is cut and flared already
    bool on_bender = true;                     ///< the last bend can still be pulled on
    RescueLimits limits;
};

/// A number on the sheet that the person can still change: a bend's angle, the place of its mark, its turn, or what is cut
/// off an end.
enum class RescueNumber { angle, mark, turn, cut_off };

/// `bend` from 0, `end` of what is cut off. A mark moves towards B, where it is more than 0. A turn is right-handed about A to B.
struct RescueChange {
    RescueNumber number = RescueNumber::angle;
    std::size_t bend = 0;
    End end = End::A;
    Angle angle;    ///< by how much: of angles and turns
    Length length;  ///< of marks and what is cut off
    bool operator==(const RescueChange&) const = default;
};

struct RescueWay {
    std::optional<std::size_t> pull_again;  ///< this bend is pulled on to its target first
    std::vector<RescueChange> changes;      ///< none: go on as planned
    TubePlan plan;                          ///< the whole tube then, the made bends as they are
    EndsOff off;                            ///< what is still off then
    EndsOff doubt;                          ///< standard deviations that not knowing the made bends better leaves
    double nuisance = 0;                    ///< all changes, in those of RescueLimits
};

/// What stands in the way of a tube that can't be saved.
enum class RescueBar {
    nothing_left,  ///< no bend is still to come and no end can be cut back
    out_of_reach,  ///< the numbers that are left would have to change more than RescueLimits allows, or can't bring it back at all
    bender_angle,  ///< a bend would have to go further than the bender
    straight,      ///< bender, fitting or neighbouring bends would lack straight tube
    length,        ///< the tube is too short at an end
    in_the_way     ///< it would fit, but the tube would hit the bender or itself on the way there, or no mark can be inked
};

struct Rescue {
    EndsOff as_it_is;               ///< gone on with as planned
    bool fits = false;              ///< that is within the tolerance: nothing has to be changed
    std::vector<RescueWay> ways;    ///< at most RescueLimits::ways, the best first; pulled again first where that is possible
    // Where there is none:
    std::optional<RescueBar> bar;
    std::optional<std::size_t> bar_bend;  ///< whose limit it is
    std::optional<End> bar_end;
    EndsOff nearest;                ///< what the best change of all numbers would leave
    Length lacking;                 ///< straight tube or length that is missing to save it, where that bars
};

/// The question with the aim for its tolerance.
RescueQuestion aimed_at(RescueQuestion question);

/// Whether the steps to come can be made to this plan in the sheet's order, as far as they can now: nothing new speaks against
/// them, and neither bender nor tube is in the way.
bool can_be_made(const RescueQuestion& question, const TubePlan& plan);

/// Ways within the aim, and where there is none within the tolerance. Fewest changes first, then the smallest. Each way has been laid out anew: it keeps the straights that bender, fittings and
/// neighbours need, the bender's angle and the length of the tube, can be inked, and is free of bender and tube in the
/// sheet's order. The changes are as fine as they are said.
Rescue rescue(const RescueQuestion& question);

}  // namespace tubewright
