"""The case in the language of each engine: files in a folder, and the command that counts.

A command prints the number of violations as the last number of its last line. What an engine reads
is in the form that suits it best; what it costs to write that form is nobody's time.
"""

import json
import os


def put(folder, name, text):
    with open(os.path.join(folder, name), "w", encoding="utf-8") as file:
        file.write(text)


def object_of(formula):
    return {"id": formula.id, "product": formula.product, "shares": formula.shares,
            "groups": formula.groups}


def json_lines(case, folder):
    put(folder, "formulas.jsonl",
        "".join(json.dumps(object_of(one)) + "\n" for one in case.formulas))


def compiled_python(case, folder):
    """A function with every rule in it, as straight code; its bytes are compiled before."""
    json_lines(case, folder)
    lines = ["def check(formula):", "    share = formula['shares'].get", "    found = 0"]
    for rule in case.rules:
        if rule.kind == "limit":
            lines.append(f"    if share('{rule.a}', 0.0) > {rule.high}: found += 1")
        elif rule.kind == "ratio":
            lines += [f"    a = share('{rule.a}', 0.0)", f"    b = share('{rule.b}', 0.0)",
                      f"    if a > 0 and b > 0 and not {rule.low} <= a / b <= {rule.high}: found += 1"]
        else:
            lines.append(f"    if formula['product'] == '{rule.product}' and "
                         f"formula['groups']['{rule.a}'] > {rule.high}: found += 1")
    put(folder, "compiled_rules.py", "\n".join([*lines, "    return found", ""]))
    put(folder, "run_rules.py",
        "import json\nfrom compiled_rules import check\n"
        "with open('formulas.jsonl', encoding='utf-8') as file:\n"
        "    print(sum(check(json.loads(line)) for line in file))\n")
    return ["/usr/bin/python3", "run_rules.py"]


def sqlite(case, folder):
    """Rules and shares as tables, the check as one join."""
    sql = ["PRAGMA journal_mode = OFF;", "PRAGMA synchronous = OFF;",
           "CREATE TABLE formula (id TEXT PRIMARY KEY, product TEXT) WITHOUT ROWID;",
           "CREATE TABLE share (formula TEXT, name TEXT, value REAL, PRIMARY KEY (formula, name))"
           " WITHOUT ROWID;",
           "CREATE TABLE at_most (name TEXT, high REAL);",
           "CREATE TABLE ratio (a TEXT, b TEXT, low REAL, high REAL);",
           "CREATE TABLE of_group (product TEXT, name TEXT, high REAL);", "BEGIN;"]
    for one in case.formulas:
        sql.append(f"INSERT INTO formula VALUES ('{one.id}', '{one.product}');")
        rows = [*one.shares.items(), *one.groups.items()]
        sql.append("INSERT INTO share VALUES " +
                   ", ".join(f"('{one.id}', '{name}', {value})" for name, value in rows) + ";")
    for rule in case.rules:
        if rule.kind == "limit":
            sql.append(f"INSERT INTO at_most VALUES ('{rule.a}', {rule.high});")
        elif rule.kind == "ratio":
            sql.append(f"INSERT INTO ratio VALUES ('{rule.a}', '{rule.b}', {rule.low}, {rule.high});")
        else:
            sql.append(f"INSERT INTO of_group VALUES ('{rule.product}', '{rule.a}', {rule.high});")
    sql += ["COMMIT;", "CREATE INDEX by_name ON share (name, value);",
            "SELECT (SELECT count(*) FROM at_most JOIN share USING (name)"
            " WHERE value > high)"
            " + (SELECT count(*) FROM ratio JOIN share x ON x.name = a"
            " JOIN share y ON y.formula = x.formula AND y.name = b"
            " WHERE x.value > 0 AND y.value > 0"
            " AND (x.value / y.value < low OR x.value / y.value > ratio.high))"
            " + (SELECT count(*) FROM of_group JOIN formula USING (product)"
            " JOIN share ON share.formula = formula.id AND share.name = of_group.name"
            " WHERE value > high);"]
    put(folder, "rules.sql", "\n".join(sql) + "\n")
    return ["sh", "-c", "sqlite3 :memory: < rules.sql"]


