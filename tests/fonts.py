"""Holds what our own reader says of the carried fonts against the font files, read by fontTools.

Usage: fonts.py COVERAGE, from the root of the source.
"""

import json
import sys
import unicodedata

from fontTools.ttLib import TTFont

# What every kit prints: letters, digits, and the signs of English text.
COMMON = {chr(c) for c in range(0x21, 0x7F)} | set("\u2013\u2014\u2018\u2019\u201c\u201d\u2026\u00b7\u00d7")


def printed(char):
    """Whether a reader is asked for the character: no space, no control, nothing without a shape."""
    return not char.isspace() and unicodedata.category(char) not in ("Cc", "Cf", "Cs", "Mn", "Me")


def main(path):
    with open(path, encoding="utf-8") as file:
        rows = json.load(file)
    faults, faces, regular = [], 0, 0
    for row in rows:
        ours = {char for char in row["has"] if printed(char)}
        for name in row["files"]:
            font = TTFont(name, lazy=True)
            there = {chr(c) for c in font.getBestCmap() if 0x21 <= c <= 0xFFFD and printed(chr(c))}
            faces += 1
            said = {record.toUnicode() for record in font["name"].names if record.nameID in (1, 16)}
            if row["family"] not in said:
                faults.append(f"{name}: it calls itself {sorted(said)}, not {row['family']}")
            if COMMON - there:
                faults.append(f"{name}: it lacks {''.join(sorted(COMMON - there))}")
            if font["OS/2"].usWeightClass == 400 and not font["OS/2"].fsSelection & 1:
                regular += 1
                if ours != there:
                    wrong, missed = sorted(ours - there), sorted(there - ours)
                    faults.append(f"{name}: ours has {wrong[:20]} more and {missed[:20]} less")
    for fault in faults:
        print("error:", fault)
    if regular < len(rows):
        print(f"error: {regular} regular faces for {len(rows)} families")
        faults.append("regular")
    print(f"fontTools: {faces} faces of {len(rows)} families hold what our reader says")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
