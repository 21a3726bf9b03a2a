#!/usr/bin/env bash
# How near the plans of twelve panels come to the lower bound, and where the rest of the time goes. Arguments: names of panels
# (tarn-hollow, eildon, downs-1, downs-2, hills-1, hills-2, relief-1, relief-2, streets-1, streets-4, rivers-1, rivers-4; all if none) or job files,
# --alone to compare with clearing every level in full with the smallest cutter.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mvn -q -ntp -Pbench process-test-classes
exec java -Xmx3g -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" plyscape.planner.TimeTable "$@"
