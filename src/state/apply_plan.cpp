// The cutting plan as it is asked for and answered, and files that are written for the person.

#include <algorithm>

#include "state/cut_plan.h"
#include "state/doing.h"

namespace tubewright {
namespace {

bool shows_a_plan(Screen screen) { return screen == Screen::plan || screen == Screen::buy || screen == Screen::stock; }

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

void restore_backup(Doing& doing, const std::string& name) {
    State& state = doing.state;
    if (state.looks.screen != Screen::keep_safe) return;
    if (std::any_of(state.backups.begin(), state.backups.end(), [&](const BackupFile& file) { return file.name == name; })) doing.requests.push_back(ReadBackup{name});
}

}  // namespace tubewright
