// The check: our own keypad for what the protractor says, and what follows from it.

#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

std::string typed_why_not(const State& state) {
    if (state.looks.typed.empty()) return "nothing typed yet";
    return typed_reading(state) ? "" : "a bend reads from 0 to 180";
}

std::string other_scale_words(Angle reading, const Tape& tape) {
    return "Is that the other scale of the protractor? It would be " + text(Angle{180} - reading, tape) + " then.";
}

/// What the entry would mean, said while it is typed.
TextView entry_words(const State& state, const Step& step) {
    const auto reading = typed_reading(state);
    const Tape tape = reader_tape(state);
    if (reading && is_other_scale(step, *reading)) return {other_scale_words(*reading, tape), Tone::caution};
    if (!reading) return {state.looks.typed.empty() ? "Take it out, lay the protractor on." : "That is no reading: 0 to 180 degrees.", state.looks.typed.empty() ? Tone::plain : Tone::stop};
    switch (belief(*sheet_in_hand(state), step, work_in_hand(state), *reading)) {
        case Belief::past_the_set: return {"More than the lever was pulled to: read it again.", Tone::caution};
        case Belief::opened_too_far: return {"Less than it can spring back to: read it again.", Tone::caution};
        case Belief::opened_more:
        case Belief::sound: break;
    }
    switch (verdict(step.target, *reading)) {
        case Verdict::right: return {"right", Tone::go};
        case Verdict::under: return {text(step.target - *reading, tape) + " under: it can be pulled again", Tone::caution};
        case Verdict::over: return {text(*reading - step.target, tape) + " over its target", Tone::stop};
    }
    return {};
}

void fill_keypad(const State& state, const Step& step, ScreenView& view) {
    const Tape tape = reader_tape(state);
    KeypadBody body;
    body.asks = "What does the protractor say?";
    body.entry = state.looks.typed;
    body.unit = "degrees";
    body.lines = {{"wanted " + text(step.target, tape) + ", within " + text(Angle{0.5}, tape)}, entry_words(state, step)};
    body.keys = number_keys(true);
    body.columns = 4;
    body.moves = moves_of(state);
    // The keys leave room for short chips; what is done needs its number no more.
    for (MoveChip& chip : body.moves)
        if (chip.label == "Mark" || chip.label == "Turn") chip.value.clear();
    view.body = std::move(body);
    view.footer = bench_footer_of(state, unless(press_button("next", "Use this reading", Next{}), typed_why_not(state)));
    // Room for five. While nothing is typed the main button can't be pressed: then Redo stands in its place.
    auto& buttons = view.footer.buttons;
    std::erase_if(buttons, [](const ButtonView& button) { return button.id == "redo"; });
    buttons.insert(buttons.end() - 1, press_button("pass", "Not measured", PassCheck{}));
    if (!can_redo(state) || !state.looks.typed.empty()) return;
    buttons.back() = press_button("redo", "Redo", Redo{});
    view.footer.main_id.clear();
}

Belief belief_of(const State& state, Angle reading) { return belief_in_hand(state, work_in_hand(state), reading); }

/// It is learned from once it was measured again; either way the work goes on.
std::string doubt_words(const State& state, Angle reading) {
    const LineWork work = work_in_hand(state);
    if (!is_doubted(state, work, reading)) return "";
    const Tape tape = reader_tape(state);
    return "You read " + text(reading, tape) + "; " + text(expected_reading(state, work), tape) + " was expected. Measure again, or keep it.";
}

/// The person looks at the bend again; what the reading would mean otherwise.
TextView second_look(const State& state, const Step& step, Angle reading, const std::string& else_said) {
    if (is_other_scale(step, reading)) return {other_scale_words(reading, reader_tape(state)), Tone::caution};
    return {else_said};
}

ButtonView pull_again_button(const State& state, const Step& step) {
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const Belief believed = belief_of(state, *work.last_reading);
    const Angle to = pull_again_to(sheet, step, work, believed);
    const std::string label = believed == Belief::sound ? "Pull again to " : believed == Belief::opened_more ? "Pull to " : "Pull to the sheet's ";
    return unless(press_button("pull-again", label + lever_text(to, reader_tape(state)), PullAgain{}), to > sheet.line.bender.max_angle ? "the bender stops before that" : "");
}

ChoiceBody under_body(const State& state, const Step& step, Angle reading) {
    const Tape tape = reader_tape(state);
    const std::string to = lever_text(pull_again_to(*sheet_in_hand(state), step, work_in_hand(state), belief_of(state, reading)), tape);
    ChoiceBody body;
    body.heading = "Under the target: pull again.";
    body.hero = text(reading, tape);
    body.lines = {{text(step.target - reading, tape) + " under " + text(step.target, tape), Tone::caution},
                  {"Lay it on the same mark, same turn, and pull to " + to + ": what is missing, and what that springs back."}};
    body.choices = {press_button("again", "Measure again", Back{}), press_button("keep", "Keep it as it is", KeepBend{})};
    if (const auto save = rescue_button(state)) body.choices.push_back(*save);
    return body;
}

/// More than was foretold, yet not past believing: a lever that stopped short is likelier, and pulling on from
/// where it never was would bend too far.
ChoiceBody opened_more_body(const State& state, const Step& step, Angle reading) {
    const Tape tape = reader_tape(state);
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const std::string set = lever_text(set_in_force(step, work), tape), on = lever_text(pull_on_to(sheet, step, work), tape);
    ChoiceBody body;
    body.heading = "Did the lever reach " + set + "?";
    body.hero = text(reading, tape);
    body.lines = {{text(on_lever(set_in_force(step, work)) - reading, tape) + " less than " + set + ": more than this tube should spring back.", Tone::caution},
                  {"If you are not sure, pull to " + set + ". Only if the lever was there, pull on to " + on + "."}};
    body.choices = {press_button("again", "Measure again", Back{}),
                    unless(press_button("pull-on", "It was there: pull on to " + on, PullAgain{true}), pull_on_to(sheet, step, work) > sheet.line.bender.max_angle ? "the bender stops before that" : ""),
                    press_button("keep-there", "It was there: keep it", KeepBend{true}), press_button("keep", "Not sure: keep it", KeepBend{})};
    return body;
}

