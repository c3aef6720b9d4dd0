// Any bytes as a job file: refused in one sentence, or a job, and the same job again from what its draft writes.

#include "shop.h"
#include "store/draft_file.h"
#include "store/job_file.h"
#include "store/job_text.h"

using namespace tubewright;

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    const auto job = read_job_text(text, "job.json", shipped_library());
    if (!job.ok()) {
        hold_sentence(job.trouble(), "job.json");
        return 0;
    }
    const auto draft = read_draft_text(text, "job.json", shipped_library());
    hold(draft.ok(), "what the bench takes, the entry takes");
    const auto again = read_job_text(text_of(draft.value()), "job.json", shipped_library());
    hold(again.ok() && again.value() == job.value(), "the draft's text gives the same job");
    return 0;
}
