#include "bench/line_ways.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "bench/line_question.h"
#include "bench/order_reasons.h"

namespace tubewright {
namespace {

/// See ways_out.cpp.
constexpr std::size_t sets_in_a_trial = 1000, sets_altogether = 40000;

constexpr double sixteenth_mm = 25.4 / 16, half_mm = 0.5;

Length up_to(Length length, double step_mm) { return {std::ceil(length.mm / step_mm - 1e-6) * step_mm}; }

/// Runs grow by what the straights beside them grow: legs have the setbacks besides, which stay.
void apply(FreedLine& freed, const LongerStraight& way) { freed.line.route.runs[way.straight] += way.by; }
void apply(FreedLine& freed, const ShorterStraight& way) { freed.line.route.runs[way.straight] -= way.by; }
void apply(FreedLine& freed, const LongerBetween& way) {
    for (std::size_t i = 1; i + 1 < freed.line.route.runs.size(); ++i) freed.line.route.runs[i] += way.by;
}
void apply(FreedLine& freed, const OtherAngle& way) { freed.line.route.bends[way.bend].angle = way.to; }
void apply(FreedLine& freed, const OtherSetUp& way) { freed.set_up = way.set_up; }
void apply(FreedLine& freed, const FreeOrderOfWork&) { freed.wish = {}; }
void apply(FreedLine&, const OtherBender&) {}

/// What is known of a bender's springback holds for that bender.
Sheet sheet_for(const FreedLine& freed, const Sheet& before) {
    SheetChoice choice;
    choice.set_up = freed.set_up;
    choice.hand = before.hand;
    if (freed.line.bender == before.line.bender) choice.springback = before.springback;
    return bend_sheet(freed.line, choice);
}

/// Tries changed lines one after the other.
class Trial {
public:
    Trial(const Sheet& sheet, const OrderWish& wish, const std::vector<Bender>& benders, const Progress& progress) : sheet_(sheet), wish_(wish), benders_(benders), progress_(progress) {}

    bool frees(const WayOut& way) {
        const FreedLine then = freed(sheet_, wish_, way, benders_);
        const Sheet sheet = sheet_for(then, sheet_);
        if (!has_question(sheet)) return false;
        const OrderQuestion question = question_of(sheet, then.wish);
        Patience patience{std::min(sets_in_a_trial, left_.sets)};
        const std::size_t before = patience.sets;
        const auto does = order_exists(question, geometry_of(question, sheet.line.tube.od), [this](double) { return go_on(); }, &patience);
        gave_up_ = gave_up_ || !does;
        left_.sets -= before - patience.sets;
        return does.value_or(false);
    }

    /// As it is read off an inch tape and off a metric one.
    template <class Way>
    std::optional<WayOut> as_read(Way way) {
        constexpr int further = 4;
        way.by = up_to(way.by, sixteenth_mm);
        for (int i = 0; i < further && go_on(); ++i, way.by += Length{sixteenth_mm}) {
            Way metric = way;
            metric.by = up_to(way.by, half_mm);
            if (frees(way) && frees(metric)) return way;
        }
        return std::nullopt;
    }
    std::optional<WayOut> as_read(const OtherSetUp& way) { return if_it_frees(way); }
    std::optional<WayOut> as_read(const OtherBender& way) { return if_it_frees(way); }
    std::optional<WayOut> as_read(const OtherAngle& way) { return if_it_frees(way); }
    std::optional<WayOut> as_read(const FreeOrderOfWork& way) { return if_it_frees(way); }

    /// The smallest of the changes one would try, at whichever bend.
    std::optional<WayOut> other_angle() {
        const auto& bends = sheet_.line.route.bends;
        for (const double by : {5.0, 10.0, 15.0, 20.0, 30.0})
            for (const double sense : {-1.0, 1.0})
                for (std::size_t i = 0; i < bends.size() && go_on(); ++i) {
                    const Angle to = bends[i].angle + Angle{sense * by};
                    if (is_made(bends[i]) && to > tolerance::springback_linear_from && to < tolerance::sharpest_corner && frees(OtherAngle{i, bends[i].angle, to})) return OtherAngle{i, bends[i].angle, to};
                }
        return std::nullopt;
    }

