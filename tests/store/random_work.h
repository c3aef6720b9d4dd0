#pragma once
// Works of every shape, each from its number alone.

#include <array>
#include <cmath>
#include <random>
#include <string>

#include "state/work.h"

namespace tubewright {

class WorkDice {
public:
    explicit WorkDice(unsigned seed) : dice_(seed) {}

    std::size_t roll(std::size_t sides) { return std::uniform_int_distribution<std::size_t>(0, sides - 1)(dice_); }
    bool coin() { return roll(2) == 1; }
    double real() {
        const double odd[] = {0, 0.1, 1.0 / 3.0, 90, 93.21999999999999, 1e-300, 123456.789, -0.5, 5e-324, 42.5};
        return coin() ? odd[roll(10)] : std::uniform_real_distribution<double>(-200, 20000)(dice_);
    }
    Length length() { return {std::abs(real())}; }
    Angle angle() { return {std::fmod(real(), 360)}; }
    std::string name() {
        const char* odd[] = {"axle crossover", "50% ##2", "tube \"a\"", "it's", "äöü °", "", "a/b", "x"};
        return odd[roll(8)] + (coin() ? std::to_string(roll(30)) : std::string());
    }

    LineWork line() {
        LineWork line;
        line.stage = static_cast<Stage>(roll(5));
        for (std::size_t n = roll(6); n > 0; --n) line.ticks.insert(name());
        line.step = roll(12);
        line.move = static_cast<Move>(roll(4));
        if (coin()) line.pull_again = angle();
        if (coin()) line.last_reading = angle();
        line.pulls = static_cast<int>(roll(4));
        for (std::size_t n = roll(8); n > 0; --n)
            line.made.push_back({roll(12), angle(), static_cast<int>(roll(3)), coin() ? std::optional<Angle>(angle()) : std::nullopt, coin()});
        line.cut = coin();
        line.cut_length = length();
        line.plan = name();
        if (line.cut && coin()) {
            TubePlan plan{{}, length(), length(), length(), length(), real() / 1e5};
            for (std::size_t n = roll(4); n > 0; --n) plan.bends.push_back({length(), coin() ? End::A : End::B, angle(), angle()});
            line.saved = SavedPlan{plan, roll(5)};
        }
        for (std::size_t n = roll(3); n > 0; --n) {
            const std::size_t against = roll(11);
            line.turns.push_back({against + 1 + roll(3), against, angle()});
            line.tapes.push_back({{{against, against + 1 + roll(3)}, length()}, roll(12)});
        }
        line.inked = name();
        for (std::size_t n = roll(4); n > 0; --n) line.pulled.insert(roll(12));
        for (std::size_t n = roll(4); n > 0; --n) line.order.push_back({roll(12), coin() ? End::A : End::B});
        for (std::size_t n = roll(4); n > 0; --n) line.opening.push_back(roll(12));
        if (coin()) line.laid_growth = real() / 1e5;
        if (coin()) line.pulled_with = Springback{real() / 1e5, angle()};
        if (coin()) line.doubted = angle();
        line.attempt = static_cast<int>(1 + roll(5));
        line.finished = static_cast<int>(roll(5));
        for (std::size_t n = roll(4); n > 0; --n) line.later[{static_cast<int>(1 + roll(12)), name()}] = coin();
        return line;
    }

    KeptPiece piece(std::int64_t id) {
        KeptPiece piece;
        piece.id = id;
        piece.tube = name();
        piece.aim = {std::array{45.0, 90.0, 180.0}[roll(3)]};
        piece.tape = coin() ? 32 : 64;
        piece.loaded = coin();
        for (std::optional<Length>* reading : {&piece.cut, &piece.hook_leg, &piece.lever_leg, &piece.width, &piece.crown_gap})
            if (coin()) *reading = length();
        if (coin()) piece.set = angle();
        if (coin()) piece.angle = angle();
        for (std::size_t n = roll(4); n > 0; --n) piece.inks.push_back({name(), coin() ? std::optional(length()) : std::nullopt});
        return piece;
    }

    LoggedBend bend(std::int64_t id) {
        LoggedBend logged;
        logged.check.record = {id, "2026-11-25", static_cast<RecordStanding>(roll(3)), coin()};
        logged.check.with = {name(), {length(), length(), name()}};
        logged.check.lot = name();
        if (coin()) logged.check.target = angle();
        logged.check.set = angle();
        logged.check.measured = angle();
        logged.check.set_was_read = coin();
        logged.of = {name(), name(), static_cast<int>(roll(5)), static_cast<int>(roll(5)), roll(12)};
        return logged;
    }

