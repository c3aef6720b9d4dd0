#include "store/proof_file.h"

#include "store/limits.h"

namespace tubewright {
namespace {

constexpr int last_point = static_cast<int>(limits::most_bends) + 1;
constexpr std::size_t most_kept = 1000;

Span span_from(const Node& from, const Node& to) {
    const int first = from.whole(0, last_point - 1);
    return {static_cast<std::size_t>(first), static_cast<std::size_t>(to.whole(first + 1, last_point))};
}

void read_reading(const Node& node, LineProof& proof, Unit unit) {
    node.known_keys({"from", "to", "read", "twice"});
    const Span span = span_from(node.at("from"), node.at("to"));
    proof.taken.readings.push_back({span, node.at("read").length(unit, {0, limits::longest_run, true})});
    if (const auto twice = node.find("twice"); twice && twice->yes()) proof.twice.push_back(span);
}

HandAnswer hand_from(const Node& node) {
    node.known_keys({"before", "bend", "goes"});
    constexpr int most = static_cast<int>(limits::most_bends);
    const int before = node.at("before").whole(1, most - 1), bend = node.at("bend").whole(before + 1, most);
    return {static_cast<std::size_t>(before - 1), static_cast<std::size_t>(bend - 1), node.at("goes", "left, right").one_of<bool>({{"left", true}, {"right", false}})};
}

}  // namespace

LineProof proof_from(const Node& node, Unit unit, const RawText& raw) {
    node.known_keys({"of", "readings", "out_of_reach", "hand", "hand_passed", "wanted"});
    LineProof proof;
    proof.wire = node.at("of", "the mark of the wire that was taped").text();
    for (const Node& reading : node.at("readings", "a list of readings").items(0, most_kept)) read_reading(reading, proof, unit);
    if (const auto out = node.find("out_of_reach"))
        for (const Node& pair : out->items(0, most_kept)) {
            const std::vector<Node> points = pair.items(2, 2);
            proof.taken.out_of_reach.push_back(span_from(points[0], points[1]));
        }
    if (const auto hand = node.find("hand")) proof.taken.hand = hand_from(*hand);
    if (const auto passed = node.find("hand_passed")) proof.hand_passed = passed->yes();
    if (const auto wanted = node.find("wanted")) proof.wanted = static_cast<std::size_t>(wanted->whole(0, static_cast<int>(most_kept)));
    proof.kept = raw.kept(node.place());
    return proof;
}

}  // namespace tubewright
