// A bend that came out over: the tube is saved by one touch, made to its end by the new numbers, or told why it can't be.

#include <catch2/catch.hpp>

#include "bench/laid_over.h"
#include "state/doing.h"
#include "state/rescue_look.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

/// The first bend made reads 92.
State asked(const State& state, const std::string& reads = "92") { return touched(reading(at_check(state), reads), {LookAtRescue{}}); }

const Rescue& found(const State& state) {
    REQUIRE(state.rescue);
    return state.rescue->found;
}

/// The part as the bends read, each where its mark is now, against the one that the job wants.
EndsOff off_at_the_end(const State& state, const Part& wanted) {
    const Sheet& sheet = *sheet_in_hand(state);
    return ends_off(laid_over(key_places(wanted), key_places(part_as_measured(sheet, measured_angles(sheet, work_in_hand(state)))), {}));
}

/// Marks are inked again where the screen says so, and every bend reads what it has to.
State made_to_the_end(State state) {
    for (int i = 0; i < 9 && work_in_hand(state).stage == Stage::bending; ++i) {
        if (misfit(*sheet_in_hand(state), work_in_hand(state)) == Misfit::ink) state = touched(state, {Next{}});
        REQUIRE(step_in_hand(state));
        const double target = step_in_hand(state)->target.deg;
        state = reading(at_check(state), std::to_string(target).substr(0, 6));
    }
    return state;
}

/// Three bends, the first right and the second read `off` degrees over.
State second_over(double off = 2) {
    State state = at_line(line_of({10, 8, 8, 10}, {{90, 0}, {90, 90}, {60, 90}}));
    const auto reads = [](const State& at, double over) { return reading(at_check(at), std::to_string(step_in_hand(at)->target.deg + over).substr(0, 6)); };
    return reads(reads(state, 0), off);
}

std::size_t to_read(const State& state, ToRead::What what) {
    REQUIRE(state.rescue);
    const auto& all = state.rescue->more.readings;
    const auto found = std::find_if(all.begin(), all.end(), [&](const ToRead& read) { return read.what == what; });
    REQUIRE(found != all.end());
    return static_cast<std::size_t>(found - all.begin());
}

State typed_in(State state, const std::string& number) {
    for (const char digit : number) state = touched(state, {Key{std::string(1, digit)}});
    return state;
}

/// At the keypad for it, from the page of the ways out.
State at_reading(const State& state, ToRead::What what) { return touched(state, {GoTo{Screen::rescue_more}, AskReading{to_read(state, what)}}); }

/// The turn as the tube is believed to have it, and `off` degrees more.
State turn_read(const State& state, double off = 0) {
    const State at = at_reading(state, ToRead::What::turn);
    const double turn = wrapped({std::round(reading_asked(at)->foreseen) + off}).deg;
    return touched(typed_in(at, std::to_string(static_cast<int>(std::abs(turn)))), {TurnIs{turn > 0}});
}

State tape_read(const State& state, double off_mm = 0) {
    const State at = at_reading(touched(state, {SetUnit{Unit::mm}}), ToRead::What::tape);
    return touched(typed_in(at, std::to_string(reading_asked(at)->foreseen + off_mm).substr(0, 6)), {Next{}});
}

}  // namespace