    BendOfTube of_tube() { return {name(), name(), static_cast<int>(roll(5)), static_cast<int>(roll(5)), roll(12)}; }
    Record record(std::int64_t id) { return {id, "2026-11-25", static_cast<RecordStanding>(roll(3)), coin()}; }
    LoggedTurn turn(std::int64_t id) { return {{record(id), static_cast<TurnedBy>(roll(2)), angle(), angle()}, of_tube(), roll(12)}; }
    LoggedLeg leg(std::int64_t id) { return {{record(id), static_cast<int>(1 + roll(2)), length(), length()}, of_tube(), coin() ? std::optional(roll(12)) : std::nullopt}; }

    PieceNumber some_piece(const Ledger& ledger) { return {static_cast<int>(1 + roll(static_cast<std::size_t>(ledger.next_number().n)))}; }

    StockEvent stock_event(const Ledger& ledger) {
        const ExactLength length{static_cast<std::int64_t>(1 + roll(900'000))}, less{static_cast<std::int64_t>(roll(2000))};
        switch (roll(9)) {
            case 0: return Straightened{some_piece(ledger), ledger.next_number(), length, less, name()};
            case 1: return Cut{some_piece(ledger), ledger.next_number(), length, less, name()};
            case 2: return Used{some_piece(ledger), less, {}};
            case 3: return Scrapped{some_piece(ledger), length, name()};
            case 4: return PutBack{some_piece(ledger), name()};
            case 5: return Moved{some_piece(ledger), name()};
            case 6: return Labelled{some_piece(ledger), name(), {{static_cast<std::int64_t>(roll(9000))}, length}};
            case 7: return TakenBack{roll(ledger.entries.size() + 1)};
            default: return Received{ledger.next_number(), static_cast<PieceKind>(roll(3)), {{4763}, {static_cast<std::int64_t>(roll(900))}, name()}, {1000 * length.um}, name(), name(), {{static_cast<std::int64_t>(roll(9000))}, length}};
        }
    }

    Ledger ledger() {
        Ledger ledger;
        for (std::size_t n = roll(40); n > 0; --n) (void)write(ledger, {static_cast<int>(20400 + roll(400)), stock_event(ledger)});  // what can't be is refused
        return ledger;
    }

    Work work() {
        Work work;
        for (std::size_t n = roll(5); n > 0; --n) work.lines[name()] = line();
        for (std::size_t n = roll(7); n > 0; --n)
            work.scrap.push_back({work.next_id++, "2026-11-25", name(), name(), name(), static_cast<Reason>(roll(9)), length(), length(),
                                  coin() ? std::optional<std::size_t>(roll(12)) : std::nullopt, length()});
        work.rack.ledger = std::make_shared<const Ledger>(ledger());
        for (std::size_t n = roll(4); n > 0; --n) work.in_use[name()] = {static_cast<int>(1 + roll(30))};
        if (coin()) work.rules = {length(), length(), length(), coin(), coin()};
        for (std::size_t n = roll(4); n > 0; --n) work.prices[name()] = {static_cast<std::int64_t>(roll(10000))};
        for (std::size_t n = roll(4); n > 0; --n) work.joints[{name(), coin() ? End::A : End::B}] = {coin() ? JointKind::tee : JointKind::union_piece, 1 + static_cast<int>(roll(4))};
        for (std::size_t n = roll(4); n > 0; --n) work.used[coin() ? "2026-11-24" : "2026-11-25"][name()] = length();
        for (std::size_t n = roll(4); n > 0; --n) {
            BenchChoice& choice = work.benders[name()];
            if (coin()) choice.set_up = SetUp{static_cast<HookHand>(roll(2)), static_cast<Swing>(roll(4))};
            choice.mark = name();
        }
        for (std::size_t n = roll(6); n > 0; --n) work.pieces[name()].push_back(piece(work.next_id++));
        for (std::size_t n = roll(6); n > 0; --n) work.bends.push_back(bend(work.next_id++));
        for (std::size_t n = roll(4); n > 0; --n) work.turn_log.push_back(turn(work.next_id++));
        for (std::size_t n = roll(4); n > 0; --n) work.leg_log.push_back(leg(work.next_id++));
        for (std::size_t n = roll(3); n > 0; --n) work.lots[name()] = name();
        work.next_id += static_cast<std::int64_t>(roll(100));
        return work;
    }

    Settings settings() {
        Settings settings;
        if (coin()) settings.unit = static_cast<Unit>(roll(2));
        settings.tape_denominator = 16 << roll(3);
        settings.theme = static_cast<Theme>(roll(2));
        settings.px_per_mm = coin() ? 0 : 5.866141732283465;
        return settings;
    }

private:
    std::mt19937 dice_;
};

inline Work random_work(unsigned number) { return WorkDice(number).work(); }

}  // namespace tubewright
