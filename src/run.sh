#!/bin/sh
# Installs what is needed, builds the program, and opens it:  sh src/run.sh [JOB]
# With no display it says so and prints the bend sheet. Safe to run twice.
set -eu
here=$(cd "$(dirname "$0")/.." && pwd)
sh "$here/src/set_up.sh"
build=${TUBEWRIGHT_BUILD:-$here/.build}
{
  cmake -S "$here" -B "$build/program" -G Ninja -DCMAKE_BUILD_TYPE=RelWithDebInfo -DTUBEWRIGHT_TESTS=OFF
  cmake --build "$build/program"
} >&2
exec "$build/program/tubewright" "$@"
