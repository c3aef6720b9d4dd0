#include "paper/strip_pages.h"

#include <algorithm>

#include "paper/heads.h"
#include "paper/strip_plan.h"

namespace tubewright {
namespace {

constexpr Letters first_letters{16, true}, piece_letters{12}, join_letters{12};
// Heights on a piece, from the edge that lies along the tube.
constexpr double tick_mm = 10, label_mm = 16, label_rows_mm = 16.5, piece_words_mm = 44, piece_mm = 47;
constexpr double tab_mm = 12, inset_mm = 2, join_words_mm = 8;

StripRoom room_on(PageSize size, Unit unit) {
    const double paper = extent_of(size, true).width_mm - 2 * margin_mm;
    return {Length{paper}, Length{tab_mm}, Length{inset_mm}, Length{join_words_mm}, Length{3}, unit == Unit::inch ? Length{25.4 / 4} : Length{5}};
}

Letters letters_of_row(std::size_t row) { return row == 0 ? first_letters : body; }

double label_width(const StripMark& mark, const Lettering& lettering) {
    double widest = 0;
    for (std::size_t row = 0; row < mark.label.size(); ++row) widest = std::max(widest, lettering.width_mm(mark.label[row], letters_of_row(row)));
    return widest;
}

void draw_tick(const StripMark& mark, double x, double foot, PrintBlock& piece) {
    const bool end = mark.kind == StripMark::Kind::end_a || mark.kind == StripMark::Kind::end_b;
    Stroked tick{{{x, 0}, {x, end ? foot : tick_mm}}, end ? 0.8 : 0.5};
    if (mark.kind == StripMark::Kind::trim) tick.dashes_mm = {2, 1};
    piece.drawn.push_back(tick);
}

void draw_label(const StripMark& mark, double x, double start, const Lettering& lettering, PrintBlock& piece) {
    const double width = label_width(mark, lettering), middle = start + width / 2;
    piece.drawn.push_back(Stroked{{{x, tick_mm}, {middle, label_mm}}, 0.25, Tint::grey});
    double y = label_rows_mm;
    for (std::size_t row = 0; row < mark.label.size(); ++row) {
        const Letters letters = letters_of_row(row);
        piece.drawn.push_back(Lettered{{middle - lettering.width_mm(mark.label[row], letters) / 2, y + rise_mm(letters)}, mark.label[row], letters});
        y += line_mm(letters);
    }
}

/// Words that run up along a join; `x` is their base line.
void draw_join_words(const std::string& words, double x, const Lettering& lettering, PrintBlock& piece) {
    const double y = (piece_mm + lettering.width_mm(words, join_letters)) / 2;
    piece.drawn.push_back(Lettered{{x, y}, words, join_letters, Tint::black, 90});
}

/// Beyond the join at `x`: what the next piece is laid on.
void draw_tab(std::size_t join, double x, const Lettering& lettering, PrintBlock& piece) {
    piece.drawn.push_back(Filled{box_of({x, 0}, tab_mm, piece_mm), Tint::pale});
    piece.drawn.push_back(Stroked{{{x, 0}, {x + tab_mm, 0}, {x + tab_mm, piece_mm}, {x, piece_mm}}, 0.25, Tint::grey});
    piece.drawn.push_back(Stroked{{{x, 0}, {x, piece_mm}}, 0.5});
    draw_join_words(paper_says::join(join), x + 5.2, lettering, piece);
    draw_join_words(paper_says::next_piece_lies_here(), x + 10.2, lettering, piece);
}

/// The first that has room in letters hardly smaller than they should be, or the last.
std::string words_that_fit(const std::vector<std::string>& choices, double room, const Lettering& lettering) {
    for (const std::string& words : choices)
        if (lettering.width_mm(words, {10}) <= room) return words;
    return choices.back();
}

PrintBlock piece_block(const StripView& strip, const std::vector<StripPiece>& pieces, std::size_t number, const Lettering& lettering) {
    const StripPiece& plan = pieces[number];
    PrintBlock piece{piece_mm};
    const double length = (plan.to - plan.from).mm;
    const bool last = number + 1 == pieces.size();
    double paper_end = length;
    if (last)
        for (std::size_t i = 0; i < plan.spots.size(); ++i) paper_end = std::max(paper_end, plan.label_starts[i].mm + label_width(strip.marks[plan.spots[i]], lettering) + inset_mm);
    if (!last) draw_tab(number + 1, length, lettering, piece);
    piece.drawn.push_back(Stroked{box_of({0, 0}, paper_end, piece_mm), 0.25, Tint::black, true});
    if (number > 0) {
        piece.drawn.push_back(Stroked{{{0, 0}, {0, piece_mm}}, 0.5});
        draw_join_words(paper_says::join(number), 5.2, lettering, piece);
    }
    for (std::size_t i = 0; i < plan.spots.size(); ++i) {
        const StripMark& mark = strip.marks[plan.spots[i]];
        const double x = (mark.at - plan.from).mm;
        draw_tick(mark, x, piece_mm, piece);
        draw_label(mark, x, plan.label_starts[i].mm, lettering, piece);
    }
    const double words_start = number > 0 ? join_words_mm : inset_mm;
    const std::string words = words_that_fit(paper_says::piece(strip.line, number + 1, pieces.size()), paper_end - words_start - inset_mm, lettering);
    piece.drawn.push_back(Lettered{{words_start, piece_words_mm}, words, lettering.fitted(words, paper_end - words_start - inset_mm, piece_letters, 5)});
    if (strip.stopped) append(piece, stop_block(lettering, paper_end), 0);
    return piece;
}

}  // namespace

std::vector<PrintedPage> strip_pages(const StripView& strip, PageSize size, const Lettering& lettering) {
    const std::string title = paper_says::strip_title(strip.line);
    const double width = extent_of(size, true).width_mm - 2 * margin_mm;
    Flow flow(size, true, title, title_block(lettering, title, strip.stopped, width), check_bar_block(lettering, strip.unit, width));
    std::vector<LabelledSpot> spots;
    for (const StripMark& mark : strip.marks) spots.push_back({mark.at, Length{label_width(mark, lettering)}});
    const std::vector<StripPiece> pieces = spots.empty() ? std::vector<StripPiece>{} : strip_pieces(strip.cut, spots, room_on(size, strip.unit));
    PrintBlock told = paragraph(lettering, strip.told, width, body);
    if (pieces.size() > 1) append(told, paragraph(lettering, strip.joined_told, width, body), 1);
    flow.add(told);
    for (std::size_t i = 0; i < pieces.size(); ++i) flow.add(piece_block(strip, pieces, i, lettering), 5);
    return std::move(flow).pages();
}

}  // namespace tubewright
