#include "store/job_text.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

#include "store/number_text.h"
#include "store/route_file.h"

namespace tubewright {
namespace {

using Members = std::vector<std::string>;

std::string quoted(const std::string& text) { return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace); }

std::string member(const std::string& key, const std::string& value) { return quoted(key) + ": " + value; }

void add(Members& members, const KeptKeys& kept) {
    for (const KeptKey& key : kept) members.push_back(key.key + ": " + key.value);
}

std::string joined(const Members& members, const std::string& between) {
    std::string text;
    for (const std::string& one : members) text += (text.empty() ? "" : between) + one;
    return text;
}

std::string in_one_line(const Members& members) { return members.empty() ? "{}" : "{ " + joined(members, ", ") + " }"; }

/// One entry a line, two further in than the bracket's own line.
std::string in_rows(const Members& entries, std::size_t indent, char open, char close) {
    if (entries.empty()) return {open, close};
    const std::string start = "\n" + std::string(indent + 2, ' ');
    return open + start + joined(entries, "," + start) + "\n" + std::string(indent, ' ') + close;
}

std::string text_of(const DraftTube& given, Unit unit) {
    Members members{member("od", typed(given.tube.od, unit)), member("wall", typed(given.tube.wall, unit)), member("material", quoted(given.tube.material))};
    add(members, given.kept);
    return in_one_line(members);
}

std::string text_of(const DraftBender& bender) { return bender.card.empty() ? quoted(bender.id) : bender.card; }

std::string text_of(const DraftEnd& end, Unit unit) {
    Members members;
    if (!end.fitting.empty()) members.push_back(member("fitting", quoted(end.fitting)));
    if (end.allowance) members.push_back(member("allowance", typed(*end.allowance, unit)));
    if (end.trim != Length{}) members.push_back(member("trim", typed(end.trim, unit)));
    add(members, end.kept);
    return in_one_line(members);
}

std::string text_of(const MeasuredBend& bend) {
    Members members{member("angle", typed(bend.angle))};
    if (bend.rotation) members.push_back(member("rotation", typed(*bend.rotation)));
    if (!bend.note.empty()) members.push_back(member("note", quoted(bend.note)));
    add(members, bend.kept);
    return in_one_line(members);
}

std::string text_of(const MeasuredMove& move, Unit unit) {
    Members members;
    for (const auto& [way, length] : move.along) members.push_back(member(name_of(way), typed(length, unit)));
    add(members, move.kept);
    return in_one_line(members);
}

template <class Lengths>
std::string text_of_lengths(const Lengths& lengths, Unit unit) {
    Members texts;
    for (const Length length : lengths) texts.push_back(typed(length, unit));
    return "[" + joined(texts, ", ") + "]";
}

template <class T, class Text>
std::string rows_of(const std::vector<T>& entries, std::size_t indent, const Text& text) {
    Members rows;
    for (const T& entry : entries) rows.push_back(text(entry));
    return in_rows(rows, indent, '[', ']');
}

std::string text_of(const MeasuredRoute& route, Unit unit, std::size_t indent) {
    const std::size_t inside = indent + 2;
    Members members{member("form", quoted(name_of(route.form)))};
    if (route.form == RouteForm::legs) members.push_back(member("measured_to", quoted(name_of(route.measured_to))));
    if (route.form == RouteForm::legs || route.form == RouteForm::straights) {
        members.push_back(member(name_of(route.form), text_of_lengths(route.runs, unit)));
        members.push_back(member("bends", rows_of(route.bends, inside, [](const MeasuredBend& bend) { return text_of(bend); })));
    }
    if (route.form == RouteForm::points)
        members.push_back(member("points", rows_of(route.points, inside, [&](const MeasuredPoint& point) { return text_of_lengths(point, unit); })));
    if (route.form == RouteForm::moves)
        members.push_back(member("moves", rows_of(route.moves, inside, [&](const MeasuredMove& move) { return text_of(move, unit); })));
    add(members, route.kept);
    return in_rows(members, indent, '{', '}');
}

std::string text_of_ends(const DraftLine& line, Unit unit, std::size_t indent) {
    Members members{member("A", text_of(line.a, unit)), member("B", text_of(line.b, unit))};
    add(members, line.kept_at_ends);
    return in_rows(members, indent, '{', '}');
}

std::string text_of(const LineProof& proof, Unit unit, std::size_t indent) {
    const auto twice = [&](const Span& span) { return std::find(proof.twice.begin(), proof.twice.end(), span) != proof.twice.end(); };
    Members members{member("of", quoted(proof.wire)), member("readings", rows_of(proof.taken.readings, indent + 2, [&](const TapeReading& reading) {
        Members one{member("from", std::to_string(reading.span.from)), member("to", std::to_string(reading.span.to)), member("read", typed(reading.read, unit))};
        if (twice(reading.span)) one.push_back(member("twice", "true"));
        return in_one_line(one);
    }))};
    Members out;
    for (const Span& span : proof.taken.out_of_reach) out.push_back("[" + std::to_string(span.from) + ", " + std::to_string(span.to) + "]");
    if (!out.empty()) members.push_back(member("out_of_reach", "[" + joined(out, ", ") + "]"));
    if (const auto& hand = proof.taken.hand)
        members.push_back(member("hand", in_one_line({member("before", std::to_string(hand->before + 1)), member("bend", std::to_string(hand->bend + 1)), member("goes", quoted(hand->left ? "left" : "right"))})));
    if (proof.hand_passed) members.push_back(member("hand_passed", "true"));
    if (proof.wanted > 0) members.push_back(member("wanted", std::to_string(proof.wanted)));
    add(members, proof.kept);
    return in_rows(members, indent, '{', '}');
}

void add(Members& members, const std::string& note, const std::optional<DraftTube>& tube, const std::optional<DraftBender>& bender, Unit unit) {
    if (!note.empty()) members.push_back(member("note", quoted(note)));
    if (tube) members.push_back(member("tube", text_of(*tube, unit)));
    if (bender) members.push_back(member("bender", text_of(*bender)));
}

std::string text_of(const Draft& job, const DraftLine& line, std::size_t indent) {
    const std::size_t inside = indent + 2;
    Members members{member("name", quoted(line.name)), member("quantity", std::to_string(line.quantity))};
    if (is_unfinished(job, line)) members.push_back(member("unfinished", "true"));
    add(members, line.note, line.tube, line.bender, job.unit);
    members.push_back(member("ends", text_of_ends(line, job.unit, inside)));
    members.push_back(member("route", text_of(line.route, job.unit, inside)));
    if (line.proof) members.push_back(member("proof", text_of(*line.proof, job.unit, inside)));
    add(members, line.kept);
    return in_rows(members, indent, '{', '}');
}

}  // namespace

std::string text_of(const Draft& job) {
    Members members{member("format", quoted("tubewright-job")), member("version", "1"), member("name", quoted(job.name)),
                    member("service", quoted(name_of(job.service))), member("units", quoted(job.unit == Unit::inch ? "in" : "mm"))};
    add(members, job.note, job.tube, job.bender, job.unit);
    members.push_back(member("lines", rows_of(job.lines, 2, [&](const DraftLine& line) { return text_of(job, line, 4); })));
    add(members, job.kept);
    return in_rows(members, 0, '{', '}') + "\n";
}

const char* name_of(Service service) {
    switch (service) {
        case Service::brake: return "brake";
        case Service::fuel: return "fuel";
        case Service::cooler: return "cooler";
        case Service::hydraulic: return "hydraulic";
        case Service::air: return "air";
        case Service::other: return "other";
    }
    return "";
}

}  // namespace tubewright
