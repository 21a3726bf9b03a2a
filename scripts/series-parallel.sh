#!/bin/sh
# A series in several processes at a time on this machine, by GNU parallel (Debian's package parallel). First how many processes,
# then the arguments of plan, with -o and without --share:
#
#   scripts/series-parallel.sh 4 --list jobs.txt -o out
#
# Then gather out. A failed panel stops no other; the exit code is the number of shares with failures. Run again, it does what is
# missing. PLYSCAPE names another launcher.
set -eu
[ $# -ge 3 ] || { sed -n '2,/^set /{/^set /d;s/^# \{0,1\}//;p;}' "$0" >&2; exit 2; }
processes=$1
shift
here=$(dirname "$0")
[ -x "$here/plyscape" ] || here=$here/../bin # in a release
PLYSCAPE=${PLYSCAPE:-$here/plyscape}
exec parallel --will-cite --jobs "$processes" --line-buffer --quote --termseq TERM,5000,KILL \
  "$PLYSCAPE" plan "$@" --share "{}/$processes" ::: $(seq "$processes")
