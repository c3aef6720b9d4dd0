#include "store/book_rows.h"

namespace tubewright {

// Foreign keys are looked at when the transaction ends: a changed row is taken out and put in again.
const char* const book_version_1 = R"sql(
CREATE TABLE line_work (
    line TEXT NOT NULL PRIMARY KEY,
    stage TEXT NOT NULL CHECK (stage IN ('prepare', 'mark out', 'bending', 'finish', 'done')),
    step INTEGER NOT NULL CHECK (step >= 0),
    move TEXT NOT NULL CHECK (move IN ('mark', 'turn', 'pull', 'check')),
    pull_again_deg REAL,
    last_reading_deg REAL,
    pulls INTEGER NOT NULL CHECK (pulls >= 0),
    cut INTEGER NOT NULL CHECK (cut IN (0, 1)),
    cut_length_mm REAL NOT NULL,
    plan TEXT NOT NULL,
    inked TEXT NOT NULL,
    attempt INTEGER NOT NULL CHECK (attempt >= 0),
    finished INTEGER NOT NULL CHECK (finished >= 0)
) STRICT, WITHOUT ROWID;

CREATE TABLE line_tick (
    line TEXT NOT NULL REFERENCES line_work DEFERRABLE INITIALLY DEFERRED,
    tick TEXT NOT NULL,
    PRIMARY KEY (line, tick)
) STRICT, WITHOUT ROWID;

CREATE TABLE bend_pulled (
    line TEXT NOT NULL REFERENCES line_work DEFERRABLE INITIALLY DEFERRED,
    bend INTEGER NOT NULL CHECK (bend >= 0),
    PRIMARY KEY (line, bend)
) STRICT, WITHOUT ROWID;

CREATE TABLE bend_made (
    line TEXT NOT NULL REFERENCES line_work DEFERRABLE INITIALLY DEFERRED,
    place INTEGER NOT NULL CHECK (place >= 0),
    bend INTEGER NOT NULL CHECK (bend >= 0),
    set_deg REAL NOT NULL,
    pulls INTEGER NOT NULL CHECK (pulls >= 0),
    measured_deg REAL,
    kept_over INTEGER NOT NULL CHECK (kept_over IN (0, 1)),
    PRIMARY KEY (line, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE line_order (
    line TEXT NOT NULL REFERENCES line_work DEFERRABLE INITIALLY DEFERRED,
    place INTEGER NOT NULL CHECK (place >= 0),
    bend INTEGER NOT NULL CHECK (bend >= 0),
    hook_end TEXT NOT NULL CHECK (hook_end IN ('A', 'B')),
    PRIMARY KEY (line, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE line_opening (
    line TEXT NOT NULL REFERENCES line_work DEFERRABLE INITIALLY DEFERRED,
    place INTEGER NOT NULL CHECK (place >= 0),
    bend INTEGER NOT NULL CHECK (bend >= 0),
    PRIMARY KEY (line, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE scrap (
    place INTEGER NOT NULL PRIMARY KEY CHECK (place >= 0),
    id INTEGER NOT NULL UNIQUE,
    day TEXT NOT NULL,
    job TEXT NOT NULL,
    line TEXT NOT NULL,
    tube TEXT NOT NULL,
    reason TEXT NOT NULL CHECK (reason IN ('wrong place', 'wrong way', 'over-bent', 'kinked', 'too short',
                                           'end spoiled', 'damaged', 'does not fit', 'practice')),
    scrapped_mm REAL NOT NULL,
    kept_mm REAL NOT NULL,
    bend INTEGER CHECK (bend >= 0),
    kept_second_mm REAL NOT NULL
) STRICT;

CREATE TABLE offcut (
    place INTEGER NOT NULL PRIMARY KEY CHECK (place >= 0),
    id INTEGER NOT NULL UNIQUE,
    tube TEXT NOT NULL,
    length_mm REAL NOT NULL,
    day TEXT NOT NULL
) STRICT;

CREATE TABLE stick (
    tube TEXT NOT NULL PRIMARY KEY,
    left_mm REAL NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE used (
    day TEXT NOT NULL,
    tube TEXT NOT NULL,
    used_mm REAL NOT NULL,
    PRIMARY KEY (day, tube)
) STRICT, WITHOUT ROWID;

CREATE TABLE bench_choice (
    bender TEXT NOT NULL PRIMARY KEY,
    hook TEXT CHECK (hook IN ('left', 'right')),
    swing TEXT CHECK (swing IN ('away', 'toward', 'up', 'down')),
    mark TEXT NOT NULL,
    CHECK ((hook IS NULL) = (swing IS NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE counter (
    only_row INTEGER NOT NULL PRIMARY KEY CHECK (only_row = 1),
    next_id INTEGER NOT NULL
) STRICT;

CREATE TABLE settings (
    only_row INTEGER NOT NULL PRIMARY KEY CHECK (only_row = 1),
    unit TEXT CHECK (unit IN ('in', 'mm')),
    tape_denominator INTEGER NOT NULL CHECK (tape_denominator > 0),
    theme TEXT NOT NULL CHECK (theme IN ('light', 'dark')),
    screen_px_per_mm REAL NOT NULL CHECK (screen_px_per_mm >= 0)
) STRICT;

CREATE TABLE undo_step (
    step INTEGER NOT NULL PRIMARY KEY,
    job TEXT NOT NULL
) STRICT;

-- One row of another page as it was before the step; `was` 0: it was not there. A page with one key has 0
-- for the second.
CREATE TABLE undo_row (
    step INTEGER NOT NULL REFERENCES undo_step DEFERRABLE INITIALLY DEFERRED,
    page TEXT NOT NULL,
    key_1 ANY NOT NULL,
    key_2 ANY NOT NULL,
    was INTEGER NOT NULL CHECK (was IN (0, 1)),
    cell_1 ANY, cell_2 ANY, cell_3 ANY, cell_4 ANY, cell_5 ANY, cell_6 ANY,
    cell_7 ANY, cell_8 ANY, cell_9 ANY, cell_10 ANY, cell_11 ANY, cell_12 ANY,
    PRIMARY KEY (step, page, key_1, key_2)
) STRICT, WITHOUT ROWID;
)sql";

// Readings that were not taken yet are not there. An undo row has room for twelve cells beside the key.
const char* const book_pieces = R"sql(
CREATE TABLE piece (
    id INTEGER NOT NULL PRIMARY KEY,
    bender TEXT NOT NULL,
    tube TEXT NOT NULL,
    aim_deg REAL NOT NULL CHECK (aim_deg > 0 AND aim_deg <= 180),
    tape INTEGER NOT NULL CHECK (tape IN (32, 64)),
    loaded INTEGER NOT NULL CHECK (loaded IN (0, 1)),
    cut_mm REAL,
    set_deg REAL,
    angle_deg REAL,
    hook_leg_mm REAL,
    lever_leg_mm REAL,
    width_mm REAL
) STRICT;

CREATE TABLE piece_ink (
    piece INTEGER NOT NULL REFERENCES piece DEFERRABLE INITIALLY DEFERRED,
    place INTEGER NOT NULL CHECK (place >= 0),
    mark TEXT NOT NULL,
    from_hook_mm REAL,
    PRIMARY KEY (piece, place)
) STRICT, WITHOUT ROWID;
)sql";

const char* const book_version_2 = R"sql(
CREATE TABLE line_springback (
    line TEXT NOT NULL PRIMARY KEY REFERENCES line_work DEFERRABLE INITIALLY DEFERRED,
    laid_growth REAL,
    pulled_growth REAL,
    pulled_zero_deg REAL,
    doubted_deg REAL,
    CHECK ((pulled_growth IS NULL) = (pulled_zero_deg IS NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE tube_lot (
    tube TEXT NOT NULL PRIMARY KEY,
    lot TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE bend_check (
    id INTEGER NOT NULL PRIMARY KEY,
    day TEXT NOT NULL,
    standing TEXT NOT NULL CHECK (standing IN ('counted', 'asked', 'confirmed')),
    left_out INTEGER NOT NULL CHECK (left_out IN (0, 1)),
    bender TEXT NOT NULL,
    tube_od_mm REAL NOT NULL,
    tube_wall_mm REAL NOT NULL,
    tube_material TEXT NOT NULL,
    lot TEXT NOT NULL,
    target_deg REAL,
    set_deg REAL NOT NULL,
    measured_deg REAL NOT NULL,
    set_was_read INTEGER NOT NULL CHECK (set_was_read IN (0, 1))
) STRICT;

-- Which bend of which tube it was; a table of its own because an undo_row has no more than twelve cells.
CREATE TABLE bend_of_tube (
    id INTEGER NOT NULL PRIMARY KEY REFERENCES bend_check DEFERRABLE INITIALLY DEFERRED,
    job TEXT NOT NULL,
    line TEXT NOT NULL,
    piece INTEGER NOT NULL CHECK (piece >= 0),
    attempt INTEGER NOT NULL CHECK (attempt >= 0),
    bend INTEGER NOT NULL CHECK (bend >= 0)
) STRICT;
)sql";

const char* const book_version_4 = R"sql(
-- What a column holds for which event: see store/book_stock. Days are counted from 1970-01-01, lengths in micrometres.
CREATE TABLE stock_entry (
    n INTEGER NOT NULL PRIMARY KEY CHECK (n >= 0),
    day INTEGER NOT NULL,
    event TEXT NOT NULL CHECK (event IN ('received', 'straightened', 'cut', 'used', 'scrapped', 'put back', 'moved', 'labelled', 'taken back')),
    piece INTEGER NOT NULL,
    other INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('stick', 'coil', 'offcut')),
    tube TEXT NOT NULL,
    length_um INTEGER NOT NULL,
    second_um INTEGER NOT NULL,
    said TEXT NOT NULL,
    lot TEXT NOT NULL,
    price_cents INTEGER NOT NULL,
    price_per_um INTEGER NOT NULL
) STRICT;

CREATE TABLE stick_in_use (
    tube TEXT NOT NULL PRIMARY KEY,
    piece INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE shop_rule (
    only_row INTEGER NOT NULL PRIMARY KEY CHECK (only_row = 1),
    saw_mm REAL NOT NULL CHECK (saw_mm >= 0),
    keep_mm REAL NOT NULL CHECK (keep_mm >= 0),
    straighten_mm REAL NOT NULL CHECK (straighten_mm >= 0),
    practice INTEGER NOT NULL CHECK (practice IN (0, 1)),
    spare INTEGER NOT NULL CHECK (spare IN (0, 1))
) STRICT;

CREATE TABLE price (
    item TEXT NOT NULL PRIMARY KEY,
    cents INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- 3/16 and 7/16 in were rounded down where a job gave them in inches; the rack rounds them up. Of two sticks in use of
-- what is one tube now the first stays in use.
-- What is left of the sticks in use first, then the offcuts. A stick came in nobody wrote down when: on the last day that the book knows.
CREATE TEMP TABLE on_rack AS
    SELECT row_number() OVER (ORDER BY in_use DESC, tube, place) - 1 AS n, replace(replace(tube, ' 4762x', ' 4763x'), ' 11112x', ' 11113x') AS tube, length_um, in_use, day FROM (
        SELECT tube, CAST(round(left_mm * 1000) AS INTEGER) AS length_um, 1 AS in_use, 0 AS place,
               (SELECT max(day) FROM (SELECT day FROM used UNION SELECT day FROM scrap UNION SELECT day FROM offcut)) AS day FROM stick
        UNION ALL SELECT tube, CAST(round(length_mm * 1000) AS INTEGER), 0, place, day FROM offcut)
    WHERE length_um > 0 AND tube GLOB '* [1-9]*x[0-9]*';
INSERT INTO stock_entry SELECT n, coalesce(CAST(julianday(day) - 2440587.5 AS INTEGER), 0), 'received', n + 1, 0, 'offcut', tube, length_um, 0, '', '', 0, 0 FROM on_rack;
INSERT OR IGNORE INTO stick_in_use SELECT tube, n + 1 FROM on_rack WHERE in_use = 1 ORDER BY n;
DROP TABLE on_rack;
DELETE FROM undo_row;
DELETE FROM undo_step;
DROP TABLE offcut;
DROP TABLE stick;
)sql";

const char* const book_version_5 = R"sql(
ALTER TABLE piece ADD COLUMN crown_gap_mm REAL;

CREATE TABLE turn_check (
    id INTEGER NOT NULL PRIMARY KEY,
    day TEXT NOT NULL,
    standing TEXT NOT NULL CHECK (standing IN ('counted', 'asked', 'confirmed')),
    left_out INTEGER NOT NULL CHECK (left_out IN (0, 1)),
    turned_by TEXT NOT NULL CHECK (turned_by IN ('neighbour', 'ink')),
    wanted_deg REAL NOT NULL,
    measured_deg REAL NOT NULL,
    job TEXT NOT NULL,
    line TEXT NOT NULL,
    piece INTEGER NOT NULL CHECK (piece >= 0),
    attempt INTEGER NOT NULL CHECK (attempt >= 0),
    bend INTEGER NOT NULL CHECK (bend >= 0),
    against INTEGER NOT NULL CHECK (against >= 0)
) STRICT;

CREATE TABLE leg_check (
    id INTEGER NOT NULL PRIMARY KEY,
    day TEXT NOT NULL,
    standing TEXT NOT NULL CHECK (standing IN ('counted', 'asked', 'confirmed')),
    left_out INTEGER NOT NULL CHECK (left_out IN (0, 1)),
    marked_bends INTEGER NOT NULL CHECK (marked_bends IN (1, 2)),
    expected_mm REAL NOT NULL,
    read_mm REAL NOT NULL,
    job TEXT NOT NULL,
    line TEXT NOT NULL,
    piece INTEGER NOT NULL CHECK (piece >= 0),
    attempt INTEGER NOT NULL CHECK (attempt >= 0),
    bend INTEGER NOT NULL CHECK (bend >= 0),
    after INTEGER CHECK (after >= 0)
) STRICT;

CREATE TABLE line_turn (
    line TEXT NOT NULL REFERENCES line_work DEFERRABLE INITIALLY DEFERRED,
    place INTEGER NOT NULL CHECK (place >= 0),
    bend INTEGER NOT NULL,
    against INTEGER NOT NULL CHECK (against >= 0 AND against < bend),
    read_deg REAL NOT NULL,
    PRIMARY KEY (line, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE line_tape (
    line TEXT NOT NULL REFERENCES line_work DEFERRABLE INITIALLY DEFERRED,
    place INTEGER NOT NULL CHECK (place >= 0),
    from_point INTEGER NOT NULL CHECK (from_point >= 0),
    to_point INTEGER NOT NULL CHECK (to_point > from_point),
    steps INTEGER NOT NULL CHECK (steps >= 0),
    read_mm REAL NOT NULL,
    PRIMARY KEY (line, place)
) STRICT, WITHOUT ROWID;
)sql";

const char* const book_version_6 = R"sql(
CREATE TABLE joint_of_end (
    line TEXT NOT NULL,
    end_of_line TEXT NOT NULL CHECK (end_of_line IN ('A', 'B')),
    kind TEXT NOT NULL CHECK (kind IN ('union', 'tee')),
    number INTEGER NOT NULL CHECK (number >= 1),
    PRIMARY KEY (line, end_of_line)
) STRICT, WITHOUT ROWID;
)sql";

}  // namespace tubewright
