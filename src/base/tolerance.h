#pragma once
// Every tolerance of the program, with its unit and its reason.

#include "base/quantity.h"

namespace tubewright::tolerance {

/// Slack for a sum of some dozens of exact steps. Arithmetic, not a shop number: decide nothing with it.
inline constexpr double arithmetic = 1e-9;

/// A straight that misses a limit by less than this keeps it: 0.1 mm is less than a scribed line is wide. Our choice.
inline constexpr Length straight_slack{0.1};

/// A corner flatter than this bends nothing that a protractor can show; it is taken for no bend at all. Our choice.
inline constexpr Angle no_bend{0.01};

/// Corners sharper than this are not laid out from corners: the distance to the corner grows without
/// bound towards 180. From the job file format, section "route.form".
inline constexpr Angle sharpest_corner{170.0};

/// A corner sharper than this lies too far from the tube to be touched with a block or a tape. Our choice.
inline constexpr Angle sharpest_touched{120.0};

/// How closely arcs are followed by chords when looking for a tube that hits itself. Our choice.
inline constexpr Length chord_sagitta{0.02};

/// Less room than this between two stretches of one tube counts as touching: a tube in a hand bender sits no truer. Our choice.
inline constexpr Length touching{2.0};

/// A tube that comes nearer than this to the bender, the bench or itself while it is handled counts as
/// hitting it: hands and mounting are no truer. Our choice.
inline constexpr Length handling_room{1.0};

/// How far a tube may move between two moments that are looked at, beyond what the gap allows: no gap below
/// handling_room less this is passed over. Half the room, so that what really touches is always seen.
inline constexpr Length handling_step{0.5};

/// How closely arcs are followed by chords when looking for what is in a tube's way; added to its radius. A
/// tenth of the room: it makes a tube no thicker than a bend's ovality does. Our choice.
inline constexpr Length handling_sagitta{0.1};

/// Printed limits of wall thickness are rounded to 0.01 mm; half of that is given to the tube.
inline constexpr Length printed_wall{0.005};

/// A ratio of radius to diameter that misses its limit by less than this keeps it; sizes are rounded to 3 or 4 digits.
inline constexpr double radius_ratio = 0.005;

/// Tube and groove that differ by no more than this belong together (4.75 mm tube in a 3/16 in groove). Our choice.
inline constexpr Length same_groove{0.15};

/// Directions closer than this are named by one word ("up", not "up and a little away"). Our choice:
/// a tube is turned by hand to about two degrees.
inline constexpr Angle same_direction{2.0};

/// Below this the straight-line springback rule does not hold; the pull has to be approached by
/// measuring. Source: Li et al. on nonlinearity below a critical angle; 15 is our choice within it.
inline constexpr Angle springback_linear_from{15.0};

/// A bend that reads within this of its target is right: the protractor is read to half a degree. Our choice.
inline constexpr Angle good_bend{0.5};

/// A released bend that opened by more than three times what its springback rule's slope says and this
/// on top was not pulled to where the lever was said to go, or the reading was typed by slip: it is not
/// calculated with. Scale zero, hook slack and parallax of a good bender stay well within it. Our choice.
inline constexpr Angle springback_gate{4.0};
inline constexpr double springback_gate_slopes = 3;

/// The forecast of springback is good to this share of it (springback notes: "good to about a third"), and the
/// lever is stopped to about a degree. Beyond twice both together, the lever is asked after. Our choice.
inline constexpr double springback_forecast_share = 1.0 / 3;
inline constexpr Angle lever_stop{1.0};

/// A protractor has two scales; this near to the other one's figure it is worth asking. Our choice.
inline constexpr Angle other_scale{4.0};

/// A bend never opens to more than it was pulled to; three readings of a protractor read to half a degree. Our choice.
inline constexpr Angle past_the_set{1.5};

/// A piece cut this near to the length on the sheet is the sheet's piece: half the finest tape mark in use. Our choice.
inline constexpr Length same_cut{0.4};

}  // namespace tubewright::tolerance
