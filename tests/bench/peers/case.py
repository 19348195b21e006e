"""The case that all engines are given: a hundred rules over ten thousand generated formulas.

Rules are of three kinds, those that makers write: at most so much of an ingredient, two ingredients
in a ratio, and at most so much of a group in a kind of product.
"""

import random
from dataclasses import dataclass, field

KINDS = {"rinse": "shampoo bar", "leave": "bath melt", "fizz": "bath fizzy"}


@dataclass
class Rule:
    id: str
    kind: str  # "limit", "ratio", "group"
    a: str = ""  # an ingredient; of a group rule the group
    b: str = ""
    low: float = 0.0
    high: float = 0.0
    product: str = ""  # of a group rule: the kind of product that it is about


@dataclass
class Formula:
    id: str
    product: str
    shares: dict = field(default_factory=dict)  # %, with three decimals
    groups: dict = field(default_factory=dict)


@dataclass
class Case:
    ingredients: list
    group_of: dict
    rules: list
    formulas: list


def rules_of(rng, ingredients, groups):
    rules = []
    for at in range(50):
        rules.append(Rule(f"limit-{at:02}", "limit", rng.choice(ingredients),
                          high=round(rng.uniform(5, 25), 2)))
    for at in range(30):
        a, b = rng.sample(ingredients, 2)
        rules.append(Rule(f"ratio-{at:02}", "ratio", a, b, round(rng.uniform(0.2, 0.6), 2),
                          round(rng.uniform(1.5, 3), 2)))
    for at in range(20):
        rules.append(Rule(f"group-{at:02}", "group", rng.choice(groups),
                          high=round(rng.uniform(20, 40), 1), product=rng.choice(list(KINDS))))
    return rules


def formula_of(rng, number, ingredients, group_of, groups):
    chosen = rng.sample(ingredients, rng.randint(8, 16))
    weights = [rng.uniform(1, 100) for _ in chosen]
    # in thousandths of a per cent, so that they add up and a group's sum is exact
    parts = [round(100000 * weight / sum(weights)) for weight in weights]
    parts[0] += 100000 - sum(parts)
    of_groups = dict.fromkeys(groups, 0)
    for name, part in zip(chosen, parts):
        of_groups[group_of[name]] += part
    return Formula(f"f{number:05}", rng.choice(list(KINDS)),
                   {name: part / 1000 for name, part in zip(chosen, parts)},
                   {name: part / 1000 for name, part in of_groups.items()})


def generated(count=10000, seed=5):
    rng = random.Random(seed)
    ingredients = [f"stuff{at:02}" for at in range(60)]
    groups = [f"group{at}" for at in range(8)]
    group_of = {name: rng.choice(groups) for name in ingredients}
    rules = rules_of(rng, ingredients, groups)
    formulas = [formula_of(rng, at, ingredients, group_of, groups) for at in range(count)]
    return Case(ingredients, group_of, rules, formulas)
