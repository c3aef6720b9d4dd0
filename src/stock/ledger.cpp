#include "stock/ledger.h"

#include <charconv>
#include <string_view>

namespace tubewright {

namespace {

using Trouble = std::optional<StockTrouble>;

Trouble not_a_length(ExactLength length, bool may_be_nothing) {
    if (length.um < 0 || (length.um == 0 && !may_be_nothing)) return NoStockLength{length};
    return {};
}

/// One entry at work: what it does to the pieces, and what they were before.
class Writing {
public:
    Writing(Ledger& ledger, std::size_t entry) : ledger_(ledger), entry_(entry) {}

    Trouble operator()(const Received& e) {
        if (auto bad = not_a_length(e.length, false)) return bad;
        if (auto used = in_use(e.piece)) return used;
        add(e.piece, {e.kind, Whereabouts::rack, e.tube, e.length, e.place, e.lot, e.price, {}});
        return {};
    }

    Trouble operator()(const Straightened& e) {
        if (auto bad = not_a_length(e.length, false)) return bad;
        if (auto bad = not_a_length(e.allowance, true)) return bad;
        if (auto used = in_use(e.stick)) return used;
        if (auto missing = has(e.coil, Whereabouts::rack, e.length + e.allowance)) return missing;
        StockPiece& coil = ledger_.pieces.at(e.coil);
        if (coil.kind != PieceKind::coil) return NotTheKind{e.coil, coil.kind};
        take(e.coil, e.length + e.allowance);
        add(e.stick, {PieceKind::stick, Whereabouts::rack, coil.tube, e.length, e.place, coil.lot, coil.price, {}});
        return {};
    }

    Trouble operator()(const Cut& e) {
        if (auto bad = not_a_length(e.length, false)) return bad;
        if (auto bad = not_a_length(e.kerf, true)) return bad;
        if (auto used = in_use(e.piece)) return used;
        if (auto missing = has(e.from, Whereabouts::rack, e.length + e.kerf)) return missing;
        take(e.from, e.length + e.kerf);
        const StockPiece& from = ledger_.pieces.at(e.from);
        if (e.line.empty()) add(e.piece, {PieceKind::offcut, Whereabouts::rack, from.tube, e.length, from.place, from.lot, from.price, {}});
        else add(e.piece, {PieceKind::offcut, Whereabouts::in_hand, from.tube, e.length, {}, from.lot, from.price, e.line});
        return {};
    }

    Trouble operator()(const Used& e) {
        if (auto bad = not_a_length(e.trimmed, true)) return bad;
        if (auto bad = not_a_length(e.kerf, true)) return bad;
        if (auto missing = has(e.piece, Whereabouts::in_hand, e.trimmed + e.kerf)) return missing;
        take(e.piece, e.trimmed + e.kerf);
        StockPiece& piece = ledger_.pieces.at(e.piece);
        if (piece.where != Whereabouts::gone) piece.where = Whereabouts::in_a_line;
        return {};
    }

    Trouble operator()(const Scrapped& e) {
        if (auto bad = not_a_length(e.length, false)) return bad;
        const auto found = ledger_.pieces.find(e.piece);
        if (found == ledger_.pieces.end()) return NoSuchPiece{e.piece};
        const Whereabouts where = found->second.where == Whereabouts::in_hand ? Whereabouts::in_hand : Whereabouts::rack;
        if (auto missing = has(e.piece, where, e.length)) return missing;
        take(e.piece, e.length);
        StockPiece& piece = found->second;
        if (piece.where == Whereabouts::in_hand) {
            piece.where = Whereabouts::rack;
            piece.line.clear();
        }
        return {};
    }

    Trouble operator()(const PutBack& e) {
        if (auto missing = has(e.piece, Whereabouts::in_hand, {})) return missing;
        StockPiece& piece = ledger_.pieces.at(e.piece);
        touch(e.piece, piece);
        piece.where = Whereabouts::rack;
        piece.place = e.place;
        piece.line.clear();
        return {};
    }

