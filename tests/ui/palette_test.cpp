#include <catch2/catch.hpp>

#include "ui/headless.h"

using namespace tubewright;

TEST_CASE("contrast is counted as WCAG 2 defines it") {
    // The definition's own ends: black on white is 21:1, a colour on itself 1:1.
    CHECK(contrast({0, 0, 0}, {255, 255, 255}) == Approx(21).margin(1e-9));
    CHECK(contrast({90, 20, 7}, {90, 20, 7}) == Approx(1).margin(1e-9));
    // By hand: pure red has a luminance of 0.2126, so on white 1.05 / 0.2626 = 3.9985.
    CHECK(contrast({255, 0, 0}, {255, 255, 255}) == Approx(3.9985).margin(0.0001));
    CHECK(contrast({255, 255, 255}, {255, 0, 0}) == Approx(3.9985).margin(0.0001));
}

TEST_CASE("lines and signs of both themes stand out from what they are drawn on") {
    for (const Theme theme : {Theme::light, Theme::dark})
        for (const ColourPair& pair : shape_pairs(palette_of(theme))) {
            INFO(pair.use << (theme == Theme::light ? ", light" : ", dark"));
            CHECK(contrast(pair.upper, pair.ground) >= 3.0);
        }
}

TEST_CASE("text on every surface of both themes has a contrast of 7 to 1") {
    for (const Theme theme : {Theme::light, Theme::dark}) {
        const Palette p = palette_of(theme);
        for (const Rgb ground : {p.paper, p.panel, p.tray, p.now_pale, p.go_pale, p.caution_pale, p.stop_pale}) CHECK(contrast(p.ink, ground) >= 7.0);
        for (const Rgb ground : {p.paper, p.panel}) CHECK(contrast(p.ink_soft, ground) >= 7.0);
        CHECK(contrast(p.bar_ink, p.bar) >= 7.0);
        CHECK(contrast(p.on_now, p.now) >= 7.0);
        CHECK(contrast(p.on_go, p.go) >= 7.0);
        CHECK(contrast(p.on_stop, p.stop) >= 7.0);
    }
}

TEST_CASE("a theme that leaves a colour out is not taken") {
    std::map<std::string, std::uint32_t> roles;
    for (const std::string& role : palette_roles()) roles[role] = 0x102030;
    CHECK(palette_from(roles).ok());
    roles.erase("stop");
    const auto short_one = palette_from(roles);
    REQUIRE_FALSE(short_one.ok());
    CHECK(short_one.trouble().role == "stop");
}
