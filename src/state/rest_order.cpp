// What is left of a cut tube in another order, where the settled one now runs into something.

#include <algorithm>
#include <cmath>
#include <sstream>

#include "base/tolerance.h"
#include "state/doing.h"

namespace tubewright {

/// Less than this of the set angle at 90 is no reason to look for another order. Our choice.
bool is_much_the_same(const Springback& one, const Springback& other) {
    return std::abs((set_angle(one, Angle{90}) - set_angle(other, Angle{90})).deg) <= tolerance::lever_stop.deg;
}

std::size_t steps_begun(const Sheet& sheet, const LineWork& work) {
    std::size_t begun = work.made.size();
    for (std::size_t i = begun; i < sheet.steps.size(); ++i)
        if (work.pulled.contains(sheet.steps[i].bend)) begun = i + 1;
    return begun;
}

const OtherRest* other_rest(const State& state) {
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet) return nullptr;
    for (const Finding& finding : sheet->findings)
        if (const auto* hit = std::get_if<HitsAsItStands>(&finding.fact); hit && hit->rest) return &*hit->rest;
    return nullptr;
}

bool lever_decides(const State& state) {
    const OtherRest* other = other_rest(state);
    const LineWork work = work_in_hand(state);
    if (!other || other->is != OtherRest::Is::found || work.stage != Stage::bending || work.move != Move::pull) return false;
    // A pulled bend is begun: what is asked about are those after it.
    return !work.pulled.contains(sheet_in_hand(state)->steps[work.step].bend) && other->now.front() != other->then.front();
}

std::vector<InkMove> ink_moves(const Sheet& sheet, const std::string& inked, std::size_t first_step) {
    std::vector<std::size_t> bends;
    for (const Step& step : sheet.steps) bends.push_back(step.bend);
    std::sort(bends.begin(), bends.end());
    std::vector<InkMove> moves;
    std::istringstream marks(inked), wanted(inking_of(sheet));
    for (const std::size_t bend : bends) {
        long long is = 0, should_be = 0;
        if (!(marks >> is) || !(wanted >> should_be)) return {};
        const auto step = std::find_if(sheet.steps.begin(), sheet.steps.end(), [&](const Step& s) { return s.bend == bend; });
        if (step - sheet.steps.begin() >= static_cast<std::ptrdiff_t>(first_step)) moves.push_back({bend, {static_cast<double>(should_be - is) / 100}});
    }
    return moves;
}

std::optional<OrderWish> wish_of(const LineOrder& order, const FindOrder& asked) {
    if (asked.rest) return order.rest.question == asked.question ? std::optional(OrderWish{{}, {}, order.rest.begun}) : std::nullopt;
    if ((asked.free ? order.best_question : order.question) != asked.question) return std::nullopt;
    return OrderWish{asked.free ? std::vector<std::size_t>{} : order.opening};
}

void forget_other_rest(Doing& doing, LineOrder& order) {
    if (order.rest.looking) doing.requests.push_back(StopFinding{order.rest.question});
    order.rest = {};
}

namespace {

std::vector<Placing> placings(const Sheet& sheet) {
    std::vector<Placing> order;
    for (const Step& step : sheet.steps) order.push_back({step.bend, step.hook});
    return order;
}

/// Whether the first thing in the way is in that of a bend whose turn could still be another.
bool another_order_may_help(const std::vector<Finding>& findings, std::size_t begun) {
    bool hit = false;
    for (const Finding& finding : findings) {
        const auto* fact = std::get_if<HitsAsItStands>(&finding.fact);
        if (fact && static_cast<std::size_t>(__builtin_popcountll(fact->made)) < begun) return false;
        hit = hit || fact;
    }
    return hit;
}

OtherRest known_of(const RestOrder& rest, const Sheet& sheet, SheetChoice choice, const LineWork& work) {
    OtherRest other;
    other.every_order = sheet.steps.size() <= most_bends_proven;
    if (!rest.verdict) return other;
    other.every_order = other.every_order && rest.verdict->every_way;
    const auto from = static_cast<std::ptrdiff_t>(rest.begun.size());
    switch (rest.verdict->outcome) {
        case OrderVerdict::Outcome::cancelled: other.is = OtherRest::Is::stopped; break;
        case OrderVerdict::Outcome::found: {
            other.is = OtherRest::Is::found;
            const std::vector<Placing> now = placings(sheet);
            other.now.assign(now.begin() + from, now.end());
            other.then.assign(rest.verdict->order.begin() + from, rest.verdict->order.end());
            choice.order = rest.verdict->order;
            other.ink = ink_moves(bend_sheet(sheet.line, choice), work.inked, rest.begun.size());
            break;
        }
        case OrderVerdict::Outcome::none:
        case OrderVerdict::Outcome::not_looked:
            other.is = OtherRest::Is::none;
            for (const WayOut& way : rest.verdict->ways)
                if (const auto* stood = std::get_if<OtherSetUp>(&way)) other.stance = stood->set_up;
            break;
    }
    return other;
}

}  // namespace

void look_at_other_rest(Doing& doing, std::size_t line, const Sheet& sheet, const SheetChoice& choice, const LineWork& work, std::vector<Finding>& findings) {
    State& state = doing.state;
    LineOrder& order = state.orders[line];
    RestOrder& rest = order.rest;
    std::vector<Placing> begun = placings(sheet);
    begun.resize(std::min(begun.size(), steps_begun(sheet, work)));
    if (!another_order_may_help(findings, begun.size())) {
        // What was found stays known, for undo.
        if (rest.looking) forget_other_rest(doing, order);
        return;
    }
    // Who stopped the looking is not looked for again with every bend, only where the bender stands another way or when asked.
    const bool told_to_stop = rest.verdict && rest.verdict->outcome == OrderVerdict::Outcome::cancelled;
    // What was found is free for that springback alone; a little more of it does not make an order where there was none.
    const bool found = rest.verdict && rest.verdict->outcome == OrderVerdict::Outcome::found;
    const bool same_pull = found ? rest.springback == sheet.springback : is_much_the_same(rest.springback, sheet.springback);
    const bool another = rest.begun != begun || !same_pull;
    if (rest.question == 0 || rest.set_up != sheet.set_up || (another && !told_to_stop)) {
        forget_other_rest(doing, order);
        rest = {state.next_question++, true, 0, sheet.set_up, std::move(begun), sheet.springback, nullptr};
        doing.requests.push_back(FindOrder{rest.question, line, false, true});
    }
    if (rest.verdict && rest.verdict->outcome == OrderVerdict::Outcome::not_looked) return;
    const OtherRest other = known_of(rest, sheet, choice, work);
    for (Finding& finding : findings) {
        auto* fact = std::get_if<HitsAsItStands>(&finding.fact);
        if (!fact) continue;
        fact->rest = other;
        if (other.is == OtherRest::Is::found || other.stance) finding.severity = Severity::stop;
    }
}

}  // namespace tubewright
