// A bender's card: as large a picture as the rows beside it let it be. And a tube that can be saved.

#include "ui/bodies.h"
#include "ui/piece_drawing.h"

namespace tubewright {
namespace {

constexpr double gap_mm = 3, plates_apart_mm = 2;

/// The rows are sentences here: they have most of the width and all of the height, and what else is said stands under the picture.
void draw_ways(const Drawing& on, Box box, const CardBody& body) {
    Ui& ui = on.ui;
    Box left = box.cut_left(box.width() * 0.36f);
    box.cut_left(ui.px(gap_mm));
    Type type = ui.body(ui.paper(), true);
    ui.text_off_top(box, body.figures.heading, type, ui.px(1.6));
    if (body.figures.rows.empty()) {
        draw_picture(ui, left, body.picture, on.picture);
        draw_plates(ui, box, body.figures.notes);
        return;
    }
    draw_plates(ui, left.cut_bottom(plates_height(ui, body.figures.notes, left.width(), TextSize::small)), body.figures.notes);
    left.cut_bottom(ui.px(plates_apart_mm));
    draw_picture(ui, left, body.picture, on.picture);
    ListBody rows;
    rows.rows = body.figures.rows;
    draw_body(on, box, rows);
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const CardBody& body) {
    if (body.picture.laid_over) return draw_ways(on, box, body);
    Ui& ui = on.ui;
    Box rest = box;
    Box figures = rest.cut_right(std::max(ui.px(100), rest.width() * 0.55f));
    rest.cut_right(ui.px(3));
    draw_picture(ui, rest, body.picture, on.picture);
    draw_body(on, figures, body.figures);
}

void draw_body(const Drawing& on, const Box& box, const PieceBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    Box figures = rest.cut_right(std::max(ui.px(100), rest.width() * 0.55f));
    rest.cut_right(ui.px(3));
    draw_piece(ui, rest, body.piece);
    draw_body(on, figures, body.figures);
}

}  // namespace tubewright
