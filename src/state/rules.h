#pragma once
// What the bench allows now: lists to tick, what is on the stick, how a reading is judged, what can be
// kept of a spoiled tube. Facts for apply() and for the words in present.

#include <optional>
#include <string>
#include <vector>

#include "bench/tape_check.h"
#include "state/rack.h"
#include "state/state.h"

namespace tubewright {

struct ToRead;

/// The sheet of the line in hand, or null.
const Sheet* sheet_in_hand(const State& state);

/// The step in hand while bending, or null: also null where the record does not fit the sheet.
const Step* step_in_hand(const State& state);

/// What speaks against working on this line at all. `stopped`: a finding. `no_line`: none in hand. `looking`:
/// for its best order.
enum class Bar { none, no_line, looking, stopped };
Bar bar_to_start(const State& state);

/// Tube and every bend's place, direction in the section and angle, to 0.01 mm and 0.01 degree: a piece
/// that was cut for one plan is no piece of another.
std::string plan_of(const Sheet& sheet);
/// Whether the sheet lays the tube out as this plan does, to the same.
bool is_laid_out_as(const Sheet& sheet, const TubePlan& plan);
/// Where every ink mark lies from end A, to 0.01 mm; the bender's line that they go on moves them all.
std::string inking_of(const Sheet& sheet);

/// Whether those lie where these do, but for the rounding of what is written down.
bool is_same_ink(const std::string& one, const std::string& other);

/// How a record and a sheet can disagree after the job file has changed. `plan`: the cut is the same, the
/// bends are not; of a saved tube, the sheet is not that of its saved plan. `ink`: the piece is good, its marks are for another line of the bender.
enum class Misfit { none, cut_length, bends, plan, ink };
Misfit misfit(const Sheet& sheet, const LineWork& work);

// --- the order of what is left
/// Bends of the cut piece that are formed, or begun: steps of its order from the first. Also those that were gone back from.
std::size_t steps_begun(const Sheet& sheet, const LineWork& work);
/// Whether the set angle at 90 is near enough the same to look for no other order.
bool is_much_the_same(const Springback& one, const Springback& other);
/// What is known of another order for what is left of the tube in hand; null where none is asked for.
const OtherRest* other_rest(const State& state);
/// Whether that order can be taken only if the lever has not moved yet, which only the person knows.
bool lever_decides(const State& state);
/// For the bends from this step on, how the marks that are inked lie to those of the sheet; empty where none are inked.
std::vector<InkMove> ink_moves(const Sheet& sheet, const std::string& inked, std::size_t first_step);
/// What the order is looked for with; nothing where nobody waits for that answer any more.
std::optional<OrderWish> wish_of(const LineOrder& order, const FindOrder& asked);

// --- a tube that can be saved
/// The sheet of a line as its job wants it, whatever a tube of it was saved for.
Sheet wanted_sheet(const State& state, std::size_t line);
/// How many steps of the tube in hand are made and known, so that it can be asked how it is saved: also the bend in hand, where
/// what it reads can be. None while a bend is half made.
std::optional<std::size_t> steps_to_save(const State& state);
/// The ways out, and what could be read besides.
bool is_of_rescue(Screen screen);
/// What is asked for on the keypad of the rescue; null elsewhere.
const ToRead* reading_asked(const State& state);
/// What is typed for it: degrees of a turn, to which side is said apart, and mm of a tape; none where that can't be.
std::optional<double> typed_reading_asked(const State& state);
/// By how much it is off what the tube is believed to be, where that is too much to be taken: degrees or mm. `right`: of a turn.
std::optional<double> past_belief(const State& state, bool right);

// --- lists to tick
enum class TickList { prepare, finish, hand_over };

/// A sentence from the checklists, or a loose piece that has to be slid on at an end, or legs to be
/// measured on the finished part, the way straight across it, or what is cut off at an end.
struct TickItem {
    std::string id, text;
    std::optional<End> end;
    SlideOn piece;
    std::vector<TapeLeg> legs;
    std::optional<Length> across;
    Length trim;                   ///< to be cut off at the end
    std::string later = {};        ///< words for the label where it is left for the fitter; empty: it can't be left
    bool saved = false;            ///< the tube is held on the vehicle before anything is done to its ends
};
std::optional<TickList> current_list(const LineWork& work);
std::vector<TickItem> tick_items(const State& state, TickList list);
std::vector<CheckItem> cautions_for(const State& state);
std::vector<CheckItem> cautions_for(const Checklists& lists, Service service, const Line& line);
/// What is left to be proved when the line is in place.
std::vector<CheckItem> hand_over_for(const Checklists& lists, Service service, const Line& line);
/// Neither ticked nor left for later.
std::size_t ticks_missing(const State& state, TickList list);

/// The piece in hand, or the one just finished, counted from 1.
int piece_in_hand(const LineWork& work);
/// Whether this tick of the piece in hand is left for the fitter.
bool is_left(const LineWork& work, const std::string& tick);
/// The sentence of the hand-over list behind a tick's id, or null: a list may have changed since.
const CheckItem* hand_over_item(const State& state, const std::string& tick);
/// What finished pieces still wait for.
std::size_t left_for_later(const LineWork& work);
/// The record with which the line begins its next piece: what belongs to the line, and what finished pieces wait for.
LineWork for_next_piece(const LineWork& work);

/// The tick that the main button sets when the finish list is done and the hand-over list begins.
extern const std::string finish_list_passed;

// --- the stick
struct StickStanding {
    Length needed;
    std::optional<Length> left;
    bool enough = false;
};
StickStanding stick_standing(const State& state);
/// How much a stick of this length falls short of the line that is about to be cut; nothing where it does not.
std::optional<Length> too_short_by(const State& state, Length stick);
std::vector<RackLength> fitting_offcuts(const State& state);  ///< shortest first
std::vector<RackLength> offcuts_of_tube(const State& state);  ///< of the line in hand, beside the one in use; longest first

// --- the reading
enum class Verdict { right, under, over };
Verdict verdict(Angle target, Angle reading);
/// Where the lever last went, or is to go, for the bend in hand.
Angle set_in_force(const Step& step, const LineWork& work);
/// Whether a bend pulled to the angle in force can read this. `opened_more`: it can, but it is likelier that the
/// lever stopped short.
enum class Belief { sound, opened_more, opened_too_far, past_the_set };
Belief belief(const Sheet& sheet, const Step& step, const LineWork& work, Angle reading);
/// last set, as the lever's scale showed it, + (target - reading) * (1 + growth): what is missing opens again by the same share. Where
/// the reading is not to be believed nothing is calculated with it: the sheet's own set angle. Where the lever
/// may have stopped short it is the angle in force once more.
Angle pull_again_to(const Sheet& sheet, const Step& step, const LineWork& work, Belief believed);

/// The same reckoned with the reading whatever is believed: for the person who knows that the lever was there.
Angle pull_on_to(const Sheet& sheet, const Step& step, const LineWork& work);
/// Whether this is what the protractor's other scale says of the bend that is wanted: 135 for 45.
bool is_other_scale(const Step& step, Angle reading);

/// The bends of this piece that were measured, as they read.
AsMeasured measured_angles(const Sheet& sheet, const LineWork& work);
/// How far end B would lie from its place if this bend stayed as it reads, with all that was measured before it,
/// end A held still.
Length far_end_off(const Sheet& sheet, const LineWork& work, std::size_t bend, Angle reading);

// --- what the shop's own bends say
/// Of tube that no bend has been measured of.
Springback physics_of(const Line& line);
/// The records that are learned from now, or could be: not those of a bend that is in hand again.
std::vector<BendCheck> standing_bends(const Work& work);
/// What the log says of the line, its tube and delivery; null where nothing is known of them.
const SpringbackState* springback_in_hand(const State& state);
/// Whether any bend stands behind it; else it is the physics alone.
bool is_learned(const SpringbackState& known);
/// For the sheets; none: the physics, also where the log says what can't be.
std::optional<Springback> learned_springback(const SpringbackState* known);
/// What the log says of any line with a bender of its own, whether or not its job is open; none: the physics.
std::optional<Springback> learned_for(const State& state, const Line& line);
/// In force for the bend in hand, were `work` its line's record.
Springback springback_for(const State& state, const LineWork& work);
/// The bend in hand with this reading, as it would go into the log; none where the reading is no springback at all. Where
/// the lever may have stopped short and the person does not say that it was there, it is in doubt however often it is measured.
std::optional<LoggedBend> as_logged(const State& state, const LineWork& work, Angle reading, bool lever_was_there = false);
/// Whether the reading of the bend in hand is too unlikely to be learned from before it was measured again.
bool is_doubted(const State& state, const LineWork& work, Angle reading);
/// belief(), and where the log would ask after a first pull that ends under its target, the lever is asked after too.
Belief belief_in_hand(const State& state, const LineWork& work, Angle reading);
/// What the bend in hand was expected to read.
Angle expected_reading(const State& state, const LineWork& work);
/// The records of the line's bender and tube, the newest first.
std::vector<LoggedBend> bends_in_hand(const State& state);
const LoggedBend* record_in_sight(const State& state);
/// Whether it is a piece that was bent to learn a bender: it stands under no line.
bool is_of_a_piece(const LoggedBend& logged);
/// What the piece's angle is in the log; null where it says nothing of springback.
const LoggedBend* record_of_piece(const Work& work, std::int64_t piece);
/// Whether its angle is too far from what the lever was pulled to for the log to learn from, before it was taken again.
bool is_angle_odd(const State& state, const KeptPiece& piece);
/// What the hand is learned from besides the bends: not those of a bend that is in hand again.
std::vector<TurnCheck> standing_turns(const Work& work);
std::vector<LegCheck> standing_legs(const Work& work);
/// A leg of the bent tube that a tape can reach, and what it read.
struct LegHere {
    TapeLeg leg;
    std::optional<LegCheck> check;
};
/// From A to B; none before all bends are made.
std::vector<LegHere> legs_here(const State& state);
/// What is typed for the leg asked for; none where that can't be.
std::optional<Length> typed_leg(const State& state);
/// The delivery of the line's tube in use.
std::string lot_in_use(const Work& work, const Tube& tube);

// --- a spoiled tube
struct KeptOffer {
    std::string id;               ///< whole, both, end-a, end-b, none
    std::optional<End> end;
    std::vector<Length> pieces;   ///< the longest first
    Length kept() const;          ///< all of them
};
/// Straight, unbent lengths that are worth keeping, the most first, and nothing at all.
std::vector<KeptOffer> kept_offers(const State& state);
/// Shorter than this no line comes out of it, until the shop says otherwise: a hand's hold, a bend and a fitting take more. Our choice.
inline constexpr Length worth_keeping = ShopRules{}.keep;

/// The bend whose pull is on the screen: whether the lever has moved yet only the person knows.
std::optional<std::size_t> bend_being_pulled(const State& state);
/// Bends that the lever was pulled for, in the order of work; the one being pulled counts.
std::vector<std::size_t> formed_bends(const State& state);
/// Whether the chosen reason is one bend's fault, and it could be one of several.
bool asks_which_bend(const State& state);
/// The bend to write down: the chosen one, else the one in hand, or the last that was made where the fault
/// can only be in a made one.
std::optional<std::size_t> wrong_bend(const State& state);

// --- a bender learned from pieces
/// What the screen asks for. `again`: a reading once more; `more`: which piece to bend next; `name`: a line's name in
/// letters; `step`: the next one of the piece in hand.
enum class LearnPage { again, more, name, mark, step, readings, trouble, result };
LearnPage learn_page(const State& state);
/// Those of the bender and the tube of the line in hand, oldest first.
std::vector<KeptPiece> pieces_here(const State& state);
/// The one not yet measured to the end; none where all are.
std::optional<KeptPiece> piece_in_work(const State& state);
/// The reading that is typed now; none where no number is asked for.
std::optional<PieceSpot> spot_in_hand(const State& state);
/// What is typed for it, in mm or degrees: a length up to longest_piece, an angle up to 180.
std::optional<double> typed_spot(const State& state);
inline constexpr Length longest_piece{3000};
/// Whether undo and redo have a touch of this screen to put back.
bool can_undo_learning(const State& state);
bool can_redo_learning(const State& state);
/// Why a line can't have this name, as facts. `taken`: it is inked already.
enum class MarkBar { none, empty, taken };
MarkBar bar_to_mark(const State& state, const std::string& name);
inline constexpr std::size_t longest_mark_name = 20;  ///< as a card file takes it
/// The card with what was learned; none where there is nothing, or it can't hold it.
std::optional<Bender> card_as_learned(const State& state);

// --- undo on the rack
/// Of the rack, the plan and what goes with them.
bool is_of_rack(Screen screen);
/// Whether undo would take back work at the bench, which is not seen on the rack's screens.
bool undo_is_of_bench(const State& state);

// --- the keypad
/// The letters with this key pressed, "back" and "clear" too; at most so many.
std::string with_letter(const std::string& typed, const std::string& key, std::size_t longest);
std::string without_blanks(const std::string& typed);  ///< around it
/// "88", "88.5", "88 1/2", "1/2"; nothing for what is no number yet.
std::optional<double> typed_number(const std::string& typed);
std::string with_key(const std::string& typed, const std::string& key);
/// What the protractor is said to read, where that can be a reading: 0 to 180.
std::optional<Angle> typed_reading(const State& state);
/// In the reader's unit; more than nothing and at most longest_stick.
std::optional<Length> typed_stick(const State& state);
inline constexpr Length longest_stick{100000};

// --- a line being entered
/// What is typed for a leg, in the unit of the job that is entered.
std::optional<Length> typed_run(const State& state);
inline constexpr Length longest_trim{1000};
/// What is typed for the number of pieces: 1 to most_pieces.
std::optional<int> typed_pieces(const State& state);
inline constexpr int most_pieces = 1000;
/// Whether the line in hand has corner points that can be written out.
bool has_corners(const State& state);
/// Why the letters that are typed can't be taken, as facts. `begun`: the shop book knows the line by its name.
enum class WordBar { none, empty, taken, begun };
WordBar bar_to_word(const State& state);
/// Whether a line has been worked on at the bench under its name: then it keeps it.
bool is_begun(const State& state, const DraftLine& line);
/// How many letters it may have.
std::size_t longest_word(WordOf of);
/// Whether nothing of the line in hand is missing.
bool can_finish(const State& state);

// --- its route proved with a tape
/// Why the entry of the line in hand can't be proved now. `unfinished`: or it can't be worked out.
enum class NoProof { none, unfinished, no_bends, cut };
NoProof no_proof(const State& state);
/// What is typed for the reading that is asked for, in the reader's unit.
std::optional<Length> typed_tape(const State& state);
/// Whether the step from the one page to the other changed what was taped of its line.
bool is_proof_step(const EntryPage& one, const EntryPage& other);
/// The reader's choice, else that of the job being entered.
Unit entry_reader_unit(const State& state);

}  // namespace tubewright
