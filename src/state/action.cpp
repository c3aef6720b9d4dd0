#include "state/action.h"

#include <memory>
#include <utility>

namespace tubewright {

Action::Action() = default;
Action::Action(const Action&) = default;
Action::Action(Action&&) noexcept = default;
// By way of the two above, so that a compiler needn't write out what each kind becomes from each other kind.
Action& Action::operator=(const Action& other) { return *this = Action(other); }
Action& Action::operator=(Action&& other) noexcept {
    if (this == &other) return *this;
    std::destroy_at(this);
    return *std::construct_at(this, std::move(other));
}
Action::~Action() = default;

bool operator==(const Action& one, const Action& other) {
    return static_cast<const AnyAction&>(one) == static_cast<const AnyAction&>(other);
}

}  // namespace tubewright
