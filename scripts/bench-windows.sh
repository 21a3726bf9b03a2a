#!/usr/bin/env bash
# How reading grows with the window of a 20 000 x 20 000 GeoTIFF, and a whole plan of it, in 2 GB of heap. Argument: a folder for
# the raster (about 1 GB, written once); target if none.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mvn -q -ntp -Pbench process-test-classes
exec java -Xmx2g -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" plyscape.planner.BigRaster "${1:-target}"
