#include "shell/order_finder.h"

#include <algorithm>
#include <memory>
#include <utility>

namespace tubewright {

OrderIs order_is(std::int64_t question, LookedFor looked) {
    OrderIs is{question, std::make_shared<const OrderVerdict>(std::move(looked.verdict))};
    if (looked.by_hand) is.by_hand = std::make_shared<const HandFacts>(std::move(*looked.by_hand));
    return is;
}

PlanIs plan_is(std::int64_t question, const std::vector<TubeToCut>& asked, const PlanProgress& progress) {
    std::vector<TubeCut> found;
    for (std::size_t i = 0; i < asked.size(); ++i) {
        const auto of_all = [&](double share) { return !progress || progress((static_cast<double>(i) + share) / static_cast<double>(asked.size())); };
        found.push_back({asked[i], best_plan(asked[i].question, of_all)});
    }
    return {question, std::make_shared<const std::vector<TubeCut>>(std::move(found))};
}

OrderFinder::OrderFinder(std::function<void()> wake, Look look) : wake_(std::move(wake)), look_(std::move(look)), thread_([this] { work(); }) {}

OrderFinder::~OrderFinder() {
    {
        const std::lock_guard guard(lock_);
        end_ = true;
    }
    more_.notify_one();
    thread_.join();
}

void OrderFinder::put(Question question) {
    {
        const std::lock_guard guard(lock_);
        waiting_.push_back(std::move(question));
    }
    more_.notify_one();
}

void OrderFinder::ask(std::int64_t question, Sheet sheet, OrderWish wish, std::vector<Bender> benders) {
    put({question, [this, question, sheet = std::move(sheet), wish = std::move(wish), benders = std::move(benders)] {
             return Action(order_is(question, look_(sheet, wish, [&](double done) { return share(question, done); }, benders)));
         }});
}

void OrderFinder::ask_plan(std::int64_t question, std::vector<TubeToCut> asked) {
    put({question, [this, question, asked = std::move(asked)] { return Action(plan_is(question, asked, [&](double done) { return share(question, done); })); }});
}

void OrderFinder::stop(std::int64_t question) {
    const std::lock_guard guard(lock_);
    const auto waits = std::find_if(waiting_.begin(), waiting_.end(), [&](const Question& q) { return q.number == question; });
    if (waits != waiting_.end()) waiting_.erase(waits);
    else if (busy_) stopped_.insert(question);
}

std::vector<Action> OrderFinder::heard() {
    const std::lock_guard guard(lock_);
    return std::exchange(told_, {});
}

bool OrderFinder::idle() {
    const std::lock_guard guard(lock_);
    return !busy_ && waiting_.empty() && told_.empty();
}

void OrderFinder::tell(Action action) {
    {
        const std::lock_guard guard(lock_);
        told_.push_back(std::move(action));
    }
    if (wake_) wake_();
}

/// Says how far the looking is, once for each part in twenty; false when it is no longer wanted.
bool OrderFinder::share(std::int64_t question, double done) {
    const int percent = static_cast<int>(done * 20) * 5;
    if (percent != last_percent_) {
        last_percent_ = percent;
        tell(OrderShare{question, percent / 100.0});
    }
    const std::lock_guard guard(lock_);
    return !end_ && !stopped_.contains(question);
}

void OrderFinder::work() {
    std::unique_lock guard(lock_);
    while (true) {
        more_.wait(guard, [&] { return end_ || !waiting_.empty(); });
        if (end_) return;
        const Question question = std::move(waiting_.front());
        waiting_.pop_front();
        busy_ = true;
        last_percent_ = -1;
        guard.unlock();
        tell(question.look());
        guard.lock();
        busy_ = false;
        stopped_.clear();
    }
}

}  // namespace tubewright
