# SPDX-License-Identifier: GPL-3.0-or-later
"""What is printed, as other programs see it: lengths measured in the rasterised template, words found in the sheet,
and a traced layout that comes back. Needs pdftoppm, pdftotext and pdfinfo."""
import json
import pathlib
import re
import shutil
import subprocess
import tempfile
import xml.etree.ElementTree as ElementTree

from harness import DEMOS, FAULT, FINE, USAGE, Skip, Tap, check, run

tap = Tap()
FOLDER = pathlib.Path(tempfile.mkdtemp())
DPI = 2400  # poppler moves thin lines to the nearest pixel: so fine that this does not count
PX_PER_MM = DPI / 25.4
PAPERS = {"a4": (210, 297), "letter": (215.9, 279.4)}
TRUE_TO = 0.1  # mm
HALF = 110

# How the template's pages are laid out, mm.
MARGIN, FOOT, OVERLAP, RULER_UP = 10, 22, 10, 19


def need(program):
    if shutil.which(program) is None:
        raise Skip(f"{program} is not here")


def make(command, demo, kind, *options):
    out = FOLDER / f"{command}-{demo}-{'-'.join(options)}.{kind}"
    done = run(command, DEMOS / f"{demo}.colourway", "-o", out, *options)
    check(done.returncode == FINE and not done.stderr, command, done.stderr)
    return out


class Raster:
    """Lines across one page, in greys."""

    def __init__(self, pdf, page, width):
        need("pdftoppm")
        self.pdf, self.page, self.width = pdf, str(page), str(round(width * PX_PER_MM))

    def line(self, y_mm):
        row = ["-x", "0", "-y", str(round(y_mm * PX_PER_MM)), "-W", self.width, "-H", "1"]
        done = subprocess.run(["pdftoppm", "-r", str(DPI), "-gray", "-f", self.page, "-l", self.page, *row, self.pdf], capture_output=True, check=True)
        head = re.match(rb"P5\s+(\d+)\s+1\s+255\s", done.stdout)
        check(head and head[1].decode() == self.width, "pdftoppm made", done.stdout[:20])
        return done.stdout[head.end():]

    def dark_runs(self, y_mm):
        """Where the dark runs along a line across the page begin and end, mm from its left."""
        line = self.line(y_mm)
        runs, start = [], None
        for x, (before, grey) in enumerate(zip(line, line[1:])):
            if (before < HALF) != (grey < HALF):
                edge = (x + 1) / PX_PER_MM
                if grey < HALF:
                    start = edge
                else:
                    runs.append((start, edge))
        return runs

    def strokes(self, y_mm):
        """Their middles."""
        return [(start + end) / 2 for start, end in self.dark_runs(y_mm)]


def pages_of(pdf):
    need("pdfinfo")
    text = subprocess.run(["pdfinfo", pdf], capture_output=True, text=True, check=True).stdout
    size = re.search(r"Page size: +([\d.]+) x ([\d.]+) pts", text)
    return int(re.search(r"Pages: +(\d+)", text)[1]), float(size[1]) / 72 * 25.4, float(size[2]) / 72 * 25.4, text


def near(got, wanted, *what):
    check(abs(got - wanted) <= TRUE_TO, *what, "is", got, "mm, not", wanted)


@tap.test
def the_check_rulers_are_true():
    for paper in PAPERS:
        pdf = make("template", "plumb-line", "pdf", "--paper", paper)
        n, width, height, _ = pages_of(pdf)
        near(min(width, height), PAPERS[paper][0], paper)
        near(max(width, height), PAPERS[paper][1], paper)
        for page in (1, n):
            raster = Raster(pdf, page, width)
            for up, length in ((3.8, 100), (-3.8, 101.6)):
                ends = [x for x in raster.strokes(height - RULER_UP - up) if x > width - MARGIN - 104]
                near(ends[-1] - ends[0], length, paper, "page", page, "ruler")


