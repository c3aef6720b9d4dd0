#pragma once
// Inside the files that apply what is entered.

#include "state/doing.h"

namespace tubewright {

bool line_is_entered(const State& state);
/// A line is entered and its route is on the screen.
bool at_route(const State& state);
/// The one way a draft changes: keeps the page before it for undo and asks for the new one to be kept.
void change_entry(Doing& doing, EntryPage next);
void keep_draft(Doing& doing);
/// The page's question, or the route.
void show_page(State& state);
/// The next open question, or the route, or where nothing more is asked the line's page.
void go_on(Doing& doing, Ask answered);
DraftLine fresh_line(const Draft& job);
/// The answers that bring in corner points; whether it was one.
bool answer_points(Doing& doing, const std::string& id);
void take_points(Doing& doing);
void take_word(Doing& doing);
void put_coordinate(Doing& doing);
/// Where this line's tube and bender stand: its own, or the job's for all.
std::optional<DraftTube>& tube_in_hand(EntryPage& page);
std::optional<DraftBender>& bender_in_hand(EntryPage& page);
/// The bender is settled without a question where just one suits the tube, and asked again where the one that
/// was chosen does not.
void settle_bender(const Offers& all, EntryPage& page);
/// What the remedy changes, put into the draft; whether it could be.
bool with_remedy(const Offers& all, EntryPage& page, const Remedy& remedy);
/// Puts the answer to the page's question in; whether it was one.
bool take_answer(const Offers& all, EntryPage& page, const std::string& id);

}  // namespace tubewright
