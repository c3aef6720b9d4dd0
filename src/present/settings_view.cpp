// The reader's settings, and how the bender stands in front of the operator.

#include <algorithm>
#include <cmath>

#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// Steps of the scale: 2.5 mm and a quarter of a millimetre of the 50 mm bar.
constexpr double coarse_step = 1.05, fine_step = 1.005;
/// Used for − and + where neither reader nor screen has said anything: an ordinary 96 dpi screen.
constexpr double assumed_px_per_mm = 96 / 25.4;

ButtonView option(const std::string& id, const std::string& label, const Action& press, bool chosen) {
    ButtonView button = press_button(id, label, press);
    button.chosen = chosen;
    return button;
}

double scale_in_force(const State& state) {
    if (state.settings.px_per_mm > 0) return state.settings.px_per_mm;
    return state.screen_px_per_mm > 0 ? state.screen_px_per_mm : assumed_px_per_mm;
}

std::string other_ink_marks(const State& state) {
    const LineWork work = work_in_hand(state);
    const bool inked = work.cut && (work.stage == Stage::mark_out || work.stage == Stage::bending);
    return inked ? "Marks inked for another line or hand are wrong now: rub them out, mark again." : "";
}

/// Which line of the bender the ink mark goes on, and where that stands.
std::string line_words(const Bender& bender, std::size_t mark, const Tape& tape) {
    const Length offset = bender.marks[mark].offset;
    const std::string name = bender.marks[mark].name;
    const std::string said = "Line " + name + " is the line on the bender that is marked " + name + ". Lay the tube's ink mark on it; the bend starts ";
    if (on_tape(offset, tape) == Length{}) return said + "there.";
    return said + text(Length{std::abs(offset.mm)}, tape) + (offset > Length{} ? " before it, on the hook's side." : " past it, on the lever's side.");
}

/// A card is only as good as its measures.
TextView card_words(const State& state, const Bender& bender) {
    if (state.own_cards.contains(bender.id)) return {"The card has the measures you took on your bender.", Tone::go};
    return {"The card's measures are a plain bender's, not yours: measure where its lines stand before you cut.", Tone::caution};
}

}  // namespace

void fill_settings(const State& state, ScreenView& view) {
    const Settings& now = state.settings;
    const double scale = scale_in_force(state);
    SettingsBody body;
    body.groups.push_back({"Lengths in", {option("unit-job", "as the job", SetUnit{std::nullopt}, !now.unit), option("unit-in", "inch", SetUnit{Unit::inch}, now.unit == Unit::inch), option("unit-mm", "mm", SetUnit{Unit::mm}, now.unit == Unit::mm)}});
    SettingsGroup tape{"Inch tape to", {}};
    for (const int denominator : {16, 32, 64})
        tape.choices.push_back(option("tape-" + std::to_string(denominator), "1/" + std::to_string(denominator), SetTape{denominator}, now.tape_denominator == denominator));
    body.groups.push_back(tape);
    body.groups.push_back({"Colours", {option("light", "light", SetTheme{Theme::light}, now.theme == Theme::light), option("dark", "dark", SetTheme{Theme::dark}, now.theme == Theme::dark)}});
    body.groups.push_back({"Scale", {press_button("much-less", "−5 %", SetScale{scale / coarse_step}), press_button("less", "−0.5 %", SetScale{scale / fine_step}), press_button("more", "+0.5 %", SetScale{scale * fine_step}), press_button("much-more", "+5 %", SetScale{scale * coarse_step})}});
    body.ruler = true;
    body.ruler_text = "This bar is 50 mm long when the scale is right. Lay a rule on it and press − or + until it is.";
    body.notes = {{two_places(scale) + " pixels to the millimetre"}};
    view.header = header_of(state, "Tubewright", "settings");
    view.body = std::move(body);
    view.footer.buttons = {back_button(), press_button("keep-safe", "Backups and tables", GoTo{Screen::keep_safe})};
    view.footer.back_id = "back";
}

void fill_stance(const State& state, ScreenView& view) {
    const Sheet& sheet = *sheet_in_hand(state);
    const SetUp now = sheet.set_up;
    SettingsBody body;
    SettingsGroup hands{"The hook is on your", {}}, swings{"The lever bends it", {}}, marks{"Lay the ink marks on the bender's line", {}};
    for (const HookHand hand : {HookHand::left, HookHand::right})
        hands.choices.push_back(option("hook-" + hand_word(hand), hand_word(hand), ChooseSetUp{{hand, now.swing}}, now.hook == hand));
    const std::pair<Swing, const char*> names[] = {{Swing::away, "away"}, {Swing::toward, "toward me"}, {Swing::up, "up"}, {Swing::down, "down"}};
    for (const auto& [swing, name] : names)
        swings.choices.push_back(option("swing-" + std::to_string(static_cast<int>(swing)), name, ChooseSetUp{{now.hook, swing}}, now.swing == swing));
    const std::string& chosen = state.work.benders.contains(sheet.line.bender.id) ? state.work.benders.at(sheet.line.bender.id).mark : std::string();
    const std::string usual = sheet.line.bender.marks.empty() ? "" : sheet.line.bender.marks[usual_mark(sheet.line.bender)].name;
    for (std::size_t i = 0; i < sheet.line.bender.marks.size(); ++i) {
        const std::string& name = sheet.line.bender.marks[i].name;
        marks.choices.push_back(option("mark-" + std::to_string(i), name, ChooseMark{name}, name == (chosen.empty() ? usual : chosen)));
    }
    body.groups = {hands, swings, marks};
    if (sheet.layout && !sheet.steps.empty()) {
        const std::size_t step = std::min(work_in_hand(state).step, sheet.steps.size() - 1);
        body.picture = PictureView{PictureView::Kind::pulled, step, "As you stand at the bench", {{Anchor::hook_end, "hook"}, {Anchor::lever, "lever"}, {Anchor::after_pull, "after the pull"}}};
        const std::size_t mark = sheet.steps[step].align_to;
        body.picture->labels.push_back({Anchor::mark, "ink mark on line " + sheet.line.bender.marks[mark].name});
        body.notes.push_back({line_words(sheet.line.bender, mark, reader_tape(state))});
    }
    const std::string again = other_ink_marks(state);
    if (again.empty()) {  // once there is ink, what is done about it comes before where the measures come from
        body.notes.push_back(card_words(state, sheet.line.bender));
        body.notes.push_back({sheet.line.bender.name.empty() ? sheet.line.bender.id : sheet.line.bender.name});
    }
    bool hits = false;
    for (const Finding& finding : sheet.findings) {
        if (!std::holds_alternative<HitsAsItStands>(finding.fact)) continue;
        hits = true;
        body.notes.push_back({sentence(finding, {reader_tape(state), &sheet.line}), finding.severity == Severity::stop ? Tone::stop : Tone::caution});
        break;  // one is enough to stand it another way; the line's own screen has them all
    }
    // Both have no room; marks that moved stop the work later, and say so then.
    if (!again.empty() && !hits) body.notes.push_back({again, Tone::caution});
    view.header = line_header(state, "bender");
    view.body = std::move(body);
    view.footer = side_footer(state);
    view.footer.buttons.push_back(press_button("bends", "What your bends say", GoTo{Screen::bends}));
    view.footer.buttons.push_back(press_button("card", "The bender's measures", GoTo{Screen::card}));
}

}  // namespace tubewright
