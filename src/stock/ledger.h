#pragma once
// The rack and its ledger: every length that came in, and what became of it. The ledger's entries are the record; the rack is
// what they come to. An entry is never changed or struck out: one that was wrong is taken back by another.

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "base/result.h"
#include "stock/exact_length.h"

namespace tubewright {

/// What has to be the same for one length to stand in for another.
struct StockTube {
    ExactLength outside, wall;
    std::string material;
    auto operator<=>(const StockTube&) const = default;
};

/// "stainless-304 4763x711", in micrometres.
std::string tube_key(const StockTube& tube);
/// None for what is no tube's key.
std::optional<StockTube> stock_tube_of(const std::string& key);

/// Given once, never used again.
struct PieceNumber {
    int n = 0;
    constexpr auto operator<=>(const PieceNumber&) const = default;
};

enum class PieceKind { stick, coil, offcut };
enum class Whereabouts { rack, in_hand, in_a_line, gone };

/// A length as it is now.
struct StockPiece {
    PieceKind kind;
    Whereabouts where;
    StockTube tube;
    ExactLength length;  ///< nothing when it is gone
    std::string place;   ///< of the rack
    std::string lot;
    Price price;
    std::string line;  ///< that it was cut for, nothing for a length on the rack
    bool operator==(const StockPiece&) const = default;
};

// ---------------------------------------------------------------- what can happen to tube

struct Received { PieceNumber piece; PieceKind kind; StockTube tube; ExactLength length; std::string place, lot; Price price; bool operator==(const Received&) const = default; };
/// `length` of the coil becomes a stick; `allowance` is what straightening costs besides: ends that stay bent, crushed tube.
struct Straightened { PieceNumber coil, stick; ExactLength length, allowance; std::string place; bool operator==(const Straightened&) const = default; };
/// What is left of `from` stays under its number, as an offcut if it was a stick. `kerf` is what the saw really took. Where no
/// line is named, what was cut off goes to the rack, to where `from` lies.
struct Cut { PieceNumber from, piece; ExactLength length, kerf; std::string line; bool operator==(const Cut&) const = default; };
/// A cut length is built in, its trims taken off.
struct Used { PieceNumber piece; ExactLength trimmed, kerf; bool operator==(const Used&) const = default; };
/// `length` of a piece, or all of it, goes to the bin: of a length on the rack the rest stays there, of a cut length as an
/// offcut.
struct Scrapped { PieceNumber piece; ExactLength length; std::string reason; bool operator==(const Scrapped&) const = default; };
/// A length cut for a line goes to the rack whole, as an offcut.
struct PutBack { PieceNumber piece; std::string place; bool operator==(const PutBack&) const = default; };
struct Moved { PieceNumber piece; std::string place; bool operator==(const Moved&) const = default; };  ///< on the rack
struct Labelled { PieceNumber piece; std::string lot; Price price; bool operator==(const Labelled&) const = default; };  ///< what it is known as from now on
struct TakenBack { std::size_t entry; bool operator==(const TakenBack&) const = default; };

using StockEvent = std::variant<Received, Straightened, Cut, Used, Scrapped, PutBack, Moved, Labelled, TakenBack>;
struct LedgerEntry {
    int day;  ///< counted from any day by whoever keeps the calendar
    StockEvent event;
    bool operator==(const LedgerEntry&) const = default;
};

// ---------------------------------------------------------------- what stands in the way

struct NoSuchPiece { PieceNumber piece; };
struct NumberInUse { PieceNumber piece; };
struct NotEnoughLeft { PieceNumber piece; ExactLength has, needed; };
struct NotThere { PieceNumber piece; Whereabouts where, needed; };
struct NotTheKind { PieceNumber piece; PieceKind kind; };
struct NoStockLength { ExactLength given; };  ///< nothing or less where some is needed, or less than nothing
struct NoSuchEntry { std::size_t entry; };
struct AlreadyTakenBack { std::size_t entry; };
struct BuiltUpon { std::size_t entry, later; };  ///< the later one has to be taken back first
using StockTrouble = std::variant<NoSuchPiece, NumberInUse, NotEnoughLeft, NotThere, NotTheKind, NoStockLength, NoSuchEntry, AlreadyTakenBack, BuiltUpon>;

/// What the saw really takes: a piece with less left over than its width loses only that.
constexpr ExactLength kerf_lost(ExactLength has, ExactLength wanted, ExactLength saw) { return std::min(saw, has - wanted); }

/// Entries, and the pieces they come to. Only `write` adds to it.
struct Ledger {
    std::vector<LedgerEntry> entries;
    std::map<PieceNumber, StockPiece> pieces;
    std::set<std::size_t> taken_back;

    /// For taking back: the entries that touched a piece, the last at the end, each with the piece as it was before.
    struct Touch { std::size_t entry; std::variant<std::monostate, StockPiece> before; };
    std::map<PieceNumber, std::vector<Touch>> touches;
    std::map<std::size_t, std::vector<PieceNumber>> touched_by;

    PieceNumber next_number() const;
};

/// Adds the entry, or says why it can't have happened; then the ledger is as it was.
Result<std::size_t, StockTrouble> write(Ledger& ledger, LedgerEntry entry);
/// The same ledger from its entries alone, as they are kept.
Result<Ledger, StockTrouble> ledger_of(const std::vector<LedgerEntry>& entries);

/// Every length of one tube accounted for: received = on the rack + in hand + in lines + kerf + scrapped.
struct Balance {
    ExactLength received, on_rack, in_hand, in_lines, kerf, scrapped;
    bool holds() const { return received == on_rack + in_hand + in_lines + kerf + scrapped; }
    bool operator==(const Balance&) const = default;
};

/// What came in, kerf and scrap are added up from the entries that stand, what is there from the pieces as they are: two
/// countings of one thing, which agree to the micrometre or something is wrong. By tube.
std::map<StockTube, Balance> balances(const Ledger& ledger);

/// What went to the bin, and why: the entries that stand, with what they cost. Trims and straightening are among them.
struct ScrapRecord {
    int day;
    std::string reason;
    StockTube tube;
    ExactLength length;
    Money cost;
    std::string line;  ///< nothing for a length on the rack
    bool operator==(const ScrapRecord&) const = default;
};
inline constexpr const char* reason_trimmed = "trimmed";
inline constexpr const char* reason_straightened = "straightened";
inline constexpr const char* reason_practice = "practice";
std::vector<ScrapRecord> scrap_records(const Ledger& ledger);

}  // namespace tubewright