    Trouble operator()(const Moved& e) {
        if (auto missing = has(e.piece, Whereabouts::rack, {})) return missing;
        StockPiece& piece = ledger_.pieces.at(e.piece);
        touch(e.piece, piece);
        piece.place = e.place;
        return {};
    }

    Trouble operator()(const Labelled& e) {
        if (auto missing = has(e.piece, Whereabouts::rack, {})) return missing;
        StockPiece& piece = ledger_.pieces.at(e.piece);
        touch(e.piece, piece);
        piece.lot = e.lot;
        piece.price = e.price;
        return {};
    }

    Trouble operator()(const TakenBack& e) {
        if (e.entry >= ledger_.entries.size()) return NoSuchEntry{e.entry};
        if (ledger_.taken_back.contains(e.entry) || std::holds_alternative<TakenBack>(ledger_.entries[e.entry].event))
            return AlreadyTakenBack{e.entry};
        const std::vector<PieceNumber>& touched = ledger_.touched_by.at(e.entry);
        for (const PieceNumber number : touched)
            if (const std::size_t last = ledger_.touches.at(number).back().entry; last != e.entry) return BuiltUpon{e.entry, last};
        for (const PieceNumber number : touched) {
            auto& touches = ledger_.touches.at(number);
            if (const auto* before = std::get_if<StockPiece>(&touches.back().before)) ledger_.pieces.at(number) = *before;
            else ledger_.pieces.erase(number);
            touches.pop_back();
        }
        ledger_.taken_back.insert(e.entry);
        return {};
    }

private:
    /// A number that was taken back stays used up.
    Trouble in_use(PieceNumber number) const {
        if (ledger_.touches.contains(number)) return NumberInUse{number};
        return {};
    }

    Trouble has(PieceNumber number, Whereabouts where, ExactLength needed) const {
        const auto found = ledger_.pieces.find(number);
        if (found == ledger_.pieces.end()) return NoSuchPiece{number};
        if (found->second.where != where) return NotThere{number, found->second.where, where};
        if (found->second.length < needed) return NotEnoughLeft{number, found->second.length, needed};
        return {};
    }

    void add(PieceNumber number, StockPiece piece) {
        touch(number, std::monostate{});
        ledger_.pieces.emplace(number, std::move(piece));
    }

    void take(PieceNumber number, ExactLength length) {
        StockPiece& piece = ledger_.pieces.at(number);
        touch(number, piece);
        piece.length -= length;
        if (piece.kind == PieceKind::stick && length.um > 0) piece.kind = PieceKind::offcut;
        if (piece.length.um == 0) piece.where = Whereabouts::gone;
    }

    void touch(PieceNumber number, std::variant<std::monostate, StockPiece> before) {
        ledger_.touches[number].push_back({entry_, std::move(before)});
        ledger_.touched_by[entry_].push_back(number);
    }

