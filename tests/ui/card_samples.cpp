// A bender's card: its numbers beside its picture, and one of them on the keypad.

#include "ui/samples.h"

namespace tubewright {
namespace {

/// As long as a card's file lets it be.
const std::string long_name = "Counterweight with adjusting screw, upper left, handle's end";

PictureView picture() {
    PictureView view{PictureView::Kind::card, 0, long_name + ", lever at 90°", {{Anchor::gauge_1, "along −1016.05 mm"}, {Anchor::gauge_2, "swing −1016.05 mm"}, {Anchor::gauge_3, "across −1016.05 mm"}}, std::nullopt, std::nullopt};
    view.legend = {{Swatch::stands, "stands still"}, {Swatch::swings, "goes with the lever"}, {Swatch::on_bench, "on the bench"}, {Swatch::picked, "this one"}};
    return view;
}

ScreenView card(bool changed) {
    CardBody body;
    RowView radius, handle, mark;
    radius.touch = button("figure-radius", "radius of the form", PickFigure{"radius"});
    radius.right = "1016.05 mm";
    mark.touch = button("figure-mark-0", "line 50% ##2", PickFigure{"mark-0"});
    mark.right = "−914.40 mm";
    mark.detail = "far corner, + is toward you";
    handle.touch = button("solid-5", long_name, PickSolid{5});
    handle.detail = "half-space, goes with the lever";
    body.figures.rows = {radius, mark, handle};
    const std::string stock = "Measure your own bender; the shipped figures are of a bender of our own.";
    body.figures.notes = {{changed ? "The card is kept. This job file carries a card of its own, which still counts for it." : stock, Tone::caution}};
    body.figures.pager = {button("earlier", "Page before", TurnPage{-1}), button("later", "Page after", TurnPage{1}), "2 of 6", true};
    body.picture = picture();
    ScreenView view;
    view.key = "card";
    view.header = {"Axle crossover", "bender's measures", {"3/16 stainless", "on stick 201 3/4 in"}};
    view.body = body;
    ButtonView undo = button("undo", "Undo", Undo{}), keep = button("keep", "Keep as my own card", KeepCard{}, Weight::main);
    undo.enabled = keep.enabled = changed;
    undo.why_not = changed ? "" : "nothing to undo";
    keep.why_not = changed ? "" : "nothing has been changed";
    view.footer.buttons = {undo, button("back", "Back", Back{}), button("swing", "Lever to a right angle", SwingCard{}), keep};
    view.footer.back_id = "back";
    return view;
}

ScreenView figure() {
    KeypadBody body;
    body.asks = long_name + ": far end, along the tube";
    body.entry = "−123456.78";
    body.unit = "inches";
    body.lines = {{"now −393.701\"; + is toward you"}, {"Not taken: allowed is −393.701\" to 393.701\".", Tone::caution}};
    for (const char* key : {"7", "8", "9", "1/4", "4", "5", "6", "1/2", "1", "2", "3", "3/4", "clear", "0", ".", "back"}) body.keys.push_back(button(std::string("key-") + key, key, Key{key}));
    body.columns = 4;
    body.picture = picture();
    ScreenView view = card(false);
    view.key = "card-figure";
    view.body = body;
    ButtonView take = button("take", "Use this number", TakeFigure{}, Weight::main);
    take.enabled = false;
    take.why_not = "the cylinder would have no length: its two ends are one place";
    view.footer.buttons = {button("back", "Back", Back{}), button("sign", "+ / −", Key{"sign"}), take};
    view.footer.main_id = "take";
    return view;
}

/// What a piece is asked for, drawn, with its longest words.
ScreenView taping(const std::string& key, PieceView piece, const std::string& asks, const std::string& how) {
    RouteBody body;
    body.asks = asks;
    body.lines = {{how}};
    body.piece = std::move(piece);
    body.columns = 5;
    for (const char* name : {"7", "8", "9", "1/8", "1/4", "4", "5", "6", "3/8", "1/2", "1", "2", "3", "5/8", "3/4", ".", "0", "+1/32", "+1/16", "7/8"}) body.keys.push_back(button(std::string("key-") + name, name, Key{name}));
    ScreenView view = card(false);
    view.key = key;
    view.header.place = "measuring the bender, piece 1 again";
    view.body = body;
    ButtonView undo = button("undo", "Undo", Undo{}), take = button("next", "Take 12 31/32\"", Next{}, Weight::main);
    view.footer.buttons = {undo, button("back", "Back", Back{}), button("drop", "Spoiled: another piece", DropPiece{1}), take};
    view.footer.main_id = "next";
    return view;
}

PieceView piece(PieceView::Shape shape, PieceView::Taped taped) {
    PieceView view;
    view.shape = shape;
    view.taped = taped;
    view.taped_words = taped == PieceView::Taped::angle ? "90.5°" : "12 31/32\"";
    if (shape != PieceView::Shape::bent_back && taped != PieceView::Taped::lever_leg) view.hook_end = "hook end";
    if (shape != PieceView::Shape::bent_back && taped != PieceView::Taped::hook_leg) view.lever_end = "lever end";
    return view;
}

ScreenView learned() {
    PieceBody body;
    RowView radius, line, odd;
    radius.touch = button("learned-0", "Radius of the form", PickLearned{0});
    radius.detail = "1016.05 mm, good to 25.40 mm";
    line.touch = button("learned-1", "Line 50% ##2 of the shoe", PickLearned{1});
    line.touch.chosen = true;
    line.tone = Tone::now;
    line.detail = "1 63/64\" before; the card says otherwise";
    odd.touch = button("learned-2", "Line R", PickLearned{2});
    odd.detail = "moves with the angle: not for the card";
    odd.tone = Tone::caution;
    body.figures.rows = {radius, line, odd};
    body.figures.notes = {{"Piece 12, ink for line 50% ##2 of the shoe: it does not go with all the others. Take it again.", Tone::caution}};
    body.figures.pager = {button("earlier", "Page before", TurnPage{-1}), button("later", "Page after", TurnPage{1}), "1 of 2", true};
    body.piece = piece(PieceView::Shape::straight, PieceView::Taped::past_start);
    body.piece.bend = std::pair{0.4, 0.8};
    body.piece.ink = 0.1;
    body.piece.hook_end = "hook";
    body.piece.lever_end = "lever";
    body.piece.ink_words = "line 50% ##2 of the shoe";
    body.piece.taped_words = "1 63/64\" before";
    body.piece.caption = "Line 50% ##2 of the shoe lies 1 63/64\" before where the bend starts, good to 3/64\". It may as well show the far end of the bend: at this angle that is the same place. A bend to 45° tells.";
    ScreenView view = card(false);
    view.key = "learned";
    view.header.place = "measuring the bender";
    view.body = body;
    ButtonView put = button("put-on-card", "Hold: put it on the card", PutOnCard{}, Weight::main);
    put.held = true;
    view.footer.buttons = {button("undo", "Undo", Undo{}), button("back", "Back", Back{}), button("again", "Take it again", ReadAgain{{1, PieceStep::ink, 0}}), button("more", "One more piece", MorePieces{}), put};
    view.footer.main_id = "put-on-card";
    return view;
}

std::vector<Sample> piece_samples() {
    using Shape = PieceView::Shape;
    using Taped = PieceView::Taped;
    std::vector<Sample> all{{"learned", learned()}};
    const std::string asks = "How far from the hook end is the ink for line 50% ##2 of the shoe?", how = "A block flat on the outside of the lever leg; tape from the hook end to the block.";
    PieceView ink = piece(Shape::straight, Taped::ink), flat = piece(Shape::bent, Taped::angle), flat_leg = piece(Shape::bent, Taped::lever_leg), radius = piece(Shape::bent, Taped::radius);
    ink.ink = 1.0 / 3;
    ink.ink_words = "ink";
    flat.angle = flat_leg.angle = Angle{45};
    radius.hook_end = radius.lever_end = "";
    all.push_back({"piece-ink", taping("piece-ink", ink, asks, how)});
    for (const auto& [name, taped] : {std::pair{"piece-hook-leg", Taped::hook_leg}, std::pair{"piece-lever-leg", Taped::lever_leg}, std::pair{"piece-angle", Taped::angle}}) all.push_back({name, taping(name, piece(Shape::bent, taped), "How long is the hook leg, outside?", how)});
    all.push_back({"piece-angle-45", taping("piece-angle-45", flat, "What does the protractor say?", how)});
    all.push_back({"piece-lever-leg-45", taping("piece-lever-leg-45", flat_leg, "How long is the lever leg, outside?", how)});
    all.push_back({"piece-width", taping("piece-width", piece(Shape::bent_back, Taped::width), "How wide is it, outside to outside?", how)});
    for (const double angle : {45.0, 90.0, 120.0}) {
        PieceView gap = piece(Shape::bent, Taped::crown_gap);
        gap.angle = Angle{angle};
        gap.hook_end = gap.lever_end = "";
        const std::string name = "piece-gap-" + std::to_string(static_cast<int>(angle));
        all.push_back({name, taping(name.c_str(), gap, "How wide is the gap at the corner?", "Two straight edges on the outside of the legs meet at a corner. From there to the tube: a drill's shank or a caliper, no tape.")});
    }
    Sample of_radius{"learned-radius", learned()};
    radius.caption = "To the middle of the tube: 1016.05 mm, good to 25.40 mm. A finished bend of this tube has 1016.05 mm.";
    std::get<PieceBody>(of_radius.view.body).piece = radius;
    all.push_back(std::move(of_radius));
    return all;
}

}  // namespace

std::vector<Sample> card_samples() {
    std::vector<Sample> all = piece_samples();
    for (const Sample& one : std::vector<Sample>{{"card", card(false)}, {"card-changed", card(true)}, {"card-figure", figure()}}) all.push_back(one);
    return all;
}

}  // namespace tubewright