TEST_CASE("a 92 for a 90 in a hook is saved by one touch, and made to the end both ends meet their places") {
    // By hand: 28 in of legs; bend 1 or 2 too far by 2 degrees brings the ends of the 10 in legs nearer by 10 sin 2 = .35 in, .17 at
    // either end: more than the sixteenth that a nut draws in.
    const State begun = at_hook();
    const Part wanted = sheet_in_hand(begun)->layout->part;
    const State state = asked(begun);
    REQUIRE(state.looks.screen == Screen::rescue);
    CHECK_FALSE(found(state).fits);
    CHECK((found(state).as_it_is.a.place + found(state).as_it_is.b.place).inch() == Approx(0.35).margin(0.05));
    REQUIRE_FALSE(found(state).ways.empty());
    CHECK(touched(state, {Next{}}).work == state.work);  // the foot switch takes nothing unread

    const State saved = touched(state, {TakeRescue{0}});
    CHECK(saved.looks.screen == Screen::bench);
    const LineWork work = work_in_hand(saved);
    REQUIRE(work.made.size() == 1);
    CHECK(work.made[0].measured == Angle{92});
    CHECK(work.made[0].kept_over);
    REQUIRE(work.saved);
    CHECK((misfit(*sheet_in_hand(saved), work) == Misfit::none || misfit(*sheet_in_hand(saved), work) == Misfit::ink));
    CHECK(saved.job == begun.job);  // what is wanted stays

    const State made = made_to_the_end(saved);
    REQUIRE(work_in_hand(made).stage == Stage::finish);
    CHECK(worst_share(off_at_the_end(made, wanted), {}) <= 1);
    // Kept and gone on as planned it would not.
    const State kept = made_to_the_end(touched(state, {Back{}, KeepBend{}}));
    CHECK(worst_share(off_at_the_end(kept, wanted), {}) > 1.5);
    // The ends are held in their places before anything is done to them, on the vehicle.
    const auto ticks = tick_items(made, TickList::finish);
    CHECK(std::count_if(ticks.begin(), ticks.end(), [](const TickItem& tick) { return tick.saved; }) == 1);
}

TEST_CASE("every way that is offered for the hook ends within what an end may be off") {
    const State state = asked(at_hook());
    for (std::size_t way = 0; way < found(state).ways.size(); ++way) {
        INFO("way " << way);
        const State made = made_to_the_end(touched(state, {TakeRescue{way}}));
        CHECK(worst_share(off_at_the_end(made, state.rescue->wanted), {}) <= 1);
    }
}

TEST_CASE("undo brings back the sheet that the tube was cut for, and redo the saved one") {
    const State before = reading(at_check(at_hook()), "92");
    const State saved = touched(before, {LookAtRescue{}, TakeRescue{0}});
    const State undone = touched(saved, {Undo{}});
    CHECK(undone.work == before.work);
    CHECK(plan_of(*sheet_in_hand(undone)) == plan_of(*sheet_in_hand(before)));
    CHECK(plan_of(*sheet_in_hand(saved)) != plan_of(*sheet_in_hand(before)));
    CHECK(plan_of(*sheet_in_hand(touched(undone, {Redo{}}))) == plan_of(*sheet_in_hand(saved)));
    CHECK_FALSE(saved.rescue);
}

TEST_CASE("ink lies where it lay but for the rounding of what is written down: a hundredth of a millimetre, and no mark more or less") {
    CHECK(is_same_ink("4520 9101", "4520 9101"));
    CHECK(is_same_ink("4520 9101", "4521 9100"));
    CHECK_FALSE(is_same_ink("4520 9101", "4520 9103"));
    CHECK_FALSE(is_same_ink("4520 9101", "4520"));
    CHECK(is_same_ink("", ""));
}

TEST_CASE("a 92 for a 90 in a Z fits as it is: it is gone on with as planned and no number changes") {
    // By hand, as in bench/rescue_test: the line lies a little turned between its ends.
    const State begun = at_line(line_of({6, 5, 6}, {{90, 0}, {90, 180}}));
    const State state = asked(begun);
    CHECK(found(state).fits);
    const State after = touched(state, {TakeRescue{0}});
    CHECK_FALSE(work_in_hand(after).saved);
    CHECK(work_in_hand(after).made.size() == 1);
    CHECK(plan_of(*sheet_in_hand(after)) == plan_of(*sheet_in_hand(begun)));
    CHECK(touched(state, {TakeRescue{5}}).work == state.work);
}

TEST_CASE("the last bend far over can't be made up: it says so, and what the piece is still good for") {
    State state = touched(at_check(at_hook()), {PassCheck{}});
    state = asked(state, "93");
    REQUIRE(found(state).ways.empty());
    REQUIRE(found(state).bar);
    CHECK((found(state).nearest.a.place > Length{}));
    CHECK(touched(state, {TakeRescue{0}}).work == state.work);
    REQUIRE_FALSE(state.rescue->good.straights.empty());
    CHECK(touched(state, {WentWrong{}}).looks.screen == Screen::wrong);
}

