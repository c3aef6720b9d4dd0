#include "stock/cutting_plan.h"

#include <cmath>

#include "stock/close_fits.h"
#include "stock/pattern_program.h"

namespace tubewright {

namespace {

/// Of the patience: what the search or patterns don't settle soon they hardly do at all, as measured on plan_bench's shops.
constexpr double share_of_search = 0.01, share_of_patterns = 0.2;

/// From piece to piece again, now with all of what is left.
void search_on(const CuttingQuestion& question, PlanSearch& search, PlanSteps& rest) {
    rest.allow(1);
    PlanSearch longer(question);
    longer.run(rest);
    search.join(longer);
}

/// By patterns where they are few, then by close fits: both make a plan better, and so begin with one.
void look_further(const CuttingQuestion& question, PlanSearch& search, const PlanProgress& progress, std::int64_t patience) {
    if (!search.found) {
        PlanSteps rest(patience, progress, share_of_search, 1);
        return search_on(question, search, rest);
    }
    const auto unsettled = [&] { return !search.cancelled && search.cost != search.bound; };
    PlanSteps for_patterns(patience, progress, share_of_search, share_of_search + share_of_patterns);
    const bool few_patterns = improve_by_patterns(search, for_patterns);
    if (!unsettled()) return;
    const double share_so_far = share_of_search + (few_patterns ? share_of_patterns : 0);
    PlanSteps rest(patience, progress, share_so_far, 1);
    if (improve_by_close_fits(search, rest) || few_patterns) return;
    search_on(question, search, rest);
}

}  // namespace

PlanAnswer best_plan(const CuttingQuestion& question, const PlanProgress& progress, std::int64_t patience) {
    PlanSearch search(question);
    for (std::size_t i = 0; i < question.wanted.size(); ++i) {
        const auto takes = [&](const RoomKind& room) { return room.room >= question.wanted[i].length.um + question.saw.um; };
        if (question.wanted[i].count > 0 && std::none_of(search.rooms.begin(), search.rooms.end(), takes)) return NoPlan{i, true};
    }
    PlanSteps steps(patience, progress, 0, share_of_search);
    search.run(steps);
    if (!search.cancelled && search.out_of_patience) look_further(question, search, progress, patience);
    if (search.cancelled) return PlanCancelled{};
    if (!search.found) return NoPlan{std::nullopt, !search.out_of_patience};

    PlanFound plan{{}, search.cost, search.bound, search.cost == search.bound};
    std::vector<std::size_t> next_room(search.rooms.size()), next_piece(search.kinds.size());
    for (const Opened& opened : search.best) {
        const RoomKind& room = search.rooms[opened.room];
        const bool bought = room.from == RoomKind::From::bought;
        const std::size_t place = bought ? room.places.front() : room.places[next_room[opened.room]++];
        LengthCut cut{bought ? decltype(LengthCut::from)(question.for_sale[place]) : question.rack[place].piece,
                      bought ? question.for_sale[place] : question.rack[place].length, {}, {}, false};
        std::int64_t rest = room.room;
        for (std::size_t kind = 0; kind < search.kinds.size(); ++kind) {
            rest -= opened.pieces[kind] * search.kinds[kind].need;
            for (int i = 0; i < opened.pieces[kind]; ++i) cut.cuts.push_back(search.kinds[kind].places[next_piece[kind]++]);
        }
        cut.leftover.um = std::max<std::int64_t>(0, rest - question.saw.um);
        cut.kept = cut.leftover.um > 0 && cut.leftover >= question.keep;
        plan.lengths.push_back(std::move(cut));
    }
    return plan;
}

std::vector<LengthOnRack> rack_for_plan(const Ledger& ledger, const StockTube& tube) {
    std::vector<LengthOnRack> rack;
    for (const auto& [number, piece] : ledger.pieces)
        if (piece.where == Whereabouts::rack && piece.tube == tube && piece.kind != PieceKind::coil)
            rack.push_back({number, piece.length, piece.kind == PieceKind::stick});
    return rack;
}

std::vector<LengthWanted> with_spares(std::vector<LengthWanted> wanted, const SpareRule& rule) {
    std::size_t hardest = wanted.size();
    double worst = 0;
    for (std::size_t i = 0; i < wanted.size() && i < rule.odds.size(); ++i) {
        const double spoiled = 1 - std::pow(1 - rule.odds[i], wanted[i].count);
        if (spoiled < worst || (spoiled == worst && hardest < wanted.size() && wanted[i].length <= wanted[hardest].length)) continue;
        hardest = i;
        worst = spoiled;
    }
    if (hardest < wanted.size() && worst > 0 && worst >= rule.spare_from) ++wanted[hardest].count;
    if (rule.practice.um > 0 && rule.practice_count > 0) wanted.push_back({rule.practice, rule.practice_count, {}});
    return wanted;
}

}  // namespace tubewright
