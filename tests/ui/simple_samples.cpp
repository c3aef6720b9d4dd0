// The screens around the bench: shelf, lines, one line, preparing, scrap log, settings.

#include "ui/samples.h"

namespace tubewright {
namespace {

const std::vector<std::string> chips{"3/16 stainless", "on stick 201 3/4 in", "scrap today 6 1/2 in"};

PagerView pager(bool first) {
    PagerView view{button("earlier", "Page before", TurnPage{-1}), button("later", "Page after", TurnPage{1}), "1 of 3", true};
    view.earlier.enabled = !first;
    view.earlier.why_not = first ? "first page" : "";
    return view;
}

ScreenView shelf() {
    ListBody body;
    body.heading = "Jobs";
    body.rows = {{button("job-trailer", "Utility trailer brake lines", OpenJob{"trailer"}), "5 lines in 3/16 stainless", "2 of 5 made", 0.4, Tone::plain},
                 {button("job-odd", "50% ##2 ###x", OpenJob{"odd"}), "1 line in 3/8 copper-nickel", "not begun", 0.0, Tone::plain},
                 {button("job-bad", "cooler.json", OpenJob{"bad"}), "", "", std::nullopt, Tone::stop}};
    body.rows[2].touch.enabled = false;
    body.rows[2].touch.why_not = "cooler.json, lines[0].tube.od: -3 is not a diameter; it has to be more than 0.";
    body.notes = {{"Job files lie in the folder jobs; the program reads it when it starts."}};
    body.pager = pager(true);
    ScreenView view;
    view.key = "shelf";
    view.header = {"Tubewright", "", {"scrap today 6 1/2 in"}};
    view.body = body;
    view.footer.buttons = {button("settings", "Settings", GoTo{Screen::settings}), button("scrap", "Scrap log", GoTo{Screen::scrap}), button("rack", "The rack", GoTo{Screen::rack})};
    return view;
}

ScreenView overview() {
    OverviewBody body;
    body.facts = {{"Tube", "3/16 × 0.028 stainless 304"}, {"Cut to", "30 1/16 in"}, {"Bends", "5, in 3 planes"}};
    body.findings = {{"Bend 2: the straight before it is 3/4 in; this bender needs 1 1/4 in to grip. Lengthen it by 1/2 in, or make bend 3 first.", Tone::stop},
                     {"End B: the nut and sleeve have to be on before bend 5 traps them.", Tone::caution}};
    body.pager = pager(true);
    body.picture = PictureView{PictureView::Kind::finished, 0, "Finished line", {{Anchor::hook_end, "A"}}};
    body.buttons = {button("stance", "How the bender stands", GoTo{Screen::stance}), button("offcuts", "Offcuts", GoTo{Screen::stock})};
    ScreenView view;
    view.key = "line";
    view.header = {"Axle crossover", "piece 1 of 2", chips};
    view.ribbon = sample_ribbon();
    view.ribbon->marks.clear();
    view.body = body;
    view.footer.buttons = {button("back", "Back", Back{}), button("next", "Start: prepare", Next{}, Weight::main)};
    view.footer.main_id = "next";
    view.footer.back_id = "back";
    return view;
}

ScreenView ticks() {
    TicksBody body;
    body.heading = "Before the cut";
    body.ticks = {{button("tick-nut", "Tube nut on, its thread facing end A.", Tick{"nut"}), true, true},
                  {button("tick-sleeve", "Sleeve on, its wide side toward the flare.", Tick{"sleeve"}), false, true},
                  {button("tick-clean", "Chips blown out, away from people.", Tick{"clean"}), false, false}};
    body.ticks[2].touch.enabled = false;
    body.ticks[2].touch.why_not = "after the sleeve";
    body.cautions = {{"Eyes and hands: the cut edge is sharp. Wear glasses.", Tone::caution}};
    body.pager = pager(true);
    ScreenView view;
    view.key = "prepare";
    view.header = {"Axle crossover", "prepare", chips};
    view.ribbon = sample_ribbon();
    view.body = body;
    view.footer = bench_footer("All done → mark out");
    view.footer.buttons.back().enabled = false;
    view.footer.buttons.back().why_not = "2 ticks are missing";
    view.footer.buttons[1].enabled = false;
    view.footer.buttons[1].why_not = "nothing to undo";
    return view;
}

ScreenView scrap_log() {
    TableBody body;
    body.heading = "Scrap log";
    body.columns = {"day", "line", "reason", "scrap", "share"};
    body.rows = {{"25 Nov", "2 pieces", "of 120 1/4 in used", "14 1/2 in", "12.1 %"}, {"", "axle crossover", "over-bent, bend 3", "6 1/2 in", "5.4 %"}, {"", "left rear", "practice", "8 in", "6.7 %"},
                 {"24 Nov", "1 piece", "of 359 3/4 in used", "12 1/4 in", "3.4 %"}, {"", "tee to axle", "kinked or flat", "12 1/4 in", "3.4 %"}};
    body.heads = {0, 3};
    body.totals = {{"Scrap in all 26 3/4 in of 480 in used: 5.6 %"}, {"Most of it: kinked or flat", Tone::caution}};
    body.pager = pager(false);
    ScreenView view;
    view.key = "scrap";
    view.header = {"Tubewright", "scrap log", {}};
    view.body = body;
    view.footer.buttons = {button("back", "Back", Back{})};
    view.footer.back_id = "back";
    return view;
}

ScreenView settings() {
    SettingsBody body;
    body.groups = {{"Lengths in", {button("unit-job", "as the job", SetUnit{Unit::inch}), button("unit-in", "inch", SetUnit{Unit::inch}), button("unit-mm", "mm", SetUnit{Unit::mm})}},
                   {"Tape", {button("tape-16", "1/16", SetTape{16}), button("tape-32", "1/32", SetTape{32}), button("tape-64", "1/64", SetTape{64})}},
                   {"Colours", {button("light", "light", SetTheme{Theme::light}), button("dark", "dark", SetTheme{Theme::dark})}},
                   {"Scale", {button("much-less", "−5 %", SetScale{5.6}), button("less", "−0.5 %", SetScale{5.8}), button("more", "+0.5 %", SetScale{5.9}), button("much-more", "+5 %", SetScale{6.1})}}};
    for (auto& group : body.groups) group.choices[0].chosen = true;
    body.groups[3].choices[0].chosen = false;
    body.ruler = true;
    body.ruler_text = "This bar is 50 mm long when the scale is right. Lay a rule on it and press − or + until it is.";
    body.notes = {{"5.87 pixels to the millimetre"}};
    ScreenView view;
    view.key = "settings";
    view.header = {"Tubewright", "settings", {}};
    view.body = body;
    view.footer.buttons = {button("back", "Back", Back{})};
    view.footer.back_id = "back";
    return view;
}

/// An order by hand that can't be made, with as much to say as there may be.
ScreenView order_of_bends() {
    OrderBody body;
    for (std::size_t i = 0; i < 18; ++i) {
        const std::string id = std::to_string(18 - i);
        body.cards.push_back({17 - i, id, "hook B", i == 5 ? Tone::stop : i == 4 ? Tone::caution : Tone::plain, button("bend-" + id, "bend " + id, PickBend{17 - i})});
    }
    body.cards[5].touch.chosen = true;
    body.movable = true;
    body.earlier = button("move-earlier", "Earlier", MoveBend{12, -1});
    body.later = button("move-later", "Later", MoveBend{12, 1});
    body.picked = "Bend 13: 6 of 18, end B on the hook, turned by the ink line alone.";
    body.notes = {{"Bend 13 would hit the bench top by 11 13/16 in, with the lever at 112 1/2°.", Tone::stop},
                  {"Besides, both ends should land within 11 13/16 in; in the best order within 10 11/16 in.", Tone::caution}};
    body.picture = PictureView{PictureView::Kind::pulled, 5, "Bend 13 being pulled", {{Anchor::hook_end, "End B, hook"}, {Anchor::lever, "lever"}, {Anchor::after_pull, "after the pull"}}};
    ScreenView view;
    view.key = "order";
    view.header = {"Axle crossover", "order of bends", chips};
    view.body = body;
    view.footer.buttons = {button("free-order", "Best order", FreeOrder{}), button("first", "Make it first", PinFirst{12}), button("undo", "Undo", Undo{}), button("redo", "Redo", Redo{}), button("back", "Back", Back{})};
    view.footer.back_id = "back";
    return view;
}

/// A spoiled tube of as many bends as a row holds; which one was it?
ScreenView which_bend() {
    SettingsBody body;
    body.groups = {{"Over-bent: what is kept of 123 13/16 in?", {button("kept-both", "Keep both ends", ChooseKept{"both"}), button("kept-end-b", "Keep 112 13/16 in at B", ChooseKept{"end-b"}),
                                                                 button("kept-end-a", "Keep 106 11/16 in at A", ChooseKept{"end-a"}), button("kept-none", "Keep nothing", ChooseKept{"none"})}},
                   {"Which bend was the wrong one?", {}}};
    for (std::size_t i = 0; i < 9; ++i) body.groups[1].choices.push_back(button("wrong-bend-" + std::to_string(i + 1), std::to_string(i + 1), ChooseBend{i}));
    body.groups[0].choices[0].chosen = body.groups[1].choices[7].chosen = true;
    body.notes = {{"Scrap 104 13/16 in, offcuts 112 13/16 in and 106 11/16 in. The line begins again at the cut.", Tone::caution}};
    ScreenView view;
    view.key = "which-bend";
    view.header = {"Axle crossover", "went wrong", chips};
    view.body = body;
    ButtonView confirm = button("confirm", "Hold: write it down", ConfirmScrap{}, Weight::main);
    confirm.held = true;
    view.footer.buttons = {button("cancel", "Cancel", Cancel{}), button("back", "Back", Back{}), confirm};
    view.footer.back_id = "back";
    return view;
}

/// Lengths to scale with what is cut from them, to the last label that fits.
ScreenView cutting_plan() {
    ListBody body;
    body.heading = "What is cut from what: Utility trailer brake lines";
    RowView bought{button("cut-1", "A new stick, 240 in, to buy", GoTo{Screen::buy}), "", "keep 12 1/4 in", std::nullopt, Tone::now};
    bought.parts = {{0, 0.4, "Axle crossover 96 in", CutPart::What::line}, {0.4, 0.85, "Left rear corner to the tee 108 in", CutPart::What::line}, {0.85, 0.9, "Jumper 12 in", CutPart::What::line}, {0.9, 1, "12 1/4 in", CutPart::What::kept}};
    RowView offcut{button("cut-2", "Offcut, 41 1/4 in, left rack", ShowPiece{{2}}), "", "scrap 3 1/16 in", std::nullopt, Tone::plain};
    offcut.parts = {{0, 0.92, "Right rear 38 3/16 in", CutPart::What::line}, {0.92, 1, "3 1/16 in", CutPart::What::scrap}};
    body.rows = {bought, offcut, offcut};
    body.rows[2].touch.id = "cut-3";
    body.notes = {{"3/16 × 0.028 in 304 stainless: 1 stick, 1 to buy, 6 1/8 in scrap. Nothing does better.", Tone::go}};
    body.pager = pager(true);
    ScreenView view;
    view.key = "plan";
    view.header = {"Tubewright", "cutting plan", {"scrap today 6 1/2 in"}};
    view.body = body;
    view.footer.buttons = {button("undo", "Undo", Undo{}), button("back", "Back", Back{}), button("plan-jobs", "Other jobs", GoTo{Screen::plan_jobs}), button("shop-rules", "How you cut", GoTo{Screen::shop_rules}), button("buy", "What to buy", GoTo{Screen::buy})};
    view.footer.back_id = "back";
    return view;
}

/// A stick that is too short: taken only by holding.
ScreenView short_stick() {
    KeypadBody body;
    body.asks = "How long is the stick?";
    body.entry = "120 3/4";
    body.unit = "inches";
    body.lines = {{"this line takes 123 13/16 in"}, {"Too short by 3 1/16 in. Type a longer one, or hold to use it for a shorter line.", Tone::caution}};
    for (const char* key : {"7", "8", "9", "back", "4", "5", "6", "clear", "1", "2", "3", ".", "0", "1/4", "1/2", "3/4"}) body.keys.push_back(button(std::string("key-") + key, key, Key{key}));
    body.columns = 4;
    ScreenView view;
    view.key = "short-stick";
    view.header = {"Axle crossover", "stick", chips};
    view.body = body;
    ButtonView anyway = button("short-stick", "Hold: use it", NewStick{Length{3000}}), use = button("next", "Use this stick", Next{}, Weight::main);
    anyway.held = true;
    use.enabled = false;
    use.why_not = "too short by less than the tape shows";
    view.footer.buttons = {button("undo", "Undo", Undo{}), button("redo", "Redo", Redo{}), button("back", "Back", Back{}), anyway, use};
    view.footer.buttons[0].enabled = false;
    view.footer.buttons[0].why_not = "done in another job";
    view.footer.main_id = "next";
    view.footer.back_id = "back";
    return view;
}

}  // namespace

std::vector<Sample> simple_samples() {
    std::vector<Sample> all{{"shelf", shelf()}, {"cutting-plan", cutting_plan()}, {"overview", overview()}, {"ticks", ticks()}, {"scrap", scrap_log()}, {"settings", settings()}, {"which-bend", which_bend()}, {"order", order_of_bends()}, {"short-stick", short_stick()}};
    ScreenView noticed = shelf();
    noticed.notice = "The shop book could not be saved: the disk is full. What you did since 10:42 is on this screen only; make room and touch anything.";
    all.push_back({"shelf-notice", noticed});
    ScreenView ticks_noticed = ticks();
    ticks_noticed.notice = "The book is saved again.";
    all.push_back({"ticks-notice", ticks_noticed});
    ScreenView bare = shelf();
    bare.body = ListBody{"Jobs", {}, {{"There is no job file yet. Put one into the folder jobs, or open one of the samples.", Tone::caution}}, {}};
    all.push_back({"shelf-empty", bare});
    return all;
}

}  // namespace tubewright
