// What can be said and kept of a spoiled tube.

#include <algorithm>

#include "state/rules.h"

namespace tubewright {
namespace {

/// The sheet still says where the bends of this piece lie.
bool tells_the_bends(const Sheet& sheet, const LineWork& work) {
    const Misfit against = misfit(sheet, work);
    return sheet.layout && (against == Misfit::none || against == Misfit::ink);
}

/// While a bend is being pulled the lever may have moved already.
bool is_formed(const LineWork& work, std::size_t bend, std::optional<std::size_t> being_pulled) {
    return work.pulled.contains(bend) || bend == being_pulled ||
           std::any_of(work.made.begin(), work.made.end(), [&](const BendMade& made) { return made.bend == bend; });
}

bool is_one_bends_fault(Reason reason) { return reason == Reason::wrong_place || reason == Reason::wrong_way || reason == Reason::over_bent; }

/// What is straight from the ends up to the nearest bend that has been pulled.
std::vector<KeptOffer> straight_ends(const Sheet& sheet, const LineWork& work, std::optional<std::size_t> being_pulled, Length keep) {
    Length from = work.cut_length, to;
    for (std::size_t bend = 0; bend < sheet.layout->spans.size(); ++bend) {
        if (!is_formed(work, bend, being_pulled)) continue;
        from = std::min(from, sheet.layout->spans[bend].start);
        to = std::max(to, sheet.layout->spans[bend].end);
    }
    std::vector<KeptOffer> offers;
    if (from >= keep) offers.push_back({"end-a", End::A, {from}});
    if (work.cut_length - to >= keep) offers.push_back({"end-b", End::B, {work.cut_length - to}});
    std::stable_sort(offers.begin(), offers.end(), [](const KeptOffer& a, const KeptOffer& b) { return a.kept() > b.kept(); });
    if (offers.size() == 2) offers.insert(offers.begin(), {"both", std::nullopt, {offers[0].kept(), offers[1].kept()}});
    return offers;
}

}  // namespace

Length KeptOffer::kept() const {
    Length sum;
    for (const Length& piece : pieces) sum += piece;
    return sum;
}

std::optional<std::size_t> bend_being_pulled(const State& state) {
    const Step* step = step_in_hand(state);
    return step && work_in_hand(state).move == Move::pull ? std::optional(step->bend) : std::nullopt;
}

std::vector<KeptOffer> kept_offers(const State& state) {
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet) return {};
    const LineWork work = work_in_hand(state);
    if (!work.cut || work.stage == Stage::done) return {};
    std::vector<KeptOffer> offers;
    if (work.made.empty() && work.pulled.empty() && work.pulls == 0 && !bend_being_pulled(state)) offers.push_back({"whole", std::nullopt, {work.cut_length}});
    else if (tells_the_bends(*sheet, work)) offers = straight_ends(*sheet, work, bend_being_pulled(state), std::max(state.work.rules.keep, Length{1}));
    offers.push_back({"none", std::nullopt, {}});
    return offers;
}

std::vector<std::size_t> formed_bends(const State& state) {
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet || !tells_the_bends(*sheet, work_in_hand(state))) return {};
    const LineWork work = work_in_hand(state);
    std::vector<std::size_t> formed;
    for (const Step& step : sheet->steps)
        if (is_formed(work, step.bend, bend_being_pulled(state))) formed.push_back(step.bend);
    return formed;
}

bool asks_which_bend(const State& state) {
    return state.looks.reason && is_one_bends_fault(*state.looks.reason) && formed_bends(state).size() > 1;
}

std::optional<std::size_t> wrong_bend(const State& state) {
    if (state.looks.wrong_bend && asks_which_bend(state)) return state.looks.wrong_bend;
    const Step* step = step_in_hand(state);
    const std::optional<std::size_t> in_hand = step ? std::optional(step->bend) : std::nullopt;
    if (!state.looks.reason || !is_one_bends_fault(*state.looks.reason)) return in_hand;
    const std::vector<std::size_t> formed = formed_bends(state);
    if (formed.empty() || (in_hand && is_formed(work_in_hand(state), *in_hand, bend_being_pulled(state)))) return in_hand;
    return formed.back();
}

}  // namespace tubewright
