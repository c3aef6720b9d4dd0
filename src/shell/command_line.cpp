#include "shell/command_line.h"

#include <CLI/CLI.hpp>
#include <filesystem>
#include <iostream>

#include "shell/backup_commands.h"
#include "shell/print.h"
#include "shell/print_paper.h"
#include "shell/today.h"
#include "shell/window.h"
#include "store/refusal.h"

namespace tubewright {
namespace {

struct WhatIsAsked {
    std::string job, home, touch_map;
    SheetRequest sheet;
    std::string check, back_up_to, restore;
    PaperRequest paper;
};

constexpr const char* footer =
    "Without a job the shelf of jobs opens.\n"
    "Exit status: 0 made, 1 made but a finding says stop, 2 the input was refused, 3 the program failed.\n"
    "Follow the vehicle or machine maker's data and local law; brake, fuel and pressure work may need a licensed person.";

int not_understood(const std::string& why) {
    std::cerr << Refusal{"The command line", "", "is not understood: " + why, "see tubewright --help"}.sentence() << "\n";
    return exit_status::refused;
}

/// The name that stands for a subcommand can't be a job's; ./sheet can.
int open_bench(const WhatIsAsked& asked) {
    const Places places = find_places(asked.home);
    const Opening opening{places, asked.job, asked.touch_map};
    const auto opened = open_window(opening);
    if (opened.ok()) return opened.value();
    std::cerr << opened.trouble().sentence << "\n";
    if (!opened.trouble().no_display) return opened.trouble().input_refused ? exit_status::refused : exit_status::broken;
    if (asked.job.empty()) return print_shelf(places, std::cout, std::cerr);
    return print_sheet(places, {asked.job, std::nullopt, false}, std::cout, std::cerr);
}

}  // namespace

int run(int count, char** words) {
    WhatIsAsked asked;
    CLI::App app{"Tubewright walks one person through cutting, marking, turning and bending rigid tube lines."};
    app.footer(footer);
    app.fallthrough();
    app.set_version_flag("--version", std::string("tubewright ") + TUBEWRIGHT_VERSION, "Print the version");
    app.set_help_flag("--help", "Print this");
    app.add_option("JOB", asked.job, "A job file to open at the bench");
    app.add_option("--home", asked.home, "Folder for your own data: shop book, jobs, bender cards")->type_name("DIR");
    app.add_option("--touch-map", asked.touch_map, "Keep a list of everything that can be touched in this file")->type_name("FILE");
    CLI::App* sheet = app.add_subcommand("sheet", "Print the bend sheet of a job");
    sheet->set_help_flag("--help", "Print this");
    sheet->add_option("JOB", asked.sheet.job, "A job file")->required();
    sheet->add_option("--line", asked.sheet.line, "Only the line of this name")->type_name("NAME");
    sheet->add_flag("--json", asked.sheet.json, "The machine form");
    CLI::App* check = app.add_subcommand("check", "Print what speaks against the lines of a job");
    check->set_help_flag("--help", "Print this");
    check->add_option("JOB", asked.check, "A job file")->required();
    CLI::App* paper = app.add_subcommand("paper", "Make a PDF of a job: bend sheets, strips of marks to tape along the tube, angle gauges");
    paper->set_help_flag("--help", "Print this");
    paper->add_option("JOB", asked.paper.job, "A job file")->required();
    paper->add_option("--line", asked.paper.line, "Only the line of this name")->type_name("NAME");
    paper->add_option("--what", asked.paper.what, "Only sheet, strip or gauges; else all three")->type_name("KIND");
    paper->add_option("--page", asked.paper.page, "letter or a4; else letter for inches, a4 for mm")->type_name("SIZE");
    paper->add_option("--out", asked.paper.out, "The PDF file to write")->type_name("FILE")->required();
    CLI::App* backup = app.add_subcommand("backup", "Back up all that is yours into one file, and check it");
    backup->set_help_flag("--help", "Print this");
    backup->add_option("--to", asked.back_up_to, "A folder, such as a stick's, for a second copy")->type_name("FOLDER");
    CLI::App* restoring = app.add_subcommand("restore", "Go back to a backup; what is there now is backed up first");
    restoring->set_help_flag("--help", "Print this");
    restoring->add_option("FILE", asked.restore, "A backup")->required();
    try {
        app.parse(count, words);
    } catch (const CLI::Success& done) {
        return app.exit(done);  // --help and --version
    } catch (const CLI::Error& wrong) {
        return not_understood(wrong.what());
    }
    if ((*sheet || *check || *paper || *backup || *restoring) && !(asked.job.empty() && asked.touch_map.empty()))
        return not_understood((asked.job.empty() ? "--touch-map" : in_short(asked.job)) + " does not belong here");
    if (*sheet) return print_sheet(find_places(asked.home), asked.sheet, std::cout, std::cerr);
    if (*paper) return print_paper(find_places(asked.home), asked.paper, std::cerr);
    if (*check) return print_check(find_places(asked.home), asked.check, std::cout, std::cerr);
    if (*backup) return back_up(find_places(asked.home), asked.back_up_to, today(), std::cout, std::cerr);
    if (*restoring) return restore(find_places(asked.home), asked.restore, today(), std::cout, std::cerr);
    // A lone word that is no file is more likely a command misspelt than a job.
    if (asked.job.find_first_of("./") == std::string::npos && !asked.job.empty() && !std::filesystem::exists(asked.job)) {
        std::cerr << in_short(asked.job) << " is neither a command nor a file that is there; allowed: sheet, check, paper, backup, restore, or a job file.\n";
        return exit_status::refused;
    }
    return open_bench(asked);
}

}  // namespace tubewright
