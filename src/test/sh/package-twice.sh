#!/usr/bin/env bash
# Packages twice and checks that the second jar is the first one again, byte for byte, and that no library got into it by way of
# the jar that was there before. Uses target/ of this checkout; takes a minute.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../../.."
failed=0
check() { if [ "$2" = "$3" ]; then printf 'ok    %s\n' "$1"; else printf 'WRONG %s: %s, then %s\n' "$1" "$2" "$3"; failed=1; fi; }

for run in 1 2; do
  mvn -B -ntp -DskipTests package >"target/package-$run.log"
  sum[run]=$(cksum <target/plyscape.jar)
  own[run]=$(unzip -Z1 target/original-plyscape.jar | grep -v -e '^plyscape/' -e '^META-INF/' -e '/$' | sort | head -5 | tr '\n' ' ' || true)
  shaded[run]=$(grep -c '^\[INFO\] Including' "target/package-$run.log" || true)
done
check "the same jar" "${sum[1]}" "${sum[2]}"
check "as many libraries put in" "${shaded[1]}" "${shaded[2]}"
check "only our own files in the jar that was shaded" "" "${own[2]}"
if grep -q 'plyscape.jar.* define [0-9]* overlapping class' target/package-2.log; then check "no class twice" 0 1; fi
ls -l target/plyscape.jar
exit $failed
