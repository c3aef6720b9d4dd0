#include "bench/remedy.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace tubewright {
namespace {

/// A straight, counted from end A, and how much longer it has to be.
struct Lack {
    std::size_t straight;
    Length by;
};

std::optional<Lack> lack_of(const Sheet& sheet, const NoRoomInBender& fact) {
    for (const Step& step : sheet.steps) {
        if (step.bend != fact.bend) continue;
        const End side = fact.hook_side ? step.hook : other(step.hook);
        return Lack{side == End::A ? fact.bend : fact.bend + 1, fact.needed - fact.straight};
    }
    return std::nullopt;
}
std::optional<Lack> lack_of(const Sheet&, const CornersOverlap& fact) {
    return Lack{fact.at_end == End::A ? fact.first : fact.first + 1, fact.missing};
}
std::optional<Lack> lack_of(const Sheet&, const EndTooShort& fact) {
    return Lack{fact.end == End::A ? fact.bend : fact.bend + 1, fact.needed - fact.straight};
}
template <class Other>
std::optional<Lack> lack_of(const Sheet&, const Other&) {
    return std::nullopt;
}
std::optional<Lack> lack_in(const Sheet& sheet, const Finding& finding) {
    return std::visit([&](const auto& fact) { return lack_of(sheet, fact); }, finding.fact);
}

std::size_t stops_of(const Sheet& sheet) {
    return static_cast<std::size_t>(std::count_if(sheet.findings.begin(), sheet.findings.end(), [](const Finding& finding) { return finding.severity == Severity::stop; }));
}

/// Tries changed lines.
class Trial {
public:
    Trial(const Sheet& sheet, const Shop& shop) : sheet_(sheet), shop_(shop), stops_(stops_of(sheet)) {}

    std::optional<Remedy> for_finding(const Finding& finding) const {
        if (const auto lack = lack_in(sheet_, finding)) return longer(finding, *lack);
        if (const auto* corner = std::get_if<DegenerateCorner>(&finding.fact)) return corner->angle < tolerance::no_bend ? std::optional<Remedy>(BendOut{corner->bend}) : std::nullopt;
        if (const auto* flare = std::get_if<SingleFlareOnBrake>(&finding.fact)) return double_flare(flare->end);
        if (const auto* wall = std::get_if<WallTooHeavy>(&finding.fact)) return thinner(finding, *wall);
        const bool of_bender = std::holds_alternative<AngleBeyondBender>(finding.fact) || std::holds_alternative<RadiusTooTight>(finding.fact) || std::holds_alternative<WrongGroove>(finding.fact);
        return of_bender ? other_bender(finding) : std::nullopt;
    }

private:
    /// How many stops are left; none where the finding is still there.
    std::optional<std::size_t> left_after(const Finding& finding, const Line& line) const {
        const Sheet then = bend_sheet(line);
        const bool still = std::any_of(then.findings.begin(), then.findings.end(), [&](const Finding& one) { return one.code == finding.code && one.bend == finding.bend; });
        return still ? std::nullopt : std::optional(stops_of(then));
    }
    bool mends(const Finding& finding, const Line& line) const {
        const auto left = left_after(finding, line);
        return left && *left < stops_;
    }

    std::optional<Remedy> longer(const Finding& finding, Lack lack) const {
        for (const Finding& one : sheet_.findings)
            if (const auto also = lack_in(sheet_, one); also && also->straight == lack.straight) lack.by = std::max(lack.by, also->by);
        if (lack.straight >= sheet_.line.route.runs.size()) return std::nullopt;
        // With more room another order of work may become the usual one, and want more on the same straight.
        for (int tries = 0; tries < 4; ++tries) {
            Line line = sheet_.line;
            // A hundredth of the tape's step is far less than what a straight may lack and still do (straight_slack).
            const Length by{std::ceil(lack.by.mm / shop_.step.mm - 0.01) * shop_.step.mm};
            line.route.runs[lack.straight] += by;
            if (mends(finding, line)) return LongerStraight{lack.straight, by};
            const Length still = still_lacking(line, lack.straight);
            if (still <= Length{}) return std::nullopt;
            lack.by = by + still;
        }
        return std::nullopt;
    }

    static Length still_lacking(const Line& line, std::size_t straight) {
        const Sheet then = bend_sheet(line);
        Length most;
        for (const Finding& finding : then.findings)
            if (const auto lack = lack_in(then, finding); lack && lack->straight == straight) most = std::max(most, lack->by);
        return most;
    }

    std::optional<Remedy> double_flare(End end) const {
        constexpr const char* id = "flare-45-double";
        if (std::find(shop_.fittings.begin(), shop_.fittings.end(), id) == shop_.fittings.end()) return std::nullopt;
        return OtherFitting{end, id};
    }

    std::optional<Remedy> thinner(const Finding& finding, const WallTooHeavy& fact) const {
        std::optional<Length> best;
        for (const Length wall : shop_.walls)
            if (wall <= fact.heaviest + tolerance::printed_wall && (!best || wall > *best)) best = wall;
        if (!best) return std::nullopt;
        Line line = sheet_.line;
        line.tube.wall = *best;
        return mends(finding, line) ? std::optional<Remedy>(OtherWall{*best}) : std::nullopt;
    }

    std::optional<Remedy> other_bender(const Finding& finding) const {
        std::optional<Remedy> best;
        std::size_t least = finding.severity == Severity::stop ? stops_ : stops_ + 1;
        for (std::size_t i = 0; i < shop_.benders.size(); ++i) {
            if (shop_.benders[i].id == sheet_.line.bender.id) continue;
            Line line = sheet_.line;
            line.bender = shop_.benders[i];
            const auto left = left_after(finding, line);
            if (!left || *left >= least) continue;
            least = *left;
            best = OtherBender{i, shop_.benders[i].name};
        }
        return best;
    }

    const Sheet& sheet_;
    const Shop& shop_;
    std::size_t stops_;
};

}  // namespace

std::vector<std::optional<Remedy>> remedies(const Sheet& sheet, const Shop& shop) {
    const Trial trial(sheet, shop);
    std::vector<std::optional<Remedy>> all;
    for (const Finding& finding : sheet.findings) all.push_back(trial.for_finding(finding));
    return all;
}

}  // namespace tubewright
