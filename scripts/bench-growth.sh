#!/usr/bin/env bash
# How the region stage grows with its cells: 1, 4, 16 and 64 million of made ground. Arguments: other sides, such as 3000.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mvn -q -ntp -Pbench process-test-classes
exec java -Xmx4g -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" plyscape.region.RegionGrowth "$@"
