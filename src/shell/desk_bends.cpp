// The desk and the log of bends: files in the user's folder.

#include "shell/desk.h"
#include "store/bends_file.h"

namespace tubewright {

void Desk::read_bend_files() {
    const std::filesystem::path folder = places_.home / "bends";
    act(BendFilesAre{folder.string(), bend_files_in(folder)});
}

void Desk::read_bends_of(const ReadBends& asked) {
    auto read = read_bends(places_.home / "bends" / asked.file);
    if (!read.ok()) return act(BendsTold{read.trouble().sentence()});
    act(BendsRead{asked.file, std::move(read).value()});
}

void Desk::write_bends_of(const WriteBendsFile& asked) {
    RealDisk disk;
    const auto written = write_bends_beside(disk, places_.home / "bends", "bends-" + state_.day, asked.bends);
    const std::string count = std::to_string(asked.bends.size()) + (asked.bends.size() == 1 ? " bend" : " bends");
    act(BendsTold{written.ok() ? count + " written to " + written.value().string() + "." : written.trouble().sentence});
}

}  // namespace tubewright
