#include "shell/desk.h"

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>

#include "present/screen_view.h"
#include "shell/own_cards.h"
#include "state/rules.h"
#include "store/home_files.h"
#include "store/job_file.h"
#include "store/restore.h"
#include "store/save.h"
#include "store/shelf.h"
#include "store/shop_book.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

ShelfEntry entry_of(const FoundJob& job) { return {job.id, job.path, job.name, job.lines, job.trouble, job.quantities, job.unfinished}; }

bool inside(const fs::path& path, const fs::path& folder) {
    std::error_code ignored;
    return fs::weakly_canonical(path, ignored).parent_path() == fs::weakly_canonical(folder, ignored);
}

struct AtBench {
    std::string path, line;
    bool learning = false;  ///< the line's bender, from pieces
};

std::optional<AtBench> read_note(const fs::path& file) {
    std::ifstream in(file);
    const auto note = nlohmann::json::parse(in, nullptr, false);
    if (!note.is_object() || !note.contains("job") || !note.contains("line") || !note["job"].is_string() || !note["line"].is_string()) return std::nullopt;
    return AtBench{note["job"], note["line"], note.value("learning", nlohmann::json()) == true};
}

}  // namespace

Desk::Desk(Places places, Today today, Library library) : places_(std::move(places)), today_(std::move(today)), library_(std::move(library)) {
    state_.checklists = library_.checklists;
    for (const Material& material : library_.materials) state_.material_names[material.id] = material.name;
    state_.materials = library_.materials;
    state_.own_cards = own_card_ids(places_.home);
    state_.shipped_cards = shipped_cards(places_.assets);
}
Desk::Desk(Desk&&) noexcept = default;
Desk& Desk::operator=(Desk&&) noexcept = default;
Desk::~Desk() = default;

Result<Desk, Refusal> Desk::made(const Places& places, Today today) {
    RealDisk disk;
    const auto restored = finish_restore(disk, places.home);
    if (!restored.ok()) return Refusal{"The restore in " + places.home.string(), "", "is not finished: " + restored.trouble().why, "to start again once that is mended"};
    auto library = read_library(places.assets, places.home);
    if (!library.ok()) return library.trouble();
    Desk desk(places, std::move(today), std::move(library).value());
    desk.look_at_day();
    desk.tell_offers();
    desk.open_book();
    if (is_restore_begun(places.home)) return Refusal{"The restore in " + places.home.string(), "", "is just being made by another window", "to start again when that is done"};
    desk.read_jobs();
    desk.tell_left_out();
    if (restored.value()) desk.tell_restored(*restored.value());
    return desk;
}

void Desk::tell_left_out() {
    if (library_.left_out.empty()) return;
    const std::size_t more = library_.left_out.size() - 1;
    state_.looks.notice = library_.left_out.front().sentence() + (more > 0 ? " And " + std::to_string(more) + (more == 1 ? " more file" : " more files") + " of your own." : "");
}

/// A restore that the power cut in two, or that was asked for on the screen, is done by now.
void Desk::tell_restored(const RestoreFinished& restored) {
    state_.looks.notice = !restored.given_up.empty() ? restored.given_up : "Your files are back as they were in the backup of " + restored.day + ".";
}

ScreenView Desk::view() const { return screen_view(state_); }

void Desk::act(const Action& action) {
    StateStep step = apply(std::move(state_), action);
    state_ = std::move(step.state);
    for (const Request& request : step.requests) carry_out(request);
    remember_line();
}

void Desk::look_at_day() {
    const std::string day = today_();
    if (day != state_.day) act(DayIs{day});
}