/// A reading that is no springback: nothing is calculated with it.
ChoiceBody opened_too_far_body(const State& state, const Step& step, Angle reading) {
    const Tape tape = reader_tape(state);
    const Angle set = set_in_force(step, work_in_hand(state));
    ChoiceBody body;
    body.heading = "More than it can spring back: was the lever pulled to " + lever_text(set, tape) + "?";
    body.hero = text(reading, tape);
    body.lines = {{text(on_lever(set) - reading, tape) + " less than " + lever_text(set, tape) + ": no tube opens so far.", Tone::caution},
                  second_look(state, step, reading, "Measure again. If the lever stopped short, pull to " + lever_text(step.set, tape) + ", no further.")};
    body.choices = {press_button("again", "Measure again", Back{})};
    return body;
}

ChoiceBody over_body(const State& state, const Step& step, Angle reading) {
    const Tape tape = reader_tape(state);
    ChoiceBody body;
    body.heading = "Over the target. A bend is never bent back.";
    body.hero = text(reading, tape);
    body.lines = {{text(reading - step.target, tape) + " over " + text(step.target, tape), Tone::stop},
                  {"If kept: with end A in its place, end B is " + text(far_end_off(*sheet_in_hand(state), work_in_hand(state), step.bend, reading), tape) + " off."}};
    body.choices = {press_button("again", "Measure again", Back{}), press_button("keep", "Keep the bend", KeepBend{})};
    if (belief_of(state, reading) == Belief::sound) {
        if (const std::string doubt = doubt_words(state, reading); !doubt.empty()) body.lines[0] = {doubt, Tone::stop};
        if (const auto save = rescue_button(state)) body.choices.push_back(*save);
        return body;
    }
    body.heading = "More than it was pulled to: measure again.";
    body.lines[0] = second_look(state, step, reading, "No tube closes after the lever is let go; it went to " + lever_text(set_in_force(step, work_in_hand(state)), tape) + ".");
    body.lines[0].tone = Tone::stop;
    body.choices.back().label = "Hold: keep the bend";
    body.choices.back().held = true;
    if (const auto save = rescue_button(state)) body.choices.push_back(*save);
    return body;
}

ChoiceBody under_its_target(const State& state, const Step& step, Angle reading) {
    switch (belief_of(state, reading)) {
        case Belief::opened_too_far: return opened_too_far_body(state, step, reading);
        case Belief::opened_more: return opened_more_body(state, step, reading);
        case Belief::sound:
        case Belief::past_the_set: break;
    }
    return under_body(state, step, reading);
}

/// A bend that came out right, looked at again on the way back.
ChoiceBody right_body(const State& state, const Step& step, Angle reading) {
    const Tape tape = reader_tape(state);
    ChoiceBody body;
    body.heading = capital(bend_name(step.bend)) + " is right.";
    body.hero = text(reading, tape);
    body.lines = {{"wanted " + text(step.target, tape), Tone::go}};
    body.choices = {press_button("again", "Measure again", Back{})};
    const LineWork work = work_in_hand(state);
    if (is_doubted(state, work, reading)) {
        const Angle set = on_lever(set_in_force(step, work)), foretold = set - released(sheet_in_hand(state)->springback, set);
        body.lines.push_back({"It sprang back " + text(set - reading, tape) + "; " + text(foretold, tape) + " was foretold. Measure again, and the next pull knows it.", Tone::caution});
        body.lines.push_back({"Go on without, and nothing is learned from it."});
    }
    return body;
}

}  // namespace

std::vector<ButtonView> number_keys(bool fractions) {
    std::vector<ButtonView> keys;
    for (const char* key : {"7", "8", "9", "back", "4", "5", "6", "clear", "1", "2", "3", ".", "0"}) keys.push_back(press_button(std::string("key-") + key, key == std::string("back") ? "rub out" : key, Key{key}));
    if (fractions)
        for (const char* key : {"1/4", "1/2", "3/4"}) keys.push_back(press_button(std::string("key-") + key, key, Key{key}));
    return keys;
}

void fill_reading(const State& state, ScreenView& view) {
    const LineWork work = work_in_hand(state);
    const Step& step = *step_in_hand(state);
    view.header = line_header(state, bend_place(state));
    view.ribbon = ribbon_of(state, false);
    if (!work.last_reading) return fill_keypad(state, step, view);
    ChoiceBody body;
    switch (verdict(step.target, *work.last_reading)) {
        case Verdict::right:
            body = right_body(state, step, *work.last_reading);
            view.footer = bench_footer_of(state, press_button("next", "Right → go on", Next{}));
            break;
        case Verdict::under:
            body = under_its_target(state, step, *work.last_reading);
            view.footer = bench_footer_of(state, pull_again_button(state, step));
            break;
        case Verdict::over:
            body = over_body(state, step, *work.last_reading);
            view.footer = side_footer(state);
            view.footer.buttons.insert(view.footer.buttons.begin(), press_button("wrong", "Went wrong", WentWrong{}, Weight::warn));
            break;
    }
    body.moves = moves_of(state);
    view.body = std::move(body);
}

}  // namespace tubewright
