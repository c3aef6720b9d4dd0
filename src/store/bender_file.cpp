#include "store/bender_file.h"

#include <nlohmann/json.hpp>
#include <set>

#include "store/json_tree.h"
#include "store/limits.h"
#include "store/node.h"

namespace tubewright {
namespace {

std::vector<ReferenceMark> marks_from(const Node& list, Unit unit) {
    std::vector<ReferenceMark> marks;
    std::set<std::string> names;
    for (const Node& item : list.items(1, 20)) {
        item.known_keys({"name", "offset"});
        marks.push_back({item.at("name").text(20), item.at("offset").length(unit, {-limits::bender_reach, limits::bender_reach})});
        if (!names.insert(marks.back().name).second) item.at("name").refuse("is the name of two marks", "a name for each mark");
    }
    return marks;
}

SetUp set_up_from(const Node& node) {
    node.known_keys({"hook", "swing"});
    return {node.at("hook").one_of<HookHand>({{"left", HookHand::left}, {"right", HookHand::right}}),
            node.at("swing").one_of<Swing>({{"away", Swing::away}, {"toward", Swing::toward}, {"up", Swing::up}, {"down", Swing::down}})};
}

Eigen::Vector3d place_from(const Node& node, Unit unit) {
    const std::vector<Node> numbers = node.items(3, 3);
    const Range reach{-limits::bench_reach, limits::bench_reach};
    return {numbers[0].length(unit, reach).mm, numbers[1].length(unit, reach).mm, numbers[2].length(unit, reach).mm};
}

Block box_from(const Node& node, Unit unit) {
    node.known_keys({"from", "to"});
    const Block box{place_from(node.at("from"), unit), place_from(node.at("to"), unit)};
    if ((box.to - box.from).cwiseAbs().minCoeff() <= 0) node.at("to").refuse("lies level with from", "the opposite corner of the box");
    return box;
}

Cylinder cylinder_from(const Node& node, Unit unit) {
    node.known_keys({"from", "to", "radius"});
    const Cylinder cylinder{place_from(node.at("from"), unit), place_from(node.at("to"), unit), node.at("radius").length(unit, {0, limits::bench_reach, true})};
    if (cylinder.from == cylinder.to) node.at("to").refuse("is the same place as from", "the middle of the other end");
    return cylinder;
}

/// A direction needs no unit, only a length that is not 0.
HalfSpace half_space_from(const Node& node, Unit unit) {
    node.known_keys({"at", "into"});
    const std::vector<Node> into = node.at("into").items(3, 3);
    const Range any{-limits::bench_reach, limits::bench_reach};
    const HalfSpace space{place_from(node.at("at"), unit), {into[0].number(any), into[1].number(any), into[2].number(any)}};
    if (space.into.norm() <= 0) node.at("into").refuse("points nowhere", "a direction into the material");
    return space;
}

Solid solid_from(const Node& node, Unit unit) {
    node.known_keys({"name", "stands", "box", "cylinder", "half_space"});
    Solid solid;
    solid.name = node.at("name").text(60);
    solid.stands = node.at("stands", "fixed, lever, bench").one_of<Stands>({{"fixed", Stands::fixed}, {"lever", Stands::lever}, {"bench", Stands::bench}});
    const auto box = node.find("box"), cylinder = node.find("cylinder"), space = node.find("half_space");
    if (box.has_value() + cylinder.has_value() + space.has_value() != 1) node.refuse("does not have one shape", "one of box, cylinder, half_space");
    if (box) solid.shape = box_from(*box, unit);
    if (cylinder) solid.shape = cylinder_from(*cylinder, unit);
    if (space) solid.shape = half_space_from(*space, unit);
    return solid;
}

std::string preferred_from(const Node& node, const std::vector<ReferenceMark>& marks) {
    std::vector<std::pair<std::string, std::string>> names;
    for (const ReferenceMark& mark : marks) names.emplace_back(mark.name, mark.name);
    return node.one_of<std::string>(names);
}

}  // namespace

Bender bender_card(const Node& root) {
    check_format(root, "tubewright-bender");
    root.known_keys({"format", "version", "id", "name", "units", "tube_od", "radius", "max_angle", "stretch", "marks",
                     "preferred_mark", "hook_straight", "lever_straight", "set_up", "body"});
    const Unit unit = unit_from(root.at("units", "in, mm"));
    Bender bender;
    bender.id = root.at("id").text(80);
    bender.name = root.at("name").text();
    bender.tube_od = root.at("tube_od").length(unit, {limits::least_od, limits::most_od});
    const double od = bender.tube_od.mm;
    bender.radius = root.at("radius").length(unit, {card_limits::least_radius * od, card_limits::most_radius * od, true});
    bender.max_angle = root.at("max_angle").angle({0, card_limits::most_angle, true});
    if (const auto stretch = root.find("stretch")) bender.stretch = stretch->number({card_limits::least_stretch, card_limits::most_stretch});
    bender.marks = marks_from(root.at("marks", "a list of 1 to 20"), unit);
    if (const auto preferred = root.find("preferred_mark")) bender.preferred_mark = preferred_from(*preferred, bender.marks);
    bender.hook_straight = root.at("hook_straight").length(unit, {0, limits::bender_reach});
    bender.lever_straight = root.at("lever_straight").length(unit, {0, limits::bender_reach});
    if (const auto set_up = root.find("set_up")) bender.set_up = set_up_from(*set_up);
    if (const auto body = root.find("body"))
        for (const Node& solid : body->items(0, 200)) bender.body.push_back(solid_from(solid, unit));
    return bender;
}

Result<Bender, Refusal> read_bender_text(const std::string& text, const std::string& file) {
    return guarded([&] {
        const nlohmann::json tree = tree_from(text, file);
        return bender_card(Node(tree, file));
    });
}

Result<Bender, Refusal> read_bender(const std::filesystem::path& path) {
    const auto text = guarded([&] { return bytes_of(path); });
    if (!text.ok()) return text.trouble();
    return read_bender_text(text.value(), path.string());
}

}  // namespace tubewright
