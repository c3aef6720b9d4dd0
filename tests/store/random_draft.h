#pragma once
// Jobs as anyone might be entering them, by chance: every form, unit and tape edge, with and without notes,
// x- keys and whole cards. Every number is one that can be typed.

#include <algorithm>
#include <random>
#include <string>

#include "bench/draft.h"
#include "store/number_text.h"

namespace tubewright {

class DraftDice {
public:
    explicit DraftDice(unsigned seed) : dice_(seed) {}

    /// Finished lines only.
    Draft finished_job() {
        Draft job{"job " + letters(), one_of({Service::brake, Service::fuel, Service::cooler, Service::hydraulic, Service::air, Service::other}),
                  one_of({Unit::inch, Unit::mm})};
        unit_ = job.unit;
        job.note = note();
        if (yes()) job.tube = tube();
        if (yes()) job.bender = bender();
        job.kept = kept();
        for (int i = 0, lines = whole(1, 4); i < lines; ++i) job.lines.push_back(line(job, i));
        return job;
    }

    /// With things missing here and there, and said to be so.
    Draft job_so_far() {
        Draft job = finished_job();
        if (whole(0, 5) == 0) job.lines.clear();
        if (whole(0, 3) == 0) job.tube.reset();
        for (DraftLine& line : job.lines) {
            if (whole(0, 3) == 0) line.bender.reset();
            if (whole(0, 3) == 0) line.a.fitting.clear();
            if (whole(0, 2) == 0) shorten(line.route);
            line.unfinished = whole(0, 3) == 0 || lack_of(job, line);
        }
        return job;
    }

    int whole(int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice_); }
    bool yes() { return whole(0, 1) == 1; }
    template <class T> T one_of(std::initializer_list<T> choices) { return *(choices.begin() + whole(0, static_cast<int>(choices.size()) - 1)); }

    /// A decimal of up to six places, or a tape fraction.
    double decimal(int least, int most) {
        const double places = one_of({1.0, 10.0, 100.0, 1000.0, 16.0, 64.0, 1e6});
        return std::round(std::uniform_real_distribution<double>(least, most)(dice_) * places) / places;
    }
    Length length(int least, int most) { return {decimal(least, most) * mm_in(unit_)}; }

private:
    std::string letters() {
        std::string text;
        for (int i = whole(1, 8); i > 0; --i) text += one_of<const char*>({"a", "Z", "ö", "\"", "\\", "/", "%", "#", "7", " b", "\xF0\x9F\x94\xA7"});
        return text;
    }
    std::string note() { return yes() ? "" : letters(); }
    KeptKeys kept() {
        if (whole(0, 3) > 0) return {};
        return {{"\"x-z\"", one_of<const char*>({"1.50", "12345678901234567890123", "[1, {\"a\": null}]", "\"}\\\"]\"", "{\n\t\"x-in\" : 1e5}"})}, {"\"x-\\u0061\"", "true"}};
    }

    DraftTube tube() {
        const Length od = length(1, 2);
        return {{od, od / 8 < Length{0.1} ? Length{0.1} : Length{std::round(od.mm * 10) / 80 / mm_in(unit_) * mm_in(unit_)}, one_of<const char*>({"stainless-304", "steel-low-carbon"})}, kept()};
    }
    DraftBender bender() {
        if (yes()) return {one_of<const char*>({"hand-3/16", "hand-6"})};
        return {"own", R"({ "format": "tubewright-bender",
 "version": 1.0, "id": "own", "name": "n", "units": "mm", "tube_od": 6, "radius": 20.50, "max_angle": 120, "x-a": 1.0,
 "marks": [ { "name": "e", "offset": -4.5 } ], "hook_straight": 20, "lever_straight": 25, "body": [] })"};
    }
    DraftEnd end() {
        DraftEnd end{one_of<const char*>({"none", "plain", "flare-37-single"}), yes() ? Length{} : length(0, 5), {}, kept()};
        if (yes()) end.allowance = length(0, 1);
        return end;
    }

    MeasuredRoute route() {
        MeasuredRoute route;
        route.form = one_of({RouteForm::legs, RouteForm::straights, RouteForm::points, RouteForm::moves});
        route.kept = kept();
        const int bends = whole(0, 9);
        if (route.form == RouteForm::legs) route.measured_to = one_of({TapeEdge::centre, TapeEdge::outside, TapeEdge::inside});
        if (route.form == RouteForm::points)
            for (int i = 0; i < bends + 2; ++i) route.points.push_back({length(10 * i + 1, 10 * i + 5), length(-9, 9), length(-9, 9)});
        if (route.form == RouteForm::moves)
            for (int i = 0; i <= bends; ++i) route.moves.push_back(move());
        if (route.form == RouteForm::points || route.form == RouteForm::moves) return route;
        for (int i = 0; i <= bends; ++i) route.runs.push_back(length(1, 90));
        for (int i = 0; i < bends; ++i) {
            MeasuredBend bend{{decimal(1, 179)}, {}, note(), kept()};
            if (i > 0) bend.rotation = Angle{decimal(-180, 180)};
            route.bends.push_back(bend);
        }
        return route;
    }
    LineProof proof() {
        LineProof proof{"0123456789abcdef"};
        for (int i = whole(0, 4); i > 0; --i) {
            proof.taken.readings.push_back({{static_cast<std::size_t>(i - 1), static_cast<std::size_t>(i + whole(0, 3))}, length(1, 70)});
            if (yes()) proof.twice.push_back(proof.taken.readings.back().span);
        }
        if (yes()) proof.taken.out_of_reach = {{0, 2}, {1, 5}};
        if (yes()) proof.taken.hand = HandAnswer{1, static_cast<std::size_t>(whole(2, 5)), yes()};
        proof.hand_passed = yes();
        proof.wanted = static_cast<std::size_t>(whole(0, 5));
        proof.kept = kept();
        return proof;
    }
    MeasuredMove move() {
        MeasuredMove move{{{one_of({MoveWay::forward, MoveWay::back}), length(1, 40)}}, kept()};
        if (yes()) move.along[one_of({MoveWay::left, MoveWay::right})] = length(0, 40);
        if (yes()) move.along[one_of({MoveWay::up, MoveWay::down})] = length(0, 40);
        return move;
    }
    void shorten(MeasuredRoute& route) {
        const auto cut = [&](auto& list) { list.resize(std::min(list.size(), static_cast<std::size_t>(whole(0, 3)))); };
        cut(route.runs);
        cut(route.bends);
        cut(route.points);
        cut(route.moves);
        for (MeasuredBend& bend : route.bends)
            if (yes()) bend.rotation.reset();
    }

    DraftLine line(const Draft& job, int number) {
        DraftLine line{"line " + std::to_string(number) + letters(), whole(1, 3), note()};
        if (!job.tube || yes()) line.tube = tube();
        if (!job.bender || yes()) line.bender = bender();
        line.a = end();
        line.b = end();
        line.route = route();
        if (whole(0, 2) == 0) line.proof = proof();
        line.kept_at_ends = kept();
        line.kept = kept();
        return line;
    }

    std::mt19937 dice_;
    Unit unit_ = Unit::mm;
};

}  // namespace tubewright
