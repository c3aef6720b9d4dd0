#include "stock/pattern_program.h"

#include <array>
#include <cmath>
#include <numeric>

namespace tubewright {

namespace {

constexpr double nothing = 1e-9;       ///< a figure of the table that is taken for 0
constexpr double infeasible = 1e-7;    ///< an amount that has to be 0 or more and is less
constexpr double whole = 1e-6;         ///< how near to a whole number counts as one
constexpr std::int64_t figures_in_a_step = 50;

struct Pattern {
    Opened opened;
    std::array<std::int64_t, 4> cost;
};
std::array<std::int64_t, 4> in_order(const PlanCost& cost) { return {cost.sticks, cost.waste.um, cost.bought, cost.leftovers}; }
PlanCost from_order(const std::array<std::int64_t, 4>& cost) { return {cost[0], {cost[1]}, cost[2], cost[3]}; }
/// The table's figures should be of one size: waste in metres.
double scaled(std::size_t figure, std::int64_t value) { return static_cast<double>(value) * (figure == 1 ? 1e-6 : 1); }

/// The simplex table without the unit columns of what is in the basis. Unknowns: patterns, then one for each row.
struct Table {
    std::vector<std::vector<double>> rows;  ///< the last place is the amount
    std::vector<double> costs;              ///< the last place is minus the whole cost
    std::vector<int> inside, outside;       ///< unknowns of the rows and of the columns; an outside one of -1 is gone for good
    std::vector<bool> must_vanish;          ///< by row: of an equation
};

class PatternProgram {
public:
    PatternProgram(PlanSearch& search, PlanSteps& steps) : search_(search), steps_(steps) {}

    bool run() {
        if (!list_patterns()) return false;
        for (figure_ = 0; figure_ < 4; ++figure_) {
            const auto least = in_order(search_.bound), now = in_order(search_.cost);
            if (least[figure_] == now[figure_]) continue;
            // Figures that come in steps leave less between the bound and the plan.
            step_ = 0;
            for (const Pattern& pattern : patterns_) step_ = std::gcd(step_, pattern.cost[figure_]);
            step_ = std::max<std::int64_t>(1, step_);
            Table table = table_for();
            at_root_ = true;
            look(std::move(table));
            if (stopped()) break;
            auto proven = in_order(search_.cost);
            for (std::size_t later = figure_ + 1; later < 4; ++later) proven[later] = least[later] > 0 && same_up_to(least, proven, figure_) ? least[later] : 0;
            raise_bound(proven);
        }
        return true;
    }

private:
    static bool same_up_to(const std::array<std::int64_t, 4>& a, const std::array<std::int64_t, 4>& b, std::size_t last) { return std::equal(a.begin(), a.begin() + static_cast<std::ptrdiff_t>(last) + 1, b.begin()); }

    void raise_bound(const std::array<std::int64_t, 4>& to) { search_.bound = std::max(search_.bound, from_order(to)); }

    bool list_patterns() {
        std::vector<int> pieces(search_.kinds.size());
        for (std::size_t room = 0; room < search_.rooms.size(); ++room)
            if (!list_from(room, 0, search_.rooms[room].room, pieces)) return false;
        return true;
    }

    bool list_from(std::size_t room, std::size_t kind, std::int64_t rest, std::vector<int>& pieces) {
        if (kind == search_.kinds.size()) {
            if (rest == search_.rooms[room].room) return true;
            patterns_.push_back({{room, pieces}, in_order(search_.cost_of(room, rest))});
            return patterns_.size() <= most_patterns;
        }
        const std::int64_t need = search_.kinds[kind].need;
        const auto most = std::min<std::int64_t>(rest / need, static_cast<std::int64_t>(search_.kinds[kind].places.size()));
        for (std::int64_t count = 0; count <= most; ++count) {
            pieces[kind] = static_cast<int>(count);
            if (!list_from(room, kind + 1, rest - count * need, pieces)) return false;
        }
        pieces[kind] = 0;
        return true;
    }

    Table table_for() const {
        Table table;
        const std::size_t columns = patterns_.size();
        const auto add = [&](double amount, bool must_vanish, const auto& value) {
            std::vector<double> row(columns + 1);
            for (std::size_t p = 0; p < columns; ++p) row[p] = value(patterns_[p]);
            row[columns] = amount;
            table.inside.push_back(static_cast<int>(columns + table.rows.size()));
            table.rows.push_back(std::move(row));
            table.must_vanish.push_back(must_vanish);
        };
        for (std::size_t kind = 0; kind < search_.kinds.size(); ++kind)
            add(static_cast<double>(search_.kinds[kind].places.size()), true, [&](const Pattern& pattern) { return static_cast<double>(pattern.opened.pieces[kind]); });
        for (std::size_t room = 0; room < search_.rooms.size(); ++room)
            if (search_.rooms[room].from != RoomKind::From::bought)
                add(search_.rooms[room].count, false, [&](const Pattern& pattern) { return pattern.opened.room == room ? 1.0 : 0.0; });
        const auto now = in_order(search_.cost);
        for (std::size_t figure = 0; figure < figure_; ++figure)
            add(scaled(figure, now[figure]), false, [&](const Pattern& pattern) { return scaled(figure, pattern.cost[figure]); });
        for (const Pattern& pattern : patterns_) table.costs.push_back(scaled(figure_, pattern.cost[figure_]));
        table.costs.push_back(0);
        for (std::size_t p = 0; p < columns; ++p) table.outside.push_back(static_cast<int>(p));
        return table;
    }

