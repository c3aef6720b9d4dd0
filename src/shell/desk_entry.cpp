// The desk while a line is entered: what there is to choose from, and the draft on the disk.

#include "shell/desk.h"
#include "store/job_file.h"

namespace tubewright {
namespace {

JobFolders folders_of(const Places& places) { return {places.jobs, places.home / "jobs"}; }

}  // namespace

void Desk::tell_offers() {
    Offers offers;
    for (const TubeSize& size : library_.tubes)
        for (const Length wall : size.walls) offers.tubes.push_back({size.name, size.od, wall});
    for (const Material& material : library_.materials) offers.materials.push_back({material.id, material.name});
    for (const FittingKind& kind : library_.fittings) offers.fittings.push_back({kind.usual.id, kind.usual.name});
    for (const Bender& bender : library_.benders) offers.benders.push_back({bender.id, bender.name, bender.tube_od});
    act(OffersAre{offers});
}

void Desk::read_draft_of(const ReadDraft& asked) {
    auto opened = open_to_enter(asked.path, library_);
    if (!opened.ok()) return act(JobRefused{asked.path, opened.trouble().sentence()});
    OpenedJob job = std::move(opened).value();
    entered_ = job.hand;
    act(DraftRead{job.hand.path.string(), std::move(job.draft), asked.prove});
}

void Desk::keep_draft(const KeepDraft& asked) {
    DraftKept told{asked.path, "", std::nullopt, ""};
    const JobInHand hand = entered_.path == asked.path ? entered_ : JobInHand{asked.path, ""};
    RealDisk disk;
    auto kept = keep_job(disk, folders_of(places_), hand, asked.job, library_);
    if (kept.ok()) {
        entered_ = kept.value().hand;
        told.path = entered_.path.string();
        told.sentence = kept.value().said;
    } else {
        told.sentence = kept.trouble().sentence;
    }
    if (asked.shown) {
        auto line = line_from(*asked.shown, 0, told.path, library_);
        if (line.ok()) told.line = std::move(line).value();
        else told.trouble = line.trouble().sentence();
    }
    act(told);
}

}  // namespace tubewright
