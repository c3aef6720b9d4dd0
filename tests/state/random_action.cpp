#include "state/random_action.h"

#include <array>
#include <cmath>

#include "state/rescue_look.h"
#include "state/sample_state.h"

namespace tubewright {

Action random_action(std::mt19937& dice, const State& state) {
    const auto roll = [&](int below) { return std::uniform_int_distribution<int>(0, below - 1)(dice); };
    const auto tick = [&]() -> std::string {
        const auto list = sheet_in_hand(state) ? current_list(work_in_hand(state)) : std::nullopt;
        if (!list || roll(20) == 0) return "prepare-deburr";
        const auto items = tick_items(state, *list);
        for (const TickItem& item : items)
            if (!work_in_hand(state).ticks.contains(item.id)) return item.id;
        return items.empty() ? "" : items[static_cast<std::size_t>(roll(static_cast<int>(items.size())))].id;
    };
    const char* lines[] = {"axle crossover", "left rear", "too tight", "straight", "no such line"};
    const char* keys[] = {"0", "1", "4", "5", "6", "8", "9", ".", "1/4", "1/2", "clear", "back", "nonsense"};
    const char* kept[] = {"whole", "both", "end-a", "end-b", "none", "more than all"};
    if (state.looks.screen == Screen::wrong && roll(2) == 0) {  // rarely answered by chance alone
        if (!state.looks.reason) return ChooseReason{static_cast<Reason>(roll(9))};
        return state.looks.kept_choice.empty() ? Action{ChooseKept{kept[roll(6)]}} : Action{ConfirmScrap{}};
    }
    // A search that nobody answers keeps the line from being started: mostly it is answered.
    for (const LineOrder& order : state.orders)
        if (order.looking && roll(3) == 0) return OrderIs{order.question, std::make_shared<const OrderVerdict>(roll(4) == 0 ? OrderVerdict{} : find_order(state.sheets[static_cast<std::size_t>(&order - state.orders.data())], {order.opening, std::nullopt}))};
    for (std::size_t i = 0; i < state.orders.size(); ++i)
        if (const RestOrder& rest = state.orders[i].rest; rest.looking && roll(3) == 0) return OrderIs{rest.question, std::make_shared<const OrderVerdict>(look_for_order(state.sheets[i], {{}, {}, rest.begun}).verdict)};
    if (other_rest(state) && roll(3) == 0) return state.looks.screen != Screen::order ? Action{GoTo{Screen::order}} : roll(2) == 0 ? Action{LeverHasMoved{}} : Action{ReorderRest{}};
    if (state.looks.screen == Screen::order && roll(2) == 0) {
        const auto bend = static_cast<std::size_t>(roll(6));
        const Action actions[] = {PinFirst{bend}, MoveBend{bend, roll(7) - 3}, FreeOrder{}, StopLooking{}, LookAgain{}, PickBend{bend}};
        return actions[roll(6)];
    }
    if (state.looks.screen == Screen::card && roll(2) == 0) {
        const char* figures[] = {"radius", "hook", "mark-0", "no such number"};
        const Action actions[] = {PickFigure{figures[roll(4)]}, Key{keys[roll(13)]}, TakeFigure{}, SwingCard{}, KeepCard{}, PickSolid{static_cast<std::size_t>(roll(3))}, Key{"sign"}, Back{}, Back{}};
        return actions[roll(9)];
    }
    if (state.looks.screen == Screen::learn && roll(3) != 0) {
        const auto piece = piece_in_work(state);
        const std::int64_t id = piece ? piece->id : state.work.next_id - 1;
        const char* marks[] = {"0", "L", "own", ""};
        const Action actions[] = {Key{keys[roll(13)]}, Next{}, StartPiece{{std::array{45.0, 90.0, 180.0, 200.0}[static_cast<std::size_t>(roll(4))]}}, PutInk{marks[roll(4)]}, OtherInk{}, NameMark{}, MorePieces{}, ShowReadings{},
                                  ReadAgain{{id, static_cast<PieceStep>(roll(11)), static_cast<std::size_t>(roll(2))}}, DropPiece{id}, PickLearned{static_cast<std::size_t>(roll(4))}, PutOnCard{}, Back{}, Undo{}};
        return actions[roll(14)];
    }
    // A reading that is four over is rarely typed by chance.
    if (const Step* step = state.looks.screen == Screen::bench ? step_in_hand(state) : nullptr; step && work_in_hand(state).move == Move::check && !work_in_hand(state).last_reading && roll(4) != 0) {
        const std::string over = std::to_string(static_cast<int>(step->target.deg) + 4), &typed = state.looks.typed;
        if (typed == over) return Next{};
        return over.rfind(typed, 0) == 0 ? Key{over.substr(typed.size(), 1)} : Key{"clear"};
    }
    if (state.looks.screen == Screen::rescue && roll(3) != 0) {
        const auto row = static_cast<std::size_t>(roll(4));
        return roll(3) != 0 ? Action{TakeRescue{row / 2}} : roll(2) == 0 ? Action{PickWay{row}} : Action{GoTo{Screen::rescue_more}};
    }
    if (state.looks.screen == Screen::rescue_more && roll(4) != 0) {
        const auto which = static_cast<std::size_t>(roll(4));
        return roll(4) == 0 ? Action{DropReading{which}} : Action{AskReading{which}};
    }
    // What is foreseen, to a degree or a quarter of an inch, is rarely typed by chance.
    if (const ToRead* asked = reading_asked(state); asked && roll(6) != 0) {
        const bool turn = asked->what == ToRead::What::turn;
        const double foreseen = turn ? std::abs(asked->foreseen) : reader_unit(state) == Unit::mm ? asked->foreseen : asked->foreseen / 25.4;
        const std::string number = std::to_string(static_cast<int>(foreseen + 0.5)), &typed = state.looks.typed;
        if (typed == number) return turn ? Action{TurnIs{asked->foreseen > 0 || roll(8) == 0}} : Action{Next{}};
        return number.rfind(typed, 0) == 0 ? Key{number.substr(typed.size(), 1)} : Key{"clear"};
    }
    if (steps_to_save(state) && roll(work_in_hand(state).last_reading ? 2 : 4) == 0) return LookAtRescue{};
    if (state.looks.screen == Screen::card && roll(8) == 0) return LearnBender{};
    if (state.looks.screen == Screen::bends && roll(2) == 0 && !bends_in_hand(state).empty()) return PickRecord{bends_in_hand(state).front().check.record.id};
    if (state.looks.screen == Screen::bend && roll(2) == 0) return roll(2) == 0 ? Action{LeaveRecordOut{state.looks.record}} : Action{RecordIsRight{state.looks.record}};
    if (state.looks.screen == Screen::legs && roll(2) == 0) return AskLeg{static_cast<std::size_t>(roll(4))};
    if (state.looks.screen == Screen::leg && roll(2) == 0) return roll(2) == 0 ? Action{Key{keys[roll(13)]}} : Action{Next{}};
    if (state.looks.screen == Screen::hand && roll(2) == 0) return LeaveOutOfHand{state.work.leg_log.empty() ? 1 : state.work.leg_log.back().check.record.id};
    if (!legs_here(state).empty() && roll(6) == 0) return GoTo{roll(2) == 0 ? Screen::legs : Screen::hand};
    if (state.looks.screen == Screen::bends_more && roll(2) == 0) return roll(2) == 0 ? Action{NewTube{}} : Action{ForgetBends{}};
    if (state.looks.screen == Screen::prove && roll(2) == 0) {
        const Action actions[] = {Key{keys[roll(13)]}, Next{}, CantReach{}, EnoughReadings{}, OneMoreReading{}, AnswerHand{roll(2) == 0}, TapeAgain{static_cast<std::size_t>(roll(3))}, PickSlip{static_cast<std::size_t>(roll(4))}, CorrectSlip{}, ProveAfresh{}, Back{}};
        return actions[roll(11)];
    }
    if (state.looks.screen == Screen::rack && roll(4) == 0) return tubes_on_rack(*state.work.rack.ledger).empty() ? Action{AskRack{RackAsk::size}} : Action{ShowTube{tubes_on_rack(*state.work.rack.ledger).front()}};
    if (const Screen screen = state.looks.screen; (screen == Screen::rack_tube || screen == Screen::rack_piece || screen == Screen::rack_ask) && roll(3) == 0) {
        const PieceNumber piece{1 + roll(state.work.rack->next_number().n)};
        const Action actions[] = {AskRack{static_cast<RackAsk>(roll(13))}, AnswerRack{std::array{"0", "stick", "coil", "offcut", "steel", "7"}[static_cast<std::size_t>(roll(6))]}, Key{keys[roll(13)]}, Key{keys[roll(13)]}, Next{}, Next{}, ShowPiece{piece}, ShowPiece{piece},
                                  OneMoreLike{piece}, BinPiece{state.looks.piece.value_or(piece), roll(2) == 0}, BinShortEnds{}, TakeEntryBack{static_cast<std::size_t>(roll(1 + static_cast<int>(state.work.rack->entries.size())))}, TakeOffcut{piece}, SwitchSpare{}, Undo{}, Back{}, Back{}, PutOnRack{piece}};
        return actions[roll(18)];
    }
    if (state.looks.screen == Screen::joints && roll(2) == 0) return AskJoint{{line_key(state.job_id, lines[roll(5)]), roll(2) == 0 ? End::A : End::B}};
    if (state.looks.screen == Screen::joint && roll(4) != 0) return roll(4) == 0 ? Action{GoesInto{}} : Action{GoesInto{Joint{roll(2) == 0 ? JointKind::tee : JointKind::union_piece, 1 + roll(2)}}};
    if (is_of_rack(state.looks.screen) && roll(3) != 0) return roll(4) == 0 ? Action{OpenLine{lines[roll(5)]}} : Action{GoTo{Screen::bench}};
    if (roll(120) == 0) return GoTo{roll(3) == 0 ? Screen::joints : Screen::rack};
    switch (roll(46)) {
        case 0: return roll(12) == 0 ? GoTo{Screen::card} : GoTo{roll(8) == 0 ? Screen::later : roll(5) == 0 ? Screen::bends : roll(9) == 0 ? Screen::bends_more : static_cast<Screen>(roll(11))};
        case 1: return OpenJob{"jobs/trailer.json"};
        case 2: return OpenLine{lines[roll(5)]};
        case 3: case 4: case 5: case 6: case 7: case 8: case 9: case 10: return Next{};
        case 11: return Back{};
        case 12: case 13: case 14: case 15: case 16: case 17: case 18: return Tick{tick()};
        case 19: return roll(3) == 0 ? Action{LeaveForLater{tick()}} : roll(3) == 0 ? Action{TickLater{{roll(3), "hand-over-leak"}}} : Action{TurnPage{roll(7) - 3}};
        case 20: case 21: case 22: case 23: return Key{keys[roll(13)]};
        case 24: return PassCheck{};
        case 25: return PullAgain{};
        case 26: return KeepBend{roll(2) == 0};
        case 27: case 28: return WentWrong{};
        case 29: return ChooseReason{static_cast<Reason>(roll(9))};
        case 30: return roll(2) == 0 ? Action{ChooseKept{kept[roll(6)]}} : Action{ChooseBend{static_cast<std::size_t>(roll(3))}};
        case 31: return ConfirmScrap{};
        case 32: return roll(3) == 0 ? Action{Cancel{}} : Action{Redo{}};
        case 33: return Undo{};
        case 34: return NewStick{inches(roll(100) - 10)};
        case 35: return TakeOffcut{{1 + roll(12)}};
        case 36: return AnotherPiece{};
        case 37: return SetUnit{roll(2) == 0 ? Unit::inch : Unit::mm};
        case 38: return SetTape{roll(2) == 0 ? 32 : 7};
        case 39: return SetScale{roll(100) - 20.0};
        case 40: return ChooseSetUp{{static_cast<HookHand>(roll(2)), static_cast<Swing>(roll(4))}};
        case 41: return ChooseMark{roll(2) == 0 ? "L" : "R"};
        case 42: return SetTheme{roll(2) == 0 ? Theme::light : Theme::dark};
        case 43: return roll(4) == 0 ? Action{JobRead{"trailer", "jobs/trailer.json", sample_job()}} : Action{Dismiss{}};
        case 44: return roll(2) == 0 ? Action{NotSaved{"The disk is full."}} : Action{JobRefused{"jobs/trailer.json", "jobs/trailer.json is empty."}};
        default: return roll(2) == 0 ? Action{DayIs{"2026-11-26"}} : Action{ScreenIs{5.87}};
    }
}

}  // namespace tubewright
