#include "store/card_text.h"

#include <nlohmann/json.hpp>
#include <random>

#include "desk.h"
#include "store/bender_file.h"

namespace tubewright {
namespace {

std::string sentence_of(const Bender& card, const std::string& text) {
    const auto again = read_bender_text(text, "card.json");
    if (!again.ok()) return again.trouble().sentence();
    return again.value() == card ? "the same" : "another card";
}

struct Dice {
    std::mt19937 source{20251125};
    double between(double least, double most) { return std::uniform_real_distribution<double>(least, most)(source); }
    bool heads() { return source() % 2 == 0; }
    Eigen::Vector3d place() { return {between(-900, 900), between(-900, 900), between(-900, 900)}; }
};

Bender random_card(Dice& dice) {
    Bender card;
    card.id = "own-" + std::to_string(dice.source());
    card.name = "bender \"50 %\" ##2";
    card.tube_od = {dice.between(1, 50)};
    card.radius = {dice.between(1, 40) * card.tube_od.mm};
    card.max_angle = {dice.between(1, 360)};
    card.stretch = dice.between(-0.1, 0.5);
    for (int i = 0; i <= static_cast<int>(dice.source() % 4); ++i) card.marks.push_back({"m" + std::to_string(i), {dice.between(-900, 900)}});
    if (dice.heads()) card.preferred_mark = card.marks.back().name;
    card.hook_straight = {dice.between(0, 900)};
    card.lever_straight = {dice.between(0, 900)};
    card.set_up = {dice.heads() ? HookHand::left : HookHand::right, static_cast<Swing>(dice.source() % 4)};
    card.body = {{"a box", Stands::fixed, Block{dice.place(), dice.place()}},
                 {"a rod", Stands::lever, Cylinder{dice.place(), dice.place(), {dice.between(0.1, 90)}}},
                 {"a wall", Stands::bench, HalfSpace{dice.place(), dice.place()}}};
    return card;
}

}  // namespace

TEST_CASE("every shipped card comes back from its text, in either unit and from either file") {
    int cards = 0;
    for (const auto& entry : std::filesystem::directory_iterator(source_dir / "assets/benders")) {
        const auto card = read_bender(entry.path());
        REQUIRE(card.ok());
        INFO(entry.path().string());
        for (const Unit unit : {Unit::inch, Unit::mm}) CHECK(sentence_of(card.value(), card_text(card.value(), unit)) == "the same");
        ++cards;
    }
    CHECK(cards >= 4);
}

TEST_CASE("random cards come back from their text to the last bit") {
    Dice dice;
    for (int i = 0; i < 200; ++i) {
        const Bender card = random_card(dice);
        INFO("card " << i);
        for (const Unit unit : {Unit::inch, Unit::mm}) CHECK(sentence_of(card, card_text(card, unit)) == "the same");
    }
}

TEST_CASE("a card in inches is written in the inches it was read in, and keeps the keys of its owner") {
    const std::filesystem::path path = source_dir / "assets/benders/hand-3-16.json";
    const std::string before = bytes_in(path.string());
    const auto tree = nlohmann::json::parse(card_text(read_bender(path).value(), Unit::inch, before));
    CHECK(tree["units"] == "in");
    CHECK(tree["tube_od"] == 0.1875);
    CHECK(tree["radius"] == 0.5625);
    CHECK(tree["marks"][2]["offset"] == 0.3211);
    CHECK(tree["body"][0]["cylinder"]["radius"] == 0.459);
    CHECK(tree["x-body-note"] == nlohmann::json::parse(before)["x-body-note"]);
}

TEST_CASE("no other key of the text before is taken over") {
    const Bender card = read_bender(source_dir / "assets/benders/hand-3-16.json").value();
    const auto tree = nlohmann::json::parse(card_text(card, Unit::inch, R"({ "radius": 9, "unknown": 1, "x-mine": 2 })"));
    CHECK(tree["radius"] == 0.5625);
    CHECK_FALSE(tree.contains("unknown"));
    CHECK(tree["x-mine"] == 2);
    CHECK(card_text(card, Unit::inch, "no card at all") == card_text(card, Unit::inch));
}

}  // namespace tubewright
