#pragma once
// Everything the program knows while it runs, and the one function that changes it.

#include <map>
#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "bench/checklist.h"
#include "bench/proving.h"
#include "bench/sheet.h"
#include "bench/springback_log.h"
#include "state/action.h"
#include "state/work.h"

namespace tubewright {

/// A screen that another one was opened beside, and the page of it that was shown.
struct ScreenLeft {
    Screen screen;
    int page = 0;
    bool operator==(const ScreenLeft&) const = default;
};

/// Half-done things of the screen that are nobody's record: undo and the book leave them alone.
struct Looks {
    Screen screen = Screen::shelf;
    std::vector<ScreenLeft> came_from;  ///< for Back out of side screens
    int page = 0;
    std::string typed;               ///< on the keypad
    bool keypad = false;             ///< wanted in place of the usual choices
    std::optional<Reason> reason;    ///< chosen, not yet confirmed
    std::string kept_choice;
    std::optional<std::size_t> wrong_bend;  ///< chosen, where the reason asks for it
    std::optional<std::size_t> picked_bend; ///< on the order screen, for the arrows
    std::optional<std::size_t> retake;      ///< while an entry is proved: the reading to be taped once more
    std::size_t picked_slip = 0;            ///< and which of the slips is looked at
    std::size_t picked_way = 0;             ///< of the rows of a rescue
    std::size_t to_read = 0;                ///< which of what could be read besides is asked for
    std::int64_t record = 0;         ///< of the log of bends, looked at
    std::size_t leg = 0;             ///< of the finished tube, that is asked for
    bool large_picture = false;      ///< of the line being entered, in place of all else
    std::optional<StockTube> tube;   ///< of the rack, looked at
    std::optional<PieceNumber> piece;  ///< and of it
    std::optional<RackAsk> rack_ask; ///< on its screen
    std::string rack_choice;         ///< answered before it: the size of a tube new to the rack, the kind of what comes in, what a price is for
    std::optional<EndOfLine> end;    ///< that is asked about: where it goes
    FiguresBy figures = FiguresBy::reason;
    std::string notice;              ///< one sentence that waits to be read
    std::string good_news;           ///< the notice, where nothing has to be done about it
    bool operator==(const Looks&) const = default;
};

/// How the book is doing.
enum class BookStanding { not_read, open, refused, without };

/// What is known of another order for what is left of a cut tube, once something is in the way of the settled one.
struct RestOrder {
    std::int64_t question = 0;       ///< answers carry it; 0: never asked
    bool looking = false;
    double share = 0;
    std::optional<SetUp> set_up;     ///< as it was asked
    std::vector<Placing> begun;
    Springback springback;
    std::shared_ptr<const OrderVerdict> verdict;
};

/// What is known of the best order for one line.
struct LineOrder {
    std::int64_t question = 0;       ///< answers carry it; 0: never asked
    bool looking = false;
    double share = 0;                ///< of the looking
    std::optional<SetUp> set_up;     ///< as it was asked
    std::vector<std::size_t> opening;
    Springback springback;           ///< of the sheet that was looked at
    std::shared_ptr<const OrderVerdict> verdict;
    std::shared_ptr<const HandFacts> by_hand;  ///< where the verdict is on an order by hand
    std::optional<EndsWithin> best_ends;       ///< of the best order, once that has been found for this set-up
    std::int64_t best_question = 0;  ///< asked for best_ends alone, beside an order by hand; 0: not being asked
    /// The bender's card was changed while this line's tube was cut. Not kept in the book: switched on again, the program looks
    /// at the bends to come with the card as it is, and says what is in the way; only that the card was another is forgotten.
    bool remeasured = false;
    RestOrder rest = {};
};

/// A bender card being changed. It is nobody's record until it is kept.
struct CardEdit {
    Bender bender;
    std::vector<Bender> past;            ///< for undo on its screen, oldest first
    std::optional<std::size_t> solid;    ///< whose numbers are shown
    std::string figure;                  ///< being typed; empty: none
    bool swung = false;                  ///< the picture's lever
    bool kept = false;                   ///< since the last change
    bool operator==(const CardEdit&) const = default;
};

struct Learning;
struct RescueLook;

/// A bender being learned. What was measured stands in the book; this is where on the way the person is, and what follows.
struct Learn {
    std::optional<PieceSpot> again;      ///< a reading that is taken once more
    bool more = false;                   ///< choosing what to bend next
    bool other_ink = false;              ///< choosing one more line to ink
    bool readings = false;               ///< they are shown
    std::size_t picked = 1;              ///< which row of the result is drawn: the radius, or a line from 1 on
    std::shared_ptr<const Learning> learning;  ///< none while no piece is measured to the end
};

/// A job that is planned with the open one, and what its lines are cut to; nothing where that can't be worked out.
struct PlannedJob {
    PlanJob of;
    std::vector<std::optional<Length>> cuts;
};

/// What is known of the cutting plan. It is worked out anew whenever what it was asked for is no longer so.
struct PlanLook {
    std::int64_t question = 0;       ///< answers carry it
    bool looking = false;
    double share = 0;
    std::vector<TubeToCut> asked;
    std::shared_ptr<const std::vector<TubeCut>> found;  ///< for `asked`, once it is
    std::vector<PlannedJob> others;  ///< jobs that are planned with the open one
};

struct State {
    // Written out in one place: each file that copies a state would make all of this again.
    State();
    State(const State&);
    State(State&&) noexcept;
    State& operator=(const State&);
    State& operator=(State&&) noexcept;
    ~State();

