#include "present/entry_pieces.h"

#include <algorithm>

#include "present/words.h"

namespace tubewright {
namespace {

using What = Cell::What;

std::string move_words(const MeasuredMove& move, Unit unit) {
    std::string words;
    for (const auto& [way, length] : move.along) words += (words.empty() ? "" : ", ") + way_word(way) + " " + exact(length, unit);
    return words;
}

/// The part of the picture that a cell's number is of. Moves that go on the same way are one leg there.
std::optional<LitPart> lit_part(const State& state) {
    const Cell& cell = state.entry->page.cell;
    const Route& route = state.entry_sheet->line.route;
    const auto within = [&](LitPart::What what, std::size_t count) { return cell.index < count ? std::optional(LitPart{what, cell.index}) : std::nullopt; };
    switch (cell.what) {
        case What::run: return within(LitPart::What::run, route.runs.size());
        case What::angle:
        case What::turn: return within(LitPart::What::bend, route.bends.size());
        case What::move: return state.entry->line().route.moves.size() == route.runs.size() ? within(LitPart::What::run, route.runs.size()) : std::nullopt;
        case What::trim_a:
        case What::trim_b: return std::nullopt;
    }
    return std::nullopt;
}

/// What is found at end B, and that there is no bend, says nothing while the wire goes on beyond what is entered.
bool is_too_early(const Fact& fact) {
    if (const auto* found = std::get_if<NoRoomInBender>(&fact)) return found->at_end == End::B;
    if (const auto* found = std::get_if<CornersOverlap>(&fact)) return found->at_end == End::B;
    if (const auto* found = std::get_if<EndTooShort>(&fact)) return found->end == End::B;
    return std::holds_alternative<NoBend>(fact);
}

}  // namespace

std::string way_word(MoveWay way) {
    switch (way) {
        case MoveWay::forward: return "forward";
        case MoveWay::back: return "back";
        case MoveWay::left: return "left";
        case MoveWay::right: return "right";
        case MoveWay::up: return "up";
        case MoveWay::down: return "down";
    }
    return "";
}

std::string cell_name(const Cell& cell, RouteForm form) {
    const std::string number = " " + std::to_string(cell.index + 1);
    switch (cell.what) {
        case What::run: return (form == RouteForm::straights ? "straight" : "leg") + number;
        case What::angle: return "bend" + number;
        case What::turn: return "turn" + number;
        case What::move: return "move" + number;
        case What::trim_a: return "extra at A";
        case What::trim_b: return "extra at B";
    }
    return "";
}

std::string cell_value(const DraftLine& line, const Cell& cell, Unit unit) {
    if (const auto end = trimmed_end(cell)) return exact(line.end(*end).trim, unit);
    const MeasuredRoute& route = line.route;
    if (!has_value(route, cell)) return "";
    switch (cell.what) {
        case What::run: {
            const std::string said = exact(route.runs[cell.index], unit);
            return unit == Unit::mm ? said.substr(0, said.find(' ')) : said;  // the header says mm
        }
        case What::angle: return exact(route.bends[cell.index].angle);
        case What::turn: {
            const Angle turn = wrapped(*route.bends[cell.index].rotation);
            if (turn == Angle{0}) return "same way";
            if (turn == Angle{180}) return "other way";
            return turn.deg < 0 ? exact(-turn) + " left" : exact(turn) + " right";
        }
        case What::move: return move_words(route.moves[cell.index], unit);
        case What::trim_a:
        case What::trim_b: break;
    }
    return "";
}

std::string form_word(const MeasuredRoute& route) {
    switch (route.form) {
        case RouteForm::legs:
            return route.measured_to == TapeEdge::outside ? "legs to the outside" : route.measured_to == TapeEdge::inside ? "legs to the inside" : "legs to the centre";
        case RouteForm::straights: return "straights";
        case RouteForm::points: return "corner points";
        case RouteForm::moves: return "by direction";
    }
    return "";
}

std::string ask_word(Ask ask) {
    switch (ask) {
        case Ask::service: return "What does it carry?";
        case Ask::tube: return "Which tube?";
        case Ask::material: return "What is it made of?";
        case Ask::bender: return "Which bender?";
        case Ask::fittings: return "What goes on its ends?";
        case Ask::fitting_a: return "What goes on end A?";
        case Ask::fitting_b: return "What goes on end B?";
        case Ask::form: return "How was it measured?";
    }
    return "";
}

void fill_length_keys(RouteBody& body, Unit unit) {
    const std::vector<std::string> inches{"7", "8", "9", "1/8", "1/4", "4", "5", "6", "3/8", "1/2", "1", "2", "3", "5/8", "3/4", ".", "0", "+1/32", "+1/16", "7/8"};
    const std::vector<std::string> millimetres{"7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0", "clear"};
    body.columns = unit == Unit::inch ? 5 : 3;
    for (const std::string& name : unit == Unit::inch ? inches : millimetres) body.keys.push_back(press_button("key-" + name, name, Key{name}));
}

HeaderView entry_header(const State& state, const std::string& place) {
    const Entry& entry = *state.entry;
    HeaderView header{entry.page.job.name, place, {}};
    if (entry.page.job.lines.size() > 1) header.chips.push_back(entry.line().name);
    header.chips.push_back(unit_word(entry.page.job.unit));
    return header;
}

FooterView entry_footer(const State& state) {
    const Entry& entry = *state.entry;
    FooterView footer;
    footer.buttons = {back_button(), unless(press_button("undo", "Undo", Undo{}), entry.past.empty() ? "nothing to undo" : "")};
    if (!entry.future.empty()) footer.buttons.push_back(press_button("redo", "Redo", Redo{}));
    footer.back_id = "back";
    return footer;
}

std::optional<PictureView> entered_picture(const State& state) {
    if (!state.entry_sheet || !state.entry_sheet->layout) return std::nullopt;
    PictureView picture{PictureView::Kind::finished, 0, "", {{Anchor::hook_end, "A"}}};
    if (route_from(state.entry->line().route).ok()) picture.labels.push_back({Anchor::lever_end, "B"});  // not where a leg is still to be measured
    picture.entered = true;
    if (state.looks.screen != Screen::route) return picture;
    picture.lit = lit_part(state);
    if (picture.lit) picture.labels.push_back({Anchor::bend, cell_name(state.entry->page.cell, state.entry->line().route.form)});
    return picture;
}

std::vector<TextView> entered_findings(const State& state, std::size_t most) {
    std::vector<TextView> said;
    if (!state.entry->trouble.empty()) said.push_back({state.entry->trouble, Tone::caution});
    if (!state.entry_sheet) return said;
    const Sheet& sheet = *state.entry_sheet;
    const Tape tape{state.entry->page.job.unit, state.settings.tape_denominator};
    for (const Severity severity : {Severity::stop, Severity::caution})
        for (const Finding& finding : sheet.findings)
            if (finding.severity == severity && !std::holds_alternative<TrappedPieces>(finding.fact) && !(state.entry->line().unfinished && is_too_early(finding.fact))) said.push_back({sentence(finding, {tape, &sheet.line}), tone_of(severity)});
    if (said.size() > most) said.resize(most);
    return said;
}

}  // namespace tubewright
