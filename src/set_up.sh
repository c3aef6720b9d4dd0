#!/bin/sh
# Installs the packages that building needs, and with "tests" those that testing needs. Debian 12 and
# its relatives; elsewhere it says what to install.
set -eu
build="g++ cmake ninja-build libimgui-dev libstb-dev libglfw3-dev libgl-dev libegl-dev python3-glad
       nlohmann-json3-dev libsqlite3-dev libmd-dev libeigen3-dev libcli11-dev libcairo2-dev libfreetype-dev libgl1-mesa-dri"
tests="catch2 libgsl-dev libfcl-dev libglpk-dev libnlopt-dev poppler-utils xvfb xauth xdotool"
wanted=$build
[ "${1:-}" = tests ] && wanted="$build $tests"

missing=""
if command -v dpkg-query >/dev/null 2>&1; then
  for package in $wanted; do
    state=$(dpkg-query -W -f='${Status}' "$package" 2>/dev/null || true)
    [ "$state" = "install ok installed" ] || missing="$missing $package"
  done
  [ -z "$missing" ] && exit 0
fi

say_what_is_needed() {
  echo "Tubewright needs: a C++20 compiler, CMake 3.22, Ninja, Dear ImGui 1.86, GLFW 3.3, OpenGL and EGL," >&2
  echo "the glad 0.1 or 2 generator, nlohmann_json 3.11, SQLite 3.37, libmd 1.0, Eigen 3.4, CLI11 2.1, cairo 1.16, FreeType 2; for the tests" >&2
  echo "Catch2 2.13, GSL, FCL 0.7, GLPK, NLopt 2.7, poppler-utils, Xvfb and xdotool. On Debian 12 these are the packages:" >&2
  echo $wanted >&2
}

if ! command -v apt-get >/dev/null 2>&1; then
  say_what_is_needed
  command -v cmake >/dev/null 2>&1 && exit 0  # perhaps all is there under other names; CMake will tell
  exit 1
fi
as_root=""
if [ "$(id -u)" -ne 0 ]; then
  if command -v sudo >/dev/null 2>&1; then as_root=sudo
  else say_what_is_needed; echo "Missing:$missing" >&2; exit 1
  fi
fi
{ $as_root apt-get update -q && DEBIAN_FRONTEND=noninteractive $as_root apt-get install -q -y --no-install-recommends $missing; } >&2 || {
  say_what_is_needed
  exit 1
}
