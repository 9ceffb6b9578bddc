#!/bin/bash
# Everything that must hold, in one go: layout of the source, lints, tests, docs, and the checks by programs that
# were not written here (readers of PDF and zip, a real window under a virtual screen).
#
# Where CI=true a missing tool is a failure. Elsewhere its checks are left out, and the last lines say so.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

# Program, and the Debian or Ubuntu package that has it.
tools=(
    pdfinfo:poppler-utils pdffonts:poppler-utils pdftotext:poppler-utils pdftoppm:poppler-utils
    gs:ghostscript qpdf:qpdf unzip:unzip sha256sum:coreutils
    Xvfb:xvfb xdotool:xdotool import:imagemagick python3:python3
)
# Library, and its package.
libraries=(
    libGL.so.1:libgl1 libEGL.so.1:libegl1 libX11-xcb.so.1:libx11-xcb1 libXcursor.so.1:libxcursor1 libXi.so.6:libxi6
    libXrandr.so.2:libxrandr2 libxkbcommon.so.0:libxkbcommon0 libxkbcommon-x11.so.0:libxkbcommon-x11-0
)
missing() {
    for pair in "${tools[@]}"; do
        command -v "${pair%%:*}" >/dev/null || echo "${pair##*:}"
    done
    # What the window opens at run time, and software drawing for it; these have no program of their own.
    for pair in "${libraries[@]}"; do
        ldconfig -p 2>/dev/null | grep -q "${pair%%:*}" || echo "${pair##*:}"
    done
    # Debian parts this module of python3 off.
    python3 -c 'import ensurepip' 2>/dev/null || echo python3-venv
    find /usr/lib -name '*swrast_dri*' -o -name 'libgallium*' -o -name 'libdril*' | grep -q . || echo libgl1-mesa-dri
}

step() { printf '\n== %s\n' "$*"; }

step "tools"
mapfile -t wanted < <(missing | sort -u)
if ((${#wanted[@]})) && [[ $(id -u) == 0 ]] && command -v apt-get >/dev/null; then
    echo "installing: ${wanted[*]}"
    apt-get update -qq || true
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${wanted[@]}" >/dev/null || true
    mapfile -t wanted < <(missing | sort -u)
fi
if ((${#wanted[@]})); then
    echo "missing packages: ${wanted[*]}"
    if [[ "${CI:-}" == true ]]; then
        echo "error: these are needed here"
        exit 1
    fi
else
    echo "all there"
fi

step "layout of the source"
cargo fmt --check

step "lints"
cargo clippy --release --all-targets -- -D warnings

step "tests"
cargo test --release

step "a second opinion on the generated puzzles"
bash tests/second_opinion.sh

step "the fonts, by a second reader"
bash tests/fonts.sh

step "documentation"
RUSTDOCFLAGS="-D warnings" cargo doc --release --no-deps

step "the demo kits, exported and read by other programs"
cargo build --release
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
for kit in the-stopped-clock the-harbour-regatta; do
    target/release/inklatch export "$kit" --out "$out" --zip --one-pdf | tail -n 6
    bash tests/outside.sh "$out/$kit"
done

if [[ -f tests/window.sh ]]; then
    step "the window"
    if command -v Xvfb >/dev/null && command -v xdotool >/dev/null; then
        bash tests/window.sh
    else
        echo "left out: Xvfb or xdotool is missing"
    fi
fi

printf '\nall checks hold'
((${#wanted[@]})) && printf ', except what needs: %s' "${wanted[*]}"
printf '\n'
