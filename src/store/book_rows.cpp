#include "store/book_rows.h"

#include <algorithm>

#include "store/book_parts.h"

namespace tubewright {

const std::vector<TableShape>& book_tables() {
    static const std::vector<TableShape> tables{
        {"line_work", {"line", "stage", "step", "move", "pull_again_deg", "last_reading_deg", "pulls", "cut", "cut_length_mm", "plan", "inked", "attempt", "finished"}, 1},
        {"line_tick", {"line", "tick"}, 2},
        {"bend_pulled", {"line", "bend"}, 2},
        {"bend_made", {"line", "place", "bend", "set_deg", "pulls", "measured_deg", "kept_over"}, 2},
        {"line_order", {"line", "place", "bend", "hook_end"}, 2},
        {"line_opening", {"line", "place", "bend"}, 2},
        {"scrap", {"place", "id", "day", "job", "line", "tube", "reason", "scrapped_mm", "kept_mm", "bend", "kept_second_mm"}, 1},
        {"used", {"day", "tube", "used_mm"}, 2},
        {"bench_choice", {"bender", "hook", "swing", "mark"}, 1},
        {"piece", {"id", "bender", "tube", "aim_deg", "tape", "loaded", "cut_mm", "set_deg", "angle_deg", "hook_leg_mm", "lever_leg_mm", "width_mm", "crown_gap_mm"}, 1},
        {"piece_ink", {"piece", "place", "mark", "from_hook_mm"}, 2},
        {"counter", {"only_row", "next_id"}, 1},
        {"settings", {"only_row", "unit", "tape_denominator", "theme", "screen_px_per_mm"}, 1},
        {"undo_step", {"step", "job"}, 1},
        {"undo_row", {"step", "page", "key_1", "key_2", "was", "cell_1", "cell_2", "cell_3", "cell_4", "cell_5", "cell_6", "cell_7", "cell_8", "cell_9", "cell_10", "cell_11", "cell_12"}, 4},
        {"line_springback", {"line", "laid_growth", "pulled_growth", "pulled_zero_deg", "doubted_deg"}, 1},
        {"tube_lot", {"tube", "lot"}, 1},
        {"bend_check", {"id", "day", "standing", "left_out", "bender", "tube_od_mm", "tube_wall_mm", "tube_material", "lot", "target_deg", "set_deg", "measured_deg", "set_was_read"}, 1},
        {"bend_of_tube", {"id", "job", "line", "piece", "attempt", "bend"}, 1},
        {"stock_entry", {"n", "day", "event", "piece", "other", "kind", "tube", "length_um", "second_um", "said", "lot", "price_cents", "price_per_um"}, 1},
        {"stick_in_use", {"tube", "piece"}, 1},
        {"shop_rule", {"only_row", "saw_mm", "keep_mm", "straighten_mm", "practice", "spare"}, 1},
        {"price", {"item", "cents"}, 1},
        {"turn_check", {"id", "day", "standing", "left_out", "turned_by", "wanted_deg", "measured_deg", "job", "line", "piece", "attempt", "bend", "against"}, 1},
        {"leg_check", {"id", "day", "standing", "left_out", "marked_bends", "expected_mm", "read_mm", "job", "line", "piece", "attempt", "bend", "after"}, 1},
        {"line_turn", {"line", "place", "bend", "against", "read_deg"}, 2},
        {"line_tape", {"line", "place", "from_point", "to_point", "steps", "read_mm"}, 2},
        {"joint_of_end", {"line", "end_of_line", "kind", "number"}, 2},
    };
    return tables;
}

const TableRows& BookRows::operator[](std::size_t table) const {
    static const TableRows none;
    return tables_.at(table) ? *tables_[table] : none;
}

TableRows& BookRows::operator[](std::size_t table) {
    std::shared_ptr<TableRows>& rows = tables_.at(table);
    if (!rows) rows = std::make_shared<TableRows>();
    else if (rows.use_count() > 1) rows = std::make_shared<TableRows>(*rows);
    return *rows;
}

bool BookRows::operator==(const BookRows& other) const {
    if (tables_.size() != other.tables_.size()) return false;
    for (std::size_t i = 0; i < tables_.size(); ++i)
        if (!shares(i, other) && (*this)[i] != other[i]) return false;
    return true;
}

namespace book {
namespace {

/// Far finer than any screen; nothing would fit on it.
constexpr double most_px_per_mm = 1000;

const Cell only_row{std::int64_t{1}};

void read_scrap(const BookRows& rows, Work& work) {
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

BookRows rows_of_work(const Work& work, const BookRows& known) {
    BookRows rows(table_count);
    for (const auto& [key, line] : work.lines) put_line(rows, key, line);
    for (std::size_t i = 0; i < work.scrap.size(); ++i) {
        const Scrap& entry = work.scrap[i];
        rows[scrap][{count(i)}] = {entry.id, entry.day, entry.job, entry.line, entry.tube, word(reasons, entry.reason), entry.scrapped.mm, entry.kept.mm, maybe(entry.bend), entry.second.mm};
    }
    for (const auto& [day, tubes] : work.used)
        for (const auto& [tube, length] : tubes) rows[used][{day, tube}] = {length.mm};
    for (const auto& [bender, choice] : work.benders)
        rows[bench_choice][{bender}] = {choice.set_up ? word(hands, choice.set_up->hook) : Cell(), choice.set_up ? word(swing_words, choice.set_up->swing) : Cell(), choice.mark};
    put_measured(work, rows);
    put_stock(work, known, rows);
    rows[counter][{only_row}] = {work.next_id};
    return rows;
}

Work work_of(BookRows& rows) {
    Work work;
    read_stock(rows, work);
    const BookRows& known = rows;
    read_lines(known, work);
    read_scrap(known, work);
    read_benders(known, work);
    read_measured(known, work);
    for (const auto& [key, rest] : known[counter]) work.next_id = Reader(no_key, rest).number();
    return work;
}

}  // namespace
}  // namespace book

void put_settings(const Settings& chosen, BookRows& rows) {
    using namespace book;
    rows[settings][{only_row}] = {chosen.unit ? word(units, *chosen.unit) : Cell(), whole(chosen.tape_denominator), word(themes, chosen.theme), chosen.px_per_mm};
}

BookRows rows_of(const Work& work, const Settings& chosen, const std::vector<UndoStep>& past, const BookRows& known) {
    using namespace book;
    BookRows rows = rows_of_work(work, known);
    put_settings(chosen, rows);
    for (std::size_t i = past.size() > undo_kept ? past.size() - undo_kept : 0; i < past.size(); ++i) {
        const UndoStep& step = past[i];
        const Row key{step.number};
        rows[undo_step][key] = {step.job};
        if (!known.empty() && known[undo_step].contains(key)) copy_undo_rows(known[undo_row], step.number, rows[undo_row]);
        else if (i + 1 == past.size()) add_undo_rows(step.number, rows_of_work(step.work, known), rows, rows[undo_row]);
        else add_undo_rows(step.number, rows_of_work(step.work, known), rows_of_work(past[i + 1].work, known), rows[undo_row]);
    }
    return rows;
}

BookPages pages_of(BookRows& rows) {
    using namespace book;
    BookPages pages;
    pages.work = work_of(rows);
    for (const auto& [key, rest] : std::as_const(rows)[settings]) {
        Reader cells(no_key, rest);
        pages.settings.unit = cells.maybe_word<Unit>(units);
        pages.settings.tape_denominator = cells.denominator();
        pages.settings.theme = cells.word<Theme>(themes);
        pages.settings.px_per_mm = cells.real(0, most_px_per_mm);
    }
    const BookRows& now = rows;
    BookRows before = rows;
    for (auto step = now[undo_step].rbegin(); step != now[undo_step].rend(); ++step) {
        Reader cells(step->first, step->second);
        UndoStep undo;
        undo.number = cells.number();
        undo.job = cells.text();
        BookRows was = before;
        put_undo_rows_back(now[undo_row], undo.number, before);
        if (!before.shares(stock_entry, was)) before.ledger.reset();
        undo.work = work_of(before);
        pages.past.push_back(std::move(undo));
    }
    std::reverse(pages.past.begin(), pages.past.end());
    return pages;
}

}  // namespace tubewright
