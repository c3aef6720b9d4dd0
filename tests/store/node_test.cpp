#include "store/node.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

namespace tubewright {
namespace {

using nlohmann::json;

const std::string file = "f.json";

/// What a reading of this value says: its refusal, or nothing.
template <class Read>
std::string refusal_of(const json& value, const Read& read) {
    try {
        read(Node(value, file, "v"));
        return "";
    } catch (const Refusal& refusal) {
        CHECK(refusal.file == file);
        return refusal.place + " " + refusal.what + "; " + refusal.allowed;
    }
}

std::string number_in(Range range, const json& value) {
    return refusal_of(value, [&](const Node& node) { node.number(range); });
}

std::string length_in(Unit unit, Range mm, const json& value) {
    return refusal_of(value, [&](const Node& node) { node.length(unit, mm); });
}

}  // namespace

TEST_CASE("a range holds its ends unless it leaves them out") {
    CHECK(Range{1, 2}.holds(1));
    CHECK(Range{1, 2}.holds(2));
    CHECK_FALSE(Range{1, 2}.holds(2.001));
    CHECK_FALSE(Range{1, 2}.holds(0.999));
    CHECK_FALSE(Range{1, 2, true}.holds(1));
    CHECK_FALSE(Range{1, 2, false, true}.holds(2));
    CHECK_FALSE(Range{1, 2}.holds(NAN));
}

TEST_CASE("a value knows its kind, its file and its place") {
    const json value = {{"a", {{"b", {1, "x", json::object()}}}}};
    const std::vector<Node> items = Node(value, file).at("a").at("b").items(3, 3);
    CHECK(items[0].is_number());
    CHECK_FALSE(items[0].is_text());
    CHECK(items[1].is_text());
    CHECK(items[2].is_object());
    CHECK(items[2].place() == "a.b[2]");
    CHECK(items[2].file() == file);
}

TEST_CASE("a key is there, may be there, or is missed") {
    const json value = {{"a", 1}};
    const Node node(value, file, "v");
    CHECK(node.has("a"));
    CHECK_FALSE(node.has("b"));
    CHECK(node.find("a")->number({0, 2}) == 1);
    CHECK_FALSE(node.find("b"));
    CHECK(refusal_of(value, [](const Node& n) { n.at("b"); }) == "v.b is missing; a value for b");
    CHECK(refusal_of(value, [](const Node& n) { n.at("b", "a length"); }) == "v.b is missing; a length");
    CHECK(refusal_of(3, [](const Node& n) { n.find("b"); }) == "v is 3; an object");
}

TEST_CASE("only known keys, and those that begin with x-") {
    const auto read = [](const Node& n) { n.known_keys({"a", "b"}); };
    CHECK(refusal_of({{"a", 1}, {"x-c", 2}}, read).empty());
    CHECK(refusal_of({{"a", 1}, {"c", 2}}, read) == "v.c is not a key that belongs here; a, b, and keys that begin with x-");
    CHECK(refusal_of(json::array(), read) == "v is a list; an object");
}

TEST_CASE("a list has as many entries as are asked for") {
    const auto read = [](const Node& n) { n.items(1, 2); };
    CHECK(refusal_of({1, 2}, read).empty());
    CHECK(refusal_of({1, 2, 3}, read) == "v has 3 entries; a list of 1 to 2");
    CHECK(refusal_of(json::array(), read) == "v has 0 entries; a list of 1 to 2");
    CHECK(refusal_of("x", read) == "v is \"x\"; a list of 1 to 2");
}

TEST_CASE("text is one line that says something, a note may say nothing") {
    const auto text = [](const Node& n) { n.text(3); };
    const auto note = [](const Node& n) { n.note(); };
    CHECK(refusal_of("abc", text).empty());
    CHECK(refusal_of("abcd", text) == "v is too long; text up to 3 bytes");
    CHECK(refusal_of("  ", text) == "v is empty; some text");
    CHECK(refusal_of("a\tb", text) == "v holds a control character; one line of text");
    CHECK(refusal_of("", note).empty());
    CHECK(refusal_of(std::string(1001, 'a'), note) == "v is too long; text up to 1000 bytes");
    CHECK(refusal_of(1, note) == "v is 1; text");
}

TEST_CASE("numbers, whole numbers, yes and no") {
    const auto whole = [](const Node& n) { n.whole(1, 9); };
    const auto yes = [](const Node& n) { n.yes(); };
    CHECK(number_in({0, 180}, 180).empty());
    CHECK(number_in({0, 180}, 180.5) == "v is 180.5; 0 to 180");
    CHECK(number_in({0, 180}, "90") == "v is \"90\"; 0 to 180");
    CHECK(refusal_of(9, whole).empty());
    CHECK(refusal_of(1.5, whole) == "v is 1.5; a whole number, 1 to 9");
    CHECK(refusal_of(true, yes).empty());
    CHECK(refusal_of(1, yes) == "v is 1; true or false");
    const json right_angle = 90;
    CHECK(Node(right_angle, file).angle({0, 180}) == Angle{90});
}

TEST_CASE("a length is given in the file's unit and comes back in mm") {
    const json value = 2;
    CHECK(Node(value, file).length(Unit::inch, {0, 100}).mm == Approx(50.8));
    CHECK(Node(value, file).length(Unit::mm, {0, 100}).mm == 2);
    CHECK(length_in(Unit::inch, {0, 50}, 2) == "v is 2; 0 to 1.968 in");  // 50 / 25.4 = 1.9685
    CHECK(length_in(Unit::mm, {0, 50}, 51) == "v is 51; 0 to 50 mm");
}

TEST_CASE("allowed bounds are round and may themselves be typed") {
    // The wall of a 3/16 in tube: 0.05 mm = 0.0019685 in; half of 0.1875 in is 0.09375 in, left out.
    CHECK(length_in(Unit::inch, {0.05, 2.38125, false, true}, 0) == "v is 0; 0.002 to 0.093 in");
    CHECK(length_in(Unit::inch, {0.05, 2.38125, false, true}, 0.093).empty());
    CHECK(length_in(Unit::inch, {0.05, 2.38125, false, true}, 0.002).empty());
    // A bound that is round already but left out is said so.
    CHECK(length_in(Unit::mm, {3, 300, true}, 3) == "v is 3; more than 3 and at most 300 mm");
    CHECK(number_in({0, 360, false, true}, 360) == "v is 360; at least 0 and less than 360");
    CHECK(number_in({0, 0.5, true, true}, 0.5) == "v is 0.5; more than 0 and less than 0.5");
    // Four figures or so, whatever the size: 100 m and 1 m in inches, and a bound that is rounded up.
    CHECK(length_in(Unit::inch, {0, 100000, true}, 0) == "v is 0; more than 0 and at most 3937 in");
    CHECK(length_in(Unit::inch, {-1000, 1000}, 40) == "v is 40; -39.37 to 39.37 in");
    CHECK(number_in({2.1234, 50}, 2) == "v is 2; 2.124 to 50");
    CHECK(number_in({40000, 500000}, 1) == "v is 1; 40000 to 500000");
    // Nothing round lies inside: the bounds as they are.
    CHECK(number_in({2.1234, 2.1236}, 2) == "v is 2; 2.1234 to 2.1236");
}

TEST_CASE("one word of several") {
    const std::vector<std::pair<std::string, int>> choices{{"one", 1}, {"two", 2}};
    const json two = "two";
    CHECK(Node(two, file).one_of(choices) == 2);
    CHECK(refusal_of("three", [&](const Node& n) { n.one_of(choices); }) == "v is \"three\"; one, two");
    CHECK(refusal_of(2, [&](const Node& n) { n.one_of(choices); }) == "v is 2; one, two");
}

TEST_CASE("a refused value is shown as it stands, in short") {
    const auto read = [](const Node& n) { n.refuse_value("less"); };
    CHECK(refusal_of(json::object(), read) == "v is an object; less");
    CHECK(refusal_of(nullptr, read) == "v is null; less");
    CHECK(refusal_of(std::string(61, 'a'), read) == "v is \"" + std::string(60, 'a') + "...\"; less");
    CHECK(refusal_of(1, [](const Node& n) { n.refuse("is odd", "even ones"); }) == "v is odd; even ones");
}

TEST_CASE("units, format and version") {
    const json inch = "in", mm = "mm";
    CHECK(unit_from(Node(inch, file)) == Unit::inch);
    CHECK(unit_from(Node(mm, file)) == Unit::mm);
    CHECK(refusal_of("cm", [](const Node& n) { unit_from(n); }) == "v is \"cm\"; in, mm");
    const auto check = [](const Node& n) { check_format(n, "tubewright-job"); };
    CHECK(refusal_of({{"format", "tubewright-job"}, {"version", 1}}, check).empty());
    CHECK(refusal_of({{"format", "other"}, {"version", 1}}, check) == "v.format is \"other\"; \"tubewright-job\"");
    CHECK(refusal_of({{"format", "tubewright-job"}, {"version", 2}}, check) == "v.version is 2, from a newer version of the program; 1");
    CHECK(refusal_of(7, check) == "v is 7; an object with \"format\": \"tubewright-job\"");
}

TEST_CASE("names joined for a sentence") {
    CHECK(joined({}).empty());
    CHECK(joined({"a"}) == "a");
    CHECK(joined({"a", "b", "c"}) == "a, b, c");
}

TEST_CASE("guarded hands back the value, or the refusal that was thrown") {
    CHECK(guarded([] { return 5; }).value() == 5);
    const auto refused = guarded([]() -> int { throw Refusal{file, "a", "is odd", "even ones"}; });
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.trouble().sentence() == "f.json, a is odd; allowed: even ones.");
}

}  // namespace tubewright
