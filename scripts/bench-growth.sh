#!/usr/bin/env bash
# How whole jobs grow with their cells, by stage, with the exponents of growth: 1, 4, 16 and 64 million cells of made ground,
# once on one panel and once on a panel that grows with them. Arguments: other sides, such as 1000 3000.
# Then walls of 1, 4, 25 and 100 panels (--walls: these alone, in 1 GB of heap).
# --regions first: the region stage alone, nothing thinned. Rasters (about 500 MB), jobs and output are kept in target/growth.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mvn -q -ntp -Pbench process-test-classes
what="plyscape.cli.job.JobGrowth target/growth"
[ "${1:-}" != --regions ] || { what=plyscape.region.RegionGrowth; shift; }
heap=4g
[ "${1:-}" != --walls ] || heap=1g
# shellcheck disable=SC2086 # words
exec java -Xmx$heap -XX:+UseParallelGC -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" $what "$@"
