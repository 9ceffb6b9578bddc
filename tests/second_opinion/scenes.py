"""Scenes whose things are counted."""

import itertools
import math
import time

from core import Doubt

# The field in millimetres on which the places of things are counted.
WIDE, HIGH = 170.0, 195.0
# Things whose middles are nearer than this share of their breadths together cover one another in part.
COVERS = 0.42


class Scene:
    """Every line of the list counted, with and without what one might doubt."""

    def __init__(self, view):
        self.view = view

    def solutions(self):
        begun = time.perf_counter()
        if not self.view["say_order"]:
            raise Doubt("the list leaves the order open")
        ranges = [self.counts(picture) for picture in self.view["list"]]
        answers = ["".join(map(str, counts)) for counts in itertools.product(*ranges)]
        return answers[:2], time.perf_counter() - begun

    def counts(self, picture):
        """The fewest and the most that one can count of a kind, and all between."""
        least = most = 0
        for thing in self.view["things"]:
            if thing["picture"] != picture or (thing["ringed"] and self.view["ring_rule"]):
                continue
            most += 1
            least += not (thing["ringed"] or self.doubted(thing))
        return range(least, most + 1)

    def doubted(self, thing):
        x, y, half = thing["x"], thing["y"], thing["across"] / 2
        if not (half <= x <= WIDE - half and half <= y <= HIGH - half):
            return True
        return any(
            math.dist((x, y), (other["x"], other["y"])) < (thing["across"] + other["across"]) * COVERS
            for other in self.view["things"]
            if other is not thing
        )


def spoil_count_scene(view):
    """A thing of the first kind on the list that the edge cuts."""
    view["things"].append({**view["things"][0], "picture": view["list"][0], "x": 0.0, "ringed": False})


MODELS = {"count-scene": (Scene, spoil_count_scene)}