@tap.test
def pan_and_skein_are_full_size_over_all_the_pages():
    for demo in ("plumb-line", "lamplighters-walk"):
        sketch = json.loads((DEMOS / f"{demo}.colourway").read_text())
        pan, lay = 10 * sketch["lay"]["pan_length_cm"], 10 * sketch["reel"]["circumference_cm"] / sketch["lay"]["runs"]
        for paper in PAPERS:
            pdf = make("template", demo, "pdf", "--paper", paper)
            n, width, height, _ = pages_of(pdf)
            area = height - 2 * MARGIN - FOOT
            rasters = [Raster(pdf, page, width) for page in range(1, n + 1)]
            check(n > 1, demo, "has one page only")
            # Across the skein, beside the numbers: a line's outer edge is half its width beyond what it draws.
            across = [raster.dark_runs(MARGIN + area / 2 + 35) for raster in (rasters[0], rasters[-1])]
            ends = [(across[0][i][0] + line / 2, across[1][-1 - i][1] - line / 2) for i, line in ((0, 0.6), (1, 0.3))]
            # Across the upright strokes of the marks, beside their rings, where the pan's ends are strokes too.
            seams = [[x for x in raster.strokes(MARGIN + 0.12 * area + 2.9) if x > MARGIN + 1 and not any(abs(x - end) < 1 for end in ends[0])] for raster in rasters]
            offset = sum(before[-1] - after[0] for before, after in zip(seams, seams[1:]))
            near(offset + ends[0][1] - ends[0][0], pan, demo, paper, "pan")
            near(offset + ends[1][1] - ends[1][0], lay, demo, paper, "skein")


def amounts(sheet):
    """Stock of each pour as it is measured, mL."""
    return [pour["rounded_stock_ml"] for kind in sheet["pan_kinds"] for pour in kind["pours"] if not pour["dry"]]


def words_of(pdf):
    need("pdftotext")
    return subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout


@tap.test
def the_dye_sheet_has_every_amount():
    for demo in sorted(DEMOS.glob("*.colourway")):
        sheet = json.loads(make("sheet", demo.stem, "json").read_text())
        for paper, units in (("a4", "metric"), ("letter", "us")):
            pdf = make("sheet", demo.stem, "pdf", "--paper", paper, "--units", units)
            n, width, height, info = pages_of(pdf)
            near(width, PAPERS[paper][0], paper)
            near(height, PAPERS[paper][1], paper)
            check(1 <= n <= 3, demo.stem, "has", n, "pages")
            check(re.search(r"^Title: +\S", info, re.M) and re.search(r"^Tagged: +yes", info, re.M), info)
            text = words_of(pdf)
            sketch = json.loads(demo.read_text())
            check(text.count(sketch["title"]) == n, demo.stem, "title", text.count(sketch["title"]))
            for step in sketch["steps"]:
                check(step["name"].split(" ")[0] in text, demo.stem, "leaves out", step["name"])
            check(all(f"Page {page + 1} of {n}" in text for page in range(n)), "page numbers")
            for ml in amounts(sheet):
                shown = [f"{ml:g} mL"] if units == "metric" or ml < 946.352946 else [f"{round(ml / 29.5735295625, 1):g} fl oz"]  # a quart, NIST HB44
                check(any(amount in text for amount in shown), demo.stem, units, "leaves out", *shown)


@tap.test
def a_batch_changes_the_dye_sheet():
    one, many = (words_of(make("sheet", "plumb-line", "pdf", *batch)) for batch in ((), ("--skeins", "5", "--pans", "3")))
    check("1 skein" in one and "5 skeins" in many and "3 pans" in many and "in a pan with 1 skein" in many, many)


@tap.test
def the_dye_sheet_as_a_drawing_is_the_template():
    check(make("sheet", "rock-pool", "svg").read_bytes() == make("template", "rock-pool", "svg").read_bytes(), "they differ")


@tap.test
def the_same_bytes_twice():
    for command in ("sheet", "template"):
        a = make(command, "plumb-line", "pdf").read_bytes()
        check(a == make(command, "plumb-line", "pdf").read_bytes() and b"CreationDate" not in a, command)


@tap.test
def the_svg_is_in_millimetres_with_titles_for_people():
    space = "{http://www.w3.org/2000/svg}"
    sketch = json.loads((DEMOS / "lamplighters-walk.colourway").read_text())
    for units, unit in (("metric", "mL"), ("us", "fl oz")):
        root = ElementTree.parse(make("template", "lamplighters-walk", "svg", "--units", units)).getroot()
        box = [float(number) for number in root.get("viewBox").split()]
        check(root.get("width") == f"{box[2]:g}mm" and root.get("height") == f"{box[3]:g}mm", root.attrib)
        rects = {rect.get("id"): rect for rect in root.iter(space + "rect")}
        check(float(rects["pan"].get("width")) == 800 and float(rects["lay"].get("width")) == 750, "pan and lay")
        pours = [element for element in root.iter() if (element.get("id") or "").startswith("pour-")]
        check(len(pours) == sum(step["kind"] in ("band", "splotch", "speckle") for step in sketch["steps"]), len(pours))
        for pour in pours:
            check(pour.find(space + "title").text and re.search(rf"{unit}| g of", pour.find(space + "desc").text), pour.attrib)
        groups = [group.find(space + "title").text for group in root.iter(space + "g") if group.get("data-dye")]
        check(set(groups) == {dye["name"] for dye in sketch["dyes"]}, groups)


