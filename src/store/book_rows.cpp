#include "store/book_rows.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <limits>

#include "store/saved_plan_text.h"

namespace tubewright {
namespace {

// The words of each enum, in its order; they are the book's, and so never change.
const std::array<const char*, 5> stages{"prepare", "mark out", "bending", "finish", "done"};
const std::array<const char*, 4> moves{"mark", "turn", "pull", "check"};
const std::array<const char*, 9> reasons{"wrong place", "wrong way", "over-bent", "kinked", "too short", "end spoiled", "damaged", "does not fit", "practice"};
const std::array<const char*, 2> ends{"A", "B"};
const std::array<const char*, 2> hands{"left", "right"};
const std::array<const char*, 4> swing_words{"away", "toward", "up", "down"};
const std::array<const char*, 2> units{"in", "mm"};
const std::array<const char*, 2> themes{"light", "dark"};
const std::array<const char*, 3> standings{"counted", "asked", "confirmed"};

template <class Enum, std::size_t n>
Cell word(const std::array<const char*, n>& words, Enum value) { return std::string(words.at(static_cast<std::size_t>(value))); }

Cell count(std::size_t value) { return static_cast<std::int64_t>(value); }
Cell whole(int value) { return static_cast<std::int64_t>(value); }
Cell yes(bool value) { return static_cast<std::int64_t>(value ? 1 : 0); }
Cell maybe(const std::optional<Angle>& angle) { return angle ? Cell(angle->deg) : Cell(); }
Cell maybe(const std::optional<Length>& length) { return length ? Cell(length->mm) : Cell(); }
Cell maybe(const std::optional<double>& number) { return number ? Cell(*number) : Cell(); }
Cell maybe(const std::optional<std::size_t>& number) { return number ? count(*number) : Cell(); }

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
    [[noreturn]] static void strange() { throw BookTrouble{"holds an entry that this program did not write"}; }
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

/// Far finer than any screen; nothing would fit on it.
constexpr double most_px_per_mm = 1000;

const Row no_key;  // for reading what follows the key alone

enum Table { line_work, line_tick, bend_pulled, bend_made, line_order, line_opening, scrap, offcut, stick, used, bench_choice, piece, piece_ink, counter, settings, undo_step, undo_row, line_springback, tube_lot, bend_check, bend_of_tube, table_count };

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
        if (trouble != std::errc{} || left.piece < 1 || *end != ' ') throw BookTrouble{"holds an entry that this program did not write"};
        left.tick = end + 1;
        line.later[left] = done;
        return true;
    }
    return false;
}

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

void put_bend(BookRows& rows, const LoggedBend& logged) {
    const BendCheck& check = logged.check;
    const Tube& tube = check.with.tube;
    rows[bend_check][{check.record.id}] = {check.record.day, word(standings, check.record.standing), yes(check.record.left_out), check.with.bender, tube.od.mm, tube.wall.mm, tube.material,
                                           check.lot, maybe(check.target), check.set.deg, check.measured.deg, yes(check.set_was_read)};
    rows[bend_of_tube][{check.record.id}] = {logged.of.job, logged.of.line, whole(logged.of.piece), whole(logged.of.attempt), count(logged.of.bend)};
}

LoggedBend read_bend(const Row& key, const Row& rest) {
    Reader cells(key, rest);
    LoggedBend logged;
    BendCheck& check = logged.check;
    check.record.id = cells.number();
    check.record.day = cells.text();
    check.record.standing = cells.word<RecordStanding>(standings);
    check.record.left_out = cells.yes();
    check.with.bender = cells.text();
    check.with.tube.od = cells.length();
    check.with.tube.wall = cells.length();
    check.with.tube.material = cells.text();
    check.lot = cells.text();
    check.target = cells.maybe_angle();
    check.set = cells.angle();
    check.measured = cells.angle();
    check.set_was_read = cells.yes();
    return logged;
}

void read_bends(const BookRows& rows, Work& work) {
    for (const auto& [key, rest] : rows[bend_check]) {
        LoggedBend logged = read_bend(key, rest);
        if (const auto of = rows[bend_of_tube].find(key); of != rows[bend_of_tube].end()) {
            Reader cells(no_key, of->second);
            logged.of.job = cells.text();
            logged.of.line = cells.text();
            logged.of.piece = cells.whole();
            logged.of.attempt = cells.whole();
            logged.of.bend = cells.count();
        }
        work.bends.push_back(std::move(logged));
    }
    for (const auto& [key, rest] : rows[tube_lot]) work.lots[Reader(key, rest).text()] = Reader(no_key, rest).text();
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
}

