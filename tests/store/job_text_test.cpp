#include "store/job_text.h"

#include "desk.h"
#include "random_draft.h"
#include "store/draft_file.h"

namespace tubewright {
namespace {

Draft draft_of(const std::string& text) {
    const auto read = read_draft_text(text, "job.json", shipped_library());
    if (!read.ok()) FAIL(read.trouble().sentence() << "\n" << text);
    return read.value();
}

}  // namespace

TEST_CASE("the format's example is written one thing a line, numbers as they were typed") {
    CHECK(text_of(draft_of(example_job)) == R"({
  "format": "tubewright-job",
  "version": 1,
  "name": "Utility trailer brake lines",
  "service": "brake",
  "units": "in",
  "tube": { "od": 0.1875, "wall": 0.028, "material": "stainless-304" },
  "bender": "hand-3/16",
  "lines": [
    {
      "name": "axle crossover",
      "quantity": 1,
      "ends": {
        "A": { "fitting": "flare-37-single" },
        "B": { "fitting": "flare-37-single", "trim": 0.5 }
      },
      "route": {
        "form": "legs",
        "measured_to": "centre",
        "legs": [6.5, 4.25, 12],
        "bends": [
          { "angle": 90 },
          { "angle": 45, "rotation": 90 }
        ]
      }
    }
  ]
}
)");
}

TEST_CASE("every shipped job, and the specimen, comes back from its draft as the same job") {
    std::vector<std::filesystem::path> files{source_dir / "tests/specimens/job-version-1.json"};
    for (const auto& entry : std::filesystem::directory_iterator(source_dir / "jobs")) files.push_back(entry.path());
    CHECK(files.size() >= 5);
    for (const std::filesystem::path& file : files) {
        INFO(file);
        const std::string text = bytes_in(file), again = text_of(draft_of(text));
        CHECK(job_of(again) == job_of(text));
        CHECK(draft_of(again) == draft_of(text));
        CHECK(text_of(draft_of(again)) == again);
    }
}

TEST_CASE("any draft is read back as it was, and its text comes out the same") {
    DraftDice dice(20261125);
    int unfinished = 0;
    for (int i = 0; i < 600; ++i) {
        const Draft job = i % 2 ? dice.job_so_far() : dice.finished_job();
        const std::string text = text_of(job);
        INFO("draft " << i << ":\n" << text);
        const Draft back = draft_of(text);
        REQUIRE(back == job);
        REQUIRE(text_of(back) == text);
        const bool whole = !job.lines.empty() && std::none_of(job.lines.begin(), job.lines.end(), [&](const DraftLine& line) { return is_unfinished(job, line); });
        REQUIRE(read_job_text(text, "job.json", shipped_library()).ok() == whole);
        unfinished += !whole;
    }
    CHECK(unfinished > 100);
    CHECK(unfinished < 300);
}

}  // namespace tubewright
