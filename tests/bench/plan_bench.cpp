// What the best cutting plan costs in processor time, on shops made by dice, and whether it is what a general solver (GLPK) finds.
// Prints; is no test, but says where they differ and ends with 1.
//
//   plan_bench [SHOPS] [CUTS] [KINDS] [SHORTEST_MM] [LONGEST_MM] [PATTERNS] [full|upto] [SEED]
//
// 500 40 12 500 2500 4000 upto 20261129 unless told; with 0 patterns the solver is not asked

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <iostream>

#include "stock/glpk_plan.h"
#include "stock/random_shop.h"

using namespace tubewright;

namespace {

double seconds_since(std::clock_t start) { return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC; }

std::ostream& operator<<(std::ostream& out, const PlanCost& cost) {
    return out << cost.sticks << " sticks, " << cost.waste.um / 1000 << " mm wasted, " << cost.bought << " bought, " << cost.leftovers << " left over";
}

double at(std::vector<double> values, double share) {
    if (values.empty()) return 0;
    std::sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

}  // namespace

int main(int count, char** words) {
    const auto number = [&](int place, int otherwise) { return count > place ? std::atoi(words[place]) : otherwise; };
    const int shops = number(1, 500);
    const ShopSize size{number(2, 40), number(3, 12), number(4, 500), number(5, 2500), count > 7 && std::string(words[7]) == "full"};
    const auto patterns = static_cast<std::size_t>(number(6, 4000));
    std::mt19937 dice(static_cast<unsigned>(number(8, 20261129)));
    std::vector<double> ours, theirs, ratios;
    int proven = 0, planned = 0, compared = 0, equal = 0, differ = 0, unplanned = 0;
    int gaps[4] = {};
    for (int shop = 0; shop < shops; ++shop) {
        const CuttingQuestion question = random_shop(dice, size);
        std::clock_t start = std::clock();
        const PlanAnswer answer = best_plan(question);
        ours.push_back(seconds_since(start));
        const auto* plan = std::get_if<PlanFound>(&answer);
        if (!plan) {
            ++unplanned;
            continue;
        }
        ++planned;
        proven += plan->proven;
        if (counted_anew(question, *plan) != plan->cost) std::cout << "shop " << shop << ": the plan does not cost what it says\n", ++differ;
        if (!plan->proven) {
            std::cout << "shop " << shop << ": " << ours.back() << " s: " << plan->cost << "; bound " << plan->bound << "\n";
            ++gaps[plan->cost.sticks != plan->bound.sticks ? 0 : plan->cost.waste != plan->bound.waste ? 1 : plan->cost.bought != plan->bound.bought ? 2 : 3];
        }
        if (patterns == 0) continue;
        start = std::clock();
        const auto solver = glpk_plan(question, patterns, 10'000);
        if (!solver) continue;
        theirs.push_back(seconds_since(start));
        ratios.push_back(theirs.back() / std::max(ours.back(), 1e-6));
        ++compared;
        if (solver->cost == plan->cost) {
            ++equal;
        } else {
            std::cout << "shop " << shop << (plan->proven ? " (proven)" : " (not proven)") << ": " << plan->cost << "; the solver: " << solver->cost << "\n";
            differ += plan->proven;
        }
    }
    std::cout << shops << " shops of up to " << size.most_cuts << " cuts of " << size.most_kinds << " kinds, " << size.shortest_mm << " to " << size.longest_mm << " mm: "
              << planned << " planned, " << unplanned << " can't be, " << proven << " proven; not proven by figure: " << gaps[0] << " " << gaps[1] << " " << gaps[2] << " " << gaps[3] << "\n"
              << "ours, s: median " << at(ours, 0.5) << ", 95 of 100 " << at(ours, 0.95) << ", most " << at(ours, 1) << "\n"
              << compared << " compared with the solver, " << equal << " equal, " << differ << " differ though proven; the solver, s: median " << at(theirs, 0.5) << ", most " << at(theirs, 1)
              << "; its time over ours: 5 of 100 " << at(ratios, 0.05) << ", median " << at(ratios, 0.5) << "\n";
    return differ ? 1 : 0;
}
