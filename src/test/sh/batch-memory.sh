#!/usr/bin/env bash
# One job that runs out of memory among small ones, and two that fit only one after the other, in one Java of 512 MB: all but the
# first must be done, with the same bytes as alone in as much memory as there is. Takes a few minutes.
# Arguments: class path of plyscape (target/classes and what it needs), a folder to work in.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../../.."
classes=$1 folder=$2
samples=$PWD/samples/tarn-hollow
mkdir -p "$folder"

# job NAME SIDE: the sample on a panel of that size.
job() {
  sed -e "s|layup.yaml|$samples/layup.yaml|" -e "s|file: terrain.tif|file: $samples/terrain.tif|" \
    -e "s|file: zones.geojson|file: $samples/zones.geojson|" -e "s|width: 240, height: 240|width: $2, height: $2|" \
    -e 's|travel: \[300, 300, 80\]|travel: [5000, 5000, 80]|' "$samples/job.yaml" >"$folder/$1.yaml"
  echo "$1.yaml" >>"$folder/list.txt"
}
: >"$folder/list.txt"
job small-1 40
job huge 3000
job small-2 45
job large-1 240
job large-2 230
job small-3 50
rm -rf "$folder/out" "$folder/alone"
status=0
java -Xmx512m -XX:+UseParallelGC -cp "$classes" plyscape.cli.Main plan --list "$folder/list.txt" -o "$folder/out" --jobs 3 \
  >"$folder/batch.log" 2>&1 || status=$?
cat "$folder/batch.log"
[ "$status" = 1 ]
grep -q '^failed  huge: .*more than the [0-9]* MB' "$folder/batch.log"
[ "$(grep -c '^done ' "$folder/batch.log")" = 5 ]
for name in small-1 small-2 small-3 large-1 large-2; do
  java -XX:+UseParallelGC -cp "$classes" plyscape.cli.Main plan -q "$folder/$name.yaml" -o "$folder/alone/$name"
  diff -r "$folder/out/$name" "$folder/alone/$name"
done
echo "all but the huge one are done, with the bytes that they have alone"
