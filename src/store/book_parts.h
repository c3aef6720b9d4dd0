#pragma once
// What the parts of the shop book's pages are written with: the tables' places, the words of enums, cells. Only for use inside store.

#include <array>
#include <limits>

#include "store/book_rows.h"

namespace tubewright::book {

/// The places of the tables in BookRows.
enum Table { line_work, line_tick, bend_pulled, bend_made, line_order, line_opening, scrap, used, bench_choice, piece, piece_ink, counter, settings, undo_step, undo_row, line_springback, tube_lot, bend_check, bend_of_tube, stock_entry, stick_in_use, shop_rule, price, turn_check, leg_check, line_turn, line_tape, joint_of_end, table_count };

// The words of each enum, in its order; they are the book's, and so never change.
inline const std::array<const char*, 5> stages{"prepare", "mark out", "bending", "finish", "done"};
inline const std::array<const char*, 4> moves{"mark", "turn", "pull", "check"};
inline const std::array<const char*, 9> reasons{"wrong place", "wrong way", "over-bent", "kinked", "too short", "end spoiled", "damaged", "does not fit", "practice"};
inline const std::array<const char*, 2> ends{"A", "B"};
inline const std::array<const char*, 2> hands{"left", "right"};
inline const std::array<const char*, 4> swing_words{"away", "toward", "up", "down"};
inline const std::array<const char*, 2> units{"in", "mm"};
inline const std::array<const char*, 2> themes{"light", "dark"};
inline const std::array<const char*, 3> standings{"counted", "asked", "confirmed"};
inline const std::array<const char*, 2> joint_kinds{"union", "tee"};
inline const std::array<const char*, 2> turned_bys{"neighbour", "ink"};

template <class Enum, std::size_t n>
Cell word(const std::array<const char*, n>& words, Enum value) { return std::string(words.at(static_cast<std::size_t>(value))); }

inline Cell count(std::size_t value) { return static_cast<std::int64_t>(value); }
inline Cell whole(int value) { return static_cast<std::int64_t>(value); }
inline Cell yes(bool value) { return static_cast<std::int64_t>(value ? 1 : 0); }
inline Cell maybe(const std::optional<Angle>& angle) { return angle ? Cell(angle->deg) : Cell(); }
inline Cell maybe(const std::optional<Length>& length) { return length ? Cell(length->mm) : Cell(); }
inline Cell maybe(const std::optional<double>& number) { return number ? Cell(*number) : Cell(); }
inline Cell maybe(const std::optional<std::size_t>& number) { return number ? count(*number) : Cell(); }

[[noreturn]] inline void strange() { throw BookTrouble{"holds an entry that this program did not write"}; }

/// Reads the cells of one row in their order.
class Reader {
public:
    Reader(const Row& key, const Row& rest) : key_(key), rest_(rest) {}

    std::string text() { return as<std::string>(next()); }
    double real(double least, double most) { return within(as<double>(next()), least, most); }
    /// No length in the book is less than nothing, or longer than any tube.
    Length length() { return {real(0, longest_mm)}; }
    Angle angle() { return {real(-widest_deg, widest_deg)}; }
    std::int64_t number() { return as<std::int64_t>(next()); }
    std::size_t count() {
        const std::int64_t value = number();
        if (value < 0) strange();
        return static_cast<std::size_t>(value);
    }
    bool yes() { return number() != 0; }
    int whole() {
        const std::int64_t value = number();
        if (value < std::numeric_limits<int>::min() || value > std::numeric_limits<int>::max()) strange();
        return static_cast<int>(value);
    }
    int denominator() {
        const int value = whole();
        if (value != 16 && value != 32 && value != 64) strange();
        return value;
    }
    std::optional<Angle> maybe_angle() {
        const auto degrees = maybe_real(-widest_deg, widest_deg);
        return degrees ? std::optional(Angle{*degrees}) : std::nullopt;
    }
    std::optional<Length> maybe_length() {
        const Cell& cell = next();
        if (std::holds_alternative<std::monostate>(cell)) return std::nullopt;
        return Length{within(as<double>(cell), 0, longest_mm)};
    }
    std::optional<double> maybe_growth() { return maybe_real(-most_growth, most_growth); }
    std::optional<std::size_t> maybe_count() {
        const Cell& cell = next();
        if (std::holds_alternative<std::monostate>(cell)) return std::nullopt;
        return static_cast<std::size_t>(as<std::int64_t>(cell));
    }
    template <class Enum, std::size_t n>
    std::optional<Enum> maybe_word(const std::array<const char*, n>& words) {
        const Cell& cell = next();
        if (std::holds_alternative<std::monostate>(cell)) return std::nullopt;
        for (std::size_t i = 0; i < n; ++i)
            if (as<std::string>(cell) == words[i]) return static_cast<Enum>(i);
        strange();
    }
    template <class Enum, std::size_t n>
    Enum word(const std::array<const char*, n>& words) {
        const std::optional<Enum> value = maybe_word<Enum>(words);
        if (!value) strange();
        return *value;
    }

private:
    std::optional<double> maybe_real(double least, double most) {
        const Cell& cell = next();
        if (std::holds_alternative<std::monostate>(cell)) return std::nullopt;
        return within(as<double>(cell), least, most);
    }
    static constexpr double longest_mm = 1e9, widest_deg = 1000, most_growth = 10;
    static double within(double value, double least, double most) {
        if (!(value >= least && value <= most)) strange();  // NaN lies nowhere
        return value;
    }
    const Cell& next() {
        const std::size_t at = at_++;
        return at < key_.size() ? key_[at] : rest_.at(at - key_.size());
    }
    template <class T>
    static const T& as(const Cell& cell) {
        if (!std::holds_alternative<T>(cell)) strange();
        return std::get<T>(cell);
    }
    const Row& key_;
    const Row& rest_;
    std::size_t at_ = 0;
};

inline const Row no_key;  // for reading what follows the key alone

// --- the lines' work: how far each is, its order, what it was laid out and pulled with
void put_line(BookRows& rows, const std::string& key, const LineWork& line);
void read_lines(const BookRows& rows, Work& work);

// --- what was measured: the log of bends with its lots, and the pieces that benders are learned from
void put_measured(const Work& work, BookRows& rows);
void read_measured(const BookRows& rows, Work& work);

// --- the rack with its ledger, the shop's rules and prices
/// `known` may hold the rack's rows already.
void put_stock(const Work& work, const BookRows& known, BookRows& rows);
/// Sets rows.ledger; where it is set already the rows are those of that ledger.
void read_stock(BookRows& rows, Work& work);

}  // namespace tubewright::book
