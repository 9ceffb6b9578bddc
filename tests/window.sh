#!/bin/bash
# The window as an author meets it: start, change the letter, see the page change, save, reopen, export, close.
# Needs Xvfb, xdotool, ImageMagick; draws with software GL. A missing tool fails when CI is set, else it is named.
set -euo pipefail
cd "$(dirname "$0")/.."
program=$PWD/target/release/inklatch

for tool in Xvfb xdotool import compare identify; do
    if ! command -v "$tool" > /dev/null; then
        echo "window: $tool is missing"
        if [ -n "${CI:-}" ]; then exit 1; else exit 0; fi
    fi
done
[ -x "$program" ] || { echo "window: build the program first: cargo build --release"; exit 1; }

work=$(mktemp -d)
own=()
cleanup() {
    for pid in "${own[@]}"; do kill "$pid" 2> /dev/null || true; done
    rm -rf "$work"
}
trap cleanup EXIT
fail() {
    echo "window: $1"
    [ -n "${WINDOW_SHOTS:-}" ] && cp "$work"/*.png "$WINDOW_SHOTS"/ 2> /dev/null
    exit 1
}

# A display of our own: Xvfb picks a free number and writes it to the file descriptor. Without -noreset it would begin
# anew whenever its last client leaves, and refuse a program that knocks at that moment.
exec 3> "$work/display"
Xvfb -displayfd 3 -noreset -screen 0 1440x900x24 > /dev/null 2>&1 &
own+=($!)
for _ in $(seq 100); do [ -s "$work/display" ] && break; sleep 0.1; done
[ -s "$work/display" ] || fail "no display came up"
DISPLAY=:$(tr -d '\n' < "$work/display")
export DISPLAY LIBGL_ALWAYS_SOFTWARE=1 INKLATCH_PATH_FIELD=1
for _ in $(seq 100); do xdotool getdisplaygeometry > /dev/null 2>&1 && break; sleep 0.1; done
export XDG_CONFIG_HOME=$work/config XDG_DATA_HOME=$work/data

"$program" new "$work/kit" --title "The Window Test" > /dev/null || fail "no fresh kit could be made"

window=
start() {
    local before after
    before=$(date +%s%N)
    # From a folder of its own, so that the bundle goes to its `out`.
    (cd "$work" && exec "$program" "$@") > "$work/log" 2>&1 &
    app=$!
    own+=("$app")
    for _ in $(seq 400); do
        window=$(xdotool search --onlyvisible --name 'Inklatch' 2> /dev/null | tail -n 1 || true)
        [ -n "$window" ] && break
        kill -0 "$app" 2> /dev/null || fail "the program ended: $(cat "$work/log")"
        sleep 0.05
    done
    [ -n "$window" ] || fail "no window came up"
    after=$(date +%s%N)
    echo "window: up after $(((after - before) / 1000000)) ms"
    xdotool windowmove "$window" 0 0 windowsize "$window" 1440 900 2> /dev/null || true
    sleep 1
    xdotool windowfocus "$window"
    sleep 0.5
}
shot() { import -window root "$work/$1.png"; }
# How many pixels of a part of two pictures differ: name, name, WxH+X+Y.
differ() {
    convert "$work/$1.png" -crop "$3" +repage "$work/a.png"
    convert "$work/$2.png" -crop "$3" +repage "$work/b.png"
    { compare -metric AE -fuzz 4% "$work/a.png" "$work/b.png" null: 2>&1 || true; } | sed 's/[^0-9.].*//' | cut -d. -f1
}
# Waits until a part of the window differs from the picture taken before.
await() {
    for _ in $(seq 100); do
        shot now
        [ "$(differ "$1" now "$2")" -gt 40 ] && return 0
        sleep 0.2
    done
    return 1
}
desk=400x640+1030+60

start "$work/kit"
# The page is drawn by a worker after the first frame: wait for two equal pictures of the desk.
shot last
for _ in $(seq 150); do
    sleep 0.4
    shot now
    quiet=$(differ last now "$desk")
    colours=$(convert "$work/now.png" -crop "$desk" +repage -unique-colors -format '%w' info:)
    cp "$work/now.png" "$work/last.png"
    [ "$quiet" -eq 0 ] && [ "$colours" -gt 60 ] && break
done
[ "$colours" -gt 60 ] || fail "the letter was not drawn"
shot before

# Into the salutation, by its place in the window; the page at the right must follow the typing.
xdotool mousemove 560 302 click 1
sleep 0.4
xdotool key ctrl+a
xdotool type --delay 25 'Dear night watch of the tower,'
await before "$desk" || fail "the page did not follow the typing"
echo "window: the page follows the typing"

xdotool key ctrl+s
for _ in $(seq 50); do grep -q 'Dear night watch of the tower,' "$work/kit/kit.ron" && break; sleep 0.1; done
grep -q 'Dear night watch of the tower,' "$work/kit/kit.ron" || fail "the kit was not saved"
echo "window: saved"

# A change that is not saved: closing asks, and Escape stays.
xdotool type --delay 25 'x'
sleep 0.3
xdotool key ctrl+q
sleep 0.6
kill -0 "$app" 2> /dev/null || fail "it closed over unsaved changes"
xdotool key Escape
sleep 0.3
xdotool key ctrl+z
sleep 0.3
xdotool key ctrl+q
for _ in $(seq 50); do kill -0 "$app" 2> /dev/null || break; sleep 0.1; done
kill -0 "$app" 2> /dev/null && fail "it did not close"
echo "window: closed after undo"

start "$work/kit"
sleep 2
xdotool key ctrl+5
sleep 1
shot places
xdotool key ctrl+e
sleep 1
shot bundle
xdotool key ctrl+shift+e
for _ in $(seq 300); do
    found=$(find "$work/out" -name manifest.json 2> /dev/null | head -n 1 || true)
    [ -n "$found" ] && break
    sleep 0.2
done
[ -n "$found" ] || { shot failed; fail "no bundle was written"; }
find "$(dirname "$found")" -name '*.pdf' | grep -q . || fail "the bundle has no PDF"
echo "window: exported $(find "$(dirname "$found")" -type f | wc -l) files"
xdotool key ctrl+q
for _ in $(seq 50); do kill -0 "$app" 2> /dev/null || break; sleep 0.1; done
kill -0 "$app" 2> /dev/null && fail "it did not close"

# Without a display: a clear message, a hint, exit code 2.
code=0
env -u DISPLAY -u WAYLAND_DISPLAY "$program" "$work/kit" > "$work/log" 2>&1 || code=$?
[ "$code" -eq 2 ] || fail "without a display the exit code is $code: $(cat "$work/log")"
grep -q 'hint:.*inklatch export' "$work/log" || fail "without a display there is no hint: $(cat "$work/log")"
echo "window: all well"
