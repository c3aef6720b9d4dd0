#include "store/shelf.h"

#include <map>

#include "store/draft_file.h"
#include "store/job_file.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

void look_into(const fs::path& folder, const Library& library, std::map<std::string, FoundJob>& found) {
    std::error_code trouble;
    if (folder.empty() || !fs::exists(folder, trouble)) return;
    fs::directory_iterator at(folder, trouble);
    for (const fs::directory_iterator end; !trouble && at != end; at.increment(trouble)) {
        if (at->path().extension() != ".json") continue;
        FoundJob job = found_job(at->path(), library);
        found[job.id] = std::move(job);
    }
    if (!trouble) return;
    // A folder that can't be listed is said once, in the place of its jobs.
    const Refusal refusal{folder.string(), "", "can't be listed (" + trouble.message() + ")", "a folder that you may read"};
    found[folder.string()] = {folder.filename().string(), folder.string(), folder.filename().string(), {}, refusal.sentence()};
}

}  // namespace

FoundJob found_job(const fs::path& path, const Library& library) {
    FoundJob found{path.stem().string(), path.string(), path.stem().string(), {}, ""};
    const auto draft = read_draft(path, library);
    if (!draft.ok()) {
        found.trouble = draft.trouble().sentence();
        return found;
    }
    found.name = draft.value().name;
    const auto job = job_from(draft.value(), path.string(), library);
    if (!job.ok()) {
        found.trouble = job.trouble().sentence();
        found.unfinished = true;
        return found;
    }
    for (const Line& line : job.value().lines) {
        found.lines.push_back(line.name);
        found.quantities.push_back(line.quantity);
    }
    return found;
}

std::vector<FoundJob> read_shelf(const fs::path& shipped_jobs_dir, const fs::path& user_jobs_dir, const Library& library) {
    std::map<std::string, FoundJob> found;
    look_into(shipped_jobs_dir, library, found);
    look_into(user_jobs_dir, library, found);
    std::vector<FoundJob> shelf;
    for (auto& [id, job] : found) shelf.push_back(std::move(job));
    return shelf;
}

}  // namespace tubewright
