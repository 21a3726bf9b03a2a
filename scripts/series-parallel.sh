#!/bin/sh
# A series in several processes at a time on this machine, by GNU parallel (Debian's package parallel). First how many processes,
# then the arguments of plan, with -o and without --share:
#
#   scripts/series-parallel.sh 4 --list jobs.txt -o out
#
# Then gather out. A failed panel stops no other; the exit code is the number of shares with failures. Run again, it does what is
# missing. PLYSCAPE names the launcher where it isn't the plyscape beside this script.
set -eu
[ $# -ge 3 ] || { sed -n '2,/^set /{/^set /d;s/^# \{0,1\}//;p;}' "$0" >&2; exit 2; }
processes=$1
shift
export PLYSCAPE="${PLYSCAPE:-$(dirname "$0")/plyscape}"
exec parallel --will-cite --jobs "$processes" --line-buffer --quote --termseq TERM,5000,KILL \
  "$PLYSCAPE" plan "$@" --share "{}/$processes" ::: $(seq "$processes")
