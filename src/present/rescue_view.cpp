// Can this tube be saved? What is off, the ways to make it up, or why there is none.

#include <algorithm>

#include "present/pieces.h"
#include "present/rescue_words.h"
#include "present/words.h"
#include "state/rescue_look.h"

namespace tubewright {
namespace {

constexpr std::size_t rows_there = 3;

/// A bend that is under is pulled on before anything else is changed for it.
std::optional<RowView> pull_again_row(const State& state, const RescueLook& look) {
    const Step* step = step_in_hand(state);
    if (!look.reading || !step || verdict(step->target, *look.reading) != Verdict::under) return std::nullopt;
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const Angle to = pull_again_to(sheet, *step, work, belief_in_hand(state, work, *look.reading));
    if (to > sheet.line.bender.max_angle) return std::nullopt;
    return RowView{press_button("pull-again", "Pull " + bend_name(step->bend) + " again to " + lever_text(to, reader_tape(state)), PullAgain{}), "It is under: that is the first thing to do.", "", std::nullopt, Tone::go};
}

RowView way_row(const RescueLook& look, std::size_t i, const Tape& tape) {
    const RescueWay& way = look.found.ways[i];
    const Length known = std::max(way.doubt.a.place, way.doubt.b.place);
    RowView row{press_button("way-" + std::to_string(i + 1), way_words(way, look.sheet, tape), TakeRescue{i}), "Then off: " + off_words(way.off, tape) + " (±" + band_text(known, tape.unit) + ").", "", std::nullopt};
    if (way.changes.empty()) row = {press_button(row.touch.id, "Go on as planned", TakeRescue{i}), "Nothing has to be changed.", "", std::nullopt, Tone::go};
    return row;
}

std::string as_planned_words(const RescueLook& look, const Tape& tape) { return "As planned the ends are off: " + off_words(look.found.as_it_is, tape) + "."; }

PictureView picture_of(const RescueLook& look) {
    PictureView picture{PictureView::Kind::finished, 0, "", {{Anchor::hook_end, "A"}, {Anchor::lever_end, "B"}}};
    picture.caption = "if gone on as planned";
    picture.laid_over = LaidOverPicture{look.wanted, part_of(look.as_it_is)};
    picture.legend = {{Swatch::stands, "as wanted"}, {Swatch::swings, "as it comes"}};
    return picture;
}

void add_saved_notes(const State& state, std::vector<TextView>& notes) {
    const bool brake = state.job->service == Service::brake;
    notes.push_back({brake ? "A saved brake line is held on the vehicle before it is flared. What the vehicle's maker says comes first." : "A saved tube is held in its place before an end is cut or flared.", Tone::caution});
}

}  // namespace

std::optional<ButtonView> rescue_button(const State& state) {
    if (!steps_to_save(state)) return std::nullopt;
    return press_button("rescue", "Can this tube be saved?", LookAtRescue{});
}

std::vector<TextView> still_good_notes(const State& state) {
    if (!state.rescue || !state.rescue->found.ways.empty()) return {};
    return good_for_words(state.rescue->good, state.sheets, reader_tape(state));
}

std::string held_in_place_words(const State& state) {
    const std::string held = "Saved tube: hold it in its place before an end is cut or flared. Both ends and every clip without force.";
    return state.job->service == Service::brake ? held + " The vehicle's maker comes first." : held;
}

void fill_rescue(const State& state, ScreenView& view) {
    const RescueLook& look = *state.rescue;
    const Tape tape = reader_tape(state);
    CardBody body;
    ListBody& list = body.figures;
    const auto pull = pull_again_row(state, look);
    if (pull) list.rows.push_back(*pull);
    for (std::size_t i = 0; i < look.found.ways.size() && list.rows.size() < rows_there; ++i) list.rows.push_back(way_row(look, i, tape));
    if (look.found.ways.empty()) {
        list.heading = pull ? "Pull it again. As it is it can't be saved." : "It can't be saved.";
        list.notes = {{bar_words(look.found, look.sheet, tape), pull ? Tone::caution : Tone::stop}, {as_planned_words(look, tape) + " An end may be " + text(look.tolerance.place, tape) + " and " + text(look.tolerance.direction, tape) + " off."}};
        const std::vector<TextView> good = still_good_notes(state);
        list.notes.insert(list.notes.end(), good.begin(), good.end());
        if (good.empty()) list.notes.push_back({"It makes no other line of this job. Went wrong asks what is worth keeping."});
    } else if (look.found.fits) {
        list.heading = pull ? "Pull it again. It fits as it is, too." : "It fits as it is: go on as planned.";
        list.notes = {{as_planned_words(look, tape)}};
    } else {
        list.heading = pull ? "Pull again, or save it another way." : "It can be saved: touch the way you take.";
        list.notes = {{as_planned_words(look, tape)}};
        add_saved_notes(state, list.notes);
    }
    body.picture = picture_of(look);
    view.header = line_header(state, "save the tube");
    view.body = std::move(body);
    view.footer = side_footer(state);
    if (look.found.ways.empty() && !pull) view.footer.buttons.insert(view.footer.buttons.begin(), press_button("wrong", "Went wrong", WentWrong{}, Weight::warn));
}

}  // namespace tubewright
