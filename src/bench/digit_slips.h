#pragma once
// What a length that was typed may have been meant to be, when a digit or a tape mark slipped.

#include <vector>

#include "base/quantity.h"
#include "base/words.h"

namespace tubewright {

enum class DigitSlip {
    inch_off,    ///< one whole inch (10 mm) too many or too few: a tape held at its 1 mark, the next number read
    fraction,    ///< the right inch with another eighth
    transposed,  ///< two digits the wrong way round
    wrong_key,   ///< one digit of the whole number for another
    lost_digit,  ///< a digit left out or typed twice
    tenfold      ///< millimetres for centimetres, or a decimal point
};

struct MeantLength {
    Length length;
    DigitSlip slip;
    double weight;  ///< how often, against the others of the same entry
};

/// Every length that one slip turns into `typed`, each once, with the kind that is most common for it.
std::vector<MeantLength> meant_lengths(Length typed, Unit unit);

}  // namespace tubewright
