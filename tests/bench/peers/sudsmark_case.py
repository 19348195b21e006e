"""The case as a ruleset and a folder of formulas, and the command that checks them.

Every violation is a verdict `fail` of its own; they are counted in the JSON of a run of its own,
since whoever checks ten thousand formulas reads the text.
"""

import json
import os
import subprocess

from case import KINDS
from engines import put

HEAD = """subject: Peers
edition: "2026-11"
authority: craft
sources:
  - { id: invented, kind: common practice, title: Invented for a benchmark }
"""


def rule_text(rule):
    if rule.kind == "limit":
        when = f'supplied("{rule.a}") > 0 %'
        expect = f'supplied("{rule.a}") <= {rule.high} %'
    elif rule.kind == "ratio":
        when = f'supplied("{rule.a}") > 0 % and supplied("{rule.b}") > 0 %'
        expect = f'supplied("{rule.a}") / supplied("{rule.b}") between {rule.low} and {rule.high}'
    else:
        when = f"product = {KINDS[rule.product]}"
        expect = f"{rule.a} <= {rule.high} %"
    return (f"  - id: {rule.id}\n    title: Rule {rule.id}\n    when: {when}\n    expect: {expect}\n"
            f'    otherwise: note\n    message: "{rule.id}"\n    why: A benchmark.\n'
            "    remedy: None.\n    sources: [invented]\n")


def written(case, folder):
    rules = os.path.join(folder, "rules")
    formulas = os.path.join(folder, "formulas")
    os.makedirs(rules, exist_ok=True)
    os.makedirs(formulas, exist_ok=True)
    text = HEAD + "materials:\n"
    for name in case.ingredients:
        text += (f'  - id: {name}\n    name: "{name}"\n    roles: [filler]\n'
                 "    form: fine powder\n    source: invented\n")
    text += "measures:\n"
    for group in sorted(set(case.group_of.values())):
        names = [name for name in case.ingredients if case.group_of[name] == group]
        text += f"  {group}: supplied({' or '.join(chr(34) + one + chr(34) for one in names)})\n"
    put(rules, "peers.yaml", text + "rules:\n" + "".join(map(rule_text, case.rules)))
    for one in case.formulas:
        lines = [f'formula "{one.id}"', f"  product {KINDS[one.product]}", 'phase "all"']
        lines += [f"  {value:.3f} % {name}" for name, value in one.shares.items()]
        put(formulas, one.id + ".formula", "\n".join(lines) + "\n")
    return ["--bare", "--rules", rules, formulas]


def violations(program, arguments):
    ran = subprocess.run([program, "check", "--format", "json-lines", *arguments],
                         capture_output=True, check=False)
    found = 0
    for line in ran.stdout.splitlines():
        found += sum(1 for one in json.loads(line)["verdicts"] if one["kind"] == "fail")
    return found
