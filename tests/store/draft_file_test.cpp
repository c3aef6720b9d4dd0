// Jobs that are not yet entered to their end: kept and read back, and never taken to the bench.

#include "store/draft_file.h"

#include "desk.h"
#include "store/job_text.h"

namespace tubewright {
namespace {

Draft draft_of(const std::string& text) {
    const auto read = read_draft_text(text, "job.json", shipped_library());
    if (!read.ok()) FAIL(read.trouble().sentence());
    return read.value();
}

std::string draft_sentence_of(const std::string& text) {
    const auto read = read_draft_text(text, "job.json", shipped_library());
    return read.ok() ? "was taken" : read.trouble().sentence();
}

const std::string lead_in = "job.json, lines[0] is unfinished", lead_out = "; allowed: lines that are entered to their end.";

/// What the bench says of the example's line after `spoil`, having been written and read back.
template <class Spoil>
std::string bench_says(const Spoil& spoil) {
    Draft job = draft_of(example_job);
    spoil(job);
    const std::string text = text_of(job);
    INFO(text);
    const Draft back = draft_of(text);
    CHECK(text_of(back) == text);
    return sentence_of(text);
}

}  // namespace

TEST_CASE("whatever a line still lacks, it is kept, and the bench names it and refuses the job") {
    CHECK(bench_says([](Draft& job) { job.lines[0].unfinished = true; }) == lead_in + lead_out);
    CHECK(bench_says([](Draft& job) { job.tube.reset(); }) == lead_in + ": its tube is missing" + lead_out);
    CHECK(bench_says([](Draft& job) { job.bender.reset(); }) == lead_in + ": its bender is missing" + lead_out);
    CHECK(bench_says([](Draft& job) { job.lines[0].b.fitting.clear(); }) == lead_in + ": its ends.B.fitting is missing" + lead_out);
    CHECK(bench_says([](Draft& job) { job.lines[0].route = {}; }) == lead_in + ": its route.legs has 0 entries" + lead_out);
    CHECK(bench_says([](Draft& job) { job.lines[0].route.runs.pop_back(); }) == lead_in + ": its route.bends has 2 entries" + lead_out);
    CHECK(bench_says([](Draft& job) { job.lines[0].route.bends[1].rotation.reset(); }) == lead_in + ": its route.bends[1].rotation is missing" + lead_out);
    CHECK(bench_says([](Draft& job) { job.lines[0].route.form = RouteForm::points; }) == lead_in + ": its route.points has 0 entries" + lead_out);
    CHECK(bench_says([](Draft& job) { job.lines[0].route.form = RouteForm::moves; }) == lead_in + ": its route.moves has 0 entries" + lead_out);
    CHECK(bench_says([](Draft& job) { job.lines.clear(); }) == "job.json, lines has 0 entries; allowed: a list of 1 to 1000.");
}

TEST_CASE("one unfinished line keeps the whole job from the bench, and is named") {
    Draft job = draft_of(example_job);
    job.lines.push_back(job.lines[0]);
    job.lines[1].name = "second";
    CHECK(job_of(text_of(job)).lines.size() == 2);
    job.lines[1].route.bends[1].rotation.reset();
    CHECK(sentence_of(text_of(job)) == "job.json, lines[1] is unfinished: its route.bends[1].rotation is missing" + lead_out);
}

TEST_CASE("a line that does not say it is unfinished has to be whole for the entry too") {
    for (const auto& [was, is] : std::vector<std::pair<std::string, std::string>>{{", \"rotation\": 90", ""}, {"4.25, 12.0", "4.25"}, {"\"bender\": \"hand-3/16\",", ""},
                                                                                  {"\"fitting\": \"flare-37-single\", \"trim\"", "\"trim\""}})
        CHECK(draft_sentence_of(with(example_job, was, is)) == sentence_of(with(example_job, was, is)));
    CHECK(sentence_of(with(example_job, "\"quantity\": 1", "\"unfinished\": false")) == "was taken");
    CHECK(sentence_of(with(example_job, "\"quantity\": 1", "\"unfinished\": 1")) == "job.json, lines[0].unfinished is 1; allowed: true or false.");
}

TEST_CASE("what an unfinished line does have has to be right") {
    const std::string unfinished = with(example_job, "\"quantity\": 1", "\"unfinished\": true");
    const auto check = [&](const std::string& was, const std::string& is, const std::string& says) {
        INFO(is);
        CHECK(draft_sentence_of(with(unfinished, was, is)) == "job.json, " + says + ".");
    };
    check("6.5,", "-6.5,", "lines[0].route.legs[0] is -6.5; allowed: more than 0 and at most 3937 in");
    check("\"rotation\": 90", "\"rotation\": 361", "lines[0].route.bends[1].rotation is 361; allowed: -360 to 360");
    check("\"angle\": 45, ", "", "lines[0].route.bends[1].angle is missing; allowed: a value for angle");
    check("\"flare-37-single\" },", "\"flare-37-double\" },", "lines[0].ends.A.fitting is \"flare-37-double\"; allowed: flare-37-single, flare-45-double, flare-45-single, plain, none");
    check("\"trim\": 0.5", "\"trimm\": 0.5", "lines[0].ends.B.trimm is not a key that belongs here; allowed: fitting, allowance, trim, and keys that begin with x-");
    check("\"centre\"", "\"center\"", "lines[0].route.measured_to is \"center\"; allowed: centre, outside, inside");
}

TEST_CASE("one line of a job can be worked out while the others can't") {
    Draft job = draft_of(example_job);
    job.lines.push_back(job.lines[0]);
    job.lines[0].route.runs.clear();
    job.lines[1].unfinished = true;
    const auto line = line_from(job, 1, "job.json", shipped_library());
    REQUIRE(line.ok());
    CHECK(line.value() == job_of(example_job).lines[0]);
    const auto other = line_from(job, 0, "job.json", shipped_library());
    REQUIRE_FALSE(other.ok());
    CHECK(other.trouble().sentence() == "job.json, lines[0].route.legs has 0 entries; allowed: a list of 1 to 201.");
}

TEST_CASE("a draft whose numbers or names came from elsewhere is refused like its file would be") {
    const auto says = [](const auto& spoil) {
        Draft job = draft_of(example_job);
        spoil(job);
        const auto made = job_from(job, "job.json", shipped_library());
        return made.ok() ? "was taken" : made.trouble().sentence();
    };
    CHECK(says([](Draft&) {}) == "was taken");
    CHECK(says([](Draft& job) { job.lines[0].route.runs[0] = {-165.1}; }) == "job.json, lines[0].route.legs[0] is -6.5; allowed: more than 0 and at most 3937 in.");
    CHECK(says([](Draft& job) { job.lines[0].route.bends[1].angle = {181}; }) == "job.json, lines[0].route.bends[1].angle is 181; allowed: 0 to 180.");
    CHECK(says([](Draft& job) { job.bender->id = "none"; }).rfind("job.json, lines[0].bender is \"none\"; allowed: hand-", 0) == 0);
    CHECK(says([](Draft& job) { job.tube->tube.material = "cheese"; }).rfind("job.json, lines[0].tube.material is \"cheese\"; allowed: stainless-304, ", 0) == 0);
    CHECK(says([](Draft& job) { job.bender = DraftBender{"own", "{}"}; }) == "job.json, format is missing; allowed: \"tubewright-bender\".");
}

TEST_CASE("drafts are read from files like jobs") {
    const OwnFolder own;
    const auto read = read_draft(own.write("job.json", example_job), shipped_library());
    REQUIRE(read.ok());
    CHECK(read.value() == draft_of(example_job));
    const auto none = read_draft(own.path() / "none.json", shipped_library());
    REQUIRE_FALSE(none.ok());
    CHECK(none.trouble().sentence() == (own.path() / "none.json").string() + " is not there; allowed: a file that exists.");
}

}  // namespace tubewright
