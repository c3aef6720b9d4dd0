#include "store/sheet_file.h"

#include <cassert>
#include <charconv>
#include <nlohmann/json.hpp>

namespace tubewright {
namespace {

using Tree = nlohmann::ordered_json;  // keys stand as the format's description shows them

/// In inches such that reading it again gives these very mm. Of those the one with fewer digits, so that
/// 0.1875 comes out as 0.1875.
double inches(Length value) {
    char digits[32];
    const auto end = std::to_chars(digits, digits + sizeof digits, value.inch(), std::chars_format::general, 15).ptr;
    double shorter = 0;
    std::from_chars(digits, end, shorter);
    return shorter * 25.4 == value.mm ? shorter : value.inch();
}

struct Writer {
    Unit unit;

    double length(Length value) const { return (unit == Unit::inch ? inches(value) : value.mm) + 0.0; }  // + 0.0: no "-0"
    static double angle(Angle value) { return value.deg + 0.0; }
    static std::string end(End which) { return std::string(1, letter(which)); }

    Tree bender(const Bender& bender, const SetUp& set_up) const {
        Tree marks = Tree::array();
        for (const ReferenceMark& mark : bender.marks) marks.push_back({{"name", mark.name}, {"offset", length(mark.offset)}});
        const char* const swings[] = {"away", "toward", "up", "down"};
        const Tree stands = {{"hook", set_up.hook == HookHand::left ? "left" : "right"}, {"swing", swings[static_cast<int>(set_up.swing)]}};
        return {{"id", bender.id}, {"name", bender.name}, {"radius", length(bender.radius)}, {"stretch", bender.stretch}, {"marks", marks}, {"set_up", stands}};
    }

    Tree step(const Sheet& sheet, const Step& step) const {
        Tree neighbour = nullptr;
        if (step.neighbour) neighbour = {{"bend", step.neighbour->bend + 1}, {"leg_deg", angle(step.neighbour->leg_roll)}};
        return {{"bend", step.bend + 1},
                {"hook_end", end(step.hook)},
                {"mark", {{"from", end(step.mark_from)}, {"distance", length(step.mark)}, {"align_to", sheet.line.bender.marks[step.align_to].name}}},
                {"rotation", {{"index_line_deg", angle(step.index_roll)}, {"neighbour", neighbour}}},
                {"angle", {{"target", angle(step.target)}, {"set", angle(step.set)}, {"springback", angle(step.set - step.target)}, {"finished_radius", length(step.finished_radius)}}},
                {"tally", {{"formed", length(step.formed)}, {"left", length(step.left)}}}};
    }

    static Tree finding(const Finding& finding, const std::string& message) {
        const char* const severities[] = {"stop", "caution", "note"};
        Tree bend = nullptr;
        if (finding.bend) bend = *finding.bend + 1;
        return {{"severity", severities[static_cast<int>(finding.severity)]}, {"code", finding.code}, {"bend", bend}, {"message", message}};
    }

    Tree sheet(const Job& job, const Sheet& sheet, const std::vector<std::string>& messages) const {
        assert(messages.size() == sheet.findings.size());
        const Line& line = sheet.line;
        Tree cut = nullptr, steps = Tree::array(), findings = Tree::array();
        if (sheet.layout) cut = length(sheet.layout->cut_length);
        for (const Step& one : sheet.steps) steps.push_back(step(sheet, one));
        for (std::size_t i = 0; i < sheet.findings.size(); ++i) findings.push_back(finding(sheet.findings[i], messages[i]));
        return {{"format", "tubewright-sheet"}, {"version", 1}, {"units", unit == Unit::inch ? "in" : "mm"}, {"job", job.name}, {"line", line.name},
                {"tube", {{"od", length(line.tube.od)}, {"wall", length(line.tube.wall)}, {"material", line.tube.material}}},
                {"bender", bender(line.bender, sheet.set_up)},
                {"cut_length", cut},
                {"waste", {{"A", length(line.a.allowance + line.a.trim)}, {"B", length(line.b.allowance + line.b.trim)}}},
                {"steps", steps}, {"findings", findings}};
    }
};

}  // namespace

std::string sheet_json(const Job& job, const Sheet& sheet, const std::vector<std::string>& messages, int indent) {
    return Writer{job.unit}.sheet(job, sheet, messages).dump(indent);
}

std::string sheets_json(const Job& job, const std::vector<Sheet>& sheets, const std::vector<std::vector<std::string>>& messages, int indent) {
    assert(messages.size() == sheets.size());
    Tree list = Tree::array();
    for (std::size_t i = 0; i < sheets.size(); ++i) list.push_back(Writer{job.unit}.sheet(job, sheets[i], messages[i]));
    return list.dump(indent);
}

}  // namespace tubewright
