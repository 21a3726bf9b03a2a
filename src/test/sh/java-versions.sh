#!/usr/bin/env bash
# Checks the launcher with each Java that it is given: that nothing is printed that shouldn't be, that its archive of classes is made
# and used, that an archive of another Java or an older jar is made anew, and what a start and a plan cost.
#
#   src/test/sh/java-versions.sh [JAVA_HOME...]     by default JAVA_HOME, or the Java on the PATH
set -uo pipefail
root=$(cd -P "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
if [ $# = 0 ]; then set -- "${JAVA_HOME:-$(dirname "$(dirname "$(readlink -f "$(command -v java)")")")}"; fi
base=$(mktemp -d)
trap 'rm -rf "$base"' EXIT
failed=0
check() { if [ "$2" = "$3" ]; then printf 'ok    %s\n' "$1"; else printf 'WRONG %s: wanted %s, got %s\n' "$1" "$2" "$3"; failed=1; fi; }
unset PLYSCAPE_JAVA_OPTS

"$root/scripts/plyscape" --version >/dev/null || exit 1
mkdir "$base/tree"
cp -r "$root/target/launch/bin" "$root/target/launch/lib" "$base/tree/"
rm -f "$base/tree/lib/"*.jsa "$base/tree/lib/"*.of
plyscape=$base/tree/bin/plyscape
samples=$root/samples/tarn-hollow
small=(--width 60 --height 60)

# A job whose zones come from a GeoPackage, which is read by native code.
mkdir "$base/gpkg"
cp "$samples"/*.yaml "$samples"/terrain.tif "$base/gpkg/"
if command -v ogr2ogr >/dev/null; then
  ogr2ogr -f GPKG "$base/gpkg/zones.gpkg" "$samples/zones.geojson" -lco GEOMETRY_NAME=geom
  sed -i 's/zones\.geojson/zones.gpkg/' "$base/gpkg/job.yaml"
else
  printf '?     no ogr2ogr here, so no GeoPackage is tried\n'
  cp "$samples"/zones.geojson "$base/gpkg/"
fi

# Processor seconds (user and system) of a command.
cpu() {
  local TIMEFORMAT='%U %S'
  { time "$@" >/dev/null 2>>"$base/err"; } 2>&1 | awk '{printf "%.2f", $1 + $2}'
}

# Says nothing on stderr and uses the archive: with -Xshare:on Java refuses to start without one that fits.
quiet() {
  : >"$base/err"
  "$plyscape" --help >/dev/null 2>>"$base/err"
  "$plyscape" check -q "$samples/layup.yaml" >/dev/null 2>>"$base/err"
  "$plyscape" preview -q "$base/gpkg/job.yaml" -o "$base/out-p" --force "${small[@]}" >/dev/null 2>>"$base/err"
  check "$1: exit code" 0 $?
  check "$1: quiet" "" "$(cat "$base/err")"
  PLYSCAPE_JAVA_OPTS=-Xshare:on "$plyscape" --help >/dev/null 2>&1
  check "$1: its archive is used" 0 $?
}

for home in "$@"; do
  export JAVA_HOME=$home
  printf -- '--    %s\n' "$("$home/bin/java" -version 2>&1 | sed -n 2p)"
  quiet "first run"
  quiet "second run"
  first=$(cpu "$plyscape" --help)
  printf '      --help: %s s of processor time, with the archive; ' "$first"
  printf '%s without\n' "$(PLYSCAPE_JAVA_OPTS=-Xshare:off cpu "$plyscape" --help)"
  printf '      a plan of 60 x 60 mm: %s s\n' "$(cpu "$plyscape" plan -q "$samples/job.yaml" -o "$base/out-${home//\//_}" --force "${small[@]}")"
  for job in job sculpted; do
    rm -rf "$base"/jvm-*
    PLYSCAPE_JAVA_OPTS=-Xlog:startuptime:file=$base/jvm-%p "$plyscape" plan -q "$samples/$job.yaml" -o "$base/out-s" --force "${small[@]}" >/dev/null 2>"$base/err"
    check "$job: exit code" 0 $?
    check "$job: quiet" "" "$(cat "$base/err")"
    check "$job: as many Javas as it takes" "$([ $job = job ] && echo 1 || echo 2)" "$(find "$base" -name 'jvm-*' | wc -l)"
  done
  touch "$base/tree/lib/plyscape.jar"
  quiet "after another jar"
  for of in "$base"/tree/lib/*.of; do
    [ -e "$of" ]
    check "the archive's Java is noted" 0 $?
    echo "/another/java" >"$of"
  done
  quiet "after another Java of this version"
done
previous=
for home in "$@"; do
  out=$base/out-${home//\//_}
  if [ -n "$previous" ]; then check "the same output with both" "" "$(diff -rq "$previous" "$out" 2>&1)"; fi
  previous=$out
done

# A place that can't be written: the archive goes to the user's cache.
export XDG_CACHE_HOME=$base/cache
chmod a-w "$base/tree/lib"
rm -f "$base/tree/lib/"*.jsa "$base/tree/lib/"*.of 2>/dev/null
if [ "$(id -u)" = 0 ] && command -v setpriv >/dev/null; then # root may write everywhere
  chmod a+rx "$base" && mkdir "$base/cache" && chmod 777 "$base/cache"
  find "$base/tree/lib" \( -name '*.jsa' -o -name '*.of' \) -delete
  setpriv --reuid 65534 --regid 65534 --clear-groups "$plyscape" --version >/dev/null 2>"$base/err"
else
  "$plyscape" --version >/dev/null 2>"$base/err"
fi
check "read-only installation: exit code" 0 $?
check "read-only installation: quiet" "" "$(cat "$base/err")"
check "read-only installation: archives in the cache" 1 "$(find "$base/cache" -name '*.jsa' | wc -l)"

# Too old a Java is said before it is started.
mkdir -p "$base/old/bin"
printf 'JAVA_VERSION="11.0.2"\n' >"$base/old/release"
printf '#!/bin/sh\nexit 99\n' >"$base/old/bin/java"
chmod +x "$base/old/bin/java"
JAVA_HOME=$base/old "$plyscape" --version 2>"$base/err"
check "Java 11: exit code" 1 $?
check "Java 11: the message" 1 "$(grep -c 'needs Java 17 or newer: found 11' "$base/err")"
exit $failed
