#include "state/rack.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <chrono>
#include <cmath>

namespace tubewright {
namespace {

/// The whole text as a number.
template <class Number>
bool read_number(std::string_view text, Number& value) {
    const auto [end, trouble] = std::from_chars(text.data(), text.data() + text.size(), value);
    return trouble == std::errc{} && end == text.data() + text.size();
}

std::string padded(unsigned value, std::size_t width) {
    std::string digits = std::to_string(value);
    return digits.size() < width ? std::string(width - digits.size(), '0') + digits : digits;
}

/// For what can't fail: the caller has looked.
void must_write(Work& work, const std::string& day, const std::vector<StockEvent>& events) {
    [[maybe_unused]] const auto trouble = write_stock(work, day, events);
    assert(!trouble);
}

}  // namespace

int day_number(const std::string& day) {
    int year = 0;
    unsigned month = 0, of_month = 0;
    const std::string_view text = day;
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return 0;
    if (!read_number(text.substr(0, 4), year) || !read_number(text.substr(5, 2), month) || !read_number(text.substr(8, 2), of_month)) return 0;
    const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{month}, std::chrono::day{of_month}};
    return date.ok() ? static_cast<int>(std::chrono::sys_days(date).time_since_epoch().count()) : 0;
}

std::string day_of(int number) {
    const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{number}}};
    return padded(static_cast<unsigned>(std::max(0, static_cast<int>(date.year()))), 4) + "-" + padded(static_cast<unsigned>(date.month()), 2) + "-" + padded(static_cast<unsigned>(date.day()), 2);
}

StockTube stock_tube(const Tube& tube) { return {exact(tube.od), exact(tube.wall), tube.material}; }

const char* ledger_reason(Reason reason) {
    constexpr std::array<const char*, 9> words{"wrong place", "wrong way", "over-bent", "kinked", "too short", "end spoiled", "damaged", "does not fit", reason_practice};
    return words.at(static_cast<std::size_t>(reason));
}

std::vector<RackLength> lengths_on_rack(const Ledger& ledger, const StockTube& tube) {
    std::vector<RackLength> found;
    for (const auto& [number, piece] : ledger.pieces)
        if (piece.where == Whereabouts::rack && piece.tube == tube) found.push_back({number, piece.kind, piece.length, piece.place, piece.lot});
    std::stable_sort(found.begin(), found.end(), [](const RackLength& a, const RackLength& b) { return a.length > b.length; });
    return found;
}

std::optional<RackLength> length_in_use(const Work& work, const StockTube& tube) {
    const auto chosen = work.in_use.find(tube_key(tube));
    if (chosen == work.in_use.end()) return std::nullopt;
    const auto found = work.rack->pieces.find(chosen->second);
    if (found == work.rack->pieces.end() || found->second.where != Whereabouts::rack || found->second.kind == PieceKind::coil || found->second.tube != tube) return std::nullopt;
    return RackLength{chosen->second, found->second.kind, found->second.length, found->second.place, found->second.lot};
}

std::vector<StockTube> tubes_on_rack(const Ledger& ledger) {
    std::vector<StockTube> tubes;
    for (const auto& [number, piece] : ledger.pieces)
        if (std::find(tubes.begin(), tubes.end(), piece.tube) == tubes.end()) tubes.push_back(piece.tube);
    std::sort(tubes.begin(), tubes.end());
    return tubes;
}

std::optional<PieceNumber> piece_cut_for(const Ledger& ledger, const std::string& line) {
    for (auto piece = ledger.pieces.rbegin(); piece != ledger.pieces.rend(); ++piece)
        if (piece->second.where == Whereabouts::in_hand && piece->second.line == line) return piece->first;
    return std::nullopt;
}

bool is_forgotten(const Work& work, PieceNumber piece) {
    const auto found = work.rack->pieces.find(piece);
    if (found == work.rack->pieces.end() || found->second.where != Whereabouts::in_hand) return false;
    const auto line = work.lines.find(found->second.line);
    return line == work.lines.end() || !line->second.cut || line->second.stage == Stage::done;
}

