#include "paper/clock_drawing.h"

#include <cmath>
#include <numbers>

namespace tubewright {
namespace {

constexpr Letters rim_letters{12};
constexpr double rim_mm = 11;
constexpr Spot middle_of_clock{clock_width_mm / 2, clock_height_mm / 2};

Spot on_clock(double clock_deg, double out_mm) {
    const double rad = clock_deg * std::numbers::pi / 180;
    return {middle_of_clock.x_mm + out_mm * std::sin(rad), middle_of_clock.y_mm - out_mm * std::cos(rad)};
}

std::vector<Spot> circle(Spot middle, double radius_mm) {
    std::vector<Spot> path;
    for (int deg = 0; deg < 360; deg += 5) {
        const double rad = deg * std::numbers::pi / 180;
        path.push_back({middle.x_mm + radius_mm * std::cos(rad), middle.y_mm + radius_mm * std::sin(rad)});
    }
    return path;
}

void draw_hand(const ClockHand& hand, PrintBlock& block) {
    const Spot tip = on_clock(hand.clock_deg, rim_mm - 2.2);
    switch (hand.kind) {
        case ClockHand::Kind::leg:
            block.drawn.push_back(Stroked{{middle_of_clock, tip}, 2.6});
            return;
        case ClockHand::Kind::top_line:
            block.drawn.push_back(Stroked{{middle_of_clock, tip}, 0.7});
            block.drawn.push_back(Filled{circle(tip, 1.7), Tint::white});
            block.drawn.push_back(Stroked{circle(tip, 1.7), 0.7, Tint::black, true});
            return;
        case ClockHand::Kind::swing:
            block.drawn.push_back(Stroked{{middle_of_clock, on_clock(hand.clock_deg, rim_mm)}, 0.6, Tint::grey, false, {1.5, 1}});
            return;
        case ClockHand::Kind::wrong:
            block.drawn.push_back(Stroked{{middle_of_clock, tip}, 0.5, Tint::red});
            block.drawn.push_back(Stroked{{{tip.x_mm - 1.8, tip.y_mm - 1.8}, {tip.x_mm + 1.8, tip.y_mm + 1.8}}, 0.9, Tint::red});
            block.drawn.push_back(Stroked{{{tip.x_mm - 1.8, tip.y_mm + 1.8}, {tip.x_mm + 1.8, tip.y_mm - 1.8}}, 0.9, Tint::red});
            return;
    }
}

void draw_rim_word(double clock_deg, const std::string& word, const Lettering& lettering, PrintBlock& block) {
    const double width = lettering.width_mm(word, rim_letters), tall = 0.73 * mm_of_pt(rim_letters.pt);
    const double rad = clock_deg * std::numbers::pi / 180;
    // The word's own box stands clear of the rim on its side.
    const Spot at = on_clock(clock_deg, rim_mm + 1.5);
    const double x = at.x_mm + (std::sin(rad) - 1) * width / 2, y = at.y_mm + tall / 2 - std::cos(rad) * tall / 2;
    block.drawn.push_back(Lettered{{x, y}, word, rim_letters});
}

}  // namespace

PrintBlock clock_block(const ClockView& clock, const Lettering& lettering) {
    PrintBlock block{clock_height_mm};
    block.drawn.push_back(Stroked{circle(middle_of_clock, rim_mm), 0.4, Tint::black, true});
    // The leg lies under the others, so that a thin hand on it is still seen.
    for (const ClockHand& hand : clock.hands) draw_hand(hand, block);
    block.drawn.push_back(Filled{circle(middle_of_clock, 1), Tint::black});
    for (const auto& [clock_deg, word] : clock.rim) draw_rim_word(clock_deg, word, lettering, block);
    return block;
}

}  // namespace tubewright
