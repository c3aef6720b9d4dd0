#include "paper/flow.h"

#include <algorithm>
#include <utility>

namespace tubewright {
namespace {

Spot moved(Spot spot, Spot by) { return {spot.x_mm + by.x_mm, spot.y_mm + by.y_mm}; }

struct Move {
    Spot by;
    void operator()(Lettered& it) const { it.start = moved(it.start, by); }
    void operator()(Stroked& it) const { move_all(it.path); }
    void operator()(Filled& it) const { move_all(it.path); }
    void move_all(std::vector<Spot>& path) const {
        for (Spot& spot : path) spot = moved(spot, by);
    }
};

void draw(std::vector<Drawn>& onto, const PrintBlock& block, Spot at) {
    for (Drawn drawn : block.drawn) {
        std::visit(Move{at}, drawn);
        onto.push_back(std::move(drawn));
    }
}

}  // namespace

PrintBlock paragraph(const Lettering& lettering, const std::string& text, double width_mm, Letters letters, Tint tint) {
    PrintBlock block;
    for (const std::string& line : lettering.lines(text, width_mm, letters)) {
        block.drawn.push_back(Lettered{{0, block.height_mm + rise_mm(letters)}, line, letters, tint});
        block.height_mm += line_mm(letters);
    }
    return block;
}

PrintBlock gap(double height_mm) { return {height_mm}; }

void put(PrintBlock& onto, const PrintBlock& what, Spot at) { draw(onto.drawn, what, at); }

void append(PrintBlock& onto, const PrintBlock& what, double gap_mm) {
    put(onto, what, {0, onto.height_mm + gap_mm});
    onto.height_mm += gap_mm + what.height_mm;
}

Flow::Flow(PageSize size, bool on_its_side, std::string foot, PrintBlock head, PrintBlock tail)
    : on_its_side_(on_its_side), foot_(std::move(foot)), head_(std::move(head)), tail_(std::move(tail)) {
    const Extent extent = extent_of(size, on_its_side);
    width_ = extent.width_mm - 2 * margin_mm;
    top_ = margin_mm + head_.height_mm;
    bottom_ = extent.height_mm - margin_mm - tail_.height_mm;
    begin_page();
}

void Flow::begin_page() {
    pages_.push_back({on_its_side_, foot_});
    draw(pages_.back().drawn, head_, {margin_mm, margin_mm});
    draw(pages_.back().drawn, tail_, {margin_mm, bottom_});
    at_ = top_;
}

void Flow::add_text(const Lettering& lettering, const std::string& text, Letters letters, double gap_before_mm) {
    constexpr std::size_t stay_together = 8;
    const std::vector<std::string> lines = lettering.lines(text, width_, letters);
    if (lines.size() <= stay_together) return add(paragraph(lettering, text, width_, letters), gap_before_mm);
    for (std::size_t i = 0; i < lines.size(); ++i) add(paragraph(lettering, lines[i], width_, letters), i == 0 ? gap_before_mm : 0);
}

void Flow::add(const PrintBlock& block, double gap_before_mm) {
    if (at_ > top_ && at_ + gap_before_mm + block.height_mm > bottom_) begin_page();
    if (at_ > top_) at_ += gap_before_mm;
    draw(pages_.back().drawn, block, {margin_mm, at_});
    at_ += block.height_mm;
}

std::vector<PrintedPage> Flow::pages() && { return std::move(pages_); }

}  // namespace tubewright
