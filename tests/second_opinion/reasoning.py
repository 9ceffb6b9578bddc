"""Statements: logic grids, truth-tellers, balance cards, price lists."""

import itertools

from core import Case, Doubt


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


def spoil_logic_grid(view):
    view["statements"] = view["statements"][:1]


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


def spoil_truth_tellers(view):
    view["liars"] = None
    for speaker in view["speakers"]:
        speaker["says"] = {"Alike": [0, 1]}


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


def spoil_balance_cards(view):
    view["weighings"] = view["weighings"][:1]


def price_list(view):
    case = Case()
    price = [case.model.new_int_var(0, 9, "") for _ in view["things"]]
    for bill in view["bills"]:
        case.model.add(sum(count * p for count, p in zip(bill["pieces"], price)) == bill["total"])
    case.reads = price
    case.spell = lambda values: "".join(str(values[i]) for i in view["asked"])
    return case


def spoil_price_list(view):
    view["bills"] = view["bills"][:1]


MODELS = {
    "logic-grid": (logic_grid, spoil_logic_grid),
    "truth-tellers": (truth_tellers, spoil_truth_tellers),
    "balance-cards": (balance_cards, spoil_balance_cards),
    "price-list": (price_list, spoil_price_list),
}
