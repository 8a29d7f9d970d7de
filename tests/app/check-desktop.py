#!/usr/bin/env python3
"""What the desktop is told agrees with itself and with the program. Prints TAP."""
import configparser
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET

TOP, BUILD = map(pathlib.Path, sys.argv[1:3])
APP_ID = "io.strandwise.Strandwise"
MIME = "application/x-colourway+json"
APP = TOP / "src" / "app"
ICONS = TOP / "data" / "icons"


def one_media_type():
    """The MIME type is spelled the same wherever it stands."""
    for path in ["data/%s.desktop.in" % APP_ID, "data/%s.metainfo.xml.in" % APP_ID, "data/%s.mime.xml.in" % APP_ID,
                 "data/strandwise.thumbnailer.in", "src/app/window/sw-window-actions.c"]:
        if MIME not in (TOP / path).read_text():
            yield f"{path} does not name {MIME}"
    if not (ICONS / "scalable/mimetypes" / (MIME.replace("/", "-") + ".svg")).exists():
        yield f"there is no icon for {MIME}"


def resources_complete():
    """Every template and icon is built in, and nothing is named that is not there."""
    tree = ET.parse(APP / "strandwise.gresource.xml")
    named = {entry.text for entry in tree.iter("file")}
    for path in sorted(APP.rglob("*.ui")):
        if str(path.relative_to(APP)) not in named:
            yield f"{path.name} is not in the resources"
    for path in sorted((ICONS / "scalable/actions").glob("*.svg")):
        if str(path.relative_to(ICONS)) not in named:
            yield f"{path.name} is not in the resources"
    for name in sorted(named):
        if not (APP / name).exists() and not (ICONS / name).exists():
            yield f"{name} is in the resources but nowhere else"
    demos = {entry.text for entry in ET.parse(APP / "strandwise-demos.gresource.xml").iter("file")}
    there = {path.name for path in (TOP / "data/demos").glob("*.colourway")}
    for name in sorted(demos ^ there):
        yield f"{name} is either a demo or a resource, but not both"


def own_icons_exist():
    """An icon of ours that a template or a source names is drawn; each kind of step has one."""
    words = "".join(path.read_text() for path in sorted(APP.rglob("*.ui")) + sorted(APP.rglob("*.c")))
    names = set(re.findall(r"strandwise-[a-z-]+-symbolic", words))
    names |= {f"strandwise-{kind}-symbolic" for kind in ["band", "splotch", "speckle", "rest", "flip", "acid", "water", "set"]}
    for name in sorted(names):
        if not (ICONS / "scalable/actions" / f"{name}.svg").exists():
            yield f"{name} is not drawn"


def symbolic_icons_recolour():
    """GTK recolours the fill of paths, circles and rectangles: symbolic icons have nothing else."""
    for path in sorted(ICONS.rglob("*-symbolic.svg")):
        root = ET.parse(path).getroot()
        if (root.get("width"), root.get("height"), root.get("viewBox")) != ("16", "16", "0 0 16 16"):
            yield f"{path.name} is not drawn on 16 x 16"
        for element in list(root.iter())[1:]:
            kind = element.tag.split("}")[1]
            if kind not in {"path", "circle", "rect"} or "stroke" in element.attrib:
                yield f"{path.name} has a {kind} with {sorted(element.attrib)}"


def actions_of_windows():
    """Every action that a template or the shortcuts name is there."""
    sources = "".join(path.read_text() for path in sorted(APP.rglob("*.c")))
    there = set(re.findall(r'\{ "([a-z-]+)", [a-z_]+_cb', sources)) | {"place", "units", "appearance", "show-help-overlay", "close"}
    for path in sorted(APP.rglob("*.ui")) + [APP / "parts/sw-notice.c", APP / "window/sw-application-actions.c"]:
        for scope, name in re.findall(r'["(>](app|win|window)\.([a-z-]+)', path.read_text()):
            if name not in there:
                yield f"{path.name} names {scope}.{name}, which nobody does"


def thumbnailer_works():
    """The command of the thumbnailer draws a demo at the size asked for."""
    entry = configparser.ConfigParser(interpolation=None)
    entry.optionxform = str
    entry.read(BUILD / "data" / "strandwise.thumbnailer")
    command = entry["Thumbnailer Entry"]["Exec"].split()
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "thumb.png"
        values = {"%i": str(TOP / "data/demos/rock-pool.colourway"), "%o": str(out), "%sx%s": "128x128"}
        command = [str(BUILD / "src/cli/strandwise-cli")] + [values.get(word, word) for word in command[1:]]
        done = subprocess.run(command, capture_output=True, text=True)
        if done.returncode != 0:
            yield f"{' '.join(command)}: {done.stderr.strip()}"
        elif out.read_bytes()[:8] != b"\x89PNG\r\n\x1a\n" or out.read_bytes()[16:24] != b"\0\0\0\x80\0\0\0\x80":
            yield "the thumbnail is no PNG of 128 x 128"


CHECKS = [one_media_type, resources_complete, own_icons_exist, symbolic_icons_recolour, actions_of_windows, thumbnailer_works]

print(f"1..{len(CHECKS)}")
bad = 0
for number, check in enumerate(CHECKS, 1):
    found = list(check())
    bad += bool(found)
    print(f"{'not ok' if found else 'ok'} {number} {check.__doc__}")
    for line in found:
        print(f"# {line}")
sys.exit(bool(bad))
