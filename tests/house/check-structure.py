#!/usr/bin/env python3
"""The rules of the house, held against the files themselves.

Arrows between the rooms of src/ point only downward, nothing below app/
includes GTK, a file is about one idea, and every file with words for people
is known to the translators. Prints TAP.
"""
import pathlib
import re
import sys

TOP = pathlib.Path(sys.argv[1])
ROOMS = ["sketch", "colour", "bath", "skein", "cloth", "sheet", "forecast", "draw", "files", "cli", "app"]
# The floors of the window: what is known without a display, widgets shared by the places, the places, what holds them.
FLOORS = ["desk", "parts", "cloth", "pan", "sheet", "day", "listing", "window"]
PLACES_KNOW = {"pan": {"cloth"}}  # beside its drawing the pan shows the cloth
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "LICENSE", "meson.build", "meson_options.txt", "src", "data", "tests", "po", "docs"}
LONGEST = 600


def sources():
    for path in sorted((TOP / "src").rglob("*.[ch]")):
        yield path, path.relative_to(TOP / "src")


def upward_includes():
    for path, name in sources():
        room = name.parts[0]
        for number, line in enumerate(path.read_text().splitlines(), 1):
            include = re.match(r'\s*#\s*include\s+["<]([a-z]+)/', line)
            target = include.group(1) if include else None
            if target in ROOMS and ROOMS.index(target) > ROOMS.index(room):
                yield f"{name}:{number} includes {target}/, which is above {room}/"


def upward_includes_of_the_window():
    everywhere = {"desk", "parts"}
    for path, name in sources():
        if name.parts[0] != "app":
            continue
        floor = name.parts[1]
        if floor not in FLOORS:
            yield f"{name} stands on no floor of the window"
            continue
        known = {"desk": {"desk"}, "parts": everywhere, "window": set(FLOORS)}.get(floor, everywhere | {floor} | PLACES_KNOW.get(floor, set()))
        for number, line in enumerate(path.read_text().splitlines(), 1):
            include = re.match(r'\s*#\s*include\s+"app/([a-z]+)/', line)
            if include and include.group(1) not in known:
                yield f"{name}:{number} includes app/{include.group(1)}/, which {floor}/ may not know"


def private_includes():
    for path, name in sources():
        folder = str(name.parent)
        for number, line in enumerate(path.read_text().splitlines(), 1):
            include = re.match(r'\s*#\s*include\s+"([a-z/]+)/[^"/]*-private\.h"', line)
            if include and include.group(1) != folder:
                yield f"{name}:{number} includes a private header of {include.group(1)}/"


def toolkit_below_app():
    for path, name in sources():
        if (name.parts[0] != "app" or name.parts[1] == "desk") and re.search(r"#\s*include\s+<(gtk|gdk|gsk|adwaita)", path.read_text()):
            yield f"{name} includes the toolkit"


def unknown_rooms():
    for entry in sorted((TOP / "src").iterdir()):
        if entry.is_dir() and entry.name not in ROOMS:
            yield f"src/{entry.name} is no room of the house"


def licence_lines():
    for folder in ("src", "tests"):
        for path in sorted((TOP / folder).rglob("*.[ch]")):
            if not path.read_text().startswith("/* SPDX-License-Identifier: GPL-3.0-or-later */"):
                yield f"{path.relative_to(TOP)} does not begin with the licence line"


def long_files():
    for folder in ("src", "tests"):
        for path in sorted((TOP / folder).rglob("*.[ch]")):
            lines = len(path.read_text().splitlines())
            if lines > LONGEST:
                yield f"{path.relative_to(TOP)} has {lines} lines: two ideas?"


def untranslated_sources():
    known = set((TOP / "po" / "POTFILES.in").read_text().split())
    marks = {
        ".c": r'\b(_|N_|C_|NC_|ngettext|g_dpgettext2)\s*\(\s*"',
        ".h": r'\b(_|N_|C_|NC_|ngettext|g_dpgettext2)\s*\(\s*"',
        ".ui": r'\btranslatable="(yes|true|1)"',
    }
    for path in sorted((TOP / "src").rglob("*")):
        name = str(path.relative_to(TOP))
        if path.suffix not in marks or name in known:
            continue
        if re.search(marks[path.suffix], re.sub(r"/\*.*?\*/", "", path.read_text(), flags=re.DOTALL)):
            yield f"{name} has words for people and is not in po/POTFILES.in"
    for path in sorted((TOP / "data").iterdir()):
        name = str(path.relative_to(TOP))
        if re.search(r"\.(desktop|xml)\.in$|\.gschema\.xml$", name) and name not in known:
            yield f"{name} has words for people and is not in po/POTFILES.in"
    for entry in sorted(known):
        if not (TOP / entry).exists():
            yield f"po/POTFILES.in names {entry}, which is not there"


# Spelt in two, so that this line is not one of them.
OPEN_END = re.compile(r"\b(TO" r"DO|FIX" r"ME|XX" r"X|HA" r"CK)\b")


def open_ends():
    for folder in ("src", "tests", "data", "docs"):
        for path in sorted((TOP / folder).rglob("*")):
            if path.suffix in {".c", ".h", ".py", ".md", ".ui", ".build", ".sh"}:
                for number, line in enumerate(path.read_text().splitlines(), 1):
                    if OPEN_END.search(line):
                        yield f"{path.relative_to(TOP)}:{number} was left open"


def stray_top_level():
    for entry in sorted(TOP.iterdir()):
        if not entry.name.startswith(".") and not entry.name.startswith("build") and entry.name != "out" and entry.name not in TOP_LEVEL:
            yield f"{entry.name} does not belong at the top"


CHECKS = [
    ("arrows between rooms point downward", upward_includes),
    ("arrows between the window's floors point downward", upward_includes_of_the_window),
    ("private headers stay in their room", private_includes),
    ("nothing below the window sees the toolkit", toolkit_below_app),
    ("every folder of src is a room", unknown_rooms),
    ("every file names its licence", licence_lines),
    ("files hold one idea", long_files),
    ("translators know every file with words", untranslated_sources),
    ("nothing was left open", open_ends),
    ("the top level is as agreed", stray_top_level),
]

print(f"1..{len(CHECKS)}")
bad = 0
for number, (title, check) in enumerate(CHECKS, 1):
    found = list(check())
    bad += bool(found)
    print(f"{'not ok' if found else 'ok'} {number} {title}")
    for line in found:
        print(f"# {line}")
sys.exit(bool(bad))
