#!/bin/bash
# A second opinion on the generated puzzles (tests/second_opinion/). OR-Tools is installed under target/, once.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

source tests/venv.sh
venv ortools 9.15.6755

views=$(mktemp -d)
trap 'rm -rf "$views"' EXIT
VIEWS=$views cargo test --release --quiet views_for_a_second_opinion -- --ignored >"$views/log" 2>&1 || {
    cat "$views/log"
    exit 1
}
rm "$views/log"
"$env/bin/python" -B tests/second_opinion "$views"
