#include "store/bends_file.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "bench/springback_log.h"
#include "store/json_tree.h"
#include "store/limits.h"
#include "store/node.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_bends_in_a_file = 100000;
constexpr const char* format = "tubewright-bends";

using Tree = nlohmann::ordered_json;  // keys stand in the order in which a reader looks for them

const char* word(RecordStanding standing) {
    switch (standing) {
        case RecordStanding::counted: return "counted";
        case RecordStanding::asked: return "asked";
        case RecordStanding::confirmed: return "confirmed";
    }
    return "";
}

Tree tree_of(const LoggedBend& logged) {
    const BendCheck& check = logged.check;
    const Tube& tube = check.with.tube;
    Tree tree{{"day", check.record.day},
              {"bender", check.with.bender},
              {"tube", {{"od", tube.od.mm}, {"wall", tube.wall.mm}, {"material", tube.material}}},
              {"lot", check.lot}};
    if (check.target) tree["target"] = check.target->deg;
    tree["set"] = check.set.deg;
    tree["measured"] = check.measured.deg;
    tree["standing"] = word(check.record.standing);
    if (check.record.left_out) tree["left_out"] = true;
    if (!check.set_was_read) tree["set_was_read"] = false;
    tree["of"] = {{"job", logged.of.job}, {"line", logged.of.line}, {"piece", logged.of.piece}, {"attempt", logged.of.attempt}, {"bend", logged.of.bend + 1}};
    return tree;
}

/// 2026-11-25
bool is_day(const std::string& text) {
    constexpr const char* shape = "dddd-dd-dd";
    if (text.size() != 10) return false;
    for (std::size_t i = 0; i < text.size(); ++i)
        if (shape[i] == 'd' ? text[i] < '0' || text[i] > '9' : text[i] != shape[i]) return false;
    return true;
}

std::string day_from(const Node& node) {
    const std::string day = node.text();
    if (!is_day(day)) node.refuse_value("a day such as 2026-11-25");
    return day;
}

Tube tube_from(const Node& node) {
    node.known_keys({"od", "wall", "material"});
    Tube tube;
    tube.od = node.at("od").length(Unit::mm, {limits::least_od, limits::most_od});
    tube.wall = node.at("wall").length(Unit::mm, {limits::least_wall, tube.od.mm / 2, false, true});
    tube.material = node.at("material", "the id of a material").text();
    return tube;
}

BendOfTube bend_of_tube_from(const Node& node) {
    node.known_keys({"job", "line", "piece", "attempt", "bend"});
    constexpr int many = 1000000;
    const int bend = node.at("bend").whole(1, static_cast<int>(limits::most_bends));
    return {node.at("job").note(), node.at("line").note(), node.at("piece").whole(0, many), node.at("attempt").whole(0, many), static_cast<std::size_t>(bend - 1)};
}

LoggedBend bend_from(const Node& node) {
    node.known_keys({"day", "bender", "tube", "lot", "target", "set", "measured", "standing", "left_out", "set_was_read", "of"});
    const Range read{0, most_set.deg, true};
    LoggedBend logged;
    BendCheck& check = logged.check;
    check.record.day = day_from(node.at("day", "a day such as 2026-11-25"));
    check.with = {node.at("bender", "a bender's id").text(), tube_from(node.at("tube", "od, wall and material"))};
    check.lot = node.at("lot", "the delivery, or \"\"").note();
    if (const auto target = node.find("target")) check.target = target->angle({0, 180, true});
    check.set = node.at("set", "where the lever stood").angle(read);
    check.measured = node.at("measured", "what the protractor read").angle(read);
    check.record.standing = node.at("standing", "counted, asked, confirmed").one_of<RecordStanding>({{"counted", RecordStanding::counted}, {"asked", RecordStanding::asked}, {"confirmed", RecordStanding::confirmed}});
    if (const auto out = node.find("left_out")) check.record.left_out = out->yes();
    if (const auto was_read = node.find("set_was_read")) check.set_was_read = was_read->yes();
    if (const auto of = node.find("of")) logged.of = bend_of_tube_from(*of);
    return logged;
}

}  // namespace

std::string bends_text(const std::vector<LoggedBend>& bends) {
    Tree list = Tree::array();
    for (const LoggedBend& logged : bends) list.push_back(tree_of(logged));
    const Tree tree{{"format", format}, {"version", 1}, {"units", "mm"}, {"bends", list}};
    return tree.dump(1, ' ', false, Tree::error_handler_t::replace) + "\n";
}

Result<std::vector<LoggedBend>, Refusal> bends_from(const std::string& text, const std::string& file) {
    return guarded([&] {
        const nlohmann::json tree = tree_from(text, file);
        const Node root(tree, file);
        check_format(root, format);
        root.known_keys({"format", "version", "units", "bends"});
        root.at("units", "mm").one_of<Unit>({{"mm", Unit::mm}});
        std::vector<LoggedBend> bends;
        for (const Node& bend : root.at("bends", "a list of bends").items(0, most_bends_in_a_file)) bends.push_back(bend_from(bend));
        return bends;
    });
}

Result<std::vector<LoggedBend>, Refusal> read_bends(const fs::path& path) {
    const auto text = guarded([&] { return bytes_of(path); });
    if (!text.ok()) return text.trouble();
    return bends_from(text.value(), path.filename().string());
}

std::vector<std::string> bend_files_in(const fs::path& folder) {
    std::error_code trouble;
    fs::create_directories(folder, trouble);
    std::vector<std::string> names;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble))
        if (at->path().extension() == ".json") names.push_back(at->path().filename().string());
    std::sort(names.rbegin(), names.rend());
    return names;
}

Result<fs::path, NotWritten> write_bends_beside(Disk& disk, const fs::path& folder, const std::string& name, const std::vector<LoggedBend>& bends) {
    return save_beside(disk, folder, name, ".json", "The bends are not written", bends_text(bends));
}

}  // namespace tubewright
