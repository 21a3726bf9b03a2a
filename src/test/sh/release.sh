#!/usr/bin/env bash
# Unpacks the two archives that "mvn -Prelease package" wrote into empty folders and tries each there, with nothing of this checkout
# and without Maven: version, help, the samples, verify; the one with its own Java without any other.
#
#   mvn -Prelease -DskipTests package && src/test/sh/release.sh [JAVA_HOME for the archive without a Java]
set -uo pipefail
root=$(cd -P "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
java_home=${1:-$(dirname "$(dirname "$(readlink -f "$(command -v java)")")")}
base=$(mktemp -d)
trap 'rm -rf "$base"' EXIT
failed=0
check() { if [ "$2" = "$3" ]; then printf 'ok    %s\n' "$1"; else printf 'WRONG %s: wanted %s, got %s\n' "$1" "$2" "$3"; failed=1; fi; }

# Only what any system has: no Java and no Maven.
mkdir "$base/tools"
for tool in sh ls cat readlink dirname basename rm mv mkdir env; do ln -s "$(command -v $tool)" "$base/tools/"; done

try() { # what it is, archive, further surroundings
  local what=$1 folder err=$base/err
  mkdir "$base/$what"
  (cd "$base/$what" && unzip -q "$2")
  folder=$(echo "$base/$what"/plyscape-*)
  shift 2
  local run=(env -i "PATH=$base/tools" "HOME=$base/$what" "$@" "$folder/bin/plyscape")
  "${run[@]}" --version >"$base/out" 2>"$err"
  check "$what: first run" 0 $?
  cat "$base/out"
  check "$what: quiet" "" "$(cat "$err")"
  check "$what: an archive of classes was made" 1 "$(find "$folder/lib" -name '*.jsa' | wc -l)"
  local TIMEFORMAT='      --help: %R s (%U + %S of processor time)'
  for _ in 1 2 3; do time "${run[@]}" --help >/dev/null; done
  for sample in tarn-hollow/job eildon/job; do
    (cd "$folder" && "${run[@]}" plan -q "samples/$sample.yaml" -o "../${sample%/*}") >/dev/null 2>"$err"
    check "$what: $sample is planned" 0 $?
    "${run[@]}" verify -q "$base/$what/${sample%/*}" >/dev/null 2>>"$err"
    check "$what: $sample is verified" 0 $?
    check "$what: $sample, quiet" "" "$(cat "$err")"
  done
  (cd "$folder" && "${run[@]}" plan -q samples/tarn-hollow/sculpted.yaml -o ../sculpted --width 60 --height 60) >/dev/null 2>"$err"
  check "$what: sculpted, in a second Java" 0 $?
  check "$what: licences" 1 "$(ls "$folder"/licences/README.md | wc -l)"
  check "$what: nothing but what belongs there" "CHANGES.md README.md bin lib licences samples scripts" \
    "$(cd "$folder" && LC_ALL=C ls | grep -vx java | tr '\n' ' ' | sed 's/ $//')"
}

# The one without a name of a system after its version.
for zip in "$root"/target/plyscape-*.zip; do
  if [[ $zip =~ plyscape-[0-9.]+\.zip$ ]]; then try any-system "$zip" "JAVA_HOME=$java_home"; else try own-java "$zip"; fi
done
check "the same output with both" "" "$(diff -rq "$base/any-system/tarn-hollow" "$base/own-java/tarn-hollow")"
exit $failed
