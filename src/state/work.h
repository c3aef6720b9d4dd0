#pragma once
// What the shop book remembers: how far each line is, what was measured, what was scrapped, what is
// left on the stick. Plain values; undo keeps whole ones.

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "base/words.h"
#include "bench/bend_log.h"
#include "bench/bender.h"
#include "bench/kept_piece.h"
#include "bench/made_readings.h"
#include "bench/order_search.h"
#include "bench/springback.h"
#include "bench/tube_plan.h"
#include "stock/joint.h"
#include "stock/ledger.h"

namespace tubewright {

/// The parts of making one line, in order.
enum class Stage { prepare, mark_out, bending, finish, done };

/// The moves of one bend, in order.
enum class Move { mark, turn, pull, check };

/// One bend as it was made.
struct BendMade {
    std::size_t bend;                ///< from 0
    Angle set;                       ///< where the lever was last pulled to
    int pulls = 1;
    std::optional<Angle> measured;   ///< none where the check was passed over
    bool kept_over = false;          ///< came out over the target, kept knowingly
    bool operator==(const BendMade&) const = default;
};

/// A tick of the hand-over list that was answered "later": it can only be made once the line is on the vehicle.
struct LeftForLater {
    int piece;               ///< of the line's pieces, from 1
    std::string tick;
    auto operator<=>(const LeftForLater&) const = default;
};

/// What a cut tube is to become after all, where a bend of it came out otherwise than wanted. What is wanted stays with the job.
struct SavedPlan {
    TubePlan plan;
    std::size_t made;                ///< bends that were made when it was taken; they stay
    bool operator==(const SavedPlan&) const = default;
};

/// How far one line is. Its key is job_id + "/" + line name.
struct LineWork {
    Stage stage = Stage::prepare;
    std::set<std::string> ticks;     ///< ids of what is ticked on the current lists
    std::map<LeftForLater, bool> later;  ///< what was left for the fitter, of every piece; true: done since
    std::size_t step = 0;            ///< which step of the sheet, in the order of work
    Move move = Move::mark;
    std::optional<Angle> pull_again; ///< where the next pull of this bend goes, after an under-bent check
    std::optional<Angle> last_reading; ///< the protractor's, of the bend in hand
    int pulls = 0;                   ///< of the bend in hand
    std::vector<BendMade> made;      ///< in the order of work
    bool cut = false;                ///< the tube has been cut from the stick
    Length cut_length;               ///< as cut
    std::string plan;                ///< of the sheet it was cut for; see plan_of() in rules.h
    std::optional<SavedPlan> saved;  ///< in place of that one since a bend came out otherwise
    std::string inked;               ///< where its marks are; see inking_of() in rules.h
    std::vector<Placing> order;      ///< of work, settled when the tube was cut
    std::optional<double> laid_growth;  ///< of the springback that it was laid out with when it was cut; none: the physics'
    std::optional<Springback> pulled_with;  ///< in force for the bend in hand since its lever was first pulled
    std::optional<Angle> doubted;    ///< a reading of the bend in hand too unlikely to learn from, while it is measured again
    std::vector<std::size_t> opening;  ///< bends that the person wants made first, in this order; all of them: an order by hand
    std::vector<TurnReading> turns;  ///< read of the bends besides their angles, to know how the tube can be saved; and taped
    std::vector<MadeTape> tapes;
    std::set<std::size_t> pulled;    ///< bends that the lever was ever pulled for; going back unbends nothing
    int attempt = 1;                 ///< of this piece
    int finished = 0;                ///< pieces finished, of the line's quantity
    bool operator==(const LineWork&) const = default;
};

/// Why a tube went wrong.
enum class Reason { wrong_place, wrong_way, over_bent, kinked, too_short, end_spoiled, damaged, does_not_fit, practice };

/// One entry of the scrap log.
struct Scrap {
    std::int64_t id;          ///< given once, never used again
    std::string day;          ///< 2026-11-25
    std::string job, line;
    std::string tube;         ///< tube key
    Reason reason;
    Length scrapped, kept;    ///< together the whole piece
    std::optional<std::size_t> bend;
    Length second = {};       ///< of `kept`, the shorter piece where both ends were kept
    bool operator==(const Scrap&) const = default;
};

/// The rack with its ledger. Shared: each step of undo has a Work of its own, and few of them touched the rack.
struct Rack {
    std::shared_ptr<const Ledger> ledger = std::make_shared<const Ledger>();  ///< never null
    const Ledger* operator->() const { return ledger.get(); }
    bool operator==(const Rack& other) const { return ledger == other.ledger || ledger->entries == other.ledger->entries; }
};

/// How the shop cuts. All of it our own choice until the person says otherwise.
struct ShopRules {
    Length saw;                      ///< its width; a tube cutter with a wheel takes nothing
    Length keep{100};                ///< the shortest leftover worth keeping
    Length straighten{50};           ///< of a coil, lost at each length that is straightened off it
    bool practice = false;           ///< a piece to practise on is planned
    bool spare = false;              ///< a spare of the line that is likeliest to go wrong is planned
    bool operator==(const ShopRules&) const = default;
};

/// Which bend of which tube: a line's piece, counted from 1, and the how-manieth try at it.
struct BendOfTube {
    std::string job, line;           ///< the job's id
    int piece = 0, attempt = 0;
    std::size_t bend = 0;            ///< from 0
    bool operator==(const BendOfTube&) const = default;
};

/// A bend as it went into the log. One of a bend: a further pull or another reading takes the place of the one before.
struct LoggedBend {
    BendCheck check;
    BendOfTube of;
    bool operator==(const LoggedBend&) const = default;
};

/// The turn between two neighbouring bends as it was measured; the later of the two readings of it stands.
struct LoggedTurn {
    TurnCheck check;
    BendOfTube of;
    std::size_t against = 0;  ///< the bend that it was measured against
    bool operator==(const LoggedTurn&) const = default;
};

/// A leg of a bent tube as a tape read it. `of` is the bend at its B end, or, of the last leg, that at its A end.
struct LoggedLeg {
    LegCheck check;
    BendOfTube of;
    std::optional<std::size_t> after;  ///< the bend at its A end
    bool operator==(const LoggedLeg&) const = default;
};

/// One end of a line; the line by its key.
struct EndOfLine {
    std::string line;
    End end;
    auto operator<=>(const EndOfLine&) const = default;
};

/// What is chosen at the bench for a bender, by bender id.
struct BenchChoice {
    std::optional<SetUp> set_up;
    std::string mark;         ///< empty: the bender's usual mark
    bool operator==(const BenchChoice&) const = default;
};

/// Everything the book remembers about work. Tube keys are made by tube_key() in state.h.
struct Work {
    std::map<std::string, LineWork> lines;
    std::vector<Scrap> scrap;            ///< oldest first
    Rack rack;
    std::map<std::string, PieceNumber> in_use;  ///< the length that lines are cut from now, by the key of its StockTube; it may be gone
    ShopRules rules;
    std::map<std::string, Money> prices; ///< of one each, by buy_key(); what is not in it is not known
    std::map<EndOfLine, Joint> joints;   ///< of its job, that the end goes into; what is not in it goes into a port that is there
    std::map<std::string, std::map<std::string, Length>> used;  ///< made into finished lines, by day, then by tube key
    std::map<std::string, BenchChoice> benders;
    std::map<std::string, std::vector<KeptPiece>> pieces;  ///< bent to learn a bender, by its id; oldest first
    std::vector<LoggedBend> bends;       ///< that were measured, in the order of their ids
    std::vector<LoggedTurn> turn_log;    ///< from these two the hand's own spread is learned, as from the bends
    std::vector<LoggedLeg> leg_log;
    std::map<std::string, std::string> lots;  ///< the delivery in use, by tube key; the first one has no name
    std::int64_t next_id = 1;
    bool operator==(const Work&) const = default;
};

/// What one touch of undo puts back. The book keeps the last of them, so that undo works after switching
/// off and on.
struct UndoStep {
    std::int64_t number;  ///< grows along the past, and is never used again while the program runs
    std::string job;      ///< id of the job that was open
    Work work;            ///< as it was before the touch
    bool operator==(const UndoStep&) const = default;
};
inline constexpr std::size_t undo_kept = 20;

/// The reader's own settings; undo leaves them alone.
enum class Theme { light, dark };
struct Settings {
    std::optional<Unit> unit;       ///< none: as the job is written
    int tape_denominator = 16;      ///< of an inch: 16, 32 or 64
    Theme theme = Theme::light;
    double px_per_mm = 0;           ///< 0: as the screen says of itself
    bool operator==(const Settings&) const = default;
};

}  // namespace tubewright