    Ledger& ledger_;
    std::size_t entry_;
};

template <class Look>
void for_each_standing(const Ledger& ledger, const Look& look) {
    for (std::size_t i = 0; i < ledger.entries.size(); ++i)
        if (!ledger.taken_back.contains(i)) look(ledger.entries[i]);
}

}  // namespace

std::string tube_key(const StockTube& tube) { return tube.material + " " + std::to_string(tube.outside.um) + "x" + std::to_string(tube.wall.um); }

std::optional<StockTube> stock_tube_of(const std::string& key) {
    const std::size_t gap = key.rfind(' '), cross = key.rfind('x');
    if (gap == std::string::npos || cross == std::string::npos || cross < gap) return std::nullopt;
    const auto whole = [](std::string_view text, ExactLength& length) {
        const auto [end, trouble] = std::from_chars(text.data(), text.data() + text.size(), length.um);
        return trouble == std::errc{} && end == text.data() + text.size();
    };
    StockTube tube{{}, {}, key.substr(0, gap)};
    if (!whole(std::string_view(key).substr(gap + 1, cross - gap - 1), tube.outside) || !whole(std::string_view(key).substr(cross + 1), tube.wall)) return std::nullopt;
    return tube;
}

PieceNumber Ledger::next_number() const { return {touches.empty() ? 1 : touches.rbegin()->first.n + 1}; }

Result<std::size_t, StockTrouble> write(Ledger& ledger, LedgerEntry entry) {
    const std::size_t number = ledger.entries.size();
    if (Trouble trouble = std::visit(Writing(ledger, number), entry.event)) return *trouble;
    ledger.entries.push_back(std::move(entry));
    return number;
}

Result<Ledger, StockTrouble> ledger_of(const std::vector<LedgerEntry>& entries) {
    Ledger ledger;
    for (const LedgerEntry& entry : entries) {
        const auto written = write(ledger, entry);
        if (!written.ok()) return written.trouble();
    }
    return ledger;
}

std::map<StockTube, Balance> balances(const Ledger& ledger) {
    std::map<StockTube, Balance> by_tube;
    std::map<PieceNumber, StockTube> tube_of;  // from the entries alone
    for_each_standing(ledger, [&](const LedgerEntry& entry) {
        if (const auto* e = std::get_if<Received>(&entry.event)) {
            tube_of[e->piece] = e->tube;
            by_tube[e->tube].received += e->length;
        } else if (const auto* straightened = std::get_if<Straightened>(&entry.event)) {
            const StockTube tube = tube_of[straightened->stick] = tube_of[straightened->coil];
            by_tube[tube].scrapped += straightened->allowance;
        } else if (const auto* cut = std::get_if<Cut>(&entry.event)) {
            const StockTube tube = tube_of[cut->piece] = tube_of[cut->from];
            by_tube[tube].kerf += cut->kerf;
        } else if (const auto* used = std::get_if<Used>(&entry.event)) {
            Balance& balance = by_tube[tube_of[used->piece]];
            balance.scrapped += used->trimmed;
            balance.kerf += used->kerf;
        } else if (const auto* scrapped = std::get_if<Scrapped>(&entry.event)) {
            by_tube[tube_of[scrapped->piece]].scrapped += scrapped->length;
        }
    });
    for (const auto& [number, piece] : ledger.pieces) {
        Balance& balance = by_tube[piece.tube];
        switch (piece.where) {
            case Whereabouts::rack: balance.on_rack += piece.length; break;
            case Whereabouts::in_hand: balance.in_hand += piece.length; break;
            case Whereabouts::in_a_line: balance.in_lines += piece.length; break;
            case Whereabouts::gone: break;
        }
    }
    return by_tube;
}

std::vector<ScrapRecord> scrap_records(const Ledger& ledger) {
    struct From { StockTube tube; Price price; std::string line; };
    std::map<PieceNumber, From> from;
    std::vector<ScrapRecord> records;
    for_each_standing(ledger, [&](const LedgerEntry& entry) {
        const auto add = [&](PieceNumber piece, ExactLength length, const std::string& reason) {
            const From& of = from.at(piece);
            if (length.um > 0) records.push_back({entry.day, reason, of.tube, length, cost(of.price, length), of.line});
        };
        if (const auto* e = std::get_if<Received>(&entry.event)) {
            from[e->piece] = {e->tube, e->price, {}};
        } else if (const auto* straightened = std::get_if<Straightened>(&entry.event)) {
            from[straightened->stick] = from.at(straightened->coil);
            add(straightened->coil, straightened->allowance, reason_straightened);
        } else if (const auto* cut = std::get_if<Cut>(&entry.event)) {
            const From& of = from.at(cut->from);
            from[cut->piece] = {of.tube, of.price, cut->line};
        } else if (const auto* used = std::get_if<Used>(&entry.event)) {
            add(used->piece, used->trimmed, reason_trimmed);
        } else if (const auto* scrapped = std::get_if<Scrapped>(&entry.event)) {
            add(scrapped->piece, scrapped->length, scrapped->reason);
            from.at(scrapped->piece).line.clear();  // what is left goes back to the rack
        } else if (const auto* back = std::get_if<PutBack>(&entry.event)) {
            from.at(back->piece).line.clear();
        } else if (const auto* labelled = std::get_if<Labelled>(&entry.event)) {
            from.at(labelled->piece).price = labelled->price;
        }
    });
    return records;
}

}  // namespace tubewright
