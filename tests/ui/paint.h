#pragma once
// Draws what Dear ImGui asked for into a picture file, on the processor, so that a screen can be
// looked at without a window or a graphics driver.

#include <string>

namespace tubewright {

/// The frame last rendered in the current context. False: the file could not be written.
bool paint_png(const std::string& path);

}  // namespace tubewright
