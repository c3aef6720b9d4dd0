// What a finger types at the check, and what the book holds of it afterwards: bends that came out right, that were
// pulled again, that were kept over their target, and a tube that went wrong.
#include <catch2/catch.hpp>

#include "bench/laid_over.h"
#include "shell/walk.h"
#include "state/rules.h"

using namespace tubewright;

namespace {

const char* const job = "engine-fuel-line";

const Sheet& sheet_of(const Walk& walk, std::size_t line) { return walk.state().sheets.at(line); }

/// A typed reading has six digits.
bool reads(const BendMade& made, Angle expected) { return made.measured && std::abs((*made.measured - expected).deg) < 1e-3; }

/// Where the lever goes for what is missing, from the half degree it was told: that much more set, and what the longer pull springs back of itself,
/// which is the growth of it (DEVELOPERS.md, set = (1 + growth) * target + zero).
Angle pulled_on(Angle set, Angle missing, const Springback& known) { return on_lever(set) + (1 + known.growth) * missing; }

/// What the first so many of the bends in the log said of that line, as it was when the next one was pulled.
Springback known_after(const Work& book, std::size_t bends, const Line& line) {
    std::vector<BendCheck> log;
    for (std::size_t i = 0; i < bends; ++i) log.push_back(book.bends.at(i).check);
    const auto known = springback_of({line.bender.id, line.tube}, "", log, [&](const BenderAndTube&) { return physics_of(line); });
    return bends == 0 ? physics_of(line) : known->belief.line;
}

/// To the check of that bend of the first line, before anything is typed.
auto at_check(std::size_t bends_made) {
    return [bends_made](const State& state) {
        if (state.looks.screen != Screen::bench || !state.line) return false;
        const LineWork work = work_in_hand(state);
        return work.stage == Stage::bending && work.made.size() == bends_made && work.move == Move::check && state.looks.typed.empty();
    };
}

/// The same, with a reading that asks how to go on.
auto asked_at(std::size_t bends_made) {
    return [bends_made](const State& state) {
        return state.looks.screen == Screen::bench && state.line && work_in_hand(state).made.size() == bends_made && work_in_hand(state).last_reading.has_value() && work_in_hand(state).move == Move::check;
    };
}

/// On the rack, beside what is cut from.
Length offcuts_of(const Work& work) {
    ExactLength sum;
    for (const auto& [number, piece] : work.rack->pieces)
        if (piece.where == Whereabouts::rack && number != work.in_use.begin()->second) sum += piece.length;
    return measured(sum);
}

Length in_use(const Work& work) { return measured(work.rack->pieces.at(work.in_use.begin()->second).length); }

void type(Walk& walk, Angle reading) {
    for (const std::string& key : keys_for(reading)) walk.tap("key-" + key);
}

}  // namespace

TEST_CASE("a reading is spelled with the keys there are") {
    CHECK((keys_for({90}) == std::vector<std::string>{"9", "0"}));
    CHECK((keys_for({45.5}) == std::vector<std::string>{"4", "5", "1/2"}));
    CHECK((keys_for({44.8}) == std::vector<std::string>{"4", "4", ".", "8"}));
    CHECK((keys_for({0.25}) == std::vector<std::string>{"0", "1/4"}));
}

