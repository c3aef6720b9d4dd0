// The lines' work in the shop book.

#include <charconv>

#include "store/book_parts.h"
#include "store/saved_plan_text.h"

namespace tubewright::book {
namespace {

// What was left for later stands among the ticks, as "later 2 hand-over-recheck" or "done 2 hand-over-recheck": no
// tick has a space in it, and a book of version 1 has a place for it.
const std::array<const char*, 2> later_words{"later ", "done "};

std::string later_word(const LeftForLater& left, bool done) { return later_words[done ? 1 : 0] + std::to_string(left.piece) + " " + left.tick; }

/// Whether it was one.
bool read_later(const std::string& tick, LineWork& line) {
    for (const bool done : {false, true}) {
        const std::string word = later_words[done ? 1 : 0];
        if (tick.rfind(word, 0) != 0) continue;
        LeftForLater left{};
        const char* const from = tick.data() + word.size();
        const auto [end, trouble] = std::from_chars(from, tick.data() + tick.size(), left.piece);
        if (trouble != std::errc{} || left.piece < 1 || *end != ' ') strange();
        left.tick = end + 1;
        line.later[left] = done;
        return true;
    }
    return false;
}

void put_order(BookRows& rows, const std::string& key, const LineWork& line) {
    for (std::size_t i = 0; i < line.order.size(); ++i) rows[line_order][{key, count(i)}] = {count(line.order[i].bend), word(ends, line.order[i].hook)};
    for (std::size_t i = 0; i < line.opening.size(); ++i) rows[line_opening][{key, count(i)}] = {count(line.opening[i])};
}

void read_orders(const BookRows& rows, Work& work) {
    for (const auto& [key, rest] : rows[line_order]) {
        Reader cells(key, rest);
        LineWork& line = work.lines[cells.text()];
        cells.number();  // the place: rows come in its order
        const std::size_t bend = cells.count();
        line.order.push_back({bend, cells.word<End>(ends)});
    }
    for (const auto& [key, rest] : rows[line_opening]) {
        Reader cells(key, rest);
        LineWork& line = work.lines[cells.text()];
        cells.number();
        line.opening.push_back(cells.count());
    }
}

void put_springback(BookRows& rows, const std::string& key, const LineWork& line) {
    if (!line.laid_growth && !line.pulled_with && !line.doubted) return;
    const auto growth = line.pulled_with ? std::optional(line.pulled_with->growth) : std::nullopt;
    const auto zero = line.pulled_with ? std::optional(line.pulled_with->zero) : std::nullopt;
    rows[line_springback][{key}] = {maybe(line.laid_growth), maybe(growth), maybe(zero), maybe(line.doubted)};
}

void read_springbacks(const BookRows& rows, Work& work) {
    for (const auto& [key, rest] : rows[line_springback]) {
        Reader cells(key, rest);
        LineWork& line = work.lines[cells.text()];
        line.laid_growth = cells.maybe_growth();
        const auto growth = cells.maybe_growth();
        const auto zero = cells.maybe_angle();
        if (growth && zero) line.pulled_with = Springback{*growth, *zero};
        line.doubted = cells.maybe_angle();
    }
}

/// What was read of the bends besides their angles.
void put_readings(BookRows& rows, const std::string& key, const LineWork& line) {
    for (std::size_t i = 0; i < line.turns.size(); ++i) rows[line_turn][{key, count(i)}] = {count(line.turns[i].bend), count(line.turns[i].against), line.turns[i].read.deg};
    for (std::size_t i = 0; i < line.tapes.size(); ++i) {
        const auto& [tape, steps] = line.tapes[i];
        rows[line_tape][{key, count(i)}] = {count(tape.span.from), count(tape.span.to), count(steps), tape.read.mm};
    }
}

void read_readings(const BookRows& rows, Work& work) {
    for (const auto& [key, rest] : rows[line_turn]) {
        Reader cells(key, rest);
        LineWork& line = work.lines[cells.text()];
        cells.number();  // the place: rows come in its order
        TurnReading turn;
        turn.bend = cells.count();
        turn.against = cells.count();
        turn.read = cells.angle();
        line.turns.push_back(turn);
    }
    for (const auto& [key, rest] : rows[line_tape]) {
        Reader cells(key, rest);
        LineWork& line = work.lines[cells.text()];
        cells.number();
        MadeTape tape;
        tape.tape.span.from = cells.count();
        tape.tape.span.to = cells.count();
        tape.steps = cells.count();
        tape.tape.read = cells.length();
        line.tapes.push_back(tape);
    }
}

}  // namespace

void put_line(BookRows& rows, const std::string& key, const LineWork& line) {
    rows[line_work][{key}] = {word(stages, line.stage), count(line.step), word(moves, line.move), maybe(line.pull_again), maybe(line.last_reading),
                              whole(line.pulls), yes(line.cut), line.cut_length.mm, plan_cell(line), line.inked, whole(line.attempt), whole(line.finished)};
    for (const std::string& tick : line.ticks) rows[line_tick][{key, tick}] = {};
    for (const auto& [left, done] : line.later) rows[line_tick][{key, later_word(left, done)}] = {};
    for (const std::size_t bend : line.pulled) rows[bend_pulled][{key, count(bend)}] = {};
    for (std::size_t i = 0; i < line.made.size(); ++i) {
        const BendMade& made = line.made[i];
        rows[bend_made][{key, count(i)}] = {count(made.bend), made.set.deg, whole(made.pulls), maybe(made.measured), yes(made.kept_over)};
    }
    put_order(rows, key, line);
    put_springback(rows, key, line);
    put_readings(rows, key, line);
}

void read_lines(const BookRows& rows, Work& work) {
    for (const auto& [key, rest] : rows[line_work]) {
        Reader cells(key, rest);
        LineWork& line = work.lines[cells.text()];
        line.stage = cells.word<Stage>(stages);
        line.step = cells.count();
        line.move = cells.word<Move>(moves);
        line.pull_again = cells.maybe_angle();
        line.last_reading = cells.maybe_angle();
        line.pulls = cells.whole();
        line.cut = cells.yes();
        line.cut_length = cells.length();
        read_plan_cell(cells.text(), line);
        line.inked = cells.text();
        line.attempt = cells.whole();
        line.finished = cells.whole();
    }
    for (const auto& [key, rest] : rows[line_tick]) {
        Reader cells(key, rest);
        LineWork& line = work.lines[cells.text()];
        const std::string tick = cells.text();
        if (!read_later(tick, line)) line.ticks.insert(tick);
    }
    for (const auto& [key, rest] : rows[bend_pulled]) {
        Reader cells(key, rest);
        const std::string line = cells.text();
        work.lines[line].pulled.insert(cells.count());
    }
    for (const auto& [key, rest] : rows[bend_made]) {
        Reader cells(key, rest);
        LineWork& line = work.lines[cells.text()];
        cells.number();  // the place: rows come in its order
        BendMade made;
        made.bend = cells.count();
        made.set = cells.angle();
        made.pulls = cells.whole();
        made.measured = cells.maybe_angle();
        made.kept_over = cells.yes();
        line.made.push_back(made);
    }
    read_orders(rows, work);
    read_springbacks(rows, work);
    read_readings(rows, work);
}

}  // namespace tubewright::book
