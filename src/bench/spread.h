#pragma once
// How far the ends of a line made by hand may land from where they belong, and why.

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "bench/order.h"

namespace tubewright {

/// One hand's own spread: standard deviations of what it does at each bend, independent of one another.
/// Our estimates until a shop's own bends are logged: a protractor is read to half a degree, a tube is
/// turned by eye to about two degrees against a made bend (tolerance::same_direction) and less well
/// against an ink line, and a mark is scribed, and laid on its line, to about half a millimetre.
struct Hand {
    Angle angle_sd{0.5};   ///< of a bend
    Angle turn_sd{1.0};    ///< of a bend's plane, turned against a made neighbour
    Angle float_sd{2.0};   ///< of a bend's plane, turned against the index line only
    Length mark_sd{0.5};   ///< of a bend's place along the straight tube
    bool operator==(const Hand&) const = default;
};

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
