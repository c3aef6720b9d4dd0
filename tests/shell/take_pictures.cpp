// take_pictures FOLDER [JOB [WIDTH HEIGHT PX_PER_MM [light|dark [in|mm]]]]
// Walks a job through the real screens, drawn by the real renderer with no window, and writes a PNG of each
// new screen; for the job "saved" two bends of the first job come out over instead and the tube is saved, for "entered" a line is entered, for "proved" an entry with a slip is proved, for "learned" a bender is
// measured. The folder is made; the shop
// book is a fresh one in it.

#include <glad/gl.h>

#include <Eigen/Geometry>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <iostream>

#include "gl/offscreen.h"
#include "pictures/studio.h"
#include "shell/canvas.h"
#include "shell/operator.h"
#include "shell/temporary_home.h"
#include "state/rules.h"

using namespace tubewright;

namespace {

/// A framebuffer to draw on where there is no window.
struct Sheet3d {
    unsigned frame = 0, colour = 0;
    Sheet3d(int width, int height) {
        glGenFramebuffers(1, &frame);
        glBindFramebuffer(GL_FRAMEBUFFER, frame);
        glGenTextures(1, &colour);
        glBindTexture(GL_TEXTURE_2D, colour);
        glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, nullptr);
        glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, colour, 0);
        glViewport(0, 0, width, height);
    }
};

struct Studio {
    Desk& desk;
    Canvas& canvas;
    CanvasSize size;
    std::filesystem::path folder;
    double seconds = 10;
    int count = 0;
    std::string last_key;

    void frame(const Finger& finger = {}) { canvas.frame(size, seconds += 0.1, finger); }
    void settle() {
        for (int i = 0; i < 5; ++i) frame();
    }

    void tap(const std::string& id, double held = 0) {
        for (const Touchable& thing : canvas.ui().touchables()) {
            if (thing.id != id) continue;
            const ImVec2 middle = thing.box().centre();
            frame({true, true, middle.x, middle.y});
            for (const double until = seconds + held; seconds < until;) frame({true, true, middle.x, middle.y});
            frame({false, true, middle.x, middle.y});
            settle();
            return;
        }
        std::cerr << "nothing is called " << id << "\n";
    }

    void shoot(const std::string& name) {
        Image image{size.width, size.height, std::vector<unsigned char>(static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height) * 4)};
        std::vector<unsigned char> upside_down(image.rgba.size());
        glReadPixels(0, 0, size.width, size.height, GL_RGBA, GL_UNSIGNED_BYTE, upside_down.data());
        const std::size_t row = static_cast<std::size_t>(size.width) * 4;
        for (std::size_t y = 0; y < static_cast<std::size_t>(size.height); ++y)
            std::copy_n(upside_down.begin() + static_cast<std::ptrdiff_t>((static_cast<std::size_t>(size.height) - 1 - y) * row), row, image.rgba.begin() + static_cast<std::ptrdiff_t>(y * row));
        for (std::size_t i = 3; i < image.rgba.size(); i += 4) image.rgba[i] = 255;
        write_png((folder / name).string(), image);
    }

    void shoot_if_new() {
        const std::string key = desk.view().key;
        if (key == last_key) return;
        last_key = key;
        std::string number = std::to_string(++count);
        number.insert(0, number.size() < 3 ? 3 - number.size() : 0, '0');
        shoot(number + ".png");
        std::cout << number << " " << key << "\n";
    }
};

std::vector<Seen> seen(const Ui& ui) {
    std::vector<Seen> all;
    for (const Touchable& thing : ui.touchables()) all.push_back({thing.id, thing.enabled});
    return all;
}

void answer(Studio& studio, const std::vector<std::string>& ids) {
    for (const std::string& id : ids) {
        studio.tap(id);
        studio.shoot_if_new();
    }
}