TEST_CASE("an under-bent one is pulled on from that screen too, and what was found is forgotten with the touch") {
    const State state = asked(at_hook(), "88");
    REQUIRE(state.rescue);
    const State pulled = touched(state, {PullAgain{}});
    CHECK(pulled.looks.screen == Screen::bench);
    CHECK(work_in_hand(pulled).move == Move::pull);
    CHECK(work_in_hand(pulled).pull_again);
    CHECK_FALSE(pulled.rescue);
}

TEST_CASE("behind the bends it was saved with one does not go back: their marks and turns are what the plan counts on, and undo takes it whole") {
    const State before = reading(at_check(at_hook()), "92");
    State saved = touched(before, {LookAtRescue{}, TakeRescue{0}});
    if (misfit(*sheet_in_hand(saved), work_in_hand(saved)) == Misfit::ink) saved = touched(saved, {Next{}});
    const State back = touched(saved, {Back{}});
    CHECK(back.work == saved.work);
    CHECK(back.looks.screen == Screen::line);
    CHECK_FALSE(back.looks.notice.empty());
    CHECK(touched(back, {Undo{}, Undo{}}).work == before.work);
    // From its finish the bends made since are gone back to, down to there.
    State on = made_to_the_end(saved);
    REQUIRE(work_in_hand(on).made.size() == 2);
    on = touched(on, {Back{}});
    CHECK(work_in_hand(on).made.size() == 1);
    on = touched(on, {Back{}, Back{}, Back{}, Back{}});
    CHECK(work_in_hand(on).move == Move::mark);
    CHECK(touched(on, {Back{}}).work == on.work);
    CHECK(work_in_hand(on).saved == work_in_hand(saved).saved);
}

TEST_CASE("the next piece, and one after a tube that went wrong, begin with what the job wants") {
    const State begun = at_hook();
    const State saved = touched(asked(begun), {TakeRescue{0}});
    const State wrong = touched(saved, {WentWrong{}, ChooseReason{Reason::kinked}, ChooseKept{"none"}, ConfirmScrap{}});
    CHECK_FALSE(work_in_hand(wrong).saved);
    CHECK(sheet_in_hand(wrong)->layout->part.bends == sheet_in_hand(begun)->layout->part.bends);
    State done = made_to_the_end(saved);
    done = touched(all_ticked(done), {Next{}});
    done = touched(all_ticked(done), {Next{}});
    REQUIRE(work_in_hand(done).stage == Stage::done);
    CHECK(work_in_hand(done).saved);
    const State next = touched(done, {AnotherPiece{}});
    CHECK_FALSE(work_in_hand(next).saved);
    CHECK(sheet_in_hand(next)->layout->part.bends == sheet_in_hand(begun)->layout->part.bends);
}

TEST_CASE("the log of bends keeps what each was pulled for: 90 before the tube was saved, the new target after it") {
    const State saved = touched(asked(at_hook()), {TakeRescue{0}});
    REQUIRE(saved.work.bends.size() == 1);
    CHECK(saved.work.bends[0].check.target == Angle{90});
    const double target = sheet_in_hand(saved)->steps[1].target.deg;
    const State made = made_to_the_end(saved);
    REQUIRE(made.work.bends.size() == 2);
    CHECK(made.work.bends[0].check.target == Angle{90});
    CHECK(made.work.bends[1].check.target->deg == Approx(target));
}

TEST_CASE("another job under a saved tube is told of, and never bent to by the old plan") {
    const State saved = touched(asked(at_hook()), {TakeRescue{0}});
    Job job = *saved.job;
    job.lines[0].route.bends[1].angle = Angle{60};
    const State changed = touched(saved, {JobRead{"hook", "jobs/hook.json", job}, OpenLine{"square hook"}});
    const Misfit against = misfit(*sheet_in_hand(changed), work_in_hand(changed));
    CHECK((against == Misfit::plan || against == Misfit::cut_length));
    CHECK_FALSE(step_in_hand(changed));
    const State back = touched(changed, {JobRead{"hook", "jobs/hook.json", *saved.job}, OpenLine{"square hook"}});
    CHECK(plan_of(*sheet_in_hand(back)) == plan_of(*sheet_in_hand(saved)));
}

