#include "shell/places.h"

#include <catch2/catch.hpp>
#include <cstdlib>

using namespace tubewright;

TEST_CASE("the user's data lie in the XDG data folder unless another is named") {
    // XDG Base Directory Specification: $XDG_DATA_HOME, or ~/.local/share where it is unset; relative ones are ignored.
    setenv("HOME", "/home/somebody", 1);
    unsetenv("XDG_DATA_HOME");
    CHECK(find_places("").home == "/home/somebody/.local/share/tubewright");
    setenv("XDG_DATA_HOME", "/data", 1);
    CHECK(find_places("").home == "/data/tubewright");
    setenv("XDG_DATA_HOME", "data", 1);
    CHECK(find_places("").home == "/home/somebody/.local/share/tubewright");
    CHECK(find_places("/elsewhere").home == "/elsewhere");
    unsetenv("XDG_DATA_HOME");
}
