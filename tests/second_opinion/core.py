"""What every model has: a case to solve, and the doubt that a puzzle can raise."""

from ortools.sat.python import cp_model

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
