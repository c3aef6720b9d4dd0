// Ten thousand job files, read, computed, written as sheets, and carried out by the virtual bench.
#include "worked/virtual_bench.h"

#include <catch2/catch.hpp>

#include "bench/sheet.h"
#include "store/job_file.h"
#include "store/library.h"
#include "store/sheet_file.h"
#include "worked/routes.h"

using namespace tubewright;
using namespace bench_world;
using Eigen::Vector3d;
using nlohmann::json;

namespace {

constexpr double allowed_mm = 1e-6;

const Library& library() {
    static const Library read = read_library(TUBEWRIGHT_SOURCE_DIR "/assets", "").value();
    return read;
}

SheetChoice random_choice(std::mt19937& dice, const Line& line) {
    const auto pick = [&](std::size_t count) { return std::uniform_int_distribution<std::size_t>(0, count - 1)(dice); };
    SheetChoice choice;
    if (pick(4) > 0) choice.mark = line.bender.marks[pick(line.bender.marks.size())].name;
    if (pick(3) == 0) choice.hook = pick(2) ? End::A : End::B;
    choice.mark_from = pick(2) ? End::A : End::B;
    return choice;
}

/// Where the lines of two straights that share a corner come nearest to each other.
Vector3d crossing(const Straight& one, const Straight& two) {
    const Vector3d d = one.to.along, e = two.from.along, gap = two.from.at - one.to.at;
    const double de = d.dot(e), det = 1 - de * de;
    const double t = (gap.dot(d) - de * gap.dot(e)) / det;
    return one.to.at + t * d;
}

/// How far the made line is from the wanted one, laid over each other at end A: its place, its way, its ink.
double off_by(const Wanted& wanted, const Finished& made, double finished_radius) {
    std::vector<Vector3d> got, want;
    Vector3d origin, along, ink;
    if (!wanted.corners_mm.empty()) {
        want = wanted.corners_mm;
        origin = want[0];
        along = (want[1] - want[0]).normalized();
        ink = wanted.ink;
        got.push_back(made.straights.front().from.at);
        for (std::size_t i = 0; i + 1 < made.straights.size(); ++i) got.push_back(crossing(made.straights[i], made.straights[i + 1]));
        got.push_back(made.straights.back().to.at);
    } else {
        origin = {0, 0, 0};
        along = {1, 0, 0};
        ink = {0, 1, 0};
        for (const auto& [from, to] : walked(wanted, finished_radius)) { want.push_back(from); want.push_back(to); }
        for (const Straight& straight : made.straights) { got.push_back(straight.from.at); got.push_back(straight.to.at); }
    }
    if (got.size() != want.size()) return INFINITY;
    const Pose& start = made.straights.front().from;
    Eigen::Matrix3d from, to;
    from << start.along, start.ink, start.along.cross(start.ink);
    to << along, ink, along.cross(ink);
    const Eigen::Matrix3d turn = to * from.transpose();
    double most = 0;
    for (std::size_t i = 0; i < got.size(); ++i) most = std::max(most, (turn * (got[i] - start.at) + origin - want[i]).norm());
    return most;
}

struct Tried {
    json sheet;
    Metal metal;
    double finished_radius;
};

bool says(const json& sheet, const std::string& code) {
    return std::any_of(sheet["findings"].begin(), sheet["findings"].end(), [&](const json& finding) { return finding["code"] == code; });
}

Tried try_out(const Wanted& wanted, std::mt19937& dice) {
    const auto job = read_job_text(wanted.job.dump(), "random.json", library());
    if (!job.ok()) FAIL(job.trouble().sentence());
    const Line& line = job.value().lines.front();
    const Sheet sheet = bend_sheet(line, random_choice(dice, line));
    // The metal's truth is the prior's own line: what is tested here is geometry, not physics.
    return {json::parse(sheet_json(job.value(), sheet, std::vector<std::string>(sheet.findings.size(), "-"))), {sheet.springback.growth, sheet.springback.zero.deg},
            line.bender.radius.mm * (1 + sheet.springback.growth)};
}

/// The truth of a line by the runs it was given with, walked apart from the program.
Wanted wanted_by(const Line& line) {
    Wanted wanted;
    for (const Bend& bend : line.route.bends) {
        wanted.angles_deg.push_back(bend.angle.deg);
        wanted.rotations_deg.push_back(bend.rotation.deg);
    }
    if (line.route.form == RouteForm::straights) {
        for (const Length run : line.route.runs) wanted.straights_mm.push_back(run.mm);
        return wanted;
    }
    std::vector<double> legs;
    for (std::size_t i = 0; i < line.route.runs.size(); ++i) {
        double leg = line.route.runs[i].mm;
        for (const std::size_t corner : {i, i + 1}) {
            if (corner == 0 || corner > wanted.angles_deg.size()) continue;
            const double shift = line.tube.od.mm / 2 * std::tan(wanted.angles_deg[corner - 1] * 0.017453292519943295 / 2);
            if (line.route.measured_to == TapeEdge::outside) leg -= shift;
            if (line.route.measured_to == TapeEdge::inside) leg += shift;
        }
        legs.push_back(leg);
    }
    wanted.corners_mm = corners(legs, wanted.angles_deg, wanted.rotations_deg, wanted.ink);
    return wanted;
}

}  // namespace

