#pragma once
// Wires as they really are, the person who measures and enters them, and the tape. Written apart from the program's own
// account of slips and of noise: slips happen to what was typed, errors are triangular and rounded to the tape.

#include <Eigen/Geometry>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "bench/proof.h"

namespace wire_world {

struct Settings {
    double tape_sd_inch = 1.0 / 16;  ///< of every reading of the tape; triangular, then rounded to 1/16 in or 1 mm
    double angle_bound_deg = 2;      ///< a bend is within this of what is entered; triangular
    double rotation_bound_deg = 3;
    bool even_legs = false;          ///< legs as likely long as short; else short ones are commoner (log-uniform)
};

/// A wire and what a careful person would enter for it.
struct World {
    std::vector<double> legs_inch, angles_deg, rotations_deg;  ///< as it really is, to the centre
    double od_inch;
    tubewright::ProofEntry right;
};

World random_world(std::mt19937& dice, const Settings& settings);

/// Ends and corners, in inches, the corners on this edge.
std::vector<Eigen::Vector3d> touched(const std::vector<double>& legs, const std::vector<double>& angles, const std::vector<double>& rotations, double od, tubewright::TapeEdge edge);
std::vector<Eigen::Vector3d> touched(const World& world);
std::vector<Eigen::Vector3d> touched(const tubewright::Route& route, double od_inch, tubewright::TapeEdge edge);

/// What the tape reads between two touched points of the wire.
tubewright::TapeReading taped(const World& world, tubewright::Span span, std::mt19937& dice, const Settings& settings);

/// The true answer.
tubewright::HandAnswer seen(const World& world, const tubewright::HandQuestion& question);

/// The right entry with one slip in it.
struct Slipped {
    std::string kind;
    tubewright::Route entered;
};

/// By chance; none where the kind drawn has no place in this line.
std::optional<Slipped> slip(const World& world, std::mt19937& dice);

/// How far two entries differ: the most that a distance between two touched points does, in inches; and whether they
/// are of opposite hand.
struct Difference {
    double most_inch;
    bool other_hand;
};
Difference difference(const tubewright::Route& one, const tubewright::Route& other, const World& world);

/// How far an honest entry leaves a wire like this from what was entered, 19 times in 20: the same most_inch, over errors
/// drawn for 60 wires of the same entry.
double honest_inch(const World& world, std::mt19937& dice, const Settings& settings);

/// Points that differ by no more than this are the same.
inline constexpr double same_inch = 0.25;

/// What counts as a slip: the entry differs from the right one by more than same_inch and more than an honest entry does
/// (honest_inch), or is of the other hand. Less is no slip: tube bent by it fits no worse than tube from honest measuring.
bool counts(const World& world, const tubewright::Route& entered, std::mt19937& dice, const Settings& settings);

/// The answer, and up to three readings, each asked for after those before.
tubewright::Taken taken(const World& world, const tubewright::ProofEntry& entry, std::mt19937& dice, const Settings& settings);

/// Whether the slip named first makes the right entry's shape again, to same_inch.
bool names_it(const tubewright::Proof& proof, const World& world);

}  // namespace wire_world
