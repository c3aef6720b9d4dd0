#include "store/json_raw.h"

#include <catch2/catch.hpp>

namespace tubewright {

TEST_CASE("x- keys are kept as their text stood, each at its own object, in the order of the file") {
    const RawText raw("\xEF\xBB\xBF" R"( { "x-b" : 1.50 , "a": [ [], {"x-q":"}\"]", "n" : -1e5}, { "x-in": {"x-deep": 1, "bender": {}} , "b": {"x-l": [ 1,
 2 ]} } ], "x-\u0061":null})");
    CHECK(raw.kept("") == KeptKeys{{"\"x-b\"", "1.50"}, {"\"x-\\u0061\"", "null"}});
    CHECK(raw.kept("a[0]").empty());
    CHECK(raw.kept("a[1]") == KeptKeys{{"\"x-q\"", "\"}\\\"]\""}});
    CHECK(raw.kept("a[2]") == KeptKeys{{"\"x-in\"", "{\"x-deep\": 1, \"bender\": {}}"}});
    CHECK(raw.kept("a[2].b") == KeptKeys{{"\"x-l\"", "[ 1,\n 2 ]"}});
    CHECK(raw.kept("a[2].x-in").empty());
    CHECK(raw.kept("nowhere").empty());
}

TEST_CASE("a key is the same however its letters are written") {
    const RawText raw(R"({"li\u006ees": [{"\u0078-k": 1}]})");
    CHECK(raw.kept("lines[0]") == KeptKeys{{"\"\\u0078-k\"", "1"}});
}

TEST_CASE("a whole card is kept as its text, an id is no card") {
    const RawText raw(R"({"bender": { "id": "a", "x-a": 1.0 }, "lines": [{"bender": "hand-6"}, {"bender": {"marks": [ "}" ]}}]})");
    CHECK(raw.card("bender") == R"({ "id": "a", "x-a": 1.0 })");
    CHECK(raw.card("lines[0].bender").empty());
    CHECK(raw.card("lines[1].bender") == R"({"marks": [ "}" ]})");
    CHECK(raw.kept("bender").empty());
}

TEST_CASE("texts of a single value are gone through without harm") {
    for (const char* text : {"{}", "[]", "1", "\"a\\\"\"", " [ { } ] ", "null"}) CHECK(RawText(text).kept("").empty());
}

}  // namespace tubewright
