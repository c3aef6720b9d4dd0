#pragma once
// The few small words that every folder speaks.

namespace tubewright {

/// The unit a file is written in and a reader reads in.
enum class Unit { inch, mm };

/// The two ends of a tube. Straight lengths along it are measured from A.
enum class End { A, B };
constexpr End other(End end) { return end == End::A ? End::B : End::A; }
constexpr char letter(End end) { return end == End::A ? 'A' : 'B'; }

/// What the line carries; it decides which cautions and checks are shown.
enum class Service { brake, fuel, cooler, hydraulic, air, other };

/// What a label in the picture of the tube in the bender can point at. `bend` is the made neighbour that the
/// turn is told by; `picked` the solid of a card that is pointed out, the
/// `gauge`s where its numbers are measured.
enum class Anchor { hook_end, lever_end, form, lever, after_pull, wrong_way, mark, bend, picked, gauge_1, gauge_2, gauge_3 };

}  // namespace tubewright
