// The entry of a line proved with a tape: one reading at a time, the question of the hand, and what comes of it.

#include <algorithm>
#include <cmath>

#include "bench/slip_remedy.h"
#include "present/entry_pieces.h"
#include "present/proof_words.h"
#include "present/words.h"

namespace tubewright {
namespace {

using ProofStage = Proving::Stage;

constexpr std::size_t most_slips = 2, cells_in_sight_inch = 2, cells_in_sight_mm = 3;

ProofSpeech speech_of(const State& state) {
    return {{entry_reader_unit(state), state.settings.tape_denominator}, state.entry->page.job.unit, &state.entry->line().route, &state.proving->entry.wire.route};
}

const std::vector<TapeReading>& readings_of(const State& state) { return state.proving->kept.taken.readings; }

/// Back, and Undo and Redo of what was taped; nothing else can be undone from here.
FooterView proof_footer(const State& state) {
    FooterView footer = entry_footer(state);
    const EntryPage& page = state.entry->page;
    const auto of_proof = [&](const std::vector<EntryPage>& steps) { return !steps.empty() && is_proof_step(steps.back(), page); };
    footer.buttons[1] = unless(press_button("undo", "Undo", Undo{}), of_proof(state.entry->past) ? "" : "nothing to undo");
    std::erase_if(footer.buttons, [&](const ButtonView& button) { return button.id == "redo" && !of_proof(state.entry->future); });
    return footer;
}

void add_main(FooterView& footer, ButtonView main) {
    main.weight = Weight::main;
    footer.main_id = main.id;
    footer.buttons.push_back(std::move(main));
}

ButtonView done_button(const State& state) {
    return press_button("next", state.entry->from_bench ? "Back to the line" : "Done", Back{});
}

// --- a reading

PictureView taped_picture(const ProofSpeech& say, Span span) {
    PictureView picture{PictureView::Kind::finished, 0, "", {}};
    picture.labels = {{Anchor::gauge_1, point_name(say, span.from)}, {Anchor::gauge_2, point_name(say, span.to)}};
    if (span.from > 0) picture.labels.push_back({Anchor::hook_end, "A"});
    if (span.to <= say.route->bends.size()) picture.labels.push_back({Anchor::lever_end, "B"});
    picture.entered = true;
    picture.taped = span;
    return picture;
}

std::string typed_words(const State& state, const ProofSpeech& say) { return state.looks.typed + (say.tape.unit == Unit::inch ? "\"" : " mm"); }

/// What was read before, and the one in hand; touched, a reading is taped once more.
void fill_readings(const State& state, const ProofSpeech& say, RouteBody& body) {
    const auto& readings = readings_of(state);
    const std::size_t room = say.tape.unit == Unit::inch ? cells_in_sight_inch : cells_in_sight_mm;
    const std::size_t before = state.looks.retake ? 0 : std::min(readings.size(), room - 1);
    for (std::size_t i = readings.size() - before; i < readings.size(); ++i)
        body.cells.push_back({press_button("reading-" + std::to_string(i + 1), text(readings[i].read, say.tape), TapeAgain{i}), span_name(say, readings[i].span)});
    const std::size_t now = state.looks.retake.value_or(readings.size());
    TileView tile{press_button("reading-now", state.looks.typed.empty() ? "?" : typed_words(state, say), Key{"clear"}), "reading " + std::to_string(now + 1)};
    tile.touch.chosen = true;
    body.cells.push_back(std::move(tile));
}

std::string reading_trouble(const State& state) {
    const auto number = typed_number(state.looks.typed);
    if (!number) return state.looks.typed.empty() ? "type what the tape says" : "no number yet";
    return typed_tape(state) ? "" : *number > 0 ? "too long" : "it has to be more than 0";
}

void fill_taping(const State& state, const ProofSpeech& say, Span span, ScreenView& view) {
    RouteBody body;
    body.asks = taping_words(say, span);
    if (state.looks.retake) body.lines = {{"Once more, as if it had not been read yet.", Tone::now}};
    body.picture = taped_picture(say, span);
    fill_length_keys(body, say.tape.unit);
    fill_readings(state, say, body);
    view.body = std::move(body);
    view.footer = proof_footer(state);
    auto& buttons = view.footer.buttons;
    if (!state.looks.typed.empty()) {
        std::erase_if(buttons, [](const ButtonView& button) { return button.id == "redo"; });
        buttons[1] = press_button("key-back", "Rub out", Key{"back"});
    }
    if (!state.looks.retake) buttons.push_back(press_button("cant-reach", "Can't reach there", CantReach{}));
    if (!state.looks.retake && readings_of(state).size() >= 2) buttons.push_back(press_button("enough", "Enough readings", EnoughReadings{}));
    add_main(view.footer, unless(press_button("next", state.looks.typed.empty() ? "Take the reading" : "Take " + typed_words(state, say), Next{}), reading_trouble(state)));
}

// --- the question of the hand

void fill_hand(const State& state, const ProofSpeech& say, ScreenView& view) {
    const HandQuestion& question = *state.proving->hand;
    const std::string along = run_name(say, question.before + 1), before = run_name(say, question.before), past = run_name(say, question.bend + 1);
    MoveBody body;
    body.asks = "Look along " + along + ", from end A's side.";
    body.hero = "Left or right?";
    body.lines = {{"Let " + before + " hang straight down: to which side does " + past + " go?", Tone::now}, {"No tape can tell left from right."}};
    body.clock = ClockView{{{180, before, ClockHand::Kind::leg}}, {{270, "left"}, {90, "right"}}, ""};
    body.buttons = {press_button("left", "To the left", AnswerHand{true}), press_button("right", "To the right", AnswerHand{false})};
    view.body = std::move(body);
    view.footer = proof_footer(state);
    view.footer.buttons.push_back(press_button("cant-tell", "I can't tell", AnswerHand{std::nullopt}));
}

// --- what comes of it

/// Each reading beside what it would be as entered; touched, it is taped once more.
std::vector<RowView> reading_rows(const State& state, const ProofSpeech& say) {
    std::vector<RowView> rows;
    const Proof& proof = state.proving->proof;
    const auto& readings = readings_of(state);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        RowView row;
        row.touch = press_button("reading-" + std::to_string(i + 1), capital(span_name(say, readings[i].span)) + ": " + text(readings[i].read, say.tape), TapeAgain{i});
        row.detail = "as entered " + text(proof.expected[i].expected, say.tape) + "; touch it to tape it again";
        const bool alone = std::find(proof.alone.begin(), proof.alone.end(), i) != proof.alone.end();
        row.tone = alone ? Tone::caution : proof.verdict == ProofVerdict::consistent ? Tone::go : Tone::plain;
        row.right = alone ? "stands alone" : "";
        rows.push_back(std::move(row));
    }
    return rows;
}

ListBody readings_body(const State& state, const ProofSpeech& say) {
    ListBody body;
    const std::vector<RowView> rows = reading_rows(state, say);
    const Page page = page_of(state, rows.size(), rows_on_a_page);
    body.rows.assign(rows.begin() + static_cast<std::ptrdiff_t>(page.from), rows.begin() + static_cast<std::ptrdiff_t>(page.to));
    body.pager = pager_of(state, page);
    return body;
}

std::optional<ButtonView> more_button(const State& state) {
    if (!state.proving->task) return std::nullopt;
    return press_button("more", "One more reading", OneMoreReading{});
}

/// What a right answer of every reading leaves open; the likeliest alone.
std::optional<TextView> still_open(const State& state, const ProofSpeech& say) {
    constexpr double worth_saying = 0.01;
    const auto& open = state.proving->proof.not_exposed;
    if (open.empty() || open.front().probability < worth_saying) return std::nullopt;
    return TextView{"They can't show whether " + slip_words(open.front().slip, say).were + "."};
}

void fill_agrees(const State& state, const ProofSpeech& say, ScreenView& view) {
    ListBody body = readings_body(state, say);
    body.notes.push_back({"The tape agrees with the entry. " + proof_sentence(ProofStanding::agrees, readings_of(state).size()), Tone::go});
    if (const auto open = still_open(state, say)) body.notes.push_back(*open);
    view.body = std::move(body);
    view.footer = proof_footer(state);
    if (const auto more = more_button(state)) view.footer.buttons.push_back(*more);
    add_main(view.footer, done_button(state));
}

void fill_too_few(const State& state, const ProofSpeech& say, ScreenView& view) {
    ListBody body = readings_body(state, say);
    body.notes.push_back({readings_of(state).empty() ? "Nothing was taped: the entry stays unchecked." : "One reading says too little; nothing speaks against the entry so far.", Tone::caution});
    if (!state.proving->task) body.notes.push_back({"There is no other place on this line where a tape tells anything."});
    view.body = std::move(body);
    view.footer = proof_footer(state);
    if (!state.proving->kept.taken.out_of_reach.empty()) view.footer.buttons.push_back(press_button("afresh", "Begin afresh", ProveAfresh{}));
    if (const auto more = more_button(state)) add_main(view.footer, *more);
    else add_main(view.footer, done_button(state));
}

void fill_unexplained(const State& state, const ProofSpeech& say, ScreenView& view) {
    const Proof& proof = state.proving->proof;
    ListBody body = readings_body(state, say);
    body.notes.push_back({"Something is wrong, and no one slip explains it.", Tone::stop});
    if (!proof.suspects.empty()) body.notes.push_back({"Nearest would be " + suspect_words(proof.suspects.front(), say) + ". Tape it again, or look over the numbers.", Tone::caution});
    view.body = std::move(body);
    view.footer = proof_footer(state);
    view.footer.buttons.push_back(press_button("afresh", "Begin afresh", ProveAfresh{}));
    if (const auto more = more_button(state)) add_main(view.footer, *more);
    else add_main(view.footer, done_button(state));
}

/// Those worth telling: the likeliest, and others that fit and are not far behind.
std::size_t slips_told(const Proof& proof) {
    constexpr double far_behind = 0.02;
    std::size_t count = 1;
    while (count < std::min(most_slips, proof.explanations.size()) && proof.explanations[count].fits && proof.explanations[count].probability > far_behind) ++count;
    return count;
}

/// The slip's place, and the reading that tells of it.
PictureView slip_picture(const State& state, const Slip& slip, const ProofSpeech& say) {
    PictureView picture{PictureView::Kind::finished, 0, "", {{Anchor::hook_end, "A"}, {Anchor::lever_end, "B"}}};
    if (const auto loudest = loudest_reading(state.proving->proof)) picture = taped_picture(say, readings_of(state)[*loudest].span);
    picture.entered = true;
    if (slip.bend) picture.lit = LitPart{LitPart::What::bend, *slip.bend};
    else if (slip.leg) picture.lit = LitPart{LitPart::What::run, *slip.leg};
    if (picture.lit) picture.labels.push_back({Anchor::bend, slip.bend ? bend_name(*slip.bend) : run_name(say, *slip.leg)});
    return picture;
}

/// The one reading without which nothing would speak against the entry, if it was taped only once.
std::optional<std::size_t> to_tape_again(const State& state) {
    const auto& alone = state.proving->proof.alone;
    if (alone.size() != 1) return std::nullopt;
    const auto& twice = state.proving->kept.twice;
    const Span span = readings_of(state)[alone.front()].span;
    return std::find(twice.begin(), twice.end(), span) == twice.end() ? std::optional(alone.front()) : std::nullopt;
}

ButtonView remedy_button(const State& state, const Explanation& picked, const ProofSpeech& say) {
    const ButtonView button = press_button("correct", slip_words(picked.slip, say).remedy, CorrectSlip{});
    if (no_proof(state) == NoProof::cut) return unless(button, "the tube is cut");
    return unless(button, without_slip(state.entry->line().route, picked.slip) ? "" : "change it among the numbers");
}

void fill_slips(const State& state, const ProofSpeech& say, ScreenView& view) {
    const Proof& proof = state.proving->proof;
    const std::size_t count = slips_told(proof), chosen = std::min(state.looks.picked_slip, count - 1);
    CardBody body;
    body.figures.heading = count == 1 ? "Most likely one slip:" : "Most likely one of these slips:";
    for (std::size_t i = 0; i < count; ++i) {
        RowView row;
        row.touch = press_button("slip-" + std::to_string(i + 1), slip_words(proof.explanations[i].slip, say).is, PickSlip{i});
        row.touch.chosen = i == chosen;
        row.detail = count == 1 ? "fits all that was taped" : i == 0 ? "likeliest" : "also possible";
        row.tone = i == chosen ? Tone::now : Tone::plain;
        body.figures.rows.push_back(std::move(row));
    }
    const Explanation& picked = proof.explanations[chosen];
    body.figures.notes.push_back({explained(picked, *state.proving, say), Tone::caution});
    body.picture = slip_picture(state, picked.slip, say);
    view.body = std::move(body);
    view.footer = proof_footer(state);
    if (const auto again = to_tape_again(state)) {
        // One reading against all others may be a slip of the tape: first that is taped once more.
        view.footer.buttons.push_back(remedy_button(state, picked, say));
        view.footer.buttons.back().label = "Correct it";  // what, the row says
        return add_main(view.footer, press_button("again", "First tape again: " + span_name(say, readings_of(state)[*again].span), TapeAgain{*again}));
    }
    if (const auto more = more_button(state)) view.footer.buttons.push_back(*more);
    add_main(view.footer, remedy_button(state, picked, say));
}

void fill_verdict(const State& state, const ProofSpeech& say, ScreenView& view) {
    switch (state.proving->proof.verdict) {
        case ProofVerdict::consistent: return state.proving->enough ? fill_agrees(state, say, view) : fill_too_few(state, say, view);
        case ProofVerdict::slip: return fill_slips(state, say, view);
        case ProofVerdict::unexplained: return fill_unexplained(state, say, view);
    }
}

std::string place_of(const State& state) {
    const std::size_t taken = readings_of(state).size();
    if (state.looks.retake) return "tape check, reading " + std::to_string(*state.looks.retake + 1) + " again";
    switch (state.proving->stage) {
        case ProofStage::reading: return "tape check, reading " + std::to_string(taken + 1);
        case ProofStage::hand: return "tape check, left or right";
        case ProofStage::verdict: return "tape check, " + counted(taken, "reading", "readings");
    }
    return "";
}

}  // namespace

void fill_proof(const State& state, ScreenView& view) {
    const ProofSpeech say = speech_of(state);
    view.header = entry_header(state, state.entry->line().name);
    view.header.title = state.entry->line().name;
    view.header.place = place_of(state);
    view.header.chips = {unit_word(say.tape.unit)};
    if (state.looks.retake) return fill_taping(state, say, readings_of(state)[*state.looks.retake].span, view);
    switch (state.proving->stage) {
        case ProofStage::reading: return fill_taping(state, say, state.proving->task->span, view);
        case ProofStage::hand: return fill_hand(state, say, view);
        case ProofStage::verdict: return fill_verdict(state, say, view);
    }
}

std::optional<TextView> proof_note(ProofStanding standing, const std::optional<LineProof>& kept) {
    const std::string said = proof_sentence(standing, kept ? kept->taken.readings.size() : 0);
    if (said.empty()) return std::nullopt;
    return TextView{said, standing == ProofStanding::agrees ? Tone::go : standing == ProofStanding::begun ? Tone::plain : Tone::caution};
}

}  // namespace tubewright
