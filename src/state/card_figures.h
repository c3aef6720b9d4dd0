#pragma once
// The numbers of a bender card that its owner may measure, and what each may be.

#include <optional>
#include <string>
#include <vector>

#include "bench/card_gauge.h"
#include "state/state.h"

namespace tubewright {

/// Lengths in mm, angles in degrees; a direction's three numbers have no unit.
enum class Measure { length, angle, number };
struct CardFigure {
    std::string id;              ///< "radius", "mark-2"; "solid-0-3" for number 3 of solid 0
    CardGauge gauge;
    Measure measure = Measure::length;
    double value = 0, least = 0, most = 0;
    bool above = false;          ///< more than `least`, not that itself
    bool operator==(const CardFigure&) const = default;
};

/// Of the bender itself; then those of one solid of its body.
std::vector<CardFigure> card_figures(const Bender& bender);
std::vector<CardFigure> solid_figures(const Bender& bender, std::size_t solid);
std::optional<CardFigure> card_figure(const Bender& bender, const std::string& id);

/// The card with this number in place of the one it has.
Bender with_figure(Bender bender, const std::string& id, double value);

/// Why what was typed can't be taken. `flat`: opposite corners of a box lie level; `no_length`: the two ends
/// of a cylinder are one place; `nowhere`: a direction of no length.
enum class FigureBar { none, nothing_typed, too_small, too_large, flat, no_length, nowhere };
FigureBar figure_bar(const State& state);
/// What was typed, in the figure's own measure.
std::optional<double> typed_figure(const State& state, const CardFigure& figure);

}  // namespace tubewright
