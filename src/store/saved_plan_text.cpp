#include "store/saved_plan_text.h"

#include <cmath>
#include <locale>
#include <sstream>

#include "store/book_parts.h"
#include "store/number_text.h"

namespace tubewright {
namespace {

const std::string begins = "\nsaved after ";

using book::strange;

double number(std::istream& in, double most) {
    double value = 0;
    if (!(in >> value) || !(std::abs(value) <= most)) strange();
    return value;
}

Length length(std::istream& in) { return {number(in, 1e9)}; }
Angle angle(std::istream& in) { return {number(in, 1000)}; }

BendOnTube bend(std::istream& in) {
    BendOnTube bend;
    std::string hook;
    bend.at = length(in);
    if (!(in >> hook) || (hook != "A" && hook != "B")) strange();
    bend.hook = hook == "A" ? End::A : End::B;
    bend.angle = angle(in);
    bend.direction = angle(in);
    return bend;
}

}  // namespace

std::string plan_cell(const LineWork& line) {
    if (!line.saved) return line.plan;
    const TubePlan& plan = line.saved->plan;
    std::string cell = line.plan + begins + std::to_string(line.saved->made);
    for (const double value : {plan.cut_length.mm, plan.end_a.mm, plan.end_b.mm, plan.radius.mm, plan.stretch}) cell += " " + typed(value);
    for (const BendOnTube& bend : plan.bends) cell += "; " + typed(bend.at.mm) + " " + letter(bend.hook) + " " + typed(bend.angle.deg) + " " + typed(bend.direction.deg);
    return cell;
}

void read_plan_cell(const std::string& cell, LineWork& line) {
    const std::size_t from = cell.find(begins);
    line.plan = cell.substr(0, from);
    if (from == cell.npos) return;
    std::istringstream in(cell.substr(from + begins.size()));
    in.imbue(std::locale::classic());
    SavedPlan saved;
    constexpr std::size_t most_made = 100000;
    if (!(in >> saved.made) || saved.made > most_made) strange();
    TubePlan& plan = saved.plan;
    plan.cut_length = length(in), plan.end_a = length(in), plan.end_b = length(in), plan.radius = length(in), plan.stretch = number(in, 10);
    for (char mark = 0; in >> mark;) {
        if (mark != ';') strange();
        plan.bends.push_back(bend(in));
    }
    if (!in.eof()) strange();
    line.saved = std::move(saved);
}

}  // namespace tubewright
