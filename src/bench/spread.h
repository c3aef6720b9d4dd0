#pragma once
// How far the ends of a line made by hand may land from where they belong, and why.

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "bench/hand.h"
#include "bench/order.h"

namespace tubewright {

/// The same for each step of an order.
std::vector<std::optional<std::size_t>> turned_against(const Part& part, const std::vector<Placing>& order);

using Spread = Eigen::Matrix<double, 6, 6>;  ///< covariance: x, y, z in mm, then turns about them in rad

/// Of the ends against the datum: the first bend made, which is fitted to the machine. Frame: origin in the
/// middle of its arc, x along the tube from A to B there, y towards the arc's centre, z = x cross y.
struct EndSpread {
    Spread a, b;
};

/// The spread at both ends to first order: J X J', X the spread of the single errors; `stretch` of the bender.
//   bend i is laid m_i off its mark and over-bent by d_i; a bend takes its tube from the lever side:
//     straight between i and j: + m_j - m_i, and - (1 - stretch) R d for each of the two whose lever side it is
//   bend i's direction in the section is off by e_i = e_j + t_i when turned against neighbour j, else by t_i
EndSpread end_spread(const Part& part, const std::vector<Placing>& order, const Hand& hand, double stretch = 0);

/// The distance that the end's place keeps within 95 times in 100. Exact but for the quadrature (0.2 %).
Length within(const Spread& spread);

}  // namespace tubewright
