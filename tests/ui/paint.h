#pragma once
// Draws what Dear ImGui asked for into a picture file, on the processor, so that a screen can be
// looked at without a window or a graphics driver.

#include <imgui.h>

#include <string>

namespace tubewright {

/// With the current context's screen size and font texture. False: the file could not be written.
bool paint_png(const std::string& path, const ImDrawData& data);

}  // namespace tubewright
