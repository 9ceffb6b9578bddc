#!/bin/bash
# The carried fonts, read a second time by fontTools (tests/fonts.py). It is installed under target/, once.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

fonttools=4.60.1
env=target/second-opinion/fonttools-$fonttools
if [[ ! -x $env/bin/python ]]; then
    if ! { python3 -m venv "$env" && "$env/bin/pip" install --quiet --disable-pip-version-check "fonttools==$fonttools"; }; then
        rm -rf "$env"
        if [[ "${CI:-}" == true ]]; then
            echo "error: fontTools $fonttools cannot be installed"
            exit 1
        fi
        echo "left out: fontTools $fonttools cannot be installed"
        exit 0
    fi
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
COVERAGE=$work/coverage.json cargo test --release --quiet coverage_for_a_second_reader -- --ignored >"$work/log" 2>&1 || {
    cat "$work/log"
    exit 1
}
"$env/bin/python" -B tests/fonts.py "$work/coverage.json"
