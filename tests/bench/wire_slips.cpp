// The slips of wire_world: what a hand at a keypad does to an entry.
#include <algorithm>
#include <cmath>
#include <functional>

#include "bench/wire_world.h"

using namespace tubewright;

namespace wire_world {
namespace {

int any(std::mt19937& dice, std::size_t count) { return std::uniform_int_distribution<int>(0, static_cast<int>(count) - 1)(dice); }
std::size_t place(std::mt19937& dice, std::size_t count) { return static_cast<std::size_t>(any(dice, count)); }

using Maybe = std::optional<Slipped>;

Angle plus(Angle a, double deg) { return wrapped({a.deg + deg}); }

/// A length as typed: the whole number's digits, and sixteenths of an inch or nothing.
struct Typed {
    std::string digits;
    int sixteenths = 0;
};

Typed typed(Length length, Unit unit) {
    if (unit == Unit::mm) return {std::to_string(std::lround(length.mm)), 0};
    const long all = std::lround(length.inch() * 16);
    return {std::to_string(all / 16), static_cast<int>(all % 16)};
}

Length taken_for(const Typed& typed, Unit unit) {
    const double value = typed.digits.empty() ? 0 : std::stod(typed.digits);
    return {unit == Unit::mm ? value : (value + typed.sixteenths / 16.0) * 25.4};
}

/// Beside or above and below each other on a keypad of 1 2 3 / 4 5 6 / 7 8 9 / 0.
const std::string neighbours[]{"8", "24", "135", "26", "157", "2468", "359", "48", "5790", "68"};

std::optional<std::string> with_slipped_digits(std::mt19937& dice, std::string digits, const std::string& kind) {
    const std::size_t at = place(dice, digits.size());
    if (kind == "digits transposed") {
        if (digits.size() < 2) return std::nullopt;
        std::swap(digits[std::min(at, digits.size() - 2)], digits[std::min(at, digits.size() - 2) + 1]);
    } else if (kind == "neighbouring key") {
        const std::string& near = neighbours[digits[at] - '0'];
        digits[at] = near[place(dice, near.size())];
    } else if (any(dice, 2)) digits.erase(at, 1);
    else digits.insert(at, 1, digits[at]);
    return digits;
}

Maybe length_slip(std::mt19937& dice, const World& world, const std::string& kind) {
    Slipped slipped{kind, world.right.wire.route};
    Length& run = slipped.entered.runs[place(dice, slipped.entered.runs.size())];
    const Unit unit = world.right.unit;
    Typed text = typed(run, unit);
    if (kind == "whole inch off") run.mm += (any(dice, 2) ? 1 : -1) * (unit == Unit::mm ? 10 : 25.4);
    else if (kind == "tenfold") {
        if (unit == Unit::inch) return std::nullopt;
        run.mm *= any(dice, 2) ? 10 : 0.1;
    } else if (kind == "another fraction") {
        if (unit == Unit::mm) return std::nullopt;
        const int usual[]{0, 4, 8, 12, 2, 6, 10, 14};
        text.sixteenths = usual[any(dice, 3) ? any(dice, 4) : any(dice, 8)];
        run = taken_for(text, unit);
    } else {
        const auto digits = with_slipped_digits(dice, text.digits, kind);
        if (!digits) return std::nullopt;
        text.digits = *digits;
        run = taken_for(text, unit);
    }
    // No keypad takes a leg of nothing, and nobody leaves one of ten feet standing.
    if (run.mm < 6 || run.mm > 120 * 25.4) return std::nullopt;
    return slipped;
}

/// As it was taken for when looked at the other way round.
Maybe turn_slip(std::mt19937& dice, const World& world, const std::string& kind) {
    Slipped slipped{kind, world.right.wire.route};
    std::vector<Bend>& bends = slipped.entered.bends;
    const std::size_t bend = place(dice, bends.size());
    const double r = bends[bend].rotation.deg;
    if (kind == "one bend the other way") {
        // The person sees later bends where they are; only this one is told the wrong way.
        if (bend > 0) bends[bend].rotation = plus(bends[bend].rotation, 180);
        if (bend + 1 < bends.size()) bends[bend + 1].rotation = plus(bends[bend + 1].rotation, 180);
        if (bend == 0 && bends.size() == 1) return std::nullopt;
    } else if (bend == 0) return std::nullopt;
    else if (kind == "half a turn from there on") bends[bend].rotation = plus(bends[bend].rotation, 180);
    else {
        bends[bend].rotation = plus({-r}, 0);
        if (kind == "sign of one turn, rest kept" && bend + 1 < bends.size()) bends[bend + 1].rotation = plus(bends[bend + 1].rotation, 2 * r);
    }
    return slipped;
}

Maybe angle_slip(std::mt19937& dice, const World& world, const std::string& kind) {
    Slipped slipped{kind, world.right.wire.route};
    std::vector<Bend>& bends = slipped.entered.bends;
    const std::size_t bend = place(dice, bends.size());
    if (kind == "two angles swapped") {
        if (bend + 1 == bends.size()) return std::nullopt;
        std::swap(bends[bend].angle, bends[bend + 1].angle);
    } else {
        const double angle = (kind == "complement" ? 90 : 180) - bends[bend].angle.deg;
        if (angle < 10 || angle > 165) return std::nullopt;
        bends[bend].angle = {angle};
    }
    return slipped;
}

Maybe whole_slip(std::mt19937& dice, const World& world, const std::string& kind) {
    Slipped slipped{kind, world.right.wire.route};
    Route& route = slipped.entered;
    if (kind == "mirrored") {
        for (Bend& bend : route.bends) bend.rotation = plus({-bend.rotation.deg}, 0);
    } else if (kind == "two legs swapped") {
        const std::size_t leg = place(dice, route.runs.size() - 1);
        std::swap(route.runs[leg], route.runs[leg + 1]);
    } else if (kind == "another edge") {
        const TapeEdge edges[]{TapeEdge::centre, TapeEdge::outside, TapeEdge::inside};
        route.measured_to = edges[any(dice, 3)];
    } else {
        std::reverse(route.runs.begin(), route.runs.end());
        const std::vector<Bend> bends = route.bends;
        for (std::size_t i = 0; i < bends.size(); ++i) {
            const std::size_t there = bends.size() - 1 - i;
            route.bends[there].angle = bends[i].angle;
            route.bends[there].rotation = i + 1 < bends.size() ? bends[i + 1].rotation : Angle{};
        }
    }
    return slipped;
}

}  // namespace

std::optional<Slipped> slip(const World& world, std::mt19937& dice) {
    using Function = Maybe (*)(std::mt19937&, const World&, const std::string&);
    struct Kind {
        const char* name;
        double share;  ///< in a hundred; our estimate
        Function happens;
    };
    const Kind kinds[]{{"one bend the other way", 9, turn_slip}, {"half a turn from there on", 9, turn_slip}, {"sign of one turn", 6, turn_slip},
                       {"sign of one turn, rest kept", 3, turn_slip}, {"complement", 5, angle_slip}, {"supplement", 6, angle_slip}, {"two angles swapped", 3, angle_slip},
                       {"two legs swapped", 8, whole_slip}, {"another edge", 9, whole_slip}, {"mirrored", 7, whole_slip}, {"ends swapped", 5, whole_slip},
                       {"whole inch off", 8, length_slip}, {"another fraction", 7, length_slip}, {"digits transposed", 5, length_slip}, {"neighbouring key", 5, length_slip},
                       {"digit lost or doubled", 3, length_slip}, {"tenfold", 2, length_slip}};
    std::vector<double> shares;
    for (const Kind& kind : kinds) shares.push_back(kind.share);
    const Kind& kind = kinds[static_cast<std::size_t>(std::discrete_distribution<int>(shares.begin(), shares.end())(dice))];
    return kind.happens(dice, world, kind.name);
}

}  // namespace wire_world
