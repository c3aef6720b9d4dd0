#pragma once
// Where the ends of the open job's lines go: which of them share a tee or a union.

#include "state/state.h"

namespace tubewright {

/// One end of one of the open job's lines.
struct EndOfSheet {
    std::size_t line;  ///< of state.sheets
    End end;
    bool operator==(const EndOfSheet&) const = default;
};
const LineEnd& line_end(const State& state, const EndOfSheet& of);
EndOfLine key_of(const State& state, const EndOfSheet& of);
/// Nothing where the job has no such line.
std::optional<EndOfSheet> end_by_key(const State& state, const EndOfLine& key);
std::vector<EndOfSheet> all_ends(const State& state);

/// Only an end with a nut goes into a tee or union.
bool takes_a_joint(const LineEnd& end);
/// None where the end goes into a port that is there.
std::optional<Joint> joint_of(const Work& work, const EndOfLine& key, const LineEnd& end);
std::optional<Joint> joint_of(const State& state, const EndOfSheet& of);
/// Those of the open job that an end goes into, in order.
std::vector<Joint> joints_in_use(const State& state);
std::vector<EndOfSheet> ends_in(const State& state, const Joint& joint);
/// Each piece of each line takes a place. Lines that are made several times have several joints alike: as many as the line with the
/// most pieces has, if need be.
struct JointPlaces {
    std::size_t taken, there;
};
JointPlaces places_of(const State& state, const Joint& joint);
/// One more, under the first number that was never told of any line of this job: a line that is out of sight may come back.
Joint new_joint(const State& state, JointKind kind);

/// Why an end can't go into a tee or union. `other_end`: its line's other end is there, and a line does not run into itself.
enum class JointBar { none, no_nut, other_end, full };
JointBar bar_to_joint(const State& state, const EndOfSheet& of, const Joint& joint);
/// Whether its ends have different flares: a flare seals on the seat that is made for it alone.
bool is_of_two_flares(const State& state, const Joint& joint);

}  // namespace tubewright
