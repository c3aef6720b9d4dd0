#include "store/draft_file.h"

#include <limits>
#include <nlohmann/json.hpp>
#include <set>

#include "store/asset_files.h"
#include "store/bender_file.h"
#include "store/json_raw.h"
#include "store/json_tree.h"
#include "store/limits.h"
#include "store/proof_file.h"
#include "store/route_file.h"

namespace tubewright {
namespace {

/// What every part of the file is read by.
struct Reading {
    const Library& known;
    const RawText& raw;
    Unit unit;
};

DraftTube tube_from(const Node& node, const Reading& reading) {
    node.known_keys({"od", "wall", "material"});
    DraftTube given;
    Tube& tube = given.tube;
    tube.od = node.at("od").length(reading.unit, {limits::least_od, limits::most_od});
    tube.wall = node.at("wall").length(reading.unit, {limits::least_wall, tube.od.mm / 2, false, true});
    const std::string ids = joined(material_ids(reading.known));
    const Node material = node.at("material", ids);
    tube.material = material.text();
    if (!find_material(reading.known, tube.material)) material.refuse_value(ids);
    given.kept = reading.raw.kept(node.place());
    return given;
}

DraftBender bender_from(const Node& node, const Reading& reading) {
    if (node.is_object()) return {bender_card(node).id, reading.raw.card(node.place())};
    const std::string allowed = joined(bender_ids(reading.known)) + ", or a whole card";
    if (!node.is_text()) node.refuse_value(allowed);
    const Bender* bender = find_bender(reading.known, node.text());
    if (const LeftOut* card = bender ? nullptr : find_left_out(reading.known, node.text())) node.refuse("is \"" + in_short(node.text()) + "\", " + card->words(), card->why.allowed);
    if (!bender) node.refuse_value(allowed);
    return {node.text()};
}

DraftEnd end_from(const Node& node, const Reading& reading, Entered entered) {
    node.known_keys({"fitting", "allowance", "trim"});
    const std::string ids = joined(fitting_ids(reading.known));
    DraftEnd end;
    if (node.has("fitting") || entered == Entered::to_the_end) {
        const Node fitting = node.at("fitting", ids);
        end.fitting = fitting.text();
        if (!find_fitting(reading.known, end.fitting, {})) fitting.refuse_value(ids);
    }
    if (const auto allowance = node.find("allowance")) end.allowance = allowance->length(reading.unit, {0, limits::longest_allowance});
    if (const auto trim = node.find("trim")) end.trim = trim->length(reading.unit, {0, limits::longest_trim});
    end.kept = reading.raw.kept(node.place());
    return end;
}

void read_ends(const Node& node, DraftLine& line, const Reading& reading, Entered entered) {
    node.known_keys({"A", "B"});
    for (const End end : {End::A, End::B}) line.end(end) = end_from(node.at(std::string(1, letter(end)), "an end with its fitting"), reading, entered);
    line.kept_at_ends = reading.raw.kept(node.place());
}

DraftLine line_from(const Node& node, const Draft& job, const Reading& reading) {
    node.known_keys({"name", "quantity", "note", "unfinished", "tube", "bender", "ends", "route", "proof"});
    DraftLine line;
    line.name = node.at("name").text();
    if (const auto note = node.find("note")) line.note = note->note();
    if (const auto quantity = node.find("quantity")) line.quantity = quantity->whole(1, 1000);
    if (const auto unfinished = node.find("unfinished")) line.unfinished = unfinished->yes();
    const Entered entered = line.unfinished ? Entered::so_far : Entered::to_the_end;
    if (const auto tube = node.find("tube")) line.tube = tube_from(*tube, reading);
    else if (!job.tube && !line.unfinished) node.at("tube", "a tube here or for the whole job");
    if (const auto bender = node.find("bender")) line.bender = bender_from(*bender, reading);
    else if (!job.bender && !line.unfinished) node.at("bender", "a bender here or for the whole job");
    read_ends(node.at("ends", "the two ends, A and B"), line, reading, entered);
    line.route = measured_from(node.at("route", "a route of form legs, straights, points or moves"), reading.unit, reading.raw, entered);
    if (const auto proof = node.find("proof")) line.proof = proof_from(*proof, reading.unit, reading.raw);
    line.kept = reading.raw.kept(node.place());
    return line;
}

Draft draft_from(const Node& root, const Library& library, const RawText& raw) {
    check_format(root, "tubewright-job");
    root.known_keys({"format", "version", "name", "note", "service", "units", "tube", "bender", "lines"});
    Draft job;
    job.name = root.at("name").text();
    job.service = service_from(root.at("service", "brake, fuel, cooler, hydraulic, air, other"));
    job.unit = unit_from(root.at("units", "in, mm"));
    if (const auto note = root.find("note")) job.note = note->note();
    const Reading reading{library, raw, job.unit};
    if (const auto tube = root.find("tube")) job.tube = tube_from(*tube, reading);
    if (const auto bender = root.find("bender")) job.bender = bender_from(*bender, reading);
    std::set<std::string> names;
    const Node lines = root.at("lines", "a list of lines");
    const bool none_yet = lines.items(0, std::numeric_limits<std::size_t>::max()).empty();
    for (const Node& line : lines.items(none_yet ? 0 : 1, limits::most_lines)) {
        job.lines.push_back(line_from(line, job, reading));
        const std::string& name = job.lines.back().name;
        if (!names.insert(name).second) line.at("name").refuse("is \"" + in_short(name) + "\", the name of another line too", "a name for each line");
    }
    job.kept = raw.kept("");
    return job;
}

}  // namespace

Result<Draft, Refusal> read_draft_text(const std::string& text, const std::string& file, const Library& library) {
    return guarded([&] {
        const nlohmann::json tree = tree_from(text, file);
        return draft_from(Node(tree, file), library, RawText(text));
    });
}

Result<Draft, Refusal> read_draft(const std::filesystem::path& path, const Library& library) {
    const auto text = guarded([&] { return bytes_of(path); });
    if (!text.ok()) return text.trouble();
    return read_draft_text(text.value(), path.string(), library);
}

}  // namespace tubewright
