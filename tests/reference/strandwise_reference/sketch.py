# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads a .colourway file as its published schema says, with the schema's defaults."""
import json
import pathlib
from types import SimpleNamespace

SCHEMA = pathlib.Path(__file__).resolve().parents[3] / "data" / "colourway.schema.json"


class Sketch(SimpleNamespace):
    """Members by their names in the file; numbers in the file's units."""

    def dye(self, ident):
        return next(dye for dye in self.dyes if dye.id == ident)

    @property
    def lay_length_cm(self):
        return self.reel.circumference_cm / self.lay.runs

    @property
    def lay_width_cm(self):
        return self.lay.width_cm * self.lay.skeins


def read(path):
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    data = json.loads(pathlib.Path(path).read_text(encoding="utf-8"))
    sketch = _filled(schema, data, Sketch)
    sketch.dyes = [_filled(schema["$defs"]["dye"], dye) for dye in data.get("dyes", [])]
    sketch.steps = [_filled(_step_schema(schema, step["kind"]), step) for step in data.get("steps", [])]
    return sketch


def is_pour(step):
    return step.kind in ("band", "splotch", "speckle")


def _step_schema(schema, kind):
    """What a step of that kind may hold: one of the schema's conditions."""
    step = schema["$defs"]["step"]
    for clause in step["allOf"]:
        if clause["if"]["properties"]["kind"]["const"] == kind:
            return {"properties": {**step["properties"], **clause["then"]["properties"]}}
    raise ValueError(f"the schema has no step of kind {kind}")


def _filled(schema, data, record=SimpleNamespace):
    members = {}
    for name, member in schema["properties"].items():
        if member.get("type") == "object" and "properties" in member:
            members[name] = _filled(member, data.get(name, {}))
        elif name in data:
            members[name] = data[name]
        elif "default" in member:
            members[name] = member["default"]
    return record(**members)
