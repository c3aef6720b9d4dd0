#pragma once
// The window and its loop: draws on events only.

#include <string>

#include "base/result.h"
#include "shell/order_finder.h"
#include "shell/places.h"

namespace tubewright {

struct Opening {
    Places places;
    std::string job;        ///< empty: the shelf
    std::string touch_map;  ///< empty: none
    OrderFinder::Look look_for_order = tubewright::look_for_order;  ///< on a thread of its own
};

struct NoWindow {
    std::string sentence;
    bool no_display = false;
    bool input_refused = false;  ///< one of the user's own files
};

/// Opens the window and stays until it is closed. The value is the exit status.
Result<int, NoWindow> open_window(const Opening& opening);

}  // namespace tubewright
