#pragma once
// Facts in words: what is wrong with the numbers, where, what to do. And the names of things.

#include <string>
#include <vector>

#include "base/words.h"
#include "bench/sheet.h"
#include "present/text.h"
#include "state/work.h"

namespace tubewright {

/// The three parts of a finding. `where` may be empty: then it is about the whole line.
struct Words {
    std::string what, where, to_do;
    bool operator==(const Words&) const = default;
};

/// What the words need to know of their reader and of the line.
struct Speech {
    Tape tape;
    const Line* line = nullptr;
};
Words words(const Fact& fact, const Speech& speech);
/// All three parts as "Where: what. What to do."
std::string sentence(const Finding& finding, const Speech& speech);
/// One sentence for the sheet's machine form.
std::string finding_message(const Finding& finding, const Sheet& sheet, Unit unit);

std::string severity_word(Severity severity);
std::string reason_word(Reason reason);
std::string service_word(Service service);
std::string swing_word(Swing swing);          ///< "away from you"
std::string hand_word(HookHand hand);         ///< "left"
std::string end_name(End end);                ///< "end A"
std::string bend_name(std::size_t bend);      ///< "bend 3" for 2
std::string capital(std::string sentence);
/// "tube nut and sleeve": as they stand in the middle of a sentence.
std::string piece_list(const std::vector<std::string>& pieces);
/// 25 Nov for 2026-11-25; anything else as it is.
std::string day_word(const std::string& day);

}  // namespace tubewright
