#pragma once
// Everything that speaks against a line, looked for in one place.

#include "bench/sheet.h"

namespace tubewright {

/// What is true of the line before anything can be laid out: corners too sharp or flat, the bender's
/// groove and radius, walls and flares.
std::vector<Finding> line_findings(const Line& line);

/// What is true of the steps as they stand on the sheet, which has a layout.
std::vector<Finding> step_findings(const Sheet& sheet);

/// Whether a corner of a corner form is too sharp to be laid out.
bool too_sharp(const Route& route);

}  // namespace tubewright
