#include "store/job_file.h"

#include "store/bender_file.h"
#include "store/draft_file.h"
#include "store/json_tree.h"
#include "store/limits.h"
#include "store/node.h"
#include "store/route_file.h"

namespace tubewright {
namespace {

/// Where a line of a draft stands, for refusals.
struct Place {
    const std::string& file;
    std::string line;

    [[noreturn]] void refuse(const std::string& where, const std::string& what, const std::string& allowed) const {
        throw Refusal{file, line + where, what, allowed};
    }
};

std::string place_of_line(std::size_t index) { return "lines[" + std::to_string(index) + "]"; }

Bender looked_up(const DraftBender& given, const Place& place, const Library& library) {
    if (!given.card.empty()) {
        auto card = read_bender_text(given.card, place.file);
        if (!card.ok()) throw card.trouble();
        return std::move(card).value();
    }
    const Bender* bender = find_bender(library, given.id);
    if (const LeftOut* card = bender ? nullptr : find_left_out(library, given.id)) place.refuse(".bender", "is \"" + in_short(given.id) + "\", " + card->words(), card->why.allowed);
    if (!bender) place.refuse(".bender", "is \"" + in_short(given.id) + "\"", joined(bender_ids(library)) + ", or a whole card");
    return *bender;
}

LineEnd looked_up(const DraftLine& line, End which, Length od, const Place& place, const Library& library) {
    const DraftEnd& given = line.end(which);
    const std::optional<Fitting> fitting = find_fitting(library, given.fitting, od);
    const std::string where = std::string(".ends.") + letter(which) + ".fitting";
    if (!fitting) place.refuse(where, given.fitting.empty() ? "is missing" : "is \"" + in_short(given.fitting) + "\"", joined(fitting_ids(library)));
    return {*fitting, given.allowance.value_or(fitting->allowance), given.trim};
}

Line made_line(const Draft& job, std::size_t index, const std::string& file, const Library& library) {
    const DraftLine& given = job.lines[index];
    const Place place{file, place_of_line(index)};
    if (!given.tube && !job.tube) place.refuse(".tube", "is missing", "a tube here or for the whole job");
    if (!given.bender && !job.bender) place.refuse(".bender", "is missing", "a bender here or for the whole job");
    Line line;
    line.name = given.name;
    line.note = given.note;
    line.quantity = given.quantity;
    line.tube = (given.tube ? given.tube : job.tube)->tube;
    line.bender = looked_up(*(given.bender ? given.bender : job.bender), place, library);
    const Material* material = find_material(library, line.tube.material);
    if (!material) place.refuse(".tube.material", "is \"" + in_short(line.tube.material) + "\"", joined(material_ids(library)));
    line.material = *material;
    line.stick = stick_for(library, line.tube.od);
    line.a = looked_up(given, End::A, line.tube.od, place, library);
    line.b = looked_up(given, End::B, line.tube.od, place, library);
    auto route = route_from(given.route);
    if (!route.ok()) throw refusal_of(route.trouble(), given.route, job.unit, file, place.line + ".route");
    line.route = std::move(route).value();
    line.bend_notes = bend_notes(given.route, line.route);
    line.service = job.service;
    line.proof = given.proof;
    return line;
}

/// What the line lacks, as a refusal says it; nothing where only the person's word is missing.
std::string lacking(const Draft& job, std::size_t index, const std::string& file, const Library& library) {
    const auto line = line_from(job, index, file, library);
    if (line.ok()) return "";
    return ": its " + line.trouble().place.substr(place_of_line(index).size() + 1) + " " + line.trouble().what;
}

Job made_job(const Draft& draft, const std::string& file, const Library& library) {
    if (draft.lines.empty() || draft.lines.size() > limits::most_lines)
        throw Refusal{file, "lines", "has " + std::to_string(draft.lines.size()) + " entries", "a list of 1 to " + std::to_string(limits::most_lines)};
    Job job{draft.name, draft.service, draft.unit, {}};
    for (std::size_t i = 0; i < draft.lines.size(); ++i) {
        if (draft.lines[i].unfinished)
            throw Refusal{file, place_of_line(i), "is unfinished" + lacking(draft, i, file, library), "lines that are entered to their end"};
        job.lines.push_back(made_line(draft, i, file, library));
    }
    return job;
}

}  // namespace

Result<Job, Refusal> job_from(const Draft& draft, const std::string& file, const Library& library) {
    return guarded([&] { return made_job(draft, file, library); });
}

Result<Line, Refusal> line_from(const Draft& draft, std::size_t index, const std::string& file, const Library& library) {
    return guarded([&] { return made_line(draft, index, file, library); });
}

Result<Job, Refusal> read_job_text(const std::string& text, const std::string& file, const Library& library) {
    const auto draft = read_draft_text(text, file, library);
    if (!draft.ok()) return draft.trouble();
    return job_from(draft.value(), file, library);
}

Result<Job, Refusal> read_job(const std::filesystem::path& path, const Library& library) {
    const auto text = guarded([&] { return bytes_of(path); });
    if (!text.ok()) return text.trouble();
    return read_job_text(text.value(), path.string(), library);
}

}  // namespace tubewright
