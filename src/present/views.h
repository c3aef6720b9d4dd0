#pragma once
// What a screen says: finished text, ids, yes and no, and places as shares from 0 to 1. Whole in
// itself: who draws it decides nothing and rounds nothing.

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "base/words.h"
#include "bench/card_gauge.h"
#include "state/action.h"
#include "tube/part.h"

namespace tubewright {

/// A thing to touch. A disabled one says why. `held` ones have to be held down for 0.8 s.
enum class Weight { plain, main, warn, quiet };
struct ButtonView {
    std::string id, label;
    bool enabled = true;
    std::string why_not;
    std::optional<Action> press;
    Weight weight = Weight::plain;
    bool held = false;
    bool chosen = false;   ///< one of several, this one is in force
    bool operator==(const ButtonView&) const = default;
};

/// Meaning, never given by colour alone.
enum class Tone { plain, go, now, caution, stop };

struct TextView {
    std::string text;
    Tone tone = Tone::plain;
    bool operator==(const TextView&) const = default;
};

/// Always in sight: where in the work we are.
struct HeaderView {
    std::string title, place;          ///< "axle crossover", "bend 4 of 5, 2 done"
    std::vector<std::string> chips;    ///< tube, stick left, scrap today
    bool operator==(const HeaderView&) const = default;
};

/// The straight, cut tube, true to scale. Places are shares of the cut length from end A (left) to B.
struct RibbonBend {
    std::string number;
    double from, to;
    enum class Standing { coming, now, done } standing;
    bool operator==(const RibbonBend&) const = default;
};
struct RibbonTick {
    double at;
    int rank;            ///< 0 labelled, 1 long, 2 short
    std::string label;
    bool operator==(const RibbonTick&) const = default;
};
struct RibbonMark {
    double at;
    std::string label;
    bool now = false;
    bool operator==(const RibbonMark&) const = default;
};
struct RibbonView {
    std::vector<RibbonBend> bends;
    std::vector<RibbonTick> ticks;
    std::vector<RibbonMark> marks;     ///< ink marks; on the bench just the one in hand; those with a label are in the list beside
    double waste_a = 0, waste_b = 0;   ///< shares cut off or used up by the fitting
    std::string tally;                 ///< "formed 12 1/2, left 29 7/16"; empty while marking out
    bool operator==(const RibbonView&) const = default;
};

/// A direction around the tube, on a face seen from the hook side along the tube. Clock angles are in
/// degrees clockwise from the top.
struct ClockHand {
    double clock_deg;
    std::string label;
    enum class Kind { leg, top_line, swing, wrong } kind;
    bool operator==(const ClockHand&) const = default;
};
struct ClockView {
    std::vector<ClockHand> hands;
    std::vector<std::pair<double, std::string>> rim;   ///< words around it: up, away, down, toward
    std::string caption;
    bool operator==(const ClockView&) const = default;
};

/// One leg or bend of a finished line that stands out, counted from 0.
struct LitPart {
    enum class What { run, bend } what;
    std::size_t index;
    bool operator==(const LitPart&) const = default;
};

/// A bender card as it is to be drawn: how far the lever has gone, which solid is pointed out, and which numbers
/// have an arrow. The first three have the anchors gauge_1 to gauge_3.
struct CardPicture {
    Bender bender;
    SetUp set_up;
    Angle lever;
    std::optional<std::size_t> picked;
    std::vector<CardGauge> gauges = {};
    bool operator==(const CardPicture&) const = default;
};

/// What was wanted and what is made, laid over each other as a fitter holds them.
struct LaidOverPicture {
    Part wanted, made;
    bool operator==(const LaidOverPicture&) const = default;
};

/// What a colour of the picture means.
enum class Swatch { stands, swings, on_bench, picked };

/// Which picture in space is wanted; whoever can draw in space draws it.
struct PictureView {
    enum class Kind { finished, marked, turned, pulled, checked, card } kind;
    std::size_t step = 0;              ///< of the sheet, for all but `finished` and `card`
    std::string caption;
    std::vector<std::pair<Anchor, std::string>> labels;
    std::optional<std::pair<Angle, Angle>> again = std::nullopt;  ///< a second pull: what the bend reads, and the set angle to come
    std::optional<CardPicture> card = std::nullopt;  ///< of kind `card`, else none
    std::vector<std::pair<Swatch, std::string>> legend = {};
    bool entered = false;              ///< of the line being entered, not of the one in hand at the bench
    std::optional<LitPart> lit = std::nullopt;
    std::optional<Span> taped = std::nullopt;  ///< a tape from point to point of the finished part; they have the anchors gauge_1 and gauge_2
    std::optional<ButtonView> grip = std::nullopt;  ///< a finger on it turns it, and a short touch does this
    std::optional<Orbit> orbit = std::nullopt;  ///< how far it is turned
    std::optional<ButtonView> straight_on = std::nullopt;  ///< and back again
    std::optional<LaidOverPicture> laid_over = std::nullopt;  ///< of kind `finished`: in place of the line's own
    std::optional<Part> made = std::nullopt;  ///< the same: the tube as far as it is made, taped on the outside of its corners
    bool operator==(const PictureView&) const = default;
};

/// A piece that a bender is learned from, drawn flat: its hook end at the left, what is taped on it as a dimension.
struct PieceView {
    enum class Shape { straight, bent, bent_back } shape = Shape::straight;
    enum class Taped { nothing, whole, ink, angle, hook_leg, lever_leg, width, crown_gap, radius, past_start } taped = Taped::nothing;
    std::string taped_words;           ///< beside the dimension
    std::string hook_end, lever_end;   ///< beside the ends
    Angle angle{90};                   ///< of the bent one
    std::optional<double> ink = std::nullopt;        ///< of the straight one, as shares of its length
    std::string ink_words;
    std::optional<std::pair<double, double>> bend = std::nullopt;  ///< where it is to bend, the same
    std::string caption;               ///< under it
    bool operator==(const PieceView&) const = default;
};

/// One of the moves of a bend, in a row of three or four.
struct MoveChip {
    std::string label, value;
    enum class Standing { coming, now, done } standing;
    bool operator==(const MoveChip&) const = default;
};

// --- what fills the middle of a screen

/// A stretch of a length that is to be cut, as shares of it.
struct CutPart {
    double from, to;
    std::string label;
    enum class What { line, kept, scrap } what;
    bool operator==(const CutPart&) const = default;
};

/// Rows to choose from, with arrows to turn pages.
struct RowView {
    ButtonView touch;                  ///< label is the row's name
    std::string detail, right;
    std::optional<double> done;        ///< share done, for a bar
    Tone tone = Tone::plain;
    std::vector<CutPart> parts = {};   ///< drawn to scale under the detail, where there are any
    bool operator==(const RowView&) const = default;
};
struct PagerView {
    ButtonView earlier, later;
    std::string place;                 ///< "page 1 of 2"
    bool needed = false;
    bool operator==(const PagerView&) const = default;
};
struct ListBody {
    std::string heading;
    std::vector<RowView> rows;
    std::vector<TextView> notes;
    PagerView pager;
    bool operator==(const ListBody&) const = default;
};

/// One line before work starts: what it is, what speaks against it.
struct OverviewBody {
    std::vector<std::pair<std::string, std::string>> facts;   ///< name, value
    std::vector<TextView> findings;
    PagerView pager;                                          ///< of the findings
    std::optional<PictureView> picture;
    std::vector<ButtonView> buttons;
    bool operator==(const OverviewBody&) const = default;
};

/// A tick list; all ticked opens the main button. Some ticks have a second answer: `later`, chosen when that is
/// the one given.
struct TickView {
    ButtonView touch;                  ///< label is the sentence
    bool ticked = false;
    bool gate = true;
    std::optional<ButtonView> later = std::nullopt;
    bool operator==(const TickView&) const = default;
};
struct TicksBody {
    std::string heading, figure;  ///< the figure, if any, is set to be read from two steps away
    std::vector<TickView> ticks;
    std::vector<TextView> cautions;
    PagerView pager;
    std::vector<std::string> all_ticks, all_cautions;  ///< of every page with ticks: they share one size of letters
    bool operator==(const TicksBody&) const = default;
};

/// Every mark on the straight tube.
struct MarkRow {
    std::string bend, from_a, from_b, align;
    bool operator==(const MarkRow&) const = default;
};
struct MarkOutBody {
    std::string cut_label, cut;        ///< the length to cut
    std::vector<std::string> columns;
    std::vector<MarkRow> rows;
    std::vector<TextView> notes;
    PagerView pager;
    bool operator==(const MarkOutBody&) const = default;
};

/// One move of one bend, large.
struct MoveBody {
    std::vector<MoveChip> moves;
    std::string asks;                  ///< "Turn the tube"
    std::string hero;                  ///< "45° up"
    std::vector<TextView> lines;
    std::optional<ClockView> clock;
    std::optional<PictureView> picture;
    std::vector<ButtonView> buttons;   ///< besides the footer's
    bool operator==(const MoveBody&) const = default;
};

/// Our own keypad. `keys` are laid out in rows of `columns`.
struct KeypadBody {
    std::string asks, entry, unit;
    std::vector<TextView> lines;       ///< what is expected, what is wrong with the entry
    std::vector<ButtonView> keys;
    int columns = 3;
    std::vector<MoveChip> moves;
    std::optional<PictureView> picture = std::nullopt;  ///< where the number is measured
    bool below = false;                ///< the keys lie under the entry, over the whole width: letters
    bool operator==(const KeypadBody&) const = default;
};

/// A question with a few answers, side by side.
struct ChoiceBody {
    std::string heading, hero;
    std::vector<TextView> lines;
    std::vector<ButtonView> choices;
    std::vector<MoveChip> moves;
    bool operator==(const ChoiceBody&) const = default;
};

/// Figures in columns.
struct TableBody {
    std::string heading;
    std::vector<std::string> columns;
    std::vector<std::vector<std::string>> rows;
    std::vector<std::size_t> heads;    ///< which rows stand over the ones below them
    std::vector<TextView> totals;
    PagerView pager;
    bool operator==(const TableBody&) const = default;
};

/// Settings in groups of choices; the 50 mm bar sets the scale of the screen.
struct SettingsGroup {
    std::string name;
    std::vector<ButtonView> choices;
    bool operator==(const SettingsGroup&) const = default;
};
struct SettingsBody {
    std::vector<SettingsGroup> groups;
    bool ruler = false;                ///< draw the 50 mm bar
    std::string ruler_text;
    std::vector<TextView> notes;
    std::optional<PictureView> picture = std::nullopt;  ///< what is chosen, as it looks
    bool operator==(const SettingsBody&) const = default;
};

/// The bends in the order of work, as cards in rows, read like writing. A short touch picks one, for the arrows; a
/// finger that stays on it takes it to another place.
struct OrderCard {
    std::size_t bend;
    std::string number, hook;          ///< "4", "hook A"
    Tone tone = Tone::plain;
    ButtonView touch;                  ///< chosen: it is the one picked
    bool operator==(const OrderCard&) const = default;
};
struct OrderBody {
    std::vector<OrderCard> cards;
    std::size_t columns = 9;
    bool movable = false;              ///< a card follows the finger
    ButtonView earlier, later;
    std::string picked;                ///< the card that is picked, or how to pick one
    std::optional<double> looked;      ///< share of the looking that is done, for a bar
    std::vector<TextView> notes;       ///< why this order, or what it breaks
    PagerView pager;
    std::optional<PictureView> picture = std::nullopt;  ///< the bend in hand as it is pulled; drawn where there is room
    bool operator==(const OrderBody&) const = default;
};

/// What there is to choose from, or what has been chosen: each a large thing to touch with its value, what it is
/// the value of, and where words are too slow a drawing.
struct TileView {
    ButtonView touch;                  ///< label is the value
    std::string name;                  ///< over it, small
    enum class Drawing { none, outside, centre, inside, straights, moves, flat } drawing = Drawing::none;
    bool operator==(const TileView&) const = default;
};
struct TilesBody {
    std::string heading;
    std::vector<TileView> tiles;
    int columns = 4;
    std::optional<PictureView> picture;
    std::vector<TextView> notes;       ///< under the picture
    std::optional<ButtonView> remedy = std::nullopt;  ///< for the first of them
    bool operator==(const TilesBody&) const = default;
};

/// A wire while its numbers are entered: the wire, the numbers so far, and for the one in hand keys, the ways a
/// move can go, or the sides of a turn around a clock seen along the leg.
struct RouteBody {
    std::string asks;
    std::optional<PictureView> picture;
    std::vector<TextView> lines;       ///< what speaks against the wire as it is entered
    std::vector<TileView> cells;
    std::optional<ButtonView> earlier, later;   ///< the numbers before and after those
    std::vector<ButtonView> keys;      ///< in rows of `columns`
    int columns = 3;
    std::vector<ButtonView> ways;
    bool clock = false;                ///< `keys` are the twelve sides, clockwise from the top
    std::optional<Angle> leads = std::nullopt;        ///< on the clock: where the next leg goes, clockwise from the top
    std::optional<ButtonView> dial = std::nullopt;    ///< the clock's middle, turned by the finger
    std::optional<ButtonView> remedy = std::nullopt;  ///< for the first of `lines`
    std::optional<PieceView> piece = std::nullopt;    ///< in place of the picture
    bool operator==(const RouteBody&) const = default;
};

/// A bender's card: its picture, and its numbers in rows to touch. Or a tube that can be saved, and the ways.
struct CardBody {
    ListBody figures;
    PictureView picture;
    bool operator==(const CardBody&) const = default;
};

/// What pieces have taught of a bender: its drawing, and in rows what is known.
struct PieceBody {
    ListBody figures;
    PieceView piece;
    bool operator==(const PieceBody&) const = default;
};

using AnyBody = std::variant<ListBody, OverviewBody, TicksBody, MarkOutBody, MoveBody, KeypadBody, ChoiceBody, TableBody, SettingsBody, OrderBody, CardBody, TilesBody, RouteBody, PieceBody>;

/// One of these; copied in one place (views.cpp), as actions are.
struct Body : AnyBody {
    using AnyBody::AnyBody;
    Body();
    Body(const Body&);
    Body(Body&&) noexcept;
    Body& operator=(const Body&);
    Body& operator=(Body&&) noexcept;
    ~Body();
    friend bool operator==(const Body& one, const Body& other);
};

/// Buttons along the bottom, left to right; the one of weight main takes the room that is left. The
/// main one is also what Space and Page Down press, `back` what Page Up presses.
struct FooterView {
    std::vector<ButtonView> buttons;
    std::string main_id, back_id;      ///< empty: none
    bool operator==(const FooterView&) const = default;
};

struct ScreenView {
    std::string key;                   ///< changes with every step; touches are ignored for 0.3 s after that
    HeaderView header;
    std::optional<RibbonView> ribbon;
    Body body;
    FooterView footer;
    std::string notice;                ///< one sentence over the footer, until dismissed
    bool good_news = false;            ///< of the notice: nothing has to be done about it
    Theme theme = Theme::light;
    bool operator==(const ScreenView&) const = default;
};

}  // namespace tubewright
