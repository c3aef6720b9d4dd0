#include "present/views.h"

namespace tubewright {

Body::Body() = default;
Body::Body(const Body&) = default;
Body::Body(Body&&) noexcept = default;
Body& Body::operator=(const Body&) = default;
Body& Body::operator=(Body&&) noexcept = default;
Body::~Body() = default;

bool operator==(const Body& one, const Body& other) {
    return static_cast<const AnyBody&>(one) == static_cast<const AnyBody&>(other);
}

}  // namespace tubewright