TEST_CASE("a tube is saved a second time from where it stands, and still judged by what the job wants") {
    // Stairs of three: the first bend reads 4 over, and made to the new numbers the second does as well.
    const State begun = at_line(line_of({10, 8, 8, 10}, {{90, 0}, {90, 0}, {60, 90}}));
    const Part wanted = sheet_in_hand(begun)->layout->part;
    const auto over = [](State state) {
        if (misfit(*sheet_in_hand(state), work_in_hand(state)) == Misfit::ink) state = touched(state, {Next{}});
        state = reading(at_check(state), std::to_string(step_in_hand(state)->target.deg + 4).substr(0, 6));
        return touched(state, {LookAtRescue{}});
    };
    const State once = over(begun);
    REQUIRE_FALSE(found(once).ways.empty());
    REQUIRE_FALSE(found(once).ways[0].changes.empty());
    const State twice = over(touched(once, {TakeRescue{0}}));
    REQUIRE(twice.rescue);
    CHECK(twice.rescue->wanted == wanted);
    REQUIRE_FALSE(found(twice).ways.empty());
    CHECK(worst_share(found(twice).ways[0].off, {}) <= 1);
    const State made = made_to_the_end(touched(twice, {TakeRescue{0}}));
    REQUIRE(work_in_hand(made).stage == Stage::finish);
    // The way goes to the edge of what an end may be, with the bends as they are believed: a little nearer to what the lever was
    // pulled for than they read.
    CHECK(worst_share(off_at_the_end(made, wanted), {}) <= 1.01);
}

TEST_CASE("a way is looked at without taking it") {
    const State state = asked(at_hook());
    CHECK(state.looks.picked_way == 0);
    REQUIRE(found(state).ways.size() > 1);
    const State other = touched(state, {PickWay{1}});
    CHECK(other.looks.picked_way == 1);
    CHECK(other.work == state.work);
    CHECK(touched(other, {PickWay{found(state).ways.size()}}).looks.picked_way == 1);  // there is none such
    CHECK(touched(other, {TakeRescue{1}}).work.lines != state.work.lines);
    CHECK(touched(other, {TakeRescue{1}, Undo{}}).work == state.work);
}

TEST_CASE("an under-bent one shows what pulling it again would come to, as far as the lever goes") {
    // By hand: the hook as wanted has nothing off at its ends; 2 degrees under brings the far one 10 sin 2 = .35 in off.
    const State state = asked(at_hook(), "88");
    REQUIRE(state.rescue->pulled);
    CHECK(state.rescue->pulled->bends[step_in_hand(state)->bend].angle == Angle{90});
    CHECK(worst_share(state.rescue->pulled_off, {}) < 0.01);
    CHECK(worst_share(found(state).as_it_is, {}) > 1.5);
    CHECK_FALSE(asked(at_hook(), "92").rescue->pulled);
}

TEST_CASE("the turn of the bend in hand is read on the legs: the ends are known better, and the ways are worked out anew") {
    const State before = touched(second_over(), {LookAtRescue{}});
    const State read = turn_read(before);
    CHECK(read.looks.screen == Screen::rescue);
    REQUIRE(read.rescue);
    const LineWork work = work_in_hand(read);
    REQUIRE(work.turns.size() == 1);
    CHECK(work.turns[0].bend == work.turns[0].against + 1);
    CHECK(read.rescue->more.known < before.rescue->more.known);
    REQUIRE_FALSE(found(read).ways.empty());
    CHECK(found(read).ways[0].doubt.a.place + found(read).ways[0].doubt.b.place < found(before).ways[0].doubt.a.place + found(before).ways[0].doubt.b.place);
    for (const ToRead& more : read.rescue->more.readings) CHECK(more.what == ToRead::What::tape);  // that turn is known
    // Six off is six off at the ends, which nobody would have seen: more than the two that were read over.
    const State off = turn_read(before, 6);
    CHECK(worst_share(found(off).as_it_is, {}) > 1.3 * worst_share(found(before).as_it_is, {}));
}

