// The screens between cutting and finishing.

#include "ui/samples.h"

namespace tubewright {
namespace {

using Standing = MoveChip::Standing;

HeaderView header() { return {"Axle crossover", "bend 4 of 5, 2 done", {"3/16 stainless", "on stick 201 3/4 in", "scrap today 6 1/2 in"}}; }

ScreenView bench(const std::string& key, Body body, const std::string& main_label) {
    ScreenView view;
    view.key = key;
    view.header = header();
    view.ribbon = sample_ribbon();
    view.body = std::move(body);
    view.footer = bench_footer(main_label);
    return view;
}

std::vector<MoveChip> moves(int now) {
    std::vector<MoveChip> chips{{"Mark", "19 3/16 in", Standing::coming}, {"Turn", "45°", Standing::coming}, {"Pull", "92 1/2°", Standing::coming}, {"Check", "90°", Standing::coming}};
    for (int i = 0; i <= now; ++i) chips[static_cast<std::size_t>(i)].standing = i < now ? Standing::done : Standing::now;
    return chips;
}

PictureView picture(PictureView::Kind kind) {
    return {kind, 2, "As you stand at the bench",
            {{Anchor::hook_end, "end A, on the hook"}, {Anchor::lever, "lever"}, {Anchor::after_pull, "after the pull"}, {Anchor::form, "form"}, {Anchor::mark, "mark on L"}}};
}

MoveBody mark_body() {
    return {moves(0), "Mark the tube, lay it in the bender", "19 3/16 in", {{"measured from end A; end A on the hook, on your left"}, {"the mark on the bender's line L"}}, std::nullopt, picture(PictureView::Kind::marked), {}};
}

MoveBody turn_body() {
    ClockView clock;
    clock.hands = {{45, "leg past bend 3", ClockHand::Kind::leg}, {90, "swing", ClockHand::Kind::swing}, {135, "wrong way", ClockHand::Kind::wrong}, {340, "top line", ClockHand::Kind::top_line}};
    clock.rim = {{0, "up"}, {90, "away"}, {180, "down"}, {270, "toward"}};
    clock.caption = "Seen from the hook, end A on your right.";
    PictureView view = picture(PictureView::Kind::turned);
    view.labels = {{Anchor::hook_end, "end A"}, {Anchor::after_pull, "after the pull"}, {Anchor::wrong_way, "not like this"}, {Anchor::bend, "bend 3"}};
    return {moves(1), "Turn the leg past bend 3", "up and away", {{"45° round from the swing."}}, clock, view, {}};
}

MoveBody pull_body() {
    return {moves(2), "Pull the lever to", "92 1/2°", {{"springs back 2 1/2°, finishes at 90°"}, {"Approach from below: what is over-bent stays over-bent.", Tone::caution}}, std::nullopt, picture(PictureView::Kind::pulled), {}};
}

MoveBody check_body() {
    MoveBody body{moves(3), "Take it out and check", "90°", {{"measured 88 1/2°: 1 1/2° under", Tone::caution}, {"Put it back on the mark and pull to 94°."}}, std::nullopt, picture(PictureView::Kind::checked), {}};
    body.buttons = {button("again", "Pull again", PullAgain{}), button("keep", "Keep it", KeepBend{})};
    return body;
}

KeypadBody keypad() {
    KeypadBody body;
    body.asks = "What does the protractor say?";
    body.entry = "88 1/2";
    body.unit = "degrees";
    body.lines = {{"wanted 90°, within 1/2°"}, {"1 1/2° under: pull again", Tone::caution}};
    body.moves = moves(3);
    body.columns = 4;
    for (const char* key : {"7", "8", "9", "back", "4", "5", "6", "clear", "1", "2", "3", ".", "0", "1/4", "1/2", "3/4"})
        body.keys.push_back(button(std::string("key-") + key, key == std::string("back") ? "rub out" : key, Key{key}));
    return body;
}

ChoiceBody reasons() {
    ChoiceBody body;
    body.heading = "What went wrong?";
    body.lines = {{"Nothing is written down before you have confirmed it on the next screen."}};
    const char* words[] = {"wrong place", "wrong way", "over-bent", "kinked or flat", "too short", "end spoiled", "damaged", "does not fit", "practice"};
    for (int i = 0; i < 9; ++i) body.choices.push_back(button("reason-" + std::to_string(i), words[i], ChooseReason{static_cast<Reason>(i)}));
    body.choices[2].chosen = true;
    body.moves = moves(1);
    return body;
}

ChoiceBody over_bent() {
    ChoiceBody body;
    body.heading = "Over the target. A bend is never bent back.";
    body.hero = "91 1/2°";
    body.lines = {{"1 1/2° over", Tone::stop}, {"At end B the line would lie 3/8 in off."}};
    body.choices = {button("went-wrong", "Went wrong", WentWrong{}, Weight::warn), button("again", "Measure again", Back{}), button("keep", "Keep the bend", KeepBend{}, Weight::main)};
    body.moves = moves(3);
    return body;
}

ChoiceBody lever_asked_after() {
    ChoiceBody body;
    body.heading = "Did the lever reach 142 1/2°?";
    body.hero = "128 1/2°";
    body.lines = {{"14° less than 142 1/2°: more than this tube should open.", Tone::caution}, {"If you are not sure, pull to 142 1/2°. Only if the lever was there, pull on to 151 1/2°."}};
    body.choices = {button("again", "Measure again", Back{}), button("pull-on", "It was there: pull on to 151 1/2°", PullAgain{true}), button("keep", "Keep it as it is", KeepBend{})};
    body.moves = moves(3);
    return body;
}

/// A tube that can be saved in three ways, with the longest words there are.
CardBody rescue(bool can) {
    CardBody body;
    body.picture = picture(PictureView::Kind::finished);
    body.picture.labels = {{Anchor::hook_end, "A 23/64\" and 1 1/2° off"}, {Anchor::lever_end, "B 23/64\" and 11 1/2° off"}};
    body.picture.caption = can ? "the 1st way" : "if gone on as planned";
    body.picture.laid_over = LaidOverPicture{};
    body.picture.legend = {{Swatch::stands, "as wanted"}, {Swatch::swings, "as it comes"}};
    ListBody& list = body.figures;
    list.heading = can ? "It can be saved. Touch a way to see it." : "It can't be saved.";
    const auto row = [&](const std::string& id, const std::string& label, const std::string& detail) { list.rows.push_back({button(id, label, Undo{}), detail, "", std::nullopt, Tone::plain}); };
    if (can) {
        row("way-1", "Bend 12: to 43 1/2° instead of 45°. Move mark 13 by 1 1/4\" towards B. Turn bend 14 by 12 1/2° less", "1st way, then off: A 3/64\" and 1 1/2°, B 3/64\" and 1 1/2° (±3/64\").");
        row("way-2", "Move mark 13 by 1 1/4\" towards B. Turn bend 13 by 2°, the way its screen will show. Cut 1 1/8\" less off end B", "2nd way, then off: A 1/64\" and 1/2°, B as wanted (±1/64\").");
        row("way-3", "6 numbers change: the angles of bends 10 and 12, the turns of bends 13 and 14, mark 13, the cut at end B", "3rd way, then off: A 1/64\" and 1/2°, B 1/64\" and 1/2° (±3/64\").");
        list.rows[0].tone = Tone::now;
        list.rows[0].touch.chosen = true;
        list.notes = {{"Laid at its best, the ends are off: A 23/64\" and 1 1/2°, B 23/64\" and 1 1/2° (±3/64\")."}, {"A saved brake line is held on the vehicle before it is flared. What the vehicle's maker says comes first.", Tone::caution}};
    } else {
        list.notes = {{"The bends still to come can't make it up: at the best A 23/64\" and 11 1/2°, B 23/64\" and 11 1/2° would be off.", Tone::stop},
                      {"Laid at its best, the ends are off: A 23/64\" and 11 1/2°, B 23/64\" and 11 1/2° (±13/64\"). An end may be 1/16\" and 2° off."},
                      {"It would still make the right-hand rear axle line: what is bent is its bend 12 on, ends A and B changed over.", Tone::go},
                      {"The straight 32 15/16\" at end B is enough for the right-hand rear axle line and left front hose bracket.", Tone::go}};
    }
    return body;
}

/// What can still be read of the tube, and what was.
ListBody read_more() {
    ListBody body;
    body.heading = "Measure more, and the ends are known better.";
    body.rows = {{button("read-1", "Turn of bend 13 against bend 12", AskReading{0}), "An angle gauge on both legs. Ends then known to ±13/64\".", "", std::nullopt, Tone::plain},
                 {button("read-2", "Tape, bend 12 to bend 14", AskReading{1}), "Ends then known a little better.", "", std::nullopt, Tone::plain},
                 {button("drop-1", "Turn of bend 12 against bend 11: 177 1/2° to the right", DropReading{0}), "Read. Touch to take it back.", "", std::nullopt, Tone::go}};
    body.notes = {{"Now they are known to ±13/64\"."}};
    body.pager = {button("earlier", "Page before", TurnPage{-1}), button("later", "Page after", TurnPage{1}), "1 of 2", true};
    return body;
}

PictureView made_picture() {
    PictureView view = picture(PictureView::Kind::finished);
    view.caption.clear();
    view.made = Part{};
    return view;
}

/// What is typed can't be, which takes most words.
KeypadBody turn_read() {
    KeypadBody body = keypad();
    body.asks = "Look along the tube from bend 12 to bend 13. How far round is the leg past bend 13?";
    body.entry = "177 1/2";
    body.lines = {{"Planned: 122 1/2° to the right."}, {"155 1/2° off what it should be: read it again. If it is so, nothing saves it.", Tone::stop}};
    body.moves.clear();
    body.picture = made_picture();
    body.picture->labels = {{Anchor::hook_end, "A"}, {Anchor::bend, "bend 13"}, {Anchor::lever_end, "B"}};
    return body;
}

RouteBody tape_read() {
    RouteBody body;
    body.asks = "Tape tight and straight, from the outside corner of bend 12 to the outside corner of bend 13.";
    body.columns = 5;
    for (const char* key : {"7", "8", "9", "1/8", "1/4", "4", "5", "6", "3/8", "1/2", "1", "2", "3", "5/8", "3/4", ".", "0", "+1/32", "+1/16", "7/8"}) body.keys.push_back(button(std::string("key-") + key, key, Key{key}));
    body.cells = {{button("reading-now", "112 13/32\"", Key{"clear"}), "the tape says"}};
    body.cells.back().touch.chosen = true;
    body.lines = {{"102 15/16\" off what it should be: tape it again. If it is so, nothing saves it.", Tone::stop}};
    body.picture = made_picture();
    body.picture->taped = Span{12, 13};
    body.picture->labels = {{Anchor::gauge_1, "bend 12"}, {Anchor::gauge_2, "bend 13"}};
    return body;
}

/// Beside the bench, with its footer.
ScreenView measuring(const std::string& key, Body body, std::vector<ButtonView> buttons) {
    ScreenView view = bench(key, std::move(body), "");
    view.header.place = "measure more";
    view.ribbon.reset();
    view.footer.buttons = std::move(buttons);
    view.footer.main_id.clear();
    return view;
}

MarkOutBody mark_out() {
    MarkOutBody body;
    body.cut_label = "Cut to";
    body.cut = "30 1/16 in";
    body.columns = {"bend", "from A", "from B", "on line"};
    body.rows = {{"1", "3 3/16 in", "26 7/8 in", "L"}, {"2", "8 1/8 in", "21 15/16 in", "L"}, {"3", "13 5/16 in", "16 3/4 in", "R"}, {"4", "19 3/16 in", "10 7/8 in", "L"}};
    body.notes = {{"Ink a top line along the tube."}, {"Ink each mark with its bend's number."}};
    body.pager = {button("earlier", "Page before", TurnPage{-1}), button("later", "Page after", TurnPage{1}), "1 of 2", true};
    body.pager.earlier.enabled = false;
    body.pager.earlier.why_not = "first page";
    return body;
}

}  // namespace

std::vector<Sample> bench_samples() {
    std::vector<Sample> all{{"mark", bench("mark", mark_body(), "Marked and loaded")},
                            {"turn", bench("turn", turn_body(), "Turned → pull next")},
                            {"pull", bench("pull", pull_body(), "Pulled and released")},
                            {"check", bench("check", check_body(), "It is right")},
                            {"keypad", bench("keypad", keypad(), "That is what it says")},
                            {"mark-out", bench("mark-out", mark_out(), "All set → first bend")}};
    for (const bool can : {true, false}) {
        ScreenView save = bench(can ? "rescue" : "rescue-none", rescue(can), "");
        save.ribbon.reset();
        save.footer.buttons = {button("undo", "Undo", Undo{}), button("redo", "Redo", Redo{}), button("back", "Back", Back{})};
        save.footer.buttons.push_back(button("more", "Measure more", GoTo{Screen::rescue_more}));
        if (can) save.footer.buttons.push_back(button("take-way", "Take this way", TakeRescue{0}, Weight::main));
        else save.footer.buttons.insert(save.footer.buttons.begin(), button("wrong", "Went wrong", WentWrong{}, Weight::warn));
        save.footer.main_id.clear();
        all.push_back({save.key, save});
    }
    const ButtonView back = button("back", "Back", Back{});
    ButtonView left = button("left", "177 1/2° to the left", TurnIs{false}), right = button("right", "177 1/2° to the right", TurnIs{true}, Weight::main), take = button("next", "Take 112 13/32\"", Next{}, Weight::main);
    for (ButtonView* side : {&left, &right, &take}) side->enabled = false, side->why_not = "too far off";
    all.push_back({"rescue-more", measuring("rescue-more", read_more(), {button("undo", "Undo", Undo{}), back, button("redo", "Redo", Redo{})})});
    all.push_back({"rescue-turn", measuring("rescue-turn", turn_read(), {back, left, right})});
    all.push_back({"rescue-tape", measuring("rescue-tape", tape_read(), {back, button("key-back", "Rub out", Key{"back"}), take})});
    ScreenView wrong = bench("reasons", reasons(), "Scrap it");
    wrong.footer.buttons = {button("cancel", "Cancel", Cancel{}), button("confirm", "Write it down", ConfirmScrap{}, Weight::main)};
    wrong.footer.buttons[1].held = true;
    wrong.footer.main_id = "confirm";
    wrong.footer.back_id = "cancel";
    all.push_back({"reasons", wrong});
    ScreenView over = bench("over", over_bent(), "");
    over.footer.buttons = {button("back", "Back", Back{}), button("undo", "Undo", Undo{})};
    over.footer.main_id.clear();
    all.push_back({"over", over});
    all.push_back({"lever-asked-after", bench("lever-asked-after", lever_asked_after(), "Pull to 142 1/2°")});
    return all;
}

}  // namespace tubewright
