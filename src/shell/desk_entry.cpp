// The desk while a line is entered: what there is to choose from, and the draft on the disk.

#include "shell/desk.h"
#include "store/job_file.h"
#include "store/own_points.h"
#include "store/points_file.h"

namespace tubewright {
namespace {

std::string counted_points(std::size_t count) { return std::to_string(count) + " points"; }

JobFolders folders_of(const Places& places) { return {places.jobs, places.home / "jobs"}; }

}  // namespace

void Desk::tell_offers() {
    Offers offers;
    for (const TubeSize& size : library_.tubes)
        for (const Length wall : size.walls) offers.tubes.push_back({size.name, size.od, wall});
    for (const Material& material : library_.materials) offers.materials.push_back({material.id, material.name});
    for (const FittingKind& kind : library_.fittings) offers.fittings.push_back({kind.usual.id, kind.usual.name});
    offers.cards = library_.benders;
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

void Desk::read_point_files() {
    const std::filesystem::path folder = places_.home / "points";
    PointFilesAre told{folder.string(), {}};
    for (const FoundPoints& found : point_files_in(folder)) told.files.push_back({found.name, found.says, found.trouble});
    act(told);
}

void Desk::read_points_of(const ReadPoints& asked) {
    auto read = read_points(places_.home / "points" / asked.file, asked.unit);
    if (!read.ok()) return act(PointsTold{read.trouble().sentence()});
    act(PointsRead{asked.file, asked.unit, std::move(read).value().points});
}

void Desk::write_points_of(const WritePointsFile& asked) {
    RealDisk disk;
    const auto written = write_points_beside(disk, places_.home / "points", file_name_for(asked.name), asked.points, asked.unit);
    act(PointsTold{written.ok() ? counted_points(asked.points.size()) + " written to " + written.value().string() + "." : written.trouble().sentence});
}

}  // namespace tubewright
