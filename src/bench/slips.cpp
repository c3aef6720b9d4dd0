#include "bench/slips.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace tubewright {
namespace {

/// How often each happens, for each place where it can, in a thousand lines. Common practice, no source: what is told
/// most is a bend turned the wrong way; a slip at the tape or the keys is next. They decide between slips that the
/// readings can't tell apart, and how much readings have to say before an entry is doubted.
constexpr double weight_of(SlipKind kind) {
    switch (kind) {
        case SlipKind::bend_other_way: return 8;
        case SlipKind::rest_other_way: return 8;
        case SlipKind::turn_mirrored: return 8;
        case SlipKind::turn_alone: return 4;
        case SlipKind::quarter_turn: return 0.5;
        case SlipKind::complement: return 5;
        case SlipKind::supplement: return 5;
        case SlipKind::bends_swapped: return 2;
        case SlipKind::legs_swapped: return 5;
        case SlipKind::move_reversed: return 12;
        case SlipKind::moves_swapped: return 5;
        case SlipKind::wrong_edge: return 15;  // once for the line, for each of the other two edges
        case SlipKind::length: return 0.8;     // times the weights of digit_slips, which come to about 12
        case SlipKind::mirrored: return 20;    // once for the line
        case SlipKind::ends_swapped: return 10;
    }
    return 0;
}

/// Rotations nearer than this to 0 or 180 have no other sign, angles nearer than this to each other no complement.
constexpr Angle as_good_as_same{3};

class Collector {
public:
    Collector(const Wire& wire, Unit unit) : wire_(wire), unit_(unit) {}

    std::vector<Slip> all() && {
        if (route().form == RouteForm::moves || route().form == RouteForm::points) add_moves();
        else add_bends();
        for (std::size_t i = 0; i < route().runs.size(); ++i) add_lengths(i);
        add_whole_line();
        return std::move(slips_);
    }

private:
    const Route& route() const { return wire_.route; }

    Slip& add(SlipKind kind) {
        slips_.push_back({kind, std::nullopt, std::nullopt, std::nullopt, route(), weight_of(kind)});
        return slips_.back();
    }
    Slip& at_bend(SlipKind kind, std::size_t bend) {
        Slip& slip = add(kind);
        slip.bend = bend;
        return slip;
    }

    /// The next bend that bends, against which a turn of this one is undone.
    std::optional<std::size_t> next_real(std::size_t bend) const {
        for (std::size_t i = bend + 1; i < route().bends.size(); ++i)
            if (route().bends[i].angle >= tolerance::no_bend) return i;
        return std::nullopt;
    }
    bool is_first(std::size_t bend) const {
        for (std::size_t i = 0; i < bend; ++i)
            if (route().bends[i].angle >= tolerance::no_bend) return false;
        return true;
    }

    /// The bend's plane turned by `more`, those past it with it or left as they lay.
    void turn(SlipKind kind, std::size_t bend, Angle more, bool alone) {
        if (alone && !next_real(bend)) return;  // nothing past it: the same as turning the rest
        Slip& slip = at_bend(kind, bend);
        if (!is_first(bend)) slip.meant.bends[bend].rotation = wrapped(route().bends[bend].rotation + more);
        if (!alone) return;
        Angle& next = slip.meant.bends[*next_real(bend)].rotation;
        next = wrapped(next - more);
    }

    void add_turns(std::size_t bend) {
        turn(SlipKind::bend_other_way, bend, Angle{180}, true);
        if (is_first(bend)) return;
        turn(SlipKind::rest_other_way, bend, Angle{180}, false);
        const Angle rotation = route().bends[bend].rotation;
        if (std::abs(std::sin(rotation.rad())) > std::sin(as_good_as_same.rad())) {
            turn(SlipKind::turn_mirrored, bend, -2 * rotation, false);
            turn(SlipKind::turn_alone, bend, -2 * rotation, true);
        }
        for (const double quarter : {90.0, -90.0}) turn(SlipKind::quarter_turn, bend, Angle{quarter}, false);
    }

