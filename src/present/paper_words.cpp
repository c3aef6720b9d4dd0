#include "present/paper_words.h"

#include <algorithm>
#include <cmath>

#include "bench/springback.h"
#include "present/words.h"

namespace tubewright {
namespace {

void add_trims(const Sheet& sheet, const Tape& tape, std::vector<StripMark>& marks) {
    for (const End end : {End::A, End::B}) {
        const Length trim = sheet.line.end(end).trim;
        if (trim > Length{}) marks.push_back({StripMark::Kind::trim, end == End::A ? trim : sheet.layout->cut_length - trim, {"Trim", "last: " + text(trim, tape)}});
    }
}

/// "bend 2", "bends 1 and 4", "bends 1 to 3, 5 and 9": rising, three or more in a row are drawn together.
std::string bends_words(const std::vector<std::size_t>& bends) {
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < bends.size();) {
        std::size_t last = i;
        while (last + 1 < bends.size() && bends[last + 1] == bends[last] + 1) ++last;
        if (last < i + 2) last = i;
        parts.push_back(std::to_string(bends[i] + 1) + (last > i ? " to " + std::to_string(bends[last] + 1) : ""));
        i = last + 1;
    }
    std::string all = bends.size() == 1 ? "bend " : "bends ";
    for (std::size_t i = 0; i < parts.size(); ++i) all += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
    return all;
}

}  // namespace

StripView strip_view(const Sheet& sheet, const Tape& tape) {
    StripView view{sheet.line.name, stopped(sheet), tape.unit, {}, {}, paper_says::not_laid_out(), ""};
    if (!sheet.layout) return view;
    const Length cut = sheet.layout->cut_length;
    view.cut = cut;
    for (const Step& step : sheet.steps) {
        const Length at = mark_from_a(step, cut);
        if (at < Length{} || at > cut) continue;
        view.marks.push_back({StripMark::Kind::ink, at, {capital(bend_name(step.bend)), "line " + sheet.line.bender.marks[step.align_to].name, text(at, tape)}});
    }
    add_trims(sheet, tape, view.marks);
    std::stable_sort(view.marks.begin(), view.marks.end(), [](const StripMark& a, const StripMark& b) { return a.at < b.at; });
    view.marks.insert(view.marks.begin(), {StripMark::Kind::end_a, Length{}, {"End A", "cut end"}});
    view.marks.push_back({StripMark::Kind::end_b, cut, {"End B", "cut end", text(cut, tape)}});
    view.told = "Tape the upper edge along the straight tube, end A of the paper at cut end A. Carry each tick over to the tube with the number of its bend; then take the paper off. The line under a bend's number is the one on the bender that its mark goes on.";
    view.joined_told = "Cut the pieces out. Cut along a join line, lay that edge on the same join line of the piece before, and tape it. Joined, cut end A to cut end B measures " + text(cut, tape) + ".";
    return view;
}

GaugesView gauges_view(const Sheet& sheet, const Tape& tape) {
    GaugesView view{sheet.line.name, stopped(sheet), tape.unit, sheet.line.tube.od, {}, sheet.line.bender.radius, {}, ""};
    if (!sheet.layout) {
        view.told = paper_says::not_laid_out();
        return view;
    }
    view.told = sheet.steps.empty() ? paper_says::no_bends() : paper_says::gauges_told();
    view.finished_radius = sheet.layout->part.radius;
    std::vector<Step> steps = sheet.steps;
    std::stable_sort(steps.begin(), steps.end(), [](const Step& a, const Step& b) { return a.target < b.target; });
    for (std::size_t i = 0; i < steps.size();) {
        const Step& first = steps[i];
        std::vector<std::size_t> bends;
        for (; i < steps.size() && steps[i].target - first.target <= same_gauge; ++i) bends.push_back(steps[i].bend);
        std::sort(bends.begin(), bends.end());
        view.gauges.push_back({first.target, on_lever(first.set), text(first.target, tape), bends_words(bends), "lever at " + lever_text(first.set, tape)});
    }
    return view;
}

CheckBar check_bar(Unit unit) {
    const Length length = unit == Unit::inch ? Length{4 * 25.4} : Length{100};
    const std::string said = text(length, Tape{unit, 16});
    return {length, "Measure this bar first: it is exactly " + said + ". If yours is not, print again at 100 %, without \"fit to page\"."};
}

namespace paper_says {

std::string strip_title(const std::string& line) { return "Marking strip: " + line; }
std::string gauges_title(const std::string& line) { return "Angle gauges: " + line; }
std::string sheet_title(const std::string& line, const std::string& job) { return "Bend sheet: " + line + ", " + job; }
std::string stop() { return "STOP: don't cut, mark or bend by this."; }
std::string stop_alone() { return "STOP"; }
std::string not_laid_out() { return "This line can't be laid out as it stands; its bend sheet says why."; }
std::string no_bends() { return "This line has no bends."; }
std::string join(std::size_t number) { return "join " + std::to_string(number); }
std::string next_piece_lies_here() { return "under the next piece"; }

std::vector<std::string> piece(const std::string& line, std::size_t number, std::size_t pieces) {
    if (pieces == 1) return {line};
    const std::string counted = "piece " + std::to_string(number) + " of " + std::to_string(pieces);
    if (number == 1) return {line + ", " + counted, counted};
    const std::string lay = counted + ": lay " + join(number - 1) + " on " + join(number - 1) + " of piece " + std::to_string(number - 1);
    return {line + ", " + lay, lay, line + ", " + counted, counted};
}

std::string gauges_told() {
    return "Lay the finished bend on the grey tube: both legs lie in it along their whole length. Or cut out along the thick line and hold the card inside the bend: no light shows at either leg. The thin line is where the leg stands while the lever holds it.";
}

std::string gauge_too_large(const AngleGauge& gauge) { return "The gauge for " + gauge.angle + ", " + gauge.bends + ", is larger than this paper."; }
std::string page(std::size_t number, std::size_t pages) { return "page " + std::to_string(number) + " of " + std::to_string(pages); }

std::string cut_to() { return "Cut to"; }
std::string end(End end) { return capital(end_name(end)); }
std::string tube() { return "Tube"; }
std::string bender() { return "Bender"; }
std::string note() { return "Note"; }
std::string weight(const std::string& weight) { return capital(weight); }
std::string job() { return "Job"; }
std::string mark_from_a() { return "Mark, from end A"; }
std::string from_b(const std::string& length) { return "end B: " + length; }
std::string on_line(const std::string& name) { return "on line " + name; }
std::string turn() { return "Turn"; }
std::string pull_to() { return "Pull to"; }
std::string springs_to(const std::string& target) { return "springs to " + target; }
std::string bend(const std::string& number) { return "Bend " + number; }
std::string tally(const std::string& formed, const std::string& left) { return "Formed " + formed + ", left " + left; }
std::string read_off() { return "it reads"; }
std::string made() { return "made"; }
std::string tape_checks() { return "Check with a tape"; }
std::string tape_checks_told() { return "From cut end to outside corner, corner to corner, before trimming and flaring: a straight block held along the outside of the legs makes the corner."; }
std::string straight_across() { return "A to B straight across"; }
std::string advice() { return "Good to know"; }
std::string cautions() { return "Take care"; }
std::string hand_over() { return "When it is in place"; }
std::string clock_told() { return "The clock is seen from the hook along the tube: the thick hand is the leg past the bend that is made, the ring the top line, the broken line the lever's swing, the crossed red hand the wrong way."; }

}  // namespace paper_says

}  // namespace tubewright
