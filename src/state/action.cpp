#include "state/action.h"

namespace tubewright {

Action::Action() = default;
Action::Action(const Action&) = default;
Action::Action(Action&&) noexcept = default;
Action& Action::operator=(const Action&) = default;
Action& Action::operator=(Action&&) noexcept = default;
Action::~Action() = default;

bool operator==(const Action& one, const Action& other) {
    return static_cast<const AnyAction&>(one) == static_cast<const AnyAction&>(other);
}

}  // namespace tubewright
