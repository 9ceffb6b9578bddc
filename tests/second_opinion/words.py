"""Word searches whose left-over letters spell."""

import itertools
import time

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


def spoil_leftover_letters(view):
    wide = max(map(len, view["rows"]))
    view["rows"].append((list(view["words"][0]) + [None] * wide)[:wide])


MODELS = {"leftover-letters": (WordSearch, spoil_leftover_letters)}
