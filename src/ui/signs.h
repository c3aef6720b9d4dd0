#pragma once
// Small drawn shapes: they say in form what a colour says too.

#include <imgui.h>

#include "present/views.h"
#include "ui/palette.h"

namespace tubewright {

class Ui;

void draw_check(ImDrawList& list, ImVec2 centre, float size, ImU32 ink, float thickness);
void draw_cross(ImDrawList& list, ImVec2 centre, float size, ImU32 ink, float thickness);
/// A triangle for caution, an eight-cornered plate for stop, a check mark for go, a wedge for now.
void draw_tone_sign(Ui& ui, ImVec2 centre, float size, Tone tone);
/// An upright or level line, its edges on whole pixels: crisp, and cheap where there are hundreds.
void draw_rule(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float thickness);
void draw_dashes(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float thickness, float dash, float gap);
void draw_dashed_box(ImDrawList& list, ImVec2 min, ImVec2 max, ImU32 ink, float thickness, float dash, float gap);
/// A stretch of tube with round ends: outline, body and a bright line along it.
void draw_rod(ImDrawList& list, ImVec2 from, ImVec2 to, float thickness, Rgb outline, Rgb body, Rgb bright);

}  // namespace tubewright
