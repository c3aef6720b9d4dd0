#pragma once
// What stands on the paper besides the sheet's own words: the strip of marks, the angle gauges, and every sentence that
// tells how they are used. Places along the tube and angles are not rounded here; the words beside them are.

#include <string>
#include <vector>

#include "bench/sheet.h"
#include "present/text.h"

namespace tubewright {

struct StripMark {
    enum class Kind { end_a, end_b, ink, trim } kind;
    Length at;                       ///< along the straight tube, from cut end A
    std::vector<std::string> label;  ///< the first one stands out
};

/// All marks of one line, to be taped along the straight tube at full size.
struct StripView {
    std::string line;
    bool stopped;
    Unit unit;
    Length cut;
    std::vector<StripMark> marks;  ///< from A to B, the ends first and last; a mark that misses the tube is left out. None where the line can't be laid out
    std::string told, joined_told; ///< joined_told: where it is of more than one piece
};
StripView strip_view(const Sheet& sheet, const Tape& tape);

/// One angle that the line has, to hold a finished bend against.
struct AngleGauge {
    Angle target, pulled;            ///< pulled: where the lever stands
    std::string angle, bends;        ///< "90°" and "bends 1 and 3"
    std::string pulled_told;         ///< beside the leg as the lever holds it
};

struct GaugesView {
    std::string line;
    bool stopped;
    Unit unit;
    Length od;
    Length finished_radius, form_radius;  ///< to the tube's centre: released, and round the form
    std::vector<AngleGauge> gauges;       ///< the smallest angle first; none where the line has no bends or can't be laid out
    std::string told;
};
/// Bends share a gauge where their targets are within this: a tenth of what a protractor shows. Our choice.
inline constexpr Angle same_gauge{0.05};
GaugesView gauges_view(const Sheet& sheet, const Tape& tape);

/// A bar that tells whether the printer kept to full size.
struct CheckBar {
    Length length;
    std::string told;
};
CheckBar check_bar(Unit unit);

namespace paper_says {

std::string strip_title(const std::string& line);
std::string gauges_title(const std::string& line);
/// At the foot of each page of the sheet.
std::string sheet_title(const std::string& line, const std::string& job);
std::string stop();
std::string stop_alone();
std::string not_laid_out();
std::string no_bends();
std::string join(std::size_t number);       ///< "join 2"
std::string next_piece_lies_here();
/// At the foot of each piece of a strip, the shortest last, for a piece that has no room for more; pieces and joins count from 1.
std::vector<std::string> piece(const std::string& line, std::size_t number, std::size_t pieces);
std::string gauges_told();
std::string gauge_too_large(const AngleGauge& gauge);
std::string page(std::size_t number, std::size_t pages);

// Headings on the sheet.
std::string cut_to();
std::string end(End end);
std::string tube();
std::string bender();
std::string note();
std::string weight(const std::string& weight);  ///< of a finding, as a heading
std::string job();
std::string mark_from_a();
std::string from_b(const std::string& length);
std::string on_line(const std::string& name);
std::string turn();
std::string pull_to();
std::string springs_to(const std::string& target);
std::string bend(const std::string& number);
std::string tally(const std::string& formed, const std::string& left);
std::string read_off();
std::string made();
std::string tape_checks();
std::string tape_checks_told();
std::string straight_across();
std::string advice();
std::string cautions();
std::string hand_over();
std::string clock_told();

}  // namespace paper_says

}  // namespace tubewright
