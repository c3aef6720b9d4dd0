#include "bench/settled_order.h"

#include <algorithm>

#include "bench/handling.h"

namespace tubewright {
namespace {

struct BlockedStep {
    std::uint64_t made;
    Placing placing;
};

std::vector<BlockedStep> blocked_steps(const Sheet& sheet, std::size_t first_step, Handling& handling) {
    std::vector<BlockedStep> blocked;
    std::uint64_t made = 0;
    for (std::size_t i = 0; i < sheet.steps.size(); ++i) {
        const Placing placing{sheet.steps[i].bend, sheet.steps[i].hook};
        if (i >= first_step && !handling.is_free(made, placing)) blocked.push_back({made, placing});
        made |= std::uint64_t{1} << placing.bend;
    }
    return blocked;
}

Handling handling_in(const Sheet& sheet, const SetUp& set_up) {
    return Handling(*sheet.layout, sheet.line.tube.od, sheet.line.bender, set_up, sheet.springback);
}

/// How the bender could stand, as on its card if that will do. What moves with the bender is in the way in any stance.
std::optional<SetUp> free_stance(const Sheet& sheet, std::size_t first_step) {
    std::vector<SetUp> others{sheet.line.bender.set_up};
    for (const HookHand hand : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down}) others.push_back({hand, swing});
    for (const SetUp& set_up : others) {
        if (set_up == sheet.set_up) continue;
        Handling handling = handling_in(sheet, set_up);
        if (blocked_steps(sheet, first_step, handling).empty()) return set_up;
    }
    return std::nullopt;
}

}  // namespace

std::vector<Finding> settled_findings(const Sheet& sheet, std::size_t first_step, bool new_measures) {
    std::vector<Finding> findings;
    if (!sheet.layout || first_step >= sheet.steps.size() || sheet.layout->part.bends.size() > most_bends_looked_at) return findings;
    Handling handling = handling_in(sheet, sheet.set_up);
    const std::vector<BlockedStep> blocked = blocked_steps(sheet, first_step, handling);
    if (blocked.empty() && new_measures) findings.push_back({Severity::note, "looked-again", std::nullopt, LookedAgain{}});
    if (blocked.empty()) return findings;
    const std::optional<SetUp> free = free_stance(sheet, first_step);
    for (const BlockedStep& step : blocked) {
        HitsAsItStands fact{step.made, step.placing, {}, "", free, new_measures};
        if (const auto obstacle = handling.obstacle(step.made, step.placing)) {
            fact.obstacle = *obstacle;
            if (obstacle->solid) fact.solid = sheet.line.bender.body[*obstacle->solid].name;
        }
        findings.push_back({free ? Severity::stop : Severity::caution, "hits-as-it-stands", step.placing.bend, fact});
    }
    return findings;
}

void add_finding(Sheet& sheet, Finding finding) {
    const auto place = std::upper_bound(sheet.findings.begin(), sheet.findings.end(), finding, [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
    sheet.findings.insert(place, std::move(finding));
}

}  // namespace tubewright
