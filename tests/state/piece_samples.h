#pragma once
// Fingers that measure a bender with pieces of the sample job's tube. The bender is invented: the bend starts 1/32 in before
// line 0, and line L lies 9/16 in past that start; its form has the radius of the card.

#include <cmath>

#include "bench/learning.h"
#include "state/sample_state.h"

namespace tubewright {

inline State typed_and_taken(State state, double inches_or_degrees) {
    std::string number = std::to_string(inches_or_degrees);
    for (const char c : number.substr(0, 8)) state = touched(std::move(state), {Key{std::string(1, c)}});
    return touched(std::move(state), {Next{}});
}

inline State at_learning(const Job& job = sample_job()) {
    return touched(job_open(), {SetUnit{Unit::inch}, JobRead{"trailer", "jobs/trailer.json", job}, OpenLine{"axle crossover"}, GoTo{Screen::card}, LearnBender{}});
}

/// What a tape read to 1/32 in would say: hook leg = start + (R + D/2) tan(a/2), lever leg = cut - start - .978 R a + the same corner.
struct TapedPiece {
    double cut = 12, ink = 4, start = 4 - 1.0 / 32, angle, hook, lever;
};
inline TapedPiece taped(const State& state, Angle aim) {
    const Sheet& sheet = *sheet_in_hand(state);
    const double r = finished_radius(sheet.springback, sheet.line.bender.radius).inch();
    TapedPiece piece;
    piece.angle = std::round(2 * released(sheet.springback, aim).deg) / 2;
    const double a = Angle{piece.angle}.rad(), corner = (r + sheet.line.tube.od.inch() / 2) * std::tan(a / 2);
    const auto read = [](double inch) { return std::round(inch * 32) / 32; };
    piece.hook = read(piece.start + corner);
    piece.lever = read(piece.cut - piece.start - 0.978 * r * a + corner);
    return piece;
}

inline State piece_bent(State state, Angle aim, bool line_l = false) {
    if (learn_page(state) != LearnPage::more) state = touched(std::move(state), {MorePieces{}});
    const TapedPiece piece = taped(state, aim);
    state = typed_and_taken(touched(std::move(state), {StartPiece{aim}}), piece.cut);
    state = typed_and_taken(touched(std::move(state), {PutInk{"0"}}), piece.ink);
    if (line_l) state = typed_and_taken(touched(std::move(state), {OtherInk{}, PutInk{"L"}}), piece.start + 9.0 / 16);
    state = typed_and_taken(touched(std::move(state), {Next{}, Next{}}), piece.angle);
    return typed_and_taken(typed_and_taken(std::move(state), piece.hook), piece.lever);
}

inline State half_turn_made(State state) {
    if (learn_page(state) != LearnPage::more) state = touched(std::move(state), {MorePieces{}});
    const Sheet& sheet = *sheet_in_hand(state);
    const double width = 2 * finished_radius(sheet.springback, sheet.line.bender.radius).inch() + sheet.line.tube.od.inch();
    return typed_and_taken(touched(std::move(state), {StartPiece{half_turn}, Next{}}), width);
}

}  // namespace tubewright
