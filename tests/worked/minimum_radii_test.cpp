// Published bend radii against the program's own limits.
#include <catch2/catch.hpp>
