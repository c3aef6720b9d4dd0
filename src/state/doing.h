#pragma once
// Inside apply(): the state being changed and what to ask of the world. One function for each theme;
// each leaves things as they are when the action makes no sense now.

#include "state/rules.h"
#include "state/state.h"

namespace tubewright {

struct Doing {
    State& state;
    std::vector<Request>& requests;
};

/// The one way the record changes: keeps the old one for undo and asks for the new one to be saved.
void change_work(Doing& doing, Work next);
void change_line(Doing& doing, const LineWork& next);
void change_settings(Doing& doing, const Settings& next);
/// Sheets and what is still to be asked about their orders.
void work_out_sheets(Doing& doing);
/// What the log of bends says of each line of the job, and of the hand. The sheets follow from it.
void work_out_springbacks(State& state);
/// In hand again, a bend is neither made nor lost: what was read of it before says nothing for the while.
bool is_in_hand_again(const Work& work, const BendOfTube& of);
/// Writes the reading of the bend in hand into the log of `next`, or what was written of it out again where there is none.
void log_bend(const State& state, Work& next, const LineWork& work, std::optional<Angle> reading, bool lever_was_there);
/// The same of a piece that was bent to learn the bender in hand: its angle says how far it opened.
void log_piece(const State& state, Work& next, const KeptPiece& piece);
void forget_piece(Work& next, std::int64_t piece);
/// The rotation of a made bend against another, as it was measured; nothing where neither was turned against the other, nor both by
/// the ink. `read` none: what was written of it out again.
void log_turn(const State& state, Work& next, const LineWork& work, std::size_t bend, std::size_t against, std::optional<Angle> read);
void ask_leg(Doing& doing, std::size_t leg);
void next_at_leg(Doing& doing);
void leave_out_of_hand(Doing& doing, std::int64_t id);

void show(State& state, Screen screen);        ///< as a main screen: the way back is its own
void show_beside(State& state, Screen screen); ///< as a side screen: Back leads here again
void leave_beside(State& state);

// --- the bench
void next_at_bench(Doing& doing);
void back_at_bench(Doing& doing);
void tick(Doing& doing, const std::string& id);
void leave_for_later(Doing& doing, const std::string& id);
void tick_later(Doing& doing, const LeftForLater& left);
void pass_check(Doing& doing);
void pull_again(Doing& doing, bool lever_was_there);
void keep_bend(Doing& doing, bool lever_was_there);
void another_piece(Doing& doing);

// --- the order of bends
void pin_first(Doing& doing, std::size_t bend);
void pick_bend(Doing& doing, std::size_t bend);
void move_bend(Doing& doing, std::size_t bend, int by);
void free_order(Doing& doing);
void stop_looking(Doing& doing);
void look_again(Doing& doing);
void reorder_rest(Doing& doing);
void lever_has_moved(Doing& doing);
void order_share(Doing& doing, const OrderShare& heard);
void order_is(Doing& doing, const OrderIs& heard);
/// Whatever is being looked for of that line: nobody waits for it any more.
void stop_finding(Doing& doing, const LineOrder& order);
/// Asks for another order of what is left where `findings` say that something is in the way of the settled one, and
/// writes into them what is known of it. A bend that could go freely is a stop. For a cut tube whose record fits the sheet.
void look_at_other_rest(Doing& doing, std::size_t line, const Sheet& sheet, const SheetChoice& choice, const LineWork& work, std::vector<Finding>& findings);
/// Nobody waits for another order of the rest any more.
void forget_other_rest(Doing& doing, LineOrder& order);

// --- a line being entered
void new_job(Doing& doing);
void add_line(Doing& doing);
void open_draft_line(Doing& doing, std::size_t line);
void ask_for(Doing& doing, Ask ask);
void answer(Doing& doing, const std::string& id);
void pick_cell(Doing& doing, const Cell& cell);
void give_angle(Doing& doing, Angle angle);
void give_way(Doing& doing, MoveWay way);
void turn_to(Doing& doing, Angle clockwise);
void turn_picture(Doing& doing, const Orbit& by);
void enlarge_picture(Doing& doing);
void straight_on(Doing& doing);
void take_remedy(Doing& doing, const Remedy& remedy);
void ask_word(Doing& doing, WordOf of);
void press_number_key(Doing& doing, const std::string& key);
void press_letter(Doing& doing, const std::string& key);
void take_cell_out(Doing& doing);
void put_point_in(Doing& doing);
void write_points(Doing& doing);
void point_files_are(Doing& doing, const PointFilesAre& told);
void points_read(Doing& doing, const PointsRead& read);
void split_leg(Doing& doing);
void take_bend_out(Doing& doing, std::size_t bend);
void take_last_out(Doing& doing);
void mirror_line(Doing& doing);
void reverse_line(Doing& doing);
void copy_line(Doing& doing, bool in_mirror);
void take_line_out(Doing& doing);
void finish_line(Doing& doing);
void next_at_entry(Doing& doing);
void back_at_entry(Doing& doing);
bool undo_entry(Doing& doing);   ///< whether it was the entry's to undo
bool redo_entry(Doing& doing);
void draft_read(Doing& doing, const DraftRead& read);
void draft_kept(Doing& doing, const DraftKept& kept);
// --- its route proved with a tape
void prove_line(Doing& doing);
void cant_reach(Doing& doing);
void enough_readings(Doing& doing);
void one_more_reading(Doing& doing);
void answer_hand(Doing& doing, std::optional<bool> left);
void tape_again(Doing& doing, std::size_t reading);
void pick_slip(Doing& doing, std::size_t slip);
void correct_slip(Doing& doing);
void prove_afresh(Doing& doing);
void next_at_proof(Doing& doing);
void back_at_proof(Doing& doing);
/// Of the line being entered, and of the lines of the job, as they stand now.
void work_out_proof(State& state);
void work_out_proofs(State& state);
// --- the bender's card
void open_card(Doing& doing);
void change_card(CardEdit& card, Bender next);
void pick_solid(Doing& doing, std::size_t solid);
void pick_figure(Doing& doing, const std::string& id);
void take_figure(Doing& doing);
void swing_card(Doing& doing);
void undo_card(Doing& doing);
void take_shipped(Doing& doing);
void keep_card(Doing& doing);
void press_card_key(Doing& doing, const std::string& key);
void back_at_card(Doing& doing);
void card_kept(Doing& doing, const CardKept& kept);

// --- a bender learned from pieces
void learn_bender_here(Doing& doing);
void start_piece(Doing& doing, Angle aim);
void put_ink(Doing& doing, const std::string& mark);
void other_ink(Doing& doing);
void name_mark(Doing& doing);
void more_pieces(Doing& doing);
void show_readings(Doing& doing);
void read_again(Doing& doing, const PieceSpot& spot);
void drop_piece(Doing& doing, std::int64_t piece);
void pick_learned(Doing& doing, std::size_t row);
void put_on_card(Doing& doing);
void next_at_learning(Doing& doing);
void back_at_learning(Doing& doing);
void press_learning_key(Doing& doing, const std::string& key);
void undo_learning(Doing& doing);
void redo_learning(Doing& doing);
// --- what the shop's own bends say
void pick_record(Doing& doing, std::int64_t id);
void leave_record_out(Doing& doing, std::int64_t id);
void record_is_right(Doing& doing, std::int64_t id);
void new_tube(Doing& doing);
void forget_bends(Doing& doing);
void write_bends(Doing& doing);
void bring_bends(Doing& doing, const std::string& file);
void bend_files_are(Doing& doing, const BendFilesAre& told);
void bends_read(Doing& doing, const BendsRead& read);

// --- a spoiled tube
void open_question(Doing& doing);
void choose_reason(Doing& doing, Reason reason);
void choose_kept(Doing& doing, const std::string& choice);
void choose_bend(Doing& doing, std::size_t bend);
void confirm_scrap(Doing& doing);
void leave_question(Doing& doing, bool altogether);

// --- a tube that can be saved
void look_at_rescue(Doing& doing);
void pick_way(Doing& doing, std::size_t row);
void take_rescue(Doing& doing, std::size_t way);
void ask_reading(Doing& doing, std::size_t which);
void turn_is(Doing& doing, bool right);
void drop_reading(Doing& doing, std::size_t which);
void next_at_reading(Doing& doing);
/// What was read of the bend of that step, besides its angle, is of a bend that will be another one.
void forget_readings(const Sheet& sheet, LineWork& work, std::size_t step);
/// After undo and redo: the ways out as they are with what is read now, for one of its screens; else nothing.
void work_out_rescue_anew(Doing& doing);
/// What a screen of the rescue told holds no more.
void leave_rescue(State& state);
/// The sheet of the line in hand were this its record, and its tube cut.
Sheet sheet_of_cut(const State& state, const LineWork& work);
/// The bend in hand as made, and its reading into the log of `next`; `work`, the line's record, is then at the next bend or the finish.
void write_bend_down(const State& state, Work& next, LineWork& work, std::optional<Angle> measured, bool kept_over, bool lever_was_there);

// --- stick and offcuts
void new_stick(Doing& doing, Length length);
void take_offcut(Doing& doing, PieceNumber piece);

// --- the rack
void show_tube(Doing& doing, const StockTube& tube);
void show_piece(Doing& doing, PieceNumber piece);
void ask_rack(Doing& doing, RackAsk ask, const std::string& about = "");
void answer_rack(Doing& doing, const std::string& id);
void next_at_rack(Doing& doing);
void press_rack_key(Doing& doing, const std::string& key);
void one_more_like(Doing& doing, PieceNumber piece);
void bin_piece(Doing& doing, PieceNumber piece, bool missing);
void bin_short_ends(Doing& doing);
void take_entry_back(Doing& doing, std::size_t entry);
void put_on_rack(Doing& doing, PieceNumber piece);
void change_rules(Doing& doing, const ShopRules& rules);
// --- what is cut from what
/// Asks for a plan where the screen shows one and the last one is not for what has to be cut now.
void keep_plan_asked(Doing& doing);
void take_into_plan(Doing& doing, const std::string& path);
void plan_job_read(Doing& doing, const PlanJob& read);
void plan_is(Doing& doing, const PlanIs& heard);
void ask_joint(Doing& doing, const EndOfLine& of);
void goes_into(Doing& doing, const std::optional<Joint>& joint);
// --- files for the person
void restore_backup(Doing& doing, const std::string& name);

// --- from screen to screen
void go_to(Doing& doing, Screen screen);
void open_line(Doing& doing, const std::string& name);
void press_next(Doing& doing);
void press_back(Doing& doing);
void press_key(Doing& doing, const std::string& key);
void undo(Doing& doing);
void redo(Doing& doing);

// --- what the world reports
void job_read(Doing& doing, const JobRead& read);
void book_read(Doing& doing, const BookRead& read);

}  // namespace tubewright
