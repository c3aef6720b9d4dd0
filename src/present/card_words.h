#pragma once
// Inside present: the numbers and solids of a bender card in words.

#include <string>

#include "present/text.h"
#include "state/card_figures.h"

namespace tubewright {

struct CardWords {
    std::string name, detail;  ///< on its row: "along the tube"; "far corner, + is right"
    std::string asks;          ///< over the keypad: "lever arm: far corner, along the tube"
    std::string brief;         ///< beside its arrow: "along"
    std::string plus;          ///< which way it grows: "+ is right"; empty where it has no sign
};
/// Right and left, away and toward, up and down are the operator's. Of the card's own numbers, or of those of its solid in hand.
CardWords card_words(const CardEdit& card, const CardGauge& gauge, const SetUp& set_up);

std::string shape_word(const Shape& shape);
std::string stands_words(Stands stands);

/// To the thousandth of an inch or the hundredth of a millimetre: finer than a rule, as a caliper says it.
std::string figure_text(const CardFigure& figure, double value, const Tape& tape);

}  // namespace tubewright
