#!/bin/bash
# The carried fonts, read a second time by fontTools (tests/fonts.py). It is installed under target/, once.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

source tests/venv.sh
venv fonttools 4.60.1

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
COVERAGE=$work/coverage.json cargo test --release --quiet coverage_for_a_second_reader -- --ignored >"$work/log" 2>&1 || {
    cat "$work/log"
    exit 1
}
"$env/bin/python" -B tests/fonts.py "$work/coverage.json"
