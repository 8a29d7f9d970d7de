#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Holds the reader against an independent judge: python-jsonschema with data/colourway.schema.json.

Every demo and every good oddity must be valid. Every exhibit of the museum that is JSON but
refused for a member must be invalid, unless it is refused for something that no schema can say.
"""
import json
import pathlib
import re
import sys

from jsonschema import Draft202012Validator

# What a schema cannot say: numbers beyond JSON's use of doubles, ids that lead nowhere or are
# used twice, members given twice, and what several members must satisfy together.
BEYOND = {
    'band-slants-too-far', 'id-of-a-dye-in-steps', 'id-twice-in-dyes', 'id-twice-in-steps',
    'knits-a-missing-skein', 'lay-too-long', 'lay-too-wide', 'member-twice', 'member-twice-escaped',
    'part-twice', 'pour-of-a-missing-dye', 'pour-of-a-step', 'pour-of-itself', 'specks-too-many',
    'splotch-without-length', 'starts-behind-the-end', 'strand-too-long', 'unknown-member-twice',
    'unknown-member-twice-with-a-long-name', 'unknown-member-twice-with-control-characters',
    'whole-number-too-large-in-unknown-member',
}


def usual_values(properties):
    """Name of each number or word a member has by default."""
    return {name: str(member["default"]).lower() for name, member in properties.items()
            if isinstance(member.get("default"), (int, float, str)) and member["default"] != ""}


def page_faults(schema, page):
    """The usual values of docs/file-format.md that are not the schema's; steps differ by their kind and are left out."""
    records = {name: part for name, part in schema["properties"].items() if "properties" in part}
    records.update(dyes=schema["$defs"]["dye"], batches=schema["$defs"]["batch"])
    found, record = [], None
    for line in page.splitlines():
        heading = re.match(r"(?:Each of )?`(\w+)`", line)
        if heading:
            record = records.get(heading.group(1))
        if record is None or not line.startswith("| `"):
            continue
        cells = [cell.strip() for cell in line.split("|")[1:-1]]
        wanted = usual_values(record["properties"])
        for name in re.findall(r"`(\w+)`", cells[0]):
            if name in wanted and wanted[name].removesuffix(".0") not in re.split(r"[ ,`]+", cells[2].lower()):
                found.append(f"docs/file-format.md: {name} is usually {wanted[name]}, not {cells[2]}")
    return found


def main(schema_path, demos, tests):
    schema = json.loads(pathlib.Path(schema_path).read_text(encoding='utf-8'))
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    faults = []
    counts = {'good': 0, 'bad': 0}

    for path in sorted([*pathlib.Path(demos).glob('*.colourway'), *pathlib.Path(tests, 'good').glob('*.colourway')]):
        counts['good'] += 1
        document = json.loads(path.read_text(encoding='utf-8-sig'))
        faults += [f'{path.name} should be valid: {error.json_path}: {error.message}' for error in validator.iter_errors(document)]
    for path in sorted(pathlib.Path(tests, 'bad').glob('*.txt')):
        if path.read_text(encoding='utf-8').split('\n')[0] not in ('member', 'version'):
            continue
        counts['bad'] += 1
        document = json.loads(path.with_suffix('.colourway').read_text(encoding='utf-8'))
        valid = validator.is_valid(document)
        if valid and path.stem not in BEYOND:
            faults.append(f'{path.stem} should be invalid')
        if not valid and path.stem in BEYOND:
            faults.append(f'{path.stem} is invalid after all: take it out of BEYOND')
    page = pathlib.Path(schema_path).parents[1] / 'docs' / 'file-format.md'
    faults += page_faults(schema, page.read_text(encoding='utf-8'))
    print('\n'.join(faults))
    print(f"{counts['good']} good files, {counts['bad']} bad ones, {len(faults)} faults")
    return 1 if faults or counts['good'] < 10 or counts['bad'] < 30 else 0


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
