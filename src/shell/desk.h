#pragma once
// The state and the world around it: applies actions and carries out what they ask for. Knows files
// and the shop book, but no window and no clock of its own.

#include <filesystem>
#include <functional>
#include <memory>
#include <string>

#include "base/result.h"
#include "present/views.h"
#include "shell/order_finder.h"
#include "shell/places.h"
#include "state/state.h"
#include "store/library.h"
#include "store/own_jobs.h"
#include "store/refusal.h"

namespace tubewright {

class ShopBook;
struct RestoreFinished;

/// Today, such as 2026-11-25.
using Today = std::function<std::string()>;

class Desk {
public:
    /// Refused where the program's own assets can't be read. A book that can't be opened is not
    /// refused here: the first screen says it.
    static Result<Desk, Refusal> made(const Places& places, Today today);
    Desk(Desk&&) noexcept;
    Desk& operator=(Desk&&) noexcept;
    ~Desk();

    const State& state() const { return state_; }
    ScreenView view() const;

    /// Applies the action, saves what has to be saved, and tells the state what came of it.
    void act(const Action& action);
    /// From now on orders of bends are looked for on a thread of their own, which calls `wake` when there is
    /// something to hear. Until then act() waits for them.
    void look_for_orders_beside(std::function<void()> wake, OrderFinder::Look look = look_for_order);
    /// Takes in what that thread has found.
    void hear_orders();

    /// The day may have changed.
    void look_at_day();

    /// Opens the job; a line that was at the bench when the program ended is taken up where it was.
    void open_job(const std::filesystem::path& path);
    /// What was at the bench when the program ended, if anything was.
    void take_up_again();

private:
    Desk(Places places, Today today, Library library);
    void carry_out(const Request& request);
    void open_book();
    void open_fresh_book();
    void use_book(const std::filesystem::path& path);
    void read_jobs();
    void tell_left_out();
    void tell_restored(const RestoreFinished& restored);
    void read_one(const std::string& path, const std::string& line = "");
    // a line being entered
    void tell_offers();
    void read_draft_of(const ReadDraft& asked);
    void keep_draft(const KeepDraft& asked);
    void read_point_files();
    void read_points_of(const ReadPoints& asked);
    void write_points_of(const WritePointsFile& asked);
    // the log of bends as files
    void read_bend_files();
    void read_bends_of(const ReadBends& asked);
    void write_bends_of(const WriteBendsFile& asked);
    void find_order_for(const FindOrder& asked);
    // the rack and what is cut from it, and files for the person
    void find_plan_for(const FindPlan& asked);
    void read_plan_job(const std::string& path);
    void write_tables();
    void put_on_paper(const std::string& name, const std::string& pdf);
    void write_line_paper(const WriteLinePaper& asked);
    void write_plan_paper();
    void read_backups();
    void write_backup();
    void go_back_to(const std::string& name);
    void start_anew();
    void save_work();
    void save_settings();
    void save_card(const SaveCard& asked);
    void drop_card(const DropCard& asked);
    void use_card(const Bender& bender, bool own);
    void remember_line();
    std::string job_id(const std::filesystem::path& path) const;

    Places places_;
    Today today_;
    Library library_;
    State state_;
    std::unique_ptr<ShopBook> book_;
    std::string remembered_;
    std::unique_ptr<OrderFinder> finder_, plan_finder_;
    JobInHand entered_;  ///< the file of the job being entered
};

}  // namespace tubewright
