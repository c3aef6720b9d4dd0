#include "store/asset_files.h"

#include <algorithm>
#include <set>

#include "store/limits.h"

namespace tubewright {
namespace {

Length mm(const Node& node, Range range) { return node.length(Unit::mm, range); }

std::string id_of(const Node& item, std::set<std::string>& taken) {
    const std::string id = item.at("id").text(80);
    if (!taken.insert(id).second) item.at("id").refuse("is the id of two entries", "an id for each entry");
    return id;
}

std::vector<std::string> sentences_from(const Node& list) {
    std::vector<std::string> sentences;
    for (const Node& item : list.items(0, 20)) sentences.push_back(item.text(300));
    return sentences;
}

FlowCurve curve_from(const Node& node) {
    node.known_keys({"strength_mpa", "exponent", "source"});
    return {node.at("strength_mpa").number({10, 3000}), node.at("exponent").number({0, 1}), node.at("source").text(400)};
}

const Range allowances{0, limits::longest_allowance};

SlideOn slide_on_from(const Node& node, std::set<std::string>& taken) {
    node.known_keys({"id", "name", "facing", "length_mm"});
    SlideOn piece{id_of(node, taken), node.at("name").text(), node.at("facing").note(), {}};
    if (const auto length = node.find("length_mm")) piece.length = mm(*length, allowances);
    return piece;
}

FittingSize fitting_size_from(const Node& node) {
    node.known_keys({"od_mm", "allowance_mm", "straight_needed_mm", "heaviest_wall_mm", "wall_source"});
    FittingSize size;
    size.od = mm(node.at("od_mm"), {limits::least_od, limits::most_od});
    if (const auto allowance = node.find("allowance_mm")) size.allowance = mm(*allowance, allowances);
    if (const auto straight = node.find("straight_needed_mm")) size.straight_needed = mm(*straight, allowances);
    if (const auto wall = node.find("heaviest_wall_mm")) {
        size.heaviest_wall = mm(*wall, {limits::least_wall, limits::most_od});
        size.wall_source = node.at("wall_source", "where the limit comes from").text(400);
    }
    return size;
}

FittingKind fitting_from(const Node& node, std::set<std::string>& taken) {
    node.known_keys({"id", "name", "flared", "allowance_mm", "straight_needed_mm", "sizes", "slide_on", "advice"});
    FittingKind kind;
    kind.usual.id = id_of(node, taken);
    kind.usual.name = node.at("name").text();
    kind.usual.flared = node.at("flared").yes();
    kind.usual.allowance = mm(node.at("allowance_mm"), allowances);
    kind.usual.straight_needed = mm(node.at("straight_needed_mm"), allowances);
    if (const auto sizes = node.find("sizes"))
        for (const Node& size : sizes->items(0, 100)) kind.sizes.push_back(fitting_size_from(size));
    std::set<std::string> pieces;
    if (const auto pieces_on = node.find("slide_on"))
        for (const Node& piece : pieces_on->items(0, 10)) kind.usual.slide_on.push_back(slide_on_from(piece, pieces));
    if (const auto advice = node.find("advice")) kind.usual.advice = sentences_from(*advice);
    return kind;
}

std::vector<std::string> known_ids(const Node& item, const char* key, const std::vector<std::string>& known) {
    std::vector<std::string> ids;
    const auto list = item.find(key);
    if (!list) return ids;
    for (const Node& id : list->items(1, 100)) {
        ids.push_back(id.text());
        if (std::find(known.begin(), known.end(), ids.back()) == known.end()) id.refuse_value(joined(known));
    }
    return ids;
}

/// `can_wait`: its items may be left for the fitter.
std::vector<CheckItem> check_items_from(const Node& list, const Library& library, bool can_wait = false) {
    std::vector<CheckItem> items;
    std::set<std::string> taken;
    for (const Node& node : list.items(0, 100)) {
        if (can_wait) node.known_keys({"id", "text", "services", "materials", "fittings", "later"});
        else node.known_keys({"id", "text", "services", "materials", "fittings"});
        CheckItem item;
        item.id = id_of(node, taken);
        item.text = node.at("text").text(120);
        if (const auto services = node.find("services"))
            for (const Node& service : services->items(1, 10)) item.services.push_back(service_from(service));
        item.materials = known_ids(node, "materials", material_ids(library));
        item.fittings = known_ids(node, "fittings", fitting_ids(library));
        if (const auto later = node.find("later")) item.later = later->text(60);
        items.push_back(std::move(item));
    }
    return items;
}

}  // namespace

Service service_from(const Node& node) {
    return node.one_of<Service>({{"brake", Service::brake}, {"fuel", Service::fuel}, {"cooler", Service::cooler},
                                 {"hydraulic", Service::hydraulic}, {"air", Service::air}, {"other", Service::other}});
}

std::vector<TubeSize> tubes_from(const Node& root) {
    check_format(root, "tubewright-tubes");
    root.known_keys({"format", "version", "note", "tubes"});
    std::vector<TubeSize> tubes;
    for (const Node& node : root.at("tubes").items(0, 200)) {
        node.known_keys({"name", "od_mm", "walls_mm", "stick_mm", "source"});
        TubeSize tube;
        tube.name = node.at("name").text();
        tube.od = mm(node.at("od_mm"), {limits::least_od, limits::most_od});
        for (const Node& wall : node.at("walls_mm").items(1, 20)) tube.walls.push_back(mm(wall, {limits::least_wall, tube.od.mm / 2, false, true}));
        tube.stick = mm(node.at("stick_mm"), {0, limits::longest_run, true});
        tube.source = node.at("source").text(400);
        tubes.push_back(std::move(tube));
    }
    return tubes;
}

std::vector<Material> materials_from(const Node& root) {
    check_format(root, "tubewright-materials");
    root.known_keys({"format", "version", "note", "materials"});
    std::vector<Material> materials;
    std::set<std::string> taken;
    for (const Node& node : root.at("materials").items(0, 200)) {
        node.known_keys({"id", "name", "elastic_modulus_mpa", "elastic_source", "curves", "least_radius_od", "usual_radius_od", "radius_source", "advice"});
        Material material;
        material.id = id_of(node, taken);
        material.name = node.at("name").text();
        material.elastic_modulus_mpa = node.at("elastic_modulus_mpa").number({40000, 500000});
        material.elastic_source = node.at("elastic_source").text(400);
        for (const Node& curve : node.at("curves").items(1, 10)) material.curves.push_back(curve_from(curve));
        material.least_radius_od = node.at("least_radius_od").number({0.5, 50});
        material.usual_radius_od = node.at("usual_radius_od").number({material.least_radius_od, 50});
        material.radius_source = node.at("radius_source").text(400);
        if (const auto advice = node.find("advice")) material.advice = sentences_from(*advice);
        materials.push_back(std::move(material));
    }
    return materials;
}

std::vector<FittingKind> fittings_from(const Node& root) {
    check_format(root, "tubewright-fittings");
    root.known_keys({"format", "version", "note", "fittings"});
    std::vector<FittingKind> fittings;
    std::set<std::string> taken;
    for (const Node& node : root.at("fittings").items(0, 200)) fittings.push_back(fitting_from(node, taken));
    return fittings;
}

Checklists checklists_from(const Node& root, const Library& library) {
    check_format(root, "tubewright-checklists");
    root.known_keys({"format", "version", "note", "prepare", "finish", "hand_over", "cautions"});
    return {check_items_from(root.at("prepare"), library), check_items_from(root.at("finish"), library),
            check_items_from(root.at("hand_over"), library, true), check_items_from(root.at("cautions"), library)};
}

}  // namespace tubewright
