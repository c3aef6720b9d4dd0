#include "store/json_tree.h"

#include <nlohmann/json.hpp>

#include "desk.h"

namespace tubewright {
namespace {

std::string refusal_of_text(const std::string& text) {
    try {
        tree_from(text, "f.json");
        return "";
    } catch (const Refusal& refusal) {
        return refusal.sentence();
    }
}

std::string refusal_of_file(const std::filesystem::path& path) {
    try {
        bytes_of(path);
        return "";
    } catch (const Refusal& refusal) {
        CHECK(refusal.file == path.string());
        return refusal.what;
    }
}

/// Lists in lists, `levels` deep.
std::string nested(std::size_t levels) { return std::string(levels, '[') + std::string(levels, ']'); }

}  // namespace

TEST_CASE("the bytes of a file are those that are in it") {
    const OwnFolder folder;
    const std::string bytes("a\0\r\n\xFF", 5);
    CHECK(bytes_of(folder.write("a", bytes)) == bytes);
    CHECK(bytes_of(folder.write("empty", "")).empty());
    CHECK(refusal_of_file(folder.path() / "none") == "is not there");
    CHECK(refusal_of_file(folder.path()) == "is a folder");
    CHECK(refusal_of_file("/dev/null") == "is not a plain file");
}

TEST_CASE("of a file that is too large one byte too many is read, and that is refused") {
    const OwnFolder folder;
    const std::size_t largest = 4u << 20;
    const std::string bytes = bytes_of(folder.write("large", std::string(largest + 1000, ' ')));
    CHECK(bytes.size() == largest + 1);
    CHECK(refusal_of_text(bytes) == "f.json is larger than 4 MB; allowed: files up to 4 MB.");
    CHECK(refusal_of_text("1" + std::string(largest - 1, ' ')).empty());
}

TEST_CASE("a tree holds what its text says") {
    const nlohmann::json tree = tree_from(R"({"a": [1, -2, 2.5, true, null, "\u00e9"], "b": {}})", "f.json");
    CHECK(tree["a"].size() == 6);
    CHECK(tree["a"][1] == -2);
    CHECK(tree["a"][2] == 2.5);
    CHECK(tree["a"][3] == true);
    CHECK(tree["a"][4].is_null());
    CHECK(tree["a"][5] == "\xC3\xA9");
    CHECK(tree["b"].is_object());
}

TEST_CASE("a key given twice is refused with its place, the same key elsewhere is not") {
    CHECK(refusal_of_text(R"({"a": [{"b": 1}, {"b": 1, "b": 2}]})") == "f.json, a[1].b is given twice; allowed: each key once.");
    CHECK(refusal_of_text(R"({"a": {"a": 1}, "b": {"a": 1}})").empty());
}

TEST_CASE("32 levels are read, 33 are not") {
    CHECK(refusal_of_text(nested(32)).empty());
    CHECK(refusal_of_text(nested(33)).find("is nested too deeply; allowed: at most 32 levels.") != std::string::npos);
}

TEST_CASE("what is no JSON is refused at its line") {
    CHECK(refusal_of_text("{\n  \"a\": 1,\n  oops }") == "f.json, line 3 can't be read from \"oops }\" on; allowed: JSON text in UTF-8.");
    CHECK(refusal_of_text("{\n\"a\": 1") == "f.json, line 2 ends in the middle; allowed: JSON text in UTF-8.");
    CHECK(refusal_of_text("[1e999]") == "f.json, line 1 holds a number that no machine can hold, 1e999; allowed: finite numbers.");
    CHECK(refusal_of_text(" \n") == "f.json is empty; allowed: JSON text in UTF-8.");
}

TEST_CASE("text is UTF-8 by RFC 3629") {
    const auto text = [](const std::string& letter) { return refusal_of_text("\"" + letter + "\""); };
    const std::string no_text = "f.json is not text; allowed: JSON text in UTF-8.";
    for (const char* good : {"\x7F", "\xC2\x80", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) CHECK(text(good).empty());
    // Overlong, a surrogate, above U+10FFFF, a tail alone, a letter cut short, no UTF-8 at all.
    for (const char* bad : {"\xC0\xAF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\x80", "\xC3", "\xFF"}) CHECK(text(bad) == no_text);
    CHECK(text(std::string(1, '\0')) == no_text);
}

}  // namespace tubewright
