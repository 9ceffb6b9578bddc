"""A second opinion on the generated puzzles, by a solver that was not written here.

Usage: second_opinion.py FOLDER

FOLDER holds one file for each mechanic, written by the test `views_for_a_second_opinion` (tests/second.rs): a puzzle
on each line, as guests see it, with what our own solver read from it and the microseconds that took. Here each puzzle
is modelled anew from the rules that its sheet states, for OR-Tools CP-SAT (word searches: by plain search), and must
have one solution, which must be what our solver read. Then some puzzles of each mechanic are spoilt, to show that this
program can say no.
"""

import itertools
import json
import multiprocessing
import os
import statistics
import sys
import time

from ortools.sat.python import cp_model

WORKERS = 2
SECONDS = 20.0


class Doubt(Exception):
    """A puzzle that is not what it should be."""


class Case:
    """A model with the variables that make up what a guest reads, and how they spell the answer."""

    def __init__(self):
        self.model = cp_model.CpModel()
        self.reads = []
        self.spell = None

    def solutions(self):
        """The readings found, two at most, and the solver's own seconds."""
        found, seconds = [], 0.0
        while len(found) < 2:
            solver = cp_model.CpSolver()
            solver.parameters.num_workers = 1
            solver.parameters.max_time_in_seconds = SECONDS
            status = solver.solve(self.model)
            seconds += solver.wall_time
            if status == cp_model.INFEASIBLE:
                break
            if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
                raise Doubt(f"the second solver gave up: {solver.status_name(status)}")
            values = [solver.value(v) for v in self.reads]
            found.append(self.spell(values))
            self.model.add_forbidden_assignments(self.reads, [values])
        return found, seconds


def number_place(view):
    case, n = Case(), len(view["rows"])
    high, wide = {4: (2, 2), 6: (2, 3), 9: (3, 3)}[n]
    at = [[case.model.new_int_var(0, n - 1, f"{r},{c}") for c in range(n)] for r in range(n)]
    for line in range(n):
        case.model.add_all_different(at[line])
        case.model.add_all_different(row[line] for row in at)
    for top, left in itertools.product(range(0, n, high), range(0, n, wide)):
        case.model.add_all_different(at[top + r][left + c] for r in range(high) for c in range(wide))
    for r, c in itertools.product(range(n), repeat=2):
        if view["rows"][r][c] is not None:
            case.model.add(at[r][c] == view["symbols"].index(view["rows"][r][c]))
    case.reads = [v for row in at for v in row]
    case.spell = lambda values: "".join(view["symbols"][values[r * n + c]] for r, c in view["marks"])
    return case


def runs(model, line, lengths):
    """Holds a line of cells to the lengths of its runs of ink: one start for each run, each after the one before."""
    n, covering, before = len(line), [[] for _ in line], None
    for length in lengths:
        starts = [model.new_bool_var("") for _ in range(max(n - length + 1, 0))]
        model.add(sum(starts) == 1)
        place = sum(i * s for i, s in enumerate(starts))
        if before is not None:
            model.add(place >= before + 1)
        before = place + length
        for i, s in enumerate(starts):
            for cell in range(i, i + length):
                covering[cell].append(s)
    for cell, starts in zip(line, covering):
        model.add(sum(starts) == cell)


def picture_grid(view):
    case, panels = Case(), []
    for panel in view["panels"]:
        high, wide = len(panel["rows"]), len(panel["cols"])
        ink = [[case.model.new_bool_var("") for _ in range(wide)] for _ in range(high)]
        for line, lengths in zip(ink, panel["rows"]):
            runs(case.model, line, lengths)
        for c, lengths in enumerate(panel["cols"]):
            runs(case.model, [row[c] for row in ink], lengths)
        for r, c in panel["given"]:
            case.model.add(ink[r][c] == 1)
        panels.append((high, wide))
        case.reads += [v for row in ink for v in row]

    def spell(values):
        rest, pictures = iter(values), []
        for high, wide in panels:
            rows = [[next(rest) for _ in range(wide)] for _ in range(high)]
            rows = [row for row in rows if any(row)]
            cols = [c for c in range(wide) if any(row[c] for row in rows)]
            pictures.append("/".join("".join(".#"[row[c]] for c in range(cols[0], cols[-1] + 1)) for row in rows))
        return tuple(pictures)

    case.spell = spell
    return case