TEST_CASE("readings typed by finger: right, pulled again, kept over, passed over; and the book says the same") {
    Walk walk(try_screens().front());
    // Line 1: right at once; 2 under, then half over, which is within; 2 over, kept.
    // Line 2: 2 under, 1 under, a quarter over; then no reading at all.
    Operator person(job, {{0}, {-2}, {0.5}, {2}, {-2}, {-1}, {0.25}});
    walk.go_on(person);
    CHECK(person.readings_left() == 0);
    CHECK(walk.faults == std::set<std::string>{});
    const Work book = walk.in_the_book();  // the sheets are worked out again when it is opened again
    Desk again = Desk::made(walk.home.places(), one_day).value();
    again.open_job(walk.home.places().jobs / (std::string(job) + ".json"));
    CHECK((again.state().work == book));
    const std::vector<Sheet>& sheets = again.state().sheets;
    REQUIRE(sheets.size() == 2);
    const LineWork& one = book.lines.at(line_key(job, sheets[0].line.name));
    const LineWork& two = book.lines.at(line_key(job, sheets[1].line.name));
    CHECK((one.finished == 1 && two.finished == 1));
    CHECK(book.scrap.empty());

    const auto& steps = sheets[0].steps;
    REQUIRE(one.made.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) CHECK(one.made[i].bend == steps[i].bend);
    CHECK(reads(one.made[0], steps[0].target));
    CHECK(one.made[0].pulls == 1);
    REQUIRE(book.bends.size() == 4);
    const auto known = [&](std::size_t bends, std::size_t line) { return known_after(book, bends, sheets[line].line); };
    CHECK(one.made[0].set == set_angle(known(0, 0), steps[0].target));
    CHECK(reads(one.made[1], steps[1].target + Angle{0.5}));
    CHECK(one.made[1].pulls == 2);
    CHECK(one.made[1].set.deg == Approx(pulled_on(set_angle(known(1, 0), steps[1].target), {2}, known(1, 0)).deg).margin(1e-3));
    CHECK(reads(one.made[2], steps[2].target + Angle{2}));
    CHECK(one.made[2].pulls == 1);
    CHECK((one.made[2].kept_over && !one.made[0].kept_over && !one.made[1].kept_over));

    const auto& more = sheets[1].steps;
    REQUIRE(two.made.size() == more.size());
    CHECK(reads(two.made[0], more[0].target + Angle{0.25}));
    CHECK(two.made[0].pulls == 3);
    CHECK(two.made[0].set.deg == Approx(pulled_on(pulled_on(set_angle(known(3, 1), more[0].target), {2}, known(3, 1)), {1}, known(3, 1)).deg).margin(1e-3));
    CHECK_FALSE(two.made[0].kept_over);
    for (std::size_t i = 1; i < two.made.size(); ++i) CHECK_FALSE(two.made[i].measured);
}

TEST_CASE("over by two, saved by finger, made to the end by the new numbers; what was wanted stays with the job") {
    Walk walk(try_screens().front());
    Operator person(job, {{2}});
    walk.go_on(person, asked_at(0));
    REQUIRE(walk.state().work.bends.empty());
    const Part wanted = sheet_of(walk, 0).layout->part;
    walk.tap("rescue");
    REQUIRE(walk.state().looks.screen == Screen::rescue);
    const Work before = walk.state().work;
    REQUIRE_FALSE(walk.with("way-").empty());
    walk.tap("way-1");
    CHECK(walk.state().work == before);  // looked at
    walk.tap("take-way");
    REQUIRE(walk.work().made.size() == 1);
    CHECK(walk.work().made[0].kept_over);
    walk.tap("undo");
    CHECK(walk.state().work == before);
    walk.tap("rescue");
    walk.tap("take-way");
    const auto saved = walk.work().saved;
    REQUIRE(saved);  // some number changed
    walk.go_on(person, [](const State& state) { return state.line && state.looks.screen == Screen::bench && work_in_hand(state).stage == Stage::done; });
    CHECK(walk.faults == std::set<std::string>{});
    const LineWork done = walk.work();
    CHECK(done.saved == saved);
    CHECK(done.made.size() == sheet_of(walk, 0).steps.size());
    // The bends that nobody measured count as made to their new targets.
    const Sheet& sheet = sheet_of(walk, 0);
    const EndsOff off = ends_off(laid_over(key_places(wanted), key_places(part_as_measured(sheet, measured_angles(sheet, done))), {}));
    CHECK(worst_share(off, {}) <= 1);
    const std::string line = line_key(job, sheet.line.name);
    CHECK(walk.in_the_book().lines.at(line) == done);
}

TEST_CASE("a wrong digit is taken back, and what is no reading is not taken") {
    Walk walk(try_screens().front());
    Operator person(job);
    walk.go_on(person, at_check(0));
    const Angle target = step_in_hand(walk.state())->target;
    type(walk, {200});
    CHECK(walk.with("next").empty());
    const Work before = walk.state().work;
    walk.tap("next");
    CHECK(walk.state().work == before);
    walk.tap("key-back");
    CHECK(walk.state().looks.typed == "20");
    walk.tap("key-clear");
    CHECK(walk.state().looks.typed.empty());
    type(walk, target);
    walk.tap("next");
    REQUIRE(walk.work().made.size() == 1);
    CHECK(reads(walk.work().made[0], target));
    CHECK(walk.faults == std::set<std::string>{});
}

