// The page of a line being entered, and the questions whose answers stand on it.

#include <algorithm>
#include <cmath>

#include "present/entry_pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

using Drawing = TileView::Drawing;

constexpr std::size_t lines_on_a_page = 4, answers_on_a_page = 9, points_on_a_page = 4;

const std::optional<DraftTube>& tube_of(const State& state) { return state.entry->line().tube ? state.entry->line().tube : state.entry->page.job.tube; }
const std::optional<DraftBender>& bender_of(const State& state) { return state.entry->line().bender ? state.entry->line().bender : state.entry->page.job.bender; }

template <class Offer>
std::string name_in(const std::vector<Offer>& offers, const std::string& id) {
    const auto found = std::find_if(offers.begin(), offers.end(), [&](const Offer& offer) { return offer.id == id; });
    return found == offers.end() ? id : found->name;
}

std::string known(const std::string& said) { return said.empty() ? "not chosen yet" : said; }

/// A material without its temper, which every one of the list has.
std::string short_material(const std::string& name) { return name.substr(0, name.find(',')); }

bool is_whole_size(const DraftTube& tube) { return takes_wall(tube.tube.od, tube.tube.wall); }

std::string tube_value(const State& state) {
    const auto& tube = tube_of(state);
    return tube && is_whole_size(*tube) ? od_text(tube->tube.od, {state.entry->page.job.unit, 64}) : "";
}

TileView fact(const std::string& name, const std::string& value, const std::string& id, const Action& press) {
    return {press_button(id, known(value), press), name};
}

TileView trim_fact(const State& state, End end) {
    const DraftLine& line = state.entry->line();
    const Cell cell{end == End::A ? Cell::What::trim_a : Cell::What::trim_b, 0};
    const Length trim = line.end(end).trim;
    return {press_button(std::string("trim-") + letter(end), trim == Length{} ? "none" : exact(trim, state.entry->page.job.unit), PickCell{cell}), std::string("Extra to cut off, ") + letter(end)};
}

std::string route_value(const DraftLine& line) {
    const MeasuredRoute& route = line.route;
    const std::size_t legs = route.form == RouteForm::moves ? route.moves.size() : route.form == RouteForm::points ? route.points.size() : route.runs.size();
    if (legs == 0) return "nothing entered yet";
    const std::string what = route.form == RouteForm::moves ? "move" : route.form == RouteForm::points ? "point" : route.form == RouteForm::straights ? "straight" : "leg";
    return counted(legs, what, what + "s");
}

std::vector<TileView> line_facts(const State& state) {
    const Entry& entry = *state.entry;
    const DraftLine& line = entry.line();
    const auto& tube = tube_of(state);
    const auto& bender = bender_of(state);
    TileView route = fact(line.unfinished ? "The route, not finished" : "The route", route_value(line), "route", PickCell{route_cell(entry)});
    if (const auto open = open_question_of(entry.page.job, line)) route.touch = unless(route.touch, "first: " + ask_word(*open));
    std::vector<TileView> facts{route,
                                fact("Measured", form_word(line.route), "form", AskFor{Ask::form}),
                                fact(tube && is_whole_size(*tube) ? "Tube, wall " + exact(tube->tube.wall, entry.page.job.unit) : "Tube", tube_value(state), "tube", AskFor{Ask::tube}),
                                fact("Material", tube ? short_material(name_in(state.offers.materials, tube->tube.material)) : "", "material", AskFor{Ask::material}),
                                fact("Bender", bender ? name_in(state.offers.benders, bender->id) : "", "bender", AskFor{Ask::bender}),
                                fact("Carries", capital(service_word(entry.page.job.service)), "service", AskFor{Ask::service}),
                                fact("End A", name_in(state.offers.fittings, line.a.fitting), "end-A", AskFor{Ask::fitting_a}),
                                fact("End B", name_in(state.offers.fittings, line.b.fitting), "end-B", AskFor{Ask::fitting_b}),
                                trim_fact(state, End::A),
                                trim_fact(state, End::B),
                                fact("Names, pieces, notes", counted(static_cast<std::size_t>(line.quantity), "piece", "pieces"), "about", AskFor{Ask::about}),
                                {press_button("lines", counted(entry.page.job.lines.size(), "line", "lines"), TurnPage{1}), "The job has"}};
    if (!tube) facts[3].touch = unless(facts[3].touch, "first the tube");
    return facts;
}

