#include "bench/draft.h"

#include <catch2/catch.hpp>

namespace tubewright {
namespace {

using namespace literals;

/// A job of one line that lacks nothing.
Draft whole_job() {
    DraftLine line{"crossover"};
    line.a.fitting = line.b.fitting = "none";
    line.route.runs = {100_mm, 50_mm, 70_mm};
    line.route.bends = {{90_deg}, {45_deg, -90_deg}};
    Draft job{"trailer"};
    job.tube = DraftTube{{6_mm, 1_mm, "steel-low-carbon"}};
    job.bender = DraftBender{"hand-6"};
    job.lines = {line};
    return job;
}

template <class T>
bool lacks(const Draft& job) {
    const auto lack = lack_of(job, job.lines[0]);
    return lack && std::holds_alternative<T>(*lack) && is_unfinished(job, job.lines[0]);
}

}  // namespace

TEST_CASE("a line with all it needs lacks nothing, and waits only for the person's word") {
    Draft job = whole_job();
    CHECK_FALSE(lack_of(job, job.lines[0]));
    CHECK_FALSE(is_unfinished(job, job.lines[0]));
    job.lines[0].unfinished = true;
    CHECK_FALSE(lack_of(job, job.lines[0]));
    CHECK(is_unfinished(job, job.lines[0]));
}

TEST_CASE("tube and bender may be the job's or the line's own, but one there has to be") {
    Draft job = whole_job();
    job.tube.reset();
    CHECK(lacks<NoTube>(job));
    job.lines[0].tube = DraftTube{{8_mm, 1_mm, "steel-low-carbon"}};
    CHECK_FALSE(lack_of(job, job.lines[0]));
    job.bender.reset();
    CHECK(lacks<NoBender>(job));
    job.lines[0].bender = DraftBender{"hand-8"};
    CHECK_FALSE(lack_of(job, job.lines[0]));
}

TEST_CASE("an end without its fitting, and a route that is none, are lacks") {
    Draft job = whole_job();
    job.lines[0].b.fitting.clear();
    REQUIRE(lacks<NoFitting>(job));
    CHECK(std::get<NoFitting>(*lack_of(job, job.lines[0])).end == End::B);
    job = whole_job();
    job.lines[0].route.bends[1].rotation.reset();
    REQUIRE(lacks<NoRoute>(job));
    CHECK(std::get<RotationMissing>(std::get<NoRoute>(*lack_of(job, job.lines[0])).why).bend == 1);
}

}  // namespace tubewright
