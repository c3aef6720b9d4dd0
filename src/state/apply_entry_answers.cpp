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
                                                     {"moves", {RouteForm::moves, TapeEdge::centre}}};

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

/// Where this line's tube stands: its own, or the job's for all.
std::optional<DraftTube>& tube_in_hand(EntryPage& page) {
    DraftLine& line = page.job.lines[page.line];
    return line.tube ? line.tube : page.job.tube;
}
std::optional<DraftBender>& bender_in_hand(EntryPage& page) {
    DraftLine& line = page.job.lines[page.line];
    return line.bender ? line.bender : page.job.bender;
}

/// The bender is settled without a question where just one suits the tube, and asked again where the one that
/// was chosen does not.
void settle_bender(const Offers& all, EntryPage& page) {
    const std::vector<BenderOffer> suited = benders_for(all, page.job, page.job.lines[page.line]);
    std::optional<DraftBender>& bender = bender_in_hand(page);
    if (bender && (!bender->card.empty() || offers(suited, bender->id))) return;
    bender.reset();
    if (suited.size() == 1) bender = DraftBender{suited.front().id};
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
        return true;
    }
    for (const auto& [name, choice] : forms) {
        if (id != name) continue;
        MeasuredRoute& route = page.job.lines[page.line].route;
        route = in_form(route, choice);
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
        case Ask::tube: return answer_tube(all, page, id);
        case Ask::material:
            if (!offers(all.materials, id) || !tube_in_hand(page)) return false;
            tube_in_hand(page)->tube.material = id;
            return true;
        case Ask::bender:
            if (!offers(benders_for(all, page.job, page.job.lines[page.line]), id)) return false;
            bender_in_hand(page) = DraftBender{id};
            return true;
        case Ask::fittings:
        case Ask::fitting_a:
        case Ask::fitting_b: return answer_fitting(all, page, id);
        case Ask::form: return answer_form(page, id);
    }
    return false;
}

}  // namespace tubewright
