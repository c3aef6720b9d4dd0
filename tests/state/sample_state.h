#pragma once
// A job made by hand, and fingers to walk through it. Invented, with figures that are easy to follow.

#include <string>
#include <vector>

#include "bench/samples.h"
#include "state/rules.h"
#include "state/state.h"

namespace tubewright {

inline Length inches(double value) { return {value * 25.4}; }

inline Fitting flare() {
    Fitting fitting;
    fitting.id = "flare-37-single";
    fitting.name = "37° single flare";
    fitting.flared = true;
    fitting.allowance = inches(0.125);
    fitting.straight_needed = inches(1.25);
    fitting.slide_on = {{"nut", "Tube nut", "threads facing the end"}, {"sleeve", "Sleeve", "wide side facing the end"}};
    return fitting;
}

/// Two bends in two planes, then a line of one, then one that no bender of ours can make, then a straight one.
inline Job sample_job() {
    Job job;
    job.name = "Utility trailer brake lines";
    job.service = Service::brake;
    Line crossover = line_of({6.5, 4.25, 12}, {{90, 0}, {45, 90}});
    crossover.name = "axle crossover";
    crossover.quantity = 2;
    crossover.a = {flare(), inches(0.125), {}};
    crossover.b = {flare(), inches(0.125), inches(0.5)};
    crossover.stick = inches(240);
    Line rear = line_of({5, 8}, {{60, 0}});
    rear.name = "left rear";
    Line tight = line_of({2, 0.6, 2}, {{90, 0}, {90, 180}});
    tight.name = "too tight";
    Line straight = line_of({10}, {});
    straight.name = "straight";
    for (Line* line : {&crossover, &rear, &tight, &straight}) line->bend_notes.resize(line->route.bends.size());
    job.lines = {crossover, rear, tight, straight};
    return job;
}

inline Checklists sample_checklists() {
    Checklists lists;
    lists.prepare = {{"square", "Cut square, with a light feed.", {}, {}, {}},
                     {"deburr", "Deburred inside and outside.", {}, {}, {}},
                     {"fuel", "Fuel vapour and sparks are under control.", {Service::fuel}, {}, {}}};
    lists.finish = {{"dry-fit", "Dry fit: both ends meet their places.", {}, {}, {}}, {"flare", "Second end flared and looked at.", {}, {}, {"flare-37-single"}}};
    lists.hand_over = {{"leak", "Every joint dry-wiped and looked at under pressure.", {}, {}, {}}};
    lists.cautions = {{"eyes", "The cut edge is sharp: glasses and gloves.", {}, {}, {}},
                      {"brake", "Brake work: follow the vehicle maker's data and local law; it may need a licensed person.", {Service::brake}, {}, {}}};
    return lists;
}

/// Best orders that are asked for are looked for at once.
inline StateStep orders_found(StateStep step) {
    for (const Request& request : step.requests) {
        const auto* asked = std::get_if<FindOrder>(&request);
        if (!asked) continue;
        const OrderWish wish{step.state.orders[asked->line].opening, std::nullopt};
        const auto verdict = std::make_shared<const OrderVerdict>(find_order(step.state.sheets[asked->line], wish, Asked::order_and_why));
        step.state = apply(std::move(step.state), OrderIs{asked->question, verdict}).state;
    }
    return step;
}

inline State touched(State state, const std::vector<Action>& actions) {
    for (const Action& action : actions) state = orders_found(apply(std::move(state), action)).state;
    return state;
}

inline State job_open() {
    State state;
    state.checklists = sample_checklists();
    return touched(state, {DayIs{"2026-11-25"}, BookRead{}, ShelfRead{{{"trailer", "jobs/trailer.json", "Utility trailer brake lines", {"axle crossover"}, ""}}},
                           JobRead{"trailer", "jobs/trailer.json", sample_job()}});
}

inline State at_prepare(const std::string& line = "axle crossover", double stick_in = 240) {
    return touched(job_open(), {OpenLine{line}, NewStick{inches(stick_in)}, Next{}});
}

inline State all_ticked(State state) {
    const auto list = current_list(work_in_hand(state));
    if (!list) return state;
    for (const TickItem& item : tick_items(state, *list))
        if (!work_in_hand(state).ticks.contains(item.id)) state = touched(state, {Tick{item.id}});
    return state;
}

/// At the first bend's mark.
inline State at_first_bend(const std::string& line = "axle crossover") { return touched(all_ticked(at_prepare(line)), {Next{}, Next{}}); }

/// At the check of the bend in hand, which is at its mark.
inline State at_check(State state) { return touched(std::move(state), {Next{}, Next{}, Next{}}); }

inline State reading(State state, const std::string& keys) {
    for (const char key : keys) state = touched(std::move(state), {Key{std::string(1, key)}});
    return touched(std::move(state), {Next{}});
}

/// The whole piece, every check passed over.
inline State piece_made(const std::string& line = "axle crossover") {
    State state = at_first_bend(line);
    while (work_in_hand(state).stage == Stage::bending) state = touched(at_check(std::move(state)), {PassCheck{}});
    state = touched(all_ticked(std::move(state)), {Next{}});
    return touched(all_ticked(std::move(state)), {Next{}});
}

}  // namespace tubewright
