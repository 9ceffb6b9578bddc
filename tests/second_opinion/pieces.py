"""Pieces that are laid in order: dominoes, and strips of a cut picture."""

from core import Case


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


def spoil_domino_chain(view):
    view["pieces"] = [[0, 1], [1, 2], [2, 3], [3, 1], [1, 4]]
    view["first"], view["arrows"] = 0, False


# Cells across a sign, and rows of a strip for each row of a sign.
ACROSS, FINE = 5, 2


def stretches(drawn):
    """A sign from the top as its rows with how often each comes: a row that is drawn once, or one that goes on."""
    out = []
    for row in drawn:
        if out and out[-1][0] == row:
            out[-1][1] = True
        else:
            out.append([row, False])
    return out


def sign_machine(signs):
    """An automaton that reads which sign is meant, then a column of rows: nothing, the sign, nothing. An upright stroke
    may be of any length; any other row comes FINE times."""
    blank, ends, steps, states = "." * ACROSS, [], [], 1

    def step(a, b, row):
        steps.append((a, code(row), b))

    for label, drawn in enumerate(signs):
        above = at = states
        states += 1
        steps.append((0, label, above))
        step(above, above, blank)
        for row, goes_on in stretches(drawn):
            for _ in range(1 if goes_on else FINE):
                step(at, states, row)
                at, states = states, states + 1
            if goes_on:
                step(at, at, row)
        below, states = states, states + 1
        step(at, below, blank)
        step(below, below, blank)
        ends += [at, below]
    return ends, steps


def code(row):
    return int(row.replace("#", "1").replace(".", "0"), 2)


def cut_strips(view):
    """Strips are laid anyhow, each once; every place across must then be one of the signs that its wheel shows."""
    case, strips, signs = Case(), view["strips"], view["wheels"]
    n, high, places = len(strips), len(strips[0]), len(strips[0][0]) // (ACROSS + 1)
    ways = list(enumerate(strips))
    if not view["arrows"]:
        ways += [(i, [row[::-1] for row in strip[::-1]]) for i, strip in enumerate(strips)]
    which = [case.model.new_int_var(0, n - 1, "") for _ in range(n)]
    case.model.add_all_different(which)
    columns = [[] for _ in range(places)]
    lies = [
        [i, *(code(row[p * (ACROSS + 1) + 1:][:ACROSS]) for row in strip for p in range(places))] for i, strip in ways
    ]
    for k in range(n):
        cells = [[case.model.new_int_var(0, 2**ACROSS - 1, "") for _ in range(places)] for _ in range(high)]
        case.model.add_allowed_assignments([which[k], *(v for row in cells for v in row)], lies)
        for p in range(places):
            columns[p] += [row[p] for row in cells]
    for p, column in enumerate(columns):
        shown = signs[p]
        case.reads.append(case.model.new_int_var(0, len(shown) - 1, ""))
        ends, steps = sign_machine(shown.values())
        case.model.add_automaton([case.reads[p], *column], 0, ends, steps)
    case.spell = lambda values: "".join(list(shown)[v] for shown, v in zip(signs, values))
    return case


def spoil_cut_strips(view):
    """Where the wheels show digits, sixes: cut row by row, they can be laid as nines. Else V, which is Y as well."""
    shown, places = view["wheels"][0], len(view["wheels"])
    drawn = shown["6"] if "6" in shown else ["#...#", "#...#", ".#.#.", "..#.."]
    view["strips"] = [["." + (row + ".") * places] * FINE for row in drawn]


MODELS = {"domino-chain": (domino_chain, spoil_domino_chain), "cut-strips": (cut_strips, spoil_cut_strips)}
