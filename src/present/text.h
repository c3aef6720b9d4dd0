#pragma once
// Numbers as a reader says them. The one place that rounds a measured number or names its unit.

#include <cstddef>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "base/words.h"
#include "tube/tube.h"

namespace tubewright {

/// What the reader's tape can show: fractions of an inch down to 1/denominator (16, 32 or 64), or half millimetres.
struct Tape {
    Unit unit = Unit::inch;
    int denominator = 16;
    bool operator==(const Tape&) const = default;
};

/// To the nearest the tape shows. Lengths that a reader adds up are rounded first and subtracted then, so that
/// "from A" and "from B" make up the cut length to the last sixteenth.
Length on_tape(Length length, const Tape& tape);
/// The same, but never more than there is: what is kept, or still left to be used.
Length down_on_tape(Length length, const Tape& tape);
std::string left_text(Length length, const Tape& tape);

/// Formed and left as they are shown: what is left is rounded down, and both make up the cut length as it is shown.
struct Tally {
    Length formed, left;
};
Tally tally_of(Length cut, Length formed, const Tape& tape);

/// `whole` as it is shown, less `part` as it is shown.
Length rest_of(Length whole, Length part, const Tape& tape);

/// 19 3/16" or 487.5 mm, to the nearest the tape shows.
std::string text(Length length, const Tape& tape);
/// As it was typed, unrounded: 8 13/64" or 8.3", or 206.375 mm. For numbers that are being entered.
std::string exact(Length length, Unit unit);
std::string exact(Angle angle);
/// The same without its unit.
std::string bare(Length length, const Tape& tape);
/// 92 1/2° or 92.5°, to the nearest half degree.
std::string text(Angle angle, const Tape& tape);
/// What the lever is pulled to, to the half degree BELOW: a tube can be bent on, never back.
std::string lever_text(Angle set, const Tape& tape);
/// A gap that a tape can't show: thousandths of an inch or hundredths of a millimetre.
std::string fine(Length length, const Tape& tape);
/// What was learned rather than read off: to a 64th of an inch or a tenth of a millimetre.
std::string learned_text(Length length, Unit unit);
/// How good that is: the same, rounded up. And of a radius, as fine() says it.
std::string band_text(Length band, Unit unit);
std::string fine_band(Length band, Unit unit);
/// How far something is moved, without its sign: as coarsely as still shows it, of text(), learned_text() and fine().
std::string moved_text(Length by, const Tape& tape);
/// A plain number to thousandths, without the zeros at its end.
std::string plain(double value);
/// 3/16" × 0.028", or 4.76 × 0.71 mm: outside diameter and wall.
std::string size_text(const Tube& tube, const Tape& tape);
/// The outside diameter alone: 3/16" or 4.76 mm.
std::string od_text(Length od, const Tape& tape);
/// "inches" or "mm": beside a number that is being typed.
std::string unit_word(Unit unit);
/// A share from 0 to 1 as 5.6 %.
std::string percent(double share);
/// Shares that follow each other, each as percent() says it, so that what is shown adds up to the share of
/// the sum as it is shown: each is the step from one rounded running sum to the next.
std::vector<std::string> percents(const std::vector<double>& shares);
/// 5.87 for pixels to the millimetre.
std::string two_places(double value);
/// "1 bend", "3 bends".
std::string counted(std::size_t count, const std::string& one, const std::string& many);

/// Whether the angle shows as no angle at all, or as half a turn.
bool shows_as(Angle angle, double degrees);

}  // namespace tubewright