def logic_grid(view):
    case, kinds = Case(), view["kinds"]
    n = len(kinds[0]["things"])
    # Things that belong together stand in one row; who[k][row] is the thing of the kind in that row.
    row = [[case.model.new_int_var(0, n - 1, "") for _ in range(n)] for _ in kinds]
    who = [[case.model.new_int_var(0, n - 1, "") for _ in range(n)] for _ in kinds]
    for r, w in zip(row, who):
        case.model.add_inverse(r, w)
    for i in range(n):
        case.model.add(row[0][i] == i)

    def number(thing, by):
        value = case.model.new_int_var(0, n - 1, "")
        case.model.add_element(row[thing[0]][thing[1]], who[by], value)
        return value

    def together(a, b):
        same = case.model.new_bool_var("")
        x, y = row[a[0]][a[1]], row[b[0]][b[1]]
        case.model.add(x == y).only_enforce_if(same)
        case.model.add(x != y).only_enforce_if(~same)
        return same

    for statement in view["statements"]:
        (form, said), = statement.items()
        if form == "Same":
            case.model.add(together(*said) == 1)
        elif form == "NotSame":
            case.model.add(together(*said) == 0)
        elif form == "Either":
            case.model.add(together(said[0], said[1]) + together(said[0], said[2]) >= 1)
        else:
            x, y = number(said[0], said[2]), number(said[1], said[2])
            if form == "Before":
                case.model.add(x < y)
            elif form == "RightBefore":
                case.model.add(y == x + 1)
            elif form == "NextTo":
                gap = case.model.new_int_var(-n, n, "")
                case.model.add(gap == x - y)
                case.model.add_abs_equality(1, gap)
            else:
                raise Doubt(f"no rule for {form}")
    case.reads = [v for r in row for v in r]
    tags = len(kinds) - 1

    def spell(values):
        at = [values[k * n:(k + 1) * n] for k in range(len(kinds))]
        return "".join(kinds[tags]["things"][at[tags].index(at[k][i])] for k, i in view["asked"])

    case.spell = spell
    return case


def truth_tellers(view):
    case, speakers = Case(), view["speakers"]
    told = [case.model.new_bool_var("") for _ in speakers]
    for speaker, truth in zip(speakers, told):
        (form, about), = speaker["says"].items()
        about = [told[i] for i in ([about] if isinstance(about, int) else about)]
        if form == "True":
            case.model.add(truth == about[0])
        elif form == "False":
            case.model.add(truth + about[0] == 1)
        elif form in ("Alike", "Unlike"):
            a, b = about
            wanted = truth if form == "Unlike" else ~truth
            case.model.add_bool_xor([a, b, ~wanted])
        elif form == "NotBoth":
            case.model.add(sum(about) <= 1).only_enforce_if(truth)
            case.model.add(sum(about) == 2).only_enforce_if(~truth)
        else:
            raise Doubt(f"no rule for {form}")
    if view["liars"] is not None:
        case.model.add(sum(told) == len(told) - view["liars"])
    case.reads = told
    case.spell = lambda values: "".join(s["badge"] for s, truth in zip(speakers, values) if truth)
    return case


def balance_cards(view):
    case, n = Case(), len(view["things"])
    # Any weights whatever may be on the pans; only the order is read, and whole numbers have room for every order.
    weight = [case.model.new_int_var(1, n * n, "") for _ in range(n)]
    case.model.add_all_different(weight)
    rank = [case.model.new_int_var(0, n - 1, "") for _ in range(n)]
    for i, j in itertools.permutations(range(n), 2):
        heavier = case.model.new_bool_var("")
        case.model.add(weight[i] > weight[j]).only_enforce_if(heavier)
        case.model.add(weight[i] < weight[j]).only_enforce_if(~heavier)
        case.model.add(rank[i] < rank[j]).only_enforce_if(heavier)
        case.model.add(rank[i] > rank[j]).only_enforce_if(~heavier)
    for one in view["weighings"]:
        third = [] if one["both"] is None else [weight[one["both"]]]
        case.model.add(sum([weight[one["heavier"]], *third]) > sum([weight[one["lighter"]], *third]))
    case.reads = rank
    case.spell = lambda values: "".join(view["things"][values.index(r)]["tag"] for r in range(n))
    return case


def price_list(view):
    case = Case()
    price = [case.model.new_int_var(0, 9, "") for _ in view["things"]]
    for bill in view["bills"]:
        case.model.add(sum(count * p for count, p in zip(bill["pieces"], price)) == bill["total"])
    case.reads = price
    case.spell = lambda values: "".join(str(values[i]) for i in view["asked"])
    return case