/// A wire entered by finger, in both kinds of numbers, and a picture of each new screen.
void entered(Studio& studio) {
    const auto go = [&](const std::vector<std::string>& ids) {
        for (const std::string& id : ids) {
            studio.settle();
            studio.shoot_if_new();
            studio.tap(id);
        }
        studio.shoot_if_new();
    };
    go({"new-job", "answer-brake", "answer-0", "answer-stainless-304", "answer-hand-3/16", "answer-flare-37-single", "answer-legs-outside"});
    go({"key-5", "key-1/2", "next", "angle-90°", "key-6", "key-1/4", "next", "angle-60°", "turn-90", "key-9", "key-5/8"});
    studio.shoot("typed.png");
    go({"key-+1/16", "next", "angle-45°", "turn-180", "key-1"});
    studio.shoot("leg-short.png");
    go({"next", "next", "lines", "add-line", "back", "form", "answer-moves", "key-1", "key-8", "way-forward", "next", "key-3", "way-up", "key-4", "key-1/2", "way-left", "next"});
    studio.desk.act(Back{});
    studio.desk.act(Back{});
    go({});
}

/// An entry with a slip, proved with a tape on the wire that was meant: each new screen, to the slip found and corrected.
void proved(Studio& studio) {
    const auto go = [&](const std::vector<std::string>& ids) {
        for (const std::string& id : ids) {
            studio.settle();
            studio.tap(id);
        }
        studio.shoot_if_new();
    };
    const auto tape = [&](const Wire& wire) {
        while (studio.desk.state().proving->stage == Proving::Stage::reading) {
            const Span span = studio.desk.state().proving->task->span;
            const int sixteenths = static_cast<int>(std::lround(apart(shape_of(wire, wire.route.measured_to), span).inch() * 16));
            studio.settle();
            studio.shoot_if_new();
            const std::string typed = sixteenths % 16 == 0 ? "" : std::to_string(sixteenths % 16 * 625 + 10000).substr(1);
            for (const char digit : std::to_string(sixteenths / 16) + (typed.empty() ? "" : "." + typed)) studio.desk.act(Key{std::string(1, digit)});
            studio.settle();
            studio.shoot("typed.png");
            studio.tap("next");
        }
        studio.settle();
        studio.shoot_if_new();
    };
    go({"new-job", "answer-brake", "answer-0", "answer-stainless-304", "answer-hand-3/16", "answer-flare-37-single", "answer-moves"});
    go({"key-1", "key-8", "way-forward", "next", "key-3", "way-left", "next", "key-2", "key-2", "way-forward", "next", "key-3", "key-1/2", "way-up", "next"});
    go({"key-9", "way-forward", "next", "key-5", "way-up", "next", "key-8", "way-right", "next", "key-4", "key-1/2", "way-back", "key-4", "key-1/2", "way-down", "next", "next"});
    Wire wire = wire_of(studio.desk.state().entry_sheet->line);
    MeasuredRoute meant = studio.desk.state().entry->line().route;
    meant.moves[5].along = {{MoveWay::down, Length{127}}};
    wire.route = route_from(meant).value();
    const auto look = [&] {
        if (studio.desk.state().proving->stage != Proving::Stage::hand) return;
        const HandQuestion asked = *studio.desk.state().proving->hand;
        const WireShape shape = shape_of(wire, wire.route.measured_to);
        go({shape.along[asked.before].dot(shape.along[asked.bend].cross(shape.along[asked.bend + 1])) > 0 ? "left" : "right"});
    };
    go({"prove"});
    tape(wire);
    look();
    go({"correct"});
    tape(wire);
    look();
    go({"reading-1", "back", "next"});
    go({"next", "line-line 1"});
}

