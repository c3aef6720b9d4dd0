// What more can be read of a tube that is to be saved: the list, and our own keypad for one turn or one tape.

#include <algorithm>
#include <cmath>

#include "present/entry_pieces.h"
#include "present/proof_words.h"
#include "present/rescue_words.h"
#include "present/words.h"
#include "state/rescue_look.h"

namespace tubewright {
namespace {

/// Points are named as where an entry is proved; corners are touched on the outside here.
class Points {
public:
    explicit Points(const State& state) : route_(state.rescue->sheet.line.route), say_{reader_tape(state), reader_unit(state), nullptr, &route_} { route_.measured_to = TapeEdge::outside; }
    Points(const Points&) = delete;
    const ProofSpeech& say() const { return say_; }

private:
    Route route_;
    ProofSpeech say_;
};

std::string turn_name(std::size_t bend, std::size_t against) { return "Turn of " + bend_name(bend) + " against " + bend_name(against); }

RowView to_read_row(const State& state, std::size_t i, const Points& points) {
    const ToRead& reading = state.rescue->more.readings[i];
    const Unit unit = reader_unit(state);
    const std::string then = band_text(reading.known, unit);
    const std::string known = then == band_text(state.rescue->more.known, unit) ? "Ends then known a little better." : "Ends then known to ±" + then + ".";
    const ButtonView touch = press_button("read-" + std::to_string(i + 1), "", AskReading{i});
    RowView row{touch, known, "", std::nullopt};
    if (reading.what == ToRead::What::turn) row.touch.label = turn_name(reading.bend, reading.against), row.detail = "An angle gauge on both legs. " + known;
    else row.touch.label = "Tape, " + span_name(points.say(), reading.span);
    return row;
}

RowView taken_row(std::size_t i, const std::string& words) { return {press_button("drop-" + std::to_string(i + 1), words, DropReading{i}), "Read. Touch to take it back.", "", std::nullopt, Tone::go}; }

/// Of a tape that was read before the last bends were made.
std::string when_words(const State& state, const MadeTape& tape) {
    const auto& made = state.rescue->made;
    return tape.steps < made.size() && tape.steps > 0 ? ", after " + bend_name(made[tape.steps - 1]) : "";
}

std::vector<RowView> rows_of(const State& state) {
    const Points points(state);
    const Tape tape = reader_tape(state);
    const LineWork work = work_in_hand(state);
    std::vector<RowView> rows;
    for (std::size_t i = 0; i < state.rescue->more.readings.size(); ++i) rows.push_back(to_read_row(state, i, points));
    for (std::size_t i = 0; i < work.turns.size(); ++i) rows.push_back(taken_row(i, turn_name(work.turns[i].bend, work.turns[i].against) + ": " + round_words(work.turns[i].read, tape)));
    for (std::size_t i = 0; i < work.tapes.size(); ++i)
        rows.push_back(taken_row(work.turns.size() + i, capital(span_name(points.say(), work.tapes[i].tape.span)) + when_words(state, work.tapes[i]) + ": " + learned_text(work.tapes[i].tape.read, tape.unit)));
    return rows;
}

/// The tube as it lies in the hand: what is not made is straight.
PictureView picture_of(const RescueLook& look) {
    PictureView picture{PictureView::Kind::finished, 0, "", {}};
    TubePlan now = look.as_it_is;
    for (std::size_t bend = 0; bend < now.bends.size(); ++bend)
        if (std::find(look.made.begin(), look.made.end(), bend) == look.made.end()) now.bends[bend].angle = {};
    now.end_a = {}, now.end_b = now.cut_length;
    picture.made = part_of(now);
    return picture;
}

// --- a turn

Angle planned_turn(const Sheet& sheet, const ToRead& asked) {
    const Part& part = sheet.layout->part;
    return wrapped(direction_in_section(part, asked.bend) - direction_in_section(part, asked.against));
}

std::string typed_trouble(const State& state, const std::string& range) {
    if (state.looks.typed.empty()) return "nothing typed yet";
    if (!typed_number(state.looks.typed)) return "no number yet";
    return typed_reading_asked(state) ? "" : range;
}

constexpr const char* turn_range = "a turn reads from 0 to 180";

/// What speaks against the number whichever side it is to.
std::optional<TextView> turn_trouble(const State& state) {
    if (state.looks.typed.empty()) return std::nullopt;
    if (const std::string trouble = typed_trouble(state, turn_range); !trouble.empty()) return TextView{capital(trouble) + ".", Tone::stop};
    const auto left = past_belief(state, false), right = past_belief(state, true);
    if (!left || !right) return std::nullopt;
    const Angle off{std::min(std::abs(*left), std::abs(*right))};
    return TextView{text(off, reader_tape(state)) + " off what it should be: read it again. If it is so, nothing saves it.", Tone::stop};
}

ButtonView side_button(const State& state, bool right) {
    const std::string side = right ? "to the right" : "to the left";
    std::string trouble = typed_trouble(state, turn_range);
    if (trouble.empty() && past_belief(state, right)) trouble = "too far off";
    const std::string label = trouble.empty() || trouble == "too far off" ? state.looks.typed + "° " + side : capital(side);
    return unless(press_button(right ? "right" : "left", label, TurnIs{right}), trouble);
}

void fill_turn(const State& state, const ToRead& asked, ScreenView& view) {
    const Tape tape = reader_tape(state);
    const Angle planned = planned_turn(state.rescue->sheet, asked);
    KeypadBody body;
    body.asks = "Look along the tube from " + bend_name(asked.against) + " to " + bend_name(asked.bend) + ". How far round is the leg past " + bend_name(asked.bend) + "?";
    body.entry = state.looks.typed;
    body.unit = "degrees";
    body.lines = {{"Planned: " + round_words(planned, tape) + "."}, {"The leg before " + bend_name(asked.against) + " points up. 0 is up too, 180 is down."}};
    if (const auto trouble = turn_trouble(state)) body.lines.back() = *trouble;
    body.keys = number_keys(true);
    body.columns = 4;
    body.picture = picture_of(*state.rescue);
    body.picture->lit = LitPart{LitPart::What::bend, asked.bend};
    body.picture->labels = {{Anchor::hook_end, "A"}, {Anchor::bend, bend_name(asked.bend)}, {Anchor::lever_end, "B"}};
    view.body = std::move(body);
    view.footer.buttons = {back_button(), side_button(state, false), side_button(state, true)};
    view.footer.back_id = "back";
    // Where the plan has a side, that one is the main button.
    if (shows_as({std::abs(planned.deg)}, 0) || shows_as({std::abs(planned.deg)}, 180)) return;
    ButtonView& main = view.footer.buttons[planned < Angle{} ? 1 : 2];
    main.weight = Weight::main;
    view.footer.main_id = main.id;
}

// --- a tape

std::string tape_range(const State& state) { return typed_number(state.looks.typed).value_or(1) > 0 ? "" : "it has to be more than 0"; }

void fill_tape(const State& state, const ToRead& asked, ScreenView& view) {
    const Points points(state);
    const ProofSpeech& say = points.say();
    const std::string typed = state.looks.typed + (say.tape.unit == Unit::inch ? "\"" : " mm");
    RouteBody body;
    body.asks = taping_words(say, asked.span);
    body.picture = picture_of(*state.rescue);
    body.picture->taped = asked.span;
    body.picture->labels = {{Anchor::gauge_1, point_name(say, asked.span.from)}, {Anchor::gauge_2, point_name(say, asked.span.to)}};
    fill_length_keys(body, say.tape.unit);
    body.cells = {{press_button("reading-now", state.looks.typed.empty() ? "?" : typed, Key{"clear"}), "the tape says"}};
    body.cells.back().touch.chosen = true;
    std::string trouble = typed_trouble(state, tape_range(state));
    if (const auto off = past_belief(state, false)) {
        trouble = "too far off";
        body.lines = {{text(Length{std::abs(*off)}, say.tape) + " off what it should be: tape it again. If it is so, nothing saves it.", Tone::stop}};
    }
    view.body = std::move(body);
    view.footer.buttons = {back_button()};
    view.footer.back_id = "back";
    if (!state.looks.typed.empty()) view.footer.buttons.push_back(press_button("key-back", "Rub out", Key{"back"}));
    view.footer.buttons.push_back(unless(press_button("next", state.looks.typed.empty() ? "Take the reading" : "Take " + typed, Next{}, Weight::main), trouble));
    view.footer.main_id = "next";
}

}  // namespace

void fill_rescue_more(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "Measure more, and the ends are known better.";
    show_page_of(state, rows_of(state), body);
    body.notes = {{"Now they are known to ±" + band_text(state.rescue->more.known, reader_unit(state)) + ". A turn that is read goes into the log of your hand too."}};
    view.header = line_header(state, "measure more");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

void fill_rescue_read(const State& state, ScreenView& view) {
    const ToRead& asked = *reading_asked(state);
    view.header = line_header(state, "measure more");
    if (asked.what == ToRead::What::turn) return fill_turn(state, asked, view);
    fill_tape(state, asked, view);
}

}  // namespace tubewright