def domino_chain(view):
    case, pieces = Case(), view["pieces"]
    n = len(pieces)
    which = [case.model.new_int_var(0, n - 1, "") for _ in range(n)]
    case.model.add_all_different(which)
    case.model.add(which[0] == view["first"])
    left = [case.model.new_int_var(0, 9, "") for _ in range(n)]
    right = [case.model.new_int_var(0, 9, "") for _ in range(n)]
    lies = [(i, a, b) for i, (a, b) in enumerate(pieces)]
    if not view["arrows"]:
        lies += [(i, b, a) for i, (a, b) in enumerate(pieces)]
    for k in range(n):
        case.model.add_allowed_assignments([which[k], left[k], right[k]], lies)
        if k + 1 < n:
            case.model.add(right[k] == left[k + 1])
    # Pieces that are alike may be exchanged; what is read is the pips where two touch.
    case.reads = right[:-1]
    case.spell = lambda values: "".join(map(str, values))
    return case


def fork_maze(view):
    case, (start, _), (goal, _) = Case(), view["start"], view["goal"]
    if view["gates"]:
        raise Doubt("the outer wall has holes")
    # A way without a cell twice is a circuit that is closed from the goal to the start; cells off it loop on themselves.
    arcs = [(a, b) for pair in view["passages"] for a, b in (pair, pair[::-1])]
    steps = [case.model.new_bool_var("") for _ in arcs]
    idle = [(cell, cell, case.model.new_bool_var("")) for cell in range(view["rows"] * view["cols"])]
    case.model.add_circuit([(a, b, step) for (a, b), step in zip(arcs, steps)] + idle + [(goal, start, 1)])
    case.reads = steps

    def spell(values):
        onward = {a: b for (a, b), taken in zip(arcs, values) if taken}
        signs, cell, text = dict(view["floor"]["Symbols"]), start, ""
        while True:
            text += signs.get(cell, "")
            if cell == goal:
                return text
            cell = onward[cell]

    case.spell = spell
    return case


class RouteMap:
    """The route walked square by square, or every shortest way along the roads, by looking."""

    def __init__(self, view):
        self.view = view

    def named(self, picture):
        return [place["at"] for place in self.view["places"] if place["picture"] == picture]

    def solutions(self):
        begun = time.perf_counter()
        (form, task), = self.view["task"].items()
        answers = self.walked(*task) if form == "Legs" else self.shortest(*task)
        return answers[:2], time.perf_counter() - begun

    def walked(self, start, legs):
        if not (self.view["north"] and self.view["say_stops"]):
            raise Doubt("the sheet leaves north or the stops open")
        cols, signs = self.view["cols"], {place["at"]: place["sign"] for place in self.view["places"]}
        steps = {"North": (0, -1), "South": (0, 1), "East": (1, 0), "West": (-1, 0)}
        answers = []
        for first in self.named(start):
            (y, x), text = divmod(first, cols), ""
            for leg in legs:
                for wind, count in leg:
                    x, y = x + steps[wind][0] * count, y + steps[wind][1] * count
                    if not (0 <= x < cols and 0 <= y < self.view["rows"]):
                        raise Doubt("the route leaves the map")
                text += signs[y * cols + x]
            answers.append(text)
        return answers

    def shortest(self, start, goal):
        near = {}
        for a, b in self.view["roads"]:
            near.setdefault(a, []).append(b)
            near.setdefault(b, []).append(a)
        signs = {place["at"]: place["sign"] or "" for place in self.view["places"]}
        answers = []
        for first, last in itertools.product(self.named(start), self.named(goal)):
            ways = [[first]]
            seen = {first}
            while ways and not any(way[-1] == last for way in ways):
                ways = [[*way, to] for way in ways for to in near.get(way[-1], []) if to not in seen]
                seen.update(way[-1] for way in ways)
            answers += ["".join(signs.get(at, "") for at in way) for way in ways if way[-1] == last]
        return answers


DIGITS = ["ZERO", "ONE", "TWO", "THREE", "FOUR", "FIVE", "SIX", "SEVEN", "EIGHT", "NINE"]


