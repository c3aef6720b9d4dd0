#include <algorithm>
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
    CHECK(std::get<Cylinder>(taken(mm, "solid-1-6", {"6"}).card->bender.body[1].shape).radius == Length{6});
    CHECK(std::get<Cylinder>(taken(mm, "solid-1-3", {"9", "0"}).card->bender.body[1].shape).to == Eigen::Vector3d(90, -13, 0));
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
    CHECK(bar("solid-1-3", {"6", "0"}) == FigureBar::no_length);          // the far end where the first one is
    CHECK(bar("solid-2-5", {"0"}) == FigureBar::nowhere);
    CHECK(bar("solid-1-6", {"0"}) == FigureBar::too_small);
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
    state = touched(asked.state, {CardKept{state.card->bender, true, job}});
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

namespace {

/// The axle crossover, cut for the card as it was and with its first bend made.
State begun() {
    State state = touched(with_body(), {SetUnit{Unit::mm}, Back{}, Back{}});
    Work work = state.work;
    LineWork& line = work.lines[line_key(state.job_id, "axle crossover")];
    const Sheet& sheet = *sheet_in_hand(state);
    line.stage = Stage::bending;
    line.cut = true;
    line.cut_length = sheet.layout->cut_length;
    line.plan = plan_of(sheet);
    line.inked = inking_of(sheet);
    for (const Step& step : sheet.steps) line.order.push_back({step.bend, step.hook});
    state = touched(std::move(state), {BookRead{work, state.settings}, GoTo{Screen::stance}, GoTo{Screen::card}});
    REQUIRE(misfit(*sheet_in_hand(state), work_in_hand(state)) == Misfit::none);
    return state;
}

/// The card as changed, kept, and the job read with it.
State kept(State state) {
    Job job = *state.job;
    for (Line& line : job.lines) line.bender = state.card->bender;
    const Bender bender = state.card->bender;
    return touched(std::move(state), {CardKept{bender, true, job}});
}

}  // namespace

TEST_CASE("after a card is kept the order is looked for anew, and findings and marks are those of the new card") {
    State state = with_body();
    state.orders[*state.line].looking = true;  // and is not done yet
    const std::int64_t before = state.orders[*state.line].question;
    state = taken(touched(std::move(state), {SetUnit{Unit::mm}}), "hook", {"4", "0", "0"});
    const Bender bender = state.card->bender;
    Job job = *state.job;
    for (Line& line : job.lines) line.bender = bender;
    const StateStep step = apply(state, CardKept{bender, true, job});
    const std::int64_t now = step.state.orders[*step.state.line].question;
    CHECK(now != before);
    const std::vector<Request>& asked = step.requests;
    CHECK(std::count(asked.begin(), asked.end(), Request{StopFinding{before}}) == 1);
    CHECK(std::count(asked.begin(), asked.end(), Request{FindOrder{now, *step.state.line}}) == 1);
    // No leg of it is 400 mm long: the hook finds no straight to hold.
    CHECK_FALSE(stopped(*sheet_in_hand(state)));
    CHECK(stopped(*sheet_in_hand(step.state)));
    // A mark moves by as much as its line on the bender.
    State moved = taken(touched(with_body(), {SetUnit{Unit::mm}}), "mark-0", {"3"});
    const Length mark = sheet_in_hand(moved)->steps.front().mark, old = moved.card->past.front().marks[0].offset;
    CHECK(std::abs((sheet_in_hand(kept(moved))->steps.front().mark - mark).mm) == Approx(std::abs(3 - old.mm)));
}

