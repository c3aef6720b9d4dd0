// Can this tube be saved? What is off, the ways to make it up, or why there is none.

#include <algorithm>

#include "present/pieces.h"
#include "present/rescue_words.h"
#include "present/words.h"
#include "state/rescue_look.h"

namespace tubewright {
namespace {

constexpr std::size_t rows_there = 3;

constexpr const char* way_names[rows_there] = {"1st", "2nd", "3rd"};

/// One thing that can be done: its row, what the main button does, and the tube that comes of it.
struct Option {
    RowView row;
    ButtonView take;
    std::string caption;
    TubePlan plan;
    EndsOff off;
};

std::string pull_again_words(const State& state) {
    const Step& step = *step_in_hand(state);
    const LineWork work = work_in_hand(state);
    const Angle to = pull_again_to(*sheet_in_hand(state), step, work, belief_in_hand(state, work, *work.last_reading));
    return "Pull " + bend_name(step.bend) + " again to " + lever_text(to, reader_tape(state));
}

/// A bend that is under is pulled on before anything else is changed for it.
Option pull_again_option(const State& state, const RescueLook& look) {
    const std::string words = pull_again_words(state);
    return {{press_button("way-pull", words, PickWay{0}), "It is under: that is the first thing to do.", "", std::nullopt, Tone::go}, press_button("pull-again", words, PullAgain{}), "pulled again", *look.pulled, look.pulled_off};
}

Option way_option(const RescueLook& look, std::size_t i, std::size_t row, const Tape& tape) {
    const RescueWay& way = look.found.ways[i];
    const Length known = std::max(way.doubt.a.place, way.doubt.b.place);
    const std::string id = "way-" + std::to_string(i + 1);
    if (way.changes.empty()) return {{press_button(id, "Go on as planned", PickWay{row}), "Nothing has to be changed.", "", std::nullopt, Tone::go}, press_button("take-way", "Go on as planned", TakeRescue{i}), "if gone on as planned", way.plan, way.off};
    const std::string name = std::string(way_names[i]) + " way", detail = capital(name) + ", then off: " + off_words(way.off, tape) + " (±" + band_text(known, tape.unit) + ").";
    return {{press_button(id, way_words(way, look.sheet, tape), PickWay{row}), detail, "", std::nullopt}, press_button("take-way", "Take this way", TakeRescue{i}), "the " + name, way.plan, way.off};
}

std::vector<Option> options_of(const State& state, const RescueLook& look) {
    std::vector<Option> options;
    if (look.pulled) options.push_back(pull_again_option(state, look));
    for (std::size_t i = 0; i < look.found.ways.size() && options.size() < rows_there; ++i) options.push_back(way_option(look, i, options.size(), reader_tape(state)));
    return options;
}

std::string as_planned_words(const RescueLook& look, const Tape& tape) { return "Laid at its best, the ends are off: " + off_words(look.found.as_it_is, tape) + " (±" + band_text(look.more.known, tape.unit) + ")."; }

bool can_read_more(const State& state) {
    const LineWork work = work_in_hand(state);
    return !state.rescue->more.readings.empty() || !work.turns.empty() || !work.tapes.empty();
}

/// What is still off stands at each end.
PictureView picture_of(const RescueLook& look, const std::string& caption, const TubePlan& plan, const EndsOff& off, const Tape& tape) {
    PictureView picture{PictureView::Kind::finished, 0, caption, {{Anchor::hook_end, end_words(End::A, off.a, tape)}, {Anchor::lever_end, end_words(End::B, off.b, tape)}}};
    picture.laid_over = LaidOverPicture{look.wanted, part_of(plan)};
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
    const bool pull = look.pulled.has_value();
    std::vector<Option> options = options_of(state, look);
    view.footer = side_footer(state);
    if (can_read_more(state)) view.footer.buttons.push_back(press_button("more", "Measure more", GoTo{Screen::rescue_more}));
    body.picture = picture_of(look, "if gone on as planned", look.as_it_is, look.found.as_it_is, tape);
    if (!options.empty()) {
        Option& picked = options[std::min(state.looks.picked_way, options.size() - 1)];
        picked.row.touch.chosen = true;
        picked.row.tone = Tone::now;
        body.picture = picture_of(look, picked.caption, picked.plan, picked.off, tape);
        // Not by the foot switch: what is taken here has to be read first.
        picked.take.weight = Weight::main;
        view.footer.buttons.push_back(picked.take);
    }
    for (const Option& option : options) list.rows.push_back(option.row);
    if (look.found.ways.empty()) {
        list.heading = pull ? "Pull it again. As it is it can't be saved." : "It can't be saved.";
        list.notes.insert(list.notes.end(), {{bar_words(look.found, look.sheet, tape), pull ? Tone::caution : Tone::stop}, {as_planned_words(look, tape) + " An end may be " + text(look.tolerance.place, tape) + " and " + text(look.tolerance.direction, tape) + " off."}});
        const std::vector<TextView> good = still_good_notes(state);
        list.notes.insert(list.notes.end(), good.begin(), good.end());
        if (good.empty()) list.notes.push_back({"It makes no other line of this job. Went wrong asks what is worth keeping."});
    } else if (look.found.fits) {
        list.heading = pull ? "Pull it again. It fits as it is, too." : "It fits as it is: go on as planned.";
        list.notes.push_back({as_planned_words(look, tape)});
    } else {
        list.heading = pull ? "Pull again, or save it another way." : "It can be saved. Touch a way to see it.";
        list.notes.push_back({as_planned_words(look, tape)});
        add_saved_notes(state, list.notes);
    }
    view.header = line_header(state, "save the tube");
    view.body = std::move(body);
    if (look.found.ways.empty() && !pull) view.footer.buttons.insert(view.footer.buttons.begin(), press_button("wrong", "Went wrong", WentWrong{}, Weight::warn));
}

}  // namespace tubewright
