#pragma once
// The command that makes a PDF of a job: bend sheets, strips of marks, angle gauges.

#include <iosfwd>
#include <optional>
#include <string>

#include "bench/checklist.h"
#include "bench/sheet.h"
#include "paper/page.h"
#include "present/text.h"
#include "present/word_table.h"
#include "shell/places.h"

namespace tubewright {

struct PaperRequest {
    std::string job, out;
    std::optional<std::string> line;
    std::optional<std::string> what;  ///< sheet, strip or gauges; else all three
    std::optional<std::string> page;  ///< letter or a4; else letter for a job in inches, a4 for one in mm
};

/// Letter for a reader of inches, A4 for one of mm.
PageSize usual_page(Unit unit);
/// What is put on paper of these lines, as a PDF: all three parts, or the one that is named. Empty where the fonts can't be read.
std::string paper_of_lines(const Places& places, const Job& job, const std::vector<Sheet>& sheets, const Checklists& checklists, const Tape& tape, PageSize size, const std::optional<std::string>& what = {});
std::string paper_of_tables(const Places& places, const std::string& title, const std::vector<WordTable>& tables, PageSize size);

/// Writes the file whole or not at all, over an older PDF only. To `trouble` one sentence where it is refused or fails, else
/// one for each of the user's own files that is left out.
int print_paper(const Places& places, const PaperRequest& request, std::ostream& trouble);

}  // namespace tubewright
