#!/bin/sh
# Installs what is needed, builds the program, and opens it:  sh src/run.sh [JOB]
# With no display it says so and prints the bend sheet. Safe to run twice.
set -eu
here=$(cd "$(dirname "$0")/.." && pwd)
sh "$here/src/set_up.sh"
build=${TUBEWRIGHT_BUILD:-$here/.build}
{
  # Eight files compiled as one, and nothing for a debugger: whoever waits for this wants to bend.
  cmake -S "$here" -B "$build/program" -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_FLAGS_RELEASE="-O2 -DNDEBUG" \
        -DCMAKE_UNITY_BUILD=ON -DCMAKE_UNITY_BUILD_BATCH_SIZE=8 -DTUBEWRIGHT_TESTS=OFF
  cmake --build "$build/program"
} >&2
exec "$build/program/tubewright" "$@"
