# SPDX-License-Identifier: GPL-3.0-or-later
"""What the tests of the command line share: running it, and printing TAP."""
import csv
import json
import os
import pathlib
import subprocess
import sys

PROGRAM = sys.argv[1]
TESTS = pathlib.Path(__file__).resolve().parent.parent
TOP = TESTS.parent
DEMOS = TOP / "data" / "demos"
REFERENCE = TESTS / "reference"

# The exit statuses that the manual promises.
FINE, FAULT, USAGE, IO = range(4)


def run(*arguments, **how):
    """Runs the program; a run that is killed by a signal or hangs fails loudly."""
    how.setdefault("capture_output", True)
    how.setdefault("timeout", 60)
    if "input" not in how:
        how.setdefault("stdin", subprocess.DEVNULL)
    done = subprocess.run([PROGRAM, *map(str, arguments)], **how)
    if done.returncode < 0:
        raise AssertionError(f"killed by signal {-done.returncode}: {arguments}")
    return done


def run_json(*arguments, **how):
    done = run(*arguments, "--json", **how)
    if done.returncode != FINE or done.stderr:
        raise AssertionError(f"status {done.returncode}, {done.stderr.decode()!r}: {arguments}")
    return strict_json(done.stdout)


def strict_json(text):
    """Python's reader takes NaN and repeated members; JSON knows neither."""

    def refuse(word):
        raise ValueError(f"{word} is no JSON")

    def once(pairs):
        if len({name for name, _ in pairs}) != len(pairs):
            raise ValueError("a member is there twice")
        return dict(pairs)

    return json.loads(text.decode("utf-8"), parse_constant=refuse, object_pairs_hook=once)


def rows(name):
    """A published table of tests/reference."""
    with open(REFERENCE / name, newline="", encoding="utf-8") as table:
        yield from csv.DictReader(table)


def near(got, wanted, tolerance):
    return abs(got - wanted) <= tolerance


def environment(**changes):
    return {**os.environ, **changes}


class Tap:
    """Collects what is said of each test and prints it; a test that raises has failed."""

    def __init__(self):
        self.tests = []

    def test(self, function):
        self.tests.append((function.__name__.replace("_", " "), function))
        return function

    def add(self, name, function):
        self.tests.append((name, function))

    def main(self):
        failed = 0
        print(f"1..{len(self.tests)}", flush=True)
        for number, (name, function) in enumerate(self.tests, 1):
            try:
                function()
                print(f"ok {number} {name}", flush=True)
            except Skip as reason:
                print(f"ok {number} {name} # SKIP {reason}", flush=True)
            except Exception as fault:  # pylint: disable=broad-except
                failed += 1
                print(f"not ok {number} {name}")
                for line in (f"{type(fault).__name__}: {fault}").splitlines():
                    print(f"# {line}", flush=True)
        sys.exit(bool(failed))


class Skip(Exception):
    """Why a test could not be made here."""


def check(condition, *what):
    if not condition:
        raise AssertionError(" ".join(map(str, what)))