std::vector<TileView> job_lines(const State& state) {
    const Entry& entry = *state.entry;
    const Draft& job = entry.page.job;
    const std::size_t pages = (job.lines.size() + lines_on_a_page - 1) / lines_on_a_page;
    const std::size_t page = std::min<std::size_t>(static_cast<std::size_t>(std::max(1, state.looks.page)), pages) - 1;
    std::vector<TileView> tiles;
    for (std::size_t i = page * lines_on_a_page; i < std::min(job.lines.size(), (page + 1) * lines_on_a_page); ++i) {
        TileView tile{press_button("line-" + std::to_string(i + 1), shortened(job.lines[i].name), OpenDraftLine{i}), is_unfinished(job, job.lines[i]) ? "not finished" : "all entered"};
        tile.touch.chosen = i == entry.page.line;
        tiles.push_back(std::move(tile));
    }
    if (pages > 1) tiles.push_back({press_button("more-lines", page + 1 == pages ? "The first lines" : "More lines", TurnPage{page + 1 == pages ? 1 - static_cast<int>(pages) : 1}), ""});
    const bool whole = route_from(entry.line().route).ok();
    ButtonView out = unless(press_button("take-out", "Take it out", TakeLineOut{}), job.lines.size() < 2 ? "the job's only line" : "");
    out.held = out.enabled;
    tiles.push_back({press_button("add-line", "Add a line", AddLine{}), ""});
    tiles.push_back({press_button("from-file", "Points from a table", AskFor{Ask::points_file}), ""});
    tiles.push_back({press_button("copy", "Copy it", CopyLine{false}), ""});
    tiles.push_back({press_button("copy-mirror", "Copy it in the mirror", CopyLine{true}), ""});
    tiles.push_back({press_button("mirror", "Left for right", MirrorLine{}), ""});
    tiles.push_back({unless(press_button("reverse", "Start at end B", ReverseLine{}), whole ? "" : "the wire is not whole yet"), ""});
    tiles.push_back({out, ""});
    return tiles;
}

/// What the change of tube or bender did to the line: its cut length and its marks, both as the tape shows them.
std::string moved_words(const State& state) {
    const auto &was = state.entry_was, &is = state.entry_sheet;
    if (!was || !is || !was->layout || !is->layout || was->steps.size() != is->steps.size()) return "";
    const Tape tape{state.entry->page.job.unit, state.settings.tape_denominator};
    const auto mark_of = [&](const Sheet& sheet, std::size_t bend) {
        const auto step = std::find_if(sheet.steps.begin(), sheet.steps.end(), [&](const Step& one) { return one.bend == bend; });
        return step == sheet.steps.end() ? Length{} : on_tape(mark_from_a(*step, sheet.layout->cut_length), tape);
    };
    std::size_t moved = 0;
    Length furthest;
    for (const Step& step : is->steps) {
        const Length by{std::abs(mark_of(*is, step.bend).mm - mark_of(*was, step.bend).mm)};
        if (by.mm < 1e-6) continue;
        ++moved;
        furthest = std::max(furthest, by);
    }
    const std::string before = text(was->layout->cut_length, tape), after = text(is->layout->cut_length, tape);
    std::string said = before == after ? "The cut length stays " + after : "Cut length " + after + ", it was " + before;
    if (moved == 0) return said + ", no mark moves.";
    return said + (moved == 1 ? ", 1 mark moves by " : ", " + std::to_string(moved) + " marks move, by up to ") + text(furthest, tape) + ".";
}

ButtonView main_of(const State& state) {
    const Entry& entry = *state.entry;
    const Draft& job = entry.page.job;
    if (const auto open = open_question_of(job, entry.line())) return press_button("next", "Go on: " + ask_word(*open), AskFor{*open});
    if (entry.line().unfinished) return press_button("next", "Go on: the route", PickCell{route_cell(entry)});
    for (std::size_t i = 0; i < job.lines.size(); ++i)
        if (is_unfinished(job, job.lines[i])) return press_button("next", "Go on: " + shortened(job.lines[i].name), OpenDraftLine{i});
    return unless(press_button("next", "To the bench", Next{}), entry.path.empty() ? "not kept on the disk yet" : "");
}

