// Which ends share a tee or a union, and where one end goes.

#include "present/entry_pieces.h"
#include "present/pieces.h"
#include "present/words.h"
#include "state/joints.h"

namespace tubewright {
namespace {

std::string kind_word(JointKind kind) { return kind == JointKind::tee ? "tee" : "union"; }

std::string joint_words(const Joint& joint) { return kind_word(joint.kind) + " " + std::to_string(joint.number); }

std::string end_words(const State& state, const EndOfSheet& of) { return shortened(state.sheets.at(of.line).line.name) + ", " + end_name(of.end); }

/// Who is there: "with left rear, end A"; "with left rear, end A, and 1 more"; how many it holds where nobody is.
std::string company_words(const State& state, const EndOfSheet& of, const Joint& joint) {
    std::vector<EndOfSheet> others = ends_in(state, joint);
    std::erase(others, of);
    if (others.empty()) return "for " + counted(ends_held(joint.kind), "end", "ends");
    return "with " + end_words(state, others.front()) + (others.size() > 1 ? ", and " + std::to_string(others.size() - 1) + " more" : "");
}

TileView end_tile(const State& state, const EndOfSheet& of) {
    const auto joint = joint_of(state, of);
    TileView made = tile("end-" + std::to_string(of.line + 1) + (of.end == End::A ? "A" : "B"), end_words(state, of), joint ? capital(joint_words(*joint)) : "Port", AskJoint{key_of(state, of)});
    if (!takes_a_joint(line_end(state, of))) {
        made.touch.label = "No nut";
        made.touch = unless(std::move(made.touch), made.name);
    }
    made.touch.chosen = joint.has_value();
    return made;
}

TextView joint_note(const State& state) {
    const std::vector<Joint> joints = joints_in_use(state);
    for (const Joint& joint : joints)
        if (const JointPlaces places = places_of(state, joint); places.taken > places.there) return {capital(joint_words(joint)) + " has " + std::to_string(places.taken) + " ends here and room for " + std::to_string(places.there) + ": send one elsewhere.", Tone::stop};
    for (const Joint& joint : joints)
        if (is_of_two_flares(state, joint)) return {capital(joint_words(joint)) + " joins two kinds of flare. Each seals on its own seat only: buy a part that is made for both, or make the ends alike.", Tone::caution};
    return {"Touch an end that goes into a tee or union: the part goes on the list to buy, and the clips stand closer."};
}

std::string bar_words(JointBar bar) {
    switch (bar) {
        case JointBar::none: return "";
        case JointBar::no_nut: return "the end has no nut";
        case JointBar::other_end: return "this line's other end is in it";
        case JointBar::full: return "no place is free";
    }
    return "";
}

TileView place_tile(const State& state, const EndOfSheet& of, const Joint& joint, const std::string& id, const std::string& label) {
    TileView made = tile(id, company_words(state, of, joint), label, GoesInto{joint});
    made.touch = unless(std::move(made.touch), bar_words(bar_to_joint(state, of, joint)));
    made.touch.chosen = joint_of(state, of) == joint;
    return made;
}

}  // namespace

void fill_joints(const State& state, ScreenView& view) {
    TilesBody body;
    body.heading = "Which ends share a tee or a union?";
    std::vector<TileView> tiles;
    for (const EndOfSheet& of : all_ends(state)) tiles.push_back(end_tile(state, of));
    body.notes = {joint_note(state)};
    view.header = header_of(state, state.job->name, "tees and unions");
    view.footer = side_footer(state);
    show_page_of(state, tiles, body, view.footer);
    view.body = std::move(body);
}

void fill_joint(const State& state, ScreenView& view) {
    const auto found = state.looks.end ? end_by_key(state, *state.looks.end) : std::nullopt;
    if (!found) return;
    TilesBody body;
    body.heading = "Where does " + end_words(state, *found) + " go?";
    std::vector<TileView> tiles{tile("port", "nothing to buy", "A port that is there", GoesInto{std::nullopt})};
    tiles[0].touch.chosen = !joint_of(state, *found);
    for (const Joint& joint : joints_in_use(state)) tiles.push_back(place_tile(state, *found, joint, kind_word(joint.kind) + "-" + std::to_string(joint.number), capital(joint_words(joint))));
    tiles.push_back(place_tile(state, *found, new_joint(state, JointKind::tee), "new-tee", "A new tee"));
    tiles.push_back(place_tile(state, *found, new_joint(state, JointKind::union_piece), "new-union", "A new union"));
    body.notes = {{"A flare seals only on the seat that is made for it: a 37° one not on 45°. What the vehicle's maker says comes first.", Tone::caution}};
    view.header = header_of(state, state.job->name, "tees and unions");
    view.footer = side_footer(state);
    show_page_of(state, tiles, body, view.footer);
    view.body = std::move(body);
}

}  // namespace tubewright
