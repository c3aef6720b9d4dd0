#include "store/job_file.h"

#include "desk.h"

namespace tubewright {

TEST_CASE("the job file format's example reads as it is written") {
    const Job job = job_of(example_job);
    CHECK(job.name == "Utility trailer brake lines");
    CHECK(job.service == Service::brake);
    CHECK(job.unit == Unit::inch);
    REQUIRE(job.lines.size() == 1);
    CHECK(job.lines[0].service == Service::brake);
    const Line& line = job.lines[0];
    // 3/16 in = 4.7625 mm, 0.028 in = 0.7112 mm; legs 6.5 4.25 12 in = 165.1 107.95 304.8 mm
    CHECK(line.tube.od.mm == Approx(4.7625));
    CHECK(line.tube.wall.mm == Approx(0.7112));
    CHECK(line.material.id == "stainless-304");
    CHECK(line.bender.id == "hand-3/16");
    CHECK(line.bender.radius.mm == Approx(0.5625 * 25.4));
    CHECK(line.quantity == 1);
    REQUIRE(line.route.runs.size() == 3);
    CHECK(line.route.runs[0].mm == Approx(165.1));
    CHECK(line.route.runs[1].mm == Approx(107.95));
    CHECK(line.route.runs[2].mm == Approx(304.8));
    REQUIRE(line.route.bends.size() == 2);
    CHECK(line.route.bends[0] == Bend{{90}, {0}});
    CHECK(line.route.bends[1] == Bend{{45}, {90}});
    CHECK(line.bend_notes == std::vector<std::string>{"", ""});
    // 0.1 in goes into the flare; half an inch is trimmed at B
    CHECK(line.a.allowance.mm == Approx(2.54));
    CHECK(line.a.trim == Length{});
    CHECK(line.b.trim.mm == Approx(12.7));
    CHECK(line.stick == Length{6096});
}

TEST_CASE("tube, bender and allowance on a line win over the job's and the fitting's") {
    std::string text = with(example_job, "\"name\": \"axle crossover\",",
        R"("name": "axle crossover", "tube": { "od": 0.25, "wall": 0.035, "material": "steel-low-carbon" }, "bender": "hand-1/4",)");
    text = with(text, "\"trim\": 0.5", "\"trim\": 0.5, \"allowance\": 0.2");
    const Line line = job_of(text).lines[0];
    CHECK(line.tube.od == Length{6.35});
    CHECK(line.material.id == "steel-low-carbon");
    CHECK(line.bender.id == "hand-1/4");
    CHECK(line.b.allowance.mm == Approx(5.08));
    CHECK(line.a.allowance.mm == Approx(2.8));
}

TEST_CASE("a whole card may stand in place of a bender's id, in its own unit") {
    const std::string card = bytes_in(source_dir / "assets/benders/hand-4-75.json");
    const Job job = job_of(with(example_job, "\"hand-3/16\"", card));
    CHECK(job.lines[0].bender.id == "hand-4.75");
    CHECK(job.lines[0].bender.radius == Length{15});
}

TEST_CASE("notes and keys that begin with x- may stand anywhere") {
    std::string text = with(example_job, "{ \"angle\": 90 }", "{ \"angle\": 90, \"note\": \"under the step\", \"x-photo\": [1, {\"a\": null}] }");
    text = with(text, "\"units\": \"in\",", "\"units\": \"in\", \"x-customer\": \"yard 7\", \"note\": \"second set\",");
    text = with(text, "\"quantity\": 1,", "\"quantity\": 3, \"note\": \"left to right\",");
    const Line line = job_of(text).lines[0];
    CHECK(line.note == "left to right");
    CHECK(line.quantity == 3);
    CHECK(line.bend_notes == std::vector<std::string>{"under the step", ""});
}

TEST_CASE("a whole bend of text with a percent sign, hashes and letters beyond ASCII is kept as it is") {
    const Job job = job_of(with(example_job, "axle crossover", "50% ##2 ###x äöü"));
    CHECK(job.lines[0].name == "50% ##2 ###x äöü");
}

TEST_CASE("inches and millimetres give the same line") {
    std::string text = with(example_job, "\"units\": \"in\"", "\"units\": \"mm\"");
    text = with(text, "\"od\": 0.1875, \"wall\": 0.028", "\"od\": 4.7625, \"wall\": 0.7112");
    text = with(text, "[6.5, 4.25, 12.0]", "[165.1, 107.95, 304.8]");
    text = with(text, "\"trim\": 0.5", "\"trim\": 12.7");
    const Line mm = job_of(text).lines[0], inch = job_of(example_job).lines[0];
    CHECK(mm.tube.od.mm == Approx(inch.tube.od.mm).epsilon(1e-14));
    for (std::size_t i = 0; i < 3; ++i) CHECK(mm.route.runs[i].mm == Approx(inch.route.runs[i].mm).epsilon(1e-14));
    CHECK(mm.b.trim.mm == Approx(inch.b.trim.mm).epsilon(1e-14));
    CHECK(mm.bender == inch.bender);
}

TEST_CASE("the specimen of version 1 still reads") {
    const auto read = read_job(source_dir / "tests/specimens/job-version-1.json", shipped_library());
    if (!read.ok()) FAIL(read.trouble().sentence());
    REQUIRE(read.value().lines.size() == 4);
    CHECK(read.value().lines[0].route.measured_to == TapeEdge::inside);
    CHECK(read.value().lines[1].route.form == RouteForm::straights);
    CHECK(read.value().lines[2].route.form == RouteForm::points);
    CHECK(read.value().lines[3].route.form == RouteForm::moves);
    CHECK(read.value().lines[3].bender.id == "own-6");
}

}  // namespace tubewright