class WordSearch:
    """Every place of every word, by looking; the choices multiply."""

    def __init__(self, view):
        self.view = view

    def solutions(self):
        start = time.perf_counter()
        grid, places = self.view["rows"], []
        high, wide = len(grid), max(map(len, grid))
        for word in self.view["words"]:
            found = set()
            for r, c, (dr, dc) in itertools.product(range(high), range(wide), itertools.product((-1, 0, 1), repeat=2)):
                cells = [(r + i * dr, c + i * dc) for i in range(len(word))]
                inside = all(0 <= y < high and 0 <= x < wide for y, x in cells)
                if (dr or dc) and inside and all(grid[y][x] == letter for (y, x), letter in zip(cells, word)):
                    found.add(frozenset(cells))
            places.append(found)
        answers = []
        for choice in itertools.islice(itertools.product(*places), 2):
            used = set().union(*choice)
            left = "".join(grid[r][c] or "" for r, c in itertools.product(range(high), range(wide)) if (r, c) not in used)
            answers.append(spelled(left))
        return answers, time.perf_counter() - start


def spelled(letters):
    """The digits that letters spell out, or the letters where they spell none."""
    rest, digits = letters, ""
    while rest:
        word = next((word for word in DIGITS if rest.startswith(word)), None)
        if word is None:
            return letters
        digits, rest = digits + str(DIGITS.index(word)), rest[len(word):]
    return digits


MODELS = {
    "number-place": number_place,
    "picture-grid": picture_grid,
    "logic-grid": logic_grid,
    "truth-tellers": truth_tellers,
    "leftover-letters": WordSearch,
    "balance-cards": balance_cards,
    "price-list": price_list,
    "domino-chain": domino_chain,
    "fork-maze": fork_maze,
    "route-map": RouteMap,
}


def judge(job):
    """What is wrong with a puzzle, its reading here, and the seconds of both solvers."""
    mechanic, case = job
    try:
        found, seconds = MODELS[mechanic](case["view"]).solutions()
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


def spoil(mechanic, view):
    """The same puzzle with something taken away that it needs."""
    view = json.loads(json.dumps(view))
    if mechanic == "number-place":
        view["rows"] = [[None] * len(view["rows"]) for _ in view["rows"]]
    elif mechanic == "picture-grid":
        view["panels"][0] = {"rows": [[1], [1]], "cols": [[1], [1]], "given": []}
    elif mechanic == "logic-grid":
        view["statements"] = view["statements"][:1]
    elif mechanic == "truth-tellers":
        view["liars"] = None
        for speaker in view["speakers"]:
            speaker["says"] = {"Alike": [0, 1]}
    elif mechanic == "leftover-letters":
        wide = max(map(len, view["rows"]))
        view["rows"].append((list(view["words"][0]) + [None] * wide)[:wide])
    elif mechanic in ("balance-cards", "price-list"):
        key = "weighings" if mechanic == "balance-cards" else "bills"
        view[key] = view[key][:1]
    elif mechanic == "domino-chain":
        view["pieces"] = [[0, 1], [1, 2], [2, 3], [3, 1], [1, 4]]
        view["first"], view["arrows"] = 0, False
    elif mechanic == "fork-maze":
        cells = range(view["rows"] * view["cols"])
        view["passages"] = [[a, a + 1] for a in cells if (a + 1) % view["cols"]]
        view["passages"] += [[a, a + view["cols"]] for a in cells if a + view["cols"] in cells]
    elif mechanic == "route-map":
        (_form, (start, *_rest)), = view["task"].items()
        first = next(place for place in view["places"] if place["picture"] == start)
        view["places"].append({**first, "sign": None})
    return view


def pictures_tell_symbols_apart(mechanic, readings):
    """Our solver gave each picture a symbol; one picture must always be the same symbol, and each symbol its own."""
    symbol_of = {}
    for pictures, answer in readings:
        if len(pictures) != len(answer):
            raise SystemExit(f"error: {mechanic}: {len(pictures)} panels read as {answer}")
        for picture, symbol in zip(pictures, answer):
            if symbol_of.setdefault(picture, symbol) != symbol:
                raise SystemExit(f"error: {mechanic}: one picture read as {symbol} and as {symbol_of[picture]}")


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
            told = pool.map(judge, [(mechanic, case) for case in cases], chunksize=4)
            for case, (fault, *_rest) in zip(cases, told):
                if fault:
                    raise SystemExit(f"error: {mechanic}, seed {case['seed']}, {case['setup']}: {fault}")
            if mechanic == "picture-grid":
                pictures_tell_symbols_apart(mechanic, [reading for _, reading, _, _ in told])
            spoilt = [(mechanic, {**case, "view": spoil(mechanic, case["view"])}) for case in cases[:5]]
            if not all(fault for fault, *_rest in pool.map(judge, spoilt)):
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
