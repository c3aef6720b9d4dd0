#include "bench/line_question.h"

#include <algorithm>
#include <memory>

#include "bench/fitting.h"

namespace tubewright {
namespace {

/// Stops that another order may do away with.
bool depends_on_order(const Finding& finding) { return finding.code == "short-straight" || finding.code == "mark-off-straight" || finding.code == "no-order" || finding.code == "hits-as-it-stands"; }

}  // namespace

bool stopped_in_any_order(const Sheet& sheet) {
    return std::any_of(sheet.findings.begin(), sheet.findings.end(), [](const Finding& f) { return f.severity == Severity::stop && !depends_on_order(f); });
}

bool has_question(const Sheet& sheet) { return sheet.layout && !sheet.steps.empty() && sheet.layout->part.bends.size() <= 64 && !stopped_in_any_order(sheet); }

OrderQuestion question_of(const Sheet& sheet, const OrderWish& wish) {
    OrderQuestion question{*sheet.layout, sheet.line.bender, sheet.springback, sheet.set_up, {}, sheet.hand, wish};
    question.pieces_a = stack_length(sheet.line.a.fitting);
    question.pieces_b = stack_length(sheet.line.b.fitting);
    return question;
}

Handling handling_of(const OrderQuestion& question, Length od) { return Handling(question.layout, od, question.bender, question.set_up, question.springback); }

CanBend geometry_of(const OrderQuestion& question, Length od) {
    auto handling = std::make_shared<Handling>(handling_of(question, od));
    return [handling](std::uint64_t made, const Placing& placing) { return handling->is_free(made, placing); };
}

}  // namespace tubewright
