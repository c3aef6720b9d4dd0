#pragma once
// Compares a printed view with the file next to the tests. RENEW=1 rewrites the ones that differ and
// still reports them.

#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

namespace tubewright {

inline void expect_text(const std::string& name, const std::string& text) {
    const std::string path = std::string(TUBEWRIGHT_SOURCE_DIR) + "/tests/present/expected/" + name + ".txt";
    std::ifstream in(path);
    std::stringstream expected;
    expected << in.rdbuf();
    INFO(path);
    CHECK(text == expected.str());
    const char* renew = std::getenv("RENEW");
    if (text != expected.str() && renew && std::string(renew) == "1") std::ofstream(path) << text;
}

}  // namespace tubewright
