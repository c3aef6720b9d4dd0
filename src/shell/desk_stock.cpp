// The desk and the rack: cutting plans, and files for the person: paper, tables, backups.

#include "present/stock_tables.h"
#include "shell/desk.h"
#include "shell/print_paper.h"
#include "store/backup.h"
#include "store/csv.h"
#include "store/job_file.h"
#include "store/own_jobs.h"
#include "store/restore.h"
#include "store/save_beside.h"
#include "store/shop_book.h"

namespace tubewright {

void Desk::find_plan_for(const FindPlan& asked) {
    if (asked.question != state_.plan.question) return;  // another action came between
    if (plan_finder_) return plan_finder_->ask_plan(asked.question, state_.plan.asked);
    act(plan_is(asked.question, state_.plan.asked, {}));
}

void Desk::read_plan_job(const std::string& path) {
    auto job = read_job(path, library_);
    if (job.ok()) act(PlanJobRead{{job_id(path), path, std::move(job).value()}});
    else act(FilesTold{job.trouble().sentence()});
}

void Desk::write_tables() {
    RealDisk disk;
    std::filesystem::path folder;
    for (const WordTable& table : shop_tables(state_)) {
        TextTable text{{}, table.rows};
        for (const WordTable::Column& column : table.columns) text.header.push_back(column.head);
        const auto written = write_csv_beside(disk, places_.home / "tables", table.title, "The table is not written", text);
        if (!written.ok()) return act(FilesTold{written.trouble().sentence});
        folder = written.value().parent_path();
    }
    act(FilesTold{"The tables are in " + folder.string() + ", lengths in mm.", true});
}

void Desk::put_on_paper(const std::string& name, const std::string& pdf) {
    if (pdf.empty()) return act(FilesTold{"The fonts in " + (places_.assets / "fonts").string() + " can't be read: nothing is put on paper."});
    RealDisk disk;
    const auto written = save_beside(disk, places_.home / "paper", name, ".pdf", "The paper is not written", pdf);
    act(FilesTold{written.ok() ? "Ready to be printed at full size: " + written.value().string() + "." : written.trouble().sentence, written.ok()});
}

void Desk::write_line_paper(const WriteLinePaper& asked) {
    if (!state_.job || asked.line >= state_.sheets.size()) return;
    const Tape tape{reader_unit(state_), state_.settings.tape_denominator};
    const Sheet& sheet = state_.sheets[asked.line];
    put_on_paper(file_name_for(sheet.line.name), paper_of_lines(places_, *state_.job, {sheet}, state_.checklists, tape, usual_page(tape.unit)));
}

void Desk::write_plan_paper() { put_on_paper("cut-and-buy-list-" + state_.day, paper_of_tables(places_, "Cut list and buy list", plan_tables(state_), usual_page(reader_unit(state_)))); }

void Desk::read_backups() {
    const std::filesystem::path folder = places_.home / "backups";
    std::vector<BackupFile> files;
    for (const FoundBackup& found : backups_in(folder))
        if (found.trouble.empty()) files.push_back({found.path.filename().string(), found.day, found.number});
    act(BackupsAre{folder.string(), std::move(files)});
}

void Desk::write_backup() {
    RealDisk disk;
    const auto made = make_backup(disk, {places_.home, today_()}, book_.get());
    if (!made.ok()) return act(FilesTold{made.trouble().sentence});
    read_backups();
    const std::size_t left_out = made.value().left_out.size();
    act(FilesTold{"Backed up, read back and checked: " + made.value().written.front().string() + "." + (left_out > 0 ? " Left out because it can't be read: " + made.value().left_out.front() + "." : std::string()), left_out == 0});
}

/// Everything is read anew from the files that came back; nothing of the state before them stays.
void Desk::go_back_to(const std::string& name) {
    RealDisk disk;
    const auto begun = begin_restore(disk, places_.home, today_(), places_.home / "backups" / name, book_.get());
    if (!begun.ok()) return act(FilesTold{begun.trouble().sentence});
    start_anew();
}

/// As if the program had been started again, which also finishes a restore that was begun. Where that can't be done it can be tried again.
void Desk::start_anew() {
    book_.reset();
    auto fresh = made(places_, today_);
    if (!fresh.ok()) return act(BookRefused{fresh.trouble().sentence(), true});
    Desk again = std::move(fresh).value();
    again.state_.next_question = state_.next_question;  // late answers stay nobody's
    again.state_.screen_px_per_mm = state_.screen_px_per_mm;
    again.finder_ = std::move(finder_);
    again.plan_finder_ = std::move(plan_finder_);
    *this = std::move(again);
}

}  // namespace tubewright
