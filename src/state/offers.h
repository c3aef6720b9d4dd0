#pragma once
// What there is to choose from while a line is entered: of the shop's library just what a choice shows.

#include <string>
#include <vector>

#include "bench/bender.h"

namespace tubewright {

struct TubeOffer {
    std::string name;  ///< of the size: "3/16 in"
    Length od, wall;
    bool operator==(const TubeOffer&) const = default;
};
struct BenderOffer {
    std::string id, name;
    Length od;         ///< of the tube that it is for
    bool operator==(const BenderOffer&) const = default;
};
struct NamedOffer {
    std::string id, name;
    bool operator==(const NamedOffer&) const = default;
};

struct Offers {
    std::vector<TubeOffer> tubes;  ///< the usual wall of each size first
    std::vector<NamedOffer> materials, fittings;
    std::vector<BenderOffer> benders;
    std::vector<Bender> cards;     ///< whole, to try out what another bender would do
    bool operator==(const Offers&) const = default;
};

}  // namespace tubewright
