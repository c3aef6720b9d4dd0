#pragma once
// What is still to be cut, and from what: the questions that a cutting plan answers.

#include "state/state.h"
#include "stock/buy_list.h"

namespace tubewright {

/// A spare is planned of the hardest line where it goes wrong at least so often: our choice.
inline constexpr double spare_from = 0.25;
/// As long as a short line with one bend and its holds: our choice.
inline constexpr Length practice_length{400};

/// How often the shop spoils a line of so many bends. From its own ledger: (spoiled + 1) / (made + spoiled + 4), so that a shop that
/// has made nothing yet begins at one in four; that is a line of four bends, and each bend goes wrong as often. Our choice.
double odds_of_spoiling(int made, int spoiled, std::size_t bends);

/// Nothing where it can't be laid out, or a finding stops it.
std::optional<Length> length_to_cut(const Sheet& sheet);
/// Lines that are wanted and can't be made as they are: they are in no plan.
std::size_t lines_left_out(const State& state);

/// One for each tube that something is still to be cut of: of the open job, and of the others that are planned with it. What is
/// made, or cut and in hand, is not cut again.
std::vector<TubeToCut> tubes_to_cut(const State& state);
/// What the line in hand is cut from by that plan; none where it has no place in it, or comes from a stick to buy.
std::optional<PieceNumber> planned_piece(const State& state);

/// How a thing to buy is known among the prices.
std::string buy_key(const BuyItem& item);
/// All that has to be bought for what is planned, sticks by the plan. None while there is no plan.
std::optional<BuyList> list_to_buy(const State& state);
/// What it costs, by the prices that the shop has told, sticks also by what was paid for such tube last.
BuyCost cost_to_buy(const State& state, const BuyList& list);

}  // namespace tubewright
