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

/// Keys of the keypad, one after the other, for a reading: quarters by their own key, all else with a point.
std::vector<std::string> keys_for(Angle reading);

/// What the next touch is, on the way to finishing every line of the job on the screen; nothing once all
/// lines are done. At each check the next of `off_target` is read off the protractor, counted from what is
/// wanted, and typed key by key; once there are none left a check is passed over. A bend that is under is
/// pulled again, one that is over is kept.
class Operator {
public:
    explicit Operator(std::string job_id, std::vector<Angle> off_target = {}) : job_id_(std::move(job_id)), off_target_(std::move(off_target)) {}
    std::optional<std::string> next_touch(const State& state, const std::vector<Seen>& seen);
    std::size_t readings_left() const { return off_target_.size() - read_; }

private:
    std::string at_keypad(const State& state);

    std::string job_id_;
    std::vector<Angle> off_target_;
    std::size_t read_ = 0;   // that many of them have been typed
};

}  // namespace tubewright
