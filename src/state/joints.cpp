#include "state/joints.h"

#include <algorithm>
#include <set>

#include "state/doing.h"

namespace tubewright {

const LineEnd& line_end(const State& state, const EndOfSheet& of) {
    const Line& line = state.sheets.at(of.line).line;
    return of.end == End::A ? line.a : line.b;
}

EndOfLine key_of(const State& state, const EndOfSheet& of) { return {line_key(state.job_id, state.sheets.at(of.line).line.name), of.end}; }

std::optional<EndOfSheet> end_by_key(const State& state, const EndOfLine& key) {
    for (const EndOfSheet& of : all_ends(state))
        if (key_of(state, of) == key) return of;
    return std::nullopt;
}

std::vector<EndOfSheet> all_ends(const State& state) {
    std::vector<EndOfSheet> ends;
    for (std::size_t line = 0; line < state.sheets.size(); ++line)
        for (const End end : {End::A, End::B}) ends.push_back({line, end});
    return ends;
}

bool takes_a_joint(const LineEnd& end) { return !end.fitting.slide_on.empty(); }

std::optional<Joint> joint_of(const Work& work, const EndOfLine& key, const LineEnd& end) {
    const auto found = work.joints.find(key);
    return found == work.joints.end() || !takes_a_joint(end) ? std::nullopt : std::optional(found->second);
}

std::optional<Joint> joint_of(const State& state, const EndOfSheet& of) { return joint_of(state.work, key_of(state, of), line_end(state, of)); }

std::vector<Joint> joints_in_use(const State& state) {
    std::set<Joint> joints;
    for (const EndOfSheet& of : all_ends(state))
        if (const auto joint = joint_of(state, of)) joints.insert(*joint);
    return {joints.begin(), joints.end()};
}

std::vector<EndOfSheet> ends_in(const State& state, const Joint& joint) {
    std::vector<EndOfSheet> ends = all_ends(state);
    std::erase_if(ends, [&](const EndOfSheet& of) { return joint_of(state, of) != joint; });
    return ends;
}

namespace {

JointPlaces places_of(const State& state, JointKind kind, const std::vector<EndOfSheet>& ends) {
    std::size_t taken = 0, most = 1;
    for (const EndOfSheet& of : ends) {
        const auto pieces = static_cast<std::size_t>(state.sheets.at(of.line).line.quantity);
        taken += pieces;
        most = std::max(most, pieces);
    }
    return {taken, most * ends_held(kind)};
}

}  // namespace

JointPlaces places_of(const State& state, const Joint& joint) { return places_of(state, joint.kind, ends_in(state, joint)); }

Joint new_joint(const State& state, JointKind kind) {
    std::set<int> told;
    for (const auto& [key, joint] : state.work.joints)
        if (joint.kind == kind && key.line.rfind(line_key(state.job_id, ""), 0) == 0) told.insert(joint.number);
    Joint joint{kind, 1};
    while (told.contains(joint.number)) ++joint.number;
    return joint;
}

JointBar bar_to_joint(const State& state, const EndOfSheet& of, const Joint& joint) {
    if (!takes_a_joint(line_end(state, of))) return JointBar::no_nut;
    if (joint_of(state, {of.line, of.end == End::A ? End::B : End::A}) == joint) return JointBar::other_end;
    std::vector<EndOfSheet> with = ends_in(state, joint);
    if (joint_of(state, of) != joint) with.push_back(of);
    const JointPlaces then = places_of(state, joint.kind, with);
    return then.taken > then.there ? JointBar::full : JointBar::none;
}

bool is_of_two_flares(const State& state, const Joint& joint) {
    std::set<std::string> fittings;
    for (const EndOfSheet& of : ends_in(state, joint)) fittings.insert(line_end(state, of).fitting.id);
    return fittings.size() > 1;
}

void ask_joint(Doing& doing, const EndOfLine& key) {
    State& state = doing.state;
    const auto of = end_by_key(state, key);
    if (state.looks.screen != Screen::joints || !of || !takes_a_joint(line_end(state, *of))) return;
    show_beside(state, Screen::joint);
    state.looks.end = key;
}

void goes_into(Doing& doing, const std::optional<Joint>& joint) {
    State& state = doing.state;
    const auto of = state.looks.screen == Screen::joint && state.looks.end ? end_by_key(state, *state.looks.end) : std::nullopt;
    if (!of || (joint && bar_to_joint(state, *of, *joint) != JointBar::none)) return;
    if (joint && ends_in(state, *joint).empty() && *joint != new_joint(state, joint->kind)) return;
    Work next = state.work;
    if (joint) next.joints[*state.looks.end] = *joint;
    else next.joints.erase(*state.looks.end);
    if (next != state.work) change_work(doing, std::move(next));
    leave_beside(state);
}

}  // namespace tubewright
