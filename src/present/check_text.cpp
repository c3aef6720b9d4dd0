#include "present/check_text.h"

#include <algorithm>

#include "present/words.h"
#include "tube/limits.h"

namespace tubewright {
namespace {

/// What the tube itself allows, for a line that is bent at all.
std::string tube_text(const Line& line, const Tape& tape) {
    if (std::none_of(line.route.bends.begin(), line.route.bends.end(), is_made)) return "";
    std::string all = "  " + od_text(line.tube.od, tape) + " OD";
    if (const auto dash = dash_number(line.tube.od)) all += " (dash " + std::to_string(*dash) + ")";
    all += ": the outside of its bends is stretched by " + percent(outer_strain(line.tube.od, line.bender.radius));
    return all + ", no bend may be flatter than " + fine(least_flattened(line.tube.od), tape) + " (75 % of the diameter)\n";
}

/// Said here and not on each sheet: for most sizes no limit is printed anywhere that we know of.
std::string unknown_walls(const Line& line) {
    std::string all;
    for (const End end : {End::A, End::B}) {
        const Fitting& fitting = line.end(end).fitting;
        if (fitting.flared && !fitting.heaviest_wall)
            all += "  " + severity_word(Severity::note) + " [no-wall-limit] " + capital(end_name(end)) +
                   ": how heavy a wall this flare takes is not known here. Ask the maker of the flaring tool.\n";
    }
    return all;
}

}  // namespace

std::string check_text(const Job& job, const std::vector<Sheet>& sheets, const Tape& tape) {
    std::string all = job.name + "\n";
    std::size_t sound = 0;
    for (const Sheet& sheet : sheets) {
        all += "\n" + sheet.line.name;
        if (sheet.layout) all += ", cut to " + text(sheet.layout->cut_length, tape);
        all += "\n";
        all += tube_text(sheet.line, tape);
        const std::string walls = unknown_walls(sheet.line);
        if (sheet.findings.empty() && walls.empty()) all += "  nothing found\n";
        for (const Finding& finding : sheet.findings)
            all += "  " + severity_word(finding.severity) + " [" + finding.code + "] " + sentence(finding, {tape, &sheet.line}) + "\n";
        all += walls;
        if (!stopped(sheet)) ++sound;
    }
    return all + "\n" + std::to_string(sound) + " of " + counted(sheets.size(), "line", "lines") + " can be made as they stand.\n";
}

}  // namespace tubewright
