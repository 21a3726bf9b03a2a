#!/usr/bin/env bash
# How reading an OpenStreetMap extract grows with the file, up to a country's of 1 GB within 2 GB of heap: files are made and kept in
# target/maps. Arguments: other sizes to ask for, MB; a file comes out at about three quarters of what is asked for.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mvn -q -ntp -Pbench process-test-classes
[ $# -gt 0 ] || set -- 50 330 1320
exec java -Xmx2g -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" plyscape.zones.OsmGrowth target/maps "$@"
