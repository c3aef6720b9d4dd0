#include <catch2/catch.hpp>
#include <cstdint>

#include "ui/headless.h"
#include "ui/samples.h"

using namespace tubewright;

// A screen on which nothing has changed is painted from the triangles of the frame before.

namespace {

/// All that a backend gets to paint: corners, which of them make triangles, and commands.
struct Painted {
    std::vector<float> corners;
    std::vector<ImU32> colours;
    std::vector<ImDrawIdx> order;
    std::vector<float> commands;
    std::vector<ImTextureID> textures;
    bool operator==(const Painted&) const = default;
};

Painted painted(Ui& ui) {
    const ImDrawData& data = *ui.draw_data();
    REQUIRE(data.Valid);
    Painted all;
    for (int i = 0; i < data.CmdListsCount; ++i) {
        const ImDrawList& list = *data.CmdLists[i];
        for (const ImDrawVert& corner : list.VtxBuffer) {
            all.corners.insert(all.corners.end(), {corner.pos.x, corner.pos.y, corner.uv.x, corner.uv.y});
            all.colours.push_back(corner.col);
        }
        all.order.insert(all.order.end(), list.IdxBuffer.begin(), list.IdxBuffer.end());
        for (const ImDrawCmd& command : list.CmdBuffer) {
            const ImVec4 clip = command.ClipRect;
            all.commands.insert(all.commands.end(), {clip.x, clip.y, clip.z, clip.w, static_cast<float>(command.ElemCount), static_cast<float>(command.IdxOffset), static_cast<float>(command.VtxOffset)});
            all.textures.push_back(command.TextureId);
        }
    }
    return all;
}

/// A desk that shows one view.
struct Desk {
    explicit Desk(const ScreenView& shown, const TryScreen& on = try_screens().front()) : view(shown), screen(on, [this] { return view; }, [this](const Action& action) { taken.push_back(action); }) {
        screen.picture() = sample_picture();
        screen.frame();
    }
    ScreenView view;
    std::vector<Action> taken;
    HeadlessScreen screen;
    bool stands() { return screen.ui().stands(view, screen.picture()); }
};

/// The next frame draws every part anew.
void forget_parts(Desk& desk) {
    desk.screen.ui().use(palette_of(desk.view.theme == Theme::light ? Theme::dark : Theme::light));
}

std::vector<std::string> ids(const Ui& ui) {
    std::vector<std::string> all;
    for (const Touchable& thing : ui.touchables()) all.push_back(thing.id);
    return all;
}

std::vector<std::string> words(const Ui& ui) {
    std::vector<std::string> all;
    for (const TextDrawn& line : ui.texts()) all.push_back(line.text);
    return all;
}

}  // namespace

TEST_CASE("a frame that stands is, corner for corner, what would be drawn") {
    for (const TryScreen& screen : try_screens())
        for (const Sample& one : samples()) {
            INFO(one.name << " on " << screen.name());
            Desk kept(one.view, screen);
            REQUIRE(kept.stands());
            kept.screen.frame();
            kept.screen.wait(1);
            REQUIRE(kept.stands());
            const Painted after_a_while = painted(kept.screen.ui());
            const auto kept_ids = ids(kept.screen.ui()), kept_words = words(kept.screen.ui());
            const bool kept_picture = kept.screen.ui().picture_rect().has_value(), kept_ruler = kept.screen.ui().ruler_rect().has_value();

            Desk fresh(one.view, screen);
            CHECK(after_a_while.corners.size() > 1000);
            CHECK(painted(fresh.screen.ui()) == after_a_while);
            CHECK(ids(fresh.screen.ui()) == kept_ids);
            CHECK(words(fresh.screen.ui()) == kept_words);
            CHECK(fresh.screen.ui().picture_rect().has_value() == kept_picture);
            CHECK(fresh.screen.ui().ruler_rect().has_value() == kept_ruler);
        }
}

TEST_CASE("a screen on which some parts stand is, corner for corner, the screen drawn wholly anew") {
    const std::vector<Sample> all = samples();
    for (const Sample& from : all) {
        Desk kept(from.view);
        for (const Sample& to : all) {
            INFO("from " << from.name << " to " << to.name);
            kept.view = from.view;
            kept.screen.frame();
            kept.view = to.view;
            kept.screen.frame();
            const Painted standing = painted(kept.screen.ui());
            const auto kept_ids = ids(kept.screen.ui()), kept_words = words(kept.screen.ui());
            forget_parts(kept);
            kept.screen.frame();
            CHECK(painted(kept.screen.ui()) == standing);
            CHECK(ids(kept.screen.ui()) == kept_ids);
            CHECK(words(kept.screen.ui()) == kept_words);
        }
    }
}

