#include "state/card_figures.h"

#include <algorithm>

#include "bench/card_limits.h"
#include "state/rules.h"

namespace tubewright {
namespace {

/// One number of a solid, where it stands in the card, and what it may be.
struct Spot {
    CardFigure figure;
    double* value;
};

void add_place(std::vector<Spot>& spots, Eigen::Vector3d& place, const std::string& what, Stands stands, bool direction = false) {
    const char* const of_bender[] = {"along the tube", "to the swing", "across"};
    const char* const of_bench[] = {"to the right", "away", "up"};
    for (int i = 0; i < 3; ++i) {
        const std::string way = stands == Stands::bench ? of_bench[i] : of_bender[i];
        CardFigure figure{"", what + ", " + way, direction ? Measure::number : Measure::length, place[i], -card_limits::body_reach, card_limits::body_reach};
        spots.push_back({figure, &place[i]});
    }
}

std::vector<Spot> spots_of(Solid& solid) {
    std::vector<Spot> spots;
    if (auto* box = std::get_if<Block>(&solid.shape)) {
        add_place(spots, box->from, "corner", solid.stands);
        add_place(spots, box->to, "far corner", solid.stands);
    } else if (auto* round = std::get_if<Cylinder>(&solid.shape)) {
        spots.push_back({{"", "radius", Measure::length, round->radius.mm, 0, card_limits::body_reach, true}, &round->radius.mm});
        add_place(spots, round->from, "end", solid.stands);
        add_place(spots, round->to, "far end", solid.stands);
    } else if (auto* space = std::get_if<HalfSpace>(&solid.shape)) {
        add_place(spots, space->at, "face", solid.stands);
        add_place(spots, space->into, "into it", solid.stands, true);
    }
    return spots;
}

std::vector<Spot> all_spots(Bender& bender) {
    const double od = bender.tube_od.mm;
    std::vector<Spot> spots{
        {{"radius", "radius of the form", Measure::length, bender.radius.mm, card_limits::least_radius * od, card_limits::most_radius * od, true}, &bender.radius.mm},
        {{"max-angle", "furthest angle", Measure::angle, bender.max_angle.deg, 0, card_limits::most_angle, true}, &bender.max_angle.deg},
        {{"hook", "straight for the hook", Measure::length, bender.hook_straight.mm, 0, card_limits::reach}, &bender.hook_straight.mm},
        {{"lever", "straight for the lever", Measure::length, bender.lever_straight.mm, 0, card_limits::reach}, &bender.lever_straight.mm}};
    for (std::size_t i = 0; i < bender.marks.size(); ++i) {
        Length& offset = bender.marks[i].offset;
        spots.push_back({{"mark-" + std::to_string(i), "line " + bender.marks[i].name, Measure::length, offset.mm, -card_limits::reach, card_limits::reach}, &offset.mm});
    }
    for (std::size_t i = 0; i < bender.body.size(); ++i) {
        std::size_t number = 0;
        for (Spot& spot : spots_of(bender.body[i])) {
            spot.figure.id = "solid-" + std::to_string(i) + "-" + std::to_string(number++);
            spots.push_back(spot);
        }
    }
    return spots;
}

std::vector<CardFigure> figures_with(Bender bender, const std::string& begins, bool those) {
    std::vector<CardFigure> figures;
    for (const Spot& spot : all_spots(bender))
        if ((spot.figure.id.rfind(begins, 0) == 0) == those) figures.push_back(spot.figure);
    return figures;
}

FigureBar bar_of(const Shape& shape) {
    if (const auto* box = std::get_if<Block>(&shape)) return (box->to - box->from).cwiseAbs().minCoeff() <= 0 ? FigureBar::flat : FigureBar::none;
    if (const auto* round = std::get_if<Cylinder>(&shape)) return round->from == round->to ? FigureBar::no_length : FigureBar::none;
    const auto* space = std::get_if<HalfSpace>(&shape);
    return space && space->into.norm() <= 0 ? FigureBar::nowhere : FigureBar::none;
}

}  // namespace

std::vector<CardFigure> card_figures(const Bender& bender) { return figures_with(bender, "solid-", false); }

std::vector<CardFigure> solid_figures(const Bender& bender, std::size_t solid) { return figures_with(bender, "solid-" + std::to_string(solid) + "-", true); }

std::optional<CardFigure> card_figure(const Bender& bender, const std::string& id) {
    Bender copy = bender;
    for (const Spot& spot : all_spots(copy))
        if (spot.figure.id == id) return spot.figure;
    return std::nullopt;
}

Bender with_figure(Bender bender, const std::string& id, double value) {
    for (const Spot& spot : all_spots(bender))
        if (spot.figure.id == id) *spot.value = value;
    return bender;
}

std::optional<double> typed_figure(const State& state, const CardFigure& figure) {
    const std::string& typed = state.looks.typed;
    const bool minus = !typed.empty() && typed.front() == '-';
    const auto number = typed_number(minus ? typed.substr(1) : typed);
    if (!number) return std::nullopt;
    const double scale = figure.measure == Measure::length && reader_unit(state) == Unit::inch ? 25.4 : 1.0;
    return (minus ? -*number : *number) * scale + 0.0;  // + 0.0: no "-0"
}

FigureBar figure_bar(const State& state) {
    if (!state.card) return FigureBar::nothing_typed;
    const Bender& bender = state.card->bender;
    const auto figure = card_figure(bender, state.card->figure);
    const auto value = figure ? typed_figure(state, *figure) : std::nullopt;
    if (!value) return FigureBar::nothing_typed;
    if (*value < figure->least || (figure->above && *value <= figure->least)) return FigureBar::too_small;
    if (*value > figure->most) return FigureBar::too_large;
    for (const Solid& solid : with_figure(bender, figure->id, *value).body)
        if (const FigureBar bar = bar_of(solid.shape); bar != FigureBar::none) return bar;
    return FigureBar::none;
}

}  // namespace tubewright
