#include "store/shelf.h"

#include "desk.h"

namespace tubewright {

TEST_CASE("the shelf holds the shipped jobs with their lines") {
    const std::vector<FoundJob> shelf = read_shelf(source_dir / "jobs", {}, shipped_library());
    REQUIRE(shelf.size() >= 4);
    CHECK(std::is_sorted(shelf.begin(), shelf.end(), [](const FoundJob& a, const FoundJob& b) { return a.id < b.id; }));
    const auto trailer = std::find_if(shelf.begin(), shelf.end(), [](const FoundJob& job) { return job.id == "trailer-brakes-stainless"; });
    REQUIRE(trailer != shelf.end());
    CHECK(trailer->name == "Utility trailer brake lines");
    CHECK(trailer->lines == std::vector<std::string>{"actuator to frame", "frame run", "axle crossover", "left wheel", "right wheel"});
    for (const FoundJob& job : shelf) CHECK(job.trouble == "");
}

TEST_CASE("a job that can't be read stands on the shelf with its sentence; other files are passed over") {
    const OwnFolder own;
    own.write("good.json", example_job);
    const auto bad = own.write("bad.json", "{");
    own.write("notes.txt", "not a job");
    const std::vector<FoundJob> shelf = read_shelf({}, own.path(), shipped_library());
    REQUIRE(shelf.size() == 2);
    CHECK(shelf[0].id == "bad");
    CHECK(shelf[0].trouble == bad.string() + ", line 1 ends in the middle; allowed: JSON text in UTF-8.");
    CHECK(shelf[0].lines.empty());
    CHECK(shelf[1].id == "good");
    CHECK(shelf[1].lines == std::vector<std::string>{"axle crossover"});
    CHECK(shelf[1].quantities == std::vector<int>{1});
}

TEST_CASE("an unfinished job stands on the shelf under its own name, with what keeps it from the bench") {
    const OwnFolder own;
    const auto path = own.write("half.json", with(example_job, "\"quantity\": 1", "\"unfinished\": true"));
    const FoundJob job = found_job(path, shipped_library());
    CHECK(job.name == "Utility trailer brake lines");
    CHECK(job.unfinished);
    CHECK(job.lines.empty());
    CHECK(job.trouble == path.string() + ", lines[0] is unfinished; allowed: lines that are entered to their end.");
    CHECK_FALSE(found_job(own.write("bad.json", "{"), shipped_library()).unfinished);
    CHECK_FALSE(found_job(own.write("good.json", example_job), shipped_library()).unfinished);
}

TEST_CASE("of two files of one name the user's own counts, and a missing folder holds nothing") {
    const OwnFolder own;
    own.write("shipped/set.json", example_job);
    own.write("mine/set.json", with(example_job, "Utility trailer brake lines", "My set"));
    const std::vector<FoundJob> shelf = read_shelf(own.path() / "shipped", own.path() / "mine", shipped_library());
    REQUIRE(shelf.size() == 1);
    CHECK(shelf[0].name == "My set");
    CHECK(read_shelf(own.path() / "nowhere", own.path() / "nor here", shipped_library()).empty());
}

}  // namespace tubewright