TEST_CASE("pulled again and then over: every reason, every length that can be kept, and all of it undone") {
    Walk walk(try_screens().front());
    Operator person(job, {{0}, {-2}, {3}});
    walk.go_on(person, [](const State& state) { return asked_at(1)(state) && verdict(step_in_hand(state)->target, *work_in_hand(state).last_reading) == Verdict::over; });
    const Sheet sheet = sheet_of(walk, 0);
    const Work before = walk.state().work;
    const Length piece = walk.work().cut_length, on_stick = in_use(before);
    // Bends are made from the middle out or from an end: what is straight lies outside of both of them.
    const auto first = sheet.layout->spans[sheet.steps[0].bend], second = sheet.layout->spans[sheet.steps[1].bend];
    const Length at_a = std::min(first.start, second.start), at_b = piece - std::max(first.end, second.end);
    REQUIRE((at_a >= worth_keeping && at_b >= worth_keeping));
    const std::map<std::string, Length> kept{{"kept-both", at_a + at_b}, {"kept-end-a", at_a}, {"kept-end-b", at_b}, {"kept-none", {}}};
    int tried = 0;
    walk.tap("wrong");
    const std::vector<std::string> reasons = walk.with("reason-");
    CHECK(reasons.size() == 9);
    walk.tap("back");
    for (const std::string& reason : reasons)
        for (const auto& [choice, length] : kept) {
            INFO(reason << ", " << choice);
            walk.tap("wrong");
            walk.tap(reason);
            CHECK(walk.with("confirm").empty());  // not before it is said what is kept
            walk.tap(choice);
            walk.tap("confirm");  // a tap is not enough
            REQUIRE(walk.state().work == before);
            walk.hold("confirm");
            REQUIRE(walk.state().work.scrap.size() == 1);
            const Work& after = walk.state().work;
            const Scrap& scrap = after.scrap.front();
            CHECK("reason-" + std::to_string(static_cast<int>(scrap.reason)) == reason);
            CHECK(scrap.kept.mm == Approx(length.mm));
            CHECK((scrap.scrapped + scrap.kept).mm == Approx(piece.mm));
            CHECK(offcuts_of(after).mm == Approx(length.mm).margin(0.002));
            CHECK(in_use(after) == on_stick);
            CHECK(walk.work().stage == Stage::prepare);
            CHECK(walk.work().attempt == 2);
            CHECK(walk.work().made.empty());
            walk.tap("undo");
            REQUIRE(walk.state().work == before);
            ++tried;
        }
    CHECK(tried == 36);
    CHECK(walk.faults == std::set<std::string>{});
}

TEST_CASE("the bend that was the wrong one can be another than the last, and the line is made again") {
    Walk walk(try_screens().front());
    Operator person(job, {{0}, {3}, {0}, {0}, {0}});
    walk.go_on(person, asked_at(1));
    const std::size_t wrong = sheet_of(walk, 0).steps[0].bend;
    const Length piece = walk.work().cut_length, stick = in_use(walk.state().work) + piece;
    walk.tap("wrong");
    walk.tap("reason-" + std::to_string(static_cast<int>(Reason::over_bent)));
    walk.tap("wrong-bend-" + std::to_string(wrong + 1));
    walk.tap("kept-end-b");
    walk.hold("confirm");
    walk.go_on(person);
    CHECK(person.readings_left() == 0);
    const std::string line = sheet_of(walk, 0).line.name;
    const std::vector<Step> steps = sheet_of(walk, 0).steps;
    CHECK(walk.faults == std::set<std::string>{});
    const Work book = walk.in_the_book();
    REQUIRE(book.scrap.size() == 1);
    CHECK(book.scrap[0].reason == Reason::over_bent);
    CHECK(book.scrap[0].bend == wrong);
    CHECK(book.scrap[0].line == line);
    CHECK((book.scrap[0].scrapped + book.scrap[0].kept).mm == Approx(piece.mm));
    const LineWork& work = book.lines.at(line_key(job, line));
    CHECK(work.finished == 1);
    CHECK(work.attempt == 2);
    REQUIRE(work.made.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) CHECK(reads(work.made[i], steps[i].target));
    // One stick was bought: it is all there, in finished lines, in scrap, in offcuts and what is left of it.
    REQUIRE((book.used.size() == 1 && book.used.begin()->second.size() == 1 && book.in_use.size() == 1));
    const Length made = book.used.begin()->second.begin()->second;
    CHECK((made + book.scrap[0].scrapped + offcuts_of(book) + in_use(book)).mm == Approx(stick.mm).margin(0.002));
}
