#pragma once
// A job as it stands while it is being entered: what the person chose and measured, with nothing looked up
// and perhaps not yet to its end. bench/line.h has what is made of it.

#include <optional>
#include <string>
#include <vector>

#include "base/kept_keys.h"
#include "base/words.h"
#include "bench/taken.h"
#include "tube/measured.h"
#include "tube/tube.h"

namespace tubewright {

struct DraftTube {
    Tube tube;
    KeptKeys kept = {};
    bool operator==(const DraftTube&) const = default;
};

/// A bender that the shop knows by its id, or a whole card that stands in the job itself.
struct DraftBender {
    std::string id;         ///< of the card too
    std::string card = {};  ///< its text, or empty
    bool operator==(const DraftBender&) const = default;
};

struct DraftEnd {
    std::string fitting;                    ///< id, or empty: not chosen yet
    Length trim = {};
    std::optional<Length> allowance = {};   ///< this end's own, which wins over the fitting's
    KeptKeys kept = {};
    bool operator==(const DraftEnd&) const = default;
};

struct DraftLine {
    std::string name;                  ///< no other line of the job has it
    int quantity = 1;
    std::string note = {};
    bool unfinished = false;           ///< the person has not yet said that all of it is entered
    std::optional<DraftTube> tube = {};      ///< its own; none: the job's
    std::optional<DraftBender> bender = {};  ///< its own; none: the job's
    DraftEnd a = {}, b = {};
    MeasuredRoute route = {};
    KeptKeys kept_at_ends = {}, kept = {};
    std::optional<LineProof> proof = {};  ///< what was taped on the wire to prove the route
    bool operator==(const DraftLine&) const = default;

    DraftEnd& end(End which) { return which == End::A ? a : b; }
    const DraftEnd& end(End which) const { return which == End::A ? a : b; }
};

struct Draft {
    std::string name;
    Service service = Service::other;
    Unit unit = Unit::inch;  ///< the file's lengths are written in it
    std::string note = {};
    std::optional<DraftTube> tube = {};
    std::optional<DraftBender> bender = {};
    std::vector<DraftLine> lines = {};
    KeptKeys kept = {};
    bool operator==(const Draft&) const = default;
};

// What a line still lacks before it can be worked out.
struct NoTube {};
struct NoBender {};
struct NoFitting { End end; };
struct NoRoute { RouteTrouble why; };
using Lack = std::variant<NoTube, NoBender, NoFitting, NoRoute>;

/// The first thing that this line of the job lacks.
std::optional<Lack> lack_of(const Draft& job, const DraftLine& line);

/// Whether the line has to wait before it is bent: the person is not through with it, or it lacks something.
bool is_unfinished(const Draft& job, const DraftLine& line);

}  // namespace tubewright
