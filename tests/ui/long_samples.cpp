// The same screens with the longest words we allow, many bends, and as much as one page holds.

#include "ui/samples.h"

namespace tubewright {
namespace {

HeaderView long_header() { return {"Cooler return, mirror image", "bend 12 of 12, 11 done", {"10 × 1.5 mm 316", "on stick 5,999.5 mm", "scrap 1,203.5 mm"}}; }

RibbonView long_ribbon() {
    using Standing = RibbonBend::Standing;
    RibbonView ribbon;
    for (int i = 0; i < 12; ++i) {
        const double at = i < 3 ? 0.05 + i * 0.016 : 0.11 + (i - 3) * 0.095;  // the first three crowded
        ribbon.bends.push_back({std::to_string(i + 1), at, at + 0.011, i < 4 ? Standing::done : i == 4 ? Standing::now : Standing::coming});
        if (i == 4) ribbon.marks = {{at + 0.003, "1,203.5 mm from A", true}};
    }
    for (int i = 0; i <= 60; ++i) ribbon.ticks.push_back({i / 60.0, i % 4 == 0 ? 0 : i % 2 == 0 ? 1 : 2, i % 4 == 0 ? std::to_string(i * 50) : ""});
    ribbon.waste_a = 0.03;
    ribbon.waste_b = 0.08;
    ribbon.tally = "formed 1,203.5 mm, left 1,796.5 mm";
    return ribbon;
}

/// Six marks of twelve, half of them crowded.
RibbonView long_ribbon_to_ink() {
    RibbonView ribbon = long_ribbon();
    ribbon.marks.clear();
    ribbon.tally.clear();
    for (std::size_t i = 0; i < ribbon.bends.size(); ++i) ribbon.marks.push_back({ribbon.bends[i].from + 0.003, i < 6 ? std::to_string(i + 7) + ": 1,203.5 mm" : "", false});
    return ribbon;
}

void lengthen(ScreenView& view) {
    view.key += "-long";
    view.header = long_header();
    if (view.ribbon) view.ribbon = long_ribbon();
    for (ButtonView& button : view.footer.buttons)
        if (button.weight == Weight::main) button.label = "Turned → pull to 157 1/2°";
}

ScreenView long_turn() {
    ScreenView view = sample("turn");
    lengthen(view);
    auto& body = std::get<MoveBody>(view.body);
    body.asks = "Turn the tube in the bender";
    body.hero = "157 1/2° down";
    body.lines = {{"The leg past bend 11 points down and toward you."}};
    body.clock->hands[0].label = "leg past bend 11";
    body.moves[0].value = "1,203.5 mm";
    body.moves[1].value = "157 1/2°";
    return view;
}

/// A name that takes two lines of its own.
ScreenView long_name() {
    ScreenView view = long_turn();
    view.key = "long-name";
    view.header.title = "Left rear corner of the trailer frame to the tee on the axle, second try";
    return view;
}

ScreenView long_mark() {
    ScreenView view = sample("mark");
    lengthen(view);
    auto& body = std::get<MoveBody>(view.body);
    body.hero = "1,203.5 mm from B";
    body.lines = {{"End B on the hook, which stands on your right. The mark goes on the bender's line \"degree\"."},
                  {"Nut and sleeve of end B have to be on the tube by now: this bend traps them.", Tone::caution}};
    body.buttons = {button("line", "Another line of the bender", GoTo{Screen::stance})};
    return view;
}

ScreenView long_ticks() {
    ScreenView view = sample("ticks");
    lengthen(view);
    auto& body = std::get<TicksBody>(view.body);
    body.heading = "Before the first flare, end A";
    for (TickView& tick : body.ticks) tick.touch.label = "Nut and then sleeve slid on, the nut's thread and the sleeve's wide side facing end A.";
    body.ticks[2].touch.why_not = "tick the sleeve first";
    body.cautions = {{"Brake line: follow the vehicle maker's data and local law. Fluid harms skin.", Tone::caution}};
    return view;
}

/// The list before the cut, on its second page.
ScreenView cut_list(const std::string& length) {
    ScreenView view = long_ticks();
    view.key = "cut-list";
    auto& body = std::get<TicksBody>(view.body);
    body.heading = "Cut to";
    body.figure = length;
    return view;
}

/// Ticks with a second answer: one open, one ticked, one left for later.
ScreenView long_two_answers() {
    ScreenView view = long_ticks();
    view.key = "two-answers";
    auto& body = std::get<TicksBody>(view.body);
    const char* const ids[] = {"a", "b", "c"};
    for (std::size_t i = 0; i < 3; ++i) {
        body.ticks[i] = {button(std::string("tick-") + ids[i], "Clamped near the bends; clear of heat, edges and moving parts at full travel.", Tick{ids[i]}), i == 1, true};
        body.ticks[i].later = button(std::string("leave-") + ids[i], "Later, by the fitter", LeaveForLater{ids[i]});
        body.ticks[i].later->chosen = i == 2;
    }
    return view;
}

/// The label of a piece with everything left for later.
ScreenView long_label() {
    ScreenView view = long_ticks();
    view.key = "label";
    auto& body = std::get<TicksBody>(view.body);
    body.heading = "Write this on the label";
    body.ticks.clear();
    body.cautions = {{"Left rear corner to the tee, piece 12. Not done yet, for the fitter:", Tone::caution},
                     {"1. Start the nuts by hand\n2. Seat the line without force\n3. Clamp it, off heat, edges and moving parts\n4. Tighten to the maker's torque\n"
                      "5. Fill and bleed; firm pedal, joints dry\n6. Look again after first heat and short use\n7. Inspection and sign-off"}};
    return view;
}

ScreenView long_list() {
    ScreenView view = sample("shelf");
    lengthen(view);
    auto& body = std::get<ListBody>(view.body);
    body.heading = "Lines of Utility trailer brake lines, front axle and rear axle";
    for (RowView& row : body.rows) {
        row.touch.label = "Left rear corner to the tee on the axle";
        row.touch.enabled = true;
        row.detail = "12 bends in 5 planes, 3/16 × 0.028 stainless 304, cut to 201 15/16 in";
        row.right = "bend 11 of 12";
        row.done = 0.9;
        row.tone = Tone::caution;
    }
    return view;
}

ScreenView long_overview() {
    ScreenView view = sample("overview");
    lengthen(view);
    auto& body = std::get<OverviewBody>(view.body);
    body.facts = {{"Tube", "10 × 1.5 mm stainless 316"}, {"Cut to", "5,203.5 mm"}, {"Left to make", "2 of 4 pieces"}};
    body.findings = {{"Between bend 11 and bend 12: the straight is 12.5 mm; this bender needs 31.5 mm to grip. Lengthen it by 19 mm, or make bend 12 first.", Tone::stop},
                     {"End B: the straight for flare, nut and sleeve is 22.5 mm; it takes 38 mm. Lengthen the last leg by 15.5 mm or trim less.", Tone::caution}};
    body.buttons.push_back(button("another", "Another piece", AnotherPiece{}));
    return view;
}

ScreenView long_keypad() {
    ScreenView view = sample("keypad");
    lengthen(view);
    auto& body = std::get<KeypadBody>(view.body);
    body.asks = "What does the protractor say for bend 12?";
    body.entry = "157 3/4";
    body.lines = {{"wanted 157 1/2°, within 1/2°; pulled to 161°"}, {"The entry has two points in it; a number has one.", Tone::stop}};
    return view;
}

ScreenView long_table() {
    ScreenView view = sample("scrap");
    auto& body = std::get<TableBody>(view.body);
    for (auto& row : body.rows) row = {"25 Nov 2026", "left rear corner", "kinked or flat", "1,203.5 mm", "2,440.5 mm"};
    body.rows.push_back(body.rows[0]);
    return view;
}

ScreenView long_mark_out() {
    ScreenView view = sample("mark-out");
    lengthen(view);
    auto& body = std::get<MarkOutBody>(view.body);
    body.cut = "5,203.5 mm";
    body.rows.assign(6, {"12, 90°", "1,203.5 mm", "4,000.0 mm", "degree"});
    body.notes = {{"Marks 7 to 12 of 12.", Tone::now}, {"Ink a top line straight along the tube."}, {"Ink each mark with its bend's number."}};
    view.ribbon = long_ribbon_to_ink();
    return view;
}

ScreenView all_disabled() {
    ScreenView view = sample("mark");
    view.key = "all-disabled";
    for (ButtonView& button : view.footer.buttons) {
        button.enabled = false;
        button.why_not = button.weight == Weight::main ? "the book could not be opened; say first how to go on" : "nothing to undo yet";
    }
    return view;
}

}  // namespace

std::vector<Sample> long_samples() {
    return {{"long-turn", long_turn()}, {"long-name", long_name()}, {"long-mark", long_mark()}, {"long-ticks", long_ticks()}, {"cut-list", cut_list("95 15/16\"")}, {"cut-list-mm", cut_list("2438.5 mm")}, {"long-cut-list", cut_list("239 15/16\"")}, {"two-answers", long_two_answers()}, {"label", long_label()}, {"long-list", long_list()}, {"long-overview", long_overview()},
            {"long-keypad", long_keypad()}, {"long-table", long_table()}, {"long-mark-out", long_mark_out()}, {"all-disabled", all_disabled()}};
}

}  // namespace tubewright
