#include <catch2/catch.hpp>

#include "state/card_figures.h"
#include "state/sample_state.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

State with_body() {
    State state = job_open();
    Job job = *state.job;
    for (Line& line : job.lines)
        line.bender.body = {{"block", Stands::fixed, Block{{-40, -20, -8}, {-10, -6, 8}}},
                            {"handle", Stands::lever, Cylinder{{60, -13, 0}, {160, -13, 0}, Length{4}}},
                            {"bench top", Stands::bench, HalfSpace{{0, 0, -50}, {0, 0, -1}}}};
    return touched(std::move(state), {JobRead{"trailer", "jobs/trailer.json", job}, OpenLine{"axle crossover"}, GoTo{Screen::stance}, GoTo{Screen::card}});
}

State typed(State state, const std::string& figure, const std::vector<std::string>& keys) {
    state = touched(std::move(state), {PickFigure{figure}});
    for (const std::string& key : keys) state = touched(std::move(state), {Key{key}});
    return state;
}

State taken(State state, const std::string& figure, const std::vector<std::string>& keys) { return touched(typed(std::move(state), figure, keys), {TakeFigure{}}); }

}  // namespace

TEST_CASE("a number of the card is typed in the reader's unit") {
    const State inch = touched(with_body(), {SetUnit{Unit::inch}}), mm = touched(with_body(), {SetUnit{Unit::mm}});
    CHECK(taken(inch, "radius", {"1", "1/2"}).card->bender.radius.mm == Approx(38.1));  // 1 1/2 x 25.4
    CHECK(taken(inch, "radius", {".", "5", "6", "2", "5"}).card->bender.radius.mm == Approx(14.2875));
    CHECK(taken(mm, "radius", {"1", "5", ".", "2"}).card->bender.radius == Length{15.2});
    CHECK(taken(inch, "max-angle", {"1", "2", "0"}).card->bender.max_angle == Angle{120});
    CHECK(taken(mm, "hook", {"2", "1"}).card->bender.hook_straight == 21_mm);
    CHECK(taken(mm, "lever", {"2", "2"}).card->bender.lever_straight == 22_mm);
    CHECK(taken(mm, "mark-1", {"sign", "7"}).card->bender.marks[1].offset == Length{-7});
}

TEST_CASE("each number of a solid goes where it belongs, and nothing else moves") {
    const State mm = touched(with_body(), {SetUnit{Unit::mm}});
    CHECK(std::get<Block>(taken(mm, "solid-0-4", {"sign", "3"}).card->bender.body[0].shape) == Block{{-40, -20, -8}, {-10, -3, 8}});
    CHECK(std::get<Cylinder>(taken(mm, "solid-1-0", {"6"}).card->bender.body[1].shape).radius == Length{6});
    CHECK(std::get<Cylinder>(taken(mm, "solid-1-4", {"9", "0"}).card->bender.body[1].shape).to == Eigen::Vector3d(90, -13, 0));
    CHECK(std::get<HalfSpace>(taken(mm, "solid-2-2", {"sign", "6", "0"}).card->bender.body[2].shape).at.z() == -60);
    // A direction has no unit: 1 stays 1 for a reader of inches.
    CHECK(std::get<HalfSpace>(taken(touched(mm, {SetUnit{Unit::inch}}), "solid-2-3", {"1"}).card->bender.body[2].shape).into.x() == 1);
}

TEST_CASE("what is not allowed is refused and leaves the card as it was") {
    const State mm = touched(with_body(), {SetUnit{Unit::mm}});
    const auto bar = [&](const std::string& figure, const std::vector<std::string>& keys) {
        const State state = typed(mm, figure, keys);
        if (figure_bar(state) != FigureBar::none) CHECK(touched(state, {TakeFigure{}}).card->bender == mm.card->bender);
        return figure_bar(state);
    };
    CHECK(bar("radius", {}) == FigureBar::nothing_typed);
    CHECK(bar("radius", {"0"}) == FigureBar::too_small);
    CHECK(bar("radius", {"9", "9", "9", "9"}) == FigureBar::too_large);
    CHECK(bar("max-angle", {"0"}) == FigureBar::too_small);
    CHECK(bar("max-angle", {"3", "6", "0"}) == FigureBar::none);
    CHECK(bar("max-angle", {"3", "6", "1"}) == FigureBar::too_large);
    CHECK(bar("hook", {"sign", "1"}) == FigureBar::too_small);
    CHECK(bar("solid-0-3", {"sign", "4", "0"}) == FigureBar::flat);       // level with the first corner, at -40
    CHECK(bar("solid-1-4", {"6", "0"}) == FigureBar::no_length);          // the far end where the first one is
    CHECK(bar("solid-2-5", {"0"}) == FigureBar::nowhere);
    CHECK(bar("solid-1-0", {"0"}) == FigureBar::too_small);
}

TEST_CASE("undo on the card's screen takes back its numbers one by one, and not the work") {
    const State start = touched(with_body(), {SetUnit{Unit::mm}});
    State state = taken(taken(start, "hook", {"2", "1"}), "lever", {"3", "3"});
    const Work work = state.work;
    state = touched(std::move(state), {Undo{}});
    CHECK(state.card->bender.hook_straight == 21_mm);
    CHECK(state.card->bender.lever_straight == start.card->bender.lever_straight);
    state = touched(std::move(state), {Undo{}, Undo{}, Redo{}});
    CHECK(state.card->bender == start.card->bender);
    CHECK(state.work == work);
}

TEST_CASE("keeping asks for the card to be saved, and only then do the sheets follow") {
    State state = taken(touched(with_body(), {SetUnit{Unit::mm}}), "hook", {"2", "1"});
    CHECK(sheet_in_hand(state)->line.bender.hook_straight != 21_mm);
    const StateStep asked = apply(state, KeepCard{});
    CHECK(asked.requests == std::vector<Request>{SaveCard{state.card->bender, Unit::mm}});
    CHECK_FALSE(asked.state.card->kept);
    Job job = *state.job;
    for (Line& line : job.lines) line.bender = state.card->bender;
    state = touched(asked.state, {CardKept{state.card->bender, job}});
    CHECK(state.looks.screen == Screen::card);
    CHECK(sheet_in_hand(state)->line.name == "axle crossover");
    CHECK(sheet_in_hand(state)->line.bender.hook_straight == 21_mm);
    CHECK(state.card->kept);
    CHECK(state.own_cards.contains(state.card->bender.id));
    CHECK(apply(state, KeepCard{}).requests.empty());  // nothing has been changed since
}

TEST_CASE("back leads from the keypad to the solid, to the card, to where one came from") {
    State state = typed(touched(with_body(), {PickSolid{0}}), "solid-0-1", {"4"});
    state = touched(std::move(state), {Back{}});
    CHECK((state.card->figure.empty() && state.looks.typed.empty() && state.card->solid == std::optional<std::size_t>{0}));
    state = touched(std::move(state), {Back{}});
    CHECK((state.looks.screen == Screen::card && !state.card->solid));
    CHECK(touched(std::move(state), {Back{}}).looks.screen == Screen::stance);
}

TEST_CASE("changes that were not kept are still there when the card is opened again") {
    const State state = touched(taken(touched(with_body(), {SetUnit{Unit::mm}}), "hook", {"2", "1"}), {Back{}, GoTo{Screen::card}});
    CHECK(state.card->bender.hook_straight == 21_mm);
    CHECK(state.card->past.size() == 1);
}
