// Which function takes which action. What a finger does waits while a refused book asks how to go on.

#include <algorithm>
#include <cmath>

#include "state/doing.h"
#include "state/joints.h"

namespace tubewright {
namespace {

constexpr double least_px_per_mm = 1, most_px_per_mm = 40;

void take(Doing& d, const GoTo& a) { go_to(d, a.screen); }
void take(Doing& d, const OpenJob& a) {
    for (const ShelfEntry& entry : d.state.shelf)
        if (entry.path == a.path && entry.unfinished) return d.requests.push_back(ReadDraft{a.path});
        else if (entry.path == a.path && entry.trouble.empty()) return d.requests.push_back(ReadJob{a.path});
}
void take(Doing& d, const OpenLine& a) { open_line(d, a.name); }
void take(Doing& d, const Next&) { press_next(d); }
void take(Doing& d, const Back&) { press_back(d); }
void take(Doing& d, const Tick& a) { tick(d, a.id); }
void take(Doing& d, const LeaveForLater& a) { leave_for_later(d, a.id); }
void take(Doing& d, const TickLater& a) { tick_later(d, a.left); }
void take(Doing& d, const TurnPage& a) { d.state.looks.page = std::clamp(d.state.looks.page + std::clamp(a.by, -1000, 1000), 0, 1000); }
void take(Doing& d, const Key& a) { press_key(d, a.key); }
void take(Doing& d, const PassCheck&) { pass_check(d); }
void take(Doing& d, const PullAgain& a) { pull_again(d, a.lever_was_there); }
void take(Doing& d, const KeepBend& a) { keep_bend(d, a.lever_was_there); }
void take(Doing& d, const WentWrong&) { open_question(d); }
void take(Doing& d, const ChooseReason& a) { choose_reason(d, a.reason); }
void take(Doing& d, const ChooseKept& a) { choose_kept(d, a.choice); }
void take(Doing& d, const ChooseBend& a) { choose_bend(d, a.bend); }
void take(Doing& d, const ConfirmScrap&) { confirm_scrap(d); }
void take(Doing& d, const Cancel&) { leave_question(d, true); }
void take(Doing& d, const Undo&) {
    if (d.state.looks.screen == Screen::card) undo_card(d);
    else if (d.state.looks.screen == Screen::learn) undo_learning(d);
    else if (!undo_entry(d)) undo(d);
}
void take(Doing& d, const Redo&) {
    if (d.state.looks.screen == Screen::learn) redo_learning(d);
    else if (d.state.looks.screen != Screen::card && !redo_entry(d)) redo(d);
}
void take(Doing& d, const NewStick& a) { new_stick(d, a.length); }
void take(Doing& d, const TakeOffcut& a) { take_offcut(d, a.piece); }
void take(Doing& d, const LookAtRescue&) { look_at_rescue(d); }
void take(Doing& d, const PickWay& a) { pick_way(d, a.row); }
void take(Doing& d, const TakeRescue& a) { take_rescue(d, a.way); }
void take(Doing& d, const AskReading& a) { ask_reading(d, a.which); }
void take(Doing& d, const TurnIs& a) { turn_is(d, a.right); }
void take(Doing& d, const DropReading& a) { drop_reading(d, a.which); }
void take(Doing& d, const AnotherPiece&) { another_piece(d); }

void take(Doing& d, const SetUnit& a) {
    Settings next = d.state.settings;
    next.unit = a.unit;
    change_settings(d, next);
    d.state.looks.typed.clear();  // what was typed was meant in the other unit
}
void take(Doing& d, const SetTape& a) {
    if (a.denominator != 16 && a.denominator != 32 && a.denominator != 64) return;
    Settings next = d.state.settings;
    next.tape_denominator = a.denominator;
    change_settings(d, next);
}
void take(Doing& d, const SetTheme& a) {
    Settings next = d.state.settings;
    next.theme = a.theme;
    change_settings(d, next);
}
void take(Doing& d, const SetScale& a) {
    if (!std::isfinite(a.px_per_mm)) return;
    Settings next = d.state.settings;
    next.px_per_mm = std::clamp(a.px_per_mm, least_px_per_mm, most_px_per_mm);
    change_settings(d, next);
}

/// Changes what is chosen for the bender of the line in hand.
template <class Change>
void choose_for_bender(Doing& d, Change change) {
    const Sheet* sheet = sheet_in_hand(d.state);
    if (!sheet) return;
    Work next = d.state.work;
    change(next.benders[sheet->line.bender.id], sheet->line.bender);
    change_work(d, std::move(next));
}
void take(Doing& d, const ChooseSetUp& a) {
    choose_for_bender(d, [&](BenchChoice& choice, const Bender&) { choice.set_up = a.set_up; });
}
void take(Doing& d, const ChooseMark& a) {
    choose_for_bender(d, [&](BenchChoice& choice, const Bender& bender) {
        for (const ReferenceMark& mark : bender.marks)
            if (mark.name == a.mark) choice.mark = a.mark;
    });
}

void take(Doing& d, const PinFirst& a) { pin_first(d, a.bend); }
void take(Doing& d, const PickBend& a) { pick_bend(d, a.bend); }
void take(Doing& d, const MoveBend& a) { move_bend(d, a.bend, a.by); }
void take(Doing& d, const FreeOrder&) { free_order(d); }
void take(Doing& d, const StopLooking&) { stop_looking(d); }
void take(Doing& d, const LookAgain&) { look_again(d); }
void take(Doing& d, const ReorderRest&) { reorder_rest(d); }
void take(Doing& d, const LeverHasMoved&) { lever_has_moved(d); }
void take(Doing& d, const OrderShare& a) { order_share(d, a); }
void take(Doing& d, const OrderIs& a) { order_is(d, a); }

void take(Doing& d, const NewJob&) { new_job(d); }
void take(Doing& d, const ChangeJob& a) { d.requests.push_back(ReadDraft{a.path}); }
void take(Doing& d, const AddLine&) { add_line(d); }
void take(Doing& d, const OpenDraftLine& a) { open_draft_line(d, a.line); }
void take(Doing& d, const AskFor& a) { ask_for(d, a.ask); }
void take(Doing& d, const Answer& a) { answer(d, a.id); }
void take(Doing& d, const PickCell& a) { pick_cell(d, a.cell); }
void take(Doing& d, const GiveAngle& a) { give_angle(d, a.angle); }
void take(Doing& d, const GiveWay& a) { give_way(d, a.way); }
void take(Doing& d, const TurnTo& a) { turn_to(d, a.clockwise); }
void take(Doing& d, const TakeRemedy& a) { take_remedy(d, a.remedy); }
void take(Doing& d, const TurnPicture& a) { turn_picture(d, {a.over, a.round}); }
void take(Doing& d, const EnlargePicture&) { enlarge_picture(d); }
void take(Doing& d, const StraightOn&) { straight_on(d); }
void take(Doing& d, const AskWord& a) { ask_word(d, a.of); }
void take(Doing& d, const TakeCellOut&) { take_cell_out(d); }
void take(Doing& d, const PutPointIn&) { put_point_in(d); }
void take(Doing& d, const WritePoints&) { write_points(d); }
void take(Doing& d, const PointFilesAre& a) { point_files_are(d, a); }
void take(Doing& d, const PointsRead& a) { points_read(d, a); }
void take(Doing& d, const PointsTold& a) { d.state.looks.notice = a.sentence; }
void take(Doing& d, const SplitLeg&) { split_leg(d); }
void take(Doing& d, const TakeBendOut& a) { take_bend_out(d, a.bend); }
void take(Doing& d, const TakeLastOut&) { take_last_out(d); }
void take(Doing& d, const MirrorLine&) { mirror_line(d); }
void take(Doing& d, const ReverseLine&) { reverse_line(d); }
void take(Doing& d, const CopyLine& a) { copy_line(d, a.mirrored); }
void take(Doing& d, const TakeLineOut&) { take_line_out(d); }
void take(Doing& d, const FinishLine&) { finish_line(d); }
void take(Doing& d, const ProveLine&) { prove_line(d); }
void take(Doing& d, const CantReach&) { cant_reach(d); }
void take(Doing& d, const EnoughReadings&) { enough_readings(d); }
void take(Doing& d, const OneMoreReading&) { one_more_reading(d); }
void take(Doing& d, const AnswerHand& a) { answer_hand(d, a.left); }
void take(Doing& d, const TapeAgain& a) { tape_again(d, a.reading); }
void take(Doing& d, const PickSlip& a) { pick_slip(d, a.slip); }
void take(Doing& d, const CorrectSlip&) { correct_slip(d); }
void take(Doing& d, const ProveAfresh&) { prove_afresh(d); }
void take(Doing& d, const OffersAre& a) { d.state.offers = a.offers; }
void take(Doing& d, const DraftRead& a) { draft_read(d, a); }
void take(Doing& d, const DraftKept& a) { draft_kept(d, a); }
void take(Doing& d, const PickSolid& a) { pick_solid(d, a.solid); }
void take(Doing& d, const PickFigure& a) { pick_figure(d, a.id); }
void take(Doing& d, const TakeFigure&) { take_figure(d); }
void take(Doing& d, const SwingCard&) { swing_card(d); }
void take(Doing& d, const TakeShipped&) { take_shipped(d); }
void take(Doing& d, const LearnBender&) { learn_bender_here(d); }
void take(Doing& d, const StartPiece& a) { start_piece(d, a.aim); }
void take(Doing& d, const PutInk& a) { put_ink(d, a.mark); }
void take(Doing& d, const OtherInk&) { other_ink(d); }
void take(Doing& d, const NameMark&) { name_mark(d); }
void take(Doing& d, const MorePieces&) { more_pieces(d); }
void take(Doing& d, const ShowReadings&) { show_readings(d); }
void take(Doing& d, const ReadAgain& a) { read_again(d, a.spot); }
void take(Doing& d, const DropPiece& a) { drop_piece(d, a.piece); }
void take(Doing& d, const PickLearned& a) { pick_learned(d, a.row); }
void take(Doing& d, const PutOnCard&) { put_on_card(d); }
void take(Doing& d, const KeepCard&) { keep_card(d); }
void take(Doing& d, const PickRecord& a) { pick_record(d, a.id); }
void take(Doing& d, const LeaveRecordOut& a) { leave_record_out(d, a.id); }
void take(Doing& d, const RecordIsRight& a) { record_is_right(d, a.id); }
void take(Doing& d, const LeaveOutOfHand& a) { leave_out_of_hand(d, a.id); }
void take(Doing& d, const AskLeg& a) { ask_leg(d, a.leg); }
void take(Doing& d, const NewTube&) { new_tube(d); }
void take(Doing& d, const ForgetBends&) { forget_bends(d); }
void take(Doing& d, const WriteBends&) { write_bends(d); }
void take(Doing& d, const BringBends& a) { bring_bends(d, a.file); }
void take(Doing& d, const BendFilesAre& a) { bend_files_are(d, a); }
void take(Doing& d, const BendsRead& a) { bends_read(d, a); }
void take(Doing& d, const BendsTold& a) { d.state.looks.notice = a.sentence; }
void take(Doing& d, const CardKept& a) { card_kept(d, a); }

void take(Doing& d, const ShowTube& a) { show_tube(d, a.tube); }
void take(Doing& d, const ShowPiece& a) { show_piece(d, a.piece); }
void take(Doing& d, const AskRack& a) { ask_rack(d, a.ask); }
void take(Doing& d, const AskPriceOf& a) { ask_rack(d, RackAsk::price_of, a.item); }
void take(Doing& d, const AnswerRack& a) { answer_rack(d, a.id); }
void take(Doing& d, const OneMoreLike& a) { one_more_like(d, a.piece); }
void take(Doing& d, const BinPiece& a) { bin_piece(d, a.piece, a.missing); }
void take(Doing& d, const BinShortEnds&) { bin_short_ends(d); }
void take(Doing& d, const TakeEntryBack& a) { take_entry_back(d, a.entry); }
void take(Doing& d, const PutOnRack& a) { put_on_rack(d, a.piece); }
void take(Doing& d, const SwitchPractice&) {
    ShopRules rules = d.state.work.rules;
    rules.practice = !rules.practice;
    change_rules(d, rules);
}
void take(Doing& d, const SwitchSpare&) {
    ShopRules rules = d.state.work.rules;
    rules.spare = !rules.spare;
    change_rules(d, rules);
}
void take(Doing& d, const TakeIntoPlan& a) { take_into_plan(d, a.path); }
void take(Doing& d, const PlanJobRead& a) { plan_job_read(d, a.job); }
void take(Doing& d, const PlanIs& a) { plan_is(d, a); }
void take(Doing& d, const AskJoint& a) { ask_joint(d, a.of); }
void take(Doing& d, const GoesInto& a) { goes_into(d, a.joint); }
void take(Doing& d, const ShowFigures& a) {
    d.state.looks.figures = a.by;
    d.state.looks.page = 0;
}
void take(Doing& d, const WriteTables&) { d.requests.push_back(WriteTablesNow{}); }
void take(Doing& d, const PrintLine&) {
    if (sheet_in_hand(d.state) && sheet_in_hand(d.state)->layout) d.requests.push_back(WriteLinePaper{*d.state.line});
}
void take(Doing& d, const PrintPlan&) {
    if (d.state.plan.found) d.requests.push_back(WritePlanPaper{});
}
void take(Doing& d, const MakeBackup&) { d.requests.push_back(WriteBackup{}); }
void take(Doing& d, const RestoreBackup& a) { restore_backup(d, a.name); }
void take(Doing& d, const BackupsAre& a) {
    d.state.backup_folder = a.folder;
    d.state.backups = a.files;
}
void take(Doing& d, const FilesTold& a) {
    d.state.looks.notice = a.sentence;
    if (a.good) d.state.looks.good_news = a.sentence;
}

void take(Doing& d, const StartFreshBook&) {
    if (d.state.book == BookStanding::refused) d.requests.push_back(OpenFreshBook{});
}
void take(Doing& d, const GoOnWithoutBook&) {
    if (d.state.book == BookStanding::refused) d.state.book = BookStanding::without;
}
void take(Doing& d, const Dismiss&) { d.state.looks.notice.clear(); }

void take(Doing& d, const DayIs& a) { d.state.day = a.day; }
void take(Doing& d, const ScreenIs& a) {
    if (std::isfinite(a.px_per_mm) && a.px_per_mm > 0) d.state.screen_px_per_mm = a.px_per_mm;
}
void take(Doing& d, const ShelfRead& a) { d.state.shelf = a.entries; }
void take(Doing& d, const JobRead& a) { job_read(d, a); }
void take(Doing& d, const JobRefused& a) {
    for (ShelfEntry& entry : d.state.shelf)
        if (entry.path == a.path) entry.trouble = a.sentence;
    d.state.looks.notice = a.sentence;
}
void take(Doing& d, const BookRead& a) { book_read(d, a); }
void take(Doing& d, const BookRefused& a) {
    d.state.book = BookStanding::refused;
    d.state.book_sentence = a.sentence;
    d.state.book_in_use = a.in_use;
}
void take(Doing& d, const NotSaved& a) { d.state.looks.notice = a.sentence; }

void take(Doing& d, const Rare& rare) {
    std::visit([&](const auto& a) { take(d, a); }, rare.is);
}

template <class That>
bool is_one(const Action& action) {
    if constexpr (!is_in_variant<That, RareAction>) return std::holds_alternative<That>(action);
    else {
        const auto* rare = std::get_if<Rare>(&action);
        return rare && std::holds_alternative<That>(rare->is);
    }
}

template <class... Those>
bool is_one_of(const Action& action) {
    return (is_one<Those>(action) || ...);
}

bool allowed_while_refused(const Action& action) {
    return is_one_of<StartFreshBook, GoOnWithoutBook, Dismiss, SetTheme, DayIs, ScreenIs, ShelfRead, JobRead, JobRefused, BookRead,
                     BookRefused, OrderShare, OrderIs, OffersAre, DraftRead, DraftKept, PointFilesAre, PointsRead, PointsTold, BendFilesAre, BendsTold, CardKept, NotSaved, PlanJobRead, PlanIs, BackupsAre, FilesTold>(action);
}

}  // namespace

StateStep apply(State state, const Action& action) {
    StateStep step{std::move(state), {}};
    if (step.state.book == BookStanding::refused && !allowed_while_refused(action)) return step;
    Doing doing{step.state, step.requests};
    std::visit([&](const auto& a) { take(doing, a); }, action);
    if (is_of_rescue(step.state.looks.screen) && !step.state.rescue) leave_rescue(step.state);
    if (step.state.looks.screen == Screen::joint && !(step.state.looks.end && end_by_key(step.state, *step.state.looks.end))) leave_beside(step.state);
    if (step.state.looks.screen == Screen::rack_piece && !piece_in_sight(step.state)) leave_beside(step.state);  // it is no longer there
    if (!is_one_of<OrderShare, OrderIs, PlanIs>(action)) keep_plan_asked(doing);
    return step;
}

}  // namespace tubewright