void read_stock(const BookRows& rows, Work& work) {
    for (const auto& [key, rest] : rows[scrap]) {
        Reader cells(key, rest);
        cells.number();
        Scrap entry;
        entry.id = cells.number();
        entry.day = cells.text();
        entry.job = cells.text();
        entry.line = cells.text();
        entry.tube = cells.text();
        entry.reason = cells.word<Reason>(reasons);
        entry.scrapped = cells.length();
        entry.kept = cells.length();
        entry.bend = cells.maybe_count();
        entry.second = cells.length();
        work.scrap.push_back(std::move(entry));
    }
    for (const auto& [key, rest] : rows[offcut]) {
        Reader cells(key, rest);
        cells.number();
        Offcut entry;
        entry.id = cells.number();
        entry.tube = cells.text();
        entry.length = cells.length();
        entry.day = cells.text();
        work.offcuts.push_back(std::move(entry));
    }
    for (const auto& [key, rest] : rows[stick]) work.stick[Reader(key, rest).text()] = Reader(no_key, rest).length();
    for (const auto& [key, rest] : rows[used]) {
        Reader cells(key, rest);
        std::map<std::string, Length>& day = work.used[cells.text()];
        const std::string tube = cells.text();
        day[tube] = cells.length();
    }
}

void read_benders(const BookRows& rows, Work& work) {
    for (const auto& [key, rest] : rows[bench_choice]) {
        Reader cells(key, rest);
        BenchChoice& choice = work.benders[cells.text()];
        const auto hook = cells.maybe_word<HookHand>(hands);
        const auto swing = cells.maybe_word<Swing>(swing_words);
        if (hook && swing) choice.set_up = SetUp{*hook, *swing};
        choice.mark = cells.text();
    }
}

void put_pieces(const Work& work, BookRows& rows) {
    for (const auto& [bender, pieces] : work.pieces)
        for (const KeptPiece& kept : pieces) {
            rows[piece][{kept.id}] = {bender, kept.tube, kept.aim.deg, whole(kept.tape), yes(kept.loaded), maybe(kept.cut), maybe(kept.set), maybe(kept.angle), maybe(kept.hook_leg), maybe(kept.lever_leg), maybe(kept.width)};
            for (std::size_t i = 0; i < kept.inks.size(); ++i) rows[piece_ink][{kept.id, count(i)}] = {kept.inks[i].mark, maybe(kept.inks[i].from_hook_end)};
        }
}

/// Pieces come in the order of their ids, which is that in which they were begun.
void read_pieces(const BookRows& rows, Work& work) {
    std::map<std::int64_t, std::vector<KeptInk>> inks;
    for (const auto& [key, rest] : rows[piece_ink]) {
        Reader cells(key, rest);
        std::vector<KeptInk>& of_piece = inks[cells.number()];
        cells.number();  // the place: rows come in its order
        const std::string mark = cells.text();
        of_piece.push_back({mark, cells.maybe_length()});
    }
    for (const auto& [key, rest] : rows[piece]) {
        Reader cells(key, rest);
        KeptPiece kept;
        kept.id = cells.number();
        const std::string bender = cells.text();
        kept.tube = cells.text();
        kept.aim = cells.angle();
        kept.tape = cells.denominator();
        kept.loaded = cells.yes();
        kept.cut = cells.maybe_length();
        kept.set = cells.maybe_angle();
        kept.angle = cells.maybe_angle();
        kept.hook_leg = cells.maybe_length();
        kept.lever_leg = cells.maybe_length();
        kept.width = cells.maybe_length();
        if (const auto found = inks.find(kept.id); found != inks.end()) kept.inks = found->second;
        work.pieces[bender].push_back(std::move(kept));
    }
}

const Cell only_row{std::int64_t{1}};

}  // namespace

const std::vector<TableShape>& book_tables() {
    static const std::vector<TableShape> tables{
        {"line_work", {"line", "stage", "step", "move", "pull_again_deg", "last_reading_deg", "pulls", "cut", "cut_length_mm", "plan", "inked", "attempt", "finished"}, 1},
        {"line_tick", {"line", "tick"}, 2},
        {"bend_pulled", {"line", "bend"}, 2},
        {"bend_made", {"line", "place", "bend", "set_deg", "pulls", "measured_deg", "kept_over"}, 2},
        {"line_order", {"line", "place", "bend", "hook_end"}, 2},
        {"line_opening", {"line", "place", "bend"}, 2},
        {"scrap", {"place", "id", "day", "job", "line", "tube", "reason", "scrapped_mm", "kept_mm", "bend", "kept_second_mm"}, 1},
        {"offcut", {"place", "id", "tube", "length_mm", "day"}, 1},
        {"stick", {"tube", "left_mm"}, 1},
        {"used", {"day", "tube", "used_mm"}, 2},
        {"bench_choice", {"bender", "hook", "swing", "mark"}, 1},
        {"piece", {"id", "bender", "tube", "aim_deg", "tape", "loaded", "cut_mm", "set_deg", "angle_deg", "hook_leg_mm", "lever_leg_mm", "width_mm"}, 1},
        {"piece_ink", {"piece", "place", "mark", "from_hook_mm"}, 2},
        {"counter", {"only_row", "next_id"}, 1},
        {"settings", {"only_row", "unit", "tape_denominator", "theme", "screen_px_per_mm"}, 1},
        {"undo_step", {"step", "job"}, 1},
        {"undo_row", {"step", "page", "key_1", "key_2", "was", "cell_1", "cell_2", "cell_3", "cell_4", "cell_5", "cell_6", "cell_7", "cell_8", "cell_9", "cell_10", "cell_11", "cell_12"}, 4},
        {"line_springback", {"line", "laid_growth", "pulled_growth", "pulled_zero_deg", "doubted_deg"}, 1},
        {"tube_lot", {"tube", "lot"}, 1},
        {"bend_check", {"id", "day", "standing", "left_out", "bender", "tube_od_mm", "tube_wall_mm", "tube_material", "lot", "target_deg", "set_deg", "measured_deg", "set_was_read"}, 1},
        {"bend_of_tube", {"id", "job", "line", "piece", "attempt", "bend"}, 1},
    };
    return tables;
}

