// The rack by hand: what came in, where it lies, what it cost, what is straightened off a coil, what goes to the bin.

#include <algorithm>
#include <cmath>

#include "state/cut_plan.h"
#include "state/doing.h"

namespace tubewright {
namespace {

bool on_screen(const State& state, Screen screen) { return state.looks.screen == screen; }

void change_stock(Doing& doing, StockEvent event) {
    Work next = doing.state.work;
    if (!write_stock(next, doing.state.day, {std::move(event)})) change_work(doing, std::move(next));
}

/// Out of the question, and on to a piece that it brought.
void leave_question_for(Doing& doing, PieceNumber piece) {
    leave_beside(doing.state);
    if (on_screen(doing.state, Screen::rack_piece)) leave_beside(doing.state);
    show_piece(doing, piece);
}

void take_length(Doing& doing, ExactLength length) {
    State& state = doing.state;
    const PieceKind kind = state.looks.rack_choice == "coil" ? PieceKind::coil : state.looks.rack_choice == "offcut" ? PieceKind::offcut : PieceKind::stick;
    const PieceNumber number = state.work.rack->next_number();
    change_stock(doing, Received{number, kind, *state.looks.tube, length, "", "", {}});
    leave_question_for(doing, number);
}

void take_straightened(Doing& doing, ExactLength length) {
    State& state = doing.state;
    const StockPiece* coil = piece_in_sight(state);
    if (!coil || coil->kind != PieceKind::coil || coil->length < length) return;
    const ExactLength lost = std::min(exact(state.work.rules.straighten), coil->length - length);
    const PieceNumber number = state.work.rack->next_number();
    change_stock(doing, Straightened{*state.looks.piece, number, length, lost, coil->place});
    leave_question_for(doing, number);
}

/// Off a stick or offcut, and to the bin in the end: a bend or flare to practise on, a piece that a bender is learned from.
void take_practice(Doing& doing, ExactLength length) {
    State& state = doing.state;
    const StockPiece* piece = piece_in_sight(state);
    if (!piece || piece->kind == PieceKind::coil || piece->length < length) return;
    Work next = state.work;
    const PieceNumber number = next.rack->next_number();
    const ExactLength kerf = kerf_lost(piece->length, length, exact(next.rules.saw));
    if (write_stock(next, state.day, {Cut{*state.looks.piece, number, length, kerf, ""}, Scrapped{number, length, reason_practice}})) return;
    if (const auto planned = tubes_to_cut(state); planned.size() == 1 && planned[0].tube == piece->tube && length >= exact(practice_length)) next.rules.practice = false;  // that was it
    change_work(doing, std::move(next));
    leave_beside(state);
}

void take_word(Doing& doing, RackAsk ask) {
    State& state = doing.state;
    const StockPiece* piece = piece_in_sight(state);
    if (!piece) return leave_beside(state);
    const std::string word = without_blanks(state.looks.typed);
    if (ask == RackAsk::place) change_stock(doing, Moved{*state.looks.piece, word});
    else change_stock(doing, Labelled{*state.looks.piece, word, piece->price});
    leave_beside(state);
}

void take_price(Doing& doing, RackAsk ask, Money price) {
    State& state = doing.state;
    if (ask == RackAsk::price_of) {
        Work next = state.work;
        next.prices[state.looks.rack_choice] = price;
        change_work(doing, std::move(next));
    } else if (const StockPiece* piece = piece_in_sight(state)) {
        change_stock(doing, Labelled{*state.looks.piece, piece->lot, {price, piece->length}});
    }
    leave_beside(state);
}

void take_rule(Doing& doing, RackAsk ask, Length length) {
    ShopRules rules = doing.state.work.rules;
    (ask == RackAsk::saw ? rules.saw : ask == RackAsk::keep ? rules.keep : rules.straighten) = length;
    change_rules(doing, rules);
    leave_beside(doing.state);
}

}  // namespace

bool is_of_rack(Screen screen) {
    constexpr Screen screens[] = {Screen::rack, Screen::rack_tube, Screen::rack_piece, Screen::rack_ask, Screen::plan, Screen::plan_jobs, Screen::buy, Screen::joints, Screen::joint, Screen::shop_rules};
    return std::find(std::begin(screens), std::end(screens), screen) != std::end(screens);
}

bool undo_is_of_bench(const State& state) { return is_of_rack(state.looks.screen) && !state.past.empty() && state.past.back().work.lines != state.work.lines; }

bool is_in_letters(RackAsk ask) { return ask == RackAsk::place || ask == RackAsk::lot; }
bool is_by_choice(RackAsk ask) { return ask == RackAsk::size || ask == RackAsk::material || ask == RackAsk::kind; }

std::optional<Length> typed_rack_length(const State& state) {
    const auto typed = typed_number(state.looks.typed);
    if (!typed || !state.looks.rack_ask) return std::nullopt;
    const Length length{reader_unit(state) == Unit::inch ? *typed * 25.4 : *typed};
    const bool may_be_none = *state.looks.rack_ask != RackAsk::length && *state.looks.rack_ask != RackAsk::straighten && *state.looks.rack_ask != RackAsk::practice;
    if (*state.looks.rack_ask == RackAsk::saw && length > widest_saw) return std::nullopt;
    if (length > longest_stick || exact(length).um < (may_be_none ? 0 : 1)) return std::nullopt;
    return length;
}

std::optional<Money> typed_price(const State& state) {
    const auto typed = typed_number(state.looks.typed);
    if (!typed || !(*typed * 100 <= static_cast<double>(highest_price.cents))) return std::nullopt;
    return Money{std::llround(*typed * 100)};
}

const StockPiece* piece_in_sight(const State& state) {
    if (!state.looks.piece) return nullptr;
    const auto found = state.work.rack->pieces.find(*state.looks.piece);
    return found != state.work.rack->pieces.end() && found->second.where == Whereabouts::rack ? &found->second : nullptr;
}

std::optional<std::size_t> last_entry_of(const Ledger& ledger, PieceNumber piece) {
    const auto touches = ledger.touches.find(piece);
    if (touches == ledger.touches.end() || touches->second.empty()) return std::nullopt;
    const std::size_t entry = touches->second.back().entry;
    // What the bench wrote goes by undo: its own record says the same thing.
    const StockEvent& event = ledger.entries[entry].event;
    if (!std::holds_alternative<Received>(event) && !std::holds_alternative<Straightened>(event) && !std::holds_alternative<Moved>(event) && !std::holds_alternative<Labelled>(event)) return std::nullopt;
    for (const PieceNumber touched : ledger.touched_by.at(entry))
        if (ledger.touches.at(touched).back().entry != entry) return std::nullopt;
    return entry;
}

bool is_as_it_came(const Ledger& ledger, PieceNumber number) {
    const auto piece = ledger.pieces.find(number);
    if (piece == ledger.pieces.end() || piece->second.where != Whereabouts::rack) return false;
    const auto* came = std::get_if<Received>(&ledger.entries[ledger.touches.at(number).front().entry].event);
    return came && came->length == piece->second.length;
}

std::vector<PieceNumber> short_ends(const Work& work, const StockTube& tube) {
    std::vector<PieceNumber> found;
    const auto in_use = length_in_use(work, tube);
    for (const RackLength& length : lengths_on_rack(*work.rack.ledger, tube))
        if (length.kind == PieceKind::offcut && length.length < exact(work.rules.keep) && !(in_use && in_use->piece == length.piece)) found.push_back(length.piece);
    return found;
}

void show_tube(Doing& doing, const StockTube& tube) {
    doing.state.looks.tube = tube;
    show_beside(doing.state, Screen::rack_tube);
}

void show_piece(Doing& doing, PieceNumber piece) {
    State& state = doing.state;
    const auto found = state.work.rack->pieces.find(piece);
    if (found == state.work.rack->pieces.end() || found->second.where != Whereabouts::rack) return;
    state.looks.piece = piece;
    state.looks.tube = found->second.tube;
    show_beside(state, Screen::rack_piece);
}

void ask_rack(Doing& doing, RackAsk ask, const std::string& about) {
    State& state = doing.state;
    const bool of_piece = ask == RackAsk::straighten || ask == RackAsk::practice || ask == RackAsk::place || ask == RackAsk::lot || ask == RackAsk::price;
    if (of_piece && !(on_screen(state, Screen::rack_piece) && piece_in_sight(state))) return;
    if ((ask == RackAsk::kind || ask == RackAsk::length) && !(on_screen(state, Screen::rack_tube) && state.looks.tube)) return;
    if (ask == RackAsk::size && !on_screen(state, Screen::rack)) return;
    if (ask == RackAsk::material) return;  // after the size
    show_beside(state, Screen::rack_ask);
    state.looks.rack_ask = ask;
    state.looks.rack_choice = about;
    const StockPiece* piece = piece_in_sight(state);
    if (ask == RackAsk::place && piece) state.looks.typed = piece->place;
    if (ask == RackAsk::lot && piece) state.looks.typed = piece->lot;
}

void answer_rack(Doing& doing, const std::string& id) {
    State& state = doing.state;
    if (!on_screen(state, Screen::rack_ask) || !state.looks.rack_ask || !is_by_choice(*state.looks.rack_ask)) return;
    switch (*state.looks.rack_ask) {
        case RackAsk::size: {
            std::size_t index = 0;
            for (; index < state.offers.tubes.size(); ++index)
                if (std::to_string(index) == id) break;
            if (index == state.offers.tubes.size()) return;
            state.looks.rack_choice = id;
            state.looks.rack_ask = RackAsk::material;
            state.looks.page = 0;
            return;
        }
        case RackAsk::material:
            for (const NamedOffer& material : state.offers.materials)
                if (material.id == id) {
                    const TubeOffer& size = state.offers.tubes.at(static_cast<std::size_t>(std::stoul(state.looks.rack_choice)));
                    leave_beside(state);
                    return show_tube(doing, stock_tube({size.od, size.wall, material.id}));
                }
            return;
        case RackAsk::kind:
            if (id != "stick" && id != "coil" && id != "offcut") return;
            state.looks.rack_choice = id;
            state.looks.rack_ask = RackAsk::length;
            state.looks.typed.clear();
            return;
        default: return;
    }
}

void next_at_rack(Doing& doing) {
    State& state = doing.state;
    if (!state.looks.rack_ask) return;
    const RackAsk ask = *state.looks.rack_ask;
    const auto length = typed_rack_length(state);
    const auto price = typed_price(state);
    switch (ask) {
        case RackAsk::size:
        case RackAsk::material:
        case RackAsk::kind: return;
        case RackAsk::length: return length ? take_length(doing, exact(*length)) : void();
        case RackAsk::practice: return length ? take_practice(doing, exact(*length)) : void();
        case RackAsk::straighten: return length ? take_straightened(doing, exact(*length)) : void();
        case RackAsk::place:
        case RackAsk::lot: return take_word(doing, ask);
        case RackAsk::price:
        case RackAsk::price_of: return price ? take_price(doing, ask, *price) : void();
        case RackAsk::saw:
        case RackAsk::keep:
        case RackAsk::straighten_cost: return length ? take_rule(doing, ask, *length) : void();
    }
}

void press_rack_key(Doing& doing, const std::string& key) {
    Looks& looks = doing.state.looks;
    if (!looks.rack_ask || is_by_choice(*looks.rack_ask)) return;
    looks.typed = is_in_letters(*looks.rack_ask) ? with_letter(looks.typed, key, longest_place) : with_key(looks.typed, key);
}

void one_more_like(Doing& doing, PieceNumber number) {
    const State& state = doing.state;
    const auto found = state.work.rack->pieces.find(number);
    if (!on_screen(state, Screen::rack_piece) || found == state.work.rack->pieces.end() || !is_as_it_came(*state.work.rack.ledger, number)) return;
    const StockPiece& piece = found->second;
    const PieceNumber next = state.work.rack->next_number();
    change_stock(doing, Received{next, piece.kind, piece.tube, piece.length, piece.place, piece.lot, piece.price});
}

void bin_piece(Doing& doing, PieceNumber number, bool missing) {
    State& state = doing.state;
    const StockPiece* piece = piece_in_sight(state);
    if (!on_screen(state, Screen::rack_piece) || !piece || state.looks.piece != number) return;
    const bool short_end = piece->length < exact(state.work.rules.keep);
    change_stock(doing, Scrapped{number, piece->length, missing ? reason_missing : short_end ? reason_short_end : reason_binned});
    leave_beside(state);
}

void bin_short_ends(Doing& doing) {
    State& state = doing.state;
    if (!on_screen(state, Screen::rack_tube) || !state.looks.tube) return;
    Work next = state.work;
    std::vector<StockEvent> events;
    for (const PieceNumber piece : short_ends(state.work, *state.looks.tube)) events.push_back(Scrapped{piece, next.rack->pieces.at(piece).length, reason_short_end});
    if (!write_stock(next, state.day, events)) change_work(doing, std::move(next));
}

void take_entry_back(Doing& doing, std::size_t entry) {
    if (!on_screen(doing.state, Screen::rack_piece) || last_entry_of(*doing.state.work.rack.ledger, doing.state.looks.piece.value_or(PieceNumber{})) != entry) return;
    change_stock(doing, TakenBack{entry});
    if (!piece_in_sight(doing.state)) leave_beside(doing.state);
}

void put_on_rack(Doing& doing, PieceNumber piece) {
    if (on_screen(doing.state, Screen::rack_tube) && is_forgotten(doing.state.work, piece)) change_stock(doing, PutBack{piece, ""});
}

void change_rules(Doing& doing, const ShopRules& rules) {
    Work next = doing.state.work;
    next.rules = rules;
    change_work(doing, std::move(next));
}

}  // namespace tubewright
