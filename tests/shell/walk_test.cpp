// Whole jobs by finger: every demo job, on every size of screen, in both units and both themes, from the
// shelf to the last line handed over; each frame's screen looked over for faults.
#include <catch2/catch.hpp>

#include "present/screen_view.h"
#include "shell/desk.h"
#include "shell/operator.h"
#include "shell/temporary_home.h"
#include "ui/headless.h"

using namespace tubewright;

namespace {

struct Walk {
    TemporaryHome home;
    Desk desk = Desk::made(home.places(), one_day).value();
    HeadlessScreen screen;
    std::set<std::string> faults;
    int touches = 0;

    explicit Walk(const TryScreen& on) : screen(on, [this] { return desk.view(); }, [this](const Action& action) { desk.act(action); }) {
        desk.act(ScreenIs{on.px_per_mm});
    }

    std::vector<Seen> seen() {
        std::vector<Seen> all;
        for (const Touchable& thing : screen.ui().touchables()) all.push_back({thing.id, thing.enabled});
        return all;
    }
    void look_over() {
        for (const std::string& fault : faults_of(screen.ui())) faults.insert(fault);
    }
    void whole_job(const std::string& id) {
        Operator person(id);
        for (; touches < 1500; ++touches) {
            screen.frame();
            look_over();
            const auto touch = person.next_touch(desk.state(), seen());
            if (!touch) return;
            screen.tap(*touch);
        }
        FAIL("1500 touches and not done; on the screen now: " << desk.view().key);
    }
};

}  // namespace

TEST_CASE("every demo job is walked to its end by finger, and no screen has a fault") {
    int turn = 0;
    for (const char* job : {"trailer-brakes-stainless", "trailer-axle-steel", "engine-fuel-line", "cooler-pair"})
        for (const TryScreen& on : try_screens()) {
            // Both units and both themes come with every screen and every job, in turn.
            const Unit unit = turn % 2 ? Unit::mm : Unit::inch;
            const Theme theme = turn / 2 % 2 ? Theme::dark : Theme::light;
            ++turn;
            INFO(job << " on " << on.name() << (unit == Unit::mm ? ", mm" : ", inch"));
            Walk walk(on);
            walk.desk.act(SetUnit{unit});
            walk.desk.act(SetTheme{theme});
            walk.whole_job(job);
            CHECK(walk.faults == std::set<std::string>{});
            const State& state = walk.desk.state();
            REQUIRE(state.job);
            for (const Line& line : state.job->lines) {
                const LineWork& work = state.work.lines.at(line_key(state.job_id, line.name));
                CHECK(work.stage == Stage::done);
                CHECK(work.finished == line.quantity);
                CHECK(work.made.size() == line.route.bends.size());
            }
        }
}

TEST_CASE("switched off after any touch, the bench comes back as it was") {
    TemporaryHome home;
    Operator person("engine-fuel-line");
    std::optional<ScreenView> last;
    for (int changes = 0; changes < 200; ++changes) {
        // A new desk for every change: nothing is kept but what is on the disk.
        Desk desk = Desk::made(home.places(), one_day).value();
        if (changes > 0) desk.take_up_again();
        desk.act(ScreenIs{5.87});
        if (last) {
            INFO("change " << changes << ": " << last->key);
            CHECK((desk.view() == *last));
        }
        HeadlessScreen screen(try_screens().front(), [&] { return desk.view(); }, [&](const Action& action) { desk.act(action); });
        // On to the bench, then on until something is done there.
        for (Work before = desk.state().work; before == desk.state().work || desk.state().looks.screen != Screen::bench;) {
            if (desk.state().looks.screen != Screen::bench) before = desk.state().work;
            std::vector<Seen> seen;
            for (const Touchable& thing : screen.ui().touchables()) seen.push_back({thing.id, thing.enabled});
            const auto touch = person.next_touch(desk.state(), seen);
            if (!touch) return;
            screen.tap(*touch);
        }
        // Of what is on the screen only the page turned and what is half typed are nobody's record; undo is.
        State recorded = desk.state();
        recorded.looks = Looks{};
        recorded.looks.screen = Screen::bench;
        last = screen_view(recorded);
    }
    FAIL("200 changes at the bench and not done");
}

TEST_CASE("a spoiled tube: the reason, what is kept, and the line starts again; then all of it undone") {
    Walk walk(try_screens().front());
    Operator person("engine-fuel-line");
    while (walk.desk.state().looks.screen != Screen::bench || work_in_hand(walk.desk.state()).stage != Stage::bending || work_in_hand(walk.desk.state()).made.empty()) {
        const auto touch = person.next_touch(walk.desk.state(), walk.seen());
        REQUIRE(touch);
        walk.screen.tap(*touch);
        REQUIRE(++walk.touches < 200);
    }
    const Work before = walk.desk.state().work;
    walk.screen.tap("wrong");
    CHECK(walk.desk.state().work == before);  // the question alone changes nothing
    walk.screen.wait(0.4);
    walk.look_over();
    for (const Touchable& thing : walk.screen.ui().touchables())
        if (thing.id.rfind("reason-", 0) == 0) {
            walk.screen.tap(thing.id);
            break;
        }
    walk.screen.wait(0.4);
    walk.look_over();
    std::string kept;
    for (const Touchable& thing : walk.screen.ui().touchables())
        if (thing.id.rfind("kept-", 0) == 0 && thing.enabled) kept = thing.id;
    REQUIRE_FALSE(kept.empty());
    walk.screen.tap(kept);
    walk.screen.wait(0.4);
    walk.look_over();
    CHECK(walk.desk.state().work == before);
    walk.screen.tap("confirm");  // a tap is not enough
    CHECK(walk.desk.state().work.scrap.empty());
    walk.screen.hold("confirm", 1.0);
    REQUIRE(walk.desk.state().work.scrap.size() == 1);
    const Scrap& scrap = walk.desk.state().work.scrap.front();
    const LineWork& old = before.lines.begin()->second;
    CHECK((scrap.scrapped + scrap.kept).mm == Approx(old.cut_length.mm));
    CHECK(work_in_hand(walk.desk.state()).stage == Stage::prepare);
    walk.screen.wait(0.4);
    walk.look_over();
    walk.screen.tap("undo");
    CHECK(walk.desk.state().work == before);
    CHECK(walk.faults == std::set<std::string>{});
}
