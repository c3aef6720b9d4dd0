#include "present/check_text.h"

#include "present/words.h"

namespace tubewright {

std::string check_text(const Job& job, const std::vector<Sheet>& sheets, const Tape& tape) {
    std::string all = job.name + "\n";
    std::size_t sound = 0;
    for (const Sheet& sheet : sheets) {
        all += "\n" + sheet.line.name;
        if (sheet.layout) all += ", cut to " + text(sheet.layout->cut_length, tape);
        all += "\n";
        if (sheet.findings.empty()) all += "  nothing found\n";
        for (const Finding& finding : sheet.findings)
            all += "  " + severity_word(finding.severity) + " [" + finding.code + "] " + sentence(finding, {tape, &sheet.line}) + "\n";
        if (!stopped(sheet)) ++sound;
    }
    return all + "\n" + std::to_string(sound) + " of " + counted(sheets.size(), "line", "lines") + " can be made as they stand.\n";
}

}  // namespace tubewright