/// Offered, never asked for, as soon as all of the line is entered.
std::optional<ButtonView> prove_button(const State& state) {
    if (no_proof(state) == NoProof::unfinished) return std::nullopt;
    return unless(press_button("prove", "Check it with a tape", ProveLine{}), no_proof(state) == NoProof::cut ? "the tube is cut" : no_proof(state) == NoProof::no_bends ? "it has no bends" : "");
}

// --- the questions

TileView answer_tile(const std::string& id, const std::string& label, bool chosen, const std::string& name = "", Drawing drawing = Drawing::none) {
    TileView tile{press_button("answer-" + id, label, Answer{id}), name, drawing};
    tile.touch.chosen = chosen;
    return tile;
}

std::vector<TileView> service_tiles(const State& state) {
    const Entry& entry = *state.entry;
    const bool asked_first = entry.in_a_row && !entry.page.job.tube;  // nothing has been chosen yet
    std::vector<TileView> tiles;
    for (const auto& [id, label, service] : {std::tuple{"brake", "Brake fluid", Service::brake}, std::tuple{"fuel", "Fuel", Service::fuel}, std::tuple{"cooler", "Cooler oil", Service::cooler},
                                             std::tuple{"hydraulic", "Hydraulic oil", Service::hydraulic}, std::tuple{"air", "Air", Service::air}, std::tuple{"other", "Something else", Service::other}})
        tiles.push_back(answer_tile(id, label, !asked_first && entry.page.job.service == service));
    return tiles;
}

std::vector<TileView> tube_tiles(const State& state) {
    const auto& tube = tube_of(state);
    std::vector<TileView> tiles;
    for (std::size_t i = 0; i < state.offers.tubes.size(); ++i) {
        const TubeOffer& offer = state.offers.tubes[i];
        const bool metric = offer.name.find("mm") != std::string::npos;
        const bool chosen = tube && tube->tube.od == offer.od && tube->tube.wall == offer.wall;
        tiles.push_back(answer_tile(std::to_string(i), offer.name, chosen, "wall " + exact(offer.wall, metric ? Unit::mm : Unit::inch)));
    }
    const bool listed = std::any_of(tiles.begin(), tiles.end(), [](const TileView& tile) { return tile.touch.chosen; });
    const bool own = tube && !listed && is_whole_size(*tube);
    TileView other{press_button("other-size", own ? size_text(tube->tube, {state.entry->page.job.unit, 64}) : "Another size", PickCell{{Cell::What::od, 0}}), own ? "your own size" : "type it"};
    other.touch.chosen = own;
    tiles.push_back(std::move(other));
    return tiles;
}

/// Of several lines: whether the answer is for this one only.
void add_own_tile(const State& state, bool own, bool there, std::vector<TileView>& tiles) {
    if (state.entry->page.job.lines.size() < 2 || !there) return;
    TileView tile{press_button("answer-own", own ? "For this line only" : "For all the lines", Answer{own ? "shared" : "own"}), own ? "touch: for all" : "touch: only this"};
    tile.touch.chosen = own;
    tiles.insert(tiles.begin(), std::move(tile));
}

std::vector<TileView> bender_tiles(const State& state) {
    const Entry& entry = *state.entry;
    const auto& tube = tube_of(state);
    std::vector<TileView> tiles;
    for (const BenderOffer& offer : benders_for(state.offers, entry.page.job, entry.line())) {
        const bool suits = !tube || std::abs(offer.od.mm - tube->tube.od.mm) < 0.15;
        tiles.push_back(answer_tile(offer.id, offer.name, bender_of(state) && bender_of(state)->id == offer.id, suits ? "" : "of another size"));
    }
    add_own_tile(state, entry.line().bender.has_value(), entry.page.job.bender.has_value(), tiles);
    return tiles;
}

std::vector<TileView> about_tiles(const State& state) {
    const Draft& job = state.entry->page.job;
    const DraftLine& line = state.entry->line();
    const auto word = [](const std::string& id, const std::string& name, const std::string& value, WordOf of) { return TileView{press_button(id, value.empty() ? "none" : shortened(value), AskWord{of}), name}; };
    std::vector<TileView> tiles{word("line-name", "Name of this line", line.name, WordOf::line_name),
                                {press_button("pieces", std::to_string(line.quantity), PickCell{{Cell::What::pieces, 0}}), "Pieces of this line"},
                                word("line-note", "Note on this line", line.note, WordOf::line_note),
                                word("job-name", "Name of the job", job.name, WordOf::job_name),
                                word("job-note", "Note on the job", job.note, WordOf::job_note),
                                {unless(press_button("write-points", "Write its points", WritePoints{}), has_corners(state) ? "" : "the wire is not whole yet"), "x, y, z as a table"}};
    if (is_begun(state, line)) tiles[0].touch = unless(tiles[0].touch, "the shop book knows it by this name");
    return tiles;
}

