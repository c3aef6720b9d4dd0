// The order found is compared with every order there is.

#include <catch2/catch.hpp>
#include <array>
#include <cmath>
#include <map>
#include <random>

#include "bench/order_search.h"
#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

OrderQuestion question_for(const Line& line) {
    OrderQuestion question;
    question.layout = layout(line, {});
    question.bender = line.bender;
    return question;
}

/// Every order and every choice of hook, one after the other, with the straights as order.h measures them.
class EveryOrder {
public:
    EveryOrder(const OrderQuestion& question, const CanBend& can_bend) : question_(question), can_bend_(can_bend), costs_(question.layout, question.weights, question.hand) {}

    std::optional<std::int32_t> least() {
        go(0, 0);
        return least_;
    }

private:
    bool room(const Placing& placing) {
        std::vector<Placing> order = order_;
        order.push_back(placing);
        const Room room = room_for(question_.layout, order, order.size() - 1);
        return room.hook.mm >= question_.bender.hook_straight.mm - 0.1 && room.lever.mm >= question_.bender.lever_straight.mm - 0.1;
    }

    struct Turn { bool possible; std::int32_t cost; };

    Turn turn(std::uint64_t made, const Placing& placing) {
        const auto key = std::tuple(made, placing.bend, placing.hook);
        const auto known = turns_.find(key);
        if (known != turns_.end()) return known->second;
        const Turn found{room(placing) && can_bend_(made, placing), costs_.step(made, placing).total()};
        return turns_.emplace(key, found).first->second;
    }

    void go(std::uint64_t made, std::int32_t paid) {
        if (order_.size() == costs_.bends().size()) {
            if (!least_ || paid < *least_) least_ = paid;
            return;
        }
        for (const std::size_t bend : costs_.bends()) {
            if (made >> bend & 1) continue;
            for (const End hook : {End::A, End::B}) {
                const Placing placing{bend, hook};
                const Turn found = turn(made, placing);
                if (!found.possible) continue;
                const OrderCost before = order_.empty() ? costs_.start(bend) : costs_.between(order_.back(), placing);
                order_.push_back(placing);
                go(made | std::uint64_t{1} << bend, paid + found.cost + before.total());
                order_.pop_back();
            }
        }
    }

    const OrderQuestion& question_;
    const CanBend& can_bend_;
    OrderCosts costs_;
    std::vector<Placing> order_;
    std::optional<std::int32_t> least_;
    std::map<std::tuple<std::uint64_t, std::size_t, End>, Turn> turns_;
};

Line random_line(std::mt19937& dice, std::size_t bends) {
    std::uniform_real_distribution<double> leg(1.5, 7), angle(10, 120), turn(-180, 180);
    std::vector<double> legs{leg(dice)};
    std::vector<std::pair<double, double>> list;
    for (std::size_t i = 0; i < bends; ++i) {
        list.emplace_back(dice() % 12 == 0 && bends > 2 ? 0 : angle(dice), i ? turn(dice) : 0);
        legs.push_back(leg(dice));
    }
    return line_of(legs, list);
}

}  // namespace

TEST_CASE("for 2,000 lines of up to 7 bends the order found costs what the best of all orders costs") {
    std::mt19937 dice(20240612);
    int found_some = 0, found_none = 0;
    for (int i = 0; i < 2000; ++i) {
        const std::size_t bends = i % 12 == 0 ? 7 : 1 + dice() % 6;
        const OrderQuestion question = question_for(random_line(dice, bends));
        const std::uint64_t seed = dice();
        const double heads = std::array{1.0, 0.85, 0.6, 0.45}[dice() % 4];
        const CanBend coins = [&](std::uint64_t made, const Placing& placing) {
            std::mt19937_64 coin(seed ^ (made * 0x9e3779b97f4a7c15u) ^ (placing.bend * 2 + (placing.hook == End::B)) * 0xff51afd7ed558ccdu);
            return std::uniform_real_distribution<double>()(coin) < heads;
        };
        INFO("line " << i << ", " << bends << " bends, heads " << heads);
        const auto least = EveryOrder(question, coins).least();
        const OrderAnswer answer = best_order(question, coins);
        if (!least) {
            ++found_none;
            REQUIRE(std::holds_alternative<NoOrder>(answer));
            CHECK(std::get<NoOrder>(answer).proven);
            continue;
        }
        ++found_some;
        REQUIRE(std::holds_alternative<OrderFound>(answer));
        const auto& found = std::get<OrderFound>(answer);
        CHECK(found.proven);
        CHECK(found.cost.total() == *least);
        CHECK(found.order == std::get<OrderFound>(best_order(question, coins)).order);
        std::uint64_t made = 0;
        for (std::size_t step = 0; step < found.order.size(); ++step) {
            CHECK(coins(made, found.order[step]));
            const Room room = room_for(question.layout, found.order, step);
            CHECK(room.hook.mm >= question.bender.hook_straight.mm - 0.1);
            CHECK(room.lever.mm >= question.bender.lever_straight.mm - 0.1);
            made |= std::uint64_t{1} << found.order[step].bend;
        }
    }
    CHECK(found_some > 500);
    CHECK(found_none > 200);
}
