// Where the answer to each question of a line being entered goes.

#include <algorithm>
#include <cctype>

#include "state/apply_entry.h"

namespace tubewright {
namespace {

constexpr std::pair<const char*, Service> services[]{{"brake", Service::brake},         {"fuel", Service::fuel}, {"cooler", Service::cooler},
                                                     {"hydraulic", Service::hydraulic}, {"air", Service::air},   {"other", Service::other}};
constexpr std::pair<const char*, FormChoice> forms[]{{"legs-outside", {RouteForm::legs, TapeEdge::outside}},
                                                     {"legs-centre", {RouteForm::legs, TapeEdge::centre}},
                                                     {"legs-inside", {RouteForm::legs, TapeEdge::inside}},
                                                     {"straights", {RouteForm::straights, TapeEdge::centre}},
                                                     {"moves", {RouteForm::moves, TapeEdge::centre}},
                                                     {"points", {RouteForm::points, TapeEdge::centre}}};

/// The place of an answer that is a number of a list.
std::optional<std::size_t> place_in(const std::string& id, std::size_t size) {
    if (id.empty() || id.size() > 4 || !std::all_of(id.begin(), id.end(), [](unsigned char c) { return std::isdigit(c); })) return std::nullopt;
    const std::size_t place = std::stoul(id);
    return place < size ? std::optional(place) : std::nullopt;
}

template <class Offer>
bool offers(const std::vector<Offer>& list, const std::string& id) {
    return std::any_of(list.begin(), list.end(), [&](const Offer& offer) { return offer.id == id; });
}

}  // namespace

std::optional<DraftTube>& tube_in_hand(EntryPage& page) {
    DraftLine& line = page.job.lines[page.line];
    return line.tube ? line.tube : page.job.tube;
}
std::optional<DraftBender>& bender_in_hand(EntryPage& page) {
    DraftLine& line = page.job.lines[page.line];
    return line.bender ? line.bender : page.job.bender;
}

void settle_bender(const Offers& all, EntryPage& page) {
    DraftLine& line = page.job.lines[page.line];
    const std::vector<BenderOffer> suited = benders_for(all, page.job, line);
    std::optional<DraftBender>& bender = bender_in_hand(page);
    if (bender && (!bender->card.empty() || offers(suited, bender->id))) return;
    if (line.tube && page.job.bender && !suited.empty()) {
        // A tube of its own wants a bender of its own; the other lines keep theirs.
        line.bender = DraftBender{suited.front().id};
        return;
    }
    bender.reset();
    if (suited.size() == 1) bender = DraftBender{suited.front().id};
}

namespace {

/// This line's own, or again the one of the whole job.
template <class Chosen>
bool answer_own(const std::string& id, const std::optional<Chosen>& jobs, std::optional<Chosen>& own) {
    if (id == "own" && jobs) own = jobs;
    else if (id == "shared") own.reset();
    else return false;
    return true;
}

bool answer_tube(const Offers& all, EntryPage& page, const std::string& id) {
    const auto place = place_in(id, all.tubes.size());
    if (!place) return false;
    std::optional<DraftTube>& tube = tube_in_hand(page);
    Tube next{all.tubes[*place].od, all.tubes[*place].wall, tube ? tube->tube.material : ""};
    if (tube) tube->tube = next;
    else tube = DraftTube{next};
    settle_bender(all, page);
    return true;
}

bool answer_fitting(const Offers& all, EntryPage& page, const std::string& id) {
    if (!offers(all.fittings, id)) return false;
    DraftLine& line = page.job.lines[page.line];
    const auto put = [&](DraftEnd& end) {
        if (end.fitting != id) end.allowance.reset();  // was another fitting's
        end.fitting = id;
    };
    if (page.ask != Ask::fitting_b) put(line.a);
    if (page.ask != Ask::fitting_a) put(line.b);
    return true;
}

bool answer_form(EntryPage& page, const std::string& id) {
    if (id == "flat" || id == "not-flat") {
        page.flat = id == "flat";
        say_flat(page.job.lines[page.line], page.flat);
        return true;
    }
    for (const auto& [name, choice] : forms) {
        if (id != name) continue;
        MeasuredRoute& route = page.job.lines[page.line].route;
        route = in_form(route, choice);
        page.point.clear();
        page.cell = cells_of(route).back();
        return true;
    }
    return false;
}

}  // namespace

bool take_answer(const Offers& all, EntryPage& page, const std::string& id) {
    switch (*page.ask) {
        case Ask::service:
            for (const auto& [name, service] : services)
                if (id == name) {
                    page.job.service = service;
                    return true;
                }
            return false;
        case Ask::tube:
            if (answer_own(id, page.job.tube, page.job.lines[page.line].tube)) {
                settle_bender(all, page);
                return true;
            }
            return answer_tube(all, page, id);
        case Ask::material:
            if (!offers(all.materials, id) || !tube_in_hand(page)) return false;
            tube_in_hand(page)->tube.material = id;
            return true;
        case Ask::bender:
            if (answer_own(id, page.job.bender, page.job.lines[page.line].bender)) return true;
            if (!offers(benders_for(all, page.job, page.job.lines[page.line]), id)) return false;
            bender_in_hand(page) = DraftBender{id};
            return true;
        case Ask::fittings:
        case Ask::fitting_a:
        case Ask::fitting_b: return answer_fitting(all, page, id);
        case Ask::form: return answer_form(page, id);
        case Ask::about:
        case Ask::points_file:
        case Ask::points_unit:
        case Ask::points_read: return false;
    }
    return false;
}

}  // namespace tubewright
