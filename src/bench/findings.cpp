#include "bench/findings.h"

#include <algorithm>
#include <iterator>

#include "base/tolerance.h"
#include "bench/fitting.h"
#include "bench/handling.h"
#include "tube/clearance.h"

namespace tubewright {
namespace {

void add(std::vector<Finding>& findings, Severity severity, const char* code, std::optional<std::size_t> bend, Fact fact) {
    findings.push_back({severity, code, bend, std::move(fact)});
}

void look_at_corners(const Line& line, std::vector<Finding>& findings) {
    const bool corners = line.route.form != RouteForm::straights;
    bool any = false;
    for (std::size_t i = 0; i < line.route.bends.size(); ++i) {
        const Angle angle = line.route.bends[i].angle;
        any = any || is_made(line.route.bends[i]);
        if (corners && (angle < tolerance::no_bend || angle > tolerance::sharpest_corner))
            add(findings, Severity::stop, "degenerate-corner", i, DegenerateCorner{i, angle});
        else if (is_made(line.route.bends[i]) && angle < tolerance::springback_linear_from)
            add(findings, Severity::note, "small-angle", i, SmallAngle{i, angle});
    }
    if (!any) add(findings, Severity::caution, "no-bend", std::nullopt, NoBend{});
}

void look_at_bender(const Line& line, std::vector<Finding>& findings) {
    const Length off = line.tube.od - line.bender.tube_od;
    if (off > tolerance::same_groove || -off > tolerance::same_groove)
        add(findings, Severity::stop, "wrong-groove", std::nullopt, WrongGroove{line.tube.od, line.bender.tube_od});
    if (line.route.bends.empty()) return;
    const double ratio = line.bender.radius / line.tube.od + tolerance::radius_ratio;
    if (ratio >= line.material.usual_radius_od) return;
    const bool stop = ratio < line.material.least_radius_od;
    const Length least = (stop ? line.material.least_radius_od : line.material.usual_radius_od) * line.tube.od;
    add(findings, stop ? Severity::stop : Severity::caution, "radius-too-tight", std::nullopt, RadiusTooTight{line.bender.radius, least, stop});
}

void look_at_walls(const Line& line, std::vector<Finding>& findings) {
    for (const End end : {End::A, End::B}) {
        const auto& heaviest = line.end(end).fitting.heaviest_wall;
        if (heaviest && line.tube.wall > *heaviest + tolerance::printed_wall)
            add(findings, Severity::stop, "wall-too-heavy", std::nullopt, WallTooHeavy{end, line.tube.wall, *heaviest});
    }
}

// SAE J512 (1990), scope note: inverted-flare seats in steel are predicated on double flared tubing; a
// single flare needs the maker's advice. A caution, then, and no stop.
void look_at_flares(const Line& line, std::vector<Finding>& findings) {
    if (line.service != Service::brake) return;
    for (const End end : {End::A, End::B})
        if (line.end(end).fitting.id == "flare-45-single")
            add(findings, Severity::caution, "single-flare-on-brake", std::nullopt, SingleFlareOnBrake{end});
}

/// Straight tube between neighbouring bends to be made, or between one and a measured end.
struct Run {
    std::optional<std::size_t> before, after;
    Length length;
};

std::vector<Run> runs(const Part& part) {
    std::vector<Run> found{{}};
    for (std::size_t i = 0; i < part.straights.size(); ++i) {
        found.back().length += part.straights[i];
        if (i == part.bends.size() || !is_made(part.bends[i])) continue;
        found.back().after = i;
        found.push_back({i, std::nullopt, {}});
    }
    return found;
}

/// True where the route leaves no room for its bends.
bool look_at_overlaps(const std::vector<Run>& all, std::vector<Finding>& findings) {
    bool overlap = false;
    for (const Run& run : all) {
        if (run.length >= -tolerance::straight_slack || (!run.before && !run.after)) continue;
        overlap = true;
        const std::size_t first = run.before ? *run.before : *run.after;
        std::optional<End> at_end;
        if (!run.before) at_end = End::A;
        else if (!run.after) at_end = End::B;
        const std::optional<std::size_t> second = run.before ? run.after : std::nullopt;
        add(findings, Severity::stop, "corners-overlap", first, CornersOverlap{first, second, at_end, -run.length});
    }
    return overlap;
}

void look_at_end(const Line& line, End end, const Run& run, std::vector<Finding>& findings) {
    const std::optional<std::size_t> bend = end == End::A ? run.after : run.before;
    if (!bend) return;
    const Fitting& fitting = line.end(end).fitting;
    if (run.length < fitting.straight_needed - tolerance::straight_slack)
        add(findings, Severity::stop, "end-too-short", bend, EndTooShort{end, *bend, run.length, fitting.straight_needed});
    if (fitting.slide_on.empty()) return;
    TrappedPieces trapped{*bend, end, {}};
    for (const SlideOn& piece : fitting.slide_on) trapped.pieces.push_back(piece.name);
    add(findings, Severity::note, "slide-on", bend, trapped);
}

void look_at_room(const Sheet& sheet, std::size_t step, std::vector<Finding>& findings) {
    const Step& at = sheet.steps[step];
    for (const bool hook_side : {true, false}) {
        const Length straight = hook_side ? at.room.hook : at.room.lever;
        const bool open = hook_side ? at.room.hook_at_end : at.room.lever_at_end;
        const Length needed = straight_needed(sheet.line, {at.bend, at.hook}, hook_side, open);
        if (straight >= needed - tolerance::straight_slack) continue;
        const End towards = hook_side ? at.hook : other(at.hook);
        NoRoomInBender fact{at.bend, hook_side, straight, needed, std::nullopt, std::nullopt};
        if (open) fact.at_end = towards, fact.with_pieces = stack_length(sheet.line.end(towards).fitting) > Length{};
        else fact.made_neighbour = next_towards(sheet.layout->part, at.bend, towards);
        // The room ends at the nearest bend already made; one still to be made in between is straight now.
        std::vector<bool> done(sheet.layout->part.bends.size());
        for (std::size_t i = 0; i < step; ++i) done[sheet.steps[i].bend] = true;
        while (fact.made_neighbour && !done[*fact.made_neighbour])
            fact.made_neighbour = next_towards(sheet.layout->part, *fact.made_neighbour, towards);
        add(findings, Severity::stop, "short-straight", at.bend, fact);
    }
}

/// Of the same straight at an end: too short for the fitting and for the bender.
bool same_straight(const EndTooShort& for_fitting, const NoRoomInBender& for_bender) {
    return for_bender.at_end == for_fitting.end && for_bender.bend == for_fitting.bend;
}

// Both ask for a longer leg; who gives what the greater lack asks for has mended both.
void keep_the_greater_lack(std::vector<Finding>& findings) {
    const auto outdone = [&](const Finding& finding) {
        return std::any_of(findings.begin(), findings.end(), [&](const Finding& by) {
            const auto *fitting = std::get_if<EndTooShort>(&finding.fact), *fitting_by = std::get_if<EndTooShort>(&by.fact);
            const auto *bender = std::get_if<NoRoomInBender>(&finding.fact), *bender_by = std::get_if<NoRoomInBender>(&by.fact);
            if (fitting && bender_by) return same_straight(*fitting, *bender_by) && fitting->needed - fitting->straight < bender_by->needed - bender_by->straight;
            if (bender && fitting_by) return same_straight(*fitting_by, *bender) && bender->needed - bender->straight <= fitting_by->needed - fitting_by->straight;
            return false;
        });
    };
    std::vector<Finding> kept;
    std::copy_if(findings.begin(), findings.end(), std::back_inserter(kept), [&](const Finding& finding) { return !outdone(finding); });
    findings = std::move(kept);
}

void look_at_marks(const Sheet& sheet, std::vector<Finding>& findings) {
    for (const Step& step : sheet.steps)
        if (!can_be_inked(step, sheet.line.bender, step.align_to))
            add(findings, Severity::stop, "mark-off-straight", step.bend, MarkOffStraight{step.bend, sheet.line.bender.marks[step.align_to].name});
}

void look_at_angles(const Sheet& sheet, std::vector<Finding>& findings) {
    const Angle limit = sheet.line.bender.max_angle;
    for (const Step& step : sheet.steps)
        if (step.set > limit || step.target > limit)
            add(findings, Severity::stop, "angle-beyond-bender", step.bend, AngleBeyondBender{step.bend, step.set, step.target, limit});
}

void look_at_clearance(const Sheet& sheet, std::vector<Finding>& findings) {
    const auto approach = closest_approach(sheet.layout->part, sheet.line.tube.od, tolerance::touching);
    if (!approach) return;
    const bool stop = approach->gap < Length{};
    std::optional<std::size_t> bend;
    if (approach->second % 2 == 1) bend = approach->second / 2;
    else if (approach->first % 2 == 1) bend = approach->first / 2;
    add(findings, stop ? Severity::stop : Severity::caution, "hits-itself", bend, HitsItself{approach->first, approach->second, approach->gap, stop});
}

}  // namespace

bool too_sharp(const Route& route) {
    return route.form != RouteForm::straights &&
           std::any_of(route.bends.begin(), route.bends.end(), [](const Bend& bend) { return bend.angle > tolerance::sharpest_corner; });
}

std::vector<Finding> line_findings(const Line& line) {
    std::vector<Finding> findings;
    look_at_corners(line, findings);
    look_at_bender(line, findings);
    look_at_walls(line, findings);
    look_at_flares(line, findings);
    return findings;
}

std::vector<Finding> step_findings(const Sheet& sheet) {
    std::vector<Finding> findings;
    const std::vector<Run> all = runs(sheet.layout->part);
    const bool overlap = look_at_overlaps(all, findings);
    look_at_end(sheet.line, End::A, all.front(), findings);
    look_at_end(sheet.line, End::B, all.back(), findings);
    for (std::size_t step = 0; step < sheet.steps.size(); ++step) look_at_room(sheet, step, findings);
    keep_the_greater_lack(findings);
    look_at_angles(sheet, findings);
    look_at_marks(sheet, findings);
    if (!overlap) look_at_clearance(sheet, findings);
    if (sheet.layout->part.bends.size() > most_bends_looked_at)
        add(findings, Severity::caution, "order-not-looked", std::nullopt, OrderNotLooked{false});
    if (sheet.line.stick && sheet.layout->cut_length > *sheet.line.stick)
        add(findings, Severity::stop, "longer-than-stick", std::nullopt, LongerThanStick{sheet.layout->cut_length, *sheet.line.stick});
    return findings;
}

}  // namespace tubewright
