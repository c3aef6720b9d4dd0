#include <algorithm>

#include "ui/bodies.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

void draw_progress(Ui& ui, const Box& box, double share, const Skin& skin) {
    const Box filled{box.min, {box.min.x + box.width() * static_cast<float>(std::clamp(share, 0.0, 1.0)), box.max.y}};
    ui.list().AddRectFilled(box.min, box.max, colour(skin.fill), ui.px(0.8));
    ui.list().AddRectFilled(filled.min, filled.max, colour(ui.palette().go), ui.px(0.8));
    ui.list().AddRect(box.min, box.max, colour(ui.palette().ink), ui.px(0.8), 0, ui.px(0.25));
}

/// What a length is cut into, to scale; a part says what it is where there is room.
void draw_parts(Ui& ui, const Box& box, const std::vector<CutPart>& parts) {
    const Palette& p = ui.palette();
    ui.list().AddRectFilled(box.min, box.max, colour(p.well), ui.px(0.8));
    for (const CutPart& part : parts) {
        const bool scrap = part.what == CutPart::What::scrap;
        const Rgb fill = part.what == CutPart::What::line ? p.panel : scrap ? p.stop_pale : p.go_pale;
        const Box at{{box.min.x + box.width() * static_cast<float>(part.from), box.min.y}, {box.min.x + box.width() * static_cast<float>(part.to), box.max.y}};
        ui.list().AddRectFilled(at.min, at.max, colour(fill));
        if (scrap)
            for (float x = at.min.x; x + at.height() < at.max.x; x += ui.px(3)) draw_rule(ui.list(), {x, at.max.y}, {x + at.height(), at.min.y}, colour(p.stop), ui.px(0.3));
        draw_rule(ui.list(), at.min, {at.min.x, at.max.y}, colour(p.ink), ui.px(0.35));
        draw_rule(ui.list(), {at.max.x, at.min.y}, at.max, colour(p.ink), ui.px(0.35));
        if (ui.width_of(part.label, TextSize::small, false) + ui.px(2) > at.width() || scrap) continue;
        Type type{TextSize::small, false, p.ink, fill, Across::middle, Down::middle};
        type.wrap = false;
        ui.text(at, part.label, type);
    }
    ui.list().AddRect(box.min, box.max, colour(p.ink), ui.px(0.8), 0, ui.px(0.3));
}

/// Room that the words on the right want: their longest word must fit.
float right_width(const Ui& ui, const std::vector<RowView>& rows, float most) {
    float width = 0;
    for (const RowView& row : rows) width = std::max(width, ui.width_of(row.right, TextSize::body, true) + 2);
    return std::min(width, most);
}

void draw_row(const Drawing& on, const Box& box, const RowView& row, float right) {
    Ui& ui = on.ui;
    const Touch touch = ui.touch(box, row.touch, ui.px(1));
    if (touch.fired && row.touch.press) on.actions.push_back(*row.touch.press);

    const bool off = !row.touch.enabled;
    Skin skin = row.tone == Tone::plain || row.tone == Tone::go ? ui.panel() : ui.pale(row.tone);
    if (off && row.tone == Tone::plain) skin.fill = ui.palette().paper;
    if (touch.down) skin.fill = mixed(skin.fill, ui.palette().now, 0.18);
    const float lip = ui.px(1.1);
    const Box face{box.min, {box.max.x, box.max.y - (off ? 0 : lip)}};
    if (off) {
        ui.plate(face, skin, 0, ui.px(2));
        draw_dashed_box(ui.list(), face.min, {face.max.x, face.max.y - 1}, colour(skin.border), ui.px(0.35), ui.px(1.6), ui.px(1.2));
    } else {
        ui.list().AddRectFilled(box.min, box.max, colour(skin.border), ui.px(2));
        ui.plate(face, skin, ui.px(row.touch.chosen ? 0.8 : 0.45), ui.px(2));
    }

    ui.begin_label();
    Box inner = face.inside(ui.px(3), ui.px(1.6));
    if (!off) {
        const Box wedge = inner.cut_right(ui.px(5));
        const ImVec2 c = wedge.centre();
        ui.list().AddTriangleFilled({c.x, c.y - ui.px(2.4)}, {c.x, c.y + ui.px(2.4)}, {c.x + ui.px(2.4), c.y}, colour(ui.palette().ink));
    }
    if (row.tone != Tone::plain) {
        const Box sign = inner.cut_left(ui.px(8));
        draw_tone_sign(ui, {sign.min.x + ui.px(3), sign.centre().y}, ui.px(6), row.tone);
    }
    if (!row.right.empty() || row.done) {
        Box aside = inner.cut_right(std::max(right, row.done ? ui.px(30) : 0.0f));
        inner.cut_right(ui.px(3));
        if (row.done) draw_progress(ui, aside.cut_bottom(ui.px(4.2)), *row.done, ui.paper());
        Type type = ui.body(skin, true);
        type.across = Across::right;
        type.down = Down::middle;
        type.off = off;
        ui.text(aside, row.right, type);
    }
    if (!row.parts.empty()) draw_parts(ui, inner.cut_bottom(std::min(ui.px(7), inner.height() * 0.4f)), row.parts);
    const std::string& second = off && !row.touch.why_not.empty() ? row.touch.why_not : row.detail;
    Type name = ui.body(skin, true), detail = ui.small(skin);
    name.off = detail.off = off;
    detail.ink = skin.soft;
    const float below = std::min(ui.height_of(second, TextSize::small, false, inner.width()), inner.height() * 0.6f);
    if (second.empty()) {
        name.down = Down::middle;
        ui.text(inner, row.touch.label, name);
    } else {
        detail.down = Down::bottom;
        ui.text(inner.cut_bottom(below), second, detail);
        name.down = Down::middle;
        ui.text(inner, row.touch.label, name);
    }
    ui.end_label();
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const ListBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    const bool roomy = box.height() > ui.px(body.notes.empty() ? 75 : 85);
    if (!body.heading.empty() && roomy) {
        Type type = ui.body(ui.paper(), true);
        type.down = Down::middle;
        ui.text(rest.cut_top(ui.px(8.2)), body.heading, type);
    }
    pager_off_right(on, rest, body.pager);
    // Rows are as high on the last page as on those before it.
    const int rows_of_page = body.pager.needed ? 3 : std::clamp(static_cast<int>(body.rows.size()), 1, 3);
    if (!body.notes.empty()) {
        const float all = ui.px(62), least = ui.px(22) * static_cast<float>(rows_of_page);  // rows keep this; notes have what is left
        float wanted = ui.px(1.6) * static_cast<float>(body.notes.size() - 1);
        for (const TextView& note : body.notes) wanted += ui.height_of(note.text, TextSize::small, false, rest.width() - ui.px(11)) + ui.px(3.8);
        const float room = body.rows.empty() ? all : std::max(ui.px(8), rest.height() - least - ui.px(2));
        draw_plates(ui, rest.cut_bottom(std::min(wanted, room)), body.notes);
        rest.cut_bottom(ui.px(2));
    }
    const int places = std::max(rows_of_page, static_cast<int>(body.rows.size()));
    const float tallest = ui.px(30), gap = ui.px(3);
    const float height = std::min(rest.height(), tallest * static_cast<float>(places) + gap * static_cast<float>(places - 1));
    const Box rows = rest.cut_top(height);
    const float right = right_width(ui, body.rows, rows.width() * 0.36f);
    for (std::size_t i = 0; i < body.rows.size(); ++i) draw_row(on, rows.row(static_cast<int>(i), places, gap), body.rows[i], right);
}

}  // namespace tubewright
