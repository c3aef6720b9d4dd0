#pragma once
// Where the end of a line goes: into a port that is there, or into a tee or union with other ends.

#include <compare>
#include <cstddef>

namespace tubewright {

enum class JointKind { union_piece, tee };
constexpr std::size_t ends_held(JointKind kind) { return kind == JointKind::tee ? 3 : 2; }

/// A tee or union of a job, by its number among those of its kind, from 1; several alike where lines are made several times.
struct Joint {
    JointKind kind;
    int number;
    auto operator<=>(const Joint&) const = default;
};

}  // namespace tubewright