TEST_CASE("a turn that no rescue could make up is not taken, nor one that is no turn; the same to the other side is another one") {
    const State at = at_reading(touched(second_over(), {LookAtRescue{}}), ToRead::What::turn);
    const bool right = reading_asked(at)->foreseen > 0;
    CHECK(std::abs(reading_asked(at)->foreseen) == Approx(90).margin(1));
    CHECK(touched(at, {TurnIs{right}}).work == at.work);                            // nothing is typed
    CHECK(touched(typed_in(at, "136"), {TurnIs{right}}).work == at.work);           // 46 off
    CHECK(past_belief(typed_in(at, "136"), right));
    CHECK_FALSE(touched(typed_in(at, "134"), {TurnIs{right}}).work == at.work);
    CHECK(touched(typed_in(at, "90"), {TurnIs{!right}}).work == at.work);           // half a turn off
    CHECK(touched(typed_in(at, "181"), {TurnIs{right}}).work == at.work);
    CHECK_FALSE(typed_reading_asked(typed_in(at, "181")));
    CHECK(touched(typed_in(at, "90"), {Next{}}).work == at.work);                   // to which side, nobody said
}

TEST_CASE("a tape between two points is kept in the length it was read in, and one that can't be is not taken") {
    const State before = touched(second_over(), {LookAtRescue{}});
    const State read = tape_read(before);
    REQUIRE(work_in_hand(read).tapes.size() == 1);
    CHECK(work_in_hand(read).tapes[0].steps == 2);
    CHECK(read.rescue->more.known < before.rescue->more.known);
    // Further off than one mark two inches out, one angle 20 or one turn 45 degrees out makes it.
    const double most = reading_asked(at_reading(before, ToRead::What::tape))->most_off;
    CHECK(most >= 50.8);
    CHECK(tape_read(before, most + 1).work == before.work);
    CHECK(tape_read(before, most - 1).work != before.work);
    const State in_inches = at_reading(before, ToRead::What::tape);
    const int whole = static_cast<int>(reading_asked(in_inches)->foreseen / 25.4);
    const State taken = touched(typed_in(in_inches, std::to_string(whole)), {Key{"1/2"}, Next{}});
    REQUIRE(work_in_hand(taken).tapes.size() == 1);
    CHECK(work_in_hand(taken).tapes[0].tape.read.mm == Approx((whole + 0.5) * 25.4));
}

TEST_CASE("a turn that is read goes into the log of turns, and counts for the hand once its bend is made") {
    const State read = turn_read(touched(second_over(), {LookAtRescue{}}));
    REQUIRE(read.work.turn_log.size() == 1);
    CHECK(read.work.turn_log[0].check.measured == work_in_hand(read).turns[0].read);
    CHECK(standing_turns(read.work).empty());
    const State taken = touched(read, {TakeRescue{0}});
    CHECK(standing_turns(taken.work).size() == 1);
}

TEST_CASE("back from the ways out that were asked for at a tube gone wrong is the bench, not the shelf") {
    const State asked = touched(second_over(), {WentWrong{}, LookAtRescue{}});
    REQUIRE(asked.looks.screen == Screen::rescue);
    CHECK(touched(asked, {Back{}}).looks.screen == Screen::bench);
}

TEST_CASE("a reading is taken back by a touch of it, and undo and redo stay on the page") {
    const State before = touched(second_over(), {LookAtRescue{}});
    const State read = tape_read(turn_read(before));
    REQUIRE(work_in_hand(read).turns.size() + work_in_hand(read).tapes.size() == 2);
    const State without = touched(read, {GoTo{Screen::rescue_more}, DropReading{0}});
    CHECK(work_in_hand(without).turns.empty());
    CHECK(work_in_hand(without).tapes == work_in_hand(read).tapes);
    CHECK(without.looks.screen == Screen::rescue_more);
    CHECK(without.rescue);
    CHECK(touched(without, {DropReading{5}}).work == without.work);
    const State all_out = touched(without, {DropReading{0}});
    CHECK(work_in_hand(all_out) == work_in_hand(before));
    CHECK(all_out.work.turn_log.empty());
    const State undone = touched(read, {Undo{}});
    CHECK(undone.looks.screen == Screen::rescue);
    REQUIRE(undone.rescue);
    CHECK(work_in_hand(undone).tapes.empty());
    CHECK(undone.rescue->more.known > read.rescue->more.known);
    const State again = touched(undone, {Redo{}});
    CHECK(again.work == read.work);
    REQUIRE(again.rescue);
    CHECK(again.rescue->more.known == read.rescue->more.known);
    CHECK(touched(again, {Back{}}).looks.screen == Screen::bench);
}

