#!/bin/bash
# A whole bundle, read by programs that were not written here. Usage: tests/outside.sh FOLDER
set -euo pipefail
cd "${1:?name a bundle folder}"

have() {
    command -v "$1" >/dev/null && return 0
    if [[ "${CI:-}" == true ]]; then echo "error: $1 is missing"; exit 1; fi
    echo "left out: $1 is missing"
    return 1
}

mapfile -t pdfs < <(find . -name '*.pdf' | sort)
echo "${#pdfs[@]} PDF files"
((${#pdfs[@]} > 0))

if have qpdf; then
    for pdf in "${pdfs[@]}"; do
        qpdf --check "$pdf" >/dev/null || { echo "error: qpdf refuses $pdf"; exit 1; }
    done
    echo "qpdf: every file is sound"
fi

if have sha256sum && have python3; then
    python3 - <<'PY' | sha256sum --check --quiet
import json
for entry in json.load(open("manifest.json"))["files"]:
    print(f'{entry["sha256"]}  {entry["path"]}')
PY
    python3 - <<'PY'
import json, os
manifest = json.load(open("manifest.json"))
known = {entry["path"] for entry in manifest["files"]} | {"manifest.json", manifest.get("zip")}
found = {os.path.relpath(os.path.join(top, name), ".") for top, _, names in os.walk(".") for name in names}
assert found == known - {None}, f"manifest and folder differ: {sorted(found ^ known)}"
PY
    echo "sha256sum: every file is the one in the manifest, and there is no other"
fi

if have gs; then
    for pdf in "${pdfs[@]}"; do
        gs -q -dBATCH -dNOPAUSE -dPDFSTOPONERROR -sDEVICE=nullpage "$pdf" >/dev/null || { echo "error: Ghostscript refuses $pdf"; exit 1; }
    done
    echo "Ghostscript: every page can be drawn"
fi

if have python3; then
    for zip in *.zip; do
        [[ -e "$zip" ]] || continue
        python3 - "$zip" <<'PY'
import hashlib, json, sys, zipfile
archive = zipfile.ZipFile(sys.argv[1])
assert archive.testzip() is None
top = archive.namelist()[0].split("/")[0]
manifest = json.loads(archive.read(f"{top}/manifest.json"))
for entry in manifest["files"]:
    assert hashlib.sha256(archive.read(f'{top}/{entry["path"]}')).hexdigest() == entry["sha256"], entry["path"]
PY
        echo "Python: $zip holds the files of the manifest"
    done
fi

if have unzip; then
    for zip in *.zip; do
        [[ -e "$zip" ]] || continue
        unzip -tqq "$zip"
        echo "unzip: $zip is sound"
    done
fi