std::vector<TileView> points_file_tiles(const State& state) {
    std::vector<TileView> tiles;
    for (const PointsFile& file : state.entry->points_in.files) {
        const std::string ends = ".csv";
        const std::string name = file.name.size() > ends.size() ? file.name.substr(0, file.name.size() - ends.size()) : file.name;
        TileView tile{press_button("answer-file-" + file.name, shortened(name), Answer{"file-" + file.name}), file.says ? "says " + unit_word(*file.says) : "says no unit"};
        if (!file.trouble.empty()) tile = {press_button("answer-file-" + file.name, shortened(name), PointsTold{file.trouble}), "can't be read"};
        tiles.push_back(std::move(tile));
    }
    tiles.push_back({press_button("answer-again", "Look again", Answer{"again"}), ""});
    return tiles;
}

std::vector<TileView> points_unit_tiles(const State& state) {
    const PointsIn& in = state.entry->points_in;
    std::vector<TileView> tiles{answer_tile("in", "inches", false), answer_tile("mm", "millimetres", false)};
    for (const PointsFile& file : in.files)
        if (file.name == in.file && file.says) {
            TileView& wrong = tiles[*file.says == Unit::inch ? 1 : 0];
            wrong.touch = unless(wrong.touch, "the table itself says " + unit_word(*file.says));
        }
    return tiles;
}

std::vector<TileView> named_tiles(const std::vector<NamedOffer>& offers, const std::string& chosen) {
    std::vector<TileView> tiles;
    for (const NamedOffer& offer : offers) tiles.push_back(answer_tile(offer.id, capital(offer.name), offer.id == chosen));
    return tiles;
}

std::vector<TileView> form_tiles(const State& state) {
    const MeasuredRoute& route = state.entry->line().route;
    const bool begun = !route.runs.empty() || !route.moves.empty() || !route.points.empty();
    const auto tile = [&](const std::string& id, const std::string& label, const FormChoice& choice, Drawing drawing) {
        TileView made = answer_tile(id, label, begun && route.form == choice.form && route.measured_to == choice.measured_to, "", drawing);
        if (!keeps_numbers(route, choice)) made.name = "starts the route over";
        return made;
    };
    TileView flat{press_button("answer-flat", "It lies flat", Answer{state.entry->page.flat ? "not-flat" : "flat"}), state.entry->page.flat ? "yes" : "no", Drawing::flat};
    flat.touch.chosen = state.entry->page.flat;
    return {tile("legs-outside", "Tape on the outside", {RouteForm::legs, TapeEdge::outside}, Drawing::outside),
            tile("legs-centre", "Tape on the centre", {RouteForm::legs, TapeEdge::centre}, Drawing::centre),
            tile("legs-inside", "Tape on the inside", {RouteForm::legs, TapeEdge::inside}, Drawing::inside),
            tile("straights", "Straights only", {RouteForm::straights, TapeEdge::centre}, Drawing::straights),
            tile("moves", "By direction", {RouteForm::moves, TapeEdge::centre}, Drawing::moves),
            tile("points", "Corners: x, y, z", {RouteForm::points, TapeEdge::centre}, Drawing::none),
            {press_button("from-file", "Points from a table", AskFor{Ask::points_file}), "a .csv file"},
            flat};
}

std::vector<TileView> answers(const State& state) {
    const Entry& entry = *state.entry;
    const DraftLine& line = entry.line();
    switch (*entry.page.ask) {
        case Ask::service: return service_tiles(state);
        case Ask::tube: {
            std::vector<TileView> tiles = tube_tiles(state);
            add_own_tile(state, line.tube.has_value(), entry.page.job.tube.has_value(), tiles);
            return tiles;
        }
        case Ask::material: return named_tiles(state.offers.materials, tube_of(state) ? tube_of(state)->tube.material : "");
        case Ask::bender: return bender_tiles(state);
        case Ask::fittings:
        case Ask::fitting_a: return named_tiles(state.offers.fittings, line.a.fitting);
        case Ask::fitting_b: return named_tiles(state.offers.fittings, line.b.fitting);
        case Ask::form: return form_tiles(state);
        case Ask::about: return about_tiles(state);
        case Ask::points_file: return points_file_tiles(state);
        case Ask::points_unit: return points_unit_tiles(state);
        case Ask::points_read: break;  // a table, no tiles
    }
    return {};
}

}  // namespace

