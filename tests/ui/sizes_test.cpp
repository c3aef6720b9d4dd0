#include <algorithm>
#include <catch2/catch.hpp>

#include "ui/headless.h"
#include "ui/samples.h"

using namespace tubewright;

// Sizes in mm; our choice, after kiosk and display studies: 20 mm keys did best with a standing
// person, capitals of 3.3 mm are 16 minutes of arc at 0.7 m, and 9.6 mm are 22 minutes at 1.5 m.

namespace {

void nothing(const Action&) {}

}  // namespace

TEST_CASE("the number to work to can be read two steps away") {
    for (const TryScreen& screen : try_screens())
        for (const char* name : {"mark", "turn", "pull", "check", "over"}) {
            const ScreenView view = sample(name);
            HeadlessScreen desk(screen, [&] { return view; }, nothing);
            const auto* move = std::get_if<MoveBody>(&view.body);
            const std::string hero = move ? move->hero : std::get<ChoiceBody>(view.body).hero;
            double cap = 0;
            for (const TextDrawn& line : desk.ui().texts())
                if (!line.text.empty() && hero.rfind(line.text, 0) == 0) cap = std::max(cap, line.cap_mm);
            INFO(name << " on " << screen.name());
            CHECK(cap >= 9.6 - 0.01);
        }
}

TEST_CASE("a turn keeps its picture beside the widest words it can have") {
    for (const TryScreen& screen : try_screens())
        for (const char* way : {"up", "toward", "up and away", "up and toward", "away and down", "toward and down"})
            for (const char* asks : {"Turn the top line", "Turn the leg past bend 18"}) {
                ScreenView view = sample("turn");
                MoveBody& move = std::get<MoveBody>(view.body);
                move.asks = asks;
                move.hero = way;
                move.lines = {{"135 1/2° round from the swing."}};
                HeadlessScreen desk(screen, [&] { return view; }, nothing);
                INFO(asks << " " << way << " on " << screen.name());
                REQUIRE(desk.ui().picture_rect());
                CHECK(desk.ui().picture_rect()->width() >= 60 * screen.px_per_mm);
                CHECK(faults_of(desk.ui()).empty());
            }
}

TEST_CASE("the 50 mm bar is drawn at the stored scale, however large the rest is") {
    for (const TryScreen& screen : try_screens()) {
        const ScreenView view = sample("settings");
        HeadlessScreen desk(screen, [&] { return view; }, nothing);
        INFO(screen.name());
        REQUIRE(desk.ui().ruler_rect());
        CHECK(desk.ui().ruler_rect()->width() == Approx(50 * screen.px_per_mm).margin(0.01));
        CHECK(desk.ui().ruler_rect()->max.x <= static_cast<float>(screen.width));
    }
}

TEST_CASE("a capital of our letters is as high as the font sizes suppose") {
    const ScreenView view = sample("mark");
    HeadlessScreen desk(try_screens()[1], [&] { return view; }, nothing);
    for (const ImFont* font : ImGui::GetIO().Fonts->Fonts) {
        const ImFontGlyph& letter = *font->FindGlyph('H');
        // An H stands on the baseline; its picture is whole pixels, so up to one is added at the top. Bold
        // is 2 % higher.
        const float high = letter.Y1 - letter.Y0, supposed = static_cast<float>(cap_share) * font->FontSize;
        INFO(font->FontSize << " px: H is " << high << " high");
        CHECK(high >= supposed - 0.05f);
        CHECK(high <= supposed * 1.022f + 1.05f);
    }
}

TEST_CASE("what is wrong with a screen is found") {
    ScreenView view = sample("turn");
    const std::vector<ButtonView> good = view.footer.buttons;
    const auto faulty = [&] {
        HeadlessScreen desk(try_screens().front(), [&] { return view; }, nothing);
        return !faults_of(desk.ui()).empty();
    };
    CHECK_FALSE(faulty());
    view.footer.buttons[1].id = view.footer.buttons[0].id;
    CHECK(faulty());
    view.footer.buttons = good;
    view.footer.buttons[1].enabled = false;
    CHECK(faulty());  // says no reason
    view.footer.buttons = good;
    view.footer.buttons[1].label = "Unfortunatelyveryunbreakablelongword";
    CHECK(faulty());
}
