"""A second opinion on the generated puzzles, by a solver that was not written here.

Usage: python tests/second_opinion FOLDER

FOLDER holds one file for each mechanic, written by the test `views_for_a_second_opinion` (tests/second.rs): a puzzle
on each line, as guests see it, with what our own solver read from it and the microseconds that took. Here each puzzle
is modelled anew from the rules that its sheet states, for OR-Tools CP-SAT (what is only looked for or counted: by plain
search), and must have one solution, which must be what our solver read. Then some puzzles of each mechanic are spoilt,
to show that this program can say no.
"""

import json
import multiprocessing
import os
import statistics
import sys
import time

import grids
import pieces
import reasoning
import scenes
import ways
import words
from core import Doubt

WORKERS = 2

# For each mechanic its model, and what takes from a puzzle something that it needs.
MODELS = {}
for family in (grids, pieces, reasoning, scenes, ways, words):
    MODELS |= family.MODELS


def judge(job):
    """What is wrong with a puzzle, its reading here, and the seconds of both solvers."""
    mechanic, case = job
    try:
        found, seconds = MODELS[mechanic][0](case["view"]).solutions()
        if len(found) != 1:
            return f"{len(found)} solutions or more: {found}", None, 0.0, 0.0
        ours = case["readings"]
        if len(ours) != 1:
            return f"our solver read {ours}", None, 0.0, 0.0
        if mechanic != "picture-grid" and found[0] != ours[0]:
            return f"read {found[0]} here, {ours[0]} there", None, 0.0, 0.0
        return None, (found[0], ours[0]), seconds, case["micros"] / 1e6
    except Doubt as doubt:
        return str(doubt), None, 0.0, 0.0


def spoilt(mechanic, case):
    case = json.loads(json.dumps(case))
    MODELS[mechanic][1](case["view"])
    return mechanic, case


def main(folder):
    names = sorted(name.removesuffix(".jsonl") for name in os.listdir(folder) if name.endswith(".jsonl"))
    unknown, unseen = set(names) - set(MODELS), set(MODELS) - set(names)
    if unknown or unseen:
        raise SystemExit(f"error: no model for {sorted(unknown)}, no puzzles of {sorted(unseen)}")
    begun = time.perf_counter()
    with multiprocessing.Pool(WORKERS) as pool:
        for mechanic in names:
            with open(os.path.join(folder, mechanic + ".jsonl"), encoding="utf-8") as lines:
                cases = [json.loads(line) for line in lines]
            for case in cases:
                case["view"]["wheels"] = case["wheels"]
            told = pool.map(judge, [(mechanic, case) for case in cases], chunksize=4)
            for case, (fault, *_rest) in zip(cases, told):
                if fault:
                    raise SystemExit(f"error: {mechanic}, seed {case['seed']}, {case['setup']}: {fault}")
            if mechanic == "picture-grid":
                grids.pictures_tell_symbols_apart([reading for _, reading, _, _ in told])
            if not all(fault for fault, *_rest in pool.map(judge, [spoilt(mechanic, case) for case in cases[:5]])):
                raise SystemExit(f"error: {mechanic}: a spoilt puzzle was taken for a sound one")
            theirs = statistics.median(seconds for _, _, seconds, _ in told)
            ours = statistics.median(seconds for *_rest, seconds in told)
            print(
                f"{mechanic:18} {len(cases):4} puzzles: one solution each, and the one we read; median "
                f"{ours * 1e3:8.3f} ms ours, {theirs * 1e3:8.3f} ms theirs, {theirs / max(ours, 1e-6):7.1f} times"
            )
    print(f"{time.perf_counter() - begun:.0f} seconds")


if __name__ == "__main__":
    main(sys.argv[1])
