#include "store/readings_text.h"

#include <cmath>
#include <locale>
#include <sstream>

#include "store/book_parts.h"
#include "store/number_text.h"

namespace tubewright {
namespace {

const std::string turns_word = "turns", tapes_word = "tapes";

using book::strange;

std::size_t count(std::istream& in) {
    constexpr std::size_t most = 100000;
    std::size_t value = 0;
    if (!(in >> value) || value > most) strange();
    return value;
}

double number(std::istream& in, double least, double most) {
    double value = 0;
    if (!(in >> value) || !(value >= least && value <= most)) strange();
    return value;
}

TurnReading turn(std::istream& in) {
    TurnReading turn;
    turn.bend = count(in), turn.against = count(in);
    if (turn.against >= turn.bend) strange();
    turn.read = {number(in, -360, 360)};
    return turn;
}

MadeTape tape(std::istream& in) {
    MadeTape tape;
    tape.tape.span.from = count(in), tape.tape.span.to = count(in);
    if (tape.tape.span.from >= tape.tape.span.to) strange();
    tape.steps = count(in);
    tape.tape.read = {number(in, 0, 1e9)};
    return tape;
}

template <class Reading>
void read_all(std::istream& in, std::vector<Reading>& readings, Reading (*one)(std::istream&)) {
    do readings.push_back(one(in));
    while (in.get() == ';');
    if (!in.eof()) strange();
}

}  // namespace

std::vector<std::string> reading_ticks(const LineWork& line) {
    std::vector<std::string> ticks;
    std::string turns, tapes;
    for (const TurnReading& turn : line.turns) turns += (turns.empty() ? turns_word + " " : "; ") + std::to_string(turn.bend) + " " + std::to_string(turn.against) + " " + typed(turn.read.deg);
    for (const auto& [tape, steps] : line.tapes)
        tapes += (tapes.empty() ? tapes_word + " " : "; ") + std::to_string(tape.span.from) + " " + std::to_string(tape.span.to) + " " + std::to_string(steps) + " " + typed(tape.read.mm);
    for (std::string* all : {&turns, &tapes})
        if (!all->empty()) ticks.push_back(std::move(*all));
    return ticks;
}

bool read_reading_tick(const std::string& tick, LineWork& line) {
    std::istringstream in(tick);
    in.imbue(std::locale::classic());
    std::string word;
    in >> word;
    if (tick.find(' ') == tick.npos || (word != turns_word && word != tapes_word)) return false;
    if (word == turns_word) read_all(in, line.turns, turn);
    else read_all(in, line.tapes, tape);
    return true;
}

}  // namespace tubewright