@tap.test
def a_layout_comes_back_as_it_left():
    for demo in ("lamplighters-walk", "rock-pool", "deckchair"):
        drawing = make("template", demo, "svg")
        done = run("trace", drawing, "--into", DEMOS / f"{demo}.colourway", "-o", "-")
        check(done.returncode == FINE and not done.stderr, done.stderr)
        check(json.loads(done.stdout) == json.loads((DEMOS / f"{demo}.colourway").read_text()), demo, "is another")


@tap.test
def new_shapes_become_pours():
    drawing = make("template", "plumb-line", "svg")
    traced = FOLDER / "traced.svg"
    circle = '<g fill="#00c8a0"><title>Fern</title><circle cx="400" cy="{y}" r="30"/></g></svg>'
    text = drawing.read_text()
    height = float(re.search(r'viewBox="0 0 \S+ (\S+)"', text)[1])
    traced.write_text(text.replace("</svg>", circle.format(y=height / 2)))
    done = run("trace", traced, "--into", DEMOS / "plumb-line.colourway", "-o", FOLDER / "new.colourway")
    check(done.returncode == FINE and done.stdout.decode().splitlines() == ["New: 5. Splotch of Fern", "New dyes: Fern"], done)
    sketch = json.loads((FOLDER / "new.colourway").read_text())
    pour = next(step for step in sketch["steps"] if step["kind"] == "splotch")
    check(sketch["dyes"][-1]["name"] == "Fern" and pour["dye"] == sketch["dyes"][-1]["id"], sketch["dyes"][-1])
    check(pour["width_cm"] == 6 and pour["length_cm"] == 6, pour)
    check(run("check", FOLDER / "new.colourway").returncode == FINE, "it is no colourway")


@tap.test
def what_came_is_told_by_name():
    """Moved by 20 mm, and the second pour taken out of the drawing."""
    drawing = make("template", "plumb-line", "svg")
    traced = FOLDER / "moved.svg"
    text = drawing.read_text()
    first, second = re.findall(r'<path [^>]*?id="(pour-[0-9]+)"', text)[:2]
    text = text.replace(f'id="{first}"', f'id="{first}" transform="translate(20 0)"')
    traced.write_text(re.sub(rf'<path (?=[^>]*id="{second}")', '<path display="none" ', text))
    done = run("trace", traced, "--into", DEMOS / "plumb-line.colourway", "-o", FOLDER / "new.colourway")
    lines = done.stdout.decode().splitlines()
    check(lines == ["Moved: 1. Green", "Not in the drawing, kept as before: 4. Green end"], lines)
    done = run("trace", drawing, "--into", DEMOS / "plumb-line.colourway", "-o", FOLDER / "new.colourway")
    check(done.stdout.decode() == "Nothing has changed\n", done)


@tap.test
def a_hostile_drawing_writes_nothing():
    bad = pathlib.Path(__file__).parent.parent / "files" / "bad-svg"
    out = FOLDER / "never.colourway"
    for drawing in sorted(bad.glob("*.svg")):
        done = run("trace", drawing, "--into", DEMOS / "plumb-line.colourway", "-o", out)
        check(done.returncode == FAULT and not done.stdout, drawing.name, done)
        check(drawing.with_suffix(".txt").read_text().splitlines()[1] in done.stderr.decode(), done.stderr)
        check(not out.exists(), drawing.name, "left a file")


@tap.test
def what_is_missing_is_asked_for():
    for arguments in (("template", DEMOS / "plumb-line.colourway"), ("template", DEMOS / "plumb-line.colourway", "-o", "a.doc"),
                      ("template", DEMOS / "plumb-line.colourway", "-o", "a.pdf", "--paper", "a3"),
                      ("trace", "a.svg", "-o", "b"), ("trace", "a.svg", "--into", "b")):
        done = run(*arguments)
        check(done.returncode in (USAGE, FAULT) and done.stderr and not done.stdout, arguments, done)


tap.main()
