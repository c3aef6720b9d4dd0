#pragma once
// Blocks of print, one under the other, over as many pages as they take.

#include <string>
#include <vector>

#include "paper/lettering.h"
#include "paper/page.h"

namespace tubewright {

/// What belongs together, drawn from its own upper left corner.
struct PrintBlock {
    double height_mm = 0;
    std::vector<Drawn> drawn = {};
};

/// Letters of body text, and how far apart the base lines are: 14 points are 22 minutes of arc at half a metre
/// (capitals 0.73 of the size: the font's own figures), read with the sheet in hand.
inline constexpr Letters body{14}, body_bold{14, true};
inline constexpr double leading = 1.28;
constexpr double line_mm(Letters letters) { return mm_of_pt(letters.pt) * leading; }
/// From the top of a line to its base line.
constexpr double rise_mm(Letters letters) { return mm_of_pt(letters.pt) * 0.95; }

PrintBlock paragraph(const Lettering& lettering, const std::string& text, double width_mm, Letters letters, Tint tint = Tint::black);
PrintBlock gap(double height_mm);
/// Draws `what` with its corner at that spot of `onto`, whose height stays.
void put(PrintBlock& onto, const PrintBlock& what, Spot at);
/// Puts it under what is there.
void append(PrintBlock& onto, const PrintBlock& what, double gap_mm = 0);

/// Each block is kept whole: one that does not fit on the rest of the page begins the next one. No block may be taller
/// than a page has room for.
class Flow {
public:
    /// `head` and `tail` stand on every page; `foot` beside the page's number.
    Flow(PageSize size, bool on_its_side, std::string foot, PrintBlock head, PrintBlock tail = {});

    double width_mm() const { return width_; }
    double room_mm() const { return bottom_ - top_; }  ///< of an empty page
    void add(const PrintBlock& block, double gap_before_mm = 0);
    void break_page();
    std::vector<PrintedPage> pages() &&;

private:
    bool on_its_side_;
    std::string foot_;
    PrintBlock head_, tail_;
    double width_, top_, bottom_, at_;
    std::vector<PrintedPage> pages_;

    void begin_page();
};

}  // namespace tubewright
