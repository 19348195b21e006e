"""Validates JSON and SARIF of every fixture against their schemas.

    validate_reports.py PROGRAM SOURCE_FOLDER SARIF_SCHEMA

Exit status 77 where the JSON Schema library or the schema of SARIF is not installed.
"""

import json
import os
import pathlib
import subprocess
import sys
import tempfile

try:
    from jsonschema import Draft7Validator, RefResolver
except ImportError:
    print("skipped: python3-jsonschema is not installed")
    sys.exit(77)

program, source, sarif_schema = sys.argv[1:4]
sarif_schema = os.environ.get("SUDSMARK_SARIF_SCHEMA", sarif_schema)
if not os.path.exists(sarif_schema):
    print("skipped: the SARIF schema is not installed (npm ci in tests/browser)")
    sys.exit(77)

GROUPS = ["fixtures/formulas", "fixtures/faulty", "fixtures/malformed", "tests/report/hostile",
          "tests/golden"]
DAY = ["--on", "2026-11-25"]
# Bytes that a formula of the fixtures takes in a report of them all: what makes 3 MB and 1 MB of 274.
MOST_BYTES = {"json": 10945, "sarif": 3645}


def validator(path):
    with open(path, encoding="utf-8") as file:
        schema = json.load(file)
    Draft7Validator.check_schema(schema)
    # schemas beside it are called by the names of their files
    return Draft7Validator(schema, resolver=RefResolver(pathlib.Path(path).resolve().as_uri(),
                                                        schema))


def run(*arguments, statuses=(0, 1, 2)):
    done = subprocess.run([program, *arguments], cwd=source, capture_output=True, check=False)
    if done.returncode not in statuses:
        sys.exit(f"{arguments} ended with {done.returncode}: {done.stderr.decode()}")
    return done.stdout


def formulas():
    for group in GROUPS:
        for name in sorted(os.listdir(os.path.join(source, group))):
            if name.endswith(".formula"):
                yield os.path.join(group, name)


def main():
    of_report = validator(os.path.join(source, "src/report/schema/report.schema.json"))
    of_sarif = validator(sarif_schema)
    faults = []
    count = 0

    def check(name, text, by):
        nonlocal count
        count += 1
        for error in by.iter_errors(json.loads(text)):
            where = "/".join(str(step) for step in error.absolute_path)
            faults.append(f"{name}: {where}: {error.message[:300]}")

    for path in formulas():
        check(f"{path} as json", run("check", *DAY, "--format", "json", path), of_report)
        check(f"{path} as measures", run("measure", *DAY, "--format", "json", path), of_report)
        check(f"{path} as label", run("label", *DAY, "--format", "json", path), of_report)
        check(f"{path} as sarif", run("check", *DAY, "--format", "sarif", path), of_sarif)
        gathered = run("dossier", *DAY, "--format", "json", path)
        if gathered:
            check(f"{path} as dossier", gathered, of_report)
        suggested = run("suggest", *DAY, "--format", "json", path)
        if suggested:
            check(f"{path} as suggestion", suggested, of_report)
        leeway = run("leeway", *DAY, "--format", "json", path)
        if leeway:
            check(f"{path} as leeway", leeway, of_report)
    for group in GROUPS:
        text = run("check", *DAY, "--format", "json", group)
        check(f"{group} as json", text, of_report)
        check(f"{group} as verbose json",
              run("check", *DAY, "--verbose", "--format", "json", group), of_report)
        # a line of json-lines is an item of that document
        whole = json.loads(text)
        lines = [json.loads(line) for line in
                 run("check", *DAY, "--format", "json-lines", group).splitlines()]
        read = [line for line in lines if "name" in line]
        if [dict(item, errors=[], reminder=whole["reminder"]) for item in whole["formulas"]] != read:
            faults.append(f"{group}: json-lines are not the formulas of its json")
        if sum(len(line["errors"]) for line in lines) != len(whole["errors"]):
            faults.append(f"{group}: json-lines lack errors")
        check(f"{group} as verbose sarif",
              run("check", *DAY, "--verbose", "--format", "sarif", group), of_sarif)
    fixed = run("check", *DAY, "--fixes", "--format", "sarif", "fixtures/faulty")
    check("faulty formulas as sarif with fixes", fixed, of_sarif)
    results = json.loads(fixed)["runs"][0]["results"]
    print(f"{sum('fixes' in one for one in results)} results of faulty formulas have fixes")
    whole = json.loads(run("check", *DAY, "--format", "json", "fixtures"))
    for form, most in MOST_BYTES.items():
        size = len(run("check", *DAY, "--format", form, "fixtures"))
        print(f"{form} of all fixtures: {size} bytes")
        if size > most * len(whole["formulas"]):
            faults.append(f"{form} of all fixtures: {size} bytes")
    tweak = ["--bare", "--rules", "tests/golden", "tests/golden/estuary-tweak.formula"]
    check("comparison as json", run("compare", *DAY, "--format", "json", *tweak), of_report)
    check("hostile comparison as json",
          run("compare", *DAY, "--format", "json", "tests/report/hostile/tweak.formula"), of_report)
    two = ["--line", "SLSA", "--against", "glycerin", "fixtures/formulas/fen-crumble.formula"]
    check("map of two lines as json", run("leeway", *DAY, "--format", "json", *two), of_report)
    swap = ["--swap", "sunflower oil", "fixtures/formulas/harbour-puck.formula"]
    check("substitutes as json", run("suggest", *DAY, "--format", "json", *swap), of_report)
    for topic in ("law", "emulsifier-to-oil", "sweet almond oil", "bath.ph", "course"):
        check(f"{topic} explained as json", run("explain", "--format", "json", topic), of_report)
    law = ["--bare", "--rules", "tests/golden", "tests/golden/estuary.formula"]
    with tempfile.TemporaryDirectory() as folder:
        baseline = os.path.join(folder, "baseline.json")
        run("check", *DAY, *law, "--write-baseline", baseline, statuses=(0,))
        with open(os.path.join(source, "tests/golden/estuary.formula"), encoding="utf-8") as file:
            changed = file.read().replace("3 g per kg", "1 g per kg")
        path = os.path.join(folder, "estuary.formula")
        with open(path, "w", encoding="utf-8") as file:
            file.write(changed)
        for arguments in (law, [*law, "--baseline", baseline]):
            check(f"{arguments} as sarif", run("check", *DAY, "--format", "sarif", *arguments),
                  of_sarif)
            check(f"{arguments} as json", run("check", *DAY, "--format", "json", *arguments),
                  of_report)
    for fault in faults:
        print(fault)
    print(f"{count} documents validated, {len(faults)} faults")
    sys.exit(1 if faults or count < 100 else 0)


main()
