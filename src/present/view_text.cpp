#include "present/view_text.h"

#include <algorithm>
#include <cmath>

namespace tubewright {
namespace {

std::string line_of(const std::string& text) { return text.empty() ? "" : text + "\n"; }

const char* sign(Tone tone) {
    switch (tone) {
        case Tone::plain: return "  ";
        case Tone::go: return "+ ";
        case Tone::now: return "> ";
        case Tone::caution: return "! ";
        case Tone::stop: return "X ";
    }
    return "";
}

std::string said(const std::vector<TextView>& lines) {
    std::string all;
    for (const TextView& line : lines) all += sign(line.tone) + line.text + "\n";
    return all;
}

std::string button(const ButtonView& view) {
    if (!view.enabled) return "(" + view.label + ": " + view.why_not + ")";
    std::string label = view.label;
    if (view.weight == Weight::main) label += "*";
    if (view.weight == Weight::warn) label += "!";
    if (view.held) label += "~";
    if (view.chosen) label += "=";
    return "[" + label + "]";
}

std::string buttons(const std::vector<ButtonView>& views) {
    std::string all;
    for (const ButtonView& view : views) all += (all.empty() ? "" : " ") + button(view);
    return line_of(all);
}

std::string pager(const PagerView& view) {
    if (!view.needed) return "";
    return button(view.earlier) + " " + view.place + " " + button(view.later) + "\n";
}

std::string moves(const std::vector<MoveChip>& chips) {
    std::string all;
    for (const MoveChip& chip : chips) {
        const char* mark = chip.standing == MoveChip::Standing::now ? ">" : chip.standing == MoveChip::Standing::done ? "+" : "";
        all += (all.empty() ? "" : " | ") + (mark + chip.label) + " " + chip.value;
    }
    return line_of(all);
}

std::string picture(const std::optional<PictureView>& view) {
    if (!view) return "";
    std::string all = "picture: " + view->caption;
    for (const auto& [anchor, label] : view->labels) all += "; " + label;
    for (const auto& [swatch, words] : view->legend) all += "; colour: " + words;
    if (view->orbit) all += "; turned";
    return all + "\n" + (view->straight_on ? button(*view->straight_on) + "\n" : "");
}

std::string clock(const std::optional<ClockView>& view) {
    if (!view) return "";
    std::string all = "clock: " + view->caption;
    for (const auto& [deg, word] : view->rim) all += ", " + word + " at " + std::to_string(std::lround(deg));
    for (const ClockHand& hand : view->hands) all += "; " + hand.label + " at " + std::to_string(std::lround(hand.clock_deg));
    return all + "\n";
}

std::string cells(const std::vector<std::string>& row) {
    std::string all;
    for (const std::string& cell : row) all += (all.empty() ? "" : " | ") + cell;
    return all + "\n";
}

std::string body(const ListBody& b) {
    std::string all = line_of(b.heading);
    for (const RowView& row : b.rows) {
        all += sign(row.tone) + button(row.touch);
        if (!row.detail.empty()) all += " " + row.detail;
        if (!row.right.empty()) all += " -- " + row.right;
        if (row.done) all += " -- " + std::to_string(std::lround(*row.done * 100)) + " %";
        all += "\n";
        for (const CutPart& part : row.parts)
            all += "      " + std::to_string(std::lround(part.from * 100)) + " to " + std::to_string(std::lround(part.to * 100)) + " %: " + part.label + (part.what == CutPart::What::kept ? ", kept" : part.what == CutPart::What::scrap ? ", scrap" : "") + "\n";
    }
    return all + said(b.notes) + pager(b.pager);
}

std::string body(const OverviewBody& b) {
    std::string all;
    for (const auto& [name, value] : b.facts) all += name + ": " + value + "\n";
    return all + said(b.findings) + pager(b.pager) + picture(b.picture) + buttons(b.buttons);
}

std::string body(const TicksBody& b) {
    std::string all = line_of(b.figure.empty() ? b.heading : b.heading + " " + b.figure);
    for (const TickView& tick : b.ticks) {
        all += std::string(tick.ticked ? "[x] " : "[ ] ") + tick.touch.label + (tick.touch.enabled ? "" : " (" + tick.touch.why_not + ")");
        all += (tick.later ? " " + button(*tick.later) : "") + "\n";
    }
    return all + said(b.cautions) + pager(b.pager);
}

std::string body(const MarkOutBody& b) {
    std::string all = b.cut_label + " " + b.cut + "\n" + cells(b.columns);
    for (const MarkRow& row : b.rows) all += cells({row.bend, row.from_a, row.from_b, row.align});
    return all + said(b.notes) + pager(b.pager);
}

std::string body(const MoveBody& b) {
    return moves(b.moves) + line_of(b.asks) + line_of(b.hero) + said(b.lines) + clock(b.clock) + picture(b.picture) + buttons(b.buttons);
}

std::string body(const KeypadBody& b) {
    return moves(b.moves) + b.asks + "\n" + "entry: " + b.entry + " " + b.unit + "\n" + said(b.lines) + buttons(b.keys) + picture(b.picture);
}

std::string body(const ChoiceBody& b) { return moves(b.moves) + line_of(b.heading) + line_of(b.hero) + said(b.lines) + buttons(b.choices); }

std::string body(const TableBody& b) {
    std::string all = line_of(b.heading) + cells(b.columns);
    for (std::size_t i = 0; i < b.rows.size(); ++i)
        all += (std::find(b.heads.begin(), b.heads.end(), i) == b.heads.end() ? "" : "= ") + cells(b.rows[i]);
    return all + said(b.totals) + pager(b.pager);
}

std::string body(const OrderBody& b) {
    std::string all;
    for (const OrderCard& card : b.cards) all += sign(card.tone) + card.number + ", " + card.hook + (card.touch.chosen ? " =" : "") + "\n";
    if (b.looked) all += "looked: " + std::to_string(std::lround(*b.looked * 100)) + " %\n";
    return all + (b.movable ? "cards can be moved\n" : "") + b.picked + "\n" + buttons({b.earlier, b.later}) + said(b.notes) + picture(b.picture) + pager(b.pager);
}

std::string body(const CardBody& b) { return body(b.figures) + picture(b.picture); }

std::string body(const SettingsBody& b) {
    std::string all;
    for (const SettingsGroup& group : b.groups) all += group.name + ": " + buttons(group.choices);
    return all + (b.ruler ? "bar: " + b.ruler_text + "\n" : "") + said(b.notes) + picture(b.picture);
}

std::string tiles(const std::vector<TileView>& views) {
    std::string all;
    for (const TileView& tile : views) all += (tile.name.empty() ? "" : tile.name + " ") + button(tile.touch) + "\n";
    return all;
}

std::string remedy(const std::optional<ButtonView>& view) { return view ? "remedy " + button(*view) + "\n" : ""; }

std::string body(const TilesBody& b) { return line_of(b.heading) + tiles(b.tiles) + picture(b.picture) + said(b.notes) + remedy(b.remedy); }

std::string piece(const PieceView& view) {
    const char* const shapes[] = {"straight", "bent", "half turn"};
    std::string all = std::string("piece, ") + shapes[static_cast<int>(view.shape)] + ": ";
    for (const std::string* words : {&view.hook_end, &view.lever_end, &view.ink_words, &view.taped_words}) all += words->empty() ? "" : *words + "; ";
    return all + view.caption + "\n";
}

std::string body(const PieceBody& b) { return body(b.figures) + piece(b.piece); }

std::string body(const RouteBody& b) {
    std::string all = line_of(b.asks) + picture(b.picture) + (b.piece ? piece(*b.piece) : "") + said(b.lines) + remedy(b.remedy);
    if (b.earlier) all += button(*b.earlier) + "\n";
    all += tiles(b.cells);
    if (b.later) all += button(*b.later) + "\n";
    if (b.leads) all += "leads to " + std::to_string(std::lround(b.leads->deg)) + "\n";
    return all + (b.clock ? "clock: " : "") + buttons(b.keys) + buttons(b.ways);
}

std::string ribbon(const RibbonView& view) {
    std::string all = "A ";
    for (const RibbonBend& bend : view.bends) {
        const char* mark = bend.standing == RibbonBend::Standing::now ? ">" : bend.standing == RibbonBend::Standing::done ? "+" : "";
        all += "--" + (mark + bend.number);
    }
    all += "-- B   " + view.tally + "\n";
    for (const RibbonMark& mark : view.marks) all += "mark " + mark.label + "\n";
    return all;
}

}  // namespace

std::string as_text(const ScreenView& view) {
    std::string all = view.header.title;
    if (!view.header.place.empty()) all += " / " + view.header.place;
    for (const std::string& chip : view.header.chips) all += "  {" + chip + "}";
    all += "\n";
    if (!view.notice.empty()) all += (view.good_news ? "GOOD NEWS " : "NOTICE ") + view.notice + "\n";
    if (view.ribbon) all += ribbon(*view.ribbon);
    all += "----\n" + std::visit([](const auto& b) { return body(b); }, view.body) + "----\n";
    return all + buttons(view.footer.buttons);
}

}  // namespace tubewright
