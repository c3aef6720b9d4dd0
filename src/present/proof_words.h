#pragma once
// What is said while an entry is proved: points on the wire, readings, and slips.

#include <string>

#include "bench/proving.h"
#include "present/text.h"
#include "tube/measured.h"

namespace tubewright {

/// What the words need to know: the line as it was entered, and in which units it was and is read.
struct ProofSpeech {
    Tape tape;                                ///< the reader's
    Unit entered_in = Unit::inch;
    const MeasuredRoute* entered = nullptr;
    const Route* route = nullptr;             ///< made of it
};

/// "end A", "bend 3", "end B".
std::string point_name(const ProofSpeech& say, std::size_t point);
/// What is to be taped: "Tape tight and straight, from end A to the outside corner of bend 3."
std::string taping_words(const ProofSpeech& say, Span span);
/// "end A to bend 3".
std::string span_name(const ProofSpeech& say, Span span);
/// "leg 2", or as it is called in the form that was entered; from 0.
std::string run_name(const ProofSpeech& say, std::size_t run);

/// One slip, in three ways to say it.
struct SlipWords {
    std::string is;      ///< "Bend 3 turns the other way"
    std::string were;    ///< after If: "bend 3 turned the other way"
    std::string remedy;  ///< on the button that takes it back: "Correct it: bend 3 the other way"
};
SlipWords slip_words(const Slip& slip, const ProofSpeech& say);

/// The reading that speaks most against the entry; none where none was taken.
std::optional<std::size_t> loudest_reading(const Proof& proof);

/// "If bend 3 turned the other way, end A to bend 5 would read 19 1/4", and you read 19 1/4"." Of the reading that
/// speaks loudest against the entry; of a slip that was seen, not taped, what was seen.
std::string explained(const Explanation& explanation, const Proving& proving, const ProofSpeech& say);

/// The nearest single number that would bring the readings together: "leg 4 at 12 3/8"".
std::string suspect_words(const Suspect& suspect, const ProofSpeech& say);

/// How the proof of a line stands, for its page; empty where nobody began one.
std::string proof_sentence(ProofStanding standing, std::size_t readings);

}  // namespace tubewright