/// Bends that come out over by this much, one after the other: what is asked, what is offered, and what follows from the first way.
void saved(Studio& studio) {
    const std::vector<Angle> over{{2}, {3}, {4}};
    Operator person("trailer-brakes-stainless", over);
    for (std::size_t at = over.size(); at > 0; --at) {
        for (int touches = 0; touches < 200; ++touches) {
            studio.settle();
            const State& state = studio.desk.state();
            if (state.looks.screen == Screen::bench && state.line && work_in_hand(state).last_reading && work_in_hand(state).move == Move::check) break;
            const auto touch = person.next_touch(state, seen(studio.canvas.ui()));
            if (!touch) return;
            studio.tap(*touch);
        }
        studio.settle();
        answer(studio, {"rescue", "more", "read-1", "back", "back", "take-way"});
    }
    for (int touches = 0; touches < 12 && work_in_hand(studio.desk.state()).stage != Stage::finish; ++touches)
        if (const auto touch = person.next_touch(studio.desk.state(), seen(studio.canvas.ui()))) studio.tap(*touch);
    studio.shoot_if_new();
    studio.desk.act(Undo{});
}

/// A bender measured with a bend to 90, a half turn and a bend to 45 with a slip, each new screen.
void learned(Studio& studio) {
    const auto go = [&](const std::vector<std::string>& ids) {
        for (const std::string& id : ids) {
            studio.settle();
            studio.shoot_if_new();
            studio.tap(id);
        }
        studio.settle();
        studio.shoot_if_new();
    };
    const bool inch = reader_unit(studio.desk.state()) == Unit::inch;
    const auto take = [&](Length length, const char* typed = nullptr) {
        std::string number = std::to_string(inch ? std::round(length.inch() * 32) / 32 : std::round(length.mm * 2) / 2).substr(0, 7);
        while (number.back() == '0') number.pop_back();
        for (const char digit : number) studio.desk.act(Key{std::string(1, digit)});
        studio.settle();
        if (typed) studio.shoot(typed);
        go({"next"});
    };
    studio.desk.act(OpenJob{TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json"});
    go({"line-axle crossover", "stance", "card", "learn"});
    const Sheet& sheet = *sheet_in_hand(studio.desk.state());
    const Length radius = finished_radius(sheet.springback, sheet.line.bender.radius), od = sheet.line.tube.od, cut = inch ? Length{304.8} : Length{300}, ink = inch ? Length{101.6} : Length{100}, start = ink - Length{7.9};
    const auto bend = [&](Angle angle, Length slip) {
        const Length corner = std::tan(angle.rad() / 2) * (radius + od / 2);
        go({angle == Angle{90} ? "bend-90" : "bend-45"});
        take(cut, "typed-cut.png");
        go({"line-0"});
        take(ink, "typed-ink.png");
        go({"other-ink", "name-line", "letter-M", "next"});
        take(ink + Length{6});
        go({"next", "next"});
        for (const char digit : std::to_string(static_cast<int>(angle.deg))) studio.desk.act(Key{std::string(1, digit)});
        go({"next"});
        take(start + corner + slip, "typed-leg.png");
        take(cut - start - 0.978 * arc_length(radius, angle) + corner);
    };
    bend({90}, {});
    go({"learned-1", "learned-2", "more", "bend-180", "next"});
    take(2 * radius + od, "typed-width.png");
    go({"more"});
    bend({45}, {25.4});
    go({"again-0"});
    take(start + std::tan(Angle{22.5}.rad()) * (radius + od / 2));
    go({"learned-1"});
    studio.shoot("result-line.png");
    go({"later", "readings", "back", "put-on-card", "keep"});
}

void side_screens(Studio& studio) {
    for (const Screen screen : {Screen::scrap, Screen::settings, Screen::stance, Screen::order, Screen::card, Screen::bends, Screen::stock, Screen::stick_length, Screen::rack, Screen::plan, Screen::buy, Screen::shop_rules, Screen::figures, Screen::keep_safe}) {
        studio.desk.act(GoTo{screen});
        studio.settle();
        studio.shoot_if_new();
        if (screen == Screen::card) {
            answer(studio, {"swing", "later", "later", "later", "solid-3"});
            studio.desk.act(Back{});
        }
        if (screen == Screen::buy) {
            answer(studio, {"joints", "end-1B", "new-tee", "end-1A"});
            studio.desk.act(Back{});
            studio.desk.act(Back{});
        }
        if (screen == Screen::bends) {
            answer(studio, {"bends-more"});
            studio.desk.act(Back{});
            studio.settle();
            if (const auto bends = bends_in_hand(studio.desk.state()); !bends.empty()) {
                answer(studio, {"bend-" + std::to_string(bends.front().check.record.id)});
                studio.desk.act(Back{});
            }
        }
        studio.desk.act(Back{});
        studio.settle();
        studio.last_key = studio.desk.view().key;
    }
}

}  // namespace

int main(int count, char** words) {
    const auto word = [&](int i, const char* usual) { return std::string(count > i ? words[i] : usual); };
    const std::filesystem::path folder = word(1, "pictures");
    std::filesystem::create_directories(folder);
    const auto offscreen = Offscreen::made();
    if (!offscreen.ok()) {
        std::cerr << offscreen.trouble().sentence << "\n";
        return 1;
    }
    const CanvasSize size{std::atoi(word(3, "1280").c_str()), std::atoi(word(4, "800").c_str()), std::atof(word(5, "5.87").c_str())};
    const Sheet3d paper(size.width, size.height);
    TemporaryHome home;
    Desk desk = Desk::made(home.places(), one_day).value();
    auto canvas = Canvas::made(desk, home.places(), GlFlavour::core_33);
    if (!canvas.ok()) {
        std::cerr << canvas.trouble().sentence() << "\n";
        return 1;
    }
    desk.act(SetTheme{word(6, "light") == "dark" ? Theme::dark : Theme::light});
    desk.act(SetUnit{word(7, "in") == "mm" ? Unit::mm : Unit::inch});
    Studio studio{desk, *canvas.value(), size, folder};
    if (word(2, "") == "entered") {
        entered(studio);
        return 0;
    }
    if (word(2, "") == "saved") {
        saved(studio);
        return 0;
    }
    if (word(2, "") == "proved") {
        proved(studio);
        return 0;
    }
    if (word(2, "") == "learned") {
        learned(studio);
        return 0;
    }
    Operator person(word(2, "trailer-brakes-stainless"));
    bool readings_shown = false, wrong_shown = false;
    for (int touches = 0; touches < 900; ++touches) {
        studio.settle();
        studio.shoot_if_new();
        const State& state = desk.state();
        if (state.looks.screen == Screen::bench && state.line) {
            const LineWork work = work_in_hand(state);
            if (!readings_shown && work.stage == Stage::bending && work.move == Move::check && !work.made.empty()) {
                readings_shown = true;  // under the target, then over it, each taken back
                answer(studio, {"key-8", "key-5", "next", "undo"});
                studio.shoot("check-redo.png");
                answer(studio, {"key-1", "key-2", "key-0", "next", "undo"});
                continue;
            }
            if (!wrong_shown && work.stage == Stage::bending && work.made.size() >= 2) {
                wrong_shown = true;
                side_screens(studio);
                answer(studio, {"wrong", "reason-3", "kept-both"});
                studio.shoot("wrong-kinked.png");
                answer(studio, {"back", "reason-1", "wrong-bend-3", "kept-both"});
                studio.shoot("wrong-which-bend.png");
                desk.act(ConfirmScrap{});
                desk.act(GoTo{Screen::scrap});
                studio.settle();
                studio.shoot("scrap-filled.png");
                desk.act(Undo{});
                studio.settle();
                continue;
            }
        }
        const auto touch = person.next_touch(state, seen(studio.canvas.ui()));
        if (!touch) break;
        studio.tap(*touch);
    }
    studio.shoot_if_new();
    return 0;
}