void fill_draft(const State& state, ScreenView& view) {
    TilesBody body;
    const bool of_job = state.looks.page > 0;
    body.tiles = of_job ? job_lines(state) : line_facts(state);
    body.picture = entered_picture(state);
    EnteredFinding finding = entered_finding(state);
    body.notes = std::move(finding.lines);
    body.remedy = std::move(finding.remedy);
    if (const auto note = proof_note(state.entry_proof, state.entry->line().proof); note && body.notes.empty()) body.notes.push_back(*note);
    if (of_job) body.heading = "Lines of the job, and what can be done with " + shortened(state.entry->line().name);
    else body.heading = moved_words(state);
    view.header = entry_header(state, state.entry->line().name);
    view.body = std::move(body);
    view.footer = entry_footer(state);
    if (of_job) view.footer.buttons.front() = press_button("back", "Back", TurnPage{-1000});
    if (const auto prove = prove_button(state)) view.footer.buttons.push_back(*prove);
    ButtonView main = main_of(state);
    main.weight = Weight::main;
    view.footer.main_id = main.id;
    view.footer.buttons.push_back(std::move(main));
}

namespace {

std::string points_heading(const State& state) {
    const PointsIn& in = state.entry->points_in;
    return (in.files.empty() ? "No table of points yet. Put .csv files with columns x, y and z into " : "Tables of points in ") + in.folder;
}

void fill_points_read(const State& state, ScreenView& view) {
    const PointsIn& in = state.entry->points_in;
    const Page page = page_of(state, in.points.size(), points_on_a_page);
    TableBody body;
    body.heading = counted(in.points.size(), "point", "points") + " from " + shortened(in.file) + ", in " + unit_word(in.unit);
    body.columns = {"", "x", "y", "z"};
    for (std::size_t i = page.from; i < page.to; ++i) {
        std::vector<std::string> row{i == 0 ? "end A" : i + 1 == in.points.size() ? "point " + std::to_string(i) + ", end B" : "point " + std::to_string(i)};
        for (const Length length : in.points[i]) row.push_back(exact(length, in.unit));
        body.rows.push_back(std::move(row));
    }
    body.pager = pager_of(state, page);
    view.body = std::move(body);
    view.footer = entry_footer(state);
    const MeasuredRoute& route = state.entry->line().route;
    const bool fresh = route.runs.empty() && route.moves.empty() && route.points.empty();
    ButtonView take = unless(press_button("next", fresh ? "Take them for " + shortened(state.entry->line().name) : "Take them as a new line", Next{}), in.points.size() < 2 ? "the table has to be read again" : "");
    take.weight = Weight::main;
    view.footer.main_id = take.id;
    view.footer.buttons.push_back(std::move(take));
}

}  // namespace

void fill_ask(const State& state, ScreenView& view) {
    TilesBody body;
    const Ask ask = *state.entry->page.ask;
    if (ask == Ask::points_read) {
        view.header = entry_header(state, state.entry->line().name);
        return fill_points_read(state, view);
    }
    body.heading = ask == Ask::points_file ? points_heading(state) : ask_word(ask);
    std::vector<TileView> all = answers(state);
    if (all.size() > answers_on_a_page + 1) {
        const Page page = page_of(state, all.size(), answers_on_a_page);
        std::vector<TileView> seen(all.begin() + static_cast<std::ptrdiff_t>(page.from), all.begin() + static_cast<std::ptrdiff_t>(page.to));
        const std::size_t next = page.page + 1 == page.pages ? 0 : page.page + 1;
        seen.push_back({press_button("more", next == 0 ? "The first ones" : "More", page_turn(state, next)), ""});
        all = std::move(seen);
    }
    body.tiles = std::move(all);
    body.columns = body.tiles.size() <= 4 ? 2 : body.tiles.size() <= 6 ? 3 : body.tiles.size() <= 8 ? 4 : 5;
    view.header = entry_header(state, state.entry->line().name);
    view.body = std::move(body);
    view.footer = entry_footer(state);
}

}  // namespace tubewright
