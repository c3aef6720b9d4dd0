// What a rescue saves: random lines with bends that came out off by what a hand does, once, twice, or with a slip; compared with
// NLopt, a general optimiser. Prints; asserts nothing; is no test.
//
//   rescue_bench [LINES] [SEED] [SETS]    5000 lines unless told; SETS 0 leaves out the search of NLopt over all smaller sets of numbers
//
// With TELL in the environment it says of each line that NLopt does better with, or that takes long, which numbers are in question.

#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "bench/rescue_world.h"

using namespace rescue_world;

namespace {

double milliseconds_since(std::clock_t start) { return 1000 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC; }

struct Hands {
    const char* name;
    double times;
    bool slip;
};

struct Counts {
    int lines = 0, off = 0, saved = 0, barred = 0, nlopt_saves = 0, missed = 0, fewer_by_nlopt = 0, looked_for_fewer = 0, in_aim = 0, not_true = 0, with[8]{};
    double metres_off = 0, metres_saved = 0;
    std::vector<double> took;
};

void look_at(const Sheet& sheet, const std::vector<MadeError>& errors, bool sets, Counts& counts) {
    const RescueQuestion question = known_question(sheet, errors);
    const RescueQuestion aimed = aimed_at(question);
    const RescueModel model(question, question.made.plan), aimed_model(aimed, question.made.plan);
    ++counts.lines;
    const std::clock_t start = std::clock();
    const Rescue result = rescue(question);
    counts.took.push_back(milliseconds_since(start));
    if (counts.took.back() > 30 && std::getenv("TELL")) std::printf("  slow: %.1f ms, line %d, %zu numbers, %zu ways, %zu changes\n", counts.took.back(), counts.lines, model.numbers().size(), result.ways.size(), result.ways.empty() ? 0 : result.ways.front().changes.size());
    if (result.fits) return;
    ++counts.off;
    counts.metres_off += sheet.layout->cut_length.mm / 1000;
    const bool other_saves = nlopt_saves(question, model);
    counts.nlopt_saves += other_saves;
    if (result.ways.empty()) {
        counts.barred += result.bar == RescueBar::in_the_way;
        counts.missed += other_saves;
        if (other_saves && std::getenv("TELL")) {
            const BestOf best = best_of(model, every_number(model), Eigen::VectorXd::Zero(static_cast<Eigen::Index>(model.numbers().size())));
            const Eigen::VectorXd theirs = nlopt_best(model, every_number(model), 3000);
            for (std::size_t i = 0; i < model.numbers().size(); ++i) std::printf("    %d of bend %zu by %.3f, by NLopt %.3f (%.2f %.2f)\n", static_cast<int>(model.numbers()[i].number), model.numbers()[i].bend, best.x[static_cast<Eigen::Index>(i)], theirs[static_cast<Eigen::Index>(i)], model.numbers()[i].low, model.numbers()[i].high);
            for (const Eigen::VectorXd& x : {best.x, theirs}) {
                const EndsOff o = ends_off(model.laid_at(model.plan_at(x)));
                std::printf("    %.3f %.3f %.3f %.3f %.2f\n", o.a.place.mm, o.b.place.mm, o.a.direction.deg, o.b.direction.deg, o.aside.mm);
            }
            std::printf("    from theirs %.4f\n", best_of(model, every_number(model), theirs).worst);
        }
        if (other_saves && std::getenv("TELL")) std::printf("  missed: line %d, nearest worst %.3f, bar %d\n", counts.lines, worst_share(result.nearest, question.limits.ends), static_cast<int>(*result.bar));
        return;
    }
    ++counts.saved;
    counts.in_aim += aimed_model.worst(result.ways.front().plan) <= 1;
    counts.metres_saved += sheet.layout->cut_length.mm / 1000;
    const std::size_t changes = result.ways.front().changes.size();
    ++counts.with[std::min<std::size_t>(changes, 7)];
    for (const RescueWay& way : result.ways)
        counts.not_true += surely_off(walked(line_as_planned(sheet.line, plan_on_tube(sheet)), sheet.layout->part.radius.mm), walked(line_as_planned(sheet.line, way.plan), sheet.layout->part.radius.mm), question.limits.ends) > 1 + 1e-9 ||
                           model.worst(way.plan) > 1;
    if (!sets || changes < 2 || changes > 3) return;
    ++counts.looked_for_fewer;
    const bool in_aim = aimed_model.worst(result.ways.front().plan) <= 1;
    const RescueModel& used = in_aim ? aimed_model : model;
    const auto fewer = nlopt_set(question, used, changes - 1);
    if (!fewer) return;
    ++counts.fewer_by_nlopt;
    if (!std::getenv("TELL")) return;
    const BestOf best = best_of(used, *fewer, Eigen::VectorXd::Zero(static_cast<Eigen::Index>(used.numbers().size())));
    const Eigen::VectorXd theirs = nlopt_best(used, *fewer, 400);
    std::printf("  fewer by NLopt: line %d, ours %zu; worst with its numbers %.4f, by NLopt %.4f\n", counts.lines, changes, best.worst, used.worst(used.plan_at(theirs)));
    for (const std::size_t i : *fewer) std::printf("    %d of bend %zu by %.3f, by NLopt %.3f\n", static_cast<int>(used.numbers()[i].number), used.numbers()[i].bend, best.x[static_cast<Eigen::Index>(i)], theirs[static_cast<Eigen::Index>(i)]);
}

void table(const Hands& hands, int lines, unsigned seed, bool sets) {
    Dice dice(seed);
    Counts counts;
    for (int i = 0; i < lines; ++i) {
        const Sheet sheet = random_sheet(dice);
        const std::size_t done = 1 + dice.below(sheet.steps.size() - 1);
        look_at(sheet, random_errors(sheet, done, hands.times, hands.slip, dice), sets, counts);
    }
    std::sort(counts.took.begin(), counts.took.end());
    const auto at = [&](double share) { return counts.took[static_cast<std::size_t>(share * static_cast<double>(counts.took.size() - 1))]; };
    std::printf("%s: %d lines, %d off; saved %d (%.1f %%), %d of them to half the tolerance, by NLopt %d; NLopt saves and we do not %d; fits but in the way %d; not true %d\n", hands.name, counts.lines, counts.off, counts.saved,
                100.0 * counts.saved / std::max(1, counts.off), counts.in_aim, counts.nlopt_saves, counts.missed, counts.barred, counts.not_true);
    std::printf("  numbers changed: 1 in %d, 2 in %d, 3 in %d, 4 in %d, more in %d; NLopt does with one fewer in %d of the %d of 2 and 3\n", counts.with[1], counts.with[2], counts.with[3], counts.with[4],
                counts.with[5] + counts.with[6] + counts.with[7], counts.fewer_by_nlopt, counts.looked_for_fewer);
    std::printf("  ms: median %.2f, 99 in 100 %.2f, most %.2f, over 50 in %d; tube that starting again scraps %.1f m, after rescue %.1f m\n", at(0.5), at(0.99), counts.took.back(), static_cast<int>(std::count_if(counts.took.begin(), counts.took.end(), [](double took) { return took > 50; })), counts.metres_off, counts.metres_off - counts.metres_saved);
    std::fflush(stdout);
}

/// As at the bench: angles by the protractor, turns by a gauge and two tape readings, with their errors; the bends that follow are made by
/// the same hand. Where the ends really come to lie.
void read_table(int lines, unsigned seed) {
    Dice dice(seed);
    const CheckSd sd;
    int off = 0, told = 0, offered = 0, right_without = 0, right_with = 0, as_wanted = 0;
    for (int i = 0; i < lines; ++i) {
        const Sheet sheet = random_sheet(dice);
        const std::size_t done = 1 + dice.below(sheet.steps.size() - 1);
        const std::vector<MadeError> truth = random_errors(sheet, done, 1, true, dice);
        MadeReadings readings;
        std::vector<std::size_t> made;
        for (std::size_t step = 0; step < done; ++step) made.push_back(sheet.steps[step].bend);
        std::sort(made.begin(), made.end());
        for (std::size_t k = 0; k < made.size(); ++k) {
            readings.angles[made[k]] = {};
            if (k > 0) readings.turns.push_back({made[k], made[k - 1], {}});
            readings.tapes.push_back({{{k == 0 ? 0 : made[k - 1] + 1, made[k] + 1}, {}}, done});
        }
        const Eigen::VectorXd exact = read_of(sheet, truth, readings);
        Eigen::Index at = 0;
        for (auto& [bend, angle] : readings.angles) angle.deg = std::round(2 * (exact[at++] + sd.protractor.deg * dice.normal())) / 2;
        for (TurnReading& turn : readings.turns) turn.read.deg = std::round(exact[at++] + sd.rotation.deg * dice.normal());
        for (MadeTape& tape : readings.tapes) tape.tape.read.mm = exact[at++] + sd.tape.mm * dice.normal();
        RescueQuestion question;
        question.sheet = sheet, question.steps_done = done, question.on_bender = false;
        question.made = as_made(sheet, done, readings, sd);
        const RescueQuestion known = known_question(sheet, truth);
        const RescueModel truly(known, known.made.plan);
        if (truly.worst(known.made.plan) <= 1) continue;
        ++off;
        const Rescue result = rescue(question);
        told += !result.fits;
        if (result.fits || result.ways.empty()) continue;
        ++offered;
        Eigen::VectorXd x = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(truly.numbers().size()));
        for (const RescueChange& change : result.ways.front().changes)
            for (std::size_t n = 0; n < truly.numbers().size(); ++n)
                if (truly.numbers()[n].number == change.number && truly.numbers()[n].bend == change.bend && (change.number != RescueNumber::cut_off || truly.numbers()[n].end == change.end))
                    x[static_cast<Eigen::Index>(n)] = change.number == RescueNumber::angle || change.number == RescueNumber::turn ? change.angle.deg : change.length.mm;
        // The hand at the bends still to come, the same for both.
        std::vector<MadeError> all = truth;
        for (std::size_t step = done; step < sheet.steps.size(); ++step)
            all.push_back({sheet.hand.angle_sd.rad() * dice.normal(), (sheet.steps[step].neighbour ? sheet.hand.turn_sd : sheet.hand.float_sd).rad() * dice.normal(), sheet.hand.mark_sd.mm * dice.normal()});
        const TubePlan without = plan_with(sheet, all);
        right_without += worst_share(ends_off(truly.laid_at(without)), question.limits.ends) <= 1;
        std::vector<MadeError> later = all;
        std::fill(later.begin(), later.begin() + static_cast<std::ptrdiff_t>(done), MadeError{});
        as_wanted += worst_share(ends_off(truly.laid_at(plan_with(sheet, later))), question.limits.ends) <= 1;
        right_with += worst_share(ends_off(truly.laid_at(truly.changed(without, x))), question.limits.ends) <= 1;
    }
    std::printf("read at the bench, a slip each: %d of %d lines off; told of %d, a way for %d; with a hand's errors in the bends to come the ends fit in %d without and %d with it; had the bends made been perfect, in %d\n", off, lines, told, offered, right_without, right_with, as_wanted);
}

}  // namespace

int main(int count, char** words) {
    const int lines = count > 1 ? std::max(1, std::atoi(words[1])) : 5000;
    const unsigned seed = count > 2 ? static_cast<unsigned>(std::atoi(words[2])) : 20260103;
    const bool sets = count > 3 ? std::atoi(words[3]) != 0 : true;
    for (const Hands& hands : {Hands{"a hand's errors", 1, false}, Hands{"twice a hand's errors", 2, false}, Hands{"a hand's errors and one slip", 1, true}}) table(hands, lines, seed, sets);
    read_table(lines, seed);
    return 0;
}
