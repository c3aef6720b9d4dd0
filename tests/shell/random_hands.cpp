// random_hands HOME TWIN JOB SEED
// Touches a job at random through a real desk until it is killed. HOME and TWIN are two copies of one home. Each touch is made in TWIN first,
// where it can't be lost, and what the book has to hold after it is told; then it is made in HOME, and told again once that is done:
//
//   going 17 5f2a...
//   done 17 5f2a...
//
// Touch 0 is opening the job. Where the two desks do not come to the same it says so and ends with 4.

#include <unistd.h>

#include <iostream>

#include "shell/book_digest.h"
#include "shell/desk.h"
#include "shell/random_touch.h"

using namespace tubewright;

namespace {

Desk desk_in(const std::string& home) {
    const std::filesystem::path root = TUBEWRIGHT_SOURCE_DIR;
    return Desk::made({root / "assets", root / "shaders", root / "jobs", home}, [] { return std::string("2026-11-29"); }).value();
}

void open(Desk& desk, const std::string& job) {
    desk.open_job(job);
    desk.act(OpenLine{desk.state().job->lines.front().name});
    desk.act(GoTo{Screen::bench});
}

std::string digest_of(const Desk& desk) { return tubewright::digest_of(desk.state().work, desk.state().settings, desk.state().past); }

/// At once and in one piece, so that what was told was told.
void tell(const std::string& what, unsigned long touch, const std::string& digest) {
    const std::string line = what + " " + std::to_string(touch) + " " + digest + "\n";
    if (::write(1, line.data(), line.size()) != static_cast<ssize_t>(line.size())) _exit(5);
}

}  // namespace

int main(int count, char** words) {
    if (count < 5) return 2;
    Desk twin = desk_in(words[2]);
    open(twin, words[3]);
    tell("going", 0, digest_of(twin));
    Desk desk = desk_in(words[1]);
    open(desk, words[3]);
    tell("done", 0, digest_of(desk));
    std::mt19937 dice(static_cast<unsigned>(std::stoul(words[4])));
    for (unsigned long touch = 1;; ++touch) {
        const Action action = random_touch(dice, desk.state());
        twin.act(action);
        const std::string wanted = digest_of(twin);
        tell("going", touch, wanted);
        desk.act(action);
        const std::string digest = digest_of(desk);
        if (digest != wanted) {
            std::cerr << "the two desks differ after touch " << touch << ", action " << action.index() << "\n";
            return 4;
        }
        tell("done", touch, digest);
    }
}
