#!/bin/sh
# Installs what is needed, builds everything with the sanitizers on, and runs all tests. Safe to run twice.
set -eu
cd "$(dirname "$0")/.."
sh src/set_up.sh tests
build=${TUBEWRIGHT_BUILD:-.build}
# TUBEWRIGHT_THOROUGH=ON has every check there is, in a folder of its own, and names file and line where a sanitizer stops.
thorough=${TUBEWRIGHT_THOROUGH:-OFF}
checked=$build/checked traces=0
[ "$thorough" = OFF ] || { checked=$build/thorough traces=1; }
cmake -S . -B "$checked" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-g$traces -O1" \
      -DTUBEWRIGHT_CHECKED=ON -DTUBEWRIGHT_THOROUGH="$thorough" -DTUBEWRIGHT_TESTS=ON
cmake --build "$checked"
# The drawing tests use the software rasteriser, so that pixels are the same everywhere.
export LIBGL_ALWAYS_SOFTWARE=1
ctest --test-dir "$checked" --output-on-failure -j 3 "$@"
