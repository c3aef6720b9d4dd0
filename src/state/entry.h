#pragma once
// A line while it is being entered: what is asked next, and where each thing that was said goes.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "bench/draft.h"
#include "state/offers.h"

namespace tubewright {

/// What is asked by a screen of choices. A new job is asked them in this order; each can be asked again.
enum class Ask { service, tube, material, bender, fittings, fitting_a, fitting_b, form };

/// One number of the line: of a leg or straight, of a bend's angle or turn, one straight move, or what is left on
/// at an end to be cut off later.
struct Cell {
    enum class What { run, angle, turn, move, trim_a, trim_b } what = What::run;
    std::size_t index = 0;  ///< of its list, from 0
    bool operator==(const Cell&) const = default;
};

/// How a route is given.
struct FormChoice {
    RouteForm form = RouteForm::legs;
    TapeEdge measured_to = TapeEdge::outside;
    bool operator==(const FormChoice&) const = default;
};

/// A draft and where in it the finger is: what undo brings back.
struct EntryPage {
    Draft job;
    std::size_t line = 0;
    std::optional<Ask> ask = Ask::service;  ///< none: at the route or the line's page
    Cell cell = {};
    bool flat = false;             ///< the wire lies in one plane: a turn is one way round or the other
    bool operator==(const EntryPage&) const = default;
};

struct Entry {
    std::string path;                     ///< of its file; empty: not kept yet
    EntryPage page;
    bool in_a_row = true;                 ///< the questions of a new job, one after the other
    std::vector<EntryPage> past, future;  ///< without limit, while this job is entered
    bool from_bench = false;              ///< only its proof was asked for, at the line's page: Back leads there again
    std::string trouble;                  ///< why what is entered can't be worked out, one sentence

    DraftLine& line() { return page.job.lines[page.line]; }
    const DraftLine& line() const { return page.job.lines[page.line]; }
};

/// Every cell that has a value, in the order of entry, and after them the one that comes next.
std::vector<Cell> cells_of(const MeasuredRoute& route);
bool has_value(const MeasuredRoute& route, const Cell& cell);
/// A trim stands at an end, not in the route.
std::optional<End> trimmed_end(const Cell& cell);
/// Whether a wire that has turns at all has only such as one plane has.
bool looks_flat(const MeasuredRoute& route);
/// The cell after this one; the next to be entered where this one is the last.
Cell cell_after(const MeasuredRoute& route, const Cell& cell);

/// Whether the cell can have this value.
bool takes(const MeasuredRoute& route, const Cell& cell, Length length);
bool takes(const MeasuredRoute& route, const Cell& cell, Angle angle);
/// The route with this cell's value put in, at the end or in place of the old one. A value that the cell can't
/// have (a leg of nothing, an angle beyond 180 at a corner) leaves the route as it is.
MeasuredRoute with_length(MeasuredRoute route, const Cell& cell, Length length);
MeasuredRoute with_angle(MeasuredRoute route, const Cell& cell, Angle angle);
/// Of a move: this way too, by this much; against it takes it back first. None of it takes the way out.
MeasuredRoute with_way(MeasuredRoute route, const Cell& cell, MoveWay way, Length length);

/// The same wire said to be measured otherwise. Legs and straights keep their numbers, and so do moves among
/// themselves; between the two nothing can be kept.
MeasuredRoute in_form(MeasuredRoute route, const FormChoice& choice);
bool keeps_numbers(const MeasuredRoute& route, const FormChoice& choice);

/// The first question that this draft still leaves open.
std::optional<Ask> open_question_of(const Draft& job, const DraftLine& line);
/// Those that suit the tube of this line.
std::vector<BenderOffer> benders_for(const Offers& offers, const Draft& job, const DraftLine& line);

/// What is shown of the line in hand while it is entered: as much as can be worked out. Another job, with
/// just this line in it; none while there is nothing to draw.
std::optional<Draft> shown_part(const Entry& entry);

/// A name that no line of the job has: "line 1", "line 2".
std::string new_line_name(const Draft& job);

}  // namespace tubewright
