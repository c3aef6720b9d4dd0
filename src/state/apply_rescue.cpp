// A tube with a bend that came out a little off: what can be done, and one of those ways taken.

#include <algorithm>
#include <cmath>

#include "state/doing.h"
#include "state/rescue_look.h"

namespace tubewright {
namespace {

/// What only rounding moved is where it was: marks are written down to a hundredth of a millimetre.
constexpr Length rounded{0.011};

MadeReadings readings_of(const State& state, const Sheet& sheet, const LineWork& work, std::size_t steps) {
    MadeReadings readings;
    readings.angles = measured_angles(sheet, work);
    if (steps > work.made.size()) readings.angles[sheet.steps[work.step].bend] = *work_in_hand(state).last_reading;
    return readings;
}

RescueQuestion question_of(const State& state, std::size_t steps) {
    const LineWork work = work_in_hand(state);
    RescueQuestion question;
    question.sheet = *sheet_in_hand(state);
    if (work.saved) question.wanted = wanted_sheet(state, *state.line).layout->part;
    question.steps_done = steps;
    question.made = as_made(question.sheet, steps, readings_of(state, question.sheet, work, steps));
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

}  // namespace

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
    const RescueQuestion question = question_of(state, *steps);
    auto look = std::make_shared<RescueLook>();
    look->found = rescue(question);
    look->made = question.made.bends;
    look->sheet = question.sheet;
    look->wanted = question.wanted ? *question.wanted : question.sheet.layout->part;
    look->as_it_is = question.made.plan;
    look->tolerance = question.limits.ends;
    if (*steps > work_in_hand(state).made.size()) look->reading = work_in_hand(state).last_reading;
    if (look->found.ways.empty()) look->good = still_good(question.sheet, look->made, question.made.plan, wanted_sheets(state));
    show_beside(state, Screen::rescue);
    state.rescue = std::move(look);
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
