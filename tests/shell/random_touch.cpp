#include "shell/random_touch.h"

#include <cmath>

#include "state/rules.h"

namespace tubewright {
namespace {

class RandomHand {
public:
    RandomHand(std::mt19937& dice, const State& state) : dice_(dice), state_(state) {}

    Action touch() {
        if (!state_.looks.notice.empty()) return Dismiss{};
        switch (state_.looks.screen) {
            case Screen::wrong: return spoiled();
            case Screen::stock:
            case Screen::stick_length: return one_in(3) ? Action{Back{}} : a_stick();
            case Screen::line:
            case Screen::bench: break;
            default: return state_.line ? Action{GoTo{Screen::bench}} : Action{OpenLine{state_.job->lines.front().name}};
        }
        if (!state_.line) return OpenLine{state_.job->lines.front().name};
        if (one_in(9)) return Undo{};
        if (one_in(25)) return Redo{};
        if (one_in(40)) return Back{};
        if (one_in(40)) return SetUnit{one_in(2) ? Unit::inch : Unit::mm};
        if (one_in(30) && work_in_hand(state_).cut) return WentWrong{};
        return onwards();
    }

private:
    int roll(int below) { return std::uniform_int_distribution<int>(0, below - 1)(dice_); }
    bool one_in(int times) { return roll(times) == 0; }

    Action a_stick() { return NewStick{Length{static_cast<double>(2000 + 250 * roll(12))}}; }

    Action spoiled() {
        if (one_in(8)) return Cancel{};
        if (!state_.looks.reason) return ChooseReason{static_cast<Reason>(roll(9))};
        const auto formed = formed_bends(state_);
        if (!wrong_bend(state_) && !formed.empty() && one_in(2)) return ChooseBend{formed[static_cast<std::size_t>(roll(static_cast<int>(formed.size())))]};
        const auto offers = kept_offers(state_);
        if (state_.looks.kept_choice.empty() && !offers.empty()) return ChooseKept{offers[static_cast<std::size_t>(roll(static_cast<int>(offers.size())))].id};
        return ConfirmScrap{};
    }

    Action onwards() {
        const LineWork work = work_in_hand(state_);
        if (work.stage == Stage::done) return AnotherPiece{};
        if (const auto list = current_list(work); list && ticks_missing(state_, *list) > 0 && !one_in(10)) {
            for (const TickItem& item : tick_items(state_, *list))
                if (!work.ticks.contains(item.id)) return Tick{item.id};
        }
        if (!work.cut && !stick_standing(state_).enough) {
            const auto offcuts = fitting_offcuts(state_);
            if (!offcuts.empty() && one_in(2)) return TakeOffcut{offcuts.front().piece};
            return a_stick();
        }
        const Step* step = step_in_hand(state_);
        if (step && work.stage == Stage::bending && work.move == Move::check) return at_check(work, *step);
        return Next{};
    }

    /// A reading of whole degrees, typed key by key; then what it calls for.
    Action at_check(const LineWork& work, const Step& step) {
        if (one_in(12)) return PassCheck{};
        if (work.last_reading) return one_in(2) ? Action{PullAgain{true}} : one_in(3) ? Action{Next{}} : Action{KeepBend{true}};
        const std::string reading = std::to_string(std::lround(step.target.deg) + (work.finished + static_cast<int>(work.step)) % 5 - 2), &typed = state_.looks.typed;
        if (typed == reading) return Next{};
        return reading.rfind(typed, 0) == 0 ? Key{reading.substr(typed.size(), 1)} : Key{"clear"};
    }

    std::mt19937& dice_;
    const State& state_;
};

}  // namespace

Action random_touch(std::mt19937& dice, const State& state) { return RandomHand(dice, state).touch(); }

}  // namespace tubewright
