#include "paper/gauge_pages.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "paper/gauge_shape.h"
#include "paper/heads.h"

namespace tubewright {
namespace {

constexpr Length wanted_leg{50};
constexpr Letters caption_letters{16, true}, pulled_letters{11};
constexpr double caption_mm = 8, between_mm = 8;
/// Around the words on a card: to its edges, and to the thin line's own words.
constexpr Length words_room{6.5};

struct Row {
    std::string text;
    Letters letters;
};

/// The words on a card, the first row that large.
std::vector<Row> card_rows(const GaugesView& gauges, const AngleGauge& gauge, double pt, bool with_line, const Lettering& lettering) {
    constexpr double widest_mm = 34;
    std::vector<Row> rows;
    if (gauges.stopped) rows.push_back({paper_says::stop_alone(), {pt, true}});
    rows.push_back({gauge.angle, {pt, true}});
    for (const std::string& line : lettering.lines(gauge.bends, widest_mm, {0.7 * pt})) rows.push_back({line, {0.7 * pt}});
    if (with_line) rows.push_back({gauges.line, {0.6 * pt}});
    return rows;
}

struct RowsSize {
    double width_mm, height_mm;
};

RowsSize size_of(const std::vector<Row>& rows, const Lettering& lettering) {
    RowsSize size{0, 0};
    for (const Row& row : rows) {
        size.width_mm = std::max(size.width_mm, lettering.width_mm(row.text, row.letters));
        size.height_mm += line_mm(row.letters);
    }
    return size;
}

/// The card, and what of it the thin line's words leave free.
struct CardRoom {
    std::vector<Spot> card, clear;

