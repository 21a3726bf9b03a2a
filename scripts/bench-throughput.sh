#!/usr/bin/env bash
# Many small panels: one process a job against one Java for all, one and two jobs at a time, and what it helps that jobs share
# their raster and map. Seconds by the clock and of all processors, a job; compare ratios within one run only.
# Arguments: how many jobs (200), how many of them are also planned by a process each (20), how many share large files (40, 0 for none).
# With GDAL (gdalwarp, ogr2ogr) on the PATH for the latter. Jobs, maps and output are kept in target/throughput.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
jobs=${1:-200} alone=${2:-20} sharing=${3:-40}
classes=${PLYSCAPE_CLASSES:-}
if [ -z "$classes" ]; then
  mvn -q -ntp -Pbench process-test-classes
  classes=target/classes:$(cat target/bench-classpath)
fi
short="-XX:TieredStopAtLevel=1 -XX:Tier3BackEdgeThreshold=4000 -XX:+UseParallelGC -XX:InitialRAMPercentage=8" # as the launcher
long="-XX:InlineSmallCode=1000 -XX:MaxInlineLevel=9 -XX:FreqInlineSize=200 -XX:TypeProfileLevel=0 -XX:+UseParallelGC" # as SecondCompiler
heap=${PLYSCAPE_HEAP:-2g}
samples=$PWD/samples/tarn-hollow
folder=target/throughput
mkdir -p "$folder"

# job NUMBER RASTER MAP WIDTH: a panel of 60 mm about a place of its own, the raster's corner at 412000, 5601000, 3000 m a side.
job() {
  local x=$((412100 + 137 * $1 % (2800 - $4))) y=$((5601100 + 353 * $1 % (2800 - $4)))
  cat <<YAML
layup: $samples/layup.yaml
terrain:
  file: $2
  crop: [$x, $y, $((x + $4)), $((y + $4))]
  plies: [limestone, heather, meadow, barley]
  smoothing: 0.4
panel: {width: 60, height: 60, border: 3}
zones:
  - {name: woods, file: $3, where: {kind: wood}, ply: wood}
tools:
  - {name: end mill 3, shape: flat, diameter: 3.0, flute_length: 12, flutes: 2, rpm: 16000, feed: 1800, plunge: 500, stepdown: 2.0, stepover: 0.45}
  - {name: end mill 1.5, shape: flat, diameter: 1.5, flute_length: 8, flutes: 2, rpm: 18000, feed: 1200, plunge: 300, stepdown: 1.0, stepover: 0.45}
machine: {travel: [300, 300, 80]}
YAML
}

# series NAME COUNT RASTER MAP WIDTH: that many jobs and a list of them.
series() {
  mkdir -p "$folder/$1"
  : >"$folder/$1/list.txt"
  for ((i = 0; i < $2; i++)); do
    job "$i" "$3" "$4" "$5" >"$folder/$1/j$i.yaml"
    echo "j$i.yaml" >>"$folder/$1/list.txt"
  done
}

# timed LABEL JOBS COMMAND...
timed() {
  local label=$1 count=$2
  shift 2
  TIMEFORMAT='%R %U %S'
  local t
  t=$({ time "$@" >"$folder/last.log" 2>&1 || cat "$folder/last.log" >&2; } 2>&1)
  awk -v l="$label" -v n="$count" '{ printf "%-46s %7.2f %7.2f\n", l, $1 / n, ($2 + $3) / n }' <<<"$t"
}

batch() { # OUT LIST options of plyscape, then --, options of Java
  local out=$1 list=$2 plan=()
  shift 2
  while [ "$1" != -- ]; do plan+=("$1"); shift; done
  shift
  rm -rf "$out"
  # shellcheck disable=SC2086 # options are words
  java $long -Xmx"$heap" "$@" -cp "$classes" plyscape.cli.Main plan -q --list "$list" -o "$out" "${plan[@]}"
}

each() { # OUT LIST COUNT: a process a job
  rm -rf "$1"
  head -n "$3" "$2" | while read -r name; do
    # shellcheck disable=SC2086 # options are words
    java $short -Xmx"$heap" -cp "$classes" plyscape.cli.Main plan -q "${2%/*}/$name" -o "$1/${name%.yaml}"
  done
}

sums() { (cd "$1" && find . -type f ! -name 'batch*.json' ! -name '.*' | LC_ALL=C sort | xargs sha256sum | sha256sum); }

printf '%-46s %7s %7s\n' 'seconds a job' clock processor
series small "$jobs" "$samples/terrain.tif" "$samples/zones.geojson" 600
list=$folder/small/list.txt
[ "$alone" = 0 ] || timed "a process a job ($alone jobs)" "$alone" each "$folder/each" "$list" "$alone"
timed "one Java, one at a time ($jobs jobs)" "$jobs" batch "$folder/one" "$list" --jobs 1 --
timed "one Java, two at a time" "$jobs" batch "$folder/two" "$list" --jobs 2 --
timed "one Java, two at a time, one thread each" "$jobs" batch "$folder/single" "$list" --jobs 2 -- \
  -Djava.util.concurrent.ForkJoinPool.common.parallelism=1
for out in two single; do
  [ "$(sums "$folder/one")" = "$(sums "$folder/$out")" ] || { echo "other bytes in $folder/$out" >&2; exit 1; }
done

[ "$sharing" != 0 ] || exit 0
if [ ! -e "$folder/strips.tif" ]; then
  gdalwarp -q -r cubic -ts 8000 8000 -ot Float32 -co COMPRESS=DEFLATE "$samples/terrain.tif" "$folder/strips.tif"
  gdal_translate -q -co COMPRESS=DEFLATE -co TILED=YES "$folder/strips.tif" "$folder/tiles.tif"
  awk 'BEGIN { print "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::32632\"}},\"features\":["
    for (n = 0; n < 75000; n++) {
      x = 412000 + n * 7919 % 30000 / 10; y = 5601000 + n * 104729 % 30000 / 10
      printf "%s{\"type\":\"Feature\",\"properties\":{\"kind\":\"wood\",\"number\":%d},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[", n ? ",\n" : "", n
      for (k = 0; k <= 60; k++) { a = k % 60 * 0.10472; printf "%s[%.2f,%.2f]", k ? "," : "", x + 4 * cos(a), y + 4 * sin(a) }
      printf "]]}}"
    }
    print "]}" }' >"$folder/large.geojson"
  ogr2ogr -f GPKG "$folder/large.gpkg" "$folder/large.geojson"
fi
large=$PWD/$folder
for raster in strips tiles; do
  series "$raster" "$sharing" "$large/$raster.tif" "$samples/zones.geojson" 1500
  timed "8000 x 8000 cells in $raster ($sharing jobs)" "$sharing" batch "$folder/out" "$folder/$raster/list.txt" --
done
for map in geojson gpkg; do
  series "$map" "$sharing" "$samples/terrain.tif" "$large/large.$map" 600
  timed "map of 75 000 woods, $map ($sharing jobs)" "$sharing" batch "$folder/out" "$folder/$map/list.txt" --
done
