// The whole straight tube with its bends, its tape and its marks.

#include <algorithm>
#include <array>
#include <cmath>

#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// Labels each so many inches or millimetres, with so many parts between two labels; the part in the
/// middle is a long one.
struct Pitch {
    double label;
    int parts;
};

constexpr std::array<Pitch, 9> inch_pitches{{{1, 8}, {2, 8}, {5, 10}, {10, 10}, {20, 10}, {50, 10}, {100, 10}, {500, 10}, {2000, 10}}};
constexpr std::array<Pitch, 8> mm_pitches{{{10, 10}, {20, 10}, {50, 10}, {100, 10}, {200, 10}, {500, 10}, {2000, 10}, {10000, 10}}};
constexpr double most_labels = 16;

template <std::size_t N>
Pitch pitch_for(const std::array<Pitch, N>& pitches, double length) {
    for (const Pitch& pitch : pitches)
        if (length / pitch.label <= most_labels) return pitch;
    return pitches.back();
}

std::vector<RibbonTick> tape_ticks(Length cut, Unit unit) {
    const double length = unit == Unit::inch ? cut.inch() : cut.mm;
    std::vector<RibbonTick> ticks;
    if (!(length > 0)) return ticks;
    const Pitch pitch = unit == Unit::inch ? pitch_for(inch_pitches, length) : pitch_for(mm_pitches, length);
    const double part = pitch.label / pitch.parts;
    const int count = static_cast<int>(std::min(length / part, 1000.0));
    for (int i = 0; i <= count; ++i) {
        const int rank = i % pitch.parts == 0 ? 0 : i % (pitch.parts / 2) == 0 ? 1 : 2;
        ticks.push_back({i * part / length, rank, rank == 0 ? std::to_string(std::llround(i * part)) : ""});
    }
    return ticks;
}

RibbonBend::Standing standing_of(const State& state, std::size_t bend) {
    const LineWork work = work_in_hand(state);
    for (const BendMade& made : work.made)
        if (made.bend == bend) return RibbonBend::Standing::done;
    const Step* step = step_in_hand(state);
    return step && step->bend == bend ? RibbonBend::Standing::now : RibbonBend::Standing::coming;
}

double share_of(const Step& step, Length cut) { return std::clamp(mark_from_a(step, cut) / cut, 0.0, 1.0); }

/// All of them; those in the list beside have their number and what the tape shows there, hooked at A.
std::vector<RibbonMark> marks_to_ink(const State& state, const std::vector<Step>& steps, Length cut) {
    const Tape tape = reader_tape(state);
    const Page page = page_of(state, steps.size(), marks_on_a_page);
    std::vector<RibbonMark> marks;
    for (const Step& step : steps) {
        const bool listed = step.bend >= page.from && step.bend < page.to;
        marks.push_back({share_of(step, cut), listed ? std::to_string(step.bend + 1) + ": " + text(mark_from_a(step, cut), tape) : "", false});
    }
    return marks;
}

}  // namespace

RibbonView ribbon_of(const State& state, bool all_marks) {
    const Sheet& sheet = *sheet_in_hand(state);
    const Layout& layout = *sheet.layout;
    const Tape tape = reader_tape(state);
    const Length cut = layout.cut_length;
    RibbonView ribbon;
    if (!(cut > Length{})) return ribbon;
    const auto share = [&](Length at) { return std::clamp(at / cut, 0.0, 1.0); };
    for (std::size_t i = 0; i < layout.spans.size(); ++i)
        ribbon.bends.push_back({std::to_string(i + 1), share(layout.spans[i].start), share(layout.spans[i].end), standing_of(state, i)});
    ribbon.ticks = tape_ticks(cut, tape.unit);
    ribbon.waste_a = share(layout.waste_a);
    ribbon.waste_b = share(layout.waste_b);
    if (all_marks) {
        ribbon.marks = marks_to_ink(state, sheet.steps, cut);
        return ribbon;  // nothing is formed yet, and the readings need the room
    }
    if (const Step* step = step_in_hand(state)) ribbon.marks = {{share_of(*step, cut), text(step->mark, tape) + " from " + letter(step->mark_from), true}};
    const Tally tally = tally_of(cut, formed_length(sheet, work_in_hand(state).made.size()), tape);
    ribbon.tally = "formed " + text(tally.formed, tape) + ", left " + text(tally.left, tape);
    return ribbon;
}

}  // namespace tubewright
