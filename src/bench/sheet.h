#pragma once
// The bend sheet: everything a person reads to make one line, in the order of work.

#include <optional>
#include <vector>

#include "bench/finding.h"
#include "bench/hand.h"
#include "bench/layout.h"
#include "bench/line.h"
#include "bench/order.h"
#include "bench/springback.h"

namespace tubewright {

/// The bend that this one is turned against, see turned_against(), and the roll of the leg that leads away beyond it.
struct MadeNeighbour {
    std::size_t bend;
    Angle leg_roll;
    bool operator==(const MadeNeighbour&) const = default;
};

struct Step {
    std::size_t bend;  ///< from 0
    End hook;
    End mark_from;
    Length mark;       ///< on the straight tube, from mark_from
    std::size_t align_to;  ///< which of the bender's marks
    Angle index_roll;  ///< of the index line, -180 < x <= 180
    std::optional<MadeNeighbour> neighbour;
    Angle target, set;
    Length taken;      ///< straight tube that the bend takes
    Length finished_radius;
    Room room;
    Length formed, left;  ///< running tally after this step; they add up to the cut length
};

/// What is chosen at the bench rather than in the job.
struct SheetChoice {
    std::optional<std::string> mark;    ///< name of the reference mark to use; else the bender's usual one
    std::optional<SetUp> set_up;        ///< how the bender stands; else as on its card
    std::optional<End> hook;            ///< always hold this end; else as the order says
    End mark_from = End::A;             ///< which end the tape is hooked on
    std::vector<Placing> order;         ///< the order of work; default_order() where it isn't the line's bends, each once
    std::optional<Springback> springback;  ///< what the shop's own bends say of bender and tube; else the physics
    /// Growth that lengths are laid out with, where it isn't the springback's own: a tube that is cut and inked keeps
    /// its marks whatever is learned of later, and only the pull follows.
    std::optional<double> laid_growth;
    Hand hand = {};                     ///< who bends it
    bool operator==(const SheetChoice&) const = default;
};

struct Sheet {
    Line line;
    SetUp set_up;
    Springback springback;         ///< for the pulls
    Hand hand;                     ///< whose orders and ends are reckoned
    std::optional<Layout> layout;  ///< none where a corner is too sharp to lay out
    std::vector<Step> steps;       ///< in the order of work
    std::vector<Finding> findings; ///< stops first
};

/// The whole computation for one line.
Sheet bend_sheet(const Line& line, const SheetChoice& choice = {});

/// Whether that mark's ink would lie on tube that is still straight when the step comes, the bend's own
/// stretch counted in: then it can be seen and put on the bender's line.
bool can_be_inked(const Room& room, Length taken, const ReferenceMark& mark);
bool can_be_inked(const Step& step, const Bender& bender, std::size_t mark);

/// Where the step's ink mark lies from end A of the straight tube.
Length mark_from_a(const Step& step, Length cut_length);

/// Whether a finding forbids making the line as it stands.
bool stopped(const Sheet& sheet);

/// The tube's formed length once the first `steps_done` steps are made: every bend made, and every straight
/// (with waste at the ends) whose bends are all made.
Length formed_length(const Sheet& sheet, std::size_t steps_done);

}  // namespace tubewright
