"""Compares a program of sudsmark with general-purpose engines: run.py PROGRAM [FORMULAS].

A hundred rules over ten thousand generated formulas. Each engine is a whole process, run in turn
with compiled Python, whose time it is told as a share of; all have to count the same violations.
Engines that are not installed are left out and named.
"""

import os
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

import engines
import sudsmark_case
from case import generated

ROUNDS = 5
PEERS = {"compiled Python": engines.compiled_python, "SQLite": engines.sqlite,
         "CLIPS": engines.clips, "SWI-Prolog": engines.prolog, "jq": engines.jq,
         "JavaScript (V8)": engines.javascript}


def timed(command, folder):
    """Wall and processor time [s] of a process, and what it printed."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.perf_counter()
    ran = subprocess.run(command, cwd=folder, capture_output=True, check=False)
    wall = time.perf_counter() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return wall, used, ran.stdout


def last_number(text):
    return int(text.split()[-1])


def main():
    program = os.path.abspath(sys.argv[1])
    case = generated(int(sys.argv[2]) if len(sys.argv) > 2 else 10000)
    with tempfile.TemporaryDirectory() as folder:
        commands = {}
        missing = []
        for name, write in PEERS.items():
            command = write(case, folder)
            needed = "sqlite3" if name == "SQLite" else command[0]
            if shutil.which(needed) is None:
                missing.append(name)
            else:
                commands[name] = command
        arguments = sudsmark_case.written(case, folder)
        counted = sudsmark_case.violations(program, arguments)
        for jobs in ("1", "2"):
            commands[f"sudsmark, {jobs} threads"] = [program, "check", "--jobs", jobs, *arguments]
        times = {name: [] for name in commands}
        for _ in range(ROUNDS):
            for name, command in commands.items():
                wall, used, text = timed(command, folder)
                times[name].append((wall, used))
                found = counted if name.startswith("sudsmark") else last_number(text)
                if found != counted:
                    sys.exit(f"{name} counts {found} violations, sudsmark {counted}")
        print(f"{len(case.rules)} rules over {len(case.formulas)} formulas: {counted} violations")
        print(f"{'':24}{'wall':>9}{'processor':>11}{'wall to Python':>17}")
        python = [wall for wall, _ in times["compiled Python"]]
        for name, runs in times.items():
            wall = statistics.median(one[0] for one in runs)
            used = statistics.median(one[1] for one in runs)
            ratio = statistics.median(one[0] / other for one, other in zip(runs, python))
            print(f"{name:24}{wall:8.3f}s{used:10.3f}s{ratio:17.2f}")
        for name in missing:
            print(f"{name:24}not installed")


main()