    bool go_on() { return !stopped_ && !(stopped_ = progress_ && !progress_(share_)); }
    void tried(double share) { share_ = share; }
    bool gave_up() const { return gave_up_; }

private:
    std::optional<WayOut> if_it_frees(const WayOut& way) { return frees(way) ? std::optional(way) : std::nullopt; }

    const Sheet& sheet_;
    const OrderWish& wish_;
    const std::vector<Bender>& benders_;
    const Progress& progress_;
    double share_ = 0;
    bool stopped_ = false, gave_up_ = false;
    Patience left_{sets_altogether};
};

bool changes_route(const WayOut& way) { return std::holds_alternative<LongerStraight>(way) || std::holds_alternative<ShorterStraight>(way) || std::holds_alternative<LongerBetween>(way); }

/// Those of the list that take the tube, as questions; and which they are.
struct Others {
    std::vector<OrderQuestion> questions;
    std::vector<std::size_t> places;
};

Others other_benders(const Sheet& sheet, const OrderWish& wish, const std::vector<Bender>& benders) {
    Others others;
    for (std::size_t i = 0; i < benders.size(); ++i) {
        if (benders[i].id == sheet.line.bender.id) continue;
        const FreedLine then = freed(sheet, wish, OtherBender{i}, benders);
        const Sheet on_it = sheet_for(then, sheet);
        if (!has_question(on_it)) continue;
        others.questions.push_back(question_of(on_it, then.wish));
        others.places.push_back(i);
    }
    return others;
}

}  // namespace

FreedLine freed(const Sheet& sheet, const OrderWish& wish, const WayOut& way, const std::vector<Bender>& benders) {
    FreedLine result{sheet.line, sheet.set_up, wish};
    if (const auto* bender = std::get_if<OtherBender>(&way)) {
        result.line.bender = benders[bender->bender];
        result.set_up = result.line.bender.set_up;
    }
    std::visit([&](const auto& one) { apply(result, one); }, way);
    return result;
}

std::optional<std::vector<WayOut>> ways_for(const Sheet& sheet, const OrderWish& wish, const std::vector<Bender>& benders, const Progress& progress, bool* every_way) {
    const Length od = sheet.line.tube.od;
    const CanBendFor geometry = [od](const OrderQuestion& changed) { return geometry_of(changed, od); };
    if (wish.begun) return ways_out(question_of(sheet, wish), geometry, {}, progress, every_way);
    Trial trial(sheet, wish, benders, progress);
    if (wish != OrderWish{} && trial.frees(FreeOrderOfWork{})) return std::vector<WayOut>{FreeOrderOfWork{}};
    const Others others = other_benders(sheet, wish, benders);
    // Looking is the longer part; trying what was found, and other angles, is the rest.
    constexpr double looking = 0.7;
    const Progress share = progress ? Progress([&](double done) { return progress(looking * done); }) : Progress{};
    const auto found = ways_out(question_of(sheet, wish), geometry, others.questions, share, every_way);
    if (!found) return std::nullopt;
    trial.tried(looking);
    std::vector<WayOut> ways;
    constexpr std::size_t enough_of_a_kind = 2;
    std::vector<std::size_t> taken(std::variant_size_v<WayOut>);
    for (WayOut way : *found) {
        if (auto* bender = std::get_if<OtherBender>(&way)) bender->bender = others.places[bender->bender];
        if (taken[way.index()] == enough_of_a_kind) continue;
        const auto read = std::visit([&](const auto& one) { return trial.as_read(one); }, way);
        if (!read) continue;
        ++taken[way.index()];
        ways.push_back(*read);
    }
    if (std::none_of(ways.begin(), ways.end(), changes_route))
        if (const auto angle = trial.other_angle()) ways.push_back(*angle);
    if (!trial.go_on()) return std::nullopt;
    if (every_way && trial.gave_up()) *every_way = false;
    return ways;
}

}  // namespace tubewright
