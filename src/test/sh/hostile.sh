#!/usr/bin/env bash
# Runs the packed program in surroundings that break tools, and checks that nothing is lost and nothing half-written stays:
# odd paths, links, missing rights, a full disk (needs root, for a tmpfs), kills at random moments, two first uses at once.
#
#   src/test/sh/hostile.sh [KILLS [SEED]]        200 kills and seed 1 by default; takes a few minutes
set -uo pipefail
kills=${1:-200}
RANDOM=${2:-1}
root=$(cd -P "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
plyscape=$root/scripts/plyscape
base=$(mktemp -d)
failed=0
trap 'umount "$base/full" 2>/dev/null; rm -rf "$base"' EXIT

ok() { printf 'ok    %s\n' "$1"; }
bad() { printf 'WRONG %s\n' "$1"; failed=1; }
check() { if [ "$2" = "$3" ]; then ok "$1"; else bad "$1: wanted $2, got $3"; fi; }
# All names in a folder, hidden ones too, as one word.
names() { (cd "$1" && find . -mindepth 1 -maxdepth 1 | sort | tr '\n' ' '); }
sums() { (cd "$1" && find . -type f -exec cksum {} + | sort -k3); }

"$plyscape" --version >/dev/null || exit 1
in=$base/in
"$plyscape" new -q "$in"
# Small, so that a run is mostly start and files.
opts=(--width 40 --height 40 --border 3 --set zones='[]' -q)
before=$(sums "$in")

# Names.
odd="$base/a b/Mühle 'q' (水) & \$x"
mkdir -p "$odd"
cp "$in"/* "$odd/"
ln -s "$plyscape" "$base/a b/link to plyscape"
(cd "$base" && LC_ALL=POSIX "a b/link to plyscape" plan "$odd/job.yaml" -o "$odd/out ß" "${opts[@]}" >/dev/null 2>"$base/err")
check "odd names, through a link, without a UTF-8 locale" 0 $?
[ -s "$odd/out ß/plan.json" ] && ok "its output is there" || bad "no output under an odd name"
ln -s "$in/job.yaml" "$base/a b/linked.yaml"
"$plyscape" plan "$base/a b/linked.yaml" -o "$base/out-l" "${opts[@]}" >/dev/null 2>"$base/err"
check "a linked job's paths count from the link (exit 2: no layup there)" 2 $?
"$plyscape" plan "$in/job.yaml" -o "$base/-dash" "${opts[@]}" >/dev/null 2>"$base/err"
check "a directory whose name begins with a dash" 0 $?

# Rights. Root may write everywhere, so another user is needed to see them.
if [ "$(id -u)" = 0 ] && command -v setpriv >/dev/null; then
  chmod 755 "$base"
  mkdir "$base/ro"
  chmod 555 "$base/ro"
  # -Xshare:auto with the archive of the launcher; the jar alone, as the build directory may not be reachable.
  cp "$root/target/launch/lib/plyscape.jar" "$base/p.jar"
  chmod 644 "$base/p.jar"
  chmod -R a+rX "$in"
  setpriv --reuid 65534 --regid 65534 --clear-groups java -jar "$base/p.jar" \
    plan "$in/job.yaml" -o "$base/ro/out" "${opts[@]}" >/dev/null 2>"$base/err"
  check "read-only place for the output" 1 $?
  grep -q 'permission denied' "$base/err" && ok "says: permission denied" || { bad "message"; cat "$base/err"; }
  chmod 000 "$in/terrain.asc"
  setpriv --reuid 65534 --regid 65534 --clear-groups java -jar "$base/p.jar" \
    check "$in/layup.yaml" >/dev/null 2>"$base/err"
  check "check doesn't need the terrain" 0 $?
  setpriv --reuid 65534 --regid 65534 --clear-groups java -jar "$base/p.jar" \
    preview "$in/job.yaml" >/dev/null 2>"$base/err"
  check "unreadable terrain" 2 $?
  grep -q 'terrain.asc' "$base/err" && ok "names the file" || { bad "message"; cat "$base/err"; }
  chmod 644 "$in/terrain.asc"
else
  echo "left out: rights (needs root and setpriv)"
fi

# A full disk: every size from none to nearly enough.
mkdir "$base/full"
if mount -t tmpfs -o size=1m tmpfs "$base/full" 2>/dev/null; then
  for kb in 0 8 40 120 200; do
    mount -o remount,size=1m "$base/full"
    rm -f "$base/full/fill"
    head -c $(((1024 - kb) * 1024)) /dev/zero >"$base/full/fill" 2>/dev/null
    "$plyscape" plan "$in/job.yaml" -o "$base/full/out" "${opts[@]}" >/dev/null 2>"$base/err"
    code=$?
    if [ $code = 0 ]; then
      echo "      $kb kB were enough"
      rm -rf "$base/full/out"
      continue
    fi
    check "full disk, $kb kB free" 1 $code
    check "full disk, $kb kB free: nothing left" "./fill " "$(names "$base/full")"
    grep -qi 'no space left' "$base/err" || { bad "message"; cat "$base/err"; }
  done
  umount "$base/full"
else
  echo "left out: full disk (can't mount a tmpfs)"
fi

# Kills: at a random moment of a run that replaces an output; the old or the new one must be there after the next run began.
"$plyscape" plan "$in/job.yaml" -o "$base/out" "${opts[@]}" >/dev/null || bad "first run"
whole=$(sums "$base/out")
start=$(date +%s%N)
"$plyscape" plan "$in/job.yaml" -o "$base/out" --force "${opts[@]}" >/dev/null
run_ms=$((($(date +%s%N) - start) / 1000000))
gone=0
half=0
for ((i = 0; i < kills; i++)); do
  "$plyscape" plan "$in/job.yaml" -o "$base/out" --force "${opts[@]}" >/dev/null 2>&1 &
  pid=$!
  sleep "$(awk -v r="$RANDOM" -v m="$run_ms" 'BEGIN { printf "%.3f", r / 32767 * m / 1000 }')"
  kill -9 "$pid" 2>/dev/null
  wait "$pid" 2>/dev/null
  if [ ! -e "$base/out" ]; then gone=$((gone + 1)); continue; fi
  [ "$(sums "$base/out")" = "$whole" ] || half=$((half + 1))
done
check "$kills kills in runs of $run_ms ms: half-written outputs" 0 $half
echo "      kills between the two renames: $gone (the next run puts the earlier output back)"
"$plyscape" plan "$in/job.yaml" -o "$base/out" --force "${opts[@]}" >/dev/null 2>"$base/err"
check "rerun after the kills" 0 $?
check "rerun gives the same bytes" "$whole" "$(sums "$base/out")"
find "$base" -maxdepth 1 -name '.out.plyscape-*' | grep -q . && bad "leftovers of killed runs" || ok "no leftovers of killed runs"
check "inputs untouched" "$before" "$(sums "$in")"

# A closed terminal and a polite end leave nothing at all.
for signal in HUP TERM; do # a shell's background jobs ignore INT
  "$plyscape" plan "$in/job.yaml" -o "$base/sig" "${opts[@]}" >/dev/null 2>&1 &
  pid=$!
  sleep "$(awk -v m="$run_ms" 'BEGIN { printf "%.3f", m / 2000 }')"
  kill -"$signal" "$pid" 2>/dev/null
  wait "$pid" 2>/dev/null
  [ -e "$base/sig" ] && { echo "      (it had ended before $signal came)"; rm -rf "$base/sig"; }
  find "$base" -maxdepth 1 -name '.sig.plyscape-*' | grep -q . && bad "leftovers after $signal" || ok "nothing left after $signal"
done

# Two first uses at once.
copy=$base/copy
mkdir "$copy"
(cd "$root" && cp -r pom.xml src scripts samples "$copy/")
"$copy/scripts/plyscape" --version >"$base/v1" 2>/dev/null &
"$copy/scripts/plyscape" --version >"$base/v2" 2>/dev/null
check "two first uses at once, second" 0 $?
wait $!
check "two first uses at once, first" 0 $?
check "both say the same" "$(cat "$base/v1")" "$(cat "$base/v2")"

exit $failed
