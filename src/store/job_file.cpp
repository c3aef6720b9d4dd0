#include "store/job_file.h"

#include <nlohmann/json.hpp>
#include <set>

#include "store/asset_files.h"
#include "store/bender_file.h"
#include "store/json_tree.h"
#include "store/limits.h"
#include "store/route_file.h"

namespace tubewright {
namespace {

/// What a line falls back on, and what is needed to read it.
struct Whole {
    const Library& known;
    Unit unit;
    std::optional<Tube> tube;
    std::optional<Bender> bender;
};

Tube tube_from(const Node& node, const Whole& whole) {
    node.known_keys({"od", "wall", "material"});
    Tube tube;
    tube.od = node.at("od").length(whole.unit, {limits::least_od, limits::most_od});
    tube.wall = node.at("wall").length(whole.unit, {limits::least_wall, tube.od.mm / 2, false, true});
    const std::string ids = joined(material_ids(whole.known));
    const Node material = node.at("material", ids);
    tube.material = material.text();
    if (!find_material(whole.known, tube.material)) material.refuse_value(ids);
    return tube;
}

Bender bender_from(const Node& node, const Whole& whole) {
    if (node.is_object()) return bender_card(node);
    const std::string allowed = joined(bender_ids(whole.known)) + ", or a whole card";
    if (!node.is_text()) node.refuse_value(allowed);
    const Bender* bender = find_bender(whole.known, node.text());
    if (const LeftOut* card = bender ? nullptr : find_left_out(whole.known, node.text()))
        node.refuse("is \"" + in_short(node.text()) + "\", whose card is left out: " + card->why.file + (card->why.place.empty() ? "" : ", " + card->why.place) + " " + card->why.what, card->why.allowed);
    if (!bender) node.refuse_value(allowed);
    return *bender;
}

LineEnd end_from(const Node& node, const Whole& whole, Length od) {
    node.known_keys({"fitting", "allowance", "trim"});
    const std::string ids = joined(fitting_ids(whole.known));
    const Node fitting = node.at("fitting", ids);
    const std::optional<Fitting> found = find_fitting(whole.known, fitting.text(), od);
    if (!found) fitting.refuse_value(ids);
    LineEnd end{*found, found->allowance, {}};
    if (const auto allowance = node.find("allowance")) end.allowance = allowance->length(whole.unit, {0, limits::longest_allowance});
    if (const auto trim = node.find("trim")) end.trim = trim->length(whole.unit, {0, limits::longest_trim});
    return end;
}

Line line_from(const Node& node, const Whole& whole) {
    node.known_keys({"name", "quantity", "note", "tube", "bender", "ends", "route"});
    Line line;
    line.name = node.at("name").text();
    if (const auto note = node.find("note")) line.note = note->note();
    if (const auto quantity = node.find("quantity")) line.quantity = quantity->whole(1, 1000);
    if (const auto tube = node.find("tube")) line.tube = tube_from(*tube, whole);
    else if (whole.tube) line.tube = *whole.tube;
    else node.at("tube", "a tube here or for the whole job");
    if (const auto bender = node.find("bender")) line.bender = bender_from(*bender, whole);
    else if (whole.bender) line.bender = *whole.bender;
    else node.at("bender", "a bender here or for the whole job");
    line.material = *find_material(whole.known, line.tube.material);
    line.stick = stick_for(whole.known, line.tube.od);
    const Node ends = node.at("ends", "the two ends, A and B");
    ends.known_keys({"A", "B"});
    line.a = end_from(ends.at("A", "an end with its fitting"), whole, line.tube.od);
    line.b = end_from(ends.at("B", "an end with its fitting"), whole, line.tube.od);
    RouteGiven given = route_from(node.at("route", "a route of form legs, straights, points or moves"), whole.unit);
    line.route = std::move(given.route);
    line.bend_notes = std::move(given.bend_notes);
    return line;
}

Job job_from(const Node& root, const Library& library) {
    check_format(root, "tubewright-job");
    root.known_keys({"format", "version", "name", "note", "service", "units", "tube", "bender", "lines"});
    Job job;
    job.name = root.at("name").text();
    job.service = service_from(root.at("service", "brake, fuel, cooler, hydraulic, air, other"));
    job.unit = unit_from(root.at("units", "in, mm"));
    if (const auto note = root.find("note")) note->note();
    Whole whole{library, job.unit, std::nullopt, std::nullopt};
    if (const auto tube = root.find("tube")) whole.tube = tube_from(*tube, whole);
    if (const auto bender = root.find("bender")) whole.bender = bender_from(*bender, whole);
    std::set<std::string> names;
    for (const Node& line : root.at("lines", "a list of lines").items(1, limits::most_lines)) {
        job.lines.push_back(line_from(line, whole));
        job.lines.back().service = job.service;
        if (!names.insert(job.lines.back().name).second) line.at("name").refuse("is \"" + in_short(job.lines.back().name) + "\", the name of another line too", "a name for each line");
    }
    return job;
}

}  // namespace

Result<Job, Refusal> read_job_text(const std::string& text, const std::string& file, const Library& library) {
    return guarded([&] {
        const nlohmann::json tree = tree_from(text, file);
        return job_from(Node(tree, file), library);
    });
}

Result<Job, Refusal> read_job(const std::filesystem::path& path, const Library& library) {
    const auto text = guarded([&] { return bytes_of(path); });
    if (!text.ok()) return text.trouble();
    return read_job_text(text.value(), path.string(), library);
}

}  // namespace tubewright
