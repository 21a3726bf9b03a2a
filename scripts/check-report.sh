#!/usr/bin/env bash
# Opens a report.html in headless Chromium and says what is wrong with it; with a second name, a screenshot goes there.
# usage: scripts/check-report.sh OUT/report.html [SHOT.png]     Exit code 1: something is missing or a script complained.
set -euo pipefail
[ -f "${1:-}" ] || { sed -n '2,3s/^# //p' "$0" >&2; exit 2; }
command -v chromium >/dev/null || { echo "check-report: no chromium on the PATH" >&2; exit 2; }
page=$(realpath "$1")
profile=$(mktemp -d)
trap 'rm -rf "$profile"' EXIT
browser=(chromium --headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking
  --use-angle=swiftshader --enable-unsafe-swiftshader --user-data-dir="$profile" --virtual-time-budget=5000 --enable-logging=stderr)
"${browser[@]}" --window-size=1200,900 --dump-dom "file://$page" > "$profile/dom.html" 2> "$profile/log"
bad=0
complain() { echo "check-report: $1" >&2; bad=1; }
# Drivers talk about their speed on the console too; that is not the page's doing.
if grep 'CONSOLE' "$profile/log" | grep -v 'GL Driver Message' >&2; then complain "the console has messages"; fi
for id in warnings summary stage overlay section-view solid readout plies zones passes checks cautions; do
  grep -q "id=\"$id\"" "$profile/dom.html" || complain "no element $id"
done
grep -Eq '<canvas[^>]*id="solid"[^>]*data-(triangles|cells)="[1-9]' "$profile/dom.html" || complain "the solid was not drawn"
grep -q 'aria-label="Section from A to B, crossing ' "$profile/dom.html" || complain "the section was not drawn"
grep -q '<div id="readout"[^>]*><dl>' "$profile/dom.html" || complain "the readout is empty"
if [ $# -gt 1 ]; then
  "${browser[@]}" --window-size=1300,5200 --screenshot="$(realpath -m "$2")" "file://$page" 2> /dev/null
fi
[ $bad = 0 ] && echo "check-report: $1 is fine"
exit $bad
