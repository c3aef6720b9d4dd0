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

/// Letters of body text. The font's capitals are 1500 of 2000 units: at 14 points 3.7 mm, which at 0.7 m is 18 minutes of arc. 16
/// are the least in ISO 9241-3, as a display-ergonomics page quotes it. `leading`: from base line to base line, in sizes.
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
    /// A few lines stay together, more may go on on the next page.
    void add_text(const Lettering& lettering, const std::string& text, Letters letters, double gap_before_mm = 0);
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
