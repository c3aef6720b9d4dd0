// A tube with a bend that came out a little off: what can be done, and one of those ways taken.

#include <algorithm>
#include <cmath>

#include "state/doing.h"
#include "state/rescue_look.h"

namespace tubewright {
namespace {

/// What only rounding moved is where it was: marks are written down to a hundredth of a millimetre.
constexpr Length rounded{0.011};

MadeReadings readings_of(const Sheet& sheet, const LineWork& work, std::size_t steps) {
    MadeReadings readings;
    readings.angles = measured_angles(sheet, work);
    if (steps > work.made.size()) readings.angles[sheet.steps[work.step].bend] = *work.last_reading;
    const auto made = [&](std::size_t bend) { return std::any_of(sheet.steps.begin(), sheet.steps.begin() + static_cast<std::ptrdiff_t>(steps), [&](const Step& step) { return step.bend == bend; }); };
    for (const TurnReading& turn : work.turns)
        if (made(turn.bend) && made(turn.against)) readings.turns.push_back(turn);
    for (const MadeTape& tape : work.tapes)
        if (tape.tape.span.to < sheet.layout->part.bends.size() + 2) readings.tapes.push_back({tape.tape, std::min(tape.steps, steps)});
    return readings;
}

RescueQuestion question_of(const State& state, const LineWork& work, const MadeReadings& readings, std::size_t steps) {
    RescueQuestion question;
    question.sheet = *sheet_in_hand(state);
    if (work.saved) question.wanted = wanted_sheet(state, *state.line).layout->part;
    question.steps_done = steps;
    question.made = as_made(question.sheet, steps, readings);
    question.on_bender = false;  // to pull on is offered beside, and asks nothing of the other bends
    return question;
}

std::vector<Sheet> wanted_sheets(const State& state) {
    std::vector<Sheet> sheets = state.sheets;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        const auto found = state.work.lines.find(line_key(state.job_id, sheets[i].line.name));
        if (found != state.work.lines.end() && found->second.saved) sheets[i] = wanted_sheet(state, i);
    }
    return sheets;
}

/// Of marks that stay where they are nothing is said.
void keep_ink(const State& state, LineWork& work) {
    const Sheet then = sheet_of_cut(state, work);
    const std::vector<InkMove> moves = ink_moves(then, work.inked, work.made.size());
    if (std::all_of(moves.begin(), moves.end(), [](const InkMove& move) { return std::abs(move.by.mm) <= rounded.mm; })) work.inked = inking_of(then);
}

/// With the bend in hand pulled on to its target: it takes its tube from the lever side, all else stays.
std::optional<TubePlan> pulled_again(const State& state, const RescueLook& look) {
    const Step* step = step_in_hand(state);
    if (!look.reading || !step || verdict(step->target, *look.reading) != Verdict::under) return std::nullopt;
    const LineWork work = work_in_hand(state);
    if (pull_again_to(look.sheet, *step, work, belief_in_hand(state, work, *look.reading)) > look.sheet.line.bender.max_angle) return std::nullopt;
    TubePlan plan = look.as_it_is;
    plan.bends[step->bend].angle = step->target;
    return plan;
}

std::shared_ptr<const RescueLook> looked_at(const State& state, std::size_t steps) {
    const LineWork work = work_in_hand(state);
    const MadeReadings readings = readings_of(*sheet_in_hand(state), work, steps);
    const RescueQuestion question = question_of(state, work, readings, steps);
    auto look = std::make_shared<RescueLook>();
    look->found = rescue(question);
    look->made = question.made.bends;
    look->sheet = question.sheet;
    look->wanted = question.wanted ? *question.wanted : question.sheet.layout->part;
    look->as_it_is = question.made.plan;
    look->tolerance = question.limits.ends;
    if (steps > work.made.size()) look->reading = work.last_reading;
    if (look->found.ways.empty()) look->good = still_good(question.sheet, look->made, question.made.plan, wanted_sheets(state));
    look->pulled = pulled_again(state, *look);
    if (look->pulled) look->pulled_off = ends_off(laid_over(key_places(look->wanted), key_places(part_of(*look->pulled)), look->tolerance));
    look->more = more_to_read(question, readings);
    return look;
}

/// Takes a reading, or takes one back, and works the ways out anew. A turn goes into the log of turns, or out again.
void change_readings(Doing& doing, const LineWork& work, const std::optional<TurnReading>& turn, bool taken) {
    const State& state = doing.state;
    Work next = state.work;
    next.lines[line_key(state.job_id, sheet_in_hand(state)->line.name)] = work;
    if (turn) log_turn(state, next, work, turn->bend, turn->against, taken ? std::optional(turn->read) : std::nullopt);
    change_work(doing, std::move(next));
    work_out_rescue_anew(doing);
}

}  // namespace

