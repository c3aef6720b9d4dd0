// The cutting plan as it is asked for and answered, and files that are written for the person.

#include <algorithm>

#include "state/cut_plan.h"
#include "state/doing.h"
#include "stock/shop_figures.h"

namespace tubewright {
namespace {

bool shows_a_plan(Screen screen) { return screen == Screen::plan || screen == Screen::buy || screen == Screen::stock; }

/// Money as a spreadsheet takes it.
std::string money_cell(Money money) {
    const std::string cents = std::to_string(money.cents % 100);
    return std::to_string(money.cents / 100) + "." + (cents.size() < 2 ? "0" : "") + cents;
}

/// In mm, to the micrometre.
std::string length_cell(ExactLength length) {
    std::string rest = std::to_string(length.um % 1000);
    rest.insert(0, 3 - rest.size(), '0');
    return std::to_string(length.um / 1000) + "." + rest;
}

WordSheet scrap_table(const State& state) {
    WordSheet table{"scrap-" + state.day, {"day", "reason", "material", "outside_mm", "wall_mm", "length_mm", "cost", "line"}, {}};
    for (const ScrapRecord& record : scrap_records(*state.work.rack.ledger))
        table.rows.push_back({day_of(record.day), record.reason, record.tube.material, length_cell(record.tube.outside), length_cell(record.tube.wall), length_cell(record.length), money_cell(record.cost), record.line});
    return table;
}

WordSheet rack_table(const State& state) {
    constexpr const char* kinds[] = {"stick", "coil", "offcut"};
    WordSheet table{"rack-" + state.day, {"piece", "kind", "material", "outside_mm", "wall_mm", "length_mm", "place", "lot"}, {}};
    for (const auto& [number, piece] : state.work.rack->pieces)
        if (piece.where == Whereabouts::rack)
            table.rows.push_back({std::to_string(number.n), kinds[static_cast<std::size_t>(piece.kind)], piece.tube.material, length_cell(piece.tube.outside), length_cell(piece.tube.wall), length_cell(piece.length), piece.place, piece.lot});
    return table;
}

WordSheet balance_table(const State& state) {
    WordSheet table{"balance-" + state.day, {"material", "outside_mm", "wall_mm", "received_mm", "on_rack_mm", "in_hand_mm", "in_lines_mm", "kerf_mm", "scrapped_mm"}, {}};
    for (const auto& [tube, b] : balances(*state.work.rack.ledger))
        table.rows.push_back({tube.material, length_cell(tube.outside), length_cell(tube.wall), length_cell(b.received), length_cell(b.on_rack), length_cell(b.in_hand), length_cell(b.in_lines), length_cell(b.kerf), length_cell(b.scrapped)});
    return table;
}

}  // namespace

void keep_plan_asked(Doing& doing) {
    State& state = doing.state;
    if (!shows_a_plan(state.looks.screen)) return;
    PlanLook& plan = state.plan;
    std::vector<TubeToCut> asked = tubes_to_cut(state);
    if (plan.question != 0 && asked == plan.asked) return;
    if (plan.looking) doing.requests.push_back(StopFinding{plan.question});
    plan.asked = std::move(asked);
    plan.question = state.next_question++;
    plan.share = 0;
    plan.looking = !plan.asked.empty();
    plan.found = plan.looking ? nullptr : std::make_shared<const std::vector<TubeCut>>();
    if (plan.looking) doing.requests.push_back(FindPlan{plan.question});
}

void take_into_plan(Doing& doing, const std::string& path) {
    State& state = doing.state;
    if (state.looks.screen != Screen::plan_jobs) return;
    auto& others = state.plan.others;
    const auto in = std::find_if(others.begin(), others.end(), [&](const PlannedJob& other) { return other.of.path == path; });
    if (in != others.end()) others.erase(in);
    else doing.requests.push_back(ReadPlanJob{path});
}

void plan_job_read(Doing& doing, const PlanJob& read) {
    auto& others = doing.state.plan.others;
    std::erase_if(others, [&](const PlannedJob& other) { return other.of.path == read.path; });
    PlannedJob planned{read, {}};
    for (const Line& line : read.job.lines) {
        SheetChoice choice;
        choice.springback = learned_for(doing.state, line);
        planned.cuts.push_back(length_to_cut(bend_sheet(line, choice)));
    }
    others.push_back(std::move(planned));
}

void plan_is(Doing& doing, const PlanIs& heard) {
    PlanLook& plan = doing.state.plan;
    if (!plan.looking || plan.question != heard.question || !heard.found) return;
    plan.looking = false;
    plan.found = heard.found;
}

void write_tables(Doing& doing) {
    doing.requests.push_back(WriteTablesNow{{scrap_table(doing.state), rack_table(doing.state), balance_table(doing.state)}});
}

void restore_backup(Doing& doing, const std::string& name) {
    State& state = doing.state;
    if (state.looks.screen != Screen::keep_safe) return;
    if (std::any_of(state.backups.begin(), state.backups.end(), [&](const BackupFile& file) { return file.name == name; })) doing.requests.push_back(ReadBackup{name});
}

}  // namespace tubewright