namespace {

BookRows rows_of_work(const Work& work) {
    BookRows rows(table_count);
    for (const auto& [key, line] : work.lines) {
        put_line(rows, key, line);
        put_order(rows, key, line);
        put_springback(rows, key, line);
    }
    for (const LoggedBend& logged : work.bends) put_bend(rows, logged);
    for (const auto& [tube, lot] : work.lots) rows[tube_lot][{tube}] = {lot};
    for (std::size_t i = 0; i < work.scrap.size(); ++i) {
        const Scrap& entry = work.scrap[i];
        rows[scrap][{count(i)}] = {entry.id, entry.day, entry.job, entry.line, entry.tube, word(reasons, entry.reason), entry.scrapped.mm, entry.kept.mm, maybe(entry.bend), entry.second.mm};
    }
    for (std::size_t i = 0; i < work.offcuts.size(); ++i) {
        const Offcut& entry = work.offcuts[i];
        rows[offcut][{count(i)}] = {entry.id, entry.tube, entry.length.mm, entry.day};
    }
    for (const auto& [tube, length] : work.stick) rows[stick][{tube}] = {length.mm};
    for (const auto& [day, tubes] : work.used)
        for (const auto& [tube, length] : tubes) rows[used][{day, tube}] = {length.mm};
    for (const auto& [bender, choice] : work.benders)
        rows[bench_choice][{bender}] = {choice.set_up ? word(hands, choice.set_up->hook) : Cell(), choice.set_up ? word(swing_words, choice.set_up->swing) : Cell(), choice.mark};
    put_pieces(work, rows);
    rows[counter][{only_row}] = {work.next_id};
    return rows;
}

Work work_of(const BookRows& rows) {
    Work work;
    read_lines(rows, work);
    read_orders(rows, work);
    read_stock(rows, work);
    read_benders(rows, work);
    read_pieces(rows, work);
    read_springbacks(rows, work);
    read_bends(rows, work);
    for (const auto& [key, rest] : rows[counter]) work.next_id = Reader(no_key, rest).number();
    return work;
}

}  // namespace

void put_settings(const Settings& chosen, BookRows& rows) {
    rows[settings][{only_row}] = {chosen.unit ? word(units, *chosen.unit) : Cell(), whole(chosen.tape_denominator), word(themes, chosen.theme), chosen.px_per_mm};
}

BookRows rows_of(const Work& work, const Settings& chosen, const std::vector<UndoStep>& past, const BookRows& known) {
    BookRows rows = rows_of_work(work);
    put_settings(chosen, rows);
    for (std::size_t i = past.size() > undo_kept ? past.size() - undo_kept : 0; i < past.size(); ++i) {
        const UndoStep& step = past[i];
        const Row key{step.number};
        rows[undo_step][key] = {step.job};
        if (!known.empty() && known[undo_step].contains(key)) copy_undo_rows(known[undo_row], step.number, rows[undo_row]);
        else if (i + 1 == past.size()) add_undo_rows(step.number, rows_of_work(step.work), rows, rows[undo_row]);
        else add_undo_rows(step.number, rows_of_work(step.work), rows_of_work(past[i + 1].work), rows[undo_row]);
    }
    return rows;
}

BookPages pages_of(const BookRows& rows) {
    BookPages pages;
    pages.work = work_of(rows);
    for (const auto& [key, rest] : rows[settings]) {
        Reader cells(no_key, rest);
        pages.settings.unit = cells.maybe_word<Unit>(units);
        pages.settings.tape_denominator = cells.denominator();
        pages.settings.theme = cells.word<Theme>(themes);
        pages.settings.px_per_mm = cells.real(0, most_px_per_mm);
    }
    BookRows before = rows;
    for (auto step = rows[undo_step].rbegin(); step != rows[undo_step].rend(); ++step) {
        Reader cells(step->first, step->second);
        UndoStep undo;
        undo.number = cells.number();
        undo.job = cells.text();
        put_undo_rows_back(rows[undo_row], undo.number, before);
        undo.work = work_of(before);
        pages.past.push_back(std::move(undo));
    }
    std::reverse(pages.past.begin(), pages.past.end());
    return pages;
}

}  // namespace tubewright
