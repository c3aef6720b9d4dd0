#include "shell/command_line.h"

#include <catch2/catch.hpp>
#include <algorithm>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

using namespace tubewright;

namespace {

struct Ran {
    int status;
    std::string out, trouble;
};

Ran ran(std::vector<std::string> words) {
    words.insert(words.begin(), "tubewright");
    std::vector<char*> pointers;
    for (std::string& word : words) pointers.push_back(word.data());
    std::ostringstream out, trouble;
    std::streambuf* const usual_out = std::cout.rdbuf(out.rdbuf());
    std::streambuf* const usual_trouble = std::cerr.rdbuf(trouble.rdbuf());
    const int status = run(static_cast<int>(pointers.size()), pointers.data());
    std::cout.rdbuf(usual_out);
    std::cerr.rdbuf(usual_trouble);
    return {status, out.str(), trouble.str()};
}

const std::string job = TUBEWRIGHT_SOURCE_DIR "/jobs/cooler-pair.json";

}  // namespace

TEST_CASE("help and version are printed and nothing else happens") {
    CHECK(ran({"--help"}).status == 0);
    CHECK(ran({"--help"}).out.find("--touch-map") != std::string::npos);
    CHECK(ran({"--version"}).out == "tubewright 0.1.0\n");
}

TEST_CASE("sheet and check print one job; --home may stand before or after") {
    CHECK(ran({"sheet", job}).status == 0);
    CHECK(ran({"sheet", job, "--line", "left", "--json"}).out.find("tubewright-sheet") != std::string::npos);
    CHECK(ran({"--home", "/tmp/nobody", "check", job}).status == 0);
    CHECK(ran({"check", job, "--home", "/tmp/nobody"}).status == 0);
}

TEST_CASE("a word too many, one too few or one unknown is refused in one line") {
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"sheet"}, {"check"}, {"paper", job}, {"paper", "--out", "it.pdf"}, {"paper", job, "--out", "it.pdf", "--touch-map", "x"}, {"sheet", job, "extra.json"}, {"check", job, "extra.json"}, {"--bogus"}, {"bogus"}, {"sheet", job, "--touch-map", "x"}, {"restore"}, {"restore", job, "extra"}, {"backup", "extra"}, {"backup", "--touch-map", "x"}, {"bog\nus"}, {"sheet", job, "--bog\nus"}, {"sheet", job, "ex\ntra"}}) {
        const Ran result = ran(words);
        INFO(words.back());
        CHECK(result.status == 2);
        CHECK(result.out.empty());
        CHECK(std::count(result.trouble.begin(), result.trouble.end(), '\n') == 1);
    }
}
