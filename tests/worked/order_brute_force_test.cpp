// The order found is compared with every order there is, and five lines are worked through.

#include <catch2/catch.hpp>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>
#include <set>
#include <tuple>

#include "bench/line_question.h"
#include "bench/order_reasons.h"
#include "bench/order_samples.h"
#include "store/library.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

/// Every order and every choice of hook, one after the other, with the straights as order.h measures them.
class EveryOrder {
public:
    EveryOrder(const OrderQuestion& question, const CanBend& can_bend) : question_(question), can_bend_(can_bend), costs_(question.layout, question.weights, question.hand) {}

    std::optional<std::int32_t> least() {
        go(0, 0);
        return least_;
    }
    /// The same of what is left once these are made, whether they ever could be or not.
    std::optional<std::int32_t> least_after(const std::vector<Placing>& begun) {
        order_ = begun;
        std::uint64_t made = 0;
        for (const Placing& placing : begun) made |= std::uint64_t{1} << placing.bend;
        go(made, costs_.of(begun).total());
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
        auto& known = turns_[made * 32 + placing.bend * 2 + (placing.hook == End::B)];
        if (!known) known = Turn{room(placing) && can_bend_(made, placing), costs_.step(made, placing).total()};
        return *known;
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
    std::vector<std::optional<Turn>> turns_ = std::vector<std::optional<Turn>>(512 * 32);
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

/// The same on the 3/16 bender that comes with the program, with its body and bench; no two corners overlap.
Line random_line_on_shipped_bender(std::mt19937& dice, std::size_t bends) {
    static const Library library = read_library(TUBEWRIGHT_SOURCE_DIR "/assets", "").value();
    while (true) {
        Line line = random_line(dice, bends);
        line.bender = *find_bender(library, "hand-3/16");
        const std::vector<Length> straights = layout(line, {}).part.straights;
        if (std::none_of(straights.begin(), straights.end(), [](Length straight) { return straight.mm < 0; })) return line;
    }
}

}  // namespace

TEST_CASE("for 2,000 lines of up to 7 bends the order found costs what the best of all orders costs") {
    std::mt19937 dice(20240612);
    int found_some = 0, found_none = 0, real_some = 0, real_none = 0;
    std::size_t asked = 0, refused = 0;
    for (int i = 0; i < 2000; ++i) {
        const std::size_t bends = i % 12 == 0 ? 7 : 1 + dice() % 6;
        // Every third dozen with the real geometry, the others with coins that forbid what no geometry would.
        const bool real = i / 12 % 3 == 0;
        const OrderQuestion question = question_for(real ? random_line_on_shipped_bender(dice, bends) : random_line(dice, bends));
        const std::uint64_t seed = dice();
        const double heads = std::array{1.0, 0.85, 0.6, 0.45}[dice() % 4];
        const CanBend coins = [&](std::uint64_t made, const Placing& placing) {
            std::mt19937_64 coin(seed ^ (made * 0x9e3779b97f4a7c15u) ^ (placing.bend * 2 + (placing.hook == End::B)) * 0xff51afd7ed558ccdu);
            return std::uniform_real_distribution<double>()(coin) < heads;
        };
        CanBend geometry;
        if (real) geometry = geometry_of(question, 4.7625_mm);
        const CanBend can_bend = [&](std::uint64_t made, const Placing& placing) {
            if (!real) return coins(made, placing);
            const bool free = geometry(made, placing);
            ++asked;
            refused += !free;
            return free;
        };
        INFO("line " << i << ", " << bends << " bends, " << (real ? "real geometry" : "heads ") << heads);
        const auto least = EveryOrder(question, can_bend).least();
        const OrderAnswer answer = best_order(question, can_bend);
        (least ? real_some : real_none) += real;
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
        CHECK(found.order == std::get<OrderFound>(best_order(question, can_bend)).order);
        std::uint64_t made = 0;
        for (std::size_t step = 0; step < found.order.size(); ++step) {
            CHECK(can_bend(made, found.order[step]));
            const Room room = room_for(question.layout, found.order, step);
            CHECK(room.hook.mm >= question.bender.hook_straight.mm - 0.1);
            CHECK(room.lever.mm >= question.bender.lever_straight.mm - 0.1);
            made |= std::uint64_t{1} << found.order[step].bend;
        }
    }
    CHECK(found_some > 500);
    CHECK(found_none > 200);
    CHECK(real_some > 100);
    CHECK(real_none > 20);
    CHECK(refused > asked / 20);  // the geometry had its say
    CHECK(refused < asked / 2);
}

TEST_CASE("for 300 cut tubes of which 1 to 3 bends are made and up to 6 left, the order found for the rest costs what the best of all costs") {
    std::mt19937 dice(20240614);
    int found_some = 0, found_none = 0, real_some = 0, real_none = 0, otherwise = 0;
    for (int i = 0; i < 300; ++i) {
        const std::size_t made_already = 1 + dice() % 3, left = 1 + dice() % 6;
        const bool real = i % 3 == 0;
        OrderQuestion question = question_for(real ? random_line_on_shipped_bender(dice, made_already + left) : random_line(dice, made_already + left));
        std::vector<std::size_t> bends = OrderCosts(question.layout, question.weights, question.hand).bends();
        std::shuffle(bends.begin(), bends.end(), dice);
        std::vector<Placing> begun;  // as they come: some of them no bender could have made so
        for (std::size_t k = 0; k < std::min(made_already, bends.size()); ++k) begun.push_back({bends[k], dice() % 2 ? End::A : End::B});
        const std::uint64_t seed = dice();
        const double heads = std::array{1.0, 0.85, 0.6, 0.45}[dice() % 4];
        const CanBend coins = [&](std::uint64_t made, const Placing& placing) {
            std::mt19937_64 coin(seed ^ (made * 0x9e3779b97f4a7c15u) ^ (placing.bend * 2 + (placing.hook == End::B)) * 0xff51afd7ed558ccdu);
            return std::uniform_real_distribution<double>()(coin) < heads;
        };
        const CanBend can_bend = real ? geometry_of(question, 4.7625_mm) : coins;
        INFO("line " << i << ", " << made_already << " made, " << left << " left, " << (real ? "real geometry" : "heads ") << heads);
        const auto least = EveryOrder(question, can_bend).least_after(begun);
        const OrderAnswer free = best_order(question, can_bend);
        question.wish.begun = begun;
        CHECK(order_exists(question, can_bend) == least.has_value());
        const OrderAnswer answer = best_order(question, can_bend);
        (least ? real_some : real_none) += real;
        if (!least) {
            ++found_none;
            REQUIRE(std::holds_alternative<NoOrder>(answer));
            const auto& none = std::get<NoOrder>(answer);
            CHECK(none.proven);
            REQUIRE(none.furthest.size() >= begun.size());
            CHECK(std::equal(begun.begin(), begun.end(), none.furthest.begin()));
            continue;
        }
        ++found_some;
        REQUIRE(std::holds_alternative<OrderFound>(answer));
        const auto& found = std::get<OrderFound>(answer);
        CHECK(found.proven);
        CHECK(found.cost.total() == *least);
        REQUIRE(found.order.size() == bends.size());
        CHECK(std::equal(begun.begin(), begun.end(), found.order.begin()));
        otherwise += !std::holds_alternative<OrderFound>(free) || std::get<OrderFound>(free).order != found.order;
        std::uint64_t made = 0;
        for (std::size_t step = 0; step < found.order.size(); ++step) {
            if (step >= begun.size()) CHECK_FALSE(blocked(question, can_bend, made, found.order[step]));
            made |= std::uint64_t{1} << found.order[step].bend;
        }
    }
    CHECK(found_some > 100);
    CHECK(found_none > 20);
    CHECK(real_some > 25);
    CHECK(real_none > 2);
    CHECK(otherwise > 75);  // what was made had its say
}

namespace {

/// Every set of made bends with every last one, from none made to all: no bound, no short cut, everything asked.
std::optional<std::int32_t> least_over_sets(const OrderQuestion& question, const CanBend& can_bend) {
    const OrderCosts costs(question.layout, question.weights, question.hand);
    const std::size_t bends = costs.bends().size(), turns = 2 * bends;
    std::vector<std::vector<std::optional<std::int32_t>>> paid(std::size_t{1} << bends, std::vector<std::optional<std::int32_t>>(turns));
    const auto placing = [](std::size_t turn) { return Placing{turn / 2, turn % 2 ? End::B : End::A}; };
    for (std::uint64_t made = 0; made + 1 < paid.size(); ++made)
        for (std::size_t turn = 0; turn < turns; ++turn) {
            if ((made >> (turn / 2) & 1) || bender_stops(question, made, placing(turn)) || !can_bend(made, placing(turn))) continue;
            auto& then = paid[made | std::uint64_t{1} << (turn / 2)][turn];
            const std::int32_t step = costs.step(made, placing(turn)).total();
            if (made == 0) then = costs.start(turn / 2).total() + step;
            for (std::size_t last = 0; last < turns; ++last)
                if (const auto& before = paid[made][last]) {
                    const std::int32_t sum = *before + costs.between(placing(last), placing(turn)).total() + step;
                    if (!then || sum < *then) then = sum;
                }
        }
    std::optional<std::int32_t> least;
    for (const auto& whole : paid.back())
        if (whole && (!least || *whole < *least)) least = whole;
    return least;
}

}  // namespace

TEST_CASE("for lines of 11 bends that are hard to get through, too") {
    std::mt19937 dice(20240613);
    int long_searches = 0, found_some = 0, found_none = 0;
    for (int i = 0; i < 12; ++i) {
        std::vector<std::pair<double, double>> bends;
        for (int k = 0; k < 11; ++k) bends.emplace_back(static_cast<double>(20 + dice() % 90), k ? static_cast<double>(dice() % 360) - 180 : 0);
        const OrderQuestion question = question_for(line_of(std::vector<double>(12, 5.0), bends));
        const std::uint64_t seed = dice();
        const double heads = i % 3 == 0 ? 0.05 : 0.3;
        const CanBend coins = [&](std::uint64_t made, const Placing& placing) {
            std::mt19937_64 coin(seed ^ (made * 0x9e3779b97f4a7c15u) ^ (placing.bend * 2 + (placing.hook == End::B)) * 0xff51afd7ed558ccdu);
            // Whatever does not begin at A looks good for long and leads nowhere.
            if (made == 0) return true;
            if (placing.bend == 0) return false;
            if (!(made & 1)) return __builtin_popcountll(made) < 9;
            return std::uniform_real_distribution<double>()(coin) < heads;
        };
        std::set<std::tuple<std::uint64_t, std::size_t, End>> asked;
        std::size_t times = 0;
        const CanBend counted = [&](std::uint64_t made, const Placing& placing) {
            asked.emplace(made, placing.bend, placing.hook);
            ++times;
            return coins(made, placing);
        };
        INFO("line " << i);
        const auto least = least_over_sets(question, coins);
        const OrderAnswer answer = best_order(question, counted);
        long_searches += least && asked.size() > 4000;
        REQUIRE(std::holds_alternative<OrderFound>(answer) == least.has_value());
        (least ? found_some : found_none)++;
        if (!least) continue;
        CHECK(std::get<OrderFound>(answer).cost.total() == *least);
        CHECK(times == asked.size());
    }
    CHECK(long_searches > 2);
    CHECK(found_some > 2);
    CHECK(found_none > 0);
}

// In the five lines below the geometry is stood in for by one rule of thumb (common practice, no source): what swings
// is straight or has one bend at most, for more of it would sweep into bench and hands.
namespace {

CanBend one_bend_swings(std::size_t bends) {
    return [bends](std::uint64_t made, const Placing& placing) {
        int swinging = 0;
        for (std::size_t i = 0; i < bends; ++i)
            if (made >> i & 1) swinging += placing.hook == End::A ? i > placing.bend : i < placing.bend;
        return swinging <= 1;
    };
}

}  // namespace

TEST_CASE("a U-turn: either bend may come first, and the order found is the cheapest of the eight") {
    // 4 in wide: 4 less two setbacks of 0.5625 leaves 2.875 in, enough for hook and lever.
    const OrderQuestion question = question_for(line_of({6, 4, 9}, {{90, 0}, {90, 0}}));
    const CanBend can = one_bend_swings(2);
    const auto found = std::get<OrderFound>(best_order(question, can));
    CHECK(found.order.size() == 2);
    CHECK(found.cost.floating == 0);
    CHECK(found.cost.total() == EveryOrder(question, can).least());
}

TEST_CASE("a closed frame: the last bend closes it with the formed side on the hook") {
    const OrderQuestion question = question_for(line_of({4, 6, 8, 6, 4}, {{90, 0}, {90, 0}, {90, 0}, {90, 0}}));
    const CanBend can = one_bend_swings(4);
    const auto found = std::get<OrderFound>(best_order(question, can));
    CHECK(found.cost.total() == EveryOrder(question, can).least());
    const Placing last = found.order.back();
    if (last.bend == 0) CHECK(last.hook == End::B);
    if (last.bend == 3) CHECK(last.hook == End::A);
    std::uint64_t made = 0;
    for (const Placing& placing : found.order) {
        CHECK(can(made, placing));
        made |= std::uint64_t{1} << placing.bend;
    }
    CHECK(made == 0b1111);
}

TEST_CASE("a coil of 12: each bend beside a made one, never more than one bend swinging, proven") {
    std::vector<std::pair<double, double>> bends(12, {90, 4});
    bends.front().second = 0;
    const OrderQuestion question = question_for(line_of(std::vector<double>(13, 4.0), bends));
    const CanBend can = one_bend_swings(12);
    const auto found = std::get<OrderFound>(best_order(question, can));
    CHECK(found.proven);
    CHECK(found.order.size() == 12);
    CHECK(found.cost.floating == 0);
    std::uint64_t made = 0;
    for (const Placing& placing : found.order) {
        CHECK(can(made, placing));
        made |= std::uint64_t{1} << placing.bend;
    }
}

TEST_CASE("a 2-inch jog whose middle is too short whichever bend comes first: how much longer is told") {
    // 60 deg each way on a 15/16 radius: the leg between the corners is 2 / sin 60 = 2.309401, less two setbacks of
    // 0.9375 tan 30 = 0.541266: 1.226870 in, where the hook needs 1 1/4 and the lever 1 1/2.
    Line line = line_of({8, 2 / std::sin(std::numbers::pi / 3), 8}, {{60, 0}, {60, 180}});
    line.bender.radius = 0.9375_in;
    line.bender.hook_straight = 1.25_in;
    line.bender.lever_straight = 1.5_in;
    const OrderQuestion question = question_for(line);
    const auto none = std::get<NoOrder>(best_order(question, one_bend_swings(2)));
    CHECK(none.proven);
    REQUIRE(none.furthest.size() == 1);
    REQUIRE(none.blocked.size() == 2);
    for (const Blocked& block : none.blocked) {
        const auto& straight = std::get<ShortStraight>(block.why);
        CHECK(straight.has.inch() == Approx(1.226870).margin(1e-6));
        CHECK(straight.needed.inch() == Approx(straight.hook_side ? 1.25 : 1.5));
    }
    // 0.023130 in = 0.58751 mm are missing, less the 0.1 mm that any straight may miss.
    const CanBendFor geometry = [](const OrderQuestion&) { return one_bend_swings(2); };
    const auto ways = ways_out(question, geometry, {});
    REQUIRE(ways.has_value());
    REQUIRE(ways->size() == 1);
    const auto& longer = std::get<LongerStraight>(ways->front());
    CHECK(longer.straight == 1);
    CHECK(longer.by.mm >= 0.48751 - 1e-4);
    CHECK(longer.by.mm <= 0.48751 + 0.025 + 1e-4);
    CHECK(std::holds_alternative<OrderFound>(best_order(question_for(line_of({8, 2.828427, 8}, {{45, 0}, {45, 180}})), one_bend_swings(2))));
}

TEST_CASE("a line that can't be bent at all: every bend with its reason, and no way out") {
    // The middle straight is shorter than the bends of it: corners overlap, and 150 deg is beyond the bender.
    Line line = line_of({8, 3, 8}, {{150, 0}, {150, 90}});
    line.bender.max_angle = 90_deg;
    const OrderQuestion question = question_for(line);
    const auto none = std::get<NoOrder>(best_order(question, one_bend_swings(2)));
    CHECK(none.proven);
    CHECK(none.furthest.empty());
    REQUIRE(none.blocked.size() == 4);
    for (const Blocked& block : none.blocked) CHECK(block.why == WhyNot{BeyondAngle{150_deg, 90_deg}});
    CHECK(ways_out(question, [](const OrderQuestion&) { return one_bend_swings(2); }, {})->empty());
}
