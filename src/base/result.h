#pragma once
// Either what was asked for, or the facts of what stood in the way.

#include <cassert>
#include <utility>
#include <variant>

namespace tubewright {

template <class T, class Trouble>
class [[nodiscard]] Result {
public:
    Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
    Result(Trouble trouble) : held_(std::in_place_index<1>, std::move(trouble)) {}

    bool ok() const { return held_.index() == 0; }
    const T& value() const& { assert(ok()); return std::get<0>(held_); }
    T&& value() && { assert(ok()); return std::get<0>(std::move(held_)); }
    const Trouble& trouble() const { assert(!ok()); return std::get<1>(held_); }

private:
    std::variant<T, Trouble> held_;
};

}  // namespace tubewright
