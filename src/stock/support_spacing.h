#pragma once
// How far apart the clips of a tube may be.

#include <array>

#include "stock/exact_length.h"

namespace tubewright {

enum class SupportRow { steel, aluminium };

struct SupportSpacing {
    ExactLength outside, spacing;
};

/// Steel, 1/4 in and larger: MIL-H-8891A table II, 3.11.4 (page 30). The scan runs sizes and values together; of the two ways to
/// pair them this is the shorter and safer. 1/8 and 3/16: FAA handbook, "maximum distance between supports", from memory.
inline constexpr std::array<SupportSpacing, 9> steel_supports{{{{3175}, {292'100}}, {{4763}, {355'600}}, {{6350}, {406'400}}, {{7938}, {457'200}}, {{9525}, {508'000}},
                                                               {{12'700}, {584'200}}, {{15'875}, {647'700}}, {{19'050}, {698'500}}, {{25'400}, {762'000}}}};
/// Aluminium: FAA handbook, the same table, from memory. For a material without a row of its own it is the safer one: our choice.
inline constexpr std::array<SupportSpacing, 5> aluminium_supports{{{{4763}, {304'800}}, {{6350}, {342'900}}, {{7938}, {381'000}}, {{9525}, {419'100}}, {{12'700}, {482'600}}}};

/// Where the tube carries unions or tees, spacing is reduced by about 20 %: MIL-H-8891A 3.11.4.
inline constexpr int percent_with_joints = 80;

/// A size between two has the smaller one's; one below the first is held as the first in proportion to its diameter, our choice.
/// A twentieth of a millimetre is no other size (4.75 and 4.76 mm are 3/16 in).
ExactLength support_spacing(SupportRow row, ExactLength outside, bool joints);

/// Between two held ends: so many that no stretch is longer than the spacing.
int clips_for(ExactLength length, ExactLength spacing);

}  // namespace tubewright
