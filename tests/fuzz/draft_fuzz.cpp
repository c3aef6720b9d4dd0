// Any bytes as a job that is being entered: refused in one sentence, or a draft that its own text brings back.

#include "shop.h"
#include "store/draft_file.h"
#include "store/job_file.h"
#include "store/job_text.h"

using namespace tubewright;

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    const auto draft = read_draft_text(text, "job.json", shipped_library());
    if (!draft.ok()) {
        hold_sentence(draft.trouble(), "job.json");
        return 0;
    }
    const std::string written = text_of(draft.value());
    const auto back = read_draft_text(written, "job.json", shipped_library());
    hold(back.ok(), "what was written can be read");
    hold(back.value() == draft.value(), "what was written is read back the same");
    hold(text_of(back.value()) == written, "and written the same");
    const Draft& job = draft.value();
    bool whole = !job.lines.empty();
    for (std::size_t i = 0; i < job.lines.size(); ++i) {
        whole = whole && !job.lines[i].unfinished;
        hold(line_from(job, i, "job.json", shipped_library()).ok() == !lack_of(job, job.lines[i]), "a line that lacks nothing can be worked out");
    }
    hold(job_from(job, "job.json", shipped_library()).ok() == whole, "the bench takes finished jobs and no others");
    return 0;
}
