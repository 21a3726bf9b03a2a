#!/usr/bin/env bash
# Builds and runs the JMH benchmarks under src/bench/java. Arguments go to JMH: a pattern such as Tiling, -l to list, -p side=1024.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
mvn -q -ntp -Pbench process-test-classes
exec java -Xmx6g -cp "target/bench-classes:target/classes:$(cat target/bench-classpath)" org.openjdk.jmh.Main "$@"