TEST_CASE("what was read of a bend goes when its lever is pulled again or it is gone back from, and of the others it stays") {
    const State read = tape_read(turn_read(touched(second_over(-1), {LookAtRescue{}})));
    const LineWork work = work_in_hand(read);
    REQUIRE(work.turns.size() == 1);
    REQUIRE(work.tapes.size() == 1);
    const State pulling = touched(read, {PullAgain{}});
    CHECK(work_in_hand(pulling).turns == work.turns);  // the lever has not moved yet
    CHECK(work_in_hand(touched(pulling, {Back{}})).turns == work.turns);
    CHECK(work_in_hand(touched(pulling, {Next{}})).turns.empty());
    const bool spans_it = work.tapes[0].tape.span.from <= step_in_hand(read)->bend + 1 && step_in_hand(read)->bend + 1 <= work.tapes[0].tape.span.to;
    CHECK(work_in_hand(touched(pulling, {Next{}})).tapes.empty() == spans_it);
    const State measured_again = touched(read, {Back{}, Back{}});
    CHECK(work_in_hand(measured_again).turns == work.turns);
    CHECK(work_in_hand(touched(measured_again, {Back{}})).turns.empty());

    // By hand: steps 1 and 2 made, both taped; pulling step 2 again leaves what was taped before it was made, or beside it.
    const Sheet& sheet = *sheet_in_hand(read);
    const std::size_t bend = sheet.steps[1].bend;
    LineWork taped;
    taped.turns = {{bend, 7, {}}, {7, bend, {}}, {8, 7, {}}};
    taped.tapes = {{{{0, bend + 1}, {1}}, 2}, {{{bend + 1, 9}, {2}}, 1}, {{{bend + 2, 9}, {3}}, 2}, {{{0, 9}, {4}}, 2}};
    forget_readings(sheet, taped, 1);
    CHECK(taped.turns == std::vector<TurnReading>{{8, 7, {}}});
    CHECK(taped.tapes == std::vector<MadeTape>{{{{bend + 1, 9}, {2}}, 1}, {{{bend + 2, 9}, {3}}, 2}});
}

TEST_CASE("what was read follows into the next rescue of the same tube, and begins afresh with the next one") {
    const State read = turn_read(touched(second_over(4), {LookAtRescue{}}));
    REQUIRE_FALSE(found(read).ways.empty());
    State saved = touched(read, {TakeRescue{0}});
    CHECK(work_in_hand(saved).turns == work_in_hand(read).turns);
    if (misfit(*sheet_in_hand(saved), work_in_hand(saved)) == Misfit::ink) saved = touched(saved, {Next{}});
    const State again = touched(saved, {LookAtRescue{}});
    REQUIRE(again.rescue);
    for (const ToRead& more : again.rescue->more.readings) CHECK(more.what == ToRead::What::tape);
    // The shape that it is believed to have is the one that was read: within what the gauge leaves open.
    const TurnReading turn = work_in_hand(read).turns[0];
    const double now = wrapped(again.rescue->as_it_is.bends[turn.bend].direction - again.rescue->as_it_is.bends[turn.against].direction).deg;
    CHECK(now == Approx(turn.read.deg).margin(1));
    const State wrong = touched(saved, {WentWrong{}, ChooseReason{Reason::kinked}, ChooseKept{"none"}, ConfirmScrap{}});
    CHECK(work_in_hand(wrong).turns.empty());
}

TEST_CASE("while the lever may have moved, and before anything is bent, it can't be asked") {
    CHECK_FALSE(steps_to_save(at_hook()));
    CHECK_FALSE(steps_to_save(at_check(at_hook())));
    CHECK(touched(at_check(at_hook()), {LookAtRescue{}}).looks.screen == Screen::bench);
    const State one = touched(at_check(at_hook()), {PassCheck{}});
    CHECK(steps_to_save(one) == 1u);
    CHECK_FALSE(steps_to_save(touched(one, {Next{}, Next{}})));
    CHECK(steps_to_save(reading(at_check(at_hook()), "97")) == 1u);         // the lever went too far
    CHECK_FALSE(steps_to_save(reading(at_check(at_hook()), "50")));         // no tube opens so far
}

}  // namespace tubewright
