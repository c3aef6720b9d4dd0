#include "state/sample_state.h"

#include <algorithm>

#include "bench/samples.h"

namespace tubewright {

Fitting flare() {
    Fitting fitting;
    fitting.id = "flare-37-single";
    fitting.name = "37° single flare";
    fitting.flared = true;
    fitting.allowance = inches(0.125);
    fitting.straight_needed = inches(1.25);
    fitting.slide_on = {{"nut", "Tube nut", "threads facing the end"}, {"sleeve", "Sleeve", "wide side facing the end"}};
    return fitting;
}

Job sample_job() {
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

Job tank_job() {
    Job job = sample_job();
    Line line = line_of({8, 5, 6, 5, 6, 5, 8}, {{90, 0}, {45, 90}, {60, 180}, {30, 0}, {90, 90}, {45, 180}});
    line.name = "round the tank";
    line.bend_notes.resize(6);
    job.lines = {line};
    return job;
}

Checklists sample_checklists() {
    Checklists lists;
    lists.prepare = {{"square", "Cut square, with a light feed.", {}, {}, {}},
                     {"deburr", "Deburred inside and outside.", {}, {}, {}},
                     {"fuel", "Fuel vapour and sparks are under control.", {Service::fuel}, {}, {}}};
    lists.finish = {{"dry-fit", "Dry fit: both ends meet their places.", {}, {}, {}}, {"flare", "Second end flared and looked at.", {}, {}, {"flare-37-single"}}};
    lists.hand_over = {{"leak", "Every joint dry-wiped and looked at under pressure.", {}, {}, {}, "leak test under pressure"}};
    lists.cautions = {{"eyes", "The cut edge is sharp: glasses and gloves.", {}, {}, {}},
                      {"brake", "Brake work: follow the vehicle maker's data and local law; it may need a licensed person.", {Service::brake}, {}, {}}};
    return lists;
}

StateStep orders_found(StateStep step) {
    for (const Request& request : step.requests) {
        const auto* asked = std::get_if<FindOrder>(&request);
        if (!asked) continue;
        const auto wish = wish_of(step.state.orders[asked->line], *asked);
        if (!wish) continue;
        const LookedFor looked = look_for_order(step.state.sheets[asked->line], *wish);
        const auto by_hand = looked.by_hand ? std::make_shared<const HandFacts>(*looked.by_hand) : nullptr;
        step.state = apply(std::move(step.state), OrderIs{asked->question, std::make_shared<const OrderVerdict>(looked.verdict), by_hand}).state;
    }
    return step;
}

State touched(State state, const std::vector<Action>& actions) {
    for (const Action& action : actions) state = orders_found(apply(std::move(state), action)).state;
    return state;
}

State job_open() {
    State state;
    state.checklists = sample_checklists();
    return touched(state, {DayIs{"2026-11-25"}, BookRead{}, ShelfRead{{{"trailer", "jobs/trailer.json", "Utility trailer brake lines", {"axle crossover"}, ""}}},
                           JobRead{"trailer", "jobs/trailer.json", sample_job()}});
}

Length left_in_use(const Work& work) {
    for (const auto& [tube, piece] : work.in_use)
        if (const auto found = work.rack->pieces.find(piece); found != work.rack->pieces.end() && found->second.where == Whereabouts::rack) return measured(found->second.length);
    return {};
}

std::vector<Length> beside_in_use(const Work& work) {
    std::vector<Length> lengths;
    for (const auto& [number, piece] : work.rack->pieces) {
        const bool in_use = std::any_of(work.in_use.begin(), work.in_use.end(), [&, n = number](const auto& use) { return use.second == n; });
        if (piece.where == Whereabouts::rack && !in_use) lengths.push_back(measured(piece.length));
    }
    std::sort(lengths.rbegin(), lengths.rend());
    return lengths;
}

Rack rack_of(const Tube& tube, const std::vector<Length>& offcuts) {
    Work work;
    int number = 1;
    std::vector<StockEvent> events;
    for (const Length& length : offcuts) events.push_back(Received{{number++}, PieceKind::offcut, stock_tube(tube), exact(length), "", "", {}});
    write_stock(work, "2026-11-25", events);
    return work.rack;
}

State at_prepare(const std::string& line, double stick_in) {
    return touched(job_open(), {OpenLine{line}, NewStick{inches(stick_in)}, Next{}});
}

State all_ticked(State state) {
    const auto list = current_list(work_in_hand(state));
    if (!list) return state;
    for (const TickItem& item : tick_items(state, *list))
        if (!work_in_hand(state).ticks.contains(item.id)) state = touched(state, {Tick{item.id}});
    return state;
}

State at_first_bend(const std::string& line) { return touched(all_ticked(at_prepare(line)), {Next{}, Next{}}); }

State at_check(State state) { return touched(std::move(state), {Next{}, Next{}, Next{}}); }

State reading(State state, const std::string& keys) {
    for (const char key : keys) state = touched(std::move(state), {Key{std::string(1, key)}});
    return touched(std::move(state), {Next{}});
}

State at_line(Line line) {
    Job job = sample_job();
    line.name = "square hook";
    line.b.trim = inches(0.5);
    line.bend_notes.resize(line.route.bends.size());
    job.lines = {line, job.lines[1]};
    const State state = touched(job_open(), {JobRead{"hook", "jobs/hook.json", job}, OpenLine{"square hook"}, NewStick{inches(240)}, Next{}});
    return touched(all_ticked(state), {Next{}, Next{}});
}

State at_hook() { return at_line(line_of({10, 8, 10}, {{90, 0}, {90, 0}})); }

State tank_with_made(std::size_t bends) {
    State state = touched(job_open(), {JobRead{"tank", "jobs/tank.json", tank_job()}, OpenLine{"round the tank"}, NewStick{inches(240)}, Next{}});
    state = touched(all_ticked(state), {Next{}, Next{}});
    for (std::size_t i = 0; i < bends; ++i) state = touched(at_check(state), {PassCheck{}});
    return state;
}

State with_wall(const State& state, double right_mm, const std::vector<Solid>& more) {
    Job job = *state.job;
    Bender& bender = job.lines[0].bender;
    const Eigen::Vector3d at(right_mm, 0, 0);
    bender.body = {{"wall", Stands::bench, HalfSpace{at, at.normalized()}}};
    bender.body.insert(bender.body.end(), more.begin(), more.end());
    return touched(state, {CardKept{bender, true, job}});
}

State piece_made(const std::string& line) {
    State state = at_first_bend(line);
    while (work_in_hand(state).stage == Stage::bending) state = touched(at_check(std::move(state)), {PassCheck{}});
    state = touched(all_ticked(std::move(state)), {Next{}});
    return touched(all_ticked(std::move(state)), {Next{}});
}

}  // namespace tubewright