TEST_CASE("a screen with a finger down is, corner for corner, the same drawn wholly anew") {
    for (const Sample& one : samples()) {
        Desk desk(one.view);
        desk.screen.wait(1);
        const std::vector<Touchable> things = desk.screen.ui().touchables();
        for (const Touchable& thing : things) {
            if (!thing.enabled || thing.held) continue;  // what is held looks different in every frame
            INFO(one.name << ": " << thing.id);
            desk.screen.put_finger(thing.box().centre());
            const Painted standing = painted(desk.screen.ui());
            forget_parts(desk);
            desk.screen.frame();
            CHECK(painted(desk.screen.ui()) == standing);
            desk.screen.lift_finger();
        }
    }
}

TEST_CASE("what changes while it is covered is seen as it is when it comes back") {
    Desk desk(sample("pull"));
    desk.view.notice = "The disk is full.";
    desk.screen.frame();
    desk.view.ribbon->tally = "formed 1, left 2";
    desk.screen.frame();
    desk.view.notice.clear();
    desk.screen.frame();
    CHECK(desk.screen.says("formed 1, left 2"));
}

TEST_CASE("a finger changes the picture in the frame in which it comes down, and again when it has lifted") {
    for (const Sample& one : samples()) {
        Desk desk(one.view);
        desk.screen.wait(1);
        const Painted untouched = painted(desk.screen.ui());
        const std::vector<Touchable> things = desk.screen.ui().touchables();
        for (const Touchable& thing : things) {
            if (!thing.enabled) continue;
            INFO(one.name << ": " << thing.id);
            desk.screen.put_finger(thing.box().centre());
            CHECK_FALSE(painted(desk.screen.ui()) == untouched);
            desk.screen.lift_finger();
            CHECK(painted(desk.screen.ui()) == untouched);
            CHECK(desk.stands());
        }
    }
}

TEST_CASE("what is held fills from frame to frame") {
    Desk desk(sample("reasons"));
    desk.screen.wait(1);
    desk.screen.put_finger(desk.screen.find("confirm").box().centre());
    Painted before = painted(desk.screen.ui());
    for (int i = 0; i < 20; ++i) {
        desk.screen.frame();
        Painted now = painted(desk.screen.ui());
        CHECK_FALSE(now == before);
        before = std::move(now);
    }
    CHECK(desk.taken.empty());
    desk.screen.wait(1);
    CHECK(desk.taken == std::vector<Action>{ConfirmScrap{}});
}

TEST_CASE("a screen that stands takes a tap, and a foot switch, at once") {
    Desk desk(sample("turn"));
    desk.screen.wait(60);
    REQUIRE(desk.stands());
    desk.screen.tap_at_once("next");
    desk.screen.wait(60);
    REQUIRE(desk.stands());
    desk.screen.key(KeyPress::back);
    CHECK(desk.taken == std::vector<Action>{Next{}, Back{}});
}

TEST_CASE("whatever is different from the frame before is drawn in that frame") {
    const auto differs = [](const std::function<void(Desk&)>& change) {
        Desk desk(sample("pull"));
        desk.screen.wait(1);
        const Painted before = painted(desk.screen.ui());
        change(desk);
        desk.screen.frame();
        return !(painted(desk.screen.ui()) == before);
    };
    CHECK_FALSE(differs([](Desk&) {}));
    CHECK(differs([](Desk& desk) { desk.view.header.place += "x"; }));
    CHECK(differs([](Desk& desk) { desk.view.notice = "The disk is full."; }));
    CHECK(differs([](Desk& desk) { desk.view.ribbon->marks[0].at += 0.01; }));
    CHECK(differs([](Desk& desk) { desk.view.theme = Theme::dark; }));
    CHECK(differs([](Desk& desk) { desk.screen.ui().use_scale(2.5); }));
    CHECK(differs([](Desk&) { ImGui::GetIO().DisplaySize.x -= 100; }));
    CHECK(differs([](Desk& desk) { desk.screen.picture().texture = reinterpret_cast<ImTextureID>(std::intptr_t{7}); }));
    CHECK(differs([](Desk& desk) { desk.screen.picture().anchors.begin()->second.x += 0.1f; }));
    // So coarse that the layout has grown as far as it may: then its millimetres are the screen's alone.
    Desk coarse(sample("settings"), {1280, 800, 2.6});
    const Painted before = painted(coarse.screen.ui());
    coarse.screen.ui().use_scale(2.5);
    coarse.screen.frame();
    CHECK_FALSE(painted(coarse.screen.ui()) == before);
}
