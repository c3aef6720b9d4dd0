#pragma once
// Where the operator's eyes are while looking at the bench.

#include <Eigen/Core>
#include <vector>

#include "bench/bender.h"

namespace tubewright {

/// Degrees above the horizontal, and to the right of straight ahead.
struct Outlook {
    Angle above, aside;
};
Eigen::Vector3d ahead(const Outlook& outlook);  ///< where those eyes look, a unit vector

/// The same eyes moved with the finger: further over, and further round to the right; never under the bench nor quite
/// straight down.
Outlook moved(const Outlook& outlook, Angle over, Angle round);

/// What the picture has to tell: which way the leg goes after the pull, which way the made one lies, and that it
/// is not its wrong-way twin. Unit vectors; zero for none.
struct Telling {
    Eigen::Vector3d pulled, leg, twin;
};

/// For a part alone: the same eyes, but so that no leg is seen end on. `legs` are unit vectors.
Outlook outlook_for_part(const std::vector<Eigen::Vector3d>& legs);

/// Near the usual outlook, but so that it tells its tale. A step to the side costs a little: the bench should
/// not seem to spin from bend to bend.
Outlook outlook_for(const SetUp& set_up, const Telling& telling);

}  // namespace tubewright
