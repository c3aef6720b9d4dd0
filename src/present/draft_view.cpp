// The page of a line being entered, and the questions whose answers stand on it.

#include <algorithm>

#include "present/entry_pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

using Drawing = TileView::Drawing;

constexpr std::size_t lines_on_a_page = 5, answers_on_a_page = 9;

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

std::string tube_value(const State& state) {
    const auto& tube = tube_of(state);
    return tube ? od_text(tube->tube.od, {state.entry->page.job.unit, 64}) : "";
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
    TileView route = fact(line.unfinished ? "The route, not finished" : "The route", route_value(line), "route", PickCell{entry.page.cell});
    if (line.route.form == RouteForm::points) route.touch = unless(route.touch, "points are changed in their file");
    else if (const auto open = open_question_of(entry.page.job, line)) route.touch = unless(route.touch, "first: " + ask_word(*open));
    std::vector<TileView> facts{route,
                                fact("Measured", form_word(line.route), "form", AskFor{Ask::form}),
                                fact(tube ? "Tube, wall " + exact(tube->tube.wall, entry.page.job.unit) : "Tube", tube_value(state), "tube", AskFor{Ask::tube}),
                                fact("Material", tube ? short_material(name_in(state.offers.materials, tube->tube.material)) : "", "material", AskFor{Ask::material}),
                                fact("Bender", bender ? name_in(state.offers.benders, bender->id) : "", "bender", AskFor{Ask::bender}),
                                fact("Carries", capital(service_word(entry.page.job.service)), "service", AskFor{Ask::service}),
                                fact("End A", name_in(state.offers.fittings, line.a.fitting), "end-A", AskFor{Ask::fitting_a}),
                                fact("End B", name_in(state.offers.fittings, line.b.fitting), "end-B", AskFor{Ask::fitting_b}),
                                trim_fact(state, End::A),
                                trim_fact(state, End::B),
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
        TileView tile{press_button("line-" + std::to_string(i + 1), job.lines[i].name, OpenDraftLine{i}), is_unfinished(job, job.lines[i]) ? "not finished" : "all entered"};
        tile.touch.chosen = i == entry.page.line;
        tiles.push_back(std::move(tile));
    }
    if (pages > 1) tiles.push_back({press_button("more-lines", page + 1 == pages ? "The first lines" : "More lines", TurnPage{page + 1 == pages ? 1 - static_cast<int>(pages) : 1}), ""});
    const bool whole = route_from(entry.line().route).ok();
    ButtonView out = unless(press_button("take-out", "Take it out", TakeLineOut{}), job.lines.size() < 2 ? "the job's only line" : "");
    out.held = out.enabled;
    tiles.push_back({press_button("add-line", "Add a line", AddLine{}), ""});
    tiles.push_back({press_button("copy", "Copy it", CopyLine{false}), ""});
    tiles.push_back({press_button("copy-mirror", "Copy it in the mirror", CopyLine{true}), ""});
    tiles.push_back({press_button("mirror", "Left for right", MirrorLine{}), ""});
    tiles.push_back({unless(press_button("reverse", "Start at end B", ReverseLine{}), whole ? "" : "the wire is not whole yet"), ""});
    tiles.push_back({out, ""});
    return tiles;
}

ButtonView main_of(const State& state) {
    const Entry& entry = *state.entry;
    const Draft& job = entry.page.job;
    if (const auto open = open_question_of(job, entry.line())) return press_button("next", "Go on: " + ask_word(*open), AskFor{*open});
    if (entry.line().unfinished && entry.line().route.form != RouteForm::points) return press_button("next", "Go on: the route", PickCell{entry.page.cell});
    for (std::size_t i = 0; i < job.lines.size(); ++i)
        if (is_unfinished(job, job.lines[i])) return press_button("next", "Go on: " + job.lines[i].name, OpenDraftLine{i});
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
            flat};
}

std::vector<TileView> answers(const State& state) {
    const Entry& entry = *state.entry;
    const DraftLine& line = entry.line();
    switch (*entry.page.ask) {
        case Ask::service: return service_tiles(state);
        case Ask::tube: return tube_tiles(state);
        case Ask::material: return named_tiles(state.offers.materials, tube_of(state) ? tube_of(state)->tube.material : "");
        case Ask::bender: {
            std::vector<TileView> tiles;
            for (const BenderOffer& offer : benders_for(state.offers, entry.page.job, line)) tiles.push_back(answer_tile(offer.id, offer.name, bender_of(state) && bender_of(state)->id == offer.id));
            return tiles;
        }
        case Ask::fittings:
        case Ask::fitting_a: return named_tiles(state.offers.fittings, line.a.fitting);
        case Ask::fitting_b: return named_tiles(state.offers.fittings, line.b.fitting);
        case Ask::form: return form_tiles(state);
    }
    return {};
}

}  // namespace

void fill_draft(const State& state, ScreenView& view) {
    TilesBody body;
    const bool of_job = state.looks.page > 0;
    body.tiles = of_job ? job_lines(state) : line_facts(state);
    body.picture = entered_picture(state);
    body.notes = entered_findings(state, 1);
    if (const auto note = proof_note(state.entry_proof, state.entry->line().proof); note && body.notes.empty()) body.notes.push_back(*note);
    if (of_job) body.heading = "Lines of the job, and what can be done with " + state.entry->line().name;
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

void fill_ask(const State& state, ScreenView& view) {
    TilesBody body;
    const Ask ask = *state.entry->page.ask;
    body.heading = ask_word(ask);
    std::vector<TileView> all = answers(state);
    if (all.size() > answers_on_a_page + 1) {
        const Page page = page_of(state, all.size(), answers_on_a_page);
        std::vector<TileView> seen(all.begin() + static_cast<std::ptrdiff_t>(page.from), all.begin() + static_cast<std::ptrdiff_t>(page.to));
        const std::size_t next = page.page + 1 == page.pages ? 0 : page.page + 1;
        seen.push_back({press_button("more", next == 0 ? "The first ones" : "More", page_turn(state, next)), ""});
        all = std::move(seen);
    }
    body.tiles = std::move(all);
    body.columns = body.tiles.size() <= 4 ? 2 : body.tiles.size() <= 6 ? 3 : 5;
    view.header = entry_header(state, state.entry->line().name);
    view.body = std::move(body);
    view.footer = entry_footer(state);
}

}  // namespace tubewright
