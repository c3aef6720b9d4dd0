#include "present/card_words.h"

#include <array>

#include "bench/stance.h"

namespace tubewright {
namespace {

using Of = CardGauge::Of;

std::string way_word(const Eigen::Vector3d& way) {
    if (way.x() > 0.5) return "right";
    if (way.x() < -0.5) return "left";
    switch (way_of(way)) {
        case Way::up: return "up";
        case Way::down: return "down";
        case Way::away: return "away";
        case Way::toward: return "toward you";
    }
    return "";
}

/// Where the frame's three axes point in front of the operator; those of the lever have gone with it.
std::array<Eigen::Vector3d, 3> axes_of(Stands stands, const SetUp& set_up, bool swung) {
    if (stands == Stands::bench) return {Eigen::Vector3d::UnitX(), Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ()};
    const Stance stand = stance(set_up);
    if (stands == Stands::lever && swung) return {stand.swing, -stand.axis, stand.normal};
    return {stand.axis, stand.swing, stand.normal};
}

std::string place_word(const Shape& shape, bool second) {
    if (std::holds_alternative<Block>(shape)) return second ? "far corner" : "corner";
    if (std::holds_alternative<Cylinder>(shape)) return second ? "far end" : "end";
    return second ? "into it" : "face";
}

CardWords solid_words(const CardEdit& card, std::size_t which, const SetUp& set_up) {
    const Solid& solid = card.bender.body[*card.solid];
    if (which == radius_of_cylinder) return {"radius", "of the cylinder", solid.name + ": radius", "radius", ""};
    constexpr std::array of_bender{"along the tube", "to the swing", "across"}, of_bench{"to the right", "away", "up"};
    constexpr std::array brief_of_bender{"along", "swing", "across"}, brief_of_bench{"right", "away", "up"};
    const std::size_t way = which % 3;
    const bool bench = solid.stands == Stands::bench;
    const std::string place = place_word(solid.shape, which >= 3), name = bench ? of_bench[way] : of_bender[way];
    const std::string plus = "+ is " + way_word(axes_of(solid.stands, set_up, card.swung)[way]);
    return {name, bench ? place : place + ", " + plus, solid.name + ": " + place + ", " + name, bench ? brief_of_bench[way] : brief_of_bender[way], plus};
}

}  // namespace

CardWords card_words(const CardEdit& card, const CardGauge& gauge, const SetUp& set_up) {
    const auto simple = [](const std::string& name, const std::string& brief) { return CardWords{name, "", name, brief, ""}; };
    switch (gauge.of) {
        case Of::radius: return simple("radius of the form", "radius");
        case Of::max_angle: return simple("furthest angle", "furthest");
        case Of::hook: return simple("straight for the hook", "hook");
        case Of::lever: return simple("straight for the lever", "lever");
        case Of::mark: {
            CardWords words = simple("line " + card.bender.marks[gauge.which].name, "line " + card.bender.marks[gauge.which].name);
            words.plus = "+ is " + way_word(stance(set_up).axis);
            words.detail = words.plus;
            return words;
        }
        case Of::stretch: return {"stretch in a bend", "as a share: 0.02 is 2 in 100", "stretch in a bend, as a share", "stretch", ""};
        case Of::solid: return solid_words(card, gauge.which, set_up);
    }
    return {};
}

std::string shape_word(const Shape& shape) {
    if (std::holds_alternative<Block>(shape)) return "box";
    return std::holds_alternative<Cylinder>(shape) ? "cylinder" : "half-space";
}

std::string stands_words(Stands stands) {
    switch (stands) {
        case Stands::fixed: return "stands still";
        case Stands::lever: return "goes with the lever";
        case Stands::bench: return "on the bench";
    }
    return "";
}

std::string figure_text(const CardFigure& figure, double value, const Tape& tape) {
    switch (figure.measure) {
        case Measure::length: return fine(Length{value}, tape);
        case Measure::angle: return text(Angle{value}, tape);
        case Measure::number: return plain(value);
    }
    return "";
}

}  // namespace tubewright
