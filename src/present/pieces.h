#pragma once
// Inside present: what several screens share.

#include <string>
#include <vector>

#include "present/screen_view.h"
#include "present/text.h"
#include "state/rules.h"
#include "state/state.h"

namespace tubewright {

Tape reader_tape(const State& state);
/// What was kept and scrapped of a piece as it is shown: together the piece as it is shown.
Length shown_kept(const std::vector<Length>& pieces, const Tape& tape);
Length shown_scrap(const Scrap& scrap, const Tape& tape);

ButtonView press_button(const std::string& id, const std::string& label, const Action& press, Weight weight = Weight::plain);
/// The same button, or a disabled one where there is a reason against it.
ButtonView unless(ButtonView button, const std::string& why_not);

/// Which of `count` things stand on the page in force, and the arrows.
struct Page {
    std::size_t from, to, page, pages;
};
Page page_of(const State& state, std::size_t count, std::size_t on_a_page);
PagerView pager_of(const State& state, const Page& page);
/// Those of the page in force, and its arrows.
void show_page_of(const State& state, const std::vector<RowView>& rows, ListBody& body);
/// `name` stands over the value, small.
TileView tile(const std::string& id, const std::string& name, const std::string& value, const Action& press);
/// Twelve at a time, in up to four columns; the footer leads to the others.
void show_page_of(const State& state, const std::vector<TileView>& tiles, TilesBody& body, FooterView& footer);
/// The action that shows this page.
Action page_turn(const State& state, std::size_t to_page);
/// What has pages is not passed before the last of them has been shown: until then the main button turns to the
/// next one.
ButtonView through_pages(const State& state, const Page& page, ButtonView main);

inline constexpr std::size_t rows_on_a_page = 3, ticks_on_a_page = 3, findings_on_a_page = 2, figures_on_a_page = 4, marks_on_a_page = 6, log_rows_on_a_page = 5;

/// "bend 3, first of 3 to make", "bend 1, 2 of 3 made".
std::string bend_place(const State& state);

HeaderView header_of(const State& state, const std::string& title, const std::string& place);
/// Of the line in hand, with chips.
HeaderView line_header(const State& state, const std::string& place);

ButtonView back_button();
ButtonView undo_button(const State& state);
/// Undo, and Redo where something has been undone, and Back.
FooterView side_footer(const State& state);
/// Went wrong, Undo, Back and the main button.
FooterView bench_footer_of(const State& state, ButtonView main);

// --- the screens
void fill_shelf(const State& state, ScreenView& view);
void fill_lines(const State& state, ScreenView& view);
void fill_line(const State& state, ScreenView& view);
void fill_bench(const State& state, ScreenView& view);
void fill_ticks(const State& state, ScreenView& view, TickList list);
void fill_mark_out(const State& state, ScreenView& view);
void fill_bend(const State& state, ScreenView& view);
void fill_reading(const State& state, ScreenView& view);
void fill_done(const State& state, ScreenView& view);
void fill_bends(const State& state, ScreenView& view);
void fill_bend_record(const State& state, ScreenView& view);
void fill_bends_more(const State& state, ScreenView& view);
void fill_bend_files(const State& state, ScreenView& view);
void fill_later(const State& state, ScreenView& view);
void fill_misfit(const State& state, ScreenView& view);
/// Marks that are no longer where they have to be, on a tube that is bent already.
void fill_marks_again(const State& state, ScreenView& view);
void fill_wrong(const State& state, ScreenView& view);
void fill_legs(const State& state, ScreenView& view);
void fill_leg(const State& state, ScreenView& view);
void fill_hand(const State& state, ScreenView& view);
void fill_rescue(const State& state, ScreenView& view);
void fill_rescue_more(const State& state, ScreenView& view);
void fill_rescue_read(const State& state, ScreenView& view);
void fill_scrap(const State& state, ScreenView& view);
void fill_stock(const State& state, ScreenView& view);
void fill_stick_length(const State& state, ScreenView& view);
void fill_settings(const State& state, ScreenView& view);
void fill_stance(const State& state, ScreenView& view);
void fill_order(const State& state, ScreenView& view);
void fill_draft(const State& state, ScreenView& view);
void fill_ask(const State& state, ScreenView& view);
void fill_route(const State& state, ScreenView& view);
void fill_proof(const State& state, ScreenView& view);
/// The picture of the line being entered takes the place of all else in the screen's body.
void enlarge_entered_picture(const State& state, ScreenView& view);
void fill_word(const State& state, ScreenView& view);
void fill_card(const State& state, ScreenView& view);
void fill_learn(const State& state, ScreenView& view);
void fill_rack(const State& state, ScreenView& view);
void fill_rack_tube(const State& state, ScreenView& view);
void fill_rack_piece(const State& state, ScreenView& view);
void fill_rack_ask(const State& state, ScreenView& view);
void fill_plan(const State& state, ScreenView& view);
void fill_plan_jobs(const State& state, ScreenView& view);
void fill_buy(const State& state, ScreenView& view);
void fill_joints(const State& state, ScreenView& view);
void fill_joint(const State& state, ScreenView& view);
void fill_shop_rules(const State& state, ScreenView& view);
void fill_figures(const State& state, ScreenView& view);
void fill_keep_safe(const State& state, ScreenView& view);
void fill_refused_book(const State& state, ScreenView& view);

// --- parts of the bench
RibbonView ribbon_of(const State& state, bool all_marks);
std::vector<MoveChip> moves_of(const State& state);
std::vector<ButtonView> number_keys(bool fractions);
/// Small letters, capitals, figures: 27 keys each.
std::vector<ButtonView> letter_keys(int page);
inline constexpr int letters_in_a_row = 9;
/// Back, Rub out, Wipe and the next page of letters; the caller adds the main button.
FooterView letters_footer(const std::string& typed, int page);
/// A whole screen but for its header: letters under what is asked, and the main button, which takes what is typed.
void fill_letters(const State& state, const std::string& asks, const std::string& why_not, ScreenView& view);
/// How far from its target the next bend will mostly read, and from what that is known; empty where nothing is.
std::string sureness_words(const State& state, Angle target);
/// Why the order of work is as it is, or why there is none; empty while there is nothing to say.
std::vector<TextView> order_notes(const State& state);
/// What the other order that was found for the rest of the tube in hand means for its ink, and for the bend in hand.
std::vector<TextView> other_rest_notes(const State& state);
/// Takes that order; nothing where none was found.
std::optional<ButtonView> reorder_button(const State& state);
/// Opens what can save the tube in hand; nothing where that can't be asked now.
std::optional<ButtonView> rescue_button(const State& state);
/// What a tube that can't be saved is good for, once somebody looked; empty else.
std::vector<TextView> still_good_notes(const State& state);
/// The first tick of a saved tube's finish.
std::string held_in_place_words(const State& state);
/// Of the line being entered, as far as it can be drawn.
std::optional<PictureView> entered_picture(const State& state);
/// How the proof of a line's entry stands; none where nobody began one.
std::optional<TextView> proof_note(ProofStanding standing, const std::optional<LineProof>& kept);
Tone tone_of(Severity severity);
std::string line_standing(const Sheet& sheet, const LineWork& work);
std::string tube_words(const Line& line, const Tape& tape);
std::string piece_words(const Line& line, const LineWork& work);
/// What the label says of a piece that waits for the fitter.
std::vector<TextView> label_words(const State& state, int piece);
/// Opens what was left for later; nothing where nothing ever was.
std::optional<ButtonView> later_button(const State& state);

}  // namespace tubewright
