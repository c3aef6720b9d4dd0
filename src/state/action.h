#pragma once
// Everything a finger can do and everything the world reports, as data.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "base/quantity.h"
#include "base/words.h"
#include "bench/bender.h"
#include "bench/draft.h"
#include "bench/line.h"
#include "bench/ordered.h"
#include "bench/remedy.h"
#include "state/entry.h"
#include "bench/hand_order.h"
#include "state/work.h"
#include "stock/cutting_plan.h"

namespace tubewright {

/// One job file on the shelf. `trouble` is the one sentence that says why it can't be opened.
struct ShelfEntry {
    std::string id;       ///< the file's name without folder and ending; the key of its work
    std::string path;
    std::string name;
    std::vector<std::string> lines;
    std::string trouble;
    std::vector<int> quantities = {};  ///< pieces asked of each line
    bool unfinished = false;           ///< it can't be bent yet; to touch it is to go on with entering it
    bool operator==(const ShelfEntry&) const = default;
};

/// One reading of a piece; `ink` counts its inks.
struct PieceSpot {
    std::int64_t piece;
    PieceStep step;
    std::size_t ink = 0;
    bool operator==(const PieceSpot&) const = default;
};

enum class Screen { shelf, lines, line, bench, wrong, scrap, settings, stance, stock, stick_length, order, card, draft, ask, route, word, prove, later, learn, bends, bend, bends_more, bend_files, hand, legs, leg, rescue, rescue_more, rescue_read, rack, rack_tube, rack_piece, rack_ask, plan, plan_jobs, buy, joints, joint, shop_rules, figures, keep_safe };

/// What the rack's screens ask for: a choice, a number, or letters.
enum class RackAsk { size, material, kind, length, straighten, place, lot, price, saw, keep, straighten_cost, price_of, practice };
/// How the figures are added up.
enum class FiguresBy { reason, line, tube, week, bends };

/// A tube that something is to be cut of, as the search for a plan sees it.
struct TubeToCut {
    StockTube tube;
    CuttingQuestion question;
    bool operator==(const TubeToCut&) const = default;
};
/// And what was found.
struct TubeCut {
    TubeToCut asked;
    PlanAnswer answer;
};
/// A job that a plan takes in besides the open one.
struct PlanJob {
    std::string id, path;
    Job job;
    bool operator==(const PlanJob&) const = default;
};
/// One backup that lies in the user's folder.
struct BackupFile {
    std::string name, day;
    int number = 1;  ///< of its day
    bool operator==(const BackupFile&) const = default;
};

// --- what a finger does
struct GoTo { Screen screen; bool operator==(const GoTo&) const = default; };   ///< shelf, lines, scrap, settings, stance, stock, stick_length, order, card, later, bends, bends_more, bend_files, hand, legs, rescue, rescue_more
struct OpenJob { std::string path; bool operator==(const OpenJob&) const = default; };
struct OpenLine { std::string name; bool operator==(const OpenLine&) const = default; };
struct Next { bool operator==(const Next&) const = default; };                  ///< the main button of the bench
struct Back { bool operator==(const Back&) const = default; };
struct Tick { std::string id; bool operator==(const Tick&) const = default; };  ///< on and off
struct LeaveForLater { std::string id; bool operator==(const LeaveForLater&) const = default; };  ///< a tick's other answer, on and off
struct TickLater { LeftForLater left; bool operator==(const TickLater&) const = default; };      ///< of a finished piece, on and off
struct TurnPage { int by; bool operator==(const TurnPage&) const = default; };
struct Key { std::string key; bool operator==(const Key&) const = default; };   ///< keypad: "0".."9", ".", "1/4" "1/2" "3/4", "clear", "back";
                                                                                ///< also eighths, "+1/16" and "+1/32" on top of them, and "keypad" to have it
struct PassCheck { bool operator==(const PassCheck&) const = default; };
struct PullAgain { bool lever_was_there = false; bool operator==(const PullAgain&) const = default; };
struct KeepBend { bool lever_was_there = false; bool operator==(const KeepBend&) const = default; };
struct WentWrong { bool operator==(const WentWrong&) const = default; };        ///< opens the question, changes nothing
struct ChooseReason { Reason reason; bool operator==(const ChooseReason&) const = default; };
struct ChooseKept { std::string choice; bool operator==(const ChooseKept&) const = default; };  ///< id of one of the offered lengths
struct ChooseBend { std::size_t bend; bool operator==(const ChooseBend&) const = default; };    ///< which one was the wrong one
struct ConfirmScrap { bool operator==(const ConfirmScrap&) const = default; };
struct Cancel { bool operator==(const Cancel&) const = default; };
struct Undo { bool operator==(const Undo&) const = default; };
struct Redo { bool operator==(const Redo&) const = default; };
struct NewStick { Length length; bool operator==(const NewStick&) const = default; };
struct TakeOffcut { PieceNumber piece; bool operator==(const TakeOffcut&) const = default; };  ///< a length on the rack becomes the one that is cut from
struct LookAtRescue { bool operator==(const LookAtRescue&) const = default; };  ///< can the tube be saved? takes up to a twentieth of a second
struct PickWay { std::size_t row; bool operator==(const PickWay&) const = default; };          ///< one of those offered is looked at; where the bend can be pulled again that is the first
struct TakeRescue { std::size_t way; bool operator==(const TakeRescue&) const = default; };    ///< one of those offered: the tube is made to it from now on
struct AskReading { std::size_t which; bool operator==(const AskReading&) const = default; };  ///< of what could be read besides, so that the ends are known better
struct TurnIs { bool right; bool operator==(const TurnIs&) const = default; };                 ///< as typed, to that side of the leg before
struct DropReading { std::size_t which; bool operator==(const DropReading&) const = default; };  ///< of those taken so: the turns first, then the tapes
struct AnotherPiece { bool operator==(const AnotherPiece&) const = default; };
struct SetUnit { std::optional<Unit> unit; bool operator==(const SetUnit&) const = default; };
struct SetTape { int denominator; bool operator==(const SetTape&) const = default; };
struct SetTheme { Theme theme; bool operator==(const SetTheme&) const = default; };
struct SetScale { double px_per_mm; bool operator==(const SetScale&) const = default; };
struct ChooseSetUp { SetUp set_up; bool operator==(const ChooseSetUp&) const = default; };
struct ChooseMark { std::string mark; bool operator==(const ChooseMark&) const = default; };
struct PinFirst { std::size_t bend; bool operator==(const PinFirst&) const = default; };       ///< this bend first, or no longer
struct PickBend { std::size_t bend; bool operator==(const PickBend&) const = default; };       ///< the one that the arrows move
struct MoveBend { std::size_t bend; int by; bool operator==(const MoveBend&) const = default; };  ///< that many places later in the order; earlier below 0
struct FreeOrder { bool operator==(const FreeOrder&) const = default; };        ///< the program chooses again
struct StopLooking { bool operator==(const StopLooking&) const = default; };    ///< for a better order; the plain one is taken
// --- a line being entered
struct NewJob { bool operator==(const NewJob&) const = default; };
struct ChangeJob { std::string path; bool operator==(const ChangeJob&) const = default; };     ///< opens its draft
struct AddLine { bool operator==(const AddLine&) const = default; };
struct OpenDraftLine { std::size_t line; bool operator==(const OpenDraftLine&) const = default; };
struct AskFor { Ask ask; bool operator==(const AskFor&) const = default; };                    ///< a question over again
struct Answer { std::string id; bool operator==(const Answer&) const = default; };             ///< to the question on the screen
struct PickCell { Cell cell; bool operator==(const PickCell&) const = default; };
struct GiveAngle { Angle angle; bool operator==(const GiveAngle&) const = default; };          ///< of the bend or turn in hand
struct GiveWay { MoveWay way; bool operator==(const GiveWay&) const = default; };              ///< the length typed goes that way
struct TurnTo { Angle clockwise; bool operator==(const TurnTo&) const = default; };            ///< the finger shows where the leg goes; nothing is taken yet
struct TakeRemedy { Remedy remedy; bool operator==(const TakeRemedy&) const = default; };      ///< one of those offered for the line as it stands
struct TurnPicture { Angle over, round; bool operator==(const TurnPicture&) const = default; };  ///< by that much further
struct EnlargePicture { bool operator==(const EnlargePicture&) const = default; };             ///< to the whole screen, and back
struct StraightOn { bool operator==(const StraightOn&) const = default; };                     ///< the picture as it stands of itself
struct AskWord { WordOf of; bool operator==(const AskWord&) const = default; };                ///< a name or note, in letters
struct TakeCellOut { bool operator==(const TakeCellOut&) const = default; };                   ///< the point or move in hand
struct PutPointIn { bool operator==(const PutPointIn&) const = default; };                     ///< halfway to the next one
struct WritePoints { bool operator==(const WritePoints&) const = default; };                   ///< the line's corners, as a table
struct SplitLeg { bool operator==(const SplitLeg&) const = default; };                         ///< a bend where the typed length ends
struct TakeBendOut { std::size_t bend; bool operator==(const TakeBendOut&) const = default; };
struct TakeLastOut { bool operator==(const TakeLastOut&) const = default; };                   ///< of the numbers entered
struct MirrorLine { bool operator==(const MirrorLine&) const = default; };
struct ReverseLine { bool operator==(const ReverseLine&) const = default; };
struct CopyLine { bool mirrored; bool operator==(const CopyLine&) const = default; };
struct TakeLineOut { bool operator==(const TakeLineOut&) const = default; };
struct FinishLine { bool operator==(const FinishLine&) const = default; };                     ///< all of it is entered
// --- its route proved with a tape
struct ProveLine { bool operator==(const ProveLine&) const = default; };                       ///< the line at the bench, or the one being entered
struct CantReach { bool operator==(const CantReach&) const = default; };                       ///< the two points that are asked for
struct EnoughReadings { bool operator==(const EnoughReadings&) const = default; };             ///< what do they say?
struct OneMoreReading { bool operator==(const OneMoreReading&) const = default; };
struct AnswerHand { std::optional<bool> left; bool operator==(const AnswerHand&) const = default; };  ///< none: the person can't tell
struct TapeAgain { std::size_t reading; bool operator==(const TapeAgain&) const = default; };
struct PickSlip { std::size_t slip; bool operator==(const PickSlip&) const = default; };       ///< of the proof's explanations
struct CorrectSlip { bool operator==(const CorrectSlip&) const = default; };                   ///< the one picked is taken back
struct ProveAfresh { bool operator==(const ProveAfresh&) const = default; };                   ///< without what was taped so far
// --- a bender's card
struct PickSolid { std::size_t solid; bool operator==(const PickSolid&) const = default; };     ///< of the card's body: its numbers come into sight
struct PickFigure { std::string id; bool operator==(const PickFigure&) const = default; };      ///< a number of the card: the keypad comes
struct TakeFigure { bool operator==(const TakeFigure&) const = default; };      ///< what was typed becomes the card's number
struct SwingCard { bool operator==(const SwingCard&) const = default; };        ///< the picture's lever, there and back
struct TakeShipped { bool operator==(const TakeShipped&) const = default; };    ///< every number of the card as it came, until kept or undone
struct LearnBender { bool operator==(const LearnBender&) const = default; };                   ///< from its card, from pieces that are bent and taped
struct StartPiece { Angle aim; bool operator==(const StartPiece&) const = default; };          ///< another one, to be bent so far
struct PutInk { std::string mark; bool operator==(const PutInk&) const = default; };           ///< on the piece in hand, for this line of the bender
struct OtherInk { bool operator==(const OtherInk&) const = default; };                         ///< one more line of the bender, and back
struct NameMark { bool operator==(const NameMark&) const = default; };                         ///< a line that the card does not have, in letters
struct MorePieces { bool operator==(const MorePieces&) const = default; };                     ///< what one more would buy, and back
struct ShowReadings { bool operator==(const ShowReadings&) const = default; };                 ///< of all pieces, and back
struct ReadAgain { PieceSpot spot; bool operator==(const ReadAgain&) const = default; };
struct DropPiece { std::int64_t piece; bool operator==(const DropPiece&) const = default; };   ///< with all its readings
struct PickLearned { std::size_t row; bool operator==(const PickLearned&) const = default; };  ///< of the result: drawn and explained
struct PutOnCard { bool operator==(const PutOnCard&) const = default; };                       ///< what was learned, as changes still to be kept
struct KeepCard { bool operator==(const KeepCard&) const = default; };          ///< as one's own
// --- what the shop's own bends say
struct PickRecord { std::int64_t id; bool operator==(const PickRecord&) const = default; };     ///< one bend of the log comes into sight
struct LeaveRecordOut { std::int64_t id; bool operator==(const LeaveRecordOut&) const = default; };  ///< and put it back
struct RecordIsRight { std::int64_t id; bool operator==(const RecordIsRight&) const = default; };    ///< of a doubted one: it was measured again
struct LeaveOutOfHand { std::int64_t id; bool operator==(const LeaveOutOfHand&) const = default; };   ///< a turn or a leg that was measured, and back in
struct AskLeg { std::size_t leg; bool operator==(const AskLeg&) const = default; };                   ///< of the bent tube: what the tape reads
struct NewTube { bool operator==(const NewTube&) const = default; };            ///< another delivery of the line's tube is bent from now on
struct ForgetBends { bool operator==(const ForgetBends&) const = default; };    ///< every record of the line's bender and tube
struct WriteBends { bool operator==(const WriteBends&) const = default; };      ///< the whole log, as a file
struct BringBends { std::string file; bool operator==(const BringBends&) const = default; };
struct ReorderRest { bool operator==(const ReorderRest&) const = default; };    ///< of a cut tube: the other order that was found for what is left
struct LeverHasMoved { bool operator==(const LeverHasMoved&) const = default; };    ///< for the bend in hand, before another order of the rest was offered
struct LookAgain { bool operator==(const LookAgain&) const = default; };        ///< after the looking was stopped
struct StartFreshBook { bool operator==(const StartFreshBook&) const = default; };
struct GoOnWithoutBook { bool operator==(const GoOnWithoutBook&) const = default; };
struct Dismiss { bool operator==(const Dismiss&) const = default; };            ///< a notice has been read

// --- the rack, and what is cut from it
struct ShowTube { StockTube tube; bool operator==(const ShowTube&) const = default; };         ///< what lies there of it
struct ShowPiece { PieceNumber piece; bool operator==(const ShowPiece&) const = default; };    ///< one length on the rack
struct AskRack { RackAsk ask; bool operator==(const AskRack&) const = default; };
struct AskPriceOf { std::string item; bool operator==(const AskPriceOf&) const = default; };   ///< of what is to be bought, by buy_key()
struct AnswerRack { std::string id; bool operator==(const AnswerRack&) const = default; };     ///< one of the choices on the screen
struct OneMoreLike { PieceNumber piece; bool operator==(const OneMoreLike&) const = default; };  ///< came in with it
struct BinPiece { PieceNumber piece; bool missing; bool operator==(const BinPiece&) const = default; };  ///< all of it; or it is not there
struct BinShortEnds { bool operator==(const BinShortEnds&) const = default; };                 ///< of the tube looked at, what is not worth keeping
struct TakeEntryBack { std::size_t entry; bool operator==(const TakeEntryBack&) const = default; };  ///< of the ledger
struct PutOnRack { PieceNumber piece; bool operator==(const PutOnRack&) const = default; };    ///< one that was cut for a line which knows nothing of it
struct SwitchPractice { bool operator==(const SwitchPractice&) const = default; };             ///< on and off
struct SwitchSpare { bool operator==(const SwitchSpare&) const = default; };
struct TakeIntoPlan { std::string path; bool operator==(const TakeIntoPlan&) const = default; };  ///< a job of the shelf, and out again
struct AskJoint { EndOfLine of; bool operator==(const AskJoint&) const = default; };           ///< where it goes
struct GoesInto { std::optional<Joint> joint; bool operator==(const GoesInto&) const = default; };  ///< the end that is asked about; none: a port that is there
struct ShowFigures { FiguresBy by; bool operator==(const ShowFigures&) const = default; };
struct WriteTables { bool operator==(const WriteTables&) const = default; };                   ///< scrap, rack and ledger, for a spreadsheet
struct PrintLine { bool operator==(const PrintLine&) const = default; };                       ///< sheet, strip and gauges of the line in hand
struct PrintPlan { bool operator==(const PrintPlan&) const = default; };                       ///< cut list and buy list
struct MakeBackup { bool operator==(const MakeBackup&) const = default; };
struct RestoreBackup { std::string name; bool operator==(const RestoreBackup&) const = default; };

// --- what the world reports
struct DayIs { std::string day; bool operator==(const DayIs&) const = default; };
struct ScreenIs { double px_per_mm; bool operator==(const ScreenIs&) const = default; };  ///< as the monitor says of itself
struct ShelfRead { std::vector<ShelfEntry> entries; bool operator==(const ShelfRead&) const = default; };
struct JobRead { std::string id; std::string path; Job job; std::string line = {}; bool operator==(const JobRead&) const = default; };
struct JobRefused { std::string path; std::string sentence; bool operator==(const JobRefused&) const = default; };
struct BookRead { Work work; Settings settings; std::vector<UndoStep> past = {}; bool operator==(const BookRead&) const = default; };
struct BookRefused { std::string sentence; bool in_use = false; bool operator==(const BookRefused&) const = default; };  ///< could not be opened; untouched
struct OrderShare { std::int64_t question; double share; bool operator==(const OrderShare&) const = default; };
struct OffersAre { Offers offers; bool operator==(const OffersAre&) const = default; };
struct DraftRead { std::string path; Draft job; std::string prove = {}; bool operator==(const DraftRead&) const = default; };  ///< `prove`: a line whose entry is to be proved
/// The draft in hand is on the disk, in `path`; `sentence` says what the person should know about that. `line`
/// is what can be worked out of the line in hand, or `trouble` why nothing can.
struct DraftKept { std::string path, sentence; std::optional<Line> line; std::string trouble; bool operator==(const DraftKept&) const = default; };
struct PointFilesAre { std::string folder; std::vector<PointsFile> files; bool operator==(const PointFilesAre&) const = default; };
struct PointsRead { std::string file; Unit unit; std::vector<MeasuredPoint> points; bool operator==(const PointsRead&) const = default; };
/// What came of reading or writing points, where that is no list of points: one sentence.
struct PointsTold { std::string sentence; bool operator==(const PointsTold&) const = default; };
struct BendFilesAre { std::string folder; std::vector<std::string> files; bool operator==(const BendFilesAre&) const = default; };
struct BendsRead { std::string file; std::vector<LoggedBend> bends; bool operator==(const BendsRead&) const = default; };
struct BendsTold { std::string sentence; bool operator==(const BendsTold&) const = default; };  ///< what came of reading or writing them
struct OrderIs { std::int64_t question; std::shared_ptr<const OrderVerdict> verdict; std::shared_ptr<const HandFacts> by_hand = nullptr; bool operator==(const OrderIs&) const = default; };
/// The card is on disk and in force, as the user's own or the shipped one again; the open job as it reads with it.
struct CardKept { Bender bender; bool own; std::optional<Job> job; bool operator==(const CardKept&) const = default; };
struct PlanJobRead { PlanJob job; bool operator==(const PlanJobRead&) const = default; };
struct PlanIs { std::int64_t question; std::shared_ptr<const std::vector<TubeCut>> found; bool operator==(const PlanIs&) const = default; };
struct BackupsAre { std::string folder; std::vector<BackupFile> files; bool operator==(const BackupsAre&) const = default; };
struct FilesTold { std::string sentence; bool good = false; bool operator==(const FilesTold&) const = default; };  ///< what came of writing files for the person
struct NotSaved { std::string sentence; bool operator==(const NotSaved&) const = default; };

/// Half of them stand in a variant of their own: what a compiler does for one grows with its square.
using RareAction = std::variant<LearnBender, StartPiece, PutInk, OtherInk, NameMark, MorePieces, ShowReadings, ReadAgain, DropPiece, PickLearned, PutOnCard,
                                PickRecord, LeaveRecordOut, RecordIsRight, NewTube, ForgetBends, WriteBends, BringBends, BendFilesAre, BendsRead, BendsTold, LeaveOutOfHand, AskLeg, PickWay, AskReading, TurnIs, DropReading,
                                ProveLine, CantReach, EnoughReadings, OneMoreReading, AnswerHand, TapeAgain, PickSlip, CorrectSlip, ProveAfresh,
                                ShowTube, ShowPiece, AskRack, AskPriceOf, AnswerRack, OneMoreLike, BinPiece, BinShortEnds, TakeEntryBack, PutOnRack, SwitchPractice, SwitchSpare, TakeIntoPlan, AskJoint, GoesInto, ShowFigures, WriteTables, PrintLine, PrintPlan,
                                MakeBackup, RestoreBackup, PlanJobRead, PlanIs, BackupsAre, FilesTold>;
struct Rare {
    explicit Rare(RareAction action) : is(std::move(action)) {}  // explicit: else each action is tried for being one of these
    RareAction is;
    bool operator==(const Rare&) const = default;
};
template <class T, class Variant>
inline constexpr bool is_in_variant = false;
template <class T, class... Ts>
inline constexpr bool is_in_variant<T, std::variant<Ts...>> = (std::is_same_v<T, Ts> || ...);

using AnyAction = std::variant<GoTo, OpenJob, OpenLine, Next, Back, Tick, LeaveForLater, TickLater, TurnPage, Key, PassCheck, PullAgain, KeepBend,
                            WentWrong, ChooseReason, ChooseKept, ChooseBend, ConfirmScrap, Cancel, Undo, Redo, NewStick, TakeOffcut, LookAtRescue, TakeRescue, AnotherPiece,
                            SetUnit, SetTape, SetTheme, SetScale, ChooseSetUp, ChooseMark, PinFirst, PickBend, MoveBend, FreeOrder, StopLooking, LookAgain, LeverHasMoved, ReorderRest, PickSolid, PickFigure, TakeFigure, SwingCard, TakeShipped, KeepCard, NewJob, ChangeJob, AddLine, OpenDraftLine, AskFor, Answer, PickCell, GiveAngle, GiveWay, TurnTo, TakeRemedy, TurnPicture, EnlargePicture, StraightOn, AskWord, TakeCellOut, PutPointIn, WritePoints, SplitLeg,
                            TakeBendOut, TakeLastOut, MirrorLine, ReverseLine, CopyLine, TakeLineOut, FinishLine, OffersAre, DraftRead, DraftKept, PointFilesAre, PointsRead, PointsTold, StartFreshBook, GoOnWithoutBook,
                            Dismiss, DayIs, ScreenIs, ShelfRead, JobRead, JobRefused, BookRead, BookRefused, OrderShare, OrderIs, CardKept, NotSaved, Rare>;

/// One of these. Its copies are made in one place (action.cpp) and not in every file that has a button: an action
/// can carry a whole job, and making those copies over and over was half the time to build.
struct Action : AnyAction {
    using AnyAction::AnyAction;
    template <class T>
        requires is_in_variant<T, RareAction>
    Action(T rare) : AnyAction(std::in_place_type<Rare>, RareAction(std::move(rare))) {}
    Action();
    Action(const Action&);
    Action(Action&&) noexcept;
    Action& operator=(const Action&);
    Action& operator=(Action&&) noexcept;
    ~Action();
    friend bool operator==(const Action& one, const Action& other);
};

}  // namespace tubewright
