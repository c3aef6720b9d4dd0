#include <algorithm>
#include <array>

#include "base/tolerance.h"
#include "bench/order_reasons.h"
#include "bench/stance.h"

namespace tubewright {
namespace {

/// Finer than this nobody changes a route.
constexpr Length finest{25.4 / 16};

/// Up to 8 bends a trial is settled whatever it takes. Of more it is given up after so many sets: where a change does free the line,
/// the way through is mostly found within some dozens. So is each kind of change, and with it the whole: some seconds at 16 bends.
constexpr std::size_t sets_in_a_trial = 512, sets_of_a_kind = 24000;
/// The bender alone answers in no time: settled up to 11 bends.
constexpr std::size_t bender_sets = 4096;

/// Looks for ways out one after the other; what it was told to stop at is not a way out.
class Exits {
public:
    Exits(const OrderQuestion& question, const CanBendFor& geometry, const Progress& progress) : question_(question), geometry_(geometry), progress_(progress) {}

    bool possible(const OrderQuestion& changed, bool with_geometry) {
        const CanBend can = with_geometry ? geometry_(changed) : CanBend([](std::uint64_t, const Placing&) { return true; });
        Patience patience{with_geometry ? std::min(sets_in_a_trial, left_.sets) : bender_sets};
        const std::size_t before = patience.sets;
        const auto is = order_exists(changed, can, [this](double) { return go_on(); }, &patience);
        if (with_geometry) left_.sets -= before - patience.sets;
        gave_up_ = gave_up_ || !is;
        return is.value_or(false);
    }
    /// Another kind of change begins.
    void with_fresh_patience() { left_ = {sets_of_a_kind}; }
    /// Whether it is only straight tube that is short: then neither another stance nor less of it helps.
    bool is_too_short_for_the_bender() {
        Patience patience{bender_sets};
        return !order_exists(question_, [](std::uint64_t, const Placing&) { return true; }, {}, &patience).value_or(true);
    }
    std::optional<Length> longer(const std::vector<std::size_t>& straights);
    std::optional<Length> shorter(std::size_t straight);
    void tried(double share) { share_ = share; }
    /// Whether some change was given up before it was known what comes of it.
    bool gave_up() const { return gave_up_; }
    bool go_on() { return !stopped_ && !(stopped_ = progress_ && !progress_(share_)); }

private:
    bool with(const std::vector<std::size_t>& straights, Length by, bool with_geometry) {
        OrderQuestion changed = question_;
        for (const std::size_t straight : straights) changed.layout = lengthened(changed.layout, straight, by);
        return possible(changed, with_geometry);
    }
    bool frees(const std::vector<std::size_t>& straights, Length by) { return with(straights, by, false) && with(straights, by, true); }
    bool leaves_some(const std::vector<std::size_t>& straights, Length by) const {
        return std::all_of(straights.begin(), straights.end(), [&](std::size_t i) { return by < question_.layout.part.straights[i]; });
    }
    std::optional<Length> least(const std::vector<std::size_t>& straights, Length from, double sense);