TEST_CASE("a tube that is cut keeps its numbers when only the body changes, and says what no longer fits when more does") {
    const State start = begun();
    const Sheet sheet = *sheet_in_hand(start);
    const State other_body = kept(taken(start, "solid-1-6", {"6"}));
    CHECK(misfit(*sheet_in_hand(other_body), work_in_hand(other_body)) == Misfit::none);
    CHECK(work_in_hand(other_body) == work_in_hand(start));
    REQUIRE(sheet_in_hand(other_body)->steps.size() == sheet.steps.size());
    for (std::size_t i = 0; i < sheet.steps.size(); ++i) {
        const Step &now = sheet_in_hand(other_body)->steps[i], &then = sheet.steps[i];
        CHECK((now.bend == then.bend && now.hook == then.hook && now.mark == then.mark && now.set == then.set));
    }
    const State other_mark = kept(taken(start, "mark-" + std::to_string(sheet.steps.front().align_to), {"3"}));
    CHECK(misfit(*sheet_in_hand(other_mark), work_in_hand(other_mark)) == Misfit::ink);
    const State other_radius = kept(taken(start, "radius", {"2", "0"}));
    CHECK(misfit(*sheet_in_hand(other_radius), work_in_hand(other_radius)) == Misfit::cut_length);
    CHECK(work_in_hand(other_radius) == work_in_hand(start));
}

TEST_CASE("a tube that is cut is looked at again when the card changes, and says what is in the way, or that nothing is") {
    const auto codes = [](const State& state) {
        std::vector<std::string> found;
        for (const Finding& finding : sheet_in_hand(state)->findings)
            if (finding.code == "looked-again" || finding.code == "hits-as-it-stands") found.push_back(finding.code);
        return found;
    };
    const State start = begun();
    CHECK(codes(start).empty());
    const State harmless = kept(taken(start, "solid-1-6", {"6"}));
    CHECK(codes(harmless) == std::vector<std::string>{"looked-again"});
    // A bench that reaches up round the tube: nothing can be laid in, however the bender stands.
    State edited = start;
    edited.card->past.push_back(edited.card->bender);
    edited.card->bender.body.push_back({"shelf", Stands::bench, Block{{-500, -500, -5}, {500, 500, 500}}});
    const State walled = kept(edited);
    REQUIRE_FALSE(codes(walled).empty());
    for (const Finding& finding : sheet_in_hand(walled)->findings)
        if (const auto* hits = std::get_if<HitsAsItStands>(&finding.fact)) CHECK(hits->new_measures);
    CHECK(misfit(*sheet_in_hand(walled), work_in_hand(walled)) == Misfit::none);
    // Put back, it is still true that it was changed; with the next piece nobody need know.
    State back = walled;
    back.card->bender = start.card->bender;
    back = kept(back);
    CHECK(codes(back) == std::vector<std::string>{"looked-again"});
    Work uncut = back.work;
    uncut.lines[line_key(back.job_id, "axle crossover")] = {};
    back = touched(back, {BookRead{uncut, back.settings}});
    CHECK(codes(back).empty());
    CHECK_FALSE(back.orders[*back.line].remeasured);
    // Of a piece that no longer is the sheet's nothing good is said.
    CHECK(codes(kept(taken(start, "radius", {"2", "0"}))).empty());
}

TEST_CASE("the shipped figures come back as one change, which undo takes back, and keeping them lays the own card aside") {
    State state = with_body();
    const Bender shipped = state.card->bender;
    state.shipped_cards[shipped.id] = shipped;
    state.own_cards.insert(shipped.id);
    state = kept(taken(touched(std::move(state), {SetUnit{Unit::mm}}), "hook", {"2", "1"}));
    const Bender own = state.card->bender;
    CHECK(touched(state, {TakeShipped{}, Undo{}}).card->bender == own);
    state = touched(std::move(state), {TakeShipped{}});
    CHECK(state.card->bender == shipped);
    CHECK(apply(state, KeepCard{}).requests == std::vector<Request>{DropCard{shipped}});
    CHECK_FALSE(touched(state, {CardKept{shipped, false, state.job}}).own_cards.contains(shipped.id));
    // Nothing is shipped under that name: nothing happens.
    state.shipped_cards.clear();
    CHECK(touched(touched(state, {Undo{}}), {TakeShipped{}}).card->bender == own);
}