TEST_CASE("every sheet, carried out at the bench, makes the line that was asked for") {
    std::mt19937 dice(20240605);
    double worst = 0;
    int unseen = 0;
    for (int i = 0; i < 10000; ++i) {
        const Wanted wanted = random_job(dice);
        const Tried tried = try_out(wanted, dice);
        const Finished made = make(tried.sheet, tried.metal);
        INFO("job " << i << ": " << wanted.job.dump());
        REQUIRE(made.trouble == "");
        CHECK(made.unseen_ink == says(tried.sheet, "mark-off-straight"));
        unseen += made.unseen_ink;
        const double off = off_by(wanted, made, tried.finished_radius);
        REQUIRE(off < allowed_mm);
        worst = std::max(worst, off);
    }
    CHECK(worst > 0);
    CHECK(unseen > 10);  // the dice throw some lines of a bender that no ink can reach
}

TEST_CASE("the virtual bench tells a wrong hand, a wrong mark and a wrong pull") {
    std::mt19937 dice(20240606);
    int turned = 0;
    for (int i = 0; i < 200; ++i) {
        const Wanted wanted = random_job(dice);
        const Tried tried = try_out(wanted, dice);
        INFO("job " << i);
        json late = tried.sheet;
        late["steps"][0]["mark"]["distance"] = late["steps"][0]["mark"]["distance"].get<double>() - 1e-3;
        const Finished made_late = make(late, tried.metal);
        CHECK((!made_late.trouble.empty() || off_by(wanted, made_late, tried.finished_radius) > allowed_mm));
        json pulled = tried.sheet;
        pulled["steps"][0]["angle"]["set"] = pulled["steps"][0]["angle"]["set"].get<double>() - 0.01;
        CHECK(off_by(wanted, make(pulled, tried.metal), tried.finished_radius) > allowed_mm);
        json& steps = late["steps"] = tried.sheet["steps"];
        for (json& step : steps) {
            step["rotation"]["neighbour"] = nullptr;
            const double roll = step["rotation"]["index_line_deg"];
            turned += std::abs(std::sin(roll * 0.017453292519943295)) > 1e-3;
            step["rotation"]["index_line_deg"] = -roll;
        }
        const bool out_of_plane = std::any_of(steps.begin(), steps.end(), [](const json& step) { return std::abs(std::sin(step["rotation"]["index_line_deg"].get<double>() * 0.017453292519943295)) > 1e-3; });
        late["cut_length"] = tried.sheet["cut_length"];
        if (out_of_plane) CHECK(off_by(wanted, make(late, tried.metal), tried.finished_radius) > allowed_mm);
    }
    CHECK(turned > 200);
}

TEST_CASE("every shipped job, carried out at the bench, ends within a millionth of a millimetre") {
    for (const char* name : {"trailer-brakes-stainless", "trailer-axle-steel", "engine-fuel-line", "cooler-pair"}) {
        const auto job = read_job(std::string(TUBEWRIGHT_SOURCE_DIR "/jobs/") + name + ".json", library());
        REQUIRE(job.ok());
        for (const Line& line : job.value().lines) {
            INFO(name << ", " << line.name);
            const Sheet sheet = bend_sheet(line);
            CHECK_FALSE(stopped(sheet));
            const json written = json::parse(sheet_json(job.value(), sheet, std::vector<std::string>(sheet.findings.size(), "-")));
            const Finished made = make(written, {sheet.springback.growth, sheet.springback.zero.deg});
            REQUIRE(made.trouble == "");
            REQUIRE(made.straights.size() == line.route.bends.size() + 1);
            for (std::size_t i = 0; i < made.angles_deg.size(); ++i) CHECK(made.angles_deg[i] == Approx(line.route.bends[i].angle.deg).margin(1e-9));
            CHECK(off_by(wanted_by(line), made, sheet.steps.front().finished_radius.mm) < allowed_mm);
        }
    }
}
