#include "store/own_jobs.h"

#include <random>

#include "desk.h"
#include "store/draft_file.h"
#include "store/job_text.h"
#include "store/shelf.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

/// A home of one's own beside a folder of shipped jobs with one demo in it.
struct Shop {
    OwnFolder folder;
    fs::path demo = folder.write("shipped/demo.json", example_job);
    JobFolders folders{folder.path() / "shipped", folder.path() / "home" / "jobs"};
    RealDisk disk;

    KeptJob keep(const JobInHand& hand, const Draft& draft) {
        const auto kept = keep_job(disk, folders, hand, draft, shipped_library());
        if (!kept.ok()) FAIL(kept.trouble().sentence);
        return kept.value();
    }
    std::string not_kept(const JobInHand& hand, const Draft& draft) {
        const auto kept = keep_job(disk, folders, hand, draft, shipped_library());
        return kept.ok() ? "was kept" : kept.trouble().sentence;
    }
    std::vector<std::string> files() const {
        std::vector<std::string> names;
        if (fs::exists(folders.own))
            for (const auto& entry : fs::directory_iterator(folders.own)) names.push_back(entry.path().filename().string());
        std::sort(names.begin(), names.end());
        return names;
    }
};

OpenedJob opened(const fs::path& path) {
    const auto job = open_to_enter(path, shipped_library());
    if (!job.ok()) FAIL(job.trouble().sentence());
    return job.value();
}

Draft named(const std::string& name) {
    Draft job;
    job.name = name;
    return job;
}

/// The job after one more touch.
Draft touched(Draft job, const std::string& note) {
    job.note = note;
    return job;
}

}  // namespace

TEST_CASE("a job's name makes a safe file name") {
    CHECK(file_name_for("Utility trailer brake lines") == "utility-trailer-brake-lines");
    CHECK(file_name_for("../../etc/passwd") == "etc-passwd");
    CHECK(file_name_for("3/16 in,  left & right!") == "3-16-in-left-right");
    CHECK(file_name_for(".hidden") == "hidden");
    CHECK(file_name_for("%s ## \"quoted\" \\ : * ?") == "s-quoted");
    CHECK(file_name_for("äöü") == "job");
    CHECK(file_name_for("Hof-Überlauf") == "hof-berlauf");
    CHECK(file_name_for("") == "job");
    CHECK(file_name_for(std::string(300, 'a')) == std::string(60, 'a'));
}

TEST_CASE("a new job gets a file of its own, kept from its name on, and the same file ever after") {
    Shop shop;
    const KeptJob first = shop.keep({}, named("Barn door"));
    CHECK(first.said.empty());
    CHECK(first.hand.path == shop.folders.own / "barn-door.json");
    CHECK(first.hand.bytes == bytes_in(first.hand.path));
    const KeptJob second = shop.keep(first.hand, touched(named("Barn door and gate"), "one"));
    CHECK(second.hand.path == first.hand.path);
    CHECK(opened(first.hand.path).draft == touched(named("Barn door and gate"), "one"));
    CHECK(shop.files() == std::vector<std::string>{"barn-door.json"});
}

TEST_CASE("a new job takes no other file's name, and none that would hide a shipped job") {
    Shop shop;
    shop.keep({}, named("Barn door"));
    CHECK(shop.keep({}, named("barn DOOR")).hand.path.filename() == "barn-door-2.json");
    CHECK(shop.keep({}, named("Barn: door")).hand.path.filename() == "barn-door-3.json");
    CHECK(shop.keep({}, named("Demo")).hand.path.filename() == "demo-2.json");
    CHECK(bytes_in(shop.demo) == example_job);
    CHECK(opened(shop.folders.own / "barn-door.json").draft.name == "Barn door");
}

TEST_CASE("a shipped job is copied when it is changed, once, and not when it is only looked at") {
    Shop shop;
    const OpenedJob job = opened(shop.demo);
    CHECK(shop.keep(job.hand, job.draft).said.empty());
    CHECK(shop.files().empty());
    const KeptJob kept = shop.keep(job.hand, touched(job.draft, "one"));
    CHECK(kept.said == "The shipped job stays as it is; your copy is demo.json.");
    CHECK(kept.hand.path == shop.folders.own / "demo.json");
    const KeptJob again = shop.keep(kept.hand, touched(job.draft, "two"));
    CHECK(again.said.empty());
    CHECK(again.hand.path == kept.hand.path);
    CHECK(opened(kept.hand.path).draft.note == "two");
    CHECK(bytes_in(shop.demo) == example_job);
    // Opened once more from where it was shipped, it does not take the first copy's place.
    CHECK(shop.keep(job.hand, touched(job.draft, "three")).hand.path == shop.folders.own / "demo-2.json");
    CHECK(opened(kept.hand.path).draft.note == "two");
}

TEST_CASE("a file that says the same already is left in its own layout") {
    Shop shop;
    const fs::path path = shop.folder.write("home/jobs/mine.json", example_job);
    const OpenedJob job = opened(path);
    shop.keep(job.hand, job.draft);
    CHECK(bytes_in(path) == example_job);
    shop.keep(job.hand, touched(job.draft, "one"));
    CHECK(bytes_in(path) == text_of(touched(job.draft, "one")));
}

