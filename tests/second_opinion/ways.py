"""Ways through mazes and over maps."""

import itertools
import time

from core import Case, Doubt


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


def spoil_fork_maze(view):
    cells = range(view["rows"] * view["cols"])
    view["passages"] = [[a, a + 1] for a in cells if (a + 1) % view["cols"]]
    view["passages"] += [[a, a + view["cols"]] for a in cells if a + view["cols"] in cells]


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


def spoil_route_map(view):
    (_form, (start, *_rest)), = view["task"].items()
    first = next(place for place in view["places"] if place["picture"] == start)
    view["places"].append({**first, "sign": None})


MODELS = {"fork-maze": (fork_maze, spoil_fork_maze), "route-map": (RouteMap, spoil_route_map)}
