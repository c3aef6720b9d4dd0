// The rack: its tubes, the lengths of one tube, one length, and what is asked about them.

#include <algorithm>

#include "present/entry_pieces.h"
#include "present/pieces.h"
#include "present/stock_words.h"
#include "present/words.h"
#include "state/cut_plan.h"

namespace tubewright {
namespace {

ExactLength length_of(const std::vector<RackLength>& lengths) {
    ExactLength all;
    for (const RackLength& length : lengths) all += length.length;
    return all;
}

std::string count_words(const std::vector<RackLength>& lengths) {
    std::string said;
    const auto add = [&](PieceKind kind, const char* one, const char* many) {
        const auto count = static_cast<std::size_t>(std::count_if(lengths.begin(), lengths.end(), [&](const RackLength& length) { return length.kind == kind; }));
        if (count > 0) said += (said.empty() ? "" : ", ") + counted(count, one, many);
    };
    add(PieceKind::stick, "stick", "sticks");
    add(PieceKind::coil, "coil", "coils");
    add(PieceKind::offcut, "offcut", "offcuts");
    return said.empty() ? "nothing on the rack" : said;
}

/// What came in and where it went, to the micrometre; and whether that comes to the same.
TextView balance_words(const State& state, const StockTube& tube) {
    const Tape tape = reader_tape(state);
    const auto all = balances(*state.work.rack.ledger);
    const auto found = all.find(tube);
    if (found == all.end()) return {"Nothing of this tube has come in yet."};
    const Balance& b = found->second;
    if (!b.holds()) return {"The lengths do not add up: what came in is not what is there. Keep a backup and tell whoever looks after the program.", Tone::stop};
    // What is on the rack is shown as the rest, so that the parts make up the whole to the last sixteenth.
    Length rest = on_tape(measured(b.received), tape);
    std::string parts;
    const auto add = [&](ExactLength length, const char* where) {
        if (length.um == 0) return;
        const Length shown = on_tape(measured(length), tape);
        rest = rest - shown;
        parts += ", " + text(shown, tape) + " " + where;
    };
    add(b.in_hand, "in hand");
    add(b.in_lines, "in lines");
    add(b.scrapped, "scrap");
    add(b.kerf, "saw cuts");
    return {"Accounted for: " + text(measured(b.received), tape) + " came in: " + (b.on_rack.um == 0 && !parts.empty() ? parts.substr(2) : text(std::max(Length{}, rest), tape) + " on the rack" + parts) + ".", Tone::go};
}

RowView length_row(const State& state, const RackLength& length) {
    const Tape tape = reader_tape(state);
    RowView row;
    row.touch = press_button("piece-" + std::to_string(length.piece.n), capital(kind_word(length.kind)) + ", " + left_text(measured(length.length), tape), ShowPiece{length.piece});
    row.detail = place_words(length);
    if (const Price& price = state.work.rack->pieces.at(length.piece).price; price.per.um > 0) row.detail += (row.detail.empty() ? "cost " : ", cost ") + money_text(cost(price, length.length));
    const auto in_use = length_in_use(state.work, *state.looks.tube);
    if (in_use && in_use->piece == length.piece) row.right = "in use";
    else if (length.kind == PieceKind::offcut && length.length < exact(state.work.rules.keep)) row.right = "short end";
    return row;
}

/// A piece that was cut for a line. One whose line knows nothing of it can be put on the rack again.
RowView in_hand_row(const State& state, PieceNumber number) {
    const StockPiece& piece = state.work.rack->pieces.at(number);
    const std::string said = text(measured(piece.length), reader_tape(state)) + " cut for " + line_of_key(state, piece.line);
    RowView row;
    if (is_forgotten(state.work, number)) {
        row.touch = press_button("in-hand-" + std::to_string(number.n), "Hold: put " + said + " on the rack", PutOnRack{number});
        row.touch.held = true;
        row.detail = "that line is no longer there";
        row.tone = Tone::caution;
    } else {
        row.touch = unless(press_button("in-hand-" + std::to_string(number.n), capital(said), ShowPiece{number}), "at the bench");
    }
    return row;
}

/// One thing that happened to the piece.
std::string entry_words(const State& state, const LedgerEntry& entry, PieceNumber piece) {
    const Tape tape = reader_tape(state);
    const auto length = [&](ExactLength of) { return text(measured(of), tape); };
    const std::string day = capital(day_word(day_of(entry.day))) + ": ";
    struct Words {
        const decltype(length)& say;
        PieceNumber piece;
        const State& state;
        std::string line_of(const std::string& key) const { return line_of_key(state, key); }
        std::string operator()(const Received& e) const { return say(e.length) + " came in"; }
        std::string operator()(const Straightened& e) const { return (e.stick == piece ? "straightened off a coil, " : "straightened off it, ") + say(e.length); }
        std::string operator()(const Cut& e) const { return (e.piece == piece ? "cut off, " : "cut off it, ") + say(e.length) + (e.line.empty() ? "" : " for " + line_of(e.line)); }
        std::string operator()(const Used&) const { return "built in"; }
        std::string operator()(const Scrapped& e) const { return say(e.length) + " to the bin, " + e.reason; }
        std::string operator()(const PutBack&) const { return "put back"; }
        std::string operator()(const Moved& e) const { return e.place.empty() ? "place wiped" : "moved to " + e.place; }
        std::string operator()(const Labelled&) const { return "lot or price told"; }
        std::string operator()(const TakenBack&) const { return "taken back"; }
    };
    return day + std::visit(Words{length, piece, state}, entry.event) + ".";
}

std::string price_words(const StockPiece& piece) { return piece.price.per.um > 0 ? money_text(cost(piece.price, piece.length)) : "not told"; }

std::string or_not_told(const std::string& word) { return word.empty() ? "not told" : word; }

/// Of the same kind, length and lot.
std::string like_it_words(const State& state, const StockPiece& piece) {
    const auto like = [&](const auto& one) { return one.second.where == Whereabouts::rack && one.second.kind == piece.kind && one.second.tube == piece.tube && one.second.length == piece.length && one.second.lot == piece.lot; };
    const auto& pieces = state.work.rack->pieces;
    return counted(static_cast<std::size_t>(std::count_if(pieces.begin(), pieces.end(), like)), "like this", "like this");
}

std::vector<TileView> piece_tiles(const State& state, const StockPiece& piece) {
    const PieceNumber number = *state.looks.piece;
    std::vector<TileView> tiles{tile("place", "where it lies", or_not_told(piece.place), AskRack{RackAsk::place}), tile("lot", "lot", or_not_told(piece.lot), AskRack{RackAsk::lot}),
                                tile("price", "what it cost", price_words(piece), AskRack{RackAsk::price})};
    if (is_as_it_came(*state.work.rack.ledger, number)) tiles.push_back(tile("one-more", like_it_words(state, piece), "One more came in", OneMoreLike{number}));
    if (piece.kind == PieceKind::coil) tiles.push_back(tile("straighten", "off this coil", "Straighten a length", AskRack{RackAsk::straighten}));
    else tiles.push_back(tile("practise", "cut off it, then binned", "A piece to practise on", AskRack{RackAsk::practice}));
    const Sheet* sheet = sheet_in_hand(state);
    const auto in_use = length_in_use(state.work, piece.tube);
    if (sheet && piece.kind != PieceKind::coil && stock_tube(sheet->line.tube) == piece.tube && !(in_use && in_use->piece == number))
        tiles.push_back(tile("cut-from", "for " + shortened(sheet->line.name), "Cut from this", TakeOffcut{number}));
    return tiles;
}

/// What is to be bought and has that key.
std::string item_of_key(const State& state, const std::string& key) {
    for (const auto& [item, count] : list_to_buy(state).value_or(BuyList{}))
        if (buy_key(item) == key) return item_words(state, item);
    return "this";
}

std::string ask_words(const State& state) {
    switch (*state.looks.rack_ask) {
        case RackAsk::size: return "Which size?";
        case RackAsk::material: return "Of what?";
        case RackAsk::kind: return "What came in?";
        case RackAsk::length: return "How long is the " + state.looks.rack_choice + "?";
        case RackAsk::straighten: return "How long is it to be?";
        case RackAsk::practice: return "How long is the piece to practise on?";
        case RackAsk::place: return "Where does it lie?";
        case RackAsk::lot: return "Which lot is it of?";
        case RackAsk::price: return "What did it cost?";
        case RackAsk::price_of: return "What does one cost: " + item_of_key(state, state.looks.rack_choice) + "?";
        case RackAsk::saw: return "How wide is the saw's cut?";
        case RackAsk::keep: return "From which length is an offcut worth keeping?";
        case RackAsk::straighten_cost: return "What does straightening cost, at each length?";
    }
    return "";
}

void fill_choice(const State& state, ScreenView& view) {
    TilesBody body;
    body.heading = ask_words(state);
    const RackAsk ask = *state.looks.rack_ask;
    std::vector<TileView> all;
    if (ask == RackAsk::size)
        for (std::size_t i = 0; i < state.offers.tubes.size(); ++i) {
            const TubeOffer& size = state.offers.tubes[i];
            all.push_back(tile("size-" + std::to_string(i), size.name, size_text({size.od, size.wall, ""}, size.name.find("mm") == std::string::npos ? Tape{Unit::inch} : Tape{Unit::mm}), AnswerRack{std::to_string(i)}));
        }
    if (ask == RackAsk::material)
        for (const NamedOffer& material : state.offers.materials) all.push_back(tile("material-" + material.id, "", material.name, AnswerRack{material.id}));
    if (ask == RackAsk::kind) all = {tile("kind-stick", "straight, whole", "Stick", AnswerRack{"stick"}), tile("kind-coil", "rolled up", "Coil", AnswerRack{"coil"}), tile("kind-offcut", "straight, left over", "Offcut", AnswerRack{"offcut"})};
    view.footer = side_footer(state);
    show_page_of(state, all, body, view.footer);
    view.body = std::move(body);
}

std::string why_not_length(const State& state) {
    if (state.looks.typed.empty()) return "nothing typed yet";
    const auto typed = typed_rack_length(state);
    const Tape tape = reader_tape(state);
    if (!typed) return *state.looks.rack_ask == RackAsk::saw ? "up to " + text(widest_saw, tape) : "more than 0, up to " + text(longest_stick, tape);
    const bool off_it = *state.looks.rack_ask == RackAsk::straighten || *state.looks.rack_ask == RackAsk::practice;
    const StockPiece* from = off_it ? piece_in_sight(state) : nullptr;
    return from && from->length < exact(*typed) ? "the " + kind_word(from->kind) + " has " + left_text(measured(from->length), tape) : "";
}

bool is_price(RackAsk ask) { return ask == RackAsk::price || ask == RackAsk::price_of; }

void fill_number(const State& state, ScreenView& view) {
    const Tape tape = reader_tape(state);
    const RackAsk ask = *state.looks.rack_ask;
    KeypadBody body;
    body.asks = ask_words(state);
    body.entry = state.looks.typed;
    body.unit = is_price(ask) ? "money" : unit_word(tape.unit);
    body.keys = number_keys(!is_price(ask) && tape.unit == Unit::inch);
    body.columns = 4;
    if (ask == RackAsk::straighten) body.lines = {{"Straightening takes another " + text(state.work.rules.straighten, tape) + " off the coil: ends that stay bent."}};
    if (ask == RackAsk::price) body.lines = {{"For all of it, in whatever you pay with. What is cut from it costs its share."}};
    if (ask == RackAsk::saw) body.lines = {{"0 for a tube cutter with a wheel."}};
    view.body = std::move(body);
    view.footer = side_footer(state);
    const std::string why_not = !is_price(ask) ? why_not_length(state) : state.looks.typed.empty() ? "nothing typed yet" : typed_price(state) ? "" : "up to " + money_text(highest_price);
    view.footer.buttons.push_back(unless(press_button("next", "Take it", Next{}, Weight::main), why_not));
    view.footer.main_id = "next";
}

}  // namespace

void fill_rack(const State& state, ScreenView& view) {
    const Tape tape = reader_tape(state);
    ListBody body;
    body.heading = "The rack";
    std::vector<RowView> rows;
    for (const StockTube& tube : tubes_on_rack(*state.work.rack.ledger)) {
        const std::vector<RackLength> lengths = lengths_on_rack(*state.work.rack.ledger, tube);
        RowView row;
        row.touch = press_button("tube-" + tube_key(tube), tube_words(state, tube), ShowTube{tube});
        row.detail = count_words(lengths);
        row.right = left_text(measured(length_of(lengths)), tape);
        rows.push_back(std::move(row));
    }
    show_page_of(state, rows, body);
    if (rows.empty()) body.notes = {{"No tube has come in yet. Touch Add tube and say what lies on your rack."}};
    view.header = header_of(state, "Tubewright", "rack");
    view.body = std::move(body);
    view.footer = side_footer(state);
    view.footer.buttons.push_back(press_button("plan", "Cutting plan", GoTo{Screen::plan}));
    view.footer.buttons.push_back(press_button("other-tube", "Add tube", AskRack{RackAsk::size}));
}

void fill_rack_tube(const State& state, ScreenView& view) {
    const StockTube& tube = *state.looks.tube;
    const std::vector<RackLength> lengths = lengths_on_rack(*state.work.rack.ledger, tube);
    ListBody body;
    body.heading = tube_words(state, tube);
    std::vector<RowView> rows;
    for (const RackLength& length : lengths) rows.push_back(length_row(state, length));
    for (const PieceNumber piece : pieces_in_hand(*state.work.rack.ledger, tube)) rows.push_back(in_hand_row(state, piece));
    show_page_of(state, rows, body);
    body.notes = {balance_words(state, tube)};
    view.header = header_of(state, "Tubewright", "rack");
    view.body = std::move(body);
    const std::size_t ends = short_ends(state.work, tube).size();
    view.footer = side_footer(state);
    if (ends > 0) {
        ButtonView bin = press_button("bin-ends", "Hold: bin " + counted(ends, "short end", "short ends"), BinShortEnds{}, Weight::warn);
        bin.held = true;
        view.footer.buttons.insert(view.footer.buttons.begin(), std::move(bin));
    }
    view.footer.buttons.push_back(press_button("came-in", "Tube came in", AskRack{RackAsk::kind}));
}

void fill_rack_piece(const State& state, ScreenView& view) {
    const StockPiece& piece = *piece_in_sight(state);
    const PieceNumber number = *state.looks.piece;
    TilesBody body;
    body.heading = capital(kind_word(piece.kind)) + ", " + left_text(measured(piece.length), reader_tape(state)) + " of " + tube_words(state, piece.tube);
    body.tiles = piece_tiles(state, piece);
    body.columns = 2;
    const auto& touches = state.work.rack->touches.at(number);
    constexpr std::size_t entries_shown = 3;
    for (std::size_t i = touches.size() > entries_shown ? touches.size() - entries_shown : 0; i < touches.size(); ++i)
        body.notes.push_back({entry_words(state, state.work.rack->entries[touches[i].entry], number)});
    view.header = header_of(state, "Tubewright", "rack");
    view.body = std::move(body);
    view.footer = side_footer(state);
    ButtonView bin = press_button("bin", "Hold: to the bin", BinPiece{number, false}, Weight::warn), missing = press_button("missing", "Hold: it is not there", BinPiece{number, true}, Weight::warn);
    bin.held = missing.held = true;
    view.footer.buttons.insert(view.footer.buttons.begin(), {bin, missing});
    if (const auto entry = last_entry_of(*state.work.rack.ledger, number)) {
        ButtonView take_back = press_button("take-back", "Hold: take the last entry back", TakeEntryBack{*entry});
        take_back.held = true;
        view.footer.buttons.push_back(std::move(take_back));
    }
}

void fill_rack_ask(const State& state, ScreenView& view) {
    const RackAsk ask = *state.looks.rack_ask;
    view.header = header_of(state, "Tubewright", is_price(ask) ? "prices" : "rack");
    if (is_by_choice(ask)) return fill_choice(state, view);
    if (is_in_letters(ask)) return fill_letters(state, ask_words(state), "", view);
    fill_number(state, view);
}

void fill_shop_rules(const State& state, ScreenView& view) {
    const Tape tape = reader_tape(state);
    const ShopRules& rules = state.work.rules;
    TilesBody body;
    body.heading = "How your shop cuts";
    const auto length = [&](const char* id, const char* name, Length value, RackAsk ask) { return tile(id, name, value > Length{} ? text(value, tape) : "nothing", AskRack{ask}); };
    body.tiles = {length("saw", "the saw takes", rules.saw, RackAsk::saw), length("keep", "offcuts are kept from", rules.keep, RackAsk::keep),
                  length("straighten-cost", "straightening takes", rules.straighten, RackAsk::straighten_cost), tile("practice", "a piece to practise on", rules.practice ? "planned" : "not planned", SwitchPractice{}),
                  tile("spare", "a spare of the hardest line", rules.spare ? "where it is likely to be needed" : "not planned", SwitchSpare{})};
    body.tiles[3].touch.chosen = rules.practice;
    body.tiles[4].touch.chosen = rules.spare;
    body.columns = 3;
    view.header = header_of(state, "Tubewright", "cutting");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

}  // namespace tubewright
