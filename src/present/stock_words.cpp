#include "present/stock_words.h"

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

std::string money_text(Money money) {
    const std::string cents = std::to_string(money.cents % 100);
    return std::to_string(money.cents / 100) + "." + (cents.size() < 2 ? "0" : "") + cents;
}

std::string line_of_key(const std::string& key) {
    const std::size_t slash = key.rfind('/');
    return slash == std::string::npos ? key : key.substr(slash + 1);
}

std::string item_words(const State& state, const BuyItem& item) {
    const Tape tape = reader_tape(state);
    const std::string size = od_text(measured(item.tube.outside), tape);
    switch (item.kind) {
        case BuyKind::stick: return "stick of " + tube_words(state, item.tube) + ", " + text(measured(item.length), tape);
        case BuyKind::nut:
        case BuyKind::sleeve: return item.name + ", for " + size;
        case BuyKind::tee:
        case BuyKind::union_piece: return item.name;
        case BuyKind::clip: return "clip for " + size + " tube";
    }
    return "";
}

}  // namespace tubewright