std::vector<PieceNumber> pieces_in_hand(const Ledger& ledger, const StockTube& tube) {
    std::vector<PieceNumber> found;
    for (const auto& [number, piece] : ledger.pieces)
        if (piece.where == Whereabouts::in_hand && piece.tube == tube) found.push_back(number);
    return found;
}

std::map<StockTube, CameOut> bends_by_tube(const Work& work) {
    std::map<StockTube, CameOut> by_tube;
    for (const LoggedBend& logged : work.bends) {
        const BendCheck& check = logged.check;
        if (!is_learned_from(check.record) || !check.target || !(check.measured.deg > 0)) continue;
        CameOut& sums = by_tube[stock_tube(check.with.tube)];
        const double off = (check.measured - *check.target).deg;
        ++sums.bends;
        sums.opens_at_90.deg += 90 * (check.set - check.measured).deg / check.measured.deg;
        sums.off.deg += off * off;
    }
    for (auto& [tube, sums] : by_tube) {
        sums.opens_at_90.deg /= sums.bends;
        sums.off.deg = std::sqrt(sums.off.deg / sums.bends);
    }
    return by_tube;
}

std::optional<StockTrouble> write_stock(Work& work, const std::string& day, const std::vector<StockEvent>& events) {
    Ledger next = *work.rack.ledger;
    for (const StockEvent& event : events)
        if (const auto written = write(next, {day_number(day), event}); !written.ok()) return written.trouble();
    work.rack.ledger = std::make_shared<const Ledger>(std::move(next));
    return std::nullopt;
}

PieceNumber stick_taken(Work& work, const std::string& day, const StockTube& tube, ExactLength length) {
    const auto in_use = length_in_use(work, tube);
    for (const RackLength& there : lengths_on_rack(*work.rack.ledger, tube))
        if (there.kind == PieceKind::stick && there.length == length && !(in_use && in_use->piece == there.piece)) return there.piece;
    const PieceNumber number = work.rack->next_number();
    must_write(work, day, {Received{number, PieceKind::stick, tube, length, "", "", {}}});
    return number;
}

void cut_for_line(Work& work, const std::string& day, const StockTube& tube, const std::string& line, ExactLength length) {
    const auto from = length_in_use(work, tube);
    if (!from) return;
    must_write(work, day, {Cut{from->piece, work.rack->next_number(), length, kerf_lost(from->length, length, exact(work.rules.saw)), line}});
}

void built_in(Work& work, const std::string& day, const std::string& line, ExactLength trimmed) {
    const auto piece = piece_cut_for(*work.rack.ledger, line);
    if (!piece) return;
    must_write(work, day, {Used{*piece, std::min(trimmed, work.rack->pieces.at(*piece).length), {}}});
}

void write_spoiled(Work& work, const std::string& day, const StockTube& tube, const std::string& line, const std::vector<ExactLength>& kept, const std::string& reason) {
    const auto piece = piece_cut_for(*work.rack.ledger, line);
    int number = work.rack->next_number().n;
    std::vector<StockEvent> events;
    if (!piece) {
        for (const ExactLength& length : kept) events.push_back(Received{{number++}, PieceKind::offcut, tube, length, "", "", {}});
        return must_write(work, day, events);
    }
    ExactLength left = work.rack->pieces.at(*piece).length, keeping;
    for (const ExactLength& length : kept) keeping += length;
    // Each length was rounded once; together they can be a micrometre more than the piece.
    const ExactLength scrap{std::max<std::int64_t>(0, left.um - keeping.um)};
    left -= scrap;
    if (scrap.um > 0) events.push_back(Scrapped{*piece, scrap, reason});
    else events.push_back(PutBack{*piece, ""});
    for (std::size_t i = 1; i < kept.size() && kept[i] < left; ++i) {
        events.push_back(Cut{*piece, {number++}, kept[i], {}, ""});
        left -= kept[i];
    }
    must_write(work, day, events);
}

}  // namespace tubewright
