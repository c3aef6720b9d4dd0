// What is cut from what, which jobs are in it, and what has to be bought for it.

#include <algorithm>

#include "present/entry_pieces.h"
#include "present/pieces.h"
#include "present/stock_tables.h"
#include "present/stock_words.h"
#include "present/words.h"
#include "state/cut_plan.h"

namespace tubewright {
namespace {

/// With its job's name where several are planned.
std::string cut_name(const State& state, const LengthWanted& wanted) {
    if (wanted.line.empty()) return "practice";
    const std::string line = line_of_key(state, wanted.line);
    for (const PlannedJob& other : state.plan.others)
        if (other.of.id != state.job_id && wanted.line == line_key(other.of.id, line)) return line + " (" + other.of.job.name + ")";
    return line;
}

std::string from_words(const State& state, const LengthCut& cut) {
    const Tape tape = reader_tape(state);
    const std::string length = text(measured(cut.length), tape);
    const auto* piece = std::get_if<PieceNumber>(&cut.from);
    if (!piece) return "A new stick, " + length + ", to buy";
    const auto found = state.work.rack->pieces.find(*piece);
    if (found == state.work.rack->pieces.end()) return length;
    return capital(kind_word(found->second.kind)) + ", " + left_text(measured(cut.length), tape) + (found->second.place.empty() ? "" : ", " + found->second.place);
}

/// To scale, the cuts as they follow each other and what is left.
std::vector<CutPart> parts_of(const State& state, const TubeCut& tube, const LengthCut& cut) {
    const Tape tape = reader_tape(state);
    const CuttingQuestion& asked = tube.asked.question;
    const auto whole = static_cast<double>(cut.length.um);
    std::vector<CutPart> parts;
    std::int64_t at = asked.squared.um;
    for (const std::size_t one : cut.cuts) {
        const std::int64_t to = at + asked.wanted[one].length.um;
        parts.push_back({static_cast<double>(at) / whole, std::min(1.0, static_cast<double>(to) / whole), shortened(cut_name(state, asked.wanted[one])) + " " + text(measured(asked.wanted[one].length), tape), CutPart::What::line});
        at = to + asked.saw.um;
    }
    if (cut.leftover.um > 0) parts.push_back({1 - static_cast<double>(cut.leftover.um) / whole, 1, left_text(measured(cut.leftover), tape), cut.kept ? CutPart::What::kept : CutPart::What::scrap});
    return parts;
}

/// "frame run 52", axle crossover 41 7/8" twice".
std::string cuts_words(const State& state, const TubeCut& tube, const LengthCut& cut) {
    const Tape tape = reader_tape(state);
    std::string said;
    for (std::size_t i = 0; i < cut.cuts.size();) {
        const LengthWanted& wanted = tube.asked.question.wanted[cut.cuts[i]];
        std::size_t same = i;
        while (same < cut.cuts.size() && cut.cuts[same] == cut.cuts[i]) ++same;
        said += (said.empty() ? "" : ", ") + cut_name(state, wanted) + " " + text(measured(wanted.length), tape) + (same - i > 1 ? " × " + std::to_string(same - i) : "");
        i = same;
    }
    return capital(said);
}

RowView row_of(const State& state, const TubeCut& tube, const LengthCut& cut, std::size_t place) {
    const Tape tape = reader_tape(state);
    const auto* piece = std::get_if<PieceNumber>(&cut.from);
    RowView row;
    row.touch = press_button("cut-" + std::to_string(place), from_words(state, cut), piece ? Action(ShowPiece{*piece}) : Action(GoTo{Screen::buy}));
    row.parts = parts_of(state, tube, cut);
    row.detail = (state.plan.found->size() > 1 ? tube_words(state, tube.asked.tube) + ": " : std::string()) + cuts_words(state, tube, cut);
    row.right = cut.leftover.um == 0 ? "nothing left" : (cut.kept ? "keep " : "scrap ") + left_text(measured(cut.leftover), tape);
    if (!piece) row.tone = Tone::now;
    return row;
}

bool has_coil(const State& state, const StockTube& tube) {
    const std::vector<RackLength> lengths = lengths_on_rack(*state.work.rack.ledger, tube);
    return std::any_of(lengths.begin(), lengths.end(), [](const RackLength& length) { return length.kind == PieceKind::coil; });
}

/// How good the plan of one tube is.
TextView plan_words(const State& state, const TubeCut& tube) {
    const Tape tape = reader_tape(state);
    const std::string name = tube_words(state, tube.asked.tube) + ": ";
    if (const auto* none = std::get_if<NoPlan>(&tube.answer)) {
        if (!none->too_long) return {name + (none->proven ? (has_coil(state, tube.asked.tube) ? "there is not enough that is straight: straighten a length off the coil." : "there is not enough on the rack, and it is not known how long this tube is sold. Say what came in.") : "no plan was found in the time. Plan fewer lines at once."), Tone::stop};
        const LengthWanted& wanted = tube.asked.question.wanted[*none->too_long];
        return {name + cut_name(state, wanted) + " takes " + text(measured(wanted.length), tape) + ", more than any length there is.", Tone::stop};
    }
    const auto* plan = std::get_if<PlanFound>(&tube.answer);
    if (!plan) return {name + "the looking was stopped."};
    std::string said = name + (plan->cost.sticks == 0 ? "offcuts do" : counted(static_cast<std::size_t>(plan->cost.sticks), "stick", "sticks") + (plan->cost.bought > 0 ? ", " + std::to_string(plan->cost.bought) + " to buy" : ""));
    Length scrap;  // as the rows show it
    for (const LengthCut& cut : plan->lengths)
        if (!cut.kept) scrap += down_on_tape(measured(cut.leftover), tape);
    said += ", " + (scrap > Length{} ? text(scrap, tape) : std::string("no")) + " scrap. ";
    if (plan->proven) return {said + "Nothing does better.", Tone::go};
    return {said + "Perhaps not the best: looked as long as there was time. Better than " + counted(static_cast<std::size_t>(plan->bound.sticks), "stick", "sticks") + " and " + text(measured(plan->bound.waste), tape) + " scrap it can't be.", Tone::caution};
}

RowView looking_row(const State& state) {
    RowView row;
    row.touch = unless(press_button("looking", "Looking for the best plan", GoTo{Screen::plan}), "wait a moment");
    row.done = state.plan.share;
    row.tone = Tone::now;
    return row;
}

std::string jobs_words(const State& state) {
    std::vector<std::string> names;
    if (state.job) names.push_back(state.job->name);
    for (const PlannedJob& other : state.plan.others)
        if (other.of.id != state.job_id) names.push_back(other.of.job.name);
    if (names.empty()) return "no job";
    return names.size() == 1 ? names.front() : std::to_string(names.size()) + " jobs";
}

bool is_planned(const State& state, const std::string& path) {
    return std::any_of(state.plan.others.begin(), state.plan.others.end(), [&](const PlannedJob& other) { return other.of.path == path; });
}

std::string amount_words(const State& state, const BuyItem& item, int count) { return std::to_string(count) + " × " + item_words(state, item); }

WordTable cut_list(const State& state) {
    const Tape tape = reader_tape(state);
    WordTable table{"Cut list: " + jobs_words(state), {{"from", false}, {"cut", true}, {"for", false}}, {}, {}};
    for (const TubeCut& tube : *state.plan.found) {
        table.notes.push_back(plan_words(state, tube).text);
        const auto* plan = std::get_if<PlanFound>(&tube.answer);
        for (const LengthCut& cut : plan ? plan->lengths : std::vector<LengthCut>{}) {
            std::string from = from_words(state, cut) + " (" + tube_words(state, tube.asked.tube) + ")";
            for (const std::size_t one : cut.cuts) {
                const LengthWanted& wanted = tube.asked.question.wanted[one];
                table.rows.push_back({from, text(measured(wanted.length), tape), cut_name(state, wanted)});
                from.clear();
            }
            if (cut.leftover.um > 0) table.rows.push_back({"", left_text(measured(cut.leftover), tape), cut.kept ? "left: keep" : "left: scrap"});
        }
    }
    table.notes.push_back("Measure each piece before you cut: the saw takes " + (state.work.rules.saw > Length{} ? text(state.work.rules.saw, tape) : std::string("nothing")) + " here.");
    return table;
}

WordTable buy_table(const State& state) {
    const BuyList list = list_to_buy(state).value_or(BuyList{});
    const BuyCost all = cost_to_buy(state, list);
    WordTable table{"To buy: " + jobs_words(state), {{"how many", true}, {"what", false}, {"cost", true}}, {}, {}};
    for (const auto& [item, count] : list) {
        const bool unpriced = std::find(all.unpriced.begin(), all.unpriced.end(), item) != all.unpriced.end();
        table.rows.push_back({std::to_string(count), item_words(state, item), unpriced ? "" : money_text(cost_to_buy(state, {{item, count}}).known)});
    }
    table.notes = {"In all " + money_text(all.known) + (all.unpriced.empty() ? "." : ", without what has no price here."), "Tees and unions are listed for the ends that you said go into one. Take what is in your drawer off."};
    return table;
}

}  // namespace

std::vector<WordTable> plan_tables(const State& state) {
    if (!state.plan.found || state.plan.found->empty()) return {};
    return {cut_list(state), buy_table(state)};
}

void fill_plan(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "What is cut from what: " + jobs_words(state);
    std::vector<RowView> rows;
    if (state.plan.looking) rows.push_back(looking_row(state));
    for (const TubeCut& tube : state.plan.found ? *state.plan.found : std::vector<TubeCut>{})
        if (const auto* plan = std::get_if<PlanFound>(&tube.answer))
            for (const LengthCut& cut : plan->lengths) rows.push_back(row_of(state, tube, cut, rows.size() + 1));
    show_page_of(state, rows, body);
    if (state.plan.found && state.plan.found->empty()) body.notes.push_back({state.job || !state.plan.others.empty() ? "Every line is made, or cut and in hand." : "Open a job first, or take one in with Other jobs."});
    // What can't be cut comes first; there is room for two.
    std::vector<TextView> verdicts;
    for (const TubeCut& tube : state.plan.found ? *state.plan.found : std::vector<TubeCut>{}) verdicts.push_back(plan_words(state, tube));
    std::stable_partition(verdicts.begin(), verdicts.end(), [](const TextView& verdict) { return verdict.tone == Tone::stop; });
    const std::size_t more = verdicts.size() > 2 ? verdicts.size() - 2 : 0;
    if (more > 0) verdicts.resize(2), verdicts.back().text += " And " + counted(more, "tube more.", "tubes more.");
    body.notes.insert(body.notes.end(), verdicts.begin(), verdicts.end());
    if (const std::size_t out = lines_left_out(state); out > 0 && state.plan.found) body.notes.insert(body.notes.begin(), {counted(out, "line is", "lines are") + " not in the plan: a stop is against " + (out == 1 ? "it." : "them."), Tone::caution});
    view.header = header_of(state, "Tubewright", "cutting plan");
    view.body = std::move(body);
    view.footer = side_footer(state);
    view.footer.buttons.push_back(press_button("plan-jobs", "Other jobs", GoTo{Screen::plan_jobs}));
    view.footer.buttons.push_back(press_button("shop-rules", "How you cut", GoTo{Screen::shop_rules}));
    view.footer.buttons.push_back(unless(press_button("buy", "What to buy", GoTo{Screen::buy}), state.plan.found ? "" : "no plan yet"));
}

void fill_plan_jobs(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "Which jobs are cut together?";
    std::vector<RowView> rows;
    for (const ShelfEntry& entry : state.shelf) {
        const bool open = state.job && entry.id == state.job_id, in = open || is_planned(state, entry.path);
        RowView row;
        row.touch = unless(press_button("plan-" + entry.id + "-" + std::to_string(rows.size()), entry.name.empty() ? entry.id : entry.name, TakeIntoPlan{entry.path}), open ? "open now: always in the plan" : entry.trouble);
        row.touch.chosen = in;
        row.detail = counted(entry.lines.size(), "line", "lines");
        row.right = in ? "in the plan" : "not in it";
        if (in) row.tone = Tone::go;
        rows.push_back(std::move(row));
    }
    show_page_of(state, rows, body);
    view.header = header_of(state, "Tubewright", "cutting plan");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

void fill_buy(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "What to buy: " + jobs_words(state);
    const BuyList list = list_to_buy(state).value_or(BuyList{});
    const BuyCost all = cost_to_buy(state, list);
    std::vector<RowView> rows;
    for (const auto& [item, count] : list) {
        RowView row;
        row.touch = press_button("buy-" + std::to_string(rows.size() + 1), amount_words(state, item, count), AskPriceOf{buy_key(item)});
        const bool unpriced = std::find(all.unpriced.begin(), all.unpriced.end(), item) != all.unpriced.end();
        row.right = unpriced ? "price?" : money_text(cost_to_buy(state, {{item, count}}).known);
        if (item.kind == BuyKind::stick && !unpriced && !state.work.prices.contains(buy_key(item))) row.detail = "by what you paid for such tube last";
        if (item.kind == BuyKind::clip) row.detail = "so that no stretch hangs further than the table allows";
        rows.push_back(std::move(row));
    }
    show_page_of(state, rows, body);
    const auto has_none = [](const TubeCut& tube) { return std::holds_alternative<NoPlan>(tube.answer); };
    const bool unplanned = state.plan.found && std::any_of(state.plan.found->begin(), state.plan.found->end(), has_none);
    if (rows.empty()) body.notes = {{state.plan.looking ? "The plan is being looked for." : "Nothing has to be bought."}};
    else body.notes = {{(all.unpriced.size() == list.size() ? "No price is known yet: touch a row to tell it." : "In all " + money_text(all.known)) + (all.unpriced.size() == list.size() ? "" : all.unpriced.empty() ? "." : ", without " + counted(all.unpriced.size(), "thing that has no price yet.", "things that have no price yet.")) + " Take what is in your drawer off it."}};
    if (unplanned) body.notes.insert(body.notes.begin(), {"A tube could not be planned: its sticks are missing here.", Tone::stop});
    view.header = header_of(state, "Tubewright", "to buy");
    view.body = std::move(body);
    view.footer = side_footer(state);
    view.footer.buttons.push_back(unless(press_button("joints", "Tees and unions", GoTo{Screen::joints}), state.job ? "" : "open a job first"));
    view.footer.buttons.push_back(unless(press_button("print-plan", "Put on paper", PrintPlan{}), state.plan.found && !state.plan.found->empty() ? "" : "nothing is planned"));
}

}  // namespace tubewright