TEST_CASE("a job open in two windows: neither one's work is written over, and the second is told") {
    Shop shop;
    const fs::path path = shop.folder.write("home/jobs/set.json", example_job);
    const OpenedJob left = opened(path), right = opened(path);
    const KeptJob first = shop.keep(left.hand, touched(left.draft, "left"));
    const KeptJob second = shop.keep(right.hand, touched(right.draft, "right"));
    CHECK(first.said.empty());
    CHECK(second.said == "set.json was changed meanwhile by another window or program; both are kept, yours is now set-2.json.");
    CHECK(opened(path).draft.note == "left");
    CHECK(opened(shop.folders.own / "set-2.json").draft.note == "right");
    // From then on each goes on in its own file.
    CHECK(shop.keep(first.hand, touched(left.draft, "left again")).said.empty());
    CHECK(shop.keep(second.hand, touched(right.draft, "right again")).said.empty());
    CHECK(opened(path).draft.note == "left again");
    CHECK(opened(shop.folders.own / "set-2.json").draft.note == "right again");
    CHECK(shop.files() == std::vector<std::string>{"set-2.json", "set.json"});
}

TEST_CASE("an edit by another program is kept too, even one that is no job any more") {
    Shop shop;
    const OpenedJob job = opened(shop.folder.write("home/jobs/set.json", example_job));
    shop.folder.write("home/jobs/set.json", "scribble");
    CHECK(shop.keep(job.hand, touched(job.draft, "one")).hand.path.filename() == "set-2.json");
    CHECK(bytes_in(job.hand.path) == "scribble");
    // A file that was taken away is written anew: nothing is lost by that.
    fs::remove(job.hand.path);
    CHECK(shop.keep(job.hand, touched(job.draft, "two")).said.empty());
    CHECK(opened(job.hand.path).draft.note == "two");
}

TEST_CASE("whatever two windows do in turn, each one's last touch lies in a file") {
    std::mt19937 dice(20261125);
    Shop shop;
    const OpenedJob job = opened(shop.folder.write("home/jobs/set.json", example_job));
    struct Window { JobInHand hand; Draft draft; } windows[2]{{job.hand, job.draft}, {job.hand, job.draft}};
    for (int i = 0; i < 80; ++i) {
        Window& window = windows[dice() % 2];
        window.draft.note = "touch " + std::to_string(dice() % 5);
        if (dice() % 20 == 0) {  // closed and opened again, where the other one is
            const OpenedJob again = opened(windows[0].hand.path);
            window = {again.hand, again.draft};
        }
        window.hand = shop.keep(window.hand, window.draft).hand;
        REQUIRE(opened(window.hand.path).draft == window.draft);
        for (const Window& any : windows)
            if (any.hand.bytes == bytes_in(any.hand.path)) CHECK(opened(any.hand.path).draft == any.draft);
    }
}

TEST_CASE("a job from another folder is kept where it lies") {
    Shop shop;
    const OpenedJob job = opened(shop.folder.write("elsewhere/set.json", example_job));
    const KeptJob kept = shop.keep(job.hand, touched(job.draft, "one"));
    CHECK(kept.hand.path == job.hand.path);
    CHECK(kept.said.empty());
    CHECK(opened(job.hand.path).draft.note == "one");
    CHECK(shop.files().empty());
}

TEST_CASE("what can't be kept says why, and what was there stays") {
    Shop shop;
    const OpenedJob job = opened(shop.folder.write("home/jobs/set.json", example_job));
    CHECK(shop.not_kept(job.hand, named("")) == "The job, name is empty; allowed: some text.");
    CHECK(shop.not_kept(job.hand, named("two\nlines")) == "The job, name holds a control character; allowed: one line of text.");
    Draft wrong = job.draft;
    wrong.lines[0].route.runs[0] = {-1};
    CHECK(shop.not_kept(job.hand, wrong).rfind("The job, lines[0].route.legs[0] is -0.03", 0) == 0);
    CHECK(bytes_in(job.hand.path) == example_job);

    class FullDisk : public Disk {
        bool write_and_flush(const fs::path&, const std::string&) override { return false; }
        bool rename_over(const fs::path&, const fs::path&) override { return false; }
        bool remove(const fs::path&) override { return false; }
    } full;
    const auto kept = keep_job(full, shop.folders, job.hand, touched(job.draft, "one"), shipped_library());
    REQUIRE_FALSE(kept.ok());
    CHECK(kept.trouble().sentence == "No room or no permission to write set.json; what was there is untouched.");

    const JobFolders blocked{shop.folders.shipped, shop.folder.write("file", "") / "jobs"};
    const auto nowhere = keep_job(shop.disk, blocked, {}, named("any"), shipped_library());
    REQUIRE_FALSE(nowhere.ok());
    CHECK(nowhere.trouble().sentence.rfind("The job is not kept: the folder " + blocked.own.string() + " can't be made (", 0) == 0);
}

TEST_CASE("an unfinished job is kept, stands on the shelf, and is gone on with") {
    Shop shop;
    Draft job = opened(shop.demo).draft;
    job.lines[0].route.bends[1].rotation.reset();
    const KeptJob kept = shop.keep({}, job);
    CHECK(found_job(kept.hand.path, shipped_library()).unfinished);
    Draft back = opened(kept.hand.path).draft;
    CHECK(back.lines[0].unfinished);
    back.lines[0].unfinished = false;
    CHECK(back == job);
    back.lines[0].route.bends[1].rotation = Angle{90};
    CHECK(found_job(shop.keep(kept.hand, back).hand.path, shipped_library()).trouble.empty());
}

}  // namespace tubewright
