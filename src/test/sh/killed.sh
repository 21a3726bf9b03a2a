#!/usr/bin/env bash
# Kills a batch of 12 small panels outright, again and again, at any moment, until it is done; then compares its files with those of
# an undisturbed run, and looks whether anything was left behind. Then kills the launcher's Java alone, runs two batches at once, and
# tries a full and a read-only file system where it may mount one.
#
#   src/test/sh/killed.sh [SEED [TIMES]]     two or three minutes on two cores; it kills only what it started
set -euo pipefail

root=$(cd -P "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
plyscape=${PLYSCAPE:-$root/scripts/plyscape}
base=$(mktemp -d)
small=
end() {
  [ -z "$small" ] || umount "$small" 2>/dev/null || true
  rm -rf "$base"
}
trap end EXIT
RANDOM=${1:-1}
most=${2:-20}
die() { echo "killed.sh: $1" >&2; exit 1; }

{
  echo 'name,terrain.centre,panel.turn'
  for i in $(seq 12); do printf 'Höhe %d,"%d, 6158000",%d\n' "$i" $((516400 + i * 450)) $((i * 9)); done
} >"$base/places.csv"
jobs=("$root/samples/eildon/job.yaml" --each "$base/places.csv" --set terrain.ground_width=2000
  --width 40 --height 40 --border 3 --set minimum_area=4)
start() { exec "$plyscape" plan "${jobs[@]}" --jobs 2 -o "$1" "${@:2}" >"$base/log" 2>&1; } # in the background, where $! is its own
plan() { "$plyscape" plan "${jobs[@]}" --jobs 2 -o "$1" "${@:2}"; }
same() { diff -r -x 'batch*.json' "$base/plain" "$1" || die "other files than an undisturbed run"; }

plan "$base/plain" >"$base/log" 2>&1 || { cat "$base/log" >&2; die "the undisturbed run failed"; }

set -m # each run in the background is a process group of its own
kills=0
while :; do
  start "$base/out" &
  run=$!
  if [ $kills -lt "$most" ]; then
    for _ in $(seq $((5 + RANDOM % 60))); do kill -0 $run 2>/dev/null || break; sleep 0.1; done
    if kill -KILL -- -$run 2>/dev/null; then kills=$((kills + 1)); fi
  fi
  if wait $run 2>/dev/null; then break; fi
  [ ! -e "$base/out/batch.json" ] || python3 -m json.tool "$base/out/batch.json" >"$base/json" || die "half a batch.json"
done
same "$base/out"
[ -z "$(find "$base/out" -name '.*' ! -path "$base/out")" ] || die "left behind: $(find "$base/out" -name '.*')"
echo "ok    killed $kills times, gone on with, the same files"

# The launcher starts a second Java for long runs; that one ends with it.
start "$base/parent" --all &
run=$!
until [ -e "$base/parent/batch.json" ]; do kill -0 $run || die "it ended"; sleep 0.1; done
kill -KILL $run
wait $run 2>/dev/null || true
for _ in $(seq 100); do pgrep -f "$base/parent" >/dev/null || break; sleep 0.1; done
! pgrep -f "$base/parent" >/dev/null || die "its second Java runs on"
plan "$base/parent" >"$base/log" 2>&1 || { cat "$base/log" >&2; die "it doesn't go on"; }
same "$base/parent"
echo "ok    only the first process killed: the second ended with it, and the batch goes on"

start "$base/two" &
run=$!
until [ -e "$base/two/batch.json" ]; do sleep 0.1; done
code=0
plan "$base/two" >"$base/second" 2>&1 || code=$?
[ $code = 1 ] && grep -q 'another run is planning this series' "$base/second" || { cat "$base/second" >&2; die "two at once: $code"; }
wait $run || { cat "$base/log" >&2; die "the first of two failed"; }
same "$base/two"
echo "ok    a second run at the same time is refused and doesn't disturb the first"

mkdir "$base/small"
if mount -t tmpfs -o size=2m tmpfs "$base/small" 2>/dev/null; then
  small=$base/small
  code=0
  plan "$small/out" >"$base/log" 2>&1 || code=$?
  [ $code = 1 ] && grep -q 'make room' "$base/log" || { cat "$base/log" >&2; die "on a full file system: $code"; }
  ! grep -q 'at plyscape\.' "$base/log" || die "a stack on a full file system"
  mount -o remount,size=60m "$small"
  plan "$small/out" >"$base/log" 2>&1 || { cat "$base/log" >&2; die "with room it doesn't go on"; }
  same "$small/out"
  echo "ok    a full file system fails what didn't fit, and with room the rest is done"
  mount -o remount,ro "$small"
  code=0
  plan "$small/out" >"$base/log" 2>&1 || code=$?
  [ $code = 1 ] && grep -q "can't write" "$base/log" || { cat "$base/log" >&2; die "read-only: $code"; }
  echo "ok    a read-only file system: $(head -1 "$base/log")"
else
  echo "      full and read-only file systems weren't tried: no right to mount one"
fi
