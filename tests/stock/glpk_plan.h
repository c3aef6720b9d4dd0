#pragma once
// The same question put to a general solver (GLPK): a whole number of times each pattern there is; one figure of the cost
// after the other is made least while those before stay at their least. For tests only.

#include <glpk.h>

#include <cmath>
#include <functional>
#include <optional>

#include "stock/cutting_plan.h"

namespace tubewright {

struct GlpkPlan {
    PlanCost cost;
    std::size_t patterns;
};

/// Nothing where there is no plan, or more patterns than `most_patterns`, or the solver takes longer than `patience_ms` for one figure.
inline std::optional<GlpkPlan> glpk_plan(const CuttingQuestion& shop, std::size_t most_patterns, int patience_ms) {
    glp_term_out(GLP_OFF);
    struct Source { std::int64_t length; int category; int count; };  // 0 offcut, 1 stick, 2 for sale
    std::vector<Source> sources;
    const auto add_source = [&](ExactLength length, int category) {
        for (Source& source : sources)
            if (source.length == length.um - shop.squared.um && source.category == category) {
                ++source.count;
                return;
            }
        sources.push_back({length.um - shop.squared.um, category, 1});
    };
    for (const LengthOnRack& rack : shop.rack) add_source(rack.length, rack.stick);
    for (const ExactLength length : shop.for_sale) add_source(length, 2);

    const std::size_t kinds = shop.wanted.size();
    struct Pattern { std::size_t source; std::vector<int> cuts; double cost[4]; };
    std::vector<Pattern> patterns;
    bool too_many = false;
    for (std::size_t source = 0; source < sources.size(); ++source) {
        std::vector<int> cuts(kinds);
        const std::function<void(std::size_t, std::int64_t, int)> choose = [&](std::size_t kind, std::int64_t sum, int number) {
            if (too_many) return;
            if (kind == kinds) {
                if (number == 0) return;
                const std::int64_t leftover = std::max<std::int64_t>(0, sources[source].length - sum - number * shop.saw.um);
                const bool kept = leftover > 0 && leftover >= shop.keep.um;
                patterns.push_back({source, cuts, {sources[source].category > 0 ? 1.0 : 0, kept ? 0 : static_cast<double>(leftover) / 1000, sources[source].category == 2 ? 1.0 : 0, kept ? 1.0 : 0}});
                too_many = patterns.size() > most_patterns;
                return;
            }
            for (int count = 0; count <= shop.wanted[kind].count; ++count) {
                const std::int64_t more = sum + count * shop.wanted[kind].length.um;
                if (more + (number + count - 1) * shop.saw.um > sources[source].length) break;
                cuts[kind] = count;
                choose(kind + 1, more, number + count);
            }
            cuts[kind] = 0;
        };
        choose(0, 0, 0);
    }
    if (too_many || patterns.empty()) return std::nullopt;

    glp_prob* problem = glp_create_prob();
    const int rows = static_cast<int>(kinds + sources.size()) + 4;
    glp_add_rows(problem, rows);
    for (std::size_t i = 0; i < kinds; ++i) glp_set_row_bnds(problem, static_cast<int>(i) + 1, GLP_FX, shop.wanted[i].count, shop.wanted[i].count);
    for (std::size_t i = 0; i < sources.size(); ++i)
        glp_set_row_bnds(problem, static_cast<int>(kinds + i) + 1, sources[i].category == 2 ? GLP_FR : GLP_UP, 0, sources[i].count);
    for (int i = 0; i < 4; ++i) glp_set_row_bnds(problem, rows - 3 + i, GLP_FR, 0, 0);
    glp_add_cols(problem, static_cast<int>(patterns.size()));
    for (std::size_t p = 0; p < patterns.size(); ++p) {
        const int column = static_cast<int>(p) + 1;
        glp_set_col_kind(problem, column, GLP_IV);
        glp_set_col_bnds(problem, column, GLP_LO, 0, 0);
        std::vector<int> places{0};
        std::vector<double> values{0};
        const auto put = [&](int row, double value) {
            if (value == 0) return;
            places.push_back(row);
            values.push_back(value);
        };
        for (std::size_t i = 0; i < kinds; ++i) put(static_cast<int>(i) + 1, patterns[p].cuts[i]);
        put(static_cast<int>(kinds + patterns[p].source) + 1, 1);
        for (int i = 0; i < 4; ++i) put(rows - 3 + i, patterns[p].cost[i]);
        glp_set_mat_col(problem, column, static_cast<int>(places.size()) - 1, places.data(), values.data());
    }
    glp_iocp how;
    glp_init_iocp(&how);
    how.presolve = GLP_ON;
    how.msg_lev = GLP_MSG_OFF;
    how.tm_lim = patience_ms;
    std::optional<GlpkPlan> answer = GlpkPlan{{}, patterns.size()};
    std::int64_t figures[4];
    for (int i = 0; i < 4 && answer; ++i) {
        for (std::size_t p = 0; p < patterns.size(); ++p) glp_set_obj_coef(problem, static_cast<int>(p) + 1, patterns[p].cost[i]);
        if (glp_intopt(problem, &how) != 0 || glp_mip_status(problem) != GLP_OPT) {
            answer.reset();
            break;
        }
        figures[i] = std::llround(glp_mip_obj_val(problem));
        glp_set_row_bnds(problem, rows - 3 + i, GLP_UP, 0, static_cast<double>(figures[i]));
    }
    glp_delete_prob(problem);
    if (answer) answer->cost = {figures[0], {figures[1] * 1000}, figures[2], figures[3]};
    return answer;
}

}  // namespace tubewright