void Desk::carry_out(const Request& request) {
    if (std::holds_alternative<ReadShelf>(request)) read_jobs();
    else if (const auto* job = std::get_if<ReadJob>(&request)) read_one(job->path, job->line);
    else if (std::holds_alternative<SaveWork>(request)) save_work();
    else if (std::holds_alternative<SaveSettings>(request)) save_settings();
    else if (std::holds_alternative<OpenFreshBook>(request)) open_fresh_book();
    else if (const auto* draft = std::get_if<ReadDraft>(&request)) read_draft_of(*draft);
    else if (const auto* kept = std::get_if<KeepDraft>(&request)) keep_draft(*kept);
    else if (std::holds_alternative<ReadPointFiles>(request)) read_point_files();
    else if (const auto* points = std::get_if<ReadPoints>(&request)) read_points_of(*points);
    else if (const auto* corners = std::get_if<WritePointsFile>(&request)) write_points_of(*corners);
    else if (std::holds_alternative<ReadBendFiles>(request)) read_bend_files();
    else if (const auto* bends = std::get_if<ReadBends>(&request)) read_bends_of(*bends);
    else if (const auto* log = std::get_if<WriteBendsFile>(&request)) write_bends_of(*log);
    else if (const auto* card = std::get_if<SaveCard>(&request)) save_card(*card);
    else if (const auto* dropped = std::get_if<DropCard>(&request)) drop_card(*dropped);
    else if (const auto* asked = std::get_if<FindOrder>(&request)) find_order_for(*asked);
    else if (const auto* plan = std::get_if<FindPlan>(&request)) find_plan_for(*plan);
    else if (const auto* planned = std::get_if<ReadPlanJob>(&request)) read_plan_job(planned->path);
    else if (std::holds_alternative<WriteTablesNow>(request)) write_tables();
    else if (const auto* paper = std::get_if<WriteLinePaper>(&request)) write_line_paper(*paper);
    else if (std::holds_alternative<WritePlanPaper>(request)) write_plan_paper();
    else if (std::holds_alternative<ReadBackups>(request)) read_backups();
    else if (std::holds_alternative<WriteBackup>(request)) write_backup();
    else if (const auto* backup = std::get_if<ReadBackup>(&request)) go_back_to(backup->name);
    else if (const auto* stopped = std::get_if<StopFinding>(&request)) {
        if (finder_) finder_->stop(stopped->question);
        if (plan_finder_) plan_finder_->stop(stopped->question);
    }
}

void Desk::open_book() {
    std::error_code ignored;
    fs::create_directories(places_.home, ignored);  // what stands in the way is said by opening the book
    use_book(book_path(places_.home, youngest_book(places_.home)));
}

void Desk::open_fresh_book() {
    if (is_restore_begun(places_.home)) return start_anew();  // a fresh book would go when it is finished
    // A book in use is a good one: beginning another would hide it.
    const int youngest = youngest_book(places_.home);
    use_book(book_path(places_.home, state_.book_in_use ? youngest : youngest + 1));
}

void Desk::use_book(const fs::path& path) {
    auto book = ShopBook::open(path);
    if (!book.ok()) return act(BookRefused{book.trouble().sentence, book.trouble().in_use});
    auto kept = std::make_unique<ShopBook>(std::move(book).value());
    const BookPages pages = kept->read();
    book_ = std::move(kept);
    act(BookRead{pages.work, pages.settings, pages.past});
}

void Desk::look_for_orders_beside(std::function<void()> wake, OrderFinder::Look look) {
    plan_finder_ = std::make_unique<OrderFinder>(wake);
    finder_ = std::make_unique<OrderFinder>(std::move(wake), std::move(look));
}

void Desk::hear_orders() {
    for (OrderFinder* finder : {finder_.get(), plan_finder_.get()})
        for (const Action& heard : finder ? finder->heard() : std::vector<Action>{}) act(heard);
}

void Desk::find_order_for(const FindOrder& asked) {
    // Another action may have come between.
    if (asked.line >= state_.orders.size()) return;
    const auto wish = wish_of(state_.orders[asked.line], asked);
    if (!wish) return;
    const Sheet& sheet = state_.sheets[asked.line];
    if (finder_) return finder_->ask(asked.question, sheet, *wish, library_.benders);
    act(order_is(asked.question, look_for_order(sheet, *wish, {}, library_.benders)));
}

void Desk::save_work() {
    if (!book_) return;
    if (const auto saved = book_->save(state_.work, state_.past); !saved.ok()) act(NotSaved{saved.trouble().sentence});
}

