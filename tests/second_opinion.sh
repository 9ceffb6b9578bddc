#!/bin/bash
# A second opinion on the generated puzzles (tests/second_opinion/). OR-Tools is installed under target/, once.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

ortools=9.15.6755
env=target/second-opinion/ortools-$ortools
if [[ ! -x $env/bin/python ]]; then
    if ! { python3 -m venv "$env" && "$env/bin/pip" install --quiet --disable-pip-version-check "ortools==$ortools"; }; then
        rm -rf "$env"
        if [[ "${CI:-}" == true ]]; then
            echo "error: OR-Tools $ortools cannot be installed"
            exit 1
        fi
        echo "left out: OR-Tools $ortools cannot be installed"
        exit 0
    fi
fi

views=$(mktemp -d)
trap 'rm -rf "$views"' EXIT
VIEWS=$views cargo test --release --quiet views_for_a_second_opinion -- --ignored >"$views/log" 2>&1 || {
    cat "$views/log"
    exit 1
}
rm "$views/log"
"$env/bin/python" -B tests/second_opinion "$views"
