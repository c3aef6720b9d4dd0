// Undo after switching off and on.

#include <random>

#include "desk.h"
#include "random_work.h"
#include "state/random_action.h"
#include "store/shop_book.h"

namespace tubewright {
namespace {

ShopBook opened(const std::filesystem::path& path) {
    auto book = ShopBook::open(path);
    if (!book.ok()) FAIL(book.trouble().sentence);
    return std::move(book).value();
}

/// Takes the action and writes down what the book is asked to keep.
State recorded(State state, const Action& action, ShopBook& book) {
    StateStep step = orders_found(apply(std::move(state), action));
    for (const Request& request : step.requests) {
        if (std::holds_alternative<SaveWork>(request)) REQUIRE(book.save(step.state.work, step.state.past).ok());
        if (std::holds_alternative<SaveSettings>(request)) REQUIRE(book.save_settings(step.state.settings).ok());
    }
    return std::move(step.state);
}

/// As the program begins: with what the book holds, and the same job.
State begun_again(const State& before, const BookPages& pages) {
    State state;
    state.checklists = before.checklists;
    state = touched(state, {DayIs{before.day}, BookRead{pages.work, pages.settings, pages.past}});
    if (before.job) state = touched(state, {JobRead{before.job_id, before.job_path, *before.job}});
    return state;
}

std::vector<UndoStep> last_of(const std::vector<UndoStep>& past) {
    const std::size_t kept = std::min(past.size(), undo_kept);
    return {past.end() - static_cast<std::ptrdiff_t>(kept), past.end()};
}

}  // namespace

TEST_CASE("switched off at any touch and on again, undo takes back the same touches, as many as are kept") {
    const OwnFolder own;
    const auto path = own.path() / "book.sqlite";
    std::mt19937 dice(20261127);
    std::size_t deepest = 0, taken_back = 0;
    for (int walk = 0; walk < 10; ++walk) {
        std::filesystem::remove(path);
        std::optional<ShopBook> book(opened(path));
        State state = walk % 3 == 0 ? job_open() : at_first_bend();
        REQUIRE(book->save(state.work, state.past).ok());
        for (int i = 0; i < 200; ++i) {
            state = recorded(std::move(state), random_action(dice, state), *book);
            if (std::uniform_int_distribution<int>(0, 9)(dice) != 0 || state.looks.screen == Screen::card) continue;  // there undo is for the card
            INFO("walk " << walk << ", touch " << i);
            book.reset();
            book.emplace(opened(path));
            CHECK(book->read().past == last_of(state.past));
            State stopped = begun_again(state, book->read()), going = state;
            REQUIRE(stopped.work == going.work);
            // On these undo is for their own, or takes back nothing of the bench.
            if (going.looks.screen == Screen::card || going.looks.screen == Screen::learn || is_of_rack(going.looks.screen)) going = touched(std::move(going), {GoTo{Screen::shelf}});
            std::size_t depth = 0;
            while (can_undo(stopped)) {
                REQUIRE(can_undo(going));
                stopped = touched(std::move(stopped), {Undo{}});
                going = touched(std::move(going), {Undo{}});
                REQUIRE(stopped.work == going.work);
                ++depth;
            }
            CHECK((depth == undo_kept || !can_undo(going)));
            deepest = std::max(deepest, depth);
            taken_back += depth;
            if (walk % 4 == 3) state = begun_again(state, book->read());  // and goes on from there
        }
    }
    CHECK(deepest == undo_kept);
    CHECK(taken_back > 500);
}

TEST_CASE("undo written down is taken back too: off and on after each of them, down to the first touch that is kept") {
    const OwnFolder own;
    const auto path = own.path() / "book.sqlite";
    std::vector<Work> before;
    State state = at_prepare();
    {
        ShopBook book = opened(path);
        for (int i = 0; i < 7; ++i) {
            before.push_back(state.work);
            state = recorded(std::move(state), Tick{i % 2 == 0 ? "prepare-square" : "slide-A-nut"}, book);
        }
    }
    for (int i = 6; i >= 0; --i) {
        ShopBook book = opened(path);
        state = recorded(begun_again(state, book.read()), Undo{}, book);
        CHECK(state.work == before[static_cast<std::size_t>(i)]);
    }
    CHECK(opened(path).read().work == before.front());
}

TEST_CASE("works that have nothing in common follow each other in the past, to the last bit") {
    const OwnFolder own;
    const auto path = own.path() / "book.sqlite";
    std::vector<UndoStep> past;
    std::int64_t touches = 0;
    for (unsigned number = 1; number <= 30; ++number) {
        past.push_back({++touches, number % 3 == 0 ? "trailer" : "a/\xff\xfe job", random_work(number)});
        { REQUIRE(opened(path).save(random_work(number + 1), past).ok()); }
        if (number % 4 == 0) past.pop_back();  // an undo
        INFO("work " << number);
        REQUIRE(opened(path).save(number % 4 == 0 ? random_work(number) : random_work(number + 1), past).ok());
        CHECK(opened(path).read().past == last_of(past));
        if (number % 4 == 0) past.push_back({++touches, "trailer", random_work(number)});
    }
}

TEST_CASE("a save that fails leaves no half of an undo step") {
    const OwnFolder own;
    const auto path = own.path() / "book.sqlite";
    ShopBook book = opened(path);
    const std::vector<UndoStep> past{{1, "trailer", random_work(1)}};
    REQUIRE(book.save(random_work(2), past).ok());
    Work twice = random_work(3);
    twice.scrap = {{5, "2026-11-25", "job", "line", "tube", Reason::kinked, {1}, {}, std::nullopt}, {5, "2026-11-25", "job", "line", "tube", Reason::kinked, {2}, {}, std::nullopt}};  // one id for two
    REQUIRE_FALSE(book.save(twice, {past[0], {2, "trailer", random_work(2)}}).ok());
    CHECK(book.read().past == past);
    // The touch after it brings both.
    REQUIRE(book.save(random_work(4), {past[0], {2, "trailer", random_work(2)}, {3, "trailer", random_work(3)}}).ok());
    const auto found = book.read().past;
    REQUIRE(found.size() == 3);
    CHECK(found[1].work == random_work(2));
}

}  // namespace tubewright
