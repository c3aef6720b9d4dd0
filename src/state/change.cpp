// How the record and the settings change, and how they come back.

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/tolerance.h"
#include "bench/settled_order.h"
#include "bench/tube_plan.h"
#include "state/doing.h"

namespace tubewright {
namespace {

/// A day's touches; one record is a few kilobytes.
constexpr std::size_t most_past = 200;

void ask_to_save(Doing& doing) {
    if (doing.state.book == BookStanding::without) return;  // there is nothing to save it in
    doing.requests.push_back(SaveWork{});
}

SheetChoice choice_for(const State& state, std::size_t i) {
    const Work& work = state.work;
    const Bender& bender = state.job->lines[i].bender;
    SheetChoice choice;
    choice.springback = learned_springback(state.springbacks[i].get());
    choice.hand = state.hand;
    const auto found = work.benders.find(bender.id);
    if (found == work.benders.end()) return choice;
    choice.set_up = found->second.set_up;
    for (const ReferenceMark& mark : bender.marks)
        if (mark.name == found->second.mark) choice.mark = mark.name;
    return choice;
}

LineWork line_work(const Work& work, const std::string& job_id, const Sheet& sheet) {
    const auto found = work.lines.find(line_key(job_id, sheet.line.name));
    return found == work.lines.end() ? LineWork{} : found->second;
}

/// Whether some line of the open job would now be made in another order.
bool other_orders(const State& state, const Work& next) {
    for (const Sheet& sheet : state.sheets) {
        const LineWork before = line_work(state.work, state.job_id, sheet), after = line_work(next, state.job_id, sheet);
        if (before.order != after.order || before.opening != after.opening) return true;
    }
    return false;
}

Sheet sheet_for(Doing& doing, std::size_t i);

/// What is in the way is looked at for the bends still to be made: of a cut piece they are fewer now, or more again.
void look_at_rest(Doing& doing, const Work& before) {
    State& state = doing.state;
    for (std::size_t i = 0; i < state.sheets.size(); ++i) {
        const LineWork was = line_work(before, state.job_id, state.sheets[i]), is = line_work(state.work, state.job_id, state.sheets[i]);
        if (is.cut && (was.step != is.step || was.stage != is.stage || was.pulled_with != is.pulled_with || was.pulled != is.pulled || was.saved != is.saved)) state.sheets[i] = sheet_for(doing, i);
    }
}

void put_in_place(Doing& doing, Work next) {
    doing.state.rescue.reset();
    const Work& was = doing.state.work;
    const bool bends = next.lots != was.lots || standing_bends(next) != standing_bends(was) || standing_turns(next) != standing_turns(was) || standing_legs(next) != standing_legs(was);
    const bool again = bends || next.benders != doing.state.work.benders || other_orders(doing.state, next);
    const Work before = std::exchange(doing.state.work, std::move(next));
    if (bends) work_out_springbacks(doing.state);
    if (again) work_out_sheets(doing);
    else look_at_rest(doing, before);
    ask_to_save(doing);
}

bool same_line_work(const Work& a, const Work& b, const std::string& key) {
    const auto in_a = a.lines.find(key), in_b = b.lines.find(key);
    const LineWork fresh;
    return (in_a == a.lines.end() ? fresh : in_a->second) == (in_b == b.lines.end() ? fresh : in_b->second);
}

bool only_opening_differs(LineWork a, const LineWork& b) {
    a.opening = b.opening;
    return a == b;
}

bool only_later_differs(LineWork a, const LineWork& b) {
    a.later = b.later;
    return a == b;
}

bool only_readings_differ(LineWork a, const LineWork& b) {
    a.turns = b.turns, a.tapes = b.tapes;
    return a == b;
}

/// What was changed on one of these screens comes back on it.
bool is_seen_here(const State& state, const LineWork& before) {
    const LineWork now = work_in_hand(state);
    if (state.looks.screen == Screen::order) return only_opening_differs(before, now);
    if (is_of_rescue(state.looks.screen)) return only_readings_differ(before, now);
    return state.looks.screen == Screen::later && !now.later.empty() && only_later_differs(before, now);
}

/// What is known of the marks goes back; the marks on the tube don't.
void tell_of_ink(State& state, const Work& before, const std::string& sentence) {
    for (const auto& [key, is] : state.work.lines) {
        const auto was = before.lines.find(key);
        if (was != before.lines.end() && is.cut && !is.inked.empty() && !was->second.inked.empty() && !is_same_ink(is.inked, was->second.inked)) state.looks.notice = sentence;
    }
}

/// After undo or redo: the line whose record changed comes into hand, and the bench shows it. Only
/// an order that is being made by hand goes on being made, and what was left for later goes on being ticked.
void follow(State& state, const Work& before) {
    std::optional<std::size_t> changed;
    for (std::size_t i = 0; i < state.sheets.size(); ++i)
        if (!same_line_work(before, state.work, line_key(state.job_id, state.sheets[i].line.name)) && (!changed || state.line == i)) changed = i;
    if (changed && changed == state.line && is_seen_here(state, line_work(before, state.job_id, state.sheets[*changed]))) return;
    if (changed) state.line = changed;
    if (changed || state.looks.screen == Screen::wrong) show(state, bar_to_start(state) == Bar::none ? Screen::bench : Screen::line);
}

}  // namespace

namespace {

/// An order by hand is shown from the touch on, held by the ends it was held by before; empty where there is none.
std::vector<Placing> hand_order(const Sheet& sheet, const std::vector<std::size_t>& opening, const OrderVerdict* before) {
    std::vector<Placing> order;
    if (opening.size() != sheet.steps.size()) return order;
    for (const Step& step : sheet.steps)
        if (std::find(opening.begin(), opening.end(), step.bend) == opening.end()) return order;
    for (const std::size_t bend : opening) {
        order.push_back({bend, End::A});
        for (const Placing& placing : before ? before->order : std::vector<Placing>{})
            if (placing.bend == bend) order.back().hook = placing.hook;
    }
    return order;
}

/// A cut tube keeps its marks, and a bend that is being pulled the springback that it was pulled with.
void lay_out_as_cut(SheetChoice& choice, const LineWork& work, const Line& line) {
    choice.laid_growth = work.laid_growth.value_or(physics_of(line).growth);
    if (work.stage == Stage::bending && work.pulled_with) choice.springback = work.pulled_with;
    choice.order = work.order;
}

/// What speaks against a bend that is made comes too late; as when the way was looked for, it is none of the steps to come.
void tell_only(Sheet& sheet, const SavedPlan& saved) {
    std::vector<Finding> too_late;
    std::erase_if(sheet.findings, [&](const Finding& finding) {
        const auto made_until = sheet.steps.begin() + static_cast<std::ptrdiff_t>(std::min(saved.made, sheet.steps.size()));
        const bool made = finding.bend && finding.code != "hits-itself" && std::any_of(sheet.steps.begin(), made_until, [&](const Step& step) { return step.bend == *finding.bend; });
        if (!made || finding.severity != Severity::stop) return false;
        too_late.push_back(finding);
        return true;
    });
    for (Finding& finding : too_late) {
        finding.severity = Severity::caution;
        add_finding(sheet, std::move(finding));
    }
}

/// Of a tube that was saved only where the job still wants what it was cut for: else the record no longer fits, and says so.
Sheet cut_sheet(const Line& line, const SheetChoice& choice, const LineWork& work) {
    Sheet sheet = bend_sheet(line, choice);
    if (!work.saved || !sheet.layout || work.plan != plan_of(sheet) || work.saved->plan.bends.size() != line.route.bends.size()) return sheet;
    Sheet saved = bend_sheet(line_as_planned(line, work.saved->plan), choice);
    if (!saved.layout) return sheet;
    tell_only(saved, *work.saved);
    return saved;
}

/// One line's sheet: in the order settled when it was cut, with what is in its way as the bender stands now; else
/// in the best one as far as it is known. Asks for that where it has not been asked yet.
Sheet sheet_for(Doing& doing, std::size_t i) {
    State& state = doing.state;
    const Line& line = state.job->lines[i];
    SheetChoice choice = choice_for(state, i);
    Sheet sheet = bend_sheet(line, choice);
    const LineWork work = line_work(state.work, state.job_id, sheet);
    if (work.cut) {
        lay_out_as_cut(choice, work, line);
        sheet = cut_sheet(line, choice, work);
        const std::size_t first = work.stage == Stage::finish || work.stage == Stage::done ? sheet.steps.size() : work.step;
        const Misfit against = misfit(sheet, work);  // of a piece that is no longer the sheet's there is nothing good to say
        const bool remeasured = state.orders[i].remeasured && (against == Misfit::none || against == Misfit::ink);
        std::vector<Finding> findings = settled_findings(sheet, first, remeasured);
        if (against == Misfit::none || against == Misfit::ink) look_at_other_rest(doing, i, sheet, choice, work, findings);
        else forget_other_rest(doing, state.orders[i]);
        for (Finding& finding : findings) add_finding(sheet, std::move(finding));
        return sheet;
    }
    LineOrder& order = state.orders[i];
    order.remeasured = false;
    forget_other_rest(doing, order);
    const bool same_springback = is_much_the_same(order.springback, sheet.springback);
    if (order.question == 0 || order.set_up != choice.set_up || order.opening != work.opening || !same_springback) {
        stop_finding(doing, order);
        if (order.set_up != choice.set_up || !same_springback) order.best_ends.reset();
        choice.order = hand_order(sheet, work.opening, order.verdict.get());
        order = {state.next_question++, true, 0, choice.set_up, work.opening, sheet.springback, nullptr, nullptr, order.best_ends};
        doing.requests.push_back(FindOrder{order.question, i});
        if (!choice.order.empty() && !order.best_ends) {  // as after switching on: it is only known once somebody looks
            order.best_question = state.next_question++;
            doing.requests.push_back(FindOrder{order.best_question, i, true});
        }
        return choice.order.empty() ? sheet : bend_sheet(line, choice);
    }
    if (order.verdict) return in_order(line, choice, *order.verdict);
    choice.order = hand_order(sheet, work.opening, nullptr);
    return choice.order.empty() ? sheet : bend_sheet(line, choice);
}

}  // namespace

Sheet sheet_of_cut(const State& state, const LineWork& work) {
    const Line& line = state.job->lines[*state.line];
    SheetChoice choice = choice_for(state, *state.line);
    lay_out_as_cut(choice, work, line);
    return cut_sheet(line, choice, work);
}

Sheet wanted_sheet(const State& state, std::size_t i) {
    const Line& line = state.job->lines[i];
    SheetChoice choice = choice_for(state, i);
    const LineWork work = line_work(state.work, state.job_id, state.sheets[i]);
    if (!work.cut) return state.sheets[i];
    lay_out_as_cut(choice, work, line);
    return bend_sheet(line, choice);
}

void work_out_sheets(Doing& doing) {
    State& state = doing.state;
    state.rescue.reset();
    state.sheets.clear();
    if (!state.job) return;
    state.orders.resize(state.job->lines.size());
    if (state.springbacks.size() != state.job->lines.size()) work_out_springbacks(state);
    for (std::size_t i = 0; i < state.job->lines.size(); ++i) state.sheets.push_back(sheet_for(doing, i));
}

void stop_finding(Doing& doing, const LineOrder& order) {
    if (order.looking) doing.requests.push_back(StopFinding{order.question});
    if (order.best_question != 0) doing.requests.push_back(StopFinding{order.best_question});
    if (order.rest.looking) doing.requests.push_back(StopFinding{order.rest.question});
}

void order_share(Doing& doing, const OrderShare& heard) {
    for (LineOrder& order : doing.state.orders)
        if (order.question == heard.question && order.looking) order.share = heard.share;
        else if (order.rest.question == heard.question && order.rest.looking) order.rest.share = heard.share;
    if (PlanLook& plan = doing.state.plan; plan.looking && plan.question == heard.question) plan.share = heard.share;
}

namespace {

void keep_best_ends(LineOrder& order, const Sheet& sheet, const OrderVerdict& best) {
    if (sheet.layout && best.outcome == OrderVerdict::Outcome::found) order.best_ends = ends_within(sheet, best.order);
}

}  // namespace

void order_is(Doing& doing, const OrderIs& heard) {
    State& state = doing.state;
    for (std::size_t i = 0; i < state.orders.size(); ++i) {
        LineOrder& order = state.orders[i];
        if (heard.question != 0 && order.best_question == heard.question && heard.verdict) {
            order.best_question = 0;
            keep_best_ends(order, state.sheets[i], *heard.verdict);
        }
        if (order.rest.question == heard.question && order.rest.looking && heard.verdict) {
            order.rest.looking = false;
            order.rest.verdict = heard.verdict;
            state.rescue.reset();  // worked out for the sheet as it was
            state.sheets[i] = sheet_for(doing, i);
            continue;
        }
        if (order.question != heard.question || !order.looking || !heard.verdict) continue;  // else a late answer
        order.looking = false;
        order.verdict = heard.verdict;
        order.by_hand = heard.by_hand;
        if (order.opening.empty()) keep_best_ends(order, state.sheets[i], *heard.verdict);
        state.sheets[i] = sheet_for(doing, i);
    }
}

void stop_looking(Doing& doing) {
    State& state = doing.state;
    if (!state.line || *state.line >= state.orders.size()) return;
    const LineOrder& order = state.orders[*state.line];
    const bool cut = work_in_hand(state).cut;
    if (!(cut ? order.rest.looking : order.looking)) return;
    const std::int64_t question = cut ? order.rest.question : order.question;
    doing.requests.push_back(StopFinding{question});
    OrderVerdict verdict;
    verdict.outcome = OrderVerdict::Outcome::cancelled;
    order_is(doing, {question, std::make_shared<const OrderVerdict>(verdict)});
}

void look_again(Doing& doing) {
    State& state = doing.state;
    if (!sheet_in_hand(state)) return;
    LineOrder& order = state.orders[*state.line];
    const bool cut = work_in_hand(state).cut;
    const auto& verdict = cut ? order.rest.verdict : order.verdict;
    if (!verdict || verdict->outcome != OrderVerdict::Outcome::cancelled) return;
    (cut ? order.rest.question : order.question) = 0;
    work_out_sheets(doing);
}

void change_work(Doing& doing, Work next) {
    State& state = doing.state;
    if (next == state.work) return;
    state.past.push_back({++state.last_undo_number, state.job_id, state.work});
    if (state.past.size() > most_past) state.past.erase(state.past.begin());
    state.future.clear();
    put_in_place(doing, std::move(next));
}

void change_line(Doing& doing, const LineWork& next) {
    const Sheet* sheet = sheet_in_hand(doing.state);
    if (!sheet) return;
    Work work = doing.state.work;
    work.lines[line_key(doing.state.job_id, sheet->line.name)] = next;
    change_work(doing, std::move(work));
}

void change_settings(Doing& doing, const Settings& next) {
    if (next == doing.state.settings) return;
    doing.state.settings = next;
    if (doing.state.book != BookStanding::without) doing.requests.push_back(SaveSettings{});
}

void undo(Doing& doing) {
    State& state = doing.state;
    if (!can_undo(state) || undo_is_of_bench(state)) return;
    const Work before = state.work;
    UndoStep back = std::move(state.past.back());
    state.past.pop_back();
    state.future.insert(state.future.begin(), {0, back.job, before});
    put_in_place(doing, std::move(back.work));
    tell_of_ink(state, before, "Undo moves no ink: a mark you rubbed out has to be inked again where it was.");
    if (before.lines == state.work.lines && before.rack != state.work.rack && !is_of_rack(state.looks.screen)) state.looks.notice = "Undone: what was last done on the rack.";
    if (before.joints != state.work.joints && !is_of_rack(state.looks.screen)) state.looks.notice = "Undone: what was last said of tees and unions.";
    follow(state, before);
    work_out_rescue_anew(doing);
}

void redo(Doing& doing) {
    State& state = doing.state;
    if (!can_redo(state)) return;
    const Work before = state.work;
    UndoStep again = std::move(state.future.front());
    state.future.erase(state.future.begin());
    state.past.push_back({++state.last_undo_number, again.job, before});
    put_in_place(doing, std::move(again.work));
    tell_of_ink(state, before, "Redo moves no ink: see that each mark is where you last inked it.");
    follow(state, before);
    work_out_rescue_anew(doing);
}

}  // namespace tubewright
