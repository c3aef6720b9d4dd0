// The thread that looks for orders: heard while it looks, stopped, and asked anew. The looking itself is a slow one
// made for the test.

#include "shell/order_finder.h"

#include <atomic>
#include <catch2/catch.hpp>
#include <chrono>

using namespace tubewright;

namespace {

using Clock = std::chrono::steady_clock;

/// Takes a tenth of a second for each part in ten, and says whether it was let finish.
struct SlowLook {
    std::atomic<int> begun = 0, finished = 0;
    LookedFor operator()(const Progress& progress) {
        ++begun;
        LookedFor looked;
        for (int tenth = 0; tenth < 10; ++tenth) {
            if (!progress(tenth / 10.0)) {
                looked.verdict.outcome = OrderVerdict::Outcome::cancelled;
                return looked;
            }
            std::this_thread::sleep_for(std::chrono::milliseconds(100));
        }
        ++finished;
        looked.verdict.outcome = OrderVerdict::Outcome::found;
        return looked;
    }
};

/// All that is heard until nothing is left to be looked for, or twenty seconds are over.
std::vector<Action> heard_to_the_end(OrderFinder& finder) {
    std::vector<Action> all;
    for (const auto end = Clock::now() + std::chrono::seconds(20); Clock::now() < end && !finder.idle();) {
        for (const Action& action : finder.heard()) all.push_back(action);
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    return all;
}

}  // namespace

TEST_CASE("while an order is looked for its share is heard, rising, and then the answer") {
    SlowLook slow;
    std::atomic<int> woken = 0;
    OrderFinder finder([&] { ++woken; }, [&](const Sheet&, const OrderWish&, const Progress& progress, const std::vector<Bender>&) { return slow(progress); });
    const auto since = Clock::now();
    finder.ask(7, {}, {});
    CHECK(Clock::now() - since < std::chrono::milliseconds(500));  // whoever asks does not wait the second it takes
    const std::vector<Action> all = heard_to_the_end(finder);
    REQUIRE(all.size() == 11);
    for (std::size_t i = 0; i < 10; ++i) CHECK(std::get<OrderShare>(all[i]) == OrderShare{7, static_cast<double>(i) / 10});
    CHECK(std::get<OrderIs>(all[10]).question == 7);
    CHECK(woken == 11);
    CHECK(finder.idle());
}

TEST_CASE("a search that is stopped ends at its next step, and one that waited comes next") {
    SlowLook slow;
    OrderFinder finder([] {}, [&](const Sheet&, const OrderWish&, const Progress& progress, const std::vector<Bender>&) { return slow(progress); });
    finder.ask(1, {}, {});
    finder.ask(2, {}, {});
    finder.ask(3, {}, {});
    while (slow.begun == 0) std::this_thread::sleep_for(std::chrono::milliseconds(5));
    finder.stop(1);
    finder.stop(2);  // never begun
    std::vector<OrderIs> answers;
    for (const Action& action : heard_to_the_end(finder))
        if (const auto* is = std::get_if<OrderIs>(&action)) answers.push_back(*is);
    REQUIRE(answers.size() == 2);
    CHECK(answers[0].question == 1);
    CHECK(answers[0].verdict->outcome == OrderVerdict::Outcome::cancelled);
    CHECK(answers[1].question == 3);
    CHECK(answers[1].verdict->outcome == OrderVerdict::Outcome::found);
    CHECK(slow.finished == 1);
    CHECK(slow.begun == 2);
}

TEST_CASE("the program ends without waiting for a search to end") {
    SlowLook slow;
    {
        OrderFinder finder([] {}, [&](const Sheet&, const OrderWish&, const Progress& progress, const std::vector<Bender>&) { return slow(progress); });
        finder.ask(1, {}, {});
        while (slow.begun == 0) std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    CHECK(slow.finished == 0);
}
