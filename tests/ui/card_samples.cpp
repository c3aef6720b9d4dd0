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

}  // namespace

std::vector<Sample> card_samples() { return {{"card", card(false)}, {"card-changed", card(true)}, {"card-figure", figure()}}; }

}  // namespace tubewright
