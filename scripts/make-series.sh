#!/usr/bin/env bash
# A series of panels from one elevation model, by coordinates: one panel a line of a list, all with the same layup.
#
#   scripts/make-series.sh DEM LAYUP.yaml PLACES.csv OUT [plan options ...]
#
# PLACES.csv has a line for each panel: name, easting and northing of its centre, and the width of ground to show, in the
# units of the elevation model (metres for most). Lines that begin with # are left out:
#
#   # name, easting, northing, width
#   north-hill, 518500, 6161200, 4000
#   south-moor, 519200, 6156400, 4000
#
# Try it on the bundled ground:
#
#   printf '%s\n' 'north, 518500, 6161200, 4000' 'south, 519200, 6156400, 4000' >places.csv
#   scripts/make-series.sh samples/eildon/eildon_utm30_60m.tif samples/eildon/layup.yaml places.csv series \
#     --width 120 --height 120 --plies birch,heather,moss,straw,slate
#
# For each place it writes a job to OUT/jobs, and then plans all of them in one run into OUT/panels/NAME: one failed place
# doesn't stop the others, and the exit code is then 1. Run again, it plans those that are missing or changed.
set -euo pipefail

if [ $# -lt 4 ]; then
  sed -n '2,/^set /{/^set /d;s/^# \{0,1\}//;p;}' "$0" >&2
  exit 2
fi
here=$(cd -P "$(dirname "${BASH_SOURCE[0]}")" && pwd)
dem=$(realpath -- "$1")
layup=$(realpath -- "$2")
places=$3
out=$4
shift 4

# In YAML a text in single quotes only needs its own quotes doubled.
quoted() { printf "'%s'" "${1//\'/\'\'}"; }

[ -r "$places" ] || { echo "make-series: can't read the list of places, $places" >&2; exit 2; }
mkdir -p "$out/jobs"
jobs=()
while IFS=, read -r name easting northing width rest || [ -n "$name" ]; do
  name=${name#"${name%%[![:space:]]*}"} # blanks around it, and the line end of other systems, are no part of it
  name=${name%"${name##*[![:space:]]}"}
  case $name in '' | '#'*) continue ;; esac
  case $name in *[!A-Za-z0-9._-]* | .* | -*) echo "make-series: \"$name\" can't name a panel: letters, digits, . _ - only" >&2; exit 2 ;; esac
  # The crop is a square about the centre; awk because the shell has no fractions.
  crop=$(awk -v x="$easting" -v y="$northing" -v w="$width" '
    function number(text) { return text ~ /^[ \t]*-?[0-9]+(\.[0-9]*)?[ \t\r]*$/ }
    BEGIN {
    if (!number(x) || !number(y) || !number(w) || !(w + 0 > 0)) exit 1
    printf "[%.3f, %.3f, %.3f, %.3f]", x - w / 2, y - w / 2, x + w / 2, y + w / 2
  }') || { echo "make-series: \"$name\" in $places wants easting, northing and a width, as plain numbers" >&2; exit 2; }
  job=$out/jobs/$name.yaml
  {
    echo "# $name: $width wide about $easting, $northing"
    echo "layup: $(quoted "$layup")"
    echo "terrain:"
    echo "  file: $(quoted "$dem")"
    echo "  crop: $crop"
  } >"$job"
  jobs+=("$job")
done <"$places"
[ ${#jobs[@]} -gt 0 ] || { echo "make-series: no places in $places" >&2; exit 2; }

# A single job's output goes to the directory given, several each to one of their own in it.
panels=$out/panels
[ ${#jobs[@]} -gt 1 ] || panels=$panels/$(basename "${jobs[0]}" .yaml)

# One run for all: Java starts once. Options given to this script go over every job's keys.
exec "$here/plyscape" plan "${jobs[@]}" -o "$panels" --jobs 2 "$@"
