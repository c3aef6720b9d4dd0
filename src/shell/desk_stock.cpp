// The desk and the rack: cutting plans.

#include "shell/desk.h"
#include "store/job_file.h"

namespace tubewright {

void Desk::find_plan_for(const FindPlan& asked) {
    if (asked.question != state_.plan.question) return;  // another action came between
    if (plan_finder_) return plan_finder_->ask_plan(asked.question, state_.plan.asked);
    act(plan_is(asked.question, state_.plan.asked, {}));
}

void Desk::read_plan_job(const std::string& path) {
    auto job = read_job(path, library_);
    if (job.ok()) act(PlanJobRead{{job_id(path), path, std::move(job).value()}});
    else act(FilesTold{job.trouble().sentence()});
}

}  // namespace tubewright
