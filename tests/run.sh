#!/bin/sh
# Installs what is needed, builds everything with the sanitizers on, and runs all tests. Safe to run twice.
set -eu
cd "$(dirname "$0")/.."
sh src/set_up.sh tests
build=${TUBEWRIGHT_BUILD:-.build}
# TUBEWRIGHT_TRACES=1 names files and lines where a sanitizer stops; without it only functions, a tenth sooner.
traces=${TUBEWRIGHT_TRACES:-0}
cmake -S . -B "$build/checked" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-g$traces -O1" \
      -DTUBEWRIGHT_CHECKED=ON -DTUBEWRIGHT_TESTS=ON
cmake --build "$build/checked"
# The drawing tests use the software rasteriser, so that pixels are the same everywhere.
export LIBGL_ALWAYS_SOFTWARE=1
ctest --test-dir "$build/checked" --output-on-failure -j 3 "$@"
