#pragma once
// A sheet whose figures can be followed by hand.

#include <cassert>

#include "bench/samples.h"

namespace tubewright {

/// On the form's own radius, with no springback; made from A on, with A on the hook.
inline Sheet plain_sheet(const Line& line) {
    SheetChoice choice;
    choice.springback = Springback{};
    for (std::size_t bend = 0; bend < line.route.bends.size(); ++bend) choice.order.push_back({bend, End::A});
    Sheet sheet = bend_sheet(line, choice);
    assert(!stopped(sheet));
    return sheet;
}

}  // namespace tubewright
