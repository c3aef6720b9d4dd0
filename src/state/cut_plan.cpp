#include "state/cut_plan.h"

#include <algorithm>
#include <cmath>

#include "state/joints.h"
#include "state/rules.h"
#include "stock/shop_figures.h"

namespace tubewright {
namespace {

int in_hand_or_made(const LineWork& work) { return work.finished + (work.cut && work.stage != Stage::done ? 1 : 0); }

LineWork work_of(const State& state, const std::string& key) {
    const auto found = state.work.lines.find(key);
    return found == state.work.lines.end() ? LineWork{} : found->second;
}

/// One line of one of the jobs that are planned.
struct PlannedLine {
    const Line* line;
    std::string job, key;
    std::optional<Length> cut;
    int missing;
};

std::vector<PlannedLine> planned_lines(const State& state) {
    std::vector<PlannedLine> lines;
    const auto add = [&](const Line& line, const std::string& job_id, const std::optional<Length>& cut) {
        const std::string key = line_key(job_id, line.name);
        lines.push_back({&line, job_id, key, cut, std::max(0, line.quantity - in_hand_or_made(work_of(state, key)))});
    };
    for (const Sheet& sheet : state.sheets) add(sheet.line, state.job_id, length_to_cut(sheet));
    for (const PlannedJob& other : state.plan.others)
        for (std::size_t i = 0; other.of.id != state.job_id && i < other.of.job.lines.size(); ++i) add(other.of.job.lines[i], other.of.id, other.cuts[i]);
    return lines;
}

TubeToCut& question_of(std::vector<TubeToCut>& questions, const State& state, const Line& line) {
    const StockTube tube = stock_tube(line.tube);
    const auto sold = [&](TubeToCut& asked) -> TubeToCut& {
        auto& lengths = asked.question.for_sale;
        if (line.stick && std::find(lengths.begin(), lengths.end(), exact(*line.stick)) == lengths.end()) lengths.push_back(exact(*line.stick));
        return asked;
    };
    for (TubeToCut& known : questions)
        if (known.tube == tube) return sold(known);
    const ShopRules& rules = state.work.rules;
    TubeToCut asked{tube, {}};
    asked.question.rack = rack_for_plan(*state.work.rack.ledger, tube);
    asked.question.saw = exact(rules.saw);
    asked.question.keep = exact(rules.keep);
    questions.push_back(asked);
    return sold(questions.back());
}

int spoiled_for_lines(const Ledger& ledger) {
    const std::vector<ScrapRecord> mistakes = mistakes_of(scrap_records(ledger));
    return static_cast<int>(std::count_if(mistakes.begin(), mistakes.end(), [](const ScrapRecord& record) { return !record.line.empty(); }));
}

/// The support table's row: stainless and carbon steel have their own, all else takes the safer one.
SupportRow supports_of(const Line& line) { return line.tube.material.rfind("stainless", 0) == 0 || line.tube.material.rfind("steel", 0) == 0 ? SupportRow::steel : SupportRow::aluminium; }

EndNeeds needs_of(const State& state, const LineEnd& end, const EndOfLine& which) {
    EndNeeds needs;
    needs.fitting = end.fitting.name;
    needs.joint = joint_of(state.work, which, end);
    for (const SlideOn& piece : end.fitting.slide_on) (piece.id == "sleeve" ? needs.sleeve : needs.nut) = piece.name + ", " + end.fitting.name;
    return needs;
}

/// What was paid for one whole stick of this length last.
std::optional<Money> last_paid(const Ledger& ledger, const StockTube& tube, ExactLength length) {
    for (auto piece = ledger.pieces.rbegin(); piece != ledger.pieces.rend(); ++piece)
        if (piece->second.tube == tube && piece->second.price.per.um > 0) return cost(piece->second.price, length);
    return std::nullopt;
}

}  // namespace

double odds_of_spoiling(int made, int spoiled, std::size_t bends) {
    const double of_four_bends = (spoiled + 1.0) / (made + spoiled + 4.0);
    return 1 - std::pow(1 - of_four_bends, static_cast<double>(bends) / 4);
}

std::optional<Length> length_to_cut(const Sheet& sheet) { return sheet.layout && !stopped(sheet) ? std::optional(sheet.layout->cut_length) : std::nullopt; }

std::size_t lines_left_out(const State& state) {
    const std::vector<PlannedLine> lines = planned_lines(state);
    return static_cast<std::size_t>(std::count_if(lines.begin(), lines.end(), [](const PlannedLine& line) { return line.missing > 0 && !line.cut; }));
}

/// A length straightened off a coil, or bought short, is used up as an offcut is: no stick is opened for what it can give.
void count_short_sticks_as_offcuts(CuttingQuestion& question) {
    if (question.for_sale.empty()) return;
    const ExactLength whole = *std::min_element(question.for_sale.begin(), question.for_sale.end());
    for (LengthOnRack& length : question.rack) length.stick = length.stick && length.length >= whole;
}

std::vector<TubeToCut> tubes_to_cut(const State& state) {
    std::vector<TubeToCut> questions;
    std::map<StockTube, std::vector<double>> odds;
    const int made = first_time_right(*state.work.rack.ledger).made, spoiled = spoiled_for_lines(*state.work.rack.ledger);
    for (const PlannedLine& planned : planned_lines(state)) {
        if (planned.missing == 0 || !planned.cut || !(exact(*planned.cut).um > 0)) continue;
        TubeToCut& asked = question_of(questions, state, *planned.line);
        asked.question.wanted.push_back({exact(*planned.cut), planned.missing, planned.key});
        odds[asked.tube].push_back(odds_of_spoiling(made, spoiled, planned.line->route.bends.size()));
    }
    const ShopRules& rules = state.work.rules;
    for (TubeToCut& asked : questions) {
        count_short_sticks_as_offcuts(asked.question);
        const ExactLength practice = rules.practice ? exact(practice_length) : ExactLength{};
        asked.question.wanted = with_spares(std::move(asked.question.wanted), {odds[asked.tube], rules.spare ? spare_from : 2, practice, 1});
    }
    return questions;
}

std::optional<PieceNumber> planned_piece(const State& state) {
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet || !state.plan.found) return std::nullopt;
    const std::string key = line_key(state.job_id, sheet->line.name);
    for (const TubeCut& tube : *state.plan.found) {
        const auto* plan = std::get_if<PlanFound>(&tube.answer);
        for (std::size_t i = 0; plan && i < plan->lengths.size(); ++i)
            for (const std::size_t cut : plan->lengths[i].cuts)
                if (const auto* piece = std::get_if<PieceNumber>(&plan->lengths[i].from); piece && tube.asked.question.wanted[cut].line == key) return *piece;
    }
    return std::nullopt;
}

