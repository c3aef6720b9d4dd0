#include "bench/rescue_subsets.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace tubewright {
namespace {

using Eigen::Index;
using Few = std::array<double, most_together>;

/// Normal equations of all numbers at once; a set's are a part of them.
class Screen {
public:
    explicit Screen(const Slopes& slopes) : slopes_(slopes), gram_(slopes.at.transpose() * slopes.at), pull_(-slopes.at.transpose() * slopes.off), square_(slopes.off.squaredNorm()) {
        constexpr double ridge = 1e-6;  // so that two numbers that do the same can be solved for
        gram_.diagonal() *= 1 + ridge;
        gram_.diagonal().array() += ridge;
    }

    /// What the set leaves, and what it changes.
    std::pair<double, double> tried(const std::size_t* set, std::size_t count) const {
        Few x{};
        std::array<bool, most_together> held{};
        for (std::size_t round = 0; round <= count; ++round) {
            solve(set, count, held, x);
            bool again = false;
            for (std::size_t i = 0; i < count; ++i) {
                const double inside = std::clamp(x[i], slopes_.low[at(set[i])], slopes_.high[at(set[i])]);
                if (held[i] || inside == x[i]) continue;
                x[i] = inside, held[i] = again = true;
            }
            if (!again) break;
        }
        double left = square_, changes = 0;
        for (std::size_t i = 0; i < count; ++i) {
            left -= 2 * pull_[at(set[i])] * x[i];
            for (std::size_t k = 0; k < count; ++k) left += x[i] * gram_(at(set[i]), at(set[k])) * x[k];
            changes += std::abs(x[i]);
        }
        return {left, changes};
    }

private:
    static Index at(std::size_t i) { return static_cast<Index>(i); }

    /// Gaussian elimination; positive definite, so that no pivot has to be looked for.
    void solve(const std::size_t* set, std::size_t count, const std::array<bool, most_together>& held, Few& x) const {
        std::array<Few, most_together> m{};
        Few to{};
        for (std::size_t i = 0; i < count; ++i) {
            to[i] = held[i] ? x[i] : pull_[at(set[i])];
            for (std::size_t k = 0; k < count; ++k) {
                m[i][k] = held[i] || held[k] ? (i == k ? 1.0 : 0.0) : gram_(at(set[i]), at(set[k]));
                if (!held[i] && held[k]) to[i] -= gram_(at(set[i]), at(set[k])) * x[k];
            }
        }
        for (std::size_t i = 0; i < count; ++i)
            for (std::size_t below = i + 1; below < count; ++below) {
                const double factor = m[below][i] / m[i][i];
                for (std::size_t k = i; k < count; ++k) m[below][k] -= factor * m[i][k];
                to[below] -= factor * to[i];
            }
        for (std::size_t i = count; i-- > 0;) {
            for (std::size_t k = i + 1; k < count; ++k) to[i] -= m[i][k] * x[k];
            x[i] = to[i] / m[i][i];
        }
    }

    const Slopes& slopes_;
    Eigen::MatrixXd gram_;
    Eigen::VectorXd pull_;
    double square_;
};

struct Ranked {
    double rank;
    std::array<std::size_t, most_together> set;
    bool operator<(const Ranked& other) const { return rank < other.rank; }
};

}  // namespace

std::vector<std::vector<std::size_t>> likely_sets(const Slopes& slopes, std::size_t count, double allowed, std::size_t most) {
    assert(count >= 1 && count <= most_together);
    const auto all = static_cast<std::size_t>(slopes.at.cols());
    std::vector<std::vector<std::size_t>> sets;
    if (count > all) return sets;
    const Screen screen(slopes);
    std::vector<Ranked> best;
    Ranked one{0, {0, 1, 2, 3}};
    for (bool more = true; more;) {
        const auto [left, changes] = screen.tried(one.set.data(), count);
        constexpr double behind = 1e6;
        one.rank = left <= allowed ? changes : behind + left;
        const bool hopeless = left > 4 * allowed + slopes.off.squaredNorm() / 20;
        if (!hopeless && (best.size() < most || one < best.front())) {
            if (best.size() == most) std::pop_heap(best.begin(), best.end()), best.pop_back();
            best.push_back(one);
            std::push_heap(best.begin(), best.end());
        }
        more = false;
        for (std::size_t i = count; i-- > 0 && !more;)
            if (one.set[i] + (count - i) < all) {
                ++one.set[i];
                for (std::size_t k = i + 1; k < count; ++k) one.set[k] = one.set[k - 1] + 1;
                more = true;
            }
    }
    std::sort_heap(best.begin(), best.end());
    for (const Ranked& ranked : best) sets.emplace_back(ranked.set.begin(), ranked.set.begin() + static_cast<std::ptrdiff_t>(count));
    return sets;
}

}  // namespace tubewright
