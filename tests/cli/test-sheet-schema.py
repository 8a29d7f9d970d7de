# SPDX-License-Identifier: GPL-3.0-or-later
"""The dye sheet's JSON against data/dye-sheet.schema.json, by an independent judge: python-jsonschema."""
import copy
import json

from jsonschema import Draft202012Validator

from harness import DEMOS, FINE, REFERENCE, TOP, Tap, check, run, strict_json

tap = Tap()
SCHEMA = json.loads((TOP / "data" / "dye-sheet.schema.json").read_text(encoding="utf-8"))
JUDGE = Draft202012Validator(SCHEMA)
COLOURWAYS = [*sorted(DEMOS.glob("*.colourway")), REFERENCE / "everything.colourway"]


def sheet_of(file, *options):
    done = run("sheet", file, "--format", "json", *options)
    check(done.returncode == FINE and not done.stderr, file, done.stderr)
    return strict_json(done.stdout)


@tap.test
def the_schema_is_one():
    Draft202012Validator.check_schema(SCHEMA)


@tap.test
def every_sheet_follows_it():
    check(len(COLOURWAYS) >= 8, COLOURWAYS)
    for file in COLOURWAYS:
        faults = [f"{error.json_path}: {error.message}" for error in JUDGE.iter_errors(sheet_of(file, "--skeins", 5, "--pans", 2))]
        check(not faults, file.name, faults)


def objects_in(value):
    """Every object, however deep."""
    if isinstance(value, dict):
        yield value
        for member in value.values():
            yield from objects_in(member)
    elif isinstance(value, list):
        for element in value:
            yield from objects_in(element)


@tap.test
def a_member_more_or_of_another_kind_does_not():
    sheet = sheet_of(DEMOS / "rock-pool.colourway")
    n = len(list(objects_in(sheet)))
    check(n > 40, n)
    for i in range(n):
        spoilt = copy.deepcopy(sheet)
        list(objects_in(spoilt))[i]["unheard_of"] = 1
        check(not JUDGE.is_valid(spoilt), "object", i, "takes any member")
        spoilt = copy.deepcopy(sheet)
        first = next(iter(objects := list(objects_in(spoilt))[i]))
        objects[first] = [None]
        check(not JUDGE.is_valid(spoilt), "object", i, first, "may be anything")


tap.main()