std::string buy_key(const BuyItem& item) {
    constexpr const char* kinds[] = {"stick", "nut", "sleeve", "tee", "union", "clip"};
    std::string key = std::string(kinds[static_cast<std::size_t>(item.kind)]) + "/" + item.name + "/" + tube_key(item.tube) + "/" + std::to_string(item.length.um);
    // Each kind of end once: the price stays while its ends are still being told.
    for (auto end = item.ends.begin(); end != item.ends.end(); end = std::upper_bound(end, item.ends.end(), *end)) key += "/" + std::to_string(end->outside.um) + " " + end->fitting;
    return key;
}

std::optional<BuyList> list_to_buy(const State& state) {
    if (!state.plan.found) return std::nullopt;
    BuyList list;
    for (const TubeCut& tube : *state.plan.found)
        if (const auto* plan = std::get_if<PlanFound>(&tube.answer)) list = together(std::move(list), sticks_for(tube.asked.tube, *plan));
    std::vector<LineNeeds> needs;
    for (const PlannedLine& planned : planned_lines(state)) {
        const Line& line = *planned.line;
        const Length finished = planned.cut.value_or(Length{}) - line.a.trim - line.b.trim;
        needs.push_back({planned.job, stock_tube(line.tube), supports_of(line), exact(finished), needs_of(state, line.a, {planned.key, End::A}), needs_of(state, line.b, {planned.key, End::B}), line.quantity, planned.cut ? planned.missing : 0});
    }
    return together(std::move(list), parts_for(needs));
}

BuyCost cost_to_buy(const State& state, const BuyList& list) {
    std::map<BuyItem, Money> each;
    for (const auto& [item, count] : list) {
        if (const auto told = state.work.prices.find(buy_key(item)); told != state.work.prices.end()) each[item] = told->second;
        else if (const auto paid = item.kind == BuyKind::stick ? last_paid(*state.work.rack.ledger, item.tube, item.length) : std::nullopt) each[item] = *paid;
    }
    return cost(list, each);
}

}  // namespace tubewright
