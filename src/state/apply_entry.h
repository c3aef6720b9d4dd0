#pragma once
// Inside the three files that apply what is entered.

#include "state/doing.h"

namespace tubewright {

bool line_is_entered(const State& state);
/// The one way a draft changes: keeps the page before it for undo and asks for the new one to be kept.
void change_entry(Doing& doing, EntryPage next);
void keep_draft(Doing& doing);
/// Puts the answer to the page's question in; whether it was one.
bool take_answer(const Offers& all, EntryPage& page, const std::string& id);

}  // namespace tubewright
