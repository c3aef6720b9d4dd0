// The program killed at any instant, and two programs at once: a job's file is always whole, the last touch
// that was acknowledged or the one on its way.

#include <set>

#include "desk.h"
#include "killed.h"
#include "random_draft.h"
#include "store/draft_file.h"
#include "store/folder_lock.h"
#include "store/job_text.h"
#include "store/own_jobs.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

/// A job of its own for each touch, now larger, now smaller.
Draft after_touch(unsigned touch) {
    Draft job = DraftDice(touch).job_so_far();
    job.name = "Killed";
    job.note = std::to_string(touch);
    return job;
}

JobFolders folders_in(const OwnFolder& own) { return {own.path() / "shipped", own.path() / "jobs"}; }

/// Lies still for a moment between writing and renaming, so that a killing hits there too however fast the disk is.
class SlowDisk : public RealDisk {
public:
    bool rename_over(const fs::path& from, const fs::path& to) override {
        usleep(1000);
        return RealDisk::rename_over(from, to);
    }
};

/// Keeps one touch after the other and says so through the pipe, until it is killed.
[[noreturn]] void work_on(const JobFolders& folders, JobInHand hand, unsigned touch, int pipe) {
    SlowDisk disk;
    while (true) {
        auto kept = keep_job(disk, folders, hand, after_touch(++touch), shipped_library());
        if (!kept.ok() || !kept.value().said.empty()) _exit(4);
        hand = std::move(kept).value().hand;
        if (write(pipe, &touch, sizeof touch) != sizeof touch) _exit(5);
    }
}

std::vector<fs::path> job_files(const fs::path& folder) {
    std::vector<fs::path> files;
    if (!fs::exists(folder)) return files;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().extension() == ".json") files.push_back(entry.path());
    return files;
}

}  // namespace

TEST_CASE("killed 90 times at any instant, the job's file is whole, at the last touch or the one on its way") {
    std::mt19937 dice(20261125);
    shipped_library();
    const OwnFolder own;
    const JobFolders folders = folders_in(own);
    JobInHand hand;
    unsigned touch = 0;
    int in_the_middle = 0, one_more = 0;
    for (int round = 0; round < 90; ++round) {
        if (round % 10 == 0) {  // also while the file is being made
            fs::remove_all(folders.own);
            hand = {};
            touch = static_cast<unsigned>(1000 * round);
        }
        const unsigned before = touch, last = kill_somewhere(touch, 0, 8000, dice, [&](int pipe) { work_on(folders, hand, touch, pipe); });
        INFO("round " << round << ", last touch acknowledged " << last);
        in_the_middle += fs::exists(folders.own / "killed.json.new");
        const std::vector<fs::path> files = job_files(folders.own);
        if (files.empty()) {  // nothing was acknowledged yet
            CHECK(last == static_cast<unsigned>(1000 * round));
            CHECK(last == before);
            continue;
        }
        REQUIRE(files == std::vector<fs::path>{folders.own / "killed.json"});
        const auto opened = open_to_enter(files[0], shipped_library());
        if (!opened.ok()) FAIL(opened.trouble().sentence());
        const bool at_next = opened.value().draft == after_touch(last + 1);
        CHECK((at_next || opened.value().draft == after_touch(last)));
        one_more += at_next;
        hand = opened.value().hand;
        touch = at_next ? last + 1 : last;
    }
    INFO("killed inside a save: " << in_the_middle << ", kept but not yet acknowledged: " << one_more);
    CHECK(in_the_middle > 0);  // else the killing hit nothing
}

TEST_CASE("two programs that keep the same job at the same time both keep all of it") {
    shipped_library();
    for (int round = 0; round < 3; ++round) {
        const OwnFolder own;
        const JobFolders folders = folders_in(own);
        const auto opened = open_to_enter(own.write("jobs/set.json", text_of(after_touch(1))), shipped_library());
        REQUIRE(opened.ok());
        pid_t children[2];
        for (unsigned who = 0; who < 2; ++who) {
            children[who] = fork();
            REQUIRE(children[who] >= 0);
            if (children[who] > 0) continue;
            RealDisk disk;
            JobInHand hand = opened.value().hand;
            for (unsigned i = 1; i <= 12; ++i) {
                auto kept = keep_job(disk, folders, hand, after_touch(1000 * (who + 1) + i), shipped_library());
                if (!kept.ok()) _exit(4);
                hand = std::move(kept).value().hand;
            }
            _exit(0);
        }
        for (const pid_t child : children) {
            int status = 0;
            REQUIRE(waitpid(child, &status, 0) == child);
            CHECK((WIFEXITED(status) && WEXITSTATUS(status) == 0));
        }
        std::set<std::string> notes;
        for (const fs::path& file : job_files(folders.own)) {
            const auto job = read_draft(file, shipped_library());
            REQUIRE(job.ok());
            notes.insert(job.value().note);
        }
        CHECK(notes == std::set<std::string>{"1012", "2012"});
    }
}

TEST_CASE("while one holds a folder's lock no other gets it; afterwards it does") {
    const OwnFolder own;
    {
        const auto lock = FolderLock::taken(own.path());
        CHECK(lock);
        CHECK_FALSE(FolderLock::taken(own.path()));
    }
    CHECK(FolderLock::taken(own.path()));
    CHECK(FolderLock::taken(own.path() / "nowhere"));  // nothing to lock; writing will say what is wrong
    CHECK(fs::is_empty(own.path()));
}

}  // namespace tubewright
