# SPDX-License-Identifier: GPL-3.0-or-later
"""Runs the lines of cases.txt: see there."""
import pathlib
import shlex
import subprocess

from harness import DEMOS, FINE, REFERENCE, Tap, check, near, run, strict_json

HERE = pathlib.Path(__file__).resolve().parent
PLACES = {"demos": DEMOS, "reference": REFERENCE, "cli": HERE}


def read_cases():
    for line in (HERE / "cases.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            name, status, arguments, demands = (part.strip() for part in line.split(" | "))
            yield name, int(status), arguments, [demand.strip() for demand in demands.split(";")]


def look_up(value, path):
    for step in path.split("."):
        value = value[int(step)] if isinstance(value, list) else value[step]
    return value


def check_demand(demand, done):
    for word, text in (("out:", done.stdout), ("err:", done.stderr)):
        if demand.startswith(word):
            wanted = demand[len(word):].strip()
            check(wanted in text.decode("utf-8"), f"{wanted!r} is not in {text.decode('utf-8')!r}")
            return
    if " ~ " in demand:
        path, rest = demand.split(" ~ ")
        wanted, tolerance = map(float, rest.split("+-"))
        got = look_up(strict_json(done.stdout), path.strip())
        check(near(got, wanted, tolerance), f"{path} is {got}, not {wanted}")
    else:
        path, wanted = (part.strip() for part in demand.split(" = "))
        got = look_up(strict_json(done.stdout), path)
        check(str(got) == wanted, f"{path} is {got!r}, not {wanted!r}")


def check_sentences(arguments, done):
    """One line for each thing at fault, by the name of the program."""
    lines = done.stderr.decode("utf-8").splitlines()
    if done.returncode == FINE:
        check(not lines, "standard error holds", lines)
        return
    checking = arguments[:1] == ["check"]
    check(len(set(lines)) == len(lines), "said twice:", lines)
    check(lines and all(line.startswith("strandwise-cli") and ": " in line for line in lines), "no sentence:", lines)
    check(checking or len(lines) == 1, "more than one line:", lines)
    check(checking or not done.stdout, "standard output holds", done.stdout)


def run_case(status, text, demands):
    arguments = shlex.split(text.format(**PLACES))
    source = next((word[1:] for word in arguments if word.startswith("<")), "/dev/null")
    arguments = [word for word in arguments if not word.startswith("<")]
    with open(source, "rb") as given:
        done = run(*arguments, stdin=given, stdout=subprocess.PIPE, stderr=subprocess.PIPE, capture_output=False)
    check(done.returncode == status, f"status {done.returncode}, not {status}: {done.stderr.decode('utf-8')}")
    check_sentences(arguments, done)
    for demand in demands:
        check_demand(demand, done)


tap = Tap()
for case in read_cases():
    tap.add(case[0], lambda case=case: run_case(*case[1:]))
tap.main()
