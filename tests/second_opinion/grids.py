"""Number place grids and picture grids."""

import itertools

from core import Case


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


def spoil_number_place(view):
    view["rows"] = [[None] * len(view["rows"]) for _ in view["rows"]]


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


def spoil_picture_grid(view):
    view["panels"][0] = {"rows": [[1], [1]], "cols": [[1], [1]], "given": []}


def pictures_tell_symbols_apart(readings):
    """Our solver gave each picture a symbol; one picture must always be the same symbol."""
    symbol_of = {}
    for pictures, answer in readings:
        if len(pictures) != len(answer):
            raise SystemExit(f"error: picture-grid: {len(pictures)} panels read as {answer}")
        for picture, symbol in zip(pictures, answer):
            if symbol_of.setdefault(picture, symbol) != symbol:
                raise SystemExit(f"error: picture-grid: one picture read as {symbol} and as {symbol_of[picture]}")


MODELS = {"number-place": (number_place, spoil_number_place), "picture-grid": (picture_grid, spoil_picture_grid)}
