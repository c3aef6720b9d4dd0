#include "bench/more_to_read.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "bench/plain_sheet.h"

namespace tubewright {
namespace {

using Catch::Matchers::WithinAbs;
constexpr double inch = 25.4;

/// Along, up, aside, along: every bend in a plane of its own.
Sheet round_corners() { return plain_sheet(line_of({8, 7, 9, 10, 8}, {{90, 0}, {90, 90}, {60, -90}, {45, 30}})); }

RescueQuestion asked(const Sheet& sheet, std::size_t steps, const MadeReadings& readings) {
    RescueQuestion question;
    question.sheet = sheet, question.steps_done = steps, question.on_bender = false;
    question.made = as_made(sheet, steps, readings);
    return question;
}

MadeReadings with(MadeReadings readings, const ToRead& read, std::size_t steps) {
    if (read.what == ToRead::What::turn) readings.turns.push_back({read.bend, read.against, {read.foreseen}});
    else readings.tapes.push_back({{read.span, {read.foreseen}}, steps});
    return readings;
}

}  // namespace

TEST_CASE("a tape of the tube as it was after the first bend stays what it was when the second is made") {
    // By hand, R = .5625: a Z of 6, 5, 6 and half an inch left on at B. Two arcs save .42920 R each on their corners: cut to 17.01715.
    //   after bend 1: 6 along, and 17.01715 + .24143 - 6 = 11.25858 up: 12.7576 from end to end
    //   after both:   6 + 6.5 along and 5 up: 13.4629
    Line line = line_of({6, 5, 6}, {{90, 0}, {90, 180}});
    line.b.trim = Length{inch / 2};
    const Sheet sheet = plain_sheet(line);
    MadeReadings readings;
    readings.tapes = {{{{0, 3}, {}}, 1}, {{{0, 3}, {}}, 2}};
    const Eigen::VectorXd read = read_of(sheet, {{}, {}}, readings);
    CHECK_THAT(read[0], WithinAbs(12.7576 * inch, 0.002));
    CHECK_THAT(read[1], WithinAbs(13.4629 * inch, 0.002));
}

TEST_CASE("a turn against a bend further off is the sum of the turns between") {
    const Sheet sheet = round_corners();
    MadeReadings readings;
    readings.turns = {{1, 0, {}}, {2, 0, {}}, {3, 1, {}}};
    const Eigen::VectorXd read = read_of(sheet, {{}, {}, {}, {}}, readings);
    CHECK_THAT(read[0], WithinAbs(90, 1e-9));
    CHECK_THAT(read[1], WithinAbs(90 - 90, 1e-9));
    CHECK_THAT(read[2], WithinAbs(-90 + 30, 1e-9));
}

TEST_CASE("what comes out as foreseen leaves the ends known as well as was said") {
    const Sheet sheet = round_corners();
    MadeReadings readings;
    for (const std::size_t bend : {0, 1, 2}) readings.angles[bend] = sheet.layout->part.bends[bend].angle;
    const RescueQuestion question = asked(sheet, 3, readings);
    const MoreToRead more = more_to_read(question, readings);
    REQUIRE(more.readings.size() >= 3);  // two turns, and what is taped
    CHECK(more.readings[1].what == ToRead::What::turn);
    CHECK(more.readings[2].what == ToRead::What::tape);
    for (const ToRead& read : more.readings) {
        INFO((read.what == ToRead::What::turn ? "turn of bend " + std::to_string(read.bend) : "tape from " + std::to_string(read.span.from) + " to " + std::to_string(read.span.to)));
        const MadeReadings then = with(readings, read, 3);
        const MoreToRead after = more_to_read(asked(sheet, 3, then), then);
        CHECK(read.known < more.known);
        CHECK_THAT(after.known.mm, WithinAbs(read.known.mm, 0.001 * more.known.mm));
        for (const ToRead& next : after.readings) CHECK_FALSE((next.what == read.what && next.bend == read.bend && next.against == read.against && next.span == read.span));
    }
}

TEST_CASE("no tape between two points of the made tube tells more than the first that is offered") {
    const Sheet sheet = round_corners();
    MadeReadings readings;
    for (const std::size_t bend : {0, 1, 2}) readings.angles[bend] = sheet.layout->part.bends[bend].angle;
    const RescueQuestion question = asked(sheet, 3, readings);
    const auto known_with = [&](Span span) {
        MadeReadings then = readings;
        then.tapes = {{{span, {}}, 3}};
        then.tapes[0].tape.read = {read_of(sheet, {{}, {}, {}}, then)[3]};
        const RescueQuestion after = asked(sheet, 3, then);
        // Both ends together, from the definition: the spread of where they lie, drawn at the covariance's root.
        const KeyPlaces wanted = key_places(sheet.layout->part);
        const Eigen::MatrixXd root = after.made.covariance.llt().matrixL();
        double sum = 0;
        for (Eigen::Index c = 0; c < root.cols(); ++c)
            for (const double sign : {1, -1}) {
                std::vector<MadeError> errors = after.made.errors;
                for (std::size_t i = 0; i < errors.size(); ++i) {
                    const auto row = static_cast<Eigen::Index>(3 * i);
                    errors[i].over_bent_rad += sign * root(row, c), errors[i].turned_rad += sign * root(row + 1, c), errors[i].off_mark_mm += sign * root(row + 2, c);
                }
                const LaidOver laid = laid_over(wanted, key_places(part_of(plan_with(sheet, errors))), {});
                sum += (laid.a.squaredNorm() + laid.b.squaredNorm()) / 2;
            }
        return sum;
    };
    const std::vector<ToRead> offered = more_to_read(question, readings).readings;
    const auto first = std::find_if(offered.begin(), offered.end(), [](const ToRead& read) { return read.what == ToRead::What::tape; });
    REQUIRE(first != offered.end());
    const double best = known_with(first->span);
    const std::size_t points[]{0, 1, 2, 3, 5};  // corner 4 is not made
    for (const std::size_t from : points)
        for (const std::size_t to : points)
            if (from < to) CHECK(best <= known_with({from, to}) * 1.01);
}

TEST_CASE("no tape is asked for twice, however much more the same one would tell again") {
    // Some lines at which it would: how far their ends lie apart is known worst.
    for (const double turn : {60.0, 90.0, 120.0, 150.0})
        for (const std::size_t steps : {2, 3}) {
            const Sheet sheet = plain_sheet(line_of({14, 7, 9, 6}, {{60, 0}, {45, turn}, {90, 30}}));
            MadeReadings readings;
            for (std::size_t bend = 0; bend < steps; ++bend) readings.angles[bend] = sheet.layout->part.bends[bend].angle;
            std::vector<Span> tapes;
            for (const ToRead& read : more_to_read(asked(sheet, steps, readings), readings).readings)
                if (read.what == ToRead::What::tape) tapes.push_back(read.span);
            INFO("turn " << turn << ", " << steps << " made");
            CHECK(tapes.size() <= 2);
            if (tapes.size() == 2) CHECK_FALSE(tapes[0] == tapes[1]);
        }
}

TEST_CASE("of one bend there is no turn to read, and points that a hand's breadth holds are not taped") {
    Line line = line_of({1.5, 6, 8}, {{90, 0}, {90, 90}});
    SheetChoice choice;
    choice.springback = Springback{};
    choice.order = {{1, End::B}, {0, End::B}};
    const Sheet sheet = bend_sheet(line, choice);
    const RescueQuestion question = asked(sheet, 1, {});
    for (const ToRead& read : more_to_read(question, {}).readings) {
        CHECK(read.what == ToRead::What::tape);
        CHECK(read.span.from != 1);  // bend 1 is not made
        CHECK(read.span.to != 1);
        CHECK(read.foreseen >= shortest_taped.mm);
    }
    CHECK_FALSE(more_to_read(question, {}).readings.empty());
}

TEST_CASE("a tape is held to corners that are made, and to none that it does not find") {
    // A bend of 4 can't be seen, one of 130 lies too far from the tube: only corners 1 and 4, and the ends.
    const Sheet sheet = plain_sheet(line_of({8, 7, 9, 10, 8, 9}, {{90, 0}, {4, 90}, {130, -90}, {45, 30}, {60, 0}}));
    for (const std::size_t steps : {1, 2, 3, 4})
        for (const ToRead& read : more_to_read(asked(sheet, steps, {}), {}).readings) {
            INFO(steps << " made, from " << read.span.from << " to " << read.span.to);
            if (read.what == ToRead::What::turn) continue;
            for (const std::size_t point : {read.span.from, read.span.to}) CHECK((point == 0 || point == 1 || (point == 4 && steps == 4) || point == 6));
        }
}

TEST_CASE("where the tube is known as well as any tape could tell, none is asked for") {
    const Sheet sheet = round_corners();
    RescueQuestion question = asked(sheet, 2, {});
    question.made.covariance *= 1e-8;
    for (const ToRead& read : more_to_read(question, {}).readings) CHECK(read.what == ToRead::What::turn);
}

}  // namespace tubewright
