#include "paper/sheet_pages.h"

#include <algorithm>

#include "paper/clock_drawing.h"
#include "paper/heads.h"
#include "present/paper_words.h"

namespace tubewright {
namespace {

constexpr Letters figure{28, true}, cut_figure{36, true}, way_letters{16.5, true}, bend_letters{22, true}, heading_letters{18, true};
constexpr double name_column_mm = 26;

PrintBlock named(const std::string& name, const std::string& words, double width, const Lettering& lettering) {
    PrintBlock block = paragraph(lettering, words, width - name_column_mm, body);
    PrintBlock whole{block.height_mm};
    put(whole, paragraph(lettering, name, name_column_mm, body_bold), {0, 0});
    put(whole, block, {name_column_mm, 0});
    return whole;
}

PrintBlock bulleted(const std::string& words, double width, const Lettering& lettering) {
    constexpr double indent_mm = 6;
    PrintBlock text = paragraph(lettering, words, width - indent_mm, body);
    PrintBlock whole{text.height_mm};
    put(whole, paragraph(lettering, "•", indent_mm, body_bold), {0, 0});
    put(whole, text, {indent_mm, 0});
    return whole;
}

void add_facts(const SheetWords& sheet, const Lettering& lettering, Flow& flow) {
    const double width = flow.width_mm();
    for (const std::string& stop : sheet.stops) flow.add(paragraph(lettering, stop, width, {16, true}, Tint::red), 2);
    if (!sheet.cut.empty()) {
        PrintBlock cut{line_mm(cut_figure)};
        const double figure_start = name_column_mm;
        const Letters letters = lettering.fitted(sheet.cut, width - figure_start, sheet.stopped ? heading_letters : cut_figure, 14);
        cut.drawn = {Lettered{{0, rise_mm(cut_figure)}, paper_says::cut_to(), body_bold}, Lettered{{figure_start, rise_mm(cut_figure)}, sheet.cut, letters}};
        flow.add(cut, 1);
        flow.add(named(paper_says::end(End::A), sheet.end_a, width, lettering));
        flow.add(named(paper_says::end(End::B), sheet.end_b, width, lettering));
    }
    flow.add(named(paper_says::tube(), sheet.tube, width, lettering));
    flow.add(named(paper_says::bender(), sheet.bender, width, lettering));
    flow.add(named(paper_says::job(), sheet.job, width, lettering));
    if (!sheet.note.empty()) flow.add(named(paper_says::note(), sheet.note, width, lettering));
    for (const WeightedWords& finding : sheet.findings) flow.add(named(paper_says::weight(finding.weight), finding.words, width, lettering), 1);
}

/// The number in a black box, the bend, which end is held, and a box to tick.
PrintBlock step_head(const StepWords& step, double width, const Lettering& lettering) {
    constexpr double tall = 10, box = 7;
    PrintBlock head{tall + 2};
    head.drawn.push_back(Stroked{{{0, 0}, {width, 0}}, 0.6});
    const double number_width = std::max(tall, lettering.width_mm(step.step, bend_letters) + 4);
    head.drawn.push_back(Filled{box_of({0, 0}, number_width, tall), Tint::black});
    head.drawn.push_back(Lettered{{(number_width - lettering.width_mm(step.step, bend_letters)) / 2, 8}, step.step, bend_letters, Tint::white});
    const std::string bend = paper_says::bend(step.bend);
    double x = number_width + 4;
    head.drawn.push_back(Lettered{{x, 8.4}, bend, bend_letters});
    x += lettering.width_mm(bend, bend_letters) + 8;
    head.drawn.push_back(Lettered{{x, 8.4}, step.hook_told, {16, true}});
    const std::string made = paper_says::made();
    head.drawn.push_back(Lettered{{width - box - 2 - lettering.width_mm(made, body), 8.4}, made, body});
    head.drawn.push_back(Stroked{box_of({width - box, 2}, box, box), 0.5, Tint::black, true});
    return head;
}

PrintBlock mark_column(const StepWords& step, double width, const Lettering& lettering) {
    PrintBlock column = paragraph(lettering, paper_says::mark_from_a(), width, body, Tint::grey);
    append(column, paragraph(lettering, step.from_a, width, lettering.fitted(step.from_a, width, figure, 14)));
    const std::string line = paper_says::on_line(step.line);
    append(column, paragraph(lettering, line, width, lettering.fitted(line, width, {16, true}, 10)), -1);
    append(column, paragraph(lettering, paper_says::from_b(step.from_b), width, body));
    return column;
}

PrintBlock turn_column(const StepWords& step, double width, const Lettering& lettering) {
    PrintBlock column = paragraph(lettering, paper_says::turn(), width - clock_width_mm, body, Tint::grey);
    append(column, paragraph(lettering, step.turn, width - clock_width_mm, way_letters));
    put(column, clock_block(step.clock, lettering), {width - clock_width_mm, 0});
    column.height_mm = std::max(column.height_mm, clock_height_mm);
    return column;
}

PrintBlock pull_column(const StepWords& step, double width, const Lettering& lettering) {
    PrintBlock column = paragraph(lettering, paper_says::pull_to(), width, body, Tint::grey);
    append(column, paragraph(lettering, step.pull_to, width, figure));
    const std::string springs = paper_says::springs_to(step.target);
    append(column, paragraph(lettering, springs, width, lettering.fitted(springs, width, {16, true}, 14)), -1);
    PrintBlock reading = paragraph(lettering, paper_says::read_off(), width, body);
    const double start = lettering.width_mm(paper_says::read_off(), body) + 2;
    reading.drawn.push_back(Stroked{{{start, rise_mm(body) + 0.8}, {std::min(width, start + 24), rise_mm(body) + 0.8}}, 0.3});
    append(column, reading, 3);
    return column;
}

PrintBlock step_block(const SheetWords& sheet, const StepWords& step, double width, const Lettering& lettering) {
    constexpr double between_columns = 4;
    const double mark = 0.27 * width, turn = 0.47 * width, pull = width - mark - turn - 2 * between_columns;
    PrintBlock block = sheet.stopped ? stop_block(lettering, width) : PrintBlock{};
    append(block, step_head(step, width, lettering));
    const PrintBlock columns[] = {mark_column(step, mark, lettering), turn_column(step, turn, lettering), pull_column(step, pull, lettering)};
    PrintBlock row;
    double x = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        put(row, columns[i], {x, 0});
        row.height_mm = std::max(row.height_mm, columns[i].height_mm);
        x += (i == 0 ? mark : turn) + between_columns;
    }
    append(block, row);
    append(block, paragraph(lettering, step.how + " " + paper_says::tally(step.formed, step.left) + ".", width, body), 1);
    return block;
}

void add_tape_checks(const SheetWords& sheet, const Lettering& lettering, Flow& flow) {
    const double width = flow.width_mm();
    PrintBlock block = paragraph(lettering, paper_says::tape_checks(), width, heading_letters);
    append(block, paragraph(lettering, paper_says::tape_checks_told(), width, body));
    const auto row = [&](const std::string& name, const std::string& length) {
        constexpr Letters letters{18, true};
        constexpr double length_column = 64, blank_column = 110;
        PrintBlock line{line_mm(letters) + 1};
        line.drawn = {Lettered{{0, rise_mm(letters)}, name, body}, Lettered{{length_column, rise_mm(letters)}, length, letters},
                      Stroked{{{blank_column, rise_mm(letters)}, {blank_column + 45, rise_mm(letters)}}, 0.3}};
        return line;
    };
    for (std::size_t i = 0; i < sheet.legs.size(); ++i) {
        const PrintBlock leg = row(sheet.legs[i].from_to, sheet.legs[i].length);
        if (i == 0) {
            append(block, leg, 1);
            flow.add(block, 5);
        } else flow.add(leg);
    }
    if (sheet.legs.empty()) flow.add(block, 5);
    flow.add(row(paper_says::straight_across(), sheet.across));
}

/// The heading stays with its first sentence.
void add_list(const std::string& heading, const std::vector<std::string>& sentences, const Lettering& lettering, Flow& flow) {
    for (std::size_t i = 0; i < sentences.size(); ++i) {
        const PrintBlock sentence = bulleted(sentences[i], flow.width_mm(), lettering);
        if (i > 0) {
            flow.add(sentence);
            continue;
        }
        PrintBlock first = paragraph(lettering, heading, flow.width_mm(), heading_letters);
        append(first, sentence);
        flow.add(first, 5);
    }
}

}  // namespace

std::vector<PrintedPage> sheet_pages(const SheetWords& sheet, PageSize size, const Lettering& lettering) {
    const double width = extent_of(size, false).width_mm - 2 * margin_mm;
    Flow flow(size, false, paper_says::sheet_title(sheet.line, sheet.job), title_block(lettering, sheet.line, sheet.stopped, width));
    add_facts(sheet, lettering, flow);
    for (const StepWords& step : sheet.steps) flow.add(step_block(sheet, step, width, lettering), 5);
    if (!sheet.across.empty()) add_tape_checks(sheet, lettering, flow);
    if (!sheet.explained.empty()) flow.add(paragraph(lettering, sheet.explained + " " + paper_says::clock_told(), width, body), 5);
    add_list(paper_says::advice(), sheet.advice, lettering, flow);
    add_list(paper_says::cautions(), sheet.cautions, lettering, flow);
    add_list(paper_says::hand_over(), sheet.hand_over, lettering, flow);
    return std::move(flow).pages();
}

}  // namespace tubewright