void Desk::save_settings() {
    if (!book_) return;
    if (const auto saved = book_->save_settings(state_.settings); !saved.ok()) act(NotSaved{saved.trouble().sentence});
}

void Desk::save_card(const SaveCard& asked) {
    RealDisk disk;
    if (const auto kept = keep_own_card(disk, places_, asked.bender, asked.unit); !kept.ok()) return act(NotSaved{kept.trouble().sentence});
    use_card(asked.bender, true);
}

void Desk::drop_card(const DropCard& asked) {
    RealDisk disk;
    if (const auto dropped = drop_own_card(disk, places_.home, asked.shipped.id); !dropped.ok()) return act(NotSaved{dropped.trouble().sentence});
    use_card(asked.shipped, false);
}

/// The benders are read again, and with them the job, so that the sheets follow. Of the rest of the library the
/// screens go by what was read at the start.
void Desk::use_card(const Bender& bender, bool own) {
    auto library = read_library(places_.assets, places_.home);
    if (!library.ok()) return act(NotSaved{library.trouble().sentence()});
    library_.benders = std::move(library).value().benders;
    tell_offers();
    std::optional<Job> job;
    if (state_.job) {
        auto read = read_job(state_.job_path, library_);
        if (!read.ok()) act(NotSaved{read.trouble().sentence()});
        else job = std::move(read).value();
    }
    act(CardKept{bender, own, std::move(job)});
}

void Desk::read_jobs() {
    ShelfRead shelf;
    for (const FoundJob& job : read_shelf(places_.jobs, places_.home / "jobs", library_)) shelf.entries.push_back(entry_of(job));
    act(shelf);
}

void Desk::read_one(const std::string& path, const std::string& line) {
    auto job = read_job(path, library_);
    if (job.ok()) act(JobRead{job_id(path), path, std::move(job).value(), line});
    else act(JobRefused{path, job.trouble().sentence()});
}

/// A job on the shelf is known by its file's name, so that a copy in one's own folder goes on where the
/// shipped one was; any other by its whole path.
std::string Desk::job_id(const fs::path& path) const {
    if (inside(path, places_.jobs) || inside(path, places_.home / "jobs")) return path.stem().string();
    std::error_code ignored;
    return fs::weakly_canonical(path, ignored).string();
}

/// Keeps, beside the book, which line is at the bench, or that its bender is being learned. Only a help: should it be lost, the shelf opens.
void Desk::remember_line() {
    const auto& behind = state_.looks.came_from;  // beside the bench for a moment: scrap log, settings
    const bool learning = state_.looks.screen == Screen::learn, bench = state_.looks.screen == Screen::bench || std::any_of(behind.begin(), behind.end(), [](const ScreenLeft& left) { return left.screen == Screen::bench; });
    std::string now;
    if (state_.job && state_.line && (learning || bench)) {
        std::error_code ignored;
        nlohmann::json note{{"job", fs::absolute(state_.job_path, ignored).string()}, {"line", state_.job->lines[*state_.line].name}};
        if (learning) note["learning"] = true;
        now = note.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
    }
    if (now == remembered_ || !book_) return;
    RealDisk disk;
    if (save_whole(disk, places_.home / bench_note, now).ok()) remembered_ = now;
}

void Desk::open_job(const fs::path& path) {
    // The note is read before opening the job forgets it.
    const auto note = read_note(places_.home / bench_note);
    read_one(path.string());
    std::error_code ignored;
    if (!note || !state_.job || fs::weakly_canonical(note->path, ignored) != fs::weakly_canonical(path, ignored)) return;
    act(OpenLine{note->line});
    if (!state_.line) return;
    if (!note->learning) return act(GoTo{Screen::bench});
    act(GoTo{Screen::card});
    act(LearnBender{});
}

void Desk::take_up_again() {
    const auto note = read_note(places_.home / bench_note);
    std::error_code ignored;
    if (note && fs::exists(note->path, ignored)) open_job(note->path);
}

}  // namespace tubewright
