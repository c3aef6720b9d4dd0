#include "present/sheet_words.h"

#include <algorithm>
#include <cmath>

#include "present/turn.h"
#include "present/words.h"
#include "state/rules.h"

namespace tubewright {
namespace {

std::string end_words(const LineEnd& end, Length waste, const Tape& tape) {
    std::string said = end.fitting.name.empty() ? "plain" : end.fitting.name;
    said += ", " + (std::abs((on_tape(waste, tape) - waste).mm) > 0.25 ? fine(waste, tape) : text(waste, tape)) + " past the measured end";
    if (end.trim > Length{}) said += " (" + text(end.trim, tape) + " of it trimmed last)";
    return said;
}

void fill_head(const Job& job, const Sheet& sheet, const Tape& tape, SheetWords& all) {
    const Line& line = sheet.line;
    all.line = line.name;
    all.job = job.name + ", " + service_word(job.service) + "; make " + std::to_string(line.quantity);
    all.note = line.note;
    for (const Finding& finding : sheet.findings)
        if (finding.severity == Severity::stop) all.stops.push_back("Don't cut. " + sentence(finding, {tape, &line}));
    if (sheet.layout) {
        const std::string length = text(sheet.layout->cut_length, tape);
        all.cut = all.stopped ? "nothing yet: it would be " + length : length;
        all.end_a = end_words(line.a, sheet.layout->waste_a, tape);
        all.end_b = end_words(line.b, sheet.layout->waste_b, tape);
    }
    all.tube = size_text(line.tube, tape) + " " + (line.material.name.empty() ? line.tube.material : line.material.name);
    all.bender = (line.bender.name.empty() ? line.bender.id : line.bender.name) + ", bend radius (to tube centre) " + od_text(line.bender.radius, tape) + "; hook on your " +
                 hand_word(sheet.set_up.hook) + ", the lever bends it " + swing_word(sheet.set_up.swing);
}

StepWords step_words(const Sheet& sheet, std::size_t i, const Tape& tape) {
    const Step& step = sheet.steps[i];
    const Length cut = sheet.layout->cut_length, from_a = mark_from_a(step, cut);
    const Tally tally = tally_of(cut, step.formed, tape);
    StepWords words;
    words.step = std::to_string(i + 1);
    words.bend = std::to_string(step.bend + 1);
    words.hook = std::string(1, letter(step.hook)) + ", " + hand_word(sheet.set_up.hook);
    words.hook_told = capital(end_name(step.hook)) + " on the hook, on your " + hand_word(sheet.set_up.hook);
    words.from_a = text(from_a, tape);
    words.from_b = text(rest_of(cut, from_a, tape), tape);
    words.line = sheet.line.bender.marks[step.align_to].name;
    words.turn = turn_hero(sheet.set_up, step);
    words.pull_to = lever_text(step.set, tape);
    words.springs = text(on_lever(step.set) - step.target, tape);
    words.formed = text(tally.formed, tape);
    words.left = text(tally.left, tape);
    words.target = text(step.target, tape);
    words.clock = turn_clock(sheet.set_up, step);
    words.how = turn_sentence(sheet.set_up, step, tape);
    if (step.neighbour) words.how += " " + top_line_sentence(sheet.set_up, step);
    if (step.bend < sheet.line.bend_notes.size() && !sheet.line.bend_notes[step.bend].empty()) words.how += " " + sheet.line.bend_notes[step.bend];
    return words;
}

void fill_tape_checks(const Sheet& sheet, const Tape& tape, SheetWords& all) {
    if (!sheet.layout || sheet.steps.empty() || all.stopped) return;
    for (const TapeLeg& leg : tape_legs(sheet)) all.legs.push_back({leg_name(leg), text(leg.outside, tape)});
    all.across = text(straight_across(sheet), tape);
}

/// Of the material and of both ends, each sentence once.
std::vector<std::string> advice_for(const Line& line) {
    std::vector<std::string> all;
    for (const std::vector<std::string>* sentences : {&line.material.advice, &line.a.fitting.advice, &line.b.fitting.advice})
        for (const std::string& sentence : *sentences)
            if (std::find(all.begin(), all.end(), sentence) == all.end()) all.push_back(sentence);
    return all;
}

constexpr const char* explanation =
    "Turn says where the leg or the top line points once the tube is turned; degrees are counted from the way the lever bends the tube, its swing. Pull to is rounded down. Springs is how far it opens again: worked out from the tube, not measured, and good to about a third: approach from below; a bend is never bent back.";

}  // namespace

SheetWords sheet_words(const Job& job, const Sheet& sheet, const Checklists& lists, const Tape& tape) {
    SheetWords all{};
    all.stopped = stopped(sheet);
    fill_head(job, sheet, tape, all);
    for (std::size_t i = 0; i < sheet.steps.size(); ++i) all.steps.push_back(step_words(sheet, i, tape));
    for (const Finding& finding : sheet.findings)
        if (finding.severity != Severity::stop) all.findings.push_back({severity_word(finding.severity), sentence(finding, {tape, &sheet.line})});
    fill_tape_checks(sheet, tape, all);
    if (!sheet.steps.empty()) all.explained = explanation;
    all.advice = advice_for(sheet.line);
    for (const CheckItem& item : cautions_for(lists, job.service, sheet.line)) all.cautions.push_back(item.text);
    all.cautions.push_back("Follow the vehicle or machine maker's data and local law. Brake, fuel and pressure work may need a licensed person. This sheet is not a specification.");
    for (const CheckItem& item : hand_over_for(lists, job.service, sheet.line)) all.hand_over.push_back(item.text);
    return all;
}

std::string leg_name(const TapeLeg& leg) {
    const auto corner = [](const std::optional<std::size_t>& bend, const char* end) { return bend ? std::to_string(*bend + 1) : std::string(end); };
    return corner(leg.after, "A") + " to " + corner(leg.before, "B");
}

std::string not_to_work_by() { return "Not to be cut, marked or bent by: it only shows where this line goes wrong."; }

}  // namespace tubewright
