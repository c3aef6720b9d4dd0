#include "present/sheet_text.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "present/turn.h"
#include "present/words.h"
#include "state/rules.h"

namespace tubewright {
namespace {

constexpr std::size_t widest_line = 100;

/// Places on the screen, not bytes: a degree sign takes two bytes and one place.
std::size_t width(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

std::string padded(const std::string& text, std::size_t places) {
    return text + std::string(places > width(text) ? places - width(text) : 0, ' ');
}

/// Words broken over lines, the second and later ones indented as far as the first begins.
std::string wrapped_words(const std::string& start, const std::string& text, std::size_t widest = widest_line) {
    std::string all, line = start;
    bool empty = true;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string word = text.substr(at, end - at);
        if (!empty && width(line) + 1 + width(word) > widest) {
            all += line + "\n";
            line = std::string(width(start), ' ');
            empty = true;
        }
        line += (empty ? "" : " ") + word;
        empty = false;
        at = end + 1;
    }
    return all + line + "\n";
}

std::string fact(const std::string& name, const std::string& value) { return wrapped_words(padded(name, 9), value); }

std::string end_words(const LineEnd& end, Length waste, const Tape& tape) {
    std::string said = end.fitting.name.empty() ? "plain" : end.fitting.name;
    said += ", " + (std::abs((on_tape(waste, tape) - waste).mm) > 0.25 ? fine(waste, tape) : text(waste, tape)) + " past the measured end";
    if (end.trim > Length{}) said += " (" + text(end.trim, tape) + " of it trimmed last)";
    return said;
}

std::string head(const Job& job, const Sheet& sheet, const Tape& tape) {
    const Line& line = sheet.line;
    std::string all = line.name + "\n" + std::string(std::max<std::size_t>(width(line.name), 3), '=') + "\n";
    all += fact("job", job.name + ", " + service_word(job.service) + "; make " + std::to_string(line.quantity));
    if (!line.note.empty()) all += fact("note", line.note);
    for (const Finding& finding : sheet.findings)
        if (finding.severity == Severity::stop) all += fact("STOP", "Don't cut. " + sentence(finding, {tape, &line}));
    if (sheet.layout) {
        const std::string length = text(sheet.layout->cut_length, tape);
        all += fact("CUT TO", stopped(sheet) ? "nothing yet: it would be " + length : length);
        all += fact("end A", end_words(line.a, sheet.layout->waste_a, tape)) + fact("end B", end_words(line.b, sheet.layout->waste_b, tape));
    }
    all += fact("tube", size_text(line.tube, tape) + " " + (line.material.name.empty() ? line.tube.material : line.material.name));
    all += fact("bender", (line.bender.name.empty() ? line.bender.id : line.bender.name) + ", bend radius (to tube centre) " + od_text(line.bender.radius, tape) + "; hook on your " +
                              hand_word(sheet.set_up.hook) + ", the lever bends it " + swing_word(sheet.set_up.swing));
    return all;
}

using Row = std::vector<std::string>;

Row row_of(const Sheet& sheet, std::size_t i, const Tape& tape) {
    const Step& step = sheet.steps[i];
    const Length cut = sheet.layout->cut_length, from_a = mark_from_a(step, cut);
    const Tally tally = tally_of(cut, step.formed, tape);
    return {std::to_string(i + 1), std::to_string(step.bend + 1), std::string(1, letter(step.hook)) + ", " + hand_word(sheet.set_up.hook), text(from_a, tape), text(rest_of(cut, from_a, tape), tape),
            sheet.line.bender.marks[step.align_to].name, turn_hero(sheet.set_up, step), lever_text(step.set, tape), text(on_lever(step.set) - step.target, tape), text(tally.formed, tape), text(tally.left, tape)};
}

/// What stands before every line of a table that must not be worked by, so that no part of the paper, torn off
/// or looked at from two steps away, can be taken for a good one.
const std::string struck_out = "STOP |";

std::string table(const Sheet& sheet, const Tape& tape, std::size_t widest) {
    const Row names{"step", "bend", "hook", "from A", "from B", "line", "turn", "pull to", "springs", "formed", "left"};
    std::vector<Row> rows;
    for (std::size_t i = 0; i < sheet.steps.size(); ++i) rows.push_back(row_of(sheet, i, tape));
    std::vector<std::size_t> widths;
    for (const std::string& name : names) widths.push_back(width(name));
    for (const Row& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], width(row[i]));
    const auto line = [&](const Row& row) {
        std::string all;
        for (std::size_t i = 0; i < row.size(); ++i) all += padded(row[i], widths[i] + 2);
        while (!all.empty() && all.back() == ' ') all.pop_back();
        return all + "\n";
    };
    std::string all = line(names);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Step& step = sheet.steps[i];
        std::string how = turn_sentence(sheet.set_up, step, tape);
        if (step.neighbour) how += " " + top_line_sentence(sheet.set_up, step);
        if (step.bend < sheet.line.bend_notes.size() && !sheet.line.bend_notes[step.bend].empty()) how += " " + sheet.line.bend_notes[step.bend];
        all += "\n" + line(rows[i]) + wrapped_words(std::string(widths[0] + 2, ' '), how + " Finishes at " + text(step.target, tape) + ".", widest);
    }
    return all;
}

