// The demo jobs that come with the program can be made as they stand.

#include <set>

#include "bench/handling.h"
#include "bench/sheet.h"
#include "desk.h"

namespace tubewright {
namespace {

Job shipped_job(const std::string& name) {
    const auto read = read_job(source_dir / "jobs" / (name + ".json"), shipped_library());
    if (!read.ok()) FAIL(read.trouble().sentence());
    return read.value();
}

std::set<std::filesystem::path> shipped_files() {
    std::set<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(source_dir / "jobs")) files.insert(entry.path());
    return files;
}

/// Whether the bends that are left can be made one after another with room for hook and lever and nothing in the way.
bool goes_on(const Line& line, const Layout& laid, Handling& handling, std::vector<Placing>& order, std::uint64_t made) {
    const std::size_t bends = laid.part.bends.size();
    if (order.size() == bends) return true;
    for (std::size_t bend = 0; bend < bends; ++bend)
        for (const End hook : {End::A, End::B}) {
            const std::uint64_t bit = std::uint64_t{1} << bend;
            if (made & bit) continue;
            order.push_back({bend, hook});
            const Room room = room_for(laid, order, order.size() - 1);
            if (room.hook >= straight_needed(line, order.back(), true, room.hook_at_end) && room.lever >= straight_needed(line, order.back(), false, room.lever_at_end) &&
                handling.is_free(made, order.back()) && goes_on(line, laid, handling, order, made | bit))
                return true;
            order.pop_back();
        }
    return false;
}

}  // namespace

TEST_CASE("every line of every shipped job can be made: nothing forbids it") {
    REQUIRE(shipped_files().size() >= 4);
    for (const auto& file : shipped_files()) {
        const Job job = shipped_job(file.stem().string());
        for (const Line& line : job.lines) {
            const Sheet sheet = bend_sheet(line);
            INFO(file << ": " << line.name);
            REQUIRE(sheet.layout);
            CHECK(sheet.steps.size() == line.route.bends.size());
            for (const Finding& finding : sheet.findings) {
                INFO(finding.code << " at bend " << (finding.bend ? *finding.bend + 1 : 0));
                CHECK(finding.severity != Severity::stop);
            }
        }
    }
}

TEST_CASE("every shipped bender lets every shipped line through, in one order or another") {
    int lines = 0, as_on_the_sheet = 0;
    for (const auto& file : shipped_files())
        for (const Line& line : shipped_job(file.stem().string()).lines) {
            INFO(file << ": " << line.name);
            REQUIRE(line.bender.body.size() == 8);
            const Sheet sheet = bend_sheet(line);
            Handling handling(*sheet.layout, line.tube.od, line.bender, sheet.set_up, sheet.springback);
            std::vector<Placing> order;
            CHECK(goes_on(line, *sheet.layout, handling, order, 0));
            std::uint64_t made = 0;
            bool free = true;
            for (const Step& step : sheet.steps) {
                free = free && handling.is_free(made, {step.bend, step.hook});
                made |= std::uint64_t{1} << step.bend;
            }
            as_on_the_sheet += free;
            ++lines;
        }
    CHECK(lines > 8);
    CHECK(as_on_the_sheet > lines / 2);
}

TEST_CASE("between them the shipped jobs use every form, every tape edge and both units") {
    std::set<RouteForm> forms;
    std::set<TapeEdge> edges;
    std::set<Unit> units;
    for (const auto& file : shipped_files()) {
        const Job job = shipped_job(file.stem().string());
        units.insert(job.unit);
        for (const Line& line : job.lines) {
            forms.insert(line.route.form);
            if (line.route.form == RouteForm::legs) edges.insert(line.route.measured_to);
        }
    }
    CHECK(forms.size() == 4);
    CHECK(edges.size() == 3);
    CHECK(units.size() == 2);
}

TEST_CASE("the trailer set has five lines, and one of seven bends that leaves its plane") {
    const Job job = shipped_job("trailer-brakes-stainless");
    CHECK(job.service == Service::brake);
    REQUIRE(job.lines.size() == 5);
    const Line& run = job.lines[1];
    REQUIRE(run.route.bends.size() == 7);
    // forward left | forward up | down right are three planes at right angles: a quarter turn between them.
    //   bend 3 (forward to up) against bend 2 (left to forward); bend 6 (down to right) against bend 5 (forward to down)
    CHECK(std::abs(run.route.bends[2].rotation.deg) == Approx(90));
    CHECK(std::abs(run.route.bends[5].rotation.deg) == Approx(90));
}

TEST_CASE("the axle line in steel has the same route as the one in stainless") {
    const Job steel = shipped_job("trailer-axle-steel"), stainless = shipped_job("trailer-brakes-stainless");
    CHECK(steel.lines[0].route == stainless.lines[2].route);
    CHECK(steel.lines[0].material.id == "steel-low-carbon");
}

TEST_CASE("the two cooler lines and the two wheel lines are mirror images") {
    const auto check = [](const Route& left, const Route& right) {
        REQUIRE(left.bends.size() == right.bends.size());
        for (std::size_t i = 0; i < left.runs.size(); ++i) CHECK(left.runs[i].mm == Approx(right.runs[i].mm));
        for (std::size_t i = 0; i < left.bends.size(); ++i) {
            CHECK(left.bends[i].angle.deg == Approx(right.bends[i].angle.deg));
            // -180 and 180 are one direction
            CHECK(wrapped(left.bends[i].rotation + right.bends[i].rotation).deg == Approx(0).margin(1e-9));
        }
    };
    const Job coolers = shipped_job("cooler-pair"), trailer = shipped_job("trailer-brakes-stainless");
    check(coolers.lines[0].route, coolers.lines[1].route);
    check(trailer.lines[3].route, trailer.lines[4].route);
}

}  // namespace tubewright