    bool holds(Spot spot) const { return is_inside(card, spot) && is_inside(clear, spot); }
};

/// The middle of a box of this size that the card has room for, as near to the card's own middle as can be.
std::optional<Spot> middle_for(const CardRoom& room, RowsSize size) {
    const std::vector<Spot>& card = room.card;
    const Bounds bounds = bounds_of(card);
    Spot middle{0, 0};
    for (const Spot& spot : card) middle = {middle.x_mm + spot.x_mm / static_cast<double>(card.size()), middle.y_mm + spot.y_mm / static_cast<double>(card.size())};
    std::optional<Spot> best;
    double least = 0;
    constexpr double step_mm = 1.5;
    for (double x = bounds.least.x_mm; x < bounds.most.x_mm; x += step_mm)
        for (double y = bounds.least.y_mm; y < bounds.most.y_mm; y += step_mm) {
            const std::vector<Spot> box = box_of({x - size.width_mm / 2, y - size.height_mm / 2}, size.width_mm, size.height_mm);
            if (!std::all_of(box.begin(), box.end(), [&](Spot corner) { return room.holds(corner); })) continue;
            const double far = std::hypot(x - middle.x_mm, y - middle.y_mm);
            if (!best || far < least) {
                best = Spot{x, y};
                least = far;
            }
        }
    return best;
}

void draw_card_words(const GaugesView& gauges, const AngleGauge& gauge, const CardRoom& card, const Lettering& lettering, PrintBlock& block) {
    for (const bool with_line : {true, false})
        for (double pt = 22; pt >= (with_line ? 15 : 8); --pt) {
            const std::vector<Row> rows = card_rows(gauges, gauge, pt, with_line, lettering);
            const RowsSize size = size_of(rows, lettering);
            const std::optional<Spot> middle = middle_for(card, size);
            if (!middle) continue;
            double y = middle->y_mm - size.height_mm / 2;
            for (const Row& row : rows) {
                const bool stop = gauges.stopped && &row == &rows.front();
                block.drawn.push_back(Lettered{{middle->x_mm - lettering.width_mm(row.text, row.letters) / 2, y + rise_mm(row.letters)}, row.text, row.letters, stop ? Tint::red : Tint::black});
                y += line_mm(row.letters);
            }
            return;
        }
}

/// Along the inner side of the leg that ends `path`, never upside down.
void draw_leg_words(const std::string& words, const std::vector<Spot>& path, Angle angle, Length leg, const Lettering& lettering, PrintBlock& block) {
    const Spot end = path.back();
    const double away = 1.2, tall = 0.73 * mm_of_pt(pulled_letters.pt), width = lettering.width_mm(words, pulled_letters);
    const Spot along{std::cos(angle.rad()), -std::sin(angle.rad())}, inward{-std::sin(angle.rad()), -std::cos(angle.rad())};
    const bool upside_down = along.x_mm < -1e-6;
    const double middle = std::max(leg.mm / 2, width / 2 + 1), back = middle + (upside_down ? -width / 2 : width / 2), in = upside_down ? away + tall : away;
    const Spot start{end.x_mm - back * along.x_mm + in * inward.x_mm, end.y_mm - back * along.y_mm + in * inward.y_mm};
    block.drawn.push_back(Lettered{start, words, pulled_letters, Tint::black, angle.deg + (upside_down ? 180 : 0)});
}

std::vector<Spot> tube_outline(const FlatBend& bend, Length od) {
    std::vector<Spot> outline = path_of(bend, od / 2);
    const std::vector<Spot> outside = path_of(bend, -od / 2);
    outline.insert(outline.end(), outside.rbegin(), outside.rend());
    return outline;
}

struct GaugeDrawing {
    PrintBlock block;
    double width_mm;
};

GaugeDrawing gauge_shape(const GaugesView& gauges, const AngleGauge& gauge, Length leg, const Lettering& lettering) {
    const Length half = gauges.od / 2;
    const FlatBend finished{gauges.finished_radius, gauge.target, legs_for(gauges.finished_radius, gauge.target, gauges.od, leg)};
    const FlatBend pulled{gauges.form_radius, gauge.pulled, finished.leg};
    const std::vector<Spot> outline = tube_outline(finished, gauges.od), card = card_of(finished, half), thin = path_from_start(pulled, half);
    PrintBlock drawing;
    drawing.drawn.push_back(Filled{outline, Tint::pale});
    drawing.drawn.push_back(Stroked{path_of(finished, {}), 0.15, Tint::grey, false, {6, 1.5, 1, 1.5}});
    drawing.drawn.push_back(Stroked{outline, 0.2, Tint::grey, true});
    drawing.drawn.push_back(Stroked{thin, 0.2});
    drawing.drawn.push_back(Stroked{card, 0.5, Tint::black, true});
    draw_leg_words(gauge.pulled_told, thin, gauge.pulled, pulled.leg, lettering, drawing);
    draw_card_words(gauges, gauge, {card, card_of(pulled, half + words_room)}, lettering, drawing);
    std::vector<Spot> all = outline;
    all.insert(all.end(), card.begin(), card.end());
    all.insert(all.end(), thin.begin(), thin.end());
    const Bounds bounds = bounds_of(all);
    GaugeDrawing shape{{}, bounds.most.x_mm - bounds.least.x_mm};
    const std::string caption = gauge.angle + ": " + gauge.bends;
    const Letters letters = lettering.fitted(caption, std::max(shape.width_mm, 60.0), caption_letters, 11);
    shape.width_mm = std::max(shape.width_mm, lettering.width_mm(caption, letters));
    shape.block = {caption_mm + bounds.most.y_mm - bounds.least.y_mm, {Lettered{{0, rise_mm(letters)}, caption, letters}}};
    put(shape.block, drawing, {-bounds.least.x_mm, caption_mm - bounds.least.y_mm});
    return shape;
}

/// With legs as long as the paper lets them be; none where even the arc is too large.
std::optional<GaugeDrawing> shape_that_fits(const GaugesView& gauges, const AngleGauge& gauge, const Flow& flow, double room_mm, const Lettering& lettering) {
    for (Length leg = wanted_leg; leg >= Length{20}; leg -= Length{5}) {
        GaugeDrawing shape = gauge_shape(gauges, gauge, leg, lettering);
        if (shape.width_mm <= flow.width_mm() && shape.block.height_mm <= room_mm) return shape;
    }
    return std::nullopt;
}

}  // namespace

std::vector<PrintedPage> gauge_pages(const GaugesView& gauges, PageSize size, const Lettering& lettering) {
    const std::string title = paper_says::gauges_title(gauges.line);
    const double width = extent_of(size, false).width_mm - 2 * margin_mm;
    Flow flow(size, false, title, title_block(lettering, title, gauges.stopped, width), check_bar_block(lettering, gauges.unit, width));
    flow.add(paragraph(lettering, gauges.told, width, body));
    PrintBlock row;
    double row_width = 0;
    const auto end_row = [&] {
        if (row_width > 0) flow.add(row, between_mm);
        row = {};
        row_width = 0;
    };
    for (const AngleGauge& gauge : gauges.gauges) {
        const std::optional<GaugeDrawing> shape = shape_that_fits(gauges, gauge, flow, flow.room_mm(), lettering);
        if (!shape) {
            end_row();
            flow.add(paragraph(lettering, paper_says::gauge_too_large(gauge), width, body), between_mm);
            continue;
        }
        if (row_width > 0 && row_width + between_mm + shape->width_mm > width) end_row();
        const double x = row_width > 0 ? row_width + between_mm : 0;
        put(row, shape->block, {x, 0});
        row_width = x + shape->width_mm;
        row.height_mm = std::max(row.height_mm, shape->block.height_mm);
    }
    end_row();
    return std::move(flow).pages();
}

}  // namespace tubewright
