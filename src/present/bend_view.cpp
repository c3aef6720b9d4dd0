// The first three moves of a bend: mark, turn, pull. One at a time and large.

#include "present/pieces.h"
#include "present/turn.h"
#include "present/words.h"

namespace tubewright {
namespace {

std::string mark_name(const Sheet& sheet, const Step& step) { return sheet.line.bender.marks[step.align_to].name; }

PictureView picture_of(const State& state, PictureView::Kind kind) {
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const Step& step = sheet.steps[work.step];
    PictureView picture;
    picture.kind = kind;
    picture.step = work.step;
    picture.caption = "As you stand at the bench";
    picture.labels = {{Anchor::hook_end, capital(end_name(step.hook)) + ", hook"}, {Anchor::lever_end, capital(end_name(other(step.hook)))}};
    if (kind == PictureView::Kind::marked) picture.labels.push_back({Anchor::mark, "mark on " + mark_name(sheet, step)});
    if (kind == PictureView::Kind::turned) {
        if (step.neighbour) picture.labels.push_back({Anchor::bend, bend_name(step.neighbour->bend)});
        if (step.neighbour) picture.labels.push_back({Anchor::wrong_way, "not like this"});
    }
    if (kind == PictureView::Kind::pulled) {
        picture.labels.push_back({Anchor::lever, "lever"});
        picture.labels.push_back({Anchor::after_pull, "after the pull"});
    }
    return picture;
}

/// What is in this bend's way, what has to be on the tube before it, and what the job says about it.
void add_bend_notes(const State& state, const Step& step, std::vector<TextView>& lines) {
    const Sheet& sheet = *sheet_in_hand(state);
    for (const Finding& finding : sheet.findings) {
        if (std::holds_alternative<HitsAsItStands>(finding.fact) && finding.bend == step.bend)
            lines.push_back({capital(words(finding.fact, {reader_tape(state), &sheet.line}).what) + ".", Tone::caution});
        if (const auto* trapped = std::get_if<TrappedPieces>(&finding.fact); trapped && trapped->bend == step.bend)
            lines.push_back({capital(piece_list(trapped->pieces)) + " on at " + end_name(trapped->end) + (trapped->pieces.size() == 1 ? "? This bend traps it." : "? This bend traps them."), Tone::caution});
    }
    if (step.bend < sheet.line.bend_notes.size() && !sheet.line.bend_notes[step.bend].empty()) lines.push_back({sheet.line.bend_notes[step.bend]});
}

MoveBody mark_body(const State& state, const Step& step) {
    const Sheet& sheet = *sheet_in_hand(state);
    MoveBody body;
    body.asks = std::string("Mark from end ") + letter(step.mark_from) + ", lay it in";
    body.hero = text(step.mark, reader_tape(state));
    const std::size_t at = work_in_hand(state).step;
    if (at > 0 && sheet.steps[at - 1].hook != step.hook) body.lines.push_back({"Swap the tube end for end: " + end_name(step.hook) + " goes to the hook now.", Tone::caution});
    std::string hooked = hook_sentence(sheet.set_up, step);
    // Along what is bent nobody tapes.
    const bool straight_there = std::none_of(sheet.steps.begin(), sheet.steps.begin() + static_cast<std::ptrdiff_t>(at), [&](const Step& made) { return (made.bend > step.bend) == (step.hook == End::B); });
    if (step.hook != step.mark_from && straight_there) hooked += " From there " + text(rest_of(sheet.layout->cut_length, step.mark, reader_tape(state)), reader_tape(state)) + " to the mark.";
    body.lines.push_back({hooked});
    body.lines.push_back({"Put ink mark " + std::to_string(step.bend + 1) + " on line " + mark_name(sheet, step) + "."});
    add_bend_notes(state, step, body.lines);
    body.picture = picture_of(state, PictureView::Kind::marked);
    return body;
}

MoveBody turn_body(const State& state, const Step& step) {
    const Sheet& sheet = *sheet_in_hand(state);
    MoveBody body;
    body.asks = turn_asks(step);
    body.hero = turn_way(sheet.set_up, step);
    body.lines = {{turn_line(step, reader_tape(state))}};
    body.clock = turn_clock(sheet.set_up, step);
    body.picture = picture_of(state, PictureView::Kind::turned);
    return body;
}

/// The lever stops at a half degree at or below the set angle, so the bend may end as much under its target.
std::string springs_back_words(const Step& step, const Tape& tape) {
    const Angle ends = step.target - (step.set - on_lever(step.set));
    std::string said = "springs back " + text(step.set - step.target, tape) + ", finishes at " + text(step.target, tape);
    if (text(ends, tape) != text(step.target, tape)) said += " or " + text(step.target - ends, tape) + " under";
    return said;
}

MoveBody pull_body(const State& state, const Step& step) {
    const LineWork work = work_in_hand(state);
    const Tape tape = reader_tape(state);
    const Angle to = set_in_force(step, work);
    MoveBody body;
    body.asks = work.pull_again ? "Lay it on the mark, pull on to" : "Pull the lever to";
    body.hero = lever_text(to, tape);
    if (work.last_reading)
        body.lines.push_back({"It read " + text(*work.last_reading, tape) + ", " + text(step.target - *work.last_reading, tape) + " under " + text(step.target, tape) + "."});
    else body.lines.push_back({springs_back_words(step, tape)});
    if (const std::string sure = sureness_words(state, step.target); !sure.empty() && !work.last_reading) body.lines.push_back({sure});
    body.lines.push_back({"Approach from below: what is over-bent stays over-bent.", Tone::caution});
    body.picture = picture_of(state, PictureView::Kind::pulled);
    if (work.last_reading) body.picture->again = {*work.last_reading, to};
    return body;
}

}  // namespace

std::vector<MoveChip> moves_of(const State& state) {
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const Step& step = sheet.steps[work.step];
    const Tape tape = reader_tape(state);
    const auto standing = [&](Move move) {
        if (move == work.move) return MoveChip::Standing::now;
        return move < work.move ? MoveChip::Standing::done : MoveChip::Standing::coming;
    };
    return {{"Mark", text(step.mark, tape), standing(Move::mark)},
            {"Turn", turn_chip(step, tape), standing(Move::turn)},
            {"Pull", lever_text(set_in_force(step, work), tape), standing(Move::pull)},
            {"Check", text(step.target, tape), standing(Move::check)}};
}

void fill_bend(const State& state, ScreenView& view) {
    const LineWork work = work_in_hand(state);
    const Step& step = *step_in_hand(state);
    MoveBody body;
    std::string done;
    if (work.move == Move::mark) { body = mark_body(state, step); done = "Marked and loaded"; }
    else if (work.move == Move::turn) { body = turn_body(state, step); done = "Turned → pull next"; }
    else { body = pull_body(state, step); done = "Pulled and released"; }
    body.moves = moves_of(state);
    view.header = line_header(state, bend_place(state));
    view.ribbon = ribbon_of(state, false);
    view.body = std::move(body);
    view.footer = bench_footer_of(state, press_button("next", done, Next{}));
}

}  // namespace tubewright
