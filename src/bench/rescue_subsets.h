#pragma once
// Which few of many numbers are worth trying together, by the slopes alone. For bench/rescue alone.

#include <Eigen/Core>
#include <vector>

namespace tubewright {

/// off + slopes x is what would be left; x between low and high. All in shares of what is allowed, x in nuisances.
struct Slopes {
    Eigen::VectorXd off, low, high;
    Eigen::MatrixXd at;
};

/// The greatest number that is taken together here.
inline constexpr std::size_t most_together = 4;

/// Sets of `count` numbers, the most promising first, at most `most`: those that leave a sum of squares within `allowed`
/// by the size of their changes, then by what they leave those of which the slopes may be that wrong: up to thrice it, and a
/// fiftieth of what there was.
std::vector<std::vector<std::size_t>> likely_sets(const Slopes& slopes, std::size_t count, double allowed, std::size_t most);

}  // namespace tubewright