bool is_of_rescue(Screen screen) { return screen == Screen::rescue || screen == Screen::rescue_more || screen == Screen::rescue_read; }

std::optional<std::size_t> steps_to_save(const State& state) {
    const Step* step = step_in_hand(state);
    if (!step) return std::nullopt;
    const LineWork work = work_in_hand(state);
    if (steps_begun(*sheet_in_hand(state), work) > work.made.size() + 1) return std::nullopt;  // gone back from: those after it are bent
    if (work.move == Move::check && work.last_reading) {
        // A lever that went further than it was told makes a bend that is over, and a tube that can be saved all the same.
        const Belief believed = belief_in_hand(state, work, *work.last_reading);
        const bool can_be = believed == Belief::sound || (believed == Belief::past_the_set && verdict(step->target, *work.last_reading) == Verdict::over && !is_other_scale(*step, *work.last_reading));
        return can_be ? std::optional(work.made.size() + 1) : std::nullopt;
    }
    const bool begun = work.pulled.contains(step->bend) || work.move == Move::pull || work.move == Move::check;
    return begun || work.made.empty() ? std::nullopt : std::optional(work.made.size());
}

void look_at_rescue(Doing& doing) {
    State& state = doing.state;
    if (state.looks.screen != Screen::bench && state.looks.screen != Screen::wrong) return;
    const auto steps = steps_to_save(state);
    if (!steps) return;
    state.rescue = looked_at(state, *steps);
    show_beside(state, Screen::rescue);
}

void work_out_rescue_anew(Doing& doing) {
    State& state = doing.state;
    if (!is_of_rescue(state.looks.screen) || state.rescue) return;
    const auto steps = steps_to_save(state);
    if (!steps) return;
    state.rescue = looked_at(state, *steps);
    state.looks.picked_way = 0;
    if (state.looks.screen == Screen::rescue_read) show_beside(state, Screen::rescue);
}

void pick_way(Doing& doing, std::size_t row) {
    const State& state = doing.state;
    if (state.looks.screen != Screen::rescue || !state.rescue) return;
    if (row < state.rescue->found.ways.size() + (state.rescue->pulled ? 1 : 0)) doing.state.looks.picked_way = row;
}

void ask_reading(Doing& doing, std::size_t which) {
    State& state = doing.state;
    if (state.looks.screen != Screen::rescue_more || !state.rescue || which >= state.rescue->more.readings.size()) return;
    show_beside(state, Screen::rescue_read);
    state.looks.to_read = which;
}

const ToRead* reading_asked(const State& state) {
    if (state.looks.screen != Screen::rescue_read || !state.rescue || state.looks.to_read >= state.rescue->more.readings.size()) return nullptr;
    return &state.rescue->more.readings[state.looks.to_read];
}

std::optional<double> typed_reading_asked(const State& state) {
    const ToRead* asked = reading_asked(state);
    const auto number = typed_number(state.looks.typed);
    if (!asked || !number) return std::nullopt;
    if (asked->what == ToRead::What::turn) return *number <= 180 ? number : std::nullopt;
    return *number > 0 ? std::optional(reader_unit(state) == Unit::inch ? *number * 25.4 : *number) : std::nullopt;
}

