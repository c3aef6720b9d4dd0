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

void add_place(std::vector<Spot>& spots, Eigen::Vector3d& place, Measure measure = Measure::length) {
    for (int i = 0; i < 3; ++i) spots.push_back({{"", {}, measure, place[i], -card_limits::body_reach, card_limits::body_reach}, &place[i]});
}

/// In the order of CardGauge.
std::vector<Spot> spots_of(Solid& solid) {
    std::vector<Spot> spots;
    if (auto* box = std::get_if<Block>(&solid.shape)) {
        add_place(spots, box->from);
        add_place(spots, box->to);
    } else if (auto* round = std::get_if<Cylinder>(&solid.shape)) {
        add_place(spots, round->from);
        add_place(spots, round->to);
        spots.push_back({{"", {}, Measure::length, round->radius.mm, 0, card_limits::body_reach, true}, &round->radius.mm});
    } else if (auto* space = std::get_if<HalfSpace>(&solid.shape)) {
        add_place(spots, space->at);
        add_place(spots, space->into, Measure::number);
    }
    return spots;
}

std::vector<Spot> all_spots(Bender& bender) {
    using Of = CardGauge::Of;
    const double od = bender.tube_od.mm;
    std::vector<Spot> spots{
        {{"radius", {Of::radius}, Measure::length, bender.radius.mm, card_limits::least_radius * od, card_limits::most_radius * od, true}, &bender.radius.mm},
        {{"max-angle", {Of::max_angle}, Measure::angle, bender.max_angle.deg, 0, card_limits::most_angle, true}, &bender.max_angle.deg},
        {{"hook", {Of::hook}, Measure::length, bender.hook_straight.mm, 0, card_limits::reach}, &bender.hook_straight.mm},
        {{"lever", {Of::lever}, Measure::length, bender.lever_straight.mm, 0, card_limits::reach}, &bender.lever_straight.mm}};
    for (std::size_t i = 0; i < bender.marks.size(); ++i) {
        Length& offset = bender.marks[i].offset;
        spots.push_back({{"mark-" + std::to_string(i), {Of::mark, i}, Measure::length, offset.mm, -card_limits::reach, card_limits::reach}, &offset.mm});
    }
    spots.push_back({{"stretch", {Of::stretch}, Measure::number, bender.stretch, card_limits::least_stretch, card_limits::most_stretch}, &bender.stretch});
    for (std::size_t i = 0; i < bender.body.size(); ++i) {
        std::size_t number = 0;
        for (Spot& spot : spots_of(bender.body[i])) {
            spot.figure.gauge = {Of::solid, number};
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
