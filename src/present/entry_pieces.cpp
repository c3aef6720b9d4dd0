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

/// End A and then the corners, as bends are counted.
std::string point_name(std::size_t index) { return index == 0 ? "A" : std::to_string(index); }

std::string cell_length(Length length, Unit unit) {
    const std::string said = exact(length, unit);
    return unit == Unit::mm ? said.substr(0, said.find(' ')) : said;  // the header says mm
}

/// The part of the picture that a cell's number is of. Moves that go on the same way are one leg there.
std::optional<LitPart> lit_part(const State& state) {
    const Cell& cell = state.entry->page.cell;
    const Route& route = entry_in_sight(state)->line.route;
    const auto within = [](LitPart::What what, std::size_t count, std::size_t index) { return index < count ? std::optional(LitPart{what, index}) : std::nullopt; };
    switch (cell.what) {
        case What::run: return within(LitPart::What::run, route.runs.size(), cell.index);
        case What::angle:
        case What::turn: return within(LitPart::What::bend, route.bends.size(), cell.index);
        case What::move: return state.entry->line().route.moves.size() == route.runs.size() ? within(LitPart::What::run, route.runs.size(), cell.index) : std::nullopt;
        case What::x:
        case What::y:
        case What::z: return cell.index == 0 ? std::nullopt : within(LitPart::What::run, route.runs.size(), cell.index - 1);  // the leg that leads to the point
        case What::trim_a:
        case What::trim_b:
        case What::pieces:
        case What::od:
        case What::wall: return std::nullopt;
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

bool is_told(const State& state, const Fact& fact) {
    return !std::holds_alternative<TrappedPieces>(fact) && !(state.entry->line().unfinished && is_too_early(fact));
}

/// The finding without what to do.
std::string fault(const Finding& finding, const Speech& speech) {
    const Words said = words(finding.fact, speech);
    return capital(said.where.empty() ? said.what : said.where + ": " + said.what) + ".";
}

/// What the part that is lit is called: of a point the leg that leads to it.
std::string lit_name(const State& state) {
    const Cell& cell = state.entry->page.cell;
    if (axis_of(cell)) return "leg " + std::to_string(cell.index);
    return cell_name(cell, state.entry->line().route.form);
}

std::string remedy_words(const State& state, const Remedy& remedy) {
    const Entry& entry = *state.entry;
    const Tape tape{entry.page.job.unit, state.settings.tape_denominator};
    const std::string here = entry.page.job.lines.size() > 1 ? " for this line" : "";
    if (const auto* longer = std::get_if<LongerStraight>(&remedy)) {
        const RouteForm form = entry.line().route.form;
        return "Make " + cell_name({form == RouteForm::moves ? What::move : What::run, longer->straight}, form) + " longer by " + text(longer->by, tape);
    }
    if (const auto* out = std::get_if<BendOut>(&remedy)) return "Take " + bend_name(out->bend) + " out";
    if (const auto* bender = std::get_if<OtherBender>(&remedy)) return "Take the " + bender->name + here;
    if (const auto* wall = std::get_if<OtherWall>(&remedy)) return "Take a wall of " + exact(wall->wall, entry.page.job.unit) + here;
    const auto& fitting = std::get<OtherFitting>(remedy);
    const auto& all = state.offers.fittings;
    const auto found = std::find_if(all.begin(), all.end(), [&](const NamedOffer& offer) { return offer.id == fitting.fitting; });
    return "Put a " + (found == all.end() ? fitting.fitting : found->name) + " on " + end_name(fitting.end);
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
        case What::x: return "x at " + point_name(cell.index);
        case What::y: return "y at " + point_name(cell.index);
        case What::z: return "z at " + point_name(cell.index);
        case What::trim_a: return "extra at A";
        case What::trim_b: return "extra at B";
        case What::pieces: return "pieces";
        case What::od: return "diameter";
        case What::wall: return "wall";
    }
    return "";
}

std::string cell_value(const DraftLine& line, const Cell& cell, Unit unit) {
    if (const auto end = trimmed_end(cell)) return exact(line.end(*end).trim, unit);
    const MeasuredRoute& route = line.route;
    if (!has_value(route, cell)) return "";
    switch (cell.what) {
        case What::run: return cell_length(route.runs[cell.index], unit);
        case What::x:
        case What::y:
        case What::z: return cell_length(route.points[cell.index][*axis_of(cell)], unit);
        case What::angle: return exact(route.bends[cell.index].angle);
        case What::turn: {
            const Angle turn = wrapped(*route.bends[cell.index].rotation);
            if (turn == Angle{0}) return "same way";
            if (turn == Angle{180}) return "other way";
            return turn.deg < 0 ? exact(-turn) + " left" : exact(turn) + " right";
        }
        case What::move: return move_words(route.moves[cell.index], unit);
        case What::trim_a:
        case What::trim_b:
        case What::pieces:
        case What::od:
        case What::wall: break;
    }
    return "";
}

std::string shortened(const std::string& text) {
    constexpr std::size_t most = 26, each = 11;
    std::vector<std::size_t> letters;  // where each begins: some are of more than one byte
    for (std::size_t i = 0; i < text.size(); ++i)
        if ((static_cast<unsigned char>(text[i]) & 0xC0) != 0x80) letters.push_back(i);
    if (letters.size() <= most) return text;
    return text.substr(0, letters[each]) + " ... " + text.substr(letters[letters.size() - each]);
}

Cell route_cell(const Entry& entry) {
    return stands_alone(entry.page.cell) ? cells_of(entry.line().route).back() : entry.page.cell;
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
        case Ask::about: return "Names, pieces and notes";
        case Ask::points_file: return "Which table of points?";
        case Ask::points_unit: return "In which unit are its x, y and z?";
        case Ask::points_read: return "Are these the right points?";
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
    const Sheet* sheet = entry_in_sight(state);
    if (!sheet || !sheet->layout) return std::nullopt;
    PictureView picture{PictureView::Kind::finished, 0, "", {{Anchor::hook_end, "A"}}};
    if (route_from(state.entry->line().route).ok()) picture.labels.push_back({Anchor::lever_end, "B"});  // not where a leg is still to be measured
    picture.entered = true;
    picture.grip = press_button("picture", "", EnlargePicture{});
    picture.orbit = state.entry->orbit;
    if (picture.orbit) picture.straight_on = press_button("straight-on", "Straight on", StraightOn{});
    if (state.looks.screen != Screen::route) return picture;
    picture.lit = lit_part(state);
    if (picture.lit) picture.labels.push_back({Anchor::bend, lit_name(state)});
    return picture;
}

void enlarge_entered_picture(const State& state, ScreenView& view) {
    TilesBody body;
    body.picture = entered_picture(state);
    if (!body.picture) return;
    view.body = std::move(body);
    view.footer.buttons = {back_button(), press_button("next", "Back to the numbers", EnlargePicture{}, Weight::main)};
    view.footer.main_id = "next";
    view.footer.back_id = "back";
}

EnteredFinding entered_finding(const State& state) {
    if (!state.entry->trouble.empty()) return {{{state.entry->trouble, Tone::caution}}, std::nullopt};
    if (!state.entry_sheet) return {};
    const Sheet& sheet = *state.entry_sheet;
    std::vector<std::size_t> told;
    for (const Severity severity : {Severity::stop, Severity::caution})
        for (std::size_t i = 0; i < sheet.findings.size(); ++i)
            if (sheet.findings[i].severity == severity && is_told(state, sheet.findings[i].fact)) told.push_back(i);
    if (told.empty()) return {};
    const Finding& first = sheet.findings[told.front()];
    const Speech speech{{state.entry->page.job.unit, state.settings.tape_denominator}, &sheet.line};
    const auto& remedy = told.front() < state.entry_remedies.size() ? state.entry_remedies[told.front()] : std::optional<Remedy>();
    EnteredFinding said;
    said.lines = {{remedy ? fault(first, speech) : sentence(first, speech), tone_of(first.severity)}};
    if (told.size() > 1) said.lines.front().text += " " + std::to_string(told.size() - 1) + " more after this.";
    if (remedy) said.remedy = press_button("remedy", remedy_words(state, *remedy), TakeRemedy{*remedy});
    return said;
}

}  // namespace tubewright
