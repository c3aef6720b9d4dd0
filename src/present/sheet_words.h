#pragma once
// The bend sheet in finished words, for whatever it is printed on.

#include <string>
#include <vector>

#include "bench/checklist.h"
#include "bench/sheet.h"
#include "bench/tape_check.h"
#include "present/text.h"
#include "present/views.h"

namespace tubewright {

/// One step of the order of work. The short ones stand in a table or as figures, `how` is sentences.
struct StepWords {
    std::string step, bend, hook, from_a, from_b, line, turn, pull_to, springs, formed, left;
    std::string hook_told;  ///< "End A on the hook, on your left"
    std::string how;
    std::string target;
    ClockView clock;
};

struct WeightedWords {
    std::string weight, words;  ///< "caution", "note"
};

struct TapedLeg {
    std::string from_to, length;  ///< "1 to 2"
};

struct SheetWords {
    bool stopped;
    std::string line, job, note;      ///< note: the person's own, or empty
    std::vector<std::string> stops;   ///< each begins with "Don't cut."
    std::string cut, end_a, end_b;    ///< empty where the line can't be laid out
    std::string tube, bender;
    std::vector<StepWords> steps;     ///< in the order of work
    std::vector<WeightedWords> findings;  ///< all but the stops
    std::vector<TapedLeg> legs;       ///< of the bent tube, neither trimmed nor flared
    std::string across;               ///< from cut end to cut end; empty where there is nothing bent to tape
    std::string explained;            ///< what turn, pull to and springs mean; empty without steps
    std::vector<std::string> advice, cautions;
    std::vector<std::string> hand_over;  ///< what is left to be proved when the line is in place, the leak test too
};

/// The tape's unit may differ from the job's.
SheetWords sheet_words(const Job& job, const Sheet& sheet, const Checklists& lists, const Tape& tape);

/// "A to 1", "2 to 3", "4 to B".
std::string leg_name(const TapeLeg& leg);

/// Over whatever shows a line that a finding stops.
std::string not_to_work_by();

}  // namespace tubewright