    Checklists checklists;           ///< given at start, never changed
    std::string day;
    std::vector<ShelfEntry> shelf;
    std::string job_id, job_path;
    std::optional<Job> job;
    std::vector<Sheet> sheets;       ///< one for each line of the job; worked out when job or choice changes
    std::vector<LineOrder> orders;   ///< one for each sheet
    std::vector<std::shared_ptr<const SpringbackState>> springbacks;  ///< one for each sheet: what the log of bends says of it
    Hand hand;                       ///< and of the hand
    std::int64_t next_question = 1;
    std::optional<std::size_t> line; ///< which line is in hand
    Work work;
    std::vector<UndoStep> past, future;  ///< for undo and redo; oldest and nearest first
    std::int64_t last_undo_number = 0;
    std::map<std::string, std::string> material_names;  ///< by id; given at start, never changed
    std::vector<Material> materials; ///< given at start, never changed
    std::string bend_folder;         ///< of the files that bends can be brought in from, and what lies in it
    std::vector<std::string> bend_files;
    Offers offers;                   ///< given at start, never changed
    std::optional<Entry> entry;      ///< a job being entered
    std::shared_ptr<const Sheet> entry_sheet;  ///< of what is entered of the line in hand, as far as it can be worked out
    std::shared_ptr<const Proving> proving;    ///< of that line, while its entry is proved
    ProofStanding entry_proof = ProofStanding::none;  ///< of that line
    std::vector<ProofStanding> proofs;         ///< one for each line of the job
    std::shared_ptr<const Sheet> entry_try;    ///< the same with the turn that the finger shows, while it shows one
    std::shared_ptr<const Sheet> entry_was;    ///< before its tube or bender was changed, until anything else is
    std::vector<std::optional<Remedy>> entry_remedies;  ///< one for each finding of entry_sheet
    Settings settings;
    double screen_px_per_mm = 0;
    BookStanding book = BookStanding::not_read;
    std::string book_sentence;
    bool book_in_use = false;        ///< refused only because another program has it open
    PlanLook plan;
    std::string backup_folder;       ///< and what lies in it
    std::vector<BackupFile> backups;
    std::optional<CardEdit> card;
    std::optional<Learn> learn;
    std::shared_ptr<const RescueLook> rescue;  ///< how the tube in hand can be saved, once somebody asks; forgotten when anything changes that it came from
    std::map<std::string, Bender> shipped_cards;  ///< by id; given at start, never changed
    std::set<std::string> own_cards; ///< ids of benders whose card is the user's own
    Looks looks;
};

// --- what must happen outside
struct ReadShelf { bool operator==(const ReadShelf&) const = default; };
struct ReadJob { std::string path; std::string line = {}; bool operator==(const ReadJob&) const = default; };  ///< `line` to be opened
struct SaveWork { bool operator==(const SaveWork&) const = default; };      ///< state.work, in one transaction
struct SaveSettings { bool operator==(const SaveSettings&) const = default; };
struct OpenFreshBook { bool operator==(const OpenFreshBook&) const = default; };  ///< beside the refused one, which stays
/// The best order for that line's sheet as it stands now; the answer is OrderIs with this question. `free`: whatever the person
/// asked for. `rest`: of what is left of its cut tube.
struct FindOrder { std::int64_t question; std::size_t line; bool free = false; bool rest = false; bool operator==(const FindOrder&) const = default; };
struct StopFinding { std::int64_t question; bool operator==(const StopFinding&) const = default; };
struct ReadDraft { std::string path; std::string prove = {}; bool operator==(const ReadDraft&) const = default; };  ///< `prove`: the line whose entry is to be proved
/// Whole and at once; the answer is DraftKept. `shown` is worked out for the screen.
struct KeepDraft { std::string path; Draft job; std::optional<Draft> shown; bool operator==(const KeepDraft&) const = default; };
struct ReadPointFiles { bool operator==(const ReadPointFiles&) const = default; };  ///< the answer is PointFilesAre
struct ReadPoints { std::string file; Unit unit; bool operator==(const ReadPoints&) const = default; };  ///< the answer is PointsRead or PointsTold
/// Under a name that no file has yet, made of this one; the answer is PointsTold.
struct WritePointsFile { std::string name; Unit unit; std::vector<MeasuredPoint> points; bool operator==(const WritePointsFile&) const = default; };
struct SaveCard { Bender bender; Unit unit; bool operator==(const SaveCard&) const = default; };  ///< as the user's own; the answer is CardKept or NotSaved
struct DropCard { Bender shipped; bool operator==(const DropCard&) const = default; };  ///< the user's own is laid aside; the answer is the same
struct ReadBendFiles { bool operator==(const ReadBendFiles&) const = default; };  ///< the answer is BendFilesAre
struct ReadBends { std::string file; bool operator==(const ReadBends&) const = default; };  ///< the answer is BendsRead or BendsTold
/// Under a name that no file has yet; the answer is BendsTold.
struct WriteBendsFile { std::vector<LoggedBend> bends; bool operator==(const WriteBendsFile&) const = default; };
struct ReadPlanJob { std::string path; bool operator==(const ReadPlanJob&) const = default; };  ///< the answer is PlanJobRead or FilesTold
struct FindPlan { std::int64_t question; bool operator==(const FindPlan&) const = default; };   ///< for state.plan.asked; the answer is PlanIs
struct WriteTablesNow { bool operator==(const WriteTablesNow&) const = default; };             ///< for a spreadsheet, each under a name that no file has yet; the answer is FilesTold
struct WriteLinePaper { std::size_t line; bool operator==(const WriteLinePaper&) const = default; };  ///< the answer is FilesTold
struct WritePlanPaper { bool operator==(const WritePlanPaper&) const = default; };
struct ReadBackups { bool operator==(const ReadBackups&) const = default; };                   ///< the answer is BackupsAre
struct WriteBackup { bool operator==(const WriteBackup&) const = default; };                   ///< the answer is FilesTold and BackupsAre
struct ReadBackup { std::string name; bool operator==(const ReadBackup&) const = default; };   ///< everything is as it was then; the answer is FilesTold
using Request = std::variant<ReadPlanJob, FindPlan, WriteTablesNow, WriteLinePaper, WritePlanPaper, ReadBackups, WriteBackup, ReadBackup, ReadBendFiles, ReadBends, WriteBendsFile, ReadDraft, KeepDraft, ReadPointFiles, ReadPoints, WritePointsFile, ReadShelf, ReadJob, SaveWork, SaveSettings, OpenFreshBook, FindOrder, StopFinding, SaveCard, DropCard>;

struct StateStep {
    State state;
    std::vector<Request> requests;
};

/// The state after the action, and what has to be done outside. Pure: no clock, no disk. An action
/// that makes no sense now changes nothing.
StateStep apply(State state, const Action& action);

/// Which tubes share a stick: same diameter, wall and material.
std::string tube_key(const Tube& tube);

/// Key of a line's work: job id and line name.
std::string line_key(const std::string& job_id, const std::string& line_name);

/// The work of the line in hand; a fresh one where nothing has been done yet. A line is in hand.
LineWork work_in_hand(const State& state);

/// Whether undo or redo has something to put back. What was done to another job stays out of reach while
/// this one is open: nobody would see it change.
bool can_undo(const State& state);
bool can_redo(const State& state);

/// What is seen of the line being entered, or null.
const Sheet* entry_in_sight(const State& state);

/// The unit to show: the reader's choice, else the job's, else inch.
Unit reader_unit(const State& state);

}  // namespace tubewright
