#!/usr/bin/env bash
# Times plyscape and reference programs on one made raster of 4096 x 4096 cells, in one go on one machine: distance transform
# against scipy, region polygons in nine classes against GDAL, offsets against JTS buffers. Needs Debian's python3-gdal,
# python3-numpy, python3-scipy.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mvn -q -ntp -Pbench process-test-classes
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
echo "$(nproc) cores, $(java -version 2>&1 | head -1), $(uname -m)"
java -Xmx6g -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" plyscape.region.SideBySide "$scratch"
/usr/bin/python3 scripts/bench-side-by-side.py "$scratch"
# Offsets of one pocket against JTS buffers, under JMH.
java -Xmx6g -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" \
  org.openjdk.jmh.Main Offset 2>&1 | grep -A4 '^Benchmark'
