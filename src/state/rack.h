#pragma once
// The rack as the bench sees it: days, tubes and lengths in its ledger, and what is written there when a line is cut, made or spoiled.

#include <optional>
#include <string>
#include <vector>

#include "state/state.h"
#include "tube/tube.h"

namespace tubewright {

/// The ledger's day for one like 2026-11-25, by the Gregorian calendar from 1970-01-01 on; 0 for what is no day.
int day_number(const std::string& day);
std::string day_of(int number);

StockTube stock_tube(const Tube& tube);

/// How scrap for this reason stands in the ledger.
const char* ledger_reason(Reason reason);
/// What can be scrapped on the rack itself: too short to keep; not there when somebody looked.
inline constexpr const char *reason_short_end = "short end", *reason_missing = "not there", *reason_binned = "off the rack";

/// One length that lies on the rack.
struct RackLength {
    PieceNumber piece;
    PieceKind kind;
    ExactLength length;
    std::string place, lot;
    bool operator==(const RackLength&) const = default;
};
/// Of one tube, longest first; of equal ones the first that came.
std::vector<RackLength> lengths_on_rack(const Ledger& ledger, const StockTube& tube);
/// That lines of this tube are cut from now; none where none was chosen, or nothing is left of it.
std::optional<RackLength> length_in_use(const Work& work, const StockTube& tube);
/// Every tube that ever lay on the rack, by outside diameter, wall and material.
std::vector<StockTube> tubes_on_rack(const Ledger& ledger);
/// The piece cut for a line and still in hand; none where the ledger knows of none.
std::optional<PieceNumber> piece_cut_for(const Ledger& ledger, const std::string& line);

/// What can be typed for the rack's question: a length up to longest_stick, or a price.
std::optional<Length> typed_rack_length(const State& state);
std::optional<Money> typed_price(const State& state);
inline constexpr Money highest_price{10'000'000};  ///< a hundred thousand
/// Whether the rack's question is answered in letters, or by one of a few choices.
bool is_in_letters(RackAsk ask);
bool is_by_choice(RackAsk ask);
inline constexpr std::size_t longest_place = 24;
inline constexpr Length widest_saw{10};
/// It came in just so: nothing was cut off it.
bool is_as_it_came(const Ledger& ledger, PieceNumber piece);
/// The piece looked at, where it lies on the rack.
const StockPiece* piece_in_sight(const State& state);
/// The entry that could be taken back for it: the last that changed it, if it was made by hand and nothing is built upon it. None for none.
std::optional<std::size_t> last_entry_of(const Ledger& ledger, PieceNumber piece);
/// Offcuts of the tube that are not worth keeping.
std::vector<PieceNumber> short_ends(const Work& work, const StockTube& tube);

/// Cut for a line that knows nothing of it: the line was taken out of its job, or its job's file is gone.
bool is_forgotten(const Work& work, PieceNumber piece);
/// Cut for lines and not yet built in, of one tube.
std::vector<PieceNumber> pieces_in_hand(const Ledger& ledger, const StockTube& tube);

/// How the measured bends of one tube came out, of those that are learned from.
struct CameOut {
    int bends = 0;
    Angle opens_at_90;   ///< 90 times the mean share (set - measured) / measured
    Angle off;           ///< from what was wanted: root of the mean square
};
std::map<StockTube, CameOut> bends_by_tube(const Work& work);

/// Writes all of these into the rack of `work`, or says why one can't have happened; then it is as it was.
std::optional<StockTrouble> write_stock(Work& work, const std::string& day, const std::vector<StockEvent>& events);

/// One more of a length that may lie there already: a whole stick on the rack of just that length is taken, else one came in.
PieceNumber stick_taken(Work& work, const std::string& day, const StockTube& tube, ExactLength length);
/// The line's piece is cut off the length in use, which is long enough.
void cut_for_line(Work& work, const std::string& day, const StockTube& tube, const std::string& line, ExactLength length);
/// It is built in, so much of it trimmed off. Nothing where the ledger knows of no such piece.
void built_in(Work& work, const std::string& day, const std::string& line, ExactLength trimmed);
/// It is spoiled: these lengths of it are kept, all the rest is scrap. A piece that the ledger does not know gives only what is kept.
void write_spoiled(Work& work, const std::string& day, const StockTube& tube, const std::string& line, const std::vector<ExactLength>& kept, const std::string& reason);

}  // namespace tubewright
