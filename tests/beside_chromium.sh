#!/bin/bash
# Speed and size beside a browser: the sheets of one paper and one level, printed to PDF by headless Chromium.
#
# Not part of tests/check.sh: the browser is a large package. On Debian: apt-get install chromium poppler-utils.
#
# The browser gets the pages as finished SVG drawings, one to a page, so it has neither lines to break nor pieces to lay
# out. Ours is what `cargo bench` measures (group "print"), both ways: finished pages written, which is the same work as the
# browser's; and the whole of it, the pieces set from their texts first.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
browser=$(command -v chromium || command -v chromium-browser) || { echo "error: there is no chromium"; exit 1; }
for tool in pdftocairo pdfinfo python3; do
    command -v "$tool" >/dev/null || { echo "error: there is no $tool"; exit 1; }
done

cargo build --release
cargo bench --bench speed -- '^print/'
# Criterion's folders have the names of the benches.
estimate() { find target/criterion/print -path "*$1*/new/estimates.json" | head -n 1; }
measured=$(estimate "the sheets of one paper")
written=$(estimate "finished pages")

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
target/release/inklatch export --paper a4 --level standard --out "$work" >/dev/null
kit=$work/the-stopped-clock
mapfile -t pdfs < <(ls "$kit"/players/*.pdf "$kit"/hints/*.pdf "$kit"/host/*host-sheets*.pdf)

ours=0
pages=0
{
    echo '<!doctype html><meta charset="utf-8"><title>sheets</title>'
    echo '<style>@page{size:210mm 297mm;margin:0}body{margin:0}svg{display:block;width:210mm;height:297mm;break-after:page}</style>'
    for pdf in "${pdfs[@]}"; do
        count=$(pdfinfo "$pdf" | awk '/^Pages:/{print $2}')
        ours=$((ours + $(stat -c %s "$pdf")))
        for page in $(seq "$count"); do
            pages=$((pages + 1))
            pdftocairo -svg -f "$page" -l "$page" "$pdf" "$work/page.svg"
            # Names within a drawing must not meet those of another page.
            sed -e '1{/^<?xml/d}' -e "s/\"glyph-/\"p$pages-glyph-/g; s/#glyph-/#p$pages-glyph-/g" \
                -e "s/id=\"\\(clip\\|surface\\|image\\|source\\|mask\\|linear\\|radial\\|pattern\\)/id=\"p$pages-\\1/g" \
                -e "s/#\\(clip\\|surface\\|image\\|source\\|mask\\|linear\\|radial\\|pattern\\)/#p$pages-\\1/g" "$work/page.svg"
        done
    done
    echo "$pages" >"$work/pages"
    echo "$ours" >"$work/ours"
} >"$work/sheets.html"
echo '<!doctype html><title>nothing</title>' >"$work/nothing.html"

# Seconds of the quickest of three.
quickest() {
    python3 - "$browser" "$work" "$1" <<'PY'
import subprocess, sys, time
browser, work, name = sys.argv[1:]
command = [browser, "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", f"--user-data-dir={work}/profile",
           f"--print-to-pdf={work}/{name}.pdf", f"file://{work}/{name}.html"]
times = []
for _ in range(3):
    start = time.monotonic()
    subprocess.run(command, check=True, capture_output=True)
    times.append(time.monotonic() - start)
print(min(times))
PY
}
whole=$(quickest sheets)
empty=$(quickest nothing)

python3 - "$measured" "$written" "$whole" "$empty" "$(cat "$work/pages")" "$(cat "$work/ours")" "$(stat -c %s "$work/sheets.pdf")" \
    "$(pdfinfo "$work/sheets.pdf" | awk '/^Pages:/{print $2}')" <<'PY'
import json, sys
measured, written, whole, empty, pages, ours, theirs, printed = sys.argv[1:]
def seconds(estimates):
    return json.load(open(estimates))["median"]["point_estimate"] / 1e9
mine, finished = seconds(measured), seconds(written)
whole, empty = float(whole), float(empty)
print(f"{pages} pages; the browser printed {printed}")
print(f"Chromium {whole * 1000:.0f} ms, of which {empty * 1000:.0f} ms to start and print nothing")
for what, took in [("from finished pages", finished), ("from texts", mine)]:
    print(f"ours {what} {took * 1000:.0f} ms: {whole / took:.1f} times as quick; {(whole - empty) / took:.1f} times without its start")
print(f"ours {int(ours) / 1000:.0f} kB with tags, bookmarks and text to select; Chromium {int(theirs) / 1000:.0f} kB")
PY
