#!/bin/sh
# A very large job on standard output, to see that nothing grows faster than the job does.
#   sh tests/bench/large_job.sh [LINES [BENDS]] > large.json
#   time tubewright check large.json
awk -v lines="${1:-600}" -v bends="${2:-150}" 'BEGIN {
  printf "{ \"format\": \"tubewright-job\", \"version\": 1, \"name\": \"Very large\", \"service\": \"other\", \"units\": \"mm\",\n"
  printf "  \"tube\": { \"od\": 4.75, \"wall\": 0.71, \"material\": \"steel-low-carbon\" }, \"bender\": \"hand-4.75\",\n  \"lines\": ["
  for (i = 1; i <= lines; ++i) {
    printf "%s\n    { \"name\": \"line %d\", \"quantity\": 1, \"ends\": { \"A\": { \"fitting\": \"none\" }, \"B\": { \"fitting\": \"none\" } },\n", (i > 1 ? "," : ""), i
    printf "      \"route\": { \"form\": \"straights\", \"straights\": [100"
    for (k = 1; k <= bends; ++k) printf ", %d", 50 + (i + k) % 7
    printf "],\n        \"bends\": [{ \"angle\": 30 }"
    for (k = 2; k <= bends; ++k) printf ", { \"angle\": %d, \"rotation\": %d }", 25 + (i * k) % 11, 175 + k % 9
    printf "] } }"
  }
  printf " ] }\n"
}'
