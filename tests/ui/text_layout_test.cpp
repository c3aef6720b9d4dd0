#include "ui/text_layout.h"

#include <catch2/catch.hpp>

#include "ui/headless.h"
#include "ui/samples.h"

using namespace tubewright;

namespace {

/// Our letters, in pixels of the first screen.
struct Letters {
    ScreenView view = sample("mark");
    HeadlessScreen desk{try_screens().front(), [this] { return view; }, [](const Action&) {}};
    const ImFont& font = *ImGui::GetIO().Fonts->Fonts[0];

    float width(const std::string& text) const { return text_width(font, 30, text); }
    std::vector<std::string> lines(const std::string& text, float width) const {
        std::vector<std::string> out;
        for (const TextLine& line : lines_of(font, 30, text, width, true).lines) out.push_back(line.text);
        return out;
    }
};

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a number stays with its fraction and its unit at the end of a line") {
    Letters letters;
    // Room for "Lengthen it by 1" and no more: the whole number goes down.
    CHECK(letters.lines("Lengthen it by 1 1/2 in or more", letters.width("Lengthen it by 1 ")) == Lines{"Lengthen it by", "1 1/2 in or more"});
    CHECK(letters.lines("left 201 3/4 in, scrap 6 mm.", letters.width("left 201 3/4 in,") + 1) == Lines{"left 201 3/4 in,", "scrap 6 mm."});
    CHECK(letters.lines("stainless 10 × 1.5 mm", letters.width("stainless 10 ×") + 1) == Lines{"stainless", "10 × 1.5 mm"});
    CHECK(letters.lines("take hold of end B here", letters.width("take hold of end ") + 1) == Lines{"take hold of", "end B here"});
}

TEST_CASE("a number that had to be parted, or a word that had to be broken, is told") {
    Letters letters;
    CHECK_FALSE(lines_of(letters.font, 30, "201 3/4 in", letters.width("201 3/4"), true).words_whole);
    CHECK_FALSE(lines_of(letters.font, 30, "crossover", letters.width("cross"), true).words_whole);
    CHECK(lines_of(letters.font, 30, "axle crossover", letters.width("crossover") + 1, true).words_whole);
}

TEST_CASE("the width for two lines holds the text in two lines, and a pixel less does not") {
    Letters letters;
    for (const char* text : {"on stick 201 3/4 in", "bend 12 of 12, 11 done", "scrap today 6 1/2 in", "Left rear corner to the tee"}) {
        INFO(text);
        const float width = halved_width(letters.font, 30, text);
        CHECK(letters.lines(text, width + 0.1f).size() == 2);
        const TextLines less = lines_of(letters.font, 30, text, width - 1, true);
        CHECK((less.lines.size() > 2 || !less.words_whole));
    }
}
