// A bender's card: as large a picture as the rows beside it let it be.

#include "ui/bodies.h"
#include "ui/piece_drawing.h"

namespace tubewright {

void draw_body(const Drawing& on, const Box& box, const CardBody& body) {
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