def clips(case, folder):
    """A production for each rule over facts of shares."""
    lines = ["(deftemplate formula (slot id) (slot product))",
             "(deftemplate share (slot formula) (slot name) (slot value))",
             "(defglobal ?*found* = 0)"]
    more = "=> (bind ?*found* (+ ?*found* 1)))"
    for rule in case.rules:
        if rule.kind == "limit":
            when = f"(share (name {rule.a}) (value ?v&:(> ?v {rule.high})))"
        elif rule.kind == "ratio":
            when = (f"(share (formula ?f) (name {rule.a}) (value ?a&:(> ?a 0)))"
                    f" (share (formula ?f) (name {rule.b}) (value ?b&:(> ?b 0)))"
                    f" (test (or (< (/ ?a ?b) {rule.low}) (> (/ ?a ?b) {rule.high})))")
        else:
            when = (f"(formula (id ?f) (product {rule.product}))"
                    f" (share (formula ?f) (name {rule.a}) (value ?v&:(> ?v {rule.high})))")
        lines.append(f"(defrule {rule.id} {when} {more}")
    put(folder, "rules.clp", "\n".join(lines) + "\n")
    facts = []
    for one in case.formulas:
        facts.append(f"(formula (id {one.id}) (product {one.product}))")
        for name, value in [*one.shares.items(), *one.groups.items()]:
            facts.append(f"(share (formula {one.id}) (name {name}) (value {value}))")
    put(folder, "facts.clp", "\n".join(facts) + "\n")
    put(folder, "run.clp", '(load "rules.clp")\n(reset)\n(load-facts "facts.clp")\n(run)\n'
        "(printout t ?*found* crlf)\n(exit)\n")
    return ["clips", "-f2", "run.clp"]


def prolog(case, folder):
    """A clause for each rule over facts of shares."""
    lines = [":- initialization(main).",
             "has(Formula, Name, Value) :- share(Formula, Name, Value), Value > 0."]
    for rule in case.rules:
        if rule.kind == "limit":
            body = f"share(F, {rule.a}, V), V > {rule.high}"
        elif rule.kind == "ratio":
            body = (f"has(F, {rule.a}, A), has(F, {rule.b}, B), R is A / B,"
                    f" (R < {rule.low} ; R > {rule.high})")
        else:
            body = f"product(F, {rule.product}), share(F, {rule.a}, V), V > {rule.high}"
        lines.append(f"broken(F, '{rule.id}') :- {body}.")
    lines += ["main :- aggregate_all(count, (formula(F), broken(F, _)), Found),"
              " format('~d~n', [Found]), halt.",
              ":- discontiguous formula/1, product/2, share/3."]
    facts = [f"formula({one.id})." for one in case.formulas]
    facts += [f"product({one.id}, {one.product})." for one in case.formulas]
    for one in case.formulas:
        for name, value in [*one.shares.items(), *one.groups.items()]:
            facts.append(f"share({one.id}, {name}, {float(value)}).")
    put(folder, "rules.pl", "\n".join([*lines, *facts]) + "\n")
    return ["swipl", "-q", "rules.pl"]


def jq(case, folder):
    """One expression that adds up all rules."""
    json_lines(case, folder)
    terms = []
    for rule in case.rules:
        if rule.kind == "limit":
            test = f"($s.{rule.a} // 0) > {rule.high}"
        elif rule.kind == "ratio":
            test = (f"(($s.{rule.a} // 0) as $a | ($s.{rule.b} // 0) as $b | $a > 0 and $b > 0 and"
                    f" (($a / $b) < {rule.low} or ($a / $b) > {rule.high}))")
        else:
            test = f'.product == "{rule.product}" and .groups.{rule.a} > {rule.high}'
        terms.append(f"(if {test} then 1 else 0 end)")
    put(folder, "rules.jq", "reduce inputs as $f (0; . + ($f | .shares as $s | " +
        " + ".join(terms) + "))\n")
    return ["jq", "-n", "-f", "rules.jq", "formulas.jsonl"]


def javascript(case, folder):
    """An expression for each rule, compiled by the engine when the process starts."""
    json_lines(case, folder)
    tests = []
    for rule in case.rules:
        if rule.kind == "limit":
            tests.append(f"(f.shares.{rule.a} ?? 0) > {rule.high}")
        elif rule.kind == "ratio":
            a, b = f"(f.shares.{rule.a} ?? 0)", f"(f.shares.{rule.b} ?? 0)"
            tests.append(f"{a} > 0 && {b} > 0 && !({rule.low} <= {a} / {b} && "
                         f"{a} / {b} <= {rule.high})")
        else:
            tests.append(f"f.product === '{rule.product}' && f.groups.{rule.a} > {rule.high}")
    put(folder, "rules.json", json.dumps(tests))
    put(folder, "run.mjs",
        "import { readFileSync } from 'node:fs';\n"
        "const rules = JSON.parse(readFileSync('rules.json', 'utf8'))"
        ".map((test) => new Function('f', `return ${test}`));\n"
        "let found = 0;\n"
        "for (const line of readFileSync('formulas.jsonl', 'utf8').trimEnd().split('\\n')) {\n"
        "  const formula = JSON.parse(line);\n"
        "  for (const broken of rules) if (broken(formula)) ++found;\n"
        "}\nconsole.log(found);\n")
    return ["node", "run.mjs"]
