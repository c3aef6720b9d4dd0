#pragma once
// A line while it is being entered: what is asked next, and where each thing that was said goes.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "bench/draft.h"
#include "bench/line.h"
#include "state/offers.h"

namespace tubewright {

/// What is asked by a screen of choices. A new job is asked the first ones in this order; each can be asked again.
/// The last three bring in corner points: from which file, in which unit, and whether these are the right ones.
enum class Ask { service, tube, material, bender, fittings, fitting_a, fitting_b, form, about, points_file, points_unit, points_read };

/// One number of the line: of a leg or straight, of a bend's angle or turn, one straight move, a corner's x, y or z,
/// and those that stand for themselves: what is left on at an end to be cut off later, how many pieces, and the
/// diameter and wall of tube that is in no list.
struct Cell {
    enum class What { run, angle, turn, move, x, y, z, trim_a, trim_b, pieces, od, wall } what = What::run;
    std::size_t index = 0;  ///< of its list, from 0
    bool operator==(const Cell&) const = default;
};

/// What is typed in letters.
enum class WordOf { line_name, line_note, job_name, job_note };

/// How far the finger has turned the picture: the eyes further over the line, and further round it to the right.
struct Orbit {
    Angle over, round;
    bool operator==(const Orbit&) const = default;
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
    std::vector<Length> point = {};  ///< of the next corner point: x, or x and y, until z makes it whole
    bool operator==(const EntryPage&) const = default;
};

/// A table of points that lies ready. `says`: the unit in its header, where one stands there.
struct PointsFile {
    std::string name;
    std::optional<Unit> says;
    std::string trouble;  ///< the one sentence why it can't be read
    bool operator==(const PointsFile&) const = default;
};

/// Corner points on their way in. They become the line's only when they have been looked at.
struct PointsIn {
    std::string folder;
    std::vector<PointsFile> files;
    std::string file;     ///< the one chosen
    Unit unit = Unit::inch;
    std::vector<MeasuredPoint> points;
    bool operator==(const PointsIn&) const = default;
};

struct Entry {
    std::string path;                     ///< of its file; empty: not kept yet
    EntryPage page;
    bool in_a_row = true;                 ///< the questions of a new job, one after the other
    std::vector<EntryPage> past, future;  ///< without limit, while this job is entered
    bool from_bench = false;              ///< only its proof was asked for, at the line's page: Back leads there again
    std::string trouble;                  ///< why what is entered can't be worked out, one sentence
    std::optional<Orbit> orbit;           ///< none: as the picture stands of itself
    std::optional<WordOf> word;           ///< in hand
    PointsIn points_in;

    DraftLine& line() { return page.job.lines[page.line]; }
    const DraftLine& line() const { return page.job.lines[page.line]; }
};

/// Every cell that has a value, in the order of entry, and after them the one that comes next.
std::vector<Cell> cells_of(const MeasuredRoute& route);
bool has_value(const MeasuredRoute& route, const Cell& cell);
/// A trim stands at an end, not in the route.
std::optional<End> trimmed_end(const Cell& cell);
/// Whether its number is none of the route's.
bool stands_alone(const Cell& cell);
/// 0, 1, 2 for x, y, z.
std::optional<std::size_t> axis_of(const Cell& cell);
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
/// Whether the corner's x, y or z can be this. `next`: what is known of the point after the last one.
bool takes_coordinate(const MeasuredRoute& route, const std::vector<Length>& next, const Cell& cell, Length length);
MeasuredRoute with_angle(MeasuredRoute route, const Cell& cell, Angle angle);
/// Of a move: this way too, by this much; against it takes it back first. None of it takes the way out.
MeasuredRoute with_way(MeasuredRoute route, const Cell& cell, MoveWay way, Length length);

/// The same wire said to be measured otherwise. Legs and straights keep their numbers, and so do moves among
/// themselves; between the two nothing can be kept.
MeasuredRoute in_form(MeasuredRoute route, const FormChoice& choice);
bool keeps_numbers(const MeasuredRoute& route, const FormChoice& choice);

/// Whether the tube has all that a file wants of it.
bool is_whole(const DraftTube& tube);
bool takes_diameter(Length od);
bool takes_wall(Length od, Length wall);

/// Whether the person has said of the line that it lies flat; kept in the file with the line.
bool said_flat(const DraftLine& line);
void say_flat(DraftLine& line, bool flat);

/// The first question that this draft still leaves open.
std::optional<Ask> open_question_of(const Draft& job, const DraftLine& line);
/// Those that suit the tube of this line; all of them where none does.
std::vector<BenderOffer> benders_for(const Offers& offers, const Draft& job, const DraftLine& line);

/// What is shown of the line in hand while it is entered: as much as can be worked out. Another job, with
/// just this line in it; none while there is nothing to draw.
std::optional<Draft> shown_part(const Entry& entry);

/// The line worked out as if the bend's turn in hand were this one: for looking at before it is taken. `worked_out` has tube,
/// bender and ends. None where the bend is not entered so far.
std::optional<Line> with_turn_tried(const Entry& entry, const Line& worked_out, Angle turn);

/// A name that no line of the job has: "line 1", "line 2".
std::string new_line_name(const Draft& job);

}  // namespace tubewright
