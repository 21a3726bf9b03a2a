#!/usr/bin/env bash
# What a made town of 1000 roads and 1200 buildings costs up to the regions, by stage; three runs in one JVM, the first one cold.
# Arguments: a folder for map and jobs (target/town if none), then which of true, drawn, widened (how wide the roads are).
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mvn -q -ntp -Pbench process-test-classes
[ $# -gt 0 ] || set -- target/town
exec java -Xmx2g -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" plyscape.planner.TownTimes "$@"
