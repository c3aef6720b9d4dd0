// The screens on which a line is entered: its page, a question, and the pads for a number of the route.

#include "ui/samples.h"

namespace tubewright {
namespace {

using Shape = TileView::Drawing;

TileView tile(const std::string& id, const std::string& label, const std::string& name = "", Shape drawing = Shape::none) { return {button(id, label), name, drawing}; }

FooterView footer(const std::string& main_label) {
    FooterView footer;
    footer.buttons = {button("back", "Back", Back{}), button("undo", "Undo", Undo{}), button("redo", "Redo", Redo{}), button("next", main_label, Next{}, Weight::main)};
    footer.main_id = "next";
    footer.back_id = "back";
    return footer;
}

PictureView picture() {
    PictureView view{PictureView::Kind::finished, 0, "", {{Anchor::hook_end, "A"}, {Anchor::bend, "leg 12"}}};
    view.entered = true;
    view.grip = button("picture", "", EnlargePicture{});
    view.orbit = Orbit{{10}, {-30}};
    view.straight_on = button("straight-on", "Straight on", StraightOn{});
    view.lit = LitPart{LitPart::What::run, 11};
    return view;
}

ScreenView draft_page() {
    TilesBody body;
    body.tiles = {tile("route", "12 straights", "The route, not finished"), tile("form", "legs to the outside", "Measured"), tile("tube", "3/16\"", "Tube, wall 0.028\""),
                  tile("material", "copper-nickel 90/10", "Material"), tile("bender", "3/16 hand bender", "Bender"), tile("service", "Hydraulic", "Carries"),
                  tile("end-A", "45° double flare", "End A"), tile("end-B", "plain end, cut square", "End B"), tile("trim-A", "none", "Extra to cut off, A"),
                  tile("trim-B", "12 13/32\"", "Extra to cut off, B"), tile("about", "12 pieces", "Names, pieces, notes"), tile("lines", "12 lines", "The job has")};
    body.picture = picture();
    body.notes = {{"Bend 2: the straight before it is 3/4\"; this bender needs 1 1/4\" to grip. 3 more after this.", Tone::stop}};
    body.remedy = button("remedy", "Make straight 12 longer by 15/16\"");
    body.tiles[0].touch.enabled = false;
    body.tiles[0].touch.why_not = "first: Which bender?";
    ScreenView view;
    view.key = "draft";
    view.header = {"New job 2026-11-25", "line 12", {"line 12", "inches"}};
    view.body = body;
    view.footer = footer("Go on: What goes on its ends?");
    return view;
}

ScreenView question() {
    TilesBody body;
    body.heading = "How was it measured?";
    body.columns = 4;
    body.tiles = {tile("outside", "Tape on the outside", "", Shape::outside), tile("centre", "Tape on the centre", "", Shape::centre), tile("inside", "Tape on the inside", "", Shape::inside),
                  tile("straights", "Straights only", "", Shape::straights), tile("moves", "By direction", "starts the route over", Shape::moves), tile("points", "Corners: x, y, z", "starts the route over"), tile("from-file", "Points from a table", "a .csv file"), tile("flat", "It lies flat", "no", Shape::flat)};
    body.tiles[1].touch.chosen = true;
    ScreenView view = draft_page();
    view.key = "question";
    view.body = body;
    view.footer.buttons.pop_back();
    view.footer.main_id.clear();
    return view;
}

std::vector<ButtonView> keys(std::initializer_list<const char*> names) {
    std::vector<ButtonView> all;
    for (const char* name : names) all.push_back(button(std::string("key-") + name, name, Key{name}));
    return all;
}

ScreenView route(const std::string& key, RouteBody body) {
    body.picture = picture();
    for (TileView& cell : body.cells) cell.touch.chosen = &cell == &body.cells.back();
    body.earlier = button("before", "before");
    ScreenView view;
    view.key = key;
    view.header = {"New job 2026-11-25", "line 12", {"line 12", "inches"}};
    view.body = std::move(body);
    view.footer = footer("That is end B: finished");
    view.footer.buttons.insert(view.footer.buttons.end() - 1, button("bend-out", "Take the bend out"));
    return view;
}

ScreenView leg_pad() {
    RouteBody body;
    body.asks = "Leg 12: bend 11 to bend 12 or end B, tape on the outside";
    body.columns = 5;
    body.keys = keys({"7", "8", "9", "1/8", "1/4", "4", "5", "6", "3/8", "1/2", "1", "2", "3", "5/8", "3/4", ".", "0", "+1/32", "+1/16", "7/8"});
    body.cells = {tile("c2", "12 13/32\"", "leg 12")};
    body.lines = {{"Bend 11: the straight next to bend 10 is 13/16\", the bender's lever side needs 1 1/4\". 2 more after this.", Tone::stop}};
    body.remedy = button("remedy", "Make straight 12 longer by 15/16\"");
    return route("leg-pad", std::move(body));
}

ScreenView metric_pad() {
    RouteBody body;
    body.asks = "Straight 12: bend 11 to bend 12 or end B, only what is straight";
    body.keys = keys({"7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0", "clear"});
    body.cells = {tile("c1", "157.5°", "bend 11"), tile("c2", "135° right", "turn 11"), tile("c3", "1206.375", "leg 12")};
    return route("metric-pad", std::move(body));
}

ScreenView angle_pad() {
    RouteBody body;
    body.asks = "Bend 12: how far does the tube leave its line?";
    body.columns = 2;
    body.keys = keys({"15°", "22 1/2°", "30°", "45°", "60°", "90°", "135°", "other"});
    body.cells = {tile("c1", "135° right", "turn 11"), tile("c2", "12 13/32\"", "leg 12"), tile("c3", "?", "bend 12")};
    return route("angle-pad", std::move(body));
}

ScreenView turn_pad() {
    RouteBody body;
    body.asks = "Look from end A along leg 12, leg 11 at the top: where does it go on?";
    body.clock = true;
    body.keys = keys({"same way", "30° right", "60° right", "90° right", "120° right", "150° right", "other way", "150° left", "120° left", "90° left", "60° left", "30° left"});
    body.dial = button("dial", "", TurnTo{{0}});
    body.leads = Angle{45};
    body.cells = {tile("c3", "22.5°", "bend 12"), tile("c4", "?", "turn 12")};
    return route("turn-pad", std::move(body));
}

ScreenView flat_pad() {
    RouteBody body;
    body.asks = "Bend 12: which way round, against bend 11?";
    body.columns = 1;
    body.keys = keys({"Same way round", "Other way", "not flat here"});
    body.cells = {tile("c4", "?", "turn 12")};
    return route("flat-pad", std::move(body));
}

ScreenView move_pad() {
    RouteBody body;
    body.asks = "Move 12: how far, and which way?";
    body.columns = 4;
    body.keys = keys({"7", "8", "9", "1/4", "4", "5", "6", "1/2", "1", "2", "3", "3/4", ".", "0", "+1/8", "+1/16"});
    body.ways = keys({"up", "forward", "left", "right", "down", "back"});
    body.ways[5].enabled = false;
    body.ways[5].why_not = "how far?";
    body.cells = {tile("c4", "back 12 13/16\", down 4 1/2\"", "move 12")};
    return route("move-pad", std::move(body));
}

ScreenView taping() {
    RouteBody body;
    body.asks = "Tape tight and straight, from the outside corner of bend 11 to the outside corner of bend 12.";
    body.columns = 5;
    body.keys = keys({"7", "8", "9", "1/8", "1/4", "4", "5", "6", "3/8", "1/2", "1", "2", "3", "5/8", "3/4", ".", "0", "+1/32", "+1/16", "7/8"});
    body.cells = {tile("c1", "112 13/32\"", "bend 10 to bend 12"), tile("c2", "112 13/32\"", "reading 12")};
    body.lines = {{"Once more, as if it had not been read yet.", Tone::now}};
    body.picture = picture();
    body.picture->lit.reset();
    body.picture->taped = Span{11, 12};
    body.picture->labels = {{Anchor::gauge_1, "bend 11"}, {Anchor::gauge_2, "bend 12"}, {Anchor::hook_end, "A"}, {Anchor::lever_end, "B"}};
    ScreenView view;
    view.key = "taping";
    view.header = {"axle crossover, left", "tape check, reading 12 again", {"inches"}};
    view.body = std::move(body);
    view.footer = footer("Take 112 13/32\"");
    view.footer.buttons.erase(view.footer.buttons.begin() + 2);
    view.footer.buttons.insert(view.footer.buttons.end() - 1, {button("cant-reach", "Can't reach there"), button("enough", "Enough readings")});
    return view;
}

ScreenView hand_asked() {
    MoveBody body;
    body.asks = "Look along straight 12, from end A's side.";
    body.hero = "Left or right?";
    body.lines = {{"Let straight 11 hang straight down: to which side does straight 13 go?", Tone::now}, {"No tape can tell left from right."}};
    body.clock = ClockView{{{180, "straight 11", ClockHand::Kind::leg}}, {{270, "left"}, {90, "right"}}, ""};
    body.buttons = {button("left", "To the left"), button("right", "To the right")};
    ScreenView view = taping();
    view.key = "hand-asked";
    view.body = std::move(body);
    view.footer.buttons = {button("back", "Back", Back{}), button("undo", "Undo", Undo{}), button("redo", "Redo", Redo{}), button("cant-tell", "I can't tell")};
    view.footer.main_id.clear();
    return view;
}

ScreenView slip_found() {
    CardBody body;
    body.figures.heading = "Most likely one of these slips:";
    for (const char* says : {"Bend 12 alone turns 112.5° to the right", "Leg 12 is 112 13/32\", not 112 15/32\""}) {
        RowView row;
        row.touch = button(says, says);
        row.detail = body.figures.rows.empty() ? "likeliest" : "also possible";
        row.touch.chosen = body.figures.rows.empty();
        row.tone = body.figures.rows.empty() ? Tone::now : Tone::plain;
        body.figures.rows.push_back(row);
    }
    body.figures.notes = {{"If bend 12 alone turned 112.5° to the right, bend 11 to end B would read 112 13/32\", and you read 112 13/32\".", Tone::caution}};
    body.picture = picture();
    ScreenView view = taping();
    view.key = "slip-found";
    view.body = std::move(body);
    view.footer = footer("First tape again: bend 11 to bend 12");
    view.footer.buttons.insert(view.footer.buttons.end() - 1, button("correct", "Correct it"));
    view.footer.buttons.erase(view.footer.buttons.begin() + 2);
    return view;
}

ScreenView letters() {
    KeypadBody body;
    body.below = true;
    body.columns = 9;
    body.asks = "Note on axle crossover, left side";
    body.entry = "Clip behind the rear wheel well first, then the bracket under the bed; 3/16 nuts both ends, long one at the pump. Ask before cutting it off!!";
    for (char letter = 'A'; letter <= 'Z'; ++letter) body.keys.push_back(button(std::string("letter-") + letter, std::string(1, letter), Key{std::string(1, letter)}));
    body.keys.push_back(button("letter-space", "space", Key{" "}));
    ScreenView view;
    view.key = "letters";
    view.header = {"New job 2026-11-25", "line 12", {"line 12", "inches"}};
    view.body = std::move(body);
    view.footer = footer("Take it");
    view.footer.buttons[1] = button("rub-out", "Rub out");
    view.footer.buttons[2] = button("wipe", "Wipe");
    view.footer.buttons.insert(view.footer.buttons.end() - 1, button("other-keys", "ABC"));
    view.footer.buttons.back().enabled = false;
    view.footer.buttons.back().why_not = "the shop book knows it by its name";
    return view;
}

ScreenView large_picture() {
    TilesBody body;
    body.picture = picture();
    ScreenView view = draft_page();
    view.key = "large-picture";
    view.body = std::move(body);
    view.footer = footer("Back to the numbers");
    return view;
}

}  // namespace

std::vector<Sample> entry_samples() {
    std::vector<Sample> all;
    for (const ScreenView& view : {draft_page(), question(), leg_pad(), metric_pad(), angle_pad(), turn_pad(), flat_pad(), move_pad(), taping(), hand_asked(), slip_found(), letters(), large_picture()}) {
        all.push_back({view.key, view});
        if (view.key == "letters") continue;  // a notice waits until the word is taken
        ScreenView told = view;
        told.key += "-notice";
        if (auto* body = std::get_if<RouteBody>(&told.body)) body->lines.clear(), body->remedy.reset();  // one thing at a time
        told.notice = "new-job.json was changed meanwhile by another window or program; both are kept, yours is now new-job-2.json.";
        all.push_back({told.key, told});
    }
    return all;
}

}  // namespace tubewright
