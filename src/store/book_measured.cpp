// What was measured, in the shop book: the log of bends, and the pieces that benders are learned from.

#include "store/book_parts.h"

namespace tubewright::book {
namespace {

Record read_record(Reader& cells) {
    Record record;
    record.id = cells.number();
    record.day = cells.text();
    record.standing = cells.word<RecordStanding>(standings);
    record.left_out = cells.yes();
    return record;
}

BendOfTube read_of(Reader& cells) {
    BendOfTube of;
    of.job = cells.text();
    of.line = cells.text();
    of.piece = cells.whole();
    of.attempt = cells.whole();
    of.bend = cells.count();
    return of;
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
    check.record = read_record(cells);
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
            logged.of = read_of(cells);
        }
        work.bends.push_back(std::move(logged));
    }
    for (const auto& [key, rest] : rows[tube_lot]) work.lots[Reader(key, rest).text()] = Reader(no_key, rest).text();
}

Row with_record(const Record& record, Row rest, const BendOfTube& of, Cell last) {
    Row row{record.day, word(standings, record.standing), yes(record.left_out)};
    row.insert(row.end(), rest.begin(), rest.end());
    for (const Cell& cell : Row{of.job, of.line, whole(of.piece), whole(of.attempt), count(of.bend), last}) row.push_back(cell);
    return row;
}

void put_hand(const Work& work, BookRows& rows) {
    for (const LoggedTurn& turn : work.turn_log)
        rows[turn_check][{turn.check.record.id}] = with_record(turn.check.record, {word(turned_bys, turn.check.turned_by), turn.check.wanted.deg, turn.check.measured.deg}, turn.of, count(turn.against));
    for (const LoggedLeg& leg : work.leg_log)
        rows[leg_check][{leg.check.record.id}] = with_record(leg.check.record, {whole(leg.check.marked_bends), leg.check.expected.mm, leg.check.read.mm}, leg.of, maybe(leg.after));
}

void read_hand(const BookRows& rows, Work& work) {
    for (const auto& [key, rest] : rows[turn_check]) {
        Reader cells(key, rest);
        LoggedTurn turn;
        turn.check.record = read_record(cells);
        turn.check.turned_by = cells.word<TurnedBy>(turned_bys);
        turn.check.wanted = cells.angle();
        turn.check.measured = cells.angle();
        turn.of = read_of(cells);
        turn.against = cells.count();
        work.turn_log.push_back(std::move(turn));
    }
    for (const auto& [key, rest] : rows[leg_check]) {
        Reader cells(key, rest);
        LoggedLeg leg;
        leg.check.record = read_record(cells);
        leg.check.marked_bends = cells.whole();
        if (leg.check.marked_bends != 1 && leg.check.marked_bends != 2) strange();
        leg.check.expected = cells.length();
        leg.check.read = cells.length();
        leg.of = read_of(cells);
        leg.after = cells.maybe_count();
        work.leg_log.push_back(std::move(leg));
    }
}

void put_pieces(const Work& work, BookRows& rows) {
    for (const auto& [bender, pieces] : work.pieces)
        for (const KeptPiece& kept : pieces) {
            rows[piece][{kept.id}] = {bender, kept.tube, kept.aim.deg, whole(kept.tape), yes(kept.loaded), maybe(kept.cut), maybe(kept.set), maybe(kept.angle), maybe(kept.hook_leg), maybe(kept.lever_leg), maybe(kept.width), maybe(kept.crown_gap)};
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
        kept.crown_gap = cells.maybe_length();
        if (const auto found = inks.find(kept.id); found != inks.end()) kept.inks = found->second;
        work.pieces[bender].push_back(std::move(kept));
    }
}

}  // namespace

void put_measured(const Work& work, BookRows& rows) {
    for (const LoggedBend& logged : work.bends) put_bend(rows, logged);
    for (const auto& [tube, lot] : work.lots) rows[tube_lot][{tube}] = {lot};
    put_pieces(work, rows);
    put_hand(work, rows);
}

void read_measured(const BookRows& rows, Work& work) {
    read_pieces(rows, work);
    read_bends(rows, work);
    read_hand(rows, work);
}

}  // namespace tubewright::book
