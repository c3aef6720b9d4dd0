#include "shell/touch_map.h"

#include <nlohmann/json.hpp>

#include "store/save.h"

namespace tubewright {
namespace {

using nlohmann::json;

json rectangle(const Touchable& thing, double per) {
    return {{"x", thing.min.x / per}, {"y", thing.min.y / per}, {"width", (thing.max.x - thing.min.x) / per}, {"height", (thing.max.y - thing.min.y) / per}};
}

}  // namespace

std::string touch_map(const std::vector<Touchable>& things, double px_per_mm) {
    json list = json::array();
    for (const Touchable& thing : things)
        list.push_back({{"id", thing.id}, {"label", thing.label}, {"px", rectangle(thing, 1)}, {"mm", rectangle(thing, px_per_mm)},
                        {"enabled", thing.enabled}, {"why_not", thing.why_not}, {"held", thing.held ? 0.8 : 0.0}});
    return list.dump(1, ' ', false, json::error_handler_t::replace) + "\n";
}

bool TouchMapFile::show(const std::vector<Touchable>& things, double px_per_mm, const std::string& key) {
    std::string now = touch_map(things, px_per_mm);
    if (now == last_ && key == last_key_) return true;
    RealDisk disk;
    if (!save_whole(disk, path_, now).ok()) return false;
    last_ = std::move(now);
    last_key_ = key;
    return true;
}

}  // namespace tubewright
