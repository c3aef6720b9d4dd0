#include "present/stock_words.h"

#include <algorithm>

#include "present/pieces.h"

namespace tubewright {

std::string kind_word(PieceKind kind) {
    switch (kind) {
        case PieceKind::stick: return "stick";
        case PieceKind::coil: return "coil";
        case PieceKind::offcut: return "offcut";
    }
    return "";
}

std::string material_words(const State& state, const std::string& id) {
    const auto known = state.material_names.find(id);
    return known == state.material_names.end() || known->second.empty() ? id : known->second;
}

std::string tube_words(const State& state, const StockTube& tube) {
    return size_text({measured(tube.outside), measured(tube.wall), tube.material}, reader_tape(state)) + " " + material_words(state, tube.material);
}

std::string place_words(const RackLength& length) {
    std::string said = length.place;
    if (!length.lot.empty()) said += (said.empty() ? "lot " : ", lot ") + length.lot;
    return said;
}

std::string money_text(Money money) {
    const std::string cents = std::to_string(money.cents % 100);
    return std::to_string(money.cents / 100) + "." + (cents.size() < 2 ? "0" : "") + cents;
}

std::string line_of_key(const State& state, const std::string& key) {
    // Job ids and line names can both have a slash in them; of those that are known the longest id is the job's.
    std::size_t end = 0;
    const auto look = [&](const std::string& id) {
        if (key.rfind(id + "/", 0) == 0) end = std::max(end, id.size() + 1);
    };
    look(state.job_id);
    for (const ShelfEntry& entry : state.shelf) look(entry.id);
    for (const PlannedJob& other : state.plan.others) look(other.of.id);
    if (end == 0) end = key.rfind('/') == std::string::npos ? 0 : key.rfind('/') + 1;
    return key.substr(end);
}

namespace {

/// " for 2 × 3/16" 37° single flare", and how many ends are still open.
std::string ends_words(const BuyItem& item, Tape tape) {
    std::string said;
    for (auto end = item.ends.begin(); end != item.ends.end();) {
        const auto next = std::upper_bound(end, item.ends.end(), *end);
        said += (said.empty() ? " for " : " and ") + std::to_string(next - end) + " × " + od_text(measured(end->outside), tape) + " " + end->fitting;
        end = next;
    }
    const std::size_t held = ends_held(item.kind == BuyKind::tee ? JointKind::tee : JointKind::union_piece);
    return said + (item.ends.size() < held ? ", " + counted(held - item.ends.size(), "end", "ends") + " still open" : std::string());
}

}  // namespace

std::string item_words(const State& state, const BuyItem& item) {
    const Tape tape = reader_tape(state);
    const std::string size = od_text(measured(item.tube.outside), tape);
    switch (item.kind) {
        case BuyKind::stick: return "stick of " + tube_words(state, item.tube) + ", " + text(measured(item.length), tape);
        case BuyKind::nut:
        case BuyKind::sleeve: return item.name + ", for " + size;
        case BuyKind::tee: return "tee" + ends_words(item, tape);
        case BuyKind::union_piece: return "union" + ends_words(item, tape);
        case BuyKind::clip: return "clip for " + size + " tube";
    }
    return "";
}

}  // namespace tubewright
