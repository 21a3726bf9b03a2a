#!/usr/bin/env bash
# Writes the names of the classes that a few small runs use, for the archive that the launcher makes: a grid, a GeoTIFF and a PNG
# as terrain, a picture alone, and a panel with zones and two cutters.
#
#   scripts/class-list.sh JAR FILE
set -euo pipefail
jar=$1
list=$2
samples=$(cd -P "$(dirname "${BASH_SOURCE[0]}")/../samples" && pwd)
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

note() {
  "$java" -XX:+UseParallelGC -Xshare:off -Xlog:disable -XX:DumpLoadedClassList="$work/classes.$1" -jar "$jar" "${@:2}" >/dev/null 2>"$work/err" ||
    { cat "$work/err" >&2; exit 1; }
}

"$java" -jar "$jar" new -q "$work/starter"
"$java" -jar "$jar" preview -q "$work/starter/job.yaml" -o "$work/picture" >/dev/null
printf '%s\n' 'layup: starter/layup.yaml' 'panel: {width: 60, height: 60}' 'minimum_floor: 0' \
  'terrain: {file: picture/preview.png, encoding: grey}' >"$work/png.yaml"
note preview preview -v "$work/png.yaml" -o "$work/out1"
note several plan "$work/png.yaml" "$work/starter/job.yaml" "$samples/eildon/job.yaml" -o "$work/out2" --width 60 --height 60
note one plan -v "$samples/tarn-hollow/job.yaml" -o "$work/out3" --width 90 --height 90
note help --help
note version --version
# Names only, each once: what a Java adds to them (numbers, its own files, constants) another doesn't understand.
cat "$work"/classes.* | grep -v -e '^#' -e '^@cp' -e ' source: ' | sed 's/ id: [0-9]*$//' | awk '!seen[$0]++' >"$work/all"
mv "$work/all" "$list"
