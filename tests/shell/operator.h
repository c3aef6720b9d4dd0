#pragma once
// A person who does what the screen says: decides from what can be touched which thing to touch next.

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "state/state.h"

namespace tubewright {

/// One thing on the screen, as an operator sees it.
struct Seen {
    std::string id;
    bool enabled;
};

/// What the next touch is, on the way to finishing every line of the job on the screen; nothing once all
/// lines are done. `readings` are typed at each check, digit by digit; a bend without one is passed over.
class Operator {
public:
    explicit Operator(std::string job_id) : job_id_(std::move(job_id)) {}
    std::optional<std::string> next_touch(const State& state, const std::vector<Seen>& seen);

private:
    std::string job_id_;
    std::size_t pages_ = 0;   // turned on the list in sight
    std::string list_;        // which list that is
};

}  // namespace tubewright
