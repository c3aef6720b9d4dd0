#pragma once
// A line to be made, with everything about it looked up: tube, bender, ends, route.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/words.h"
#include "bench/bender.h"
#include "bench/fitting.h"
#include "bench/material.h"
#include "bench/taken.h"
#include "tube/route.h"
#include "tube/tube.h"

namespace tubewright {

struct LineEnd {
    Fitting fitting;
    Length allowance;  ///< the fitting's, or this end's own
    Length trim;       ///< extra, cut off after fitting up
    bool operator==(const LineEnd&) const = default;
};

struct Line {
    std::string name, note;
    int quantity = 1;
    Tube tube;
    Material material;
    Bender bender;
    LineEnd a, b;
    Route route;
    std::vector<std::string> bend_notes;  ///< one for each bend, mostly empty
    std::optional<Length> stick;          ///< the length this tube is sold in, where known
    Service service = Service::other;     ///< the job's
    std::optional<LineProof> proof = {};  ///< what was taped on the wire to prove the route
    bool operator==(const Line&) const = default;

    const LineEnd& end(End which) const { return which == End::A ? a : b; }
};

struct Job {
    std::string name;
    Service service = Service::other;
    Unit unit = Unit::inch;
    std::vector<Line> lines;  ///< at least one; names differ
    bool operator==(const Job&) const = default;
};

}  // namespace tubewright
