#pragma once
// What a careful person ticks off before and after bending; read from data, chosen by job.

#include <string>
#include <vector>

#include "base/words.h"

namespace tubewright {

/// One sentence to tick, or to heed. Empty lists mean: for all.
struct CheckItem {
    std::string id, text;
    std::vector<Service> services;
    std::vector<std::string> materials;  ///< ids
    std::vector<std::string> fittings;   ///< ids, at either end
    std::string later = {};              ///< words for the label where the fitter does it later; empty: it can't wait
    bool operator==(const CheckItem&) const = default;
};

struct Checklists {
    std::vector<CheckItem> prepare;    ///< before and at the cut, each a gate
    std::vector<CheckItem> finish;     ///< after the last bend: trim, second end, flare, each a gate
    std::vector<CheckItem> hand_over;  ///< leak test and hand-over, each a gate: done, or knowingly left for the fitter
    std::vector<CheckItem> cautions;   ///< shown where the work can hurt
    bool operator==(const Checklists&) const = default;
};

}  // namespace tubewright
