#include "present/sheet_text.h"

#include <algorithm>
#include <vector>

#include "present/sheet_words.h"

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

std::string head(const SheetWords& words) {
    std::string all = words.line + "\n" + std::string(std::max<std::size_t>(width(words.line), 3), '=') + "\n";
    all += fact("job", words.job);
    if (!words.note.empty()) all += fact("note", words.note);
    for (const std::string& stop : words.stops) all += fact("STOP", stop);
    if (!words.cut.empty()) all += fact("CUT TO", words.cut) + fact("end A", words.end_a) + fact("end B", words.end_b);
    return all + fact("tube", words.tube) + fact("bender", words.bender);
}

using Row = std::vector<std::string>;

Row row_of(const StepWords& step) {
    return {step.step, step.bend, step.hook, step.from_a, step.from_b, step.line, step.turn, step.pull_to, step.springs, step.formed, step.left};
}

/// What stands before every line of a table that must not be worked by, so that no part of the paper, torn off
/// or looked at from two steps away, can be taken for a good one.
const std::string struck_out = "STOP |";

std::string table(const SheetWords& words, std::size_t widest) {
    const Row names{"step", "bend", "hook", "from A", "from B", "line", "turn", "pull to", "springs", "formed", "left"};
    std::vector<Row> rows;
    for (const StepWords& step : words.steps) rows.push_back(row_of(step));
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
        const StepWords& step = words.steps[i];
        all += "\n" + line(rows[i]) + wrapped_words(std::string(widths[0] + 2, ' '), step.how + " Finishes at " + step.target + ".", widest);
    }
    return all;
}

/// Of a line that can't be made the table is there to find what is wrong, not to work by.
std::string struck_out_table(const SheetWords& words) {
    const std::size_t widest = widest_line - struck_out.size() - 1;
    const std::string all = wrapped_words("", not_to_work_by(), widest) + "\n" + table(words, widest);
    std::string struck;
    for (std::size_t at = 0; at < all.size();) {
        const std::size_t end = all.find('\n', at) + 1;
        struck += struck_out + (end - at > 1 ? " " : "") + all.substr(at, end - at);
        at = end;
    }
    return struck;
}

std::string findings(const SheetWords& words) {
    std::string all;
    for (const WeightedWords& finding : words.findings) all += wrapped_words(padded(finding.weight, 9), finding.words);
    return all.empty() ? "" : "\n" + all;
}

}  // namespace

std::string sheet_text(const Job& job, const Sheet& sheet, const Checklists& lists, const Tape& tape) {
    const SheetWords words = sheet_words(job, sheet, lists, tape);
    std::string all = head(words);
    if (!words.steps.empty()) all += "\n" + (words.stopped ? struck_out_table(words) : table(words, widest_line));
    all += findings(words) + "\n";
    if (!words.explained.empty()) all += wrapped_words("", words.explained);
    for (const std::string& advice : words.advice) all += wrapped_words("- ", advice);
    for (const std::string& caution : words.cautions) all += wrapped_words("! ", caution);
    return all;
}

}  // namespace tubewright