    const OrderQuestion& question_;
    const CanBendFor& geometry_;
    const Progress& progress_;
    double share_ = 0;
    bool stopped_ = false, gave_up_ = false;
    Patience left_{sets_of_a_kind};
};

/// What the geometry asks for may come and go with the length: lengths one would try at the bench, then nearer and
/// nearer to the last that was not enough. Whatever is returned has been tried.
std::optional<Length> Exits::least(const std::vector<std::size_t>& straights, Length from, double sense) {
    Length low = from;
    for (const double more_mm : {0.0, 12.7, 25.4, 50.8, 101.6}) {
        Length high = from + Length{more_mm};
        if (high.mm <= 0 || (sense < 0 && !leaves_some(straights, high))) continue;
        if (!go_on()) return std::nullopt;
        if (frees(straights, sense * high)) {
            while (high - low > finest && go_on()) {
                const Length middle = (low + high) / 2;
                (frees(straights, sense * middle) ? high : low) = middle;
            }
            return high;
        }
        low = high;
    }
    return std::nullopt;
}

std::optional<Length> Exits::longer(const std::vector<std::size_t>& straights) {
    // More straight never takes room from the bender, so the least that it asks for is found by halving.
    const Length most = question_.bender.hook_straight + question_.bender.lever_straight;
    Length low, high = most;
    if (with(straights, {}, false)) return least(straights, {}, 1);
    if (!with(straights, most, false)) return std::nullopt;
    while (high - low > tolerance::straight_slack / 4 && go_on()) {
        const Length middle = (low + high) / 2;
        (with(straights, middle, false) ? high : low) = middle;
    }
    return least(straights, high, 1);
}

std::optional<Length> Exits::shorter(std::size_t straight) { return least({straight}, {}, -1); }

/// All the others. First those that leave up what is up now, then those nearest to it.
std::vector<SetUp> other_set_ups(const SetUp& now) {
    std::vector<SetUp> others;
    for (const HookHand hand : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down})
            if (SetUp{hand, swing} != now) others.push_back({hand, swing});
    const Eigen::Vector3d normal = stance(now).normal;
    std::stable_sort(others.begin(), others.end(), [&](const SetUp& a, const SetUp& b) { return stance(a).normal.dot(normal) > stance(b).normal.dot(normal); });
    return others;
}

std::vector<std::size_t> inner_straights(std::size_t straights) {
    std::vector<std::size_t> inner;
    for (std::size_t i = 1; i + 1 < straights; ++i) inner.push_back(i);
    return inner;
}

template <class Way>
void add_least_first(std::vector<WayOut>& ways, std::vector<Way> found) {
    std::stable_sort(found.begin(), found.end(), [](const Way& a, const Way& b) { return a.by < b.by; });
    ways.insert(ways.end(), found.begin(), found.end());
}

}  // namespace

Layout lengthened(Layout layout, std::size_t straight, Length by) {
    layout.part.straights[straight] += by;
    layout.cut_length += by;
    for (std::size_t i = straight; i < layout.spans.size(); ++i) {
        layout.spans[i].start += by;
        layout.spans[i].end += by;
    }
    return layout;
}

std::optional<std::vector<WayOut>> ways_out(const OrderQuestion& question, const CanBendFor& geometry, const std::vector<OrderQuestion>& other_benders, const Progress& progress, bool* every_way) {
    Exits exits(question, geometry, progress);
    const std::vector<SetUp> set_ups = other_set_ups(question.set_up);
    const std::size_t straights = question.layout.part.straights.size(), steps = 2 * straights + set_ups.size() + other_benders.size();
    std::size_t done = 0;
    const auto tried = [&] { exits.tried(static_cast<double>(++done) / static_cast<double>(steps)); };
    std::vector<WayOut> ways;
    const bool long_enough = !exits.is_too_short_for_the_bender();
    for (const SetUp& set_up : set_ups) {
        OrderQuestion turned = question;
        turned.set_up = set_up;
        if (long_enough && ways.empty() && exits.go_on() && exits.possible(turned, true)) ways.push_back(OtherSetUp{set_up});
        tried();
    }
    const auto settle = [&] { if (every_way && exits.gave_up()) *every_way = false; };
    // A tube that is cut has its straights, and its ink is for this bender.
    if (question.wish.begun) settle();
    if (question.wish.begun) return exits.go_on() ? std::optional(ways) : std::nullopt;
    std::vector<LongerStraight> longer;
    std::vector<ShorterStraight> shorter;
    exits.with_fresh_patience();
    for (std::size_t i = 0; i < straights && exits.go_on(); ++i, tried())
        if (const auto by = exits.longer({i})) longer.push_back({i, *by});
    exits.with_fresh_patience();
    for (std::size_t i = 0; i < straights && exits.go_on(); ++i, tried())
        if (const auto by = long_enough ? exits.shorter(i) : std::nullopt) shorter.push_back({i, *by});
    exits.with_fresh_patience();
    add_least_first(ways, longer);
    add_least_first(ways, shorter);
    // Where no straight alone does it, as with three bends close together.
    if (longer.empty() && shorter.empty() && straights > 3)
        if (const auto by = exits.longer(inner_straights(straights))) ways.push_back(LongerBetween{*by});
    for (std::size_t i = 0; i < other_benders.size() && exits.go_on(); ++i, tried())
        if (exits.possible(other_benders[i], false) && exits.possible(other_benders[i], true)) ways.push_back(OtherBender{i, other_benders[i].bender.name});
    if (!exits.go_on()) return std::nullopt;
    settle();
    return ways;
}

}  // namespace tubewright