/// Of a line that can't be made the table is there to find what is wrong, not to work by.
std::string struck_out_table(const Sheet& sheet, const Tape& tape) {
    const std::size_t widest = widest_line - struck_out.size() - 1;
    const std::string all = wrapped_words("", "Not to be cut, marked or bent by: it only shows where this line goes wrong.", widest) + "\n" + table(sheet, tape, widest);
    std::string struck;
    for (std::size_t at = 0; at < all.size();) {
        const std::size_t end = all.find('\n', at) + 1;
        struck += struck_out + (end - at > 1 ? " " : "") + all.substr(at, end - at);
        at = end;
    }
    return struck;
}

std::string findings(const Sheet& sheet, const Tape& tape) {
    std::string all;
    for (const Finding& finding : sheet.findings)
        if (finding.severity != Severity::stop) all += wrapped_words(padded(severity_word(finding.severity), 9), sentence(finding, {tape, &sheet.line}));
    return all.empty() ? "" : "\n" + all;
}

/// Of the material and of both ends, each sentence once.
std::vector<std::string> advice_for(const Line& line) {
    std::vector<std::string> all;
    for (const std::vector<std::string>* sentences : {&line.material.advice, &line.a.fitting.advice, &line.b.fitting.advice})
        for (const std::string& sentence : *sentences)
            if (std::find(all.begin(), all.end(), sentence) == all.end()) all.push_back(sentence);
    return all;
}

}  // namespace

std::string sheet_text(const Job& job, const Sheet& sheet, const Checklists& lists, const Tape& tape) {
    std::string all = head(job, sheet, tape);
    if (!sheet.steps.empty()) all += "\n" + (stopped(sheet) ? struck_out_table(sheet, tape) : table(sheet, tape, widest_line));
    all += findings(sheet, tape);
    all += "\n";
    if (!sheet.steps.empty())
        all += wrapped_words("", "Turn says where the leg or the top line points once the tube is turned; degrees are counted from the way the lever bends the tube, its swing. Pull to is rounded down. Springs is how far it opens again: worked out from the tube, not measured, and good to about a third: approach from below; a bend is never bent back.");
    for (const std::string& advice : advice_for(sheet.line)) all += wrapped_words("- ", advice);
    for (const CheckItem& item : cautions_for(lists, job.service, sheet.line)) all += wrapped_words("! ", item.text);
    all += wrapped_words("! ", "Follow the vehicle or machine maker's data and local law. Brake, fuel and pressure work may need a licensed person. This sheet is not a specification.");
    return all;
}

}  // namespace tubewright