    void turn(Table& table, std::size_t row, std::size_t column) {
        const std::size_t columns = table.outside.size();
        std::vector<double>& turned = table.rows[row];
        const double by = turned[column];
        turned[column] = 1;
        for (double& value : turned) value /= by;
        const auto clear = [&](std::vector<double>& other) {
            const double factor = other[column];
            if (factor == 0) return;
            other[column] = 0;
            for (std::size_t j = 0; j <= columns; ++j) other[j] -= factor * turned[j];
        };
        for (std::size_t i = 0; i < table.rows.size(); ++i)
            if (i != row) clear(table.rows[i]);
        clear(table.costs);
        std::swap(table.inside[row], table.outside[column]);
        if (table.must_vanish[row]) {
            table.must_vanish[row] = false;
            table.outside[column] = -1;
            for (std::vector<double>& any : table.rows) any[column] = 0;
            table.costs[column] = 0;
        }
        steps_.take(static_cast<std::int64_t>(table.rows.size() * columns) / figures_in_a_step);
    }

    /// Whether there is an answer that costs less than the plan so far; then the table holds the cheapest.
    bool solve(Table& table) {
        const std::size_t columns = table.outside.size();
        while (!stopped()) {
            if (-table.costs[columns] > worth_having()) return false;
            std::size_t row = table.rows.size();
            double worst = infeasible;
            for (std::size_t i = 0; i < table.rows.size(); ++i) {
                const double amount = table.rows[i][columns], off = table.must_vanish[i] ? std::abs(amount) : -amount;
                if (off > worst) worst = off, row = i;
            }
            if (row == table.rows.size()) return true;
            const double way = table.rows[row][columns] > 0 ? 1 : -1;
            std::size_t column = columns;
            double least = 0;
            for (std::size_t j = 0; j < columns; ++j) {
                const double value = way * table.rows[row][j];
                if (table.outside[j] < 0 || value < nothing * 100) continue;
                const double ratio = std::max(0.0, table.costs[j]) / value;
                if (column == columns || ratio < least - nothing || (ratio < least + nothing && value > way * table.rows[row][column])) column = j, least = ratio;
            }
            if (column == columns) return false;
            turn(table, row, column);
        }
        return false;
    }

    /// What an answer may cost to be better in this figure than the plan so far.
    double worth_having() const { return scaled(figure_, in_order(search_.cost)[figure_] - step_) + slack(); }
    /// Half a micrometre, or what counts as whole.
    double slack() const { return figure_ == 1 ? scaled(1, 1) * 0.5 : whole; }

    void look(Table table) {
        if (!solve(table)) return;
        const std::size_t columns = table.outside.size();
        if (at_root_) {
            at_root_ = false;
            auto least = in_order(search_.cost);
            const double unit = scaled(figure_, 1);
            least[figure_] = static_cast<std::int64_t>(std::ceil((-table.costs[columns] - slack()) / unit));
            for (std::size_t later = figure_ + 1; later < 4; ++later) least[later] = 0;
            raise_bound(least);
        }
        std::size_t branch = table.rows.size();
        double furthest = whole;
        for (std::size_t i = 0; i < table.rows.size(); ++i) {
            if (table.inside[i] >= static_cast<int>(patterns_.size())) continue;
            const double amount = table.rows[i][columns], off = std::abs(amount - std::round(amount));
            if (off > furthest) furthest = off, branch = i;
        }
        if (branch == table.rows.size()) return keep(table);
        const double amount = table.rows[branch][columns];
        for (const bool more : {true, false}) {
            if (-table.costs[columns] > worth_having() || stopped()) return;
            Table next = table;
            std::vector<double> row = table.rows[branch];
            if (!more)
                for (double& value : row) value = -value;
            row[columns] = more ? amount - std::ceil(amount) : std::floor(amount) - amount;
            next.rows.push_back(std::move(row));
            next.inside.push_back(static_cast<int>(patterns_.size()) + 1'000'000);
            next.must_vanish.push_back(false);
            look(std::move(next));
        }
    }

    void keep(const Table& table) {
        std::vector<Opened> plan;
        std::vector<std::size_t> left;
        for (const CutKind& kind : search_.kinds) left.push_back(kind.places.size());
        std::array<std::int64_t, 4> cost{};
        for (std::size_t i = 0; i < table.rows.size(); ++i) {
            if (table.inside[i] >= static_cast<int>(patterns_.size())) continue;
            const Pattern& pattern = patterns_[static_cast<std::size_t>(table.inside[i])];
            for (long count = std::lround(table.rows[i].back()); count > 0; --count) {
                plan.push_back(pattern.opened);
                for (std::size_t kind = 0; kind < left.size(); ++kind) left[kind] -= static_cast<std::size_t>(pattern.opened.pieces[kind]);
                for (std::size_t figure = 0; figure < 4; ++figure) cost[figure] += pattern.cost[figure];
            }
        }
        if (std::any_of(left.begin(), left.end(), [](std::size_t more) { return more != 0; })) {
            astray_ = true;  // nothing more of the table is believed
            return;
        }
        if (from_order(cost) < search_.cost) {
            search_.cost = from_order(cost);
            search_.best = plan;
        }
    }

    bool stopped() { return steps_.stopped() || astray_; }

    PlanSearch& search_;
    PlanSteps& steps_;
    std::vector<Pattern> patterns_;
    std::size_t figure_ = 0;
    std::int64_t step_ = 1;  ///< what the figure of every pattern is a multiple of
    bool at_root_ = false, astray_ = false;
};

}  // namespace

bool improve_by_patterns(PlanSearch& search, PlanSteps& steps) {
    const bool few_enough = PatternProgram(search, steps).run();
    search.cancelled = steps.cancelled();
    return few_enough;
}

}  // namespace tubewright
