#pragma once
// A printed page as data: what stands where, in millimetres from its upper left corner, y downwards.

#include <string>
#include <variant>
#include <vector>

namespace tubewright {

/// US letter is 8.5 × 11 in (ANSI/ASME Y14.1, size A), A4 210 × 297 mm (ISO 216).
enum class PageSize { letter, a4 };
struct Extent {
    double width_mm, height_mm;
};
/// Upright, or lying on its side.
Extent extent_of(PageSize size, bool on_its_side);

/// Left free all round: what office printers can't reach is less. Our choice.
inline constexpr double margin_mm = 12.7;

struct Spot {
    double x_mm, y_mm;
    bool operator==(const Spot&) const = default;
};

enum class Tint { black, grey, pale, white, red };

/// The size is the em's, in points of 1/72 in.
struct Letters {
    double pt;
    bool bold = false;
};
constexpr double mm_of_pt(double pt) { return pt * 25.4 / 72; }

struct Lettered {
    Spot start;  ///< of the base line
    std::string text;
    Letters letters;
    Tint tint = Tint::black;
    double turned_deg = 0;  ///< anticlockwise about the start
};

struct Stroked {
    std::vector<Spot> path;
    double width_mm;
    Tint tint = Tint::black;
    bool closed = false;
    std::vector<double> dashes_mm = {};
};

struct Filled {
    std::vector<Spot> path;
    Tint tint;
};

using Drawn = std::variant<Lettered, Stroked, Filled>;

struct PrintedPage {
    bool on_its_side = false;
    std::string foot;  ///< at the foot, beside the page's number
    std::vector<Drawn> drawn = {};
};

/// A box by its upper left corner.
std::vector<Spot> box_of(Spot corner, double width_mm, double height_mm);

}  // namespace tubewright