std::optional<double> past_belief(const State& state, bool right) {
    const ToRead* asked = reading_asked(state);
    const auto typed = typed_reading_asked(state);
    if (!asked || !typed) return std::nullopt;
    const bool turn = asked->what == ToRead::What::turn;
    const double off = turn ? wrapped({(right ? *typed : -*typed) - asked->foreseen}).deg : *typed - asked->foreseen;
    return std::abs(off) > asked->most_off ? std::optional(off) : std::nullopt;
}

void turn_is(Doing& doing, bool right) {
    const State& state = doing.state;
    const ToRead* asked = reading_asked(state);
    const auto typed = typed_reading_asked(state);
    if (!asked || asked->what != ToRead::What::turn || !typed || past_belief(state, right)) return;
    LineWork work = work_in_hand(state);
    const TurnReading turn{asked->bend, asked->against, wrapped({right ? *typed : -*typed})};
    work.turns.push_back(turn);
    change_readings(doing, work, turn, true);
}

void next_at_reading(Doing& doing) {
    const State& state = doing.state;
    const ToRead* asked = reading_asked(state);
    const auto typed = typed_reading_asked(state);
    if (!asked || asked->what != ToRead::What::tape || !typed || past_belief(state, false)) return;
    LineWork work = work_in_hand(state);
    work.tapes.push_back({{asked->span, {*typed}}, state.rescue->made.size()});
    change_readings(doing, work, std::nullopt, true);
}

void drop_reading(Doing& doing, std::size_t which) {
    const State& state = doing.state;
    if (state.looks.screen != Screen::rescue_more || !state.rescue) return;
    LineWork work = work_in_hand(state);
    const std::size_t turns = work.turns.size();
    const auto turn = which < turns ? std::optional(work.turns[which]) : std::nullopt;
    if (turn) work.turns.erase(work.turns.begin() + static_cast<std::ptrdiff_t>(which));
    else if (which - turns < work.tapes.size()) work.tapes.erase(work.tapes.begin() + static_cast<std::ptrdiff_t>(which - turns));
    else return;
    change_readings(doing, work, turn, false);
}

void forget_readings(const Sheet& sheet, LineWork& work, std::size_t step) {
    const std::size_t bend = sheet.steps[step].bend;
    std::erase_if(work.turns, [&](const TurnReading& turn) { return turn.bend == bend || turn.against == bend; });
    // Taped before it was made, it is another matter; and a bend outside of what was taped does not move it.
    std::erase_if(work.tapes, [&](const MadeTape& tape) { return tape.steps > step && tape.tape.span.from <= bend + 1 && bend + 1 <= tape.tape.span.to; });
}

/// The bend in hand stays as it reads and is written down; the tube is made to the plan from there on.
void take_rescue(Doing& doing, std::size_t way) {
    State& state = doing.state;
    const auto look = state.rescue;
    if (state.looks.screen != Screen::rescue || !look || way >= look->found.ways.size()) return;
    const Step* step = step_in_hand(state);
    if (look->reading && !step) return;  // something came into its way meanwhile
    const RescueWay& taken = look->found.ways[way];
    LineWork work = work_in_hand(state);
    Work next = state.work;
    if (look->reading) write_bend_down(state, next, work, look->reading, verdict(step->target, *look->reading) == Verdict::over, false);
    if (!taken.changes.empty()) {
        work.saved = SavedPlan{taken.plan, work.made.size()};
        keep_ink(state, work);
    }
    next.lines[line_key(state.job_id, sheet_in_hand(state)->line.name)] = work;
    change_work(doing, std::move(next));
    state.rescue.reset();
    show(state, bar_to_start(state) == Bar::none ? Screen::bench : Screen::line);
}

}  // namespace tubewright
