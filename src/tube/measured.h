#pragma once
// A route exactly as the person measured it and wrote it down: nothing joined, turned or worked out yet, and
// perhaps not yet to its end. tube/route.h has what is made of it.

#include <array>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/kept_keys.h"
#include "base/result.h"
#include "tube/route.h"

namespace tubewright {

struct MeasuredBend {
    Angle angle;
    std::optional<Angle> rotation = {};  ///< as in Bend; none: not said, which only the first bend may leave so
    std::string note = {};
    KeptKeys kept = {};
    bool operator==(const MeasuredBend&) const = default;
};

/// x, y, z of an end or a corner of the centre line.
using MeasuredPoint = std::array<Length, 3>;

/// forward is +x, left +y, up +z; each of the others is against the one named before it.
enum class MoveWay { forward, back, left, right, up, down };
inline constexpr std::array<MoveWay, 6> all_move_ways{MoveWay::forward, MoveWay::back, MoveWay::left, MoveWay::right, MoveWay::up, MoveWay::down};
MoveWay against(MoveWay way);

/// One straight move: how far along each direction that was named.
struct MeasuredMove {
    std::map<MoveWay, Length> along;
    KeptKeys kept = {};
    bool operator==(const MeasuredMove&) const = default;
};

/// Of the lists only those of its form are filled.
struct MeasuredRoute {
    RouteForm form = RouteForm::legs;
    TapeEdge measured_to = TapeEdge::centre;  ///< for legs
    std::vector<Length> runs;                 ///< legs, or straights; one more than bends when all are there
    std::vector<MeasuredBend> bends;
    std::vector<MeasuredPoint> points;
    std::vector<MeasuredMove> moves;
    KeptKeys kept;
    bool operator==(const MeasuredRoute&) const = default;
};

/// What a list of a measured route holds.
enum class RouteList { runs, bends, points, moves };

// What keeps a measured route from being a route. Entries of lists are counted from 0.
struct CountOutOfRange { RouteList list; std::size_t given, least, most; };
struct RunsAndBendsDisagree { std::size_t runs, bends; };
struct RunOutOfRange { std::size_t run; Length given; };          ///< a leg has to be more than 0, a straight at least 0
struct AngleOutOfRange { std::size_t bend; Angle given; };        ///< of a corner 0 to 180, between straights less than 360
struct RotationMissing { std::size_t bend; };
struct RotationOutOfRange { std::size_t bend; Angle given; };
struct FirstBendTurned { Angle rotation; };                       ///< there is no bend before it to be turned against
struct CoordinateOutOfRange { std::size_t point, axis; Length given; };
struct SamePoint { std::size_t point; };                          ///< as the one before it
struct GoesBothWays { std::size_t move; MoveWay way, against; };
struct MoveOutOfRange { std::size_t move; MoveWay way; Length given; };
struct GoesNowhere { std::size_t move; };
using RouteTrouble = std::variant<CountOutOfRange, RunsAndBendsDisagree, RunOutOfRange, AngleOutOfRange, RotationMissing, RotationOutOfRange,
                                  FirstBendTurned, CoordinateOutOfRange, SamePoint, GoesBothWays, MoveOutOfRange, GoesNowhere>;

/// The only way from what was measured to a route. Points and moves become legs to the centre, as in
/// tube/route.h; moves of equal direction join.
Result<Route, RouteTrouble> route_from(const MeasuredRoute& measured);

/// What the person wrote beside each bend of the route, mostly empty. Points and moves have no notes.
std::vector<std::string> bend_notes(const MeasuredRoute& measured, const Route& route);

}  // namespace tubewright
