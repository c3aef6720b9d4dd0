#include "bench/digit_slips.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace tubewright {
namespace {

/// How often each, for one entry in a thousand that is looked over. Common practice, no source: tape users warn of
/// the inch first, then of the fraction; slips of the keys are spread over many wrong numbers.
constexpr double inch_weight = 3, fraction_weight = 2.5, transposed_weight = 2.5, key_weight = 1.5, lost_weight = 1, tenfold_weight = 2;

constexpr double longest_leg_inch = 120, same_mm = 0.01;

class Candidates {
public:
    explicit Candidates(Length typed, Unit unit) : typed_(typed), scale_(unit == Unit::inch ? 25.4 : 1) {}

    void add(double value, DigitSlip slip, double weight) {
        const Length length{value * scale_};
        if (value <= 0 || length.inch() > longest_leg_inch || std::abs(length.mm - typed_.mm) < same_mm || weight <= 0) return;
        const auto known = std::find_if(found_.begin(), found_.end(), [&](const MeantLength& m) { return std::abs(m.length.mm - length.mm) < same_mm; });
        if (known == found_.end()) {
            found_.push_back({length, slip, weight});
            commonest_.push_back(weight);
            return;
        }
        known->weight += weight;
        double& commonest = commonest_[static_cast<std::size_t>(known - found_.begin())];
        if (weight <= commonest) return;
        commonest = weight;
        known->slip = slip;
    }
    std::vector<MeantLength> found() && { return std::move(found_); }

private:
    Length typed_;
    double scale_;
    std::vector<MeantLength> found_;
    std::vector<double> commonest_;  ///< of the ways that lead to each
};

/// The whole number's digits changed, whatever follows them kept.
void add_digit_slips(Candidates& candidates, int whole, double rest) {
    const std::string digits = std::to_string(whole);
    for (std::size_t i = 0; i + 1 < digits.size(); ++i) {
        std::string other = digits;
        std::swap(other[i], other[i + 1]);
        candidates.add(std::stoi(other) + rest, DigitSlip::transposed, transposed_weight / static_cast<double>(digits.size() - 1));
    }
    for (std::size_t i = 0; i < digits.size(); ++i) {
        for (char key = '0'; key <= '9'; ++key) {
            if (key == '0' && i == 0 && digits.size() > 1) continue;  // no number begins so
            std::string other = digits;
            other[i] = key;
            candidates.add(std::stoi(other) + rest, DigitSlip::wrong_key, key_weight / (9 * static_cast<double>(digits.size())));
        }
        std::string shorter = digits;
        shorter.erase(i, 1);
        candidates.add((shorter.empty() ? 0 : std::stoi(shorter)) + rest, DigitSlip::lost_digit, lost_weight / 10);
    }
    if (digits.size() > 3) return;
    for (char key = '0'; key <= '9'; ++key)
        for (std::size_t i = key == '0' ? 1 : 0; i <= digits.size(); ++i) {
            std::string longer = digits;
            longer.insert(i, 1, key);
            candidates.add(std::stoi(longer) + rest, DigitSlip::lost_digit, lost_weight / (10 * static_cast<double>(digits.size() + 1)));
        }
}

}  // namespace

std::vector<MeantLength> meant_lengths(Length typed, Unit unit) {
    Candidates candidates(typed, unit);
    const double value = unit == Unit::inch ? typed.inch() : typed.mm, step = unit == Unit::inch ? 1 : 10;
    constexpr double rounding = 1e-6;  // 12 in must not count as 11 and a rest
    const double whole = std::floor(value + rounding), rest = std::max(0.0, value - whole);
    for (const double off : {-step, step}) candidates.add(value + off, DigitSlip::inch_off, inch_weight / 2);
    if (unit == Unit::inch)
        for (int eighth = 0; eighth < 8; ++eighth) {
            // Halves and quarters are mistaken for each other more often than odd eighths.
            const double weight = eighth % 2 == 0 ? 2 : 1;
            if (std::abs(rest - eighth / 8.0) > rounding) candidates.add(whole + eighth / 8.0, DigitSlip::fraction, fraction_weight * weight / 12);
        }
    candidates.add(value * 10, DigitSlip::tenfold, (unit == Unit::mm ? tenfold_weight : tenfold_weight / 10) / 2);
    candidates.add(value / 10, DigitSlip::tenfold, (unit == Unit::mm ? tenfold_weight : tenfold_weight / 10) / 2);
    if (whole < 100000) add_digit_slips(candidates, static_cast<int>(whole), rest);
    return std::move(candidates).found();
}

}  // namespace tubewright
