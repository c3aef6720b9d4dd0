#pragma once
// Looks for the order of bends, and for cutting plans, on a thread of its own, so that the screen stays live.

#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <mutex>
#include <set>
#include <thread>
#include <vector>

#include "bench/ordered.h"
#include "state/action.h"

namespace tubewright {

/// The answers as the state hears them.
OrderIs order_is(std::int64_t question, LookedFor looked);
PlanIs plan_is(std::int64_t question, const std::vector<TubeToCut>& asked, const PlanProgress& progress);

class OrderFinder {
public:
    using Look = std::function<LookedFor(const Sheet&, const OrderWish&, const Progress&, const std::vector<Bender>&)>;

    /// `wake` is called from the other thread whenever there is something to hear, `look` to do the looking.
    explicit OrderFinder(std::function<void()> wake, Look look = look_for_order);
    ~OrderFinder();
    OrderFinder(const OrderFinder&) = delete;
    OrderFinder& operator=(const OrderFinder&) = delete;

    /// `benders`: those there are, for a way out where there is no order.
    void ask(std::int64_t question, Sheet sheet, OrderWish wish, std::vector<Bender> benders = {});
    /// The answer is PlanIs.
    void ask_plan(std::int64_t question, std::vector<TubeToCut> asked);
    void stop(std::int64_t question);
    /// What has been found out since last time: OrderShare, OrderIs and PlanIs.
    std::vector<Action> heard();
    /// Whether nothing is left to be looked for or heard.
    bool idle();

private:
    struct Question {
        std::int64_t number;
        std::function<Action()> look;
    };
    void put(Question question);
    void work();
    bool share(std::int64_t question, double done);
    void tell(Action action);

    std::function<void()> wake_;
    Look look_;
    std::mutex lock_;
    std::condition_variable more_;
    std::deque<Question> waiting_;
    std::set<std::int64_t> stopped_;
    std::vector<Action> told_;
    bool busy_ = false, end_ = false;
    int last_percent_ = -1;
    std::thread thread_;
};

}  // namespace tubewright
