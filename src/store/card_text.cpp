#include "store/card_text.h"

#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>

namespace tubewright {
namespace {

using Tree = nlohmann::ordered_json;  // keys stand as the format's description shows them

/// Such that `value` times 25.4 is `mm` again, with few digits where that will do: 0.1875 stays 0.1875.
std::optional<double> inches(double mm) {
    const double plain = mm / 25.4;
    char digits[32];
    const auto end = std::to_chars(digits, digits + sizeof digits, plain, std::chars_format::general, 15).ptr;
    double shorter = 0;
    std::from_chars(digits, end, shorter);
    for (const double value : {shorter, plain, std::nextafter(plain, -1e9), std::nextafter(plain, 1e9)})
        if (value * 25.4 == mm) return value;
    return std::nullopt;
}

struct Writer {
    Unit unit;
    bool exact = true;

    double length(double mm) {
        if (unit == Unit::mm) return mm + 0.0;  // + 0.0: no "-0"
        const auto value = inches(mm);
        exact = exact && value.has_value();
        return value.value_or(0) + 0.0;
    }
    double length(Length value) { return length(value.mm); }
    Tree place(const Eigen::Vector3d& at) { return Tree::array({length(at.x()), length(at.y()), length(at.z())}); }

    void put(Tree& into, const Block& box) { into["box"] = {{"from", place(box.from)}, {"to", place(box.to)}}; }
    void put(Tree& into, const Cylinder& round) {
        into["cylinder"] = {{"from", place(round.from)}, {"to", place(round.to)}, {"radius", length(round.radius)}};
    }
    void put(Tree& into, const HalfSpace& space) {
        into["half_space"] = {{"at", place(space.at)}, {"into", Tree::array({space.into.x(), space.into.y(), space.into.z()})}};
    }

    Tree solid(const Solid& solid) {
        const char* const stands[] = {"fixed", "lever", "bench"};
        Tree tree = {{"name", solid.name}, {"stands", stands[static_cast<int>(solid.stands)]}};
        std::visit([&](const auto& shape) { put(tree, shape); }, solid.shape);
        return tree;
    }

    Tree card(const Bender& bender) {
        const char* const swings[] = {"away", "toward", "up", "down"};
        Tree tree = {{"format", "tubewright-bender"}, {"version", 1}, {"id", bender.id}, {"name", bender.name}, {"units", unit == Unit::inch ? "in" : "mm"}};
        tree["tube_od"] = length(bender.tube_od);
        tree["radius"] = length(bender.radius);
        tree["max_angle"] = bender.max_angle.deg;
        tree["stretch"] = bender.stretch;
        tree["marks"] = Tree::array();
        for (const ReferenceMark& mark : bender.marks) tree["marks"].push_back({{"name", mark.name}, {"offset", length(mark.offset)}});
        if (!bender.preferred_mark.empty()) tree["preferred_mark"] = bender.preferred_mark;
        tree["hook_straight"] = length(bender.hook_straight);
        tree["lever_straight"] = length(bender.lever_straight);
        tree["set_up"] = {{"hook", bender.set_up.hook == HookHand::left ? "left" : "right"}, {"swing", swings[static_cast<int>(bender.set_up.swing)]}};
        tree["body"] = Tree::array();
        for (const Solid& one : bender.body) tree["body"].push_back(solid(one));
        return tree;
    }
};

void keep_own_keys(Tree& tree, const std::string& before) {
    const Tree old = Tree::parse(before, nullptr, false);
    if (!old.is_object()) return;
    for (const auto& [key, value] : old.items())
        if (key.rfind("x-", 0) == 0) tree[key] = value;
}

}  // namespace

std::string card_text(const Bender& bender, Unit unit, const std::string& before) {
    Writer writer{unit};
    Tree tree = writer.card(bender);
    if (!writer.exact) tree = Writer{Unit::mm}.card(bender);
    keep_own_keys(tree, before);
    return tree.dump(2, ' ', false, Tree::error_handler_t::replace) + "\n";
}

}  // namespace tubewright