    void set_angle(SlipKind kind, std::size_t bend, Angle meant) {
        constexpr Angle least{5};
        const Angle typed = route().bends[bend].angle;
        const bool corner = route().form != RouteForm::straights;
        if (meant < least || std::abs((meant - typed).deg) < as_good_as_same.deg || (corner && meant > tolerance::sharpest_corner)) return;
        at_bend(kind, bend).meant.bends[bend].angle = meant;
    }
    void add_angles(std::size_t bend) {
        const Angle typed = route().bends[bend].angle;
        set_angle(SlipKind::complement, bend, Angle{90} - typed);
        set_angle(SlipKind::supplement, bend, Angle{180} - typed);
    }

    void add_bends() {
        for (std::size_t i = 0; i < route().bends.size(); ++i) {
            if (route().bends[i].angle < tolerance::no_bend) continue;
            add_turns(i);
            add_angles(i);
        }
        add_swaps();
    }

    /// The route along these moves, unless one of its corners is too sharp to be a route's.
    void add_moved(SlipKind kind, std::size_t leg, const std::vector<Eigen::Vector3d>& moves) {
        std::vector<Eigen::Vector3d> points{Eigen::Vector3d::Zero()};
        for (const Eigen::Vector3d& move : moves) points.push_back(points.back() + move);
        Route meant = route_through(points, route().form);
        for (const Bend& bend : meant.bends)
            if (bend.angle > tolerance::sharpest_corner) return;
        Slip& slip = add(kind);
        slip.leg = leg;
        slip.meant = std::move(meant);
    }
    void add_moves() {
        const WireShape shape = shape_of(wire_, TapeEdge::centre);
        std::vector<Eigen::Vector3d> moves;
        for (std::size_t i = 0; i < route().runs.size(); ++i) moves.push_back(route().runs[i].mm * shape.along[i]);
        for (std::size_t i = 0; i < moves.size(); ++i) {
            std::vector<Eigen::Vector3d> other = moves;
            other[i] = -other[i];
            add_moved(SlipKind::move_reversed, i, other);
            if (i + 1 == moves.size()) break;
            other = moves;
            std::swap(other[i], other[i + 1]);
            add_moved(SlipKind::moves_swapped, i, other);
        }
    }

    void add_swaps() {
        for (std::size_t i = 0; i + 1 < route().runs.size(); ++i) {
            Slip& slip = add(SlipKind::legs_swapped);
            slip.leg = i;
            std::swap(slip.meant.runs[i], slip.meant.runs[i + 1]);
        }
        for (std::size_t i = 0; i + 1 < route().bends.size(); ++i)
            if (std::abs((route().bends[i].angle - route().bends[i + 1].angle).deg) > as_good_as_same.deg) {
                Slip& slip = at_bend(SlipKind::bends_swapped, i);
                std::swap(slip.meant.bends[i].angle, slip.meant.bends[i + 1].angle);
            }
    }

    void add_lengths(std::size_t leg) {
        for (const MeantLength& meant : meant_lengths(route().runs[leg], unit_)) {
            Slip& slip = add(SlipKind::length);
            slip.leg = leg;
            slip.digits = meant.slip;
            slip.weight *= meant.weight;
            slip.meant.runs[leg] = meant.length;
        }
    }

    void add_whole_line() {
        if (route().form == RouteForm::legs)
            for (const TapeEdge edge : {TapeEdge::centre, TapeEdge::outside, TapeEdge::inside})
                if (edge != route().measured_to) add(SlipKind::wrong_edge).meant.measured_to = edge;
        Slip& mirrored = add(SlipKind::mirrored);
        for (Bend& bend : mirrored.meant.bends) bend.rotation = wrapped(-bend.rotation);
        // Seen from the other end a screw keeps its hand: rotations stay and move to the bend on the other side.
        Slip& turned = add(SlipKind::ends_swapped);
        std::reverse(turned.meant.runs.begin(), turned.meant.runs.end());
        const std::size_t count = route().bends.size();
        for (std::size_t i = 0; i < count; ++i) turned.meant.bends[i] = {route().bends[count - 1 - i].angle, {}};
        for (std::size_t i = 0; i < count; ++i)
            if (const auto next = next_real(i); next && route().bends[i].angle >= tolerance::no_bend)
                turned.meant.bends[count - 1 - i].rotation = route().bends[*next].rotation;
    }

    const Wire& wire_;
    Unit unit_;
    std::vector<Slip> slips_;
};

}  // namespace

std::vector<Slip> plausible_slips(const Wire& wire, Unit unit) { return Collector(wire, unit).all(); }

}  // namespace tubewright
