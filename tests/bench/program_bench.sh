#!/bin/sh
# What the running program costs: time to its first usable screen, processor ticks in ten idle seconds, and
# memory. Prints; is no test.     sh tests/bench/program_bench.sh PROGRAM   (needs xvfb-run)
set -eu
program=${1:?the tubewright to measure}
jobs=$(cd "$(dirname "$0")/../../jobs" && pwd)
if [ -z "${DISPLAY:-}" ]; then exec xvfb-run -a -s "-screen 0 1280x800x24" sh "$0" "$program"; fi
export LIBGL_ALWAYS_SOFTWARE=1
home=$(mktemp -d)
trap 'kill $pid 2>/dev/null; rm -rf "$home"' EXIT

now() { date +%s%N; }
for run in cold warm; do
  rm -f "$home/map"
  start=$(now)
  "$program" "$jobs/trailer-brakes-stainless.json" --home "$home" --touch-map "$home/map" &
  pid=$!
  while [ ! -s "$home/map" ]; do sleep 0.01; done
  # The map is written 0.32 s after the first frame, once the screen takes touches.
  echo "$run start to the first frame: $(( ($(now) - start) / 1000000 - 320 )) ms"
  [ $run = cold ] && { kill $pid; wait $pid 2>/dev/null || true; }
done
sleep 2
ticks() { awk '{print $14 + $15}' /proc/$pid/stat; }
before=$(ticks)
sleep 10
echo "processor ticks in 10 idle seconds: $(( $(ticks) - before )) of $(( 10 * $(getconf CLK_TCK) ))"
echo "memory: $(awk '/^VmRSS/ {print int($2 / 1024)}' /proc/$pid/status) MB, at most $(awk '/^VmHWM/ {print int($2 / 1024)}' /proc/$pid/status) MB"
