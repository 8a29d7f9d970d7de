# SPDX-License-Identifier: GPL-3.0-or-later
"""Pictures by the command line: kind, size, and that every option changes what it should."""
import json
import pathlib
import re
import struct
import tempfile
import xml.etree.ElementTree as ElementTree

from harness import DEMOS, FINE, Tap, check, run

tap = Tap()
FOLDER = tempfile.TemporaryDirectory()
PICTURES = ("pan", "strip", "cloth", "item", "scan", "skein", "hank", "listing")
DEMO = DEMOS / "plumb-line.colourway"
SHORT = f"strandwise-cli draw: {DEMO}: The yarn runs out before all of it is knitted\n".encode()


def png_size(data):
    check(data[:8] == b"\x89PNG\r\n\x1a\n", "no PNG:", data[:8])
    check(data[12:16] == b"IHDR" and data[-8:-4] == b"IEND", "a PNG without head or end")
    return struct.unpack(">II", data[16:24])


def svg_size(data):
    root = ElementTree.fromstring(data)
    check(root.tag == "{http://www.w3.org/2000/svg}svg", root.tag)
    return tuple(round(float(re.match(r"[\d.]+", root.get(side)).group())) for side in ("width", "height"))


def pdf_size(data):
    check(data[:5] == b"%PDF-" and data.rstrip().endswith(b"%%EOF"), "no PDF")
    box = re.search(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", data)
    # points of 1/72 in, the size was given in 1/96 in
    return tuple(round(float(side) * 96 / 72) for side in box.groups())


def jpeg_size(data):
    """Of the frame header, ITU-T T.81, B.2.2."""
    check(data[:3] == b"\xff\xd8\xff", "no JPEG:", data[:4])
    at = 2
    while data[at + 1] not in (0xC0, 0xC1, 0xC2):
        at += 2 + struct.unpack(">H", data[at + 2:at + 4])[0]
    height, width = struct.unpack(">HH", data[at + 5:at + 9])
    return width, height


SIZES = {"png": png_size, "svg": svg_size, "pdf": pdf_size, "jpeg": jpeg_size}


def draw(picture, *options, file=DEMO, kind="png"):
    done = run("draw", picture, file, "-o", "-", "--format", kind, *options)
    check(done.returncode == FINE and done.stderr == (SHORT if breaks_off(picture, options) else b""), done.returncode, done.stderr)
    return done.stdout


def breaks_off(picture, options):
    """For what needs more than a sock's yarn."""
    return picture == "item" and any(item in options for item in ("scarf", "shawl"))


@tap.test
def every_picture_of_every_kind_has_the_size_asked_for():
    for picture in PICTURES:
        for kind, size in SIZES.items():
            data = draw(picture, "--size", "320x240", kind=kind)
            check(size(data) == (320, 240), picture, kind, size(data))


@tap.test
def a_picture_has_a_size_of_its_own():
    for picture in PICTURES:
        width, height = png_size(draw(picture))
        check(100 <= width <= 4000 and 40 <= height <= 4000, picture, width, height)


@tap.test
def the_same_bytes_twice():
    for picture in PICTURES:
        for kind in SIZES:
            check(draw(picture, "--size", "300x200", kind=kind) == draw(picture, "--size", "300x200", kind=kind), picture, kind)


@tap.test
def a_file_holds_what_standard_output_would():
    for kind in SIZES:
        out = pathlib.Path(FOLDER.name) / f"out.{kind}"
        done = run("draw", "strip", DEMO, "--output", out, "--size", "300x80")
        check(done.returncode == FINE and not done.stdout and not done.stderr, done)
        check(out.read_bytes() == draw("strip", "--size", "300x80", kind=kind), kind)
    check(not [name for name in pathlib.Path(FOLDER.name).iterdir() if name.suffix not in (".png", ".svg", ".pdf", ".jpeg")], "something was left beside it")


@tap.test
def format_goes_before_the_ending():
    out = pathlib.Path(FOLDER.name) / "misnamed.svg"
    done = run("draw", "strip", DEMO, "-o", out, "--format", "png", "--size", "30x20")
    check(done.returncode == FINE, done)
    check(png_size(out.read_bytes()) == (30, 20), "not as --format said")


@tap.test
def the_sketch_may_come_from_standard_input():
    piped = run("draw", "strip", "-", "-o", "-", "--format", "png", "--size", "300x80", input=DEMO.read_bytes())
    check(piped.stdout == draw("strip", "--size", "300x80"), piped.stderr)


@tap.test
def options_change_their_pictures_and_no_others():
    def changes(picture, *options):
        return draw(picture, "--size", "400x300") != draw(picture, "--size", "400x300", *options)

    check(changes("pan", "--face", "second"), "the faces are alike")
    check(not changes("pan", "--face", "first"), "the first face is not what is drawn without --face")
    check(changes("pan", "--units", "in") and changes("strip", "--units", "in"), "inches")
    check(not changes("pan", "--units", "cm"), "centimetres are not what is drawn without --units")
    check(changes("pan", "--no-marks"), "marks")
    check(changes("cloth", "--stitch-px", "20"), "stitches")
    check(all(changes("item", "--item", item) for item in ("hat", "mitten", "scarf", "shawl")) and not changes("item", "--item", "sock"), "items")
    check(changes("cloth", "--side", "purl") and not changes("cloth", "--side", "knit"), "the side")
    check(not changes("pan", "--stitch-px", "20"), "stitches in the pan")
    check(all(changes(picture, "--dark") for picture in PICTURES), "dark")


@tap.test
def a_mark_that_is_not_there_is_told_of_and_left_out():
    sketch = json.loads(DEMO.read_text(encoding="utf-8"))
    sketch["listing"]["mark"] = "nowhere.png"
    file = pathlib.Path(FOLDER.name) / "marked.colourway"
    file.write_text(json.dumps(sketch), encoding="utf-8")
    done = run("draw", "listing", file, "-o", "-", "--format", "png", "--size", "200x200")
    check(done.returncode == FINE and b"there is no such file" in done.stderr and b"drawn without it" in done.stderr, done.stderr)
    check(done.stdout == draw("listing", "--size", "200x200"), "not the picture without the mark")
    file.unlink()


@tap.test
def sizes_no_person_would_ask_for():
    for size in ("1x1", "2x900", "900x2", "7x5"):
        for picture in PICTURES:
            check("x".join(map(str, png_size(draw(picture, "--size", size)))) == size, picture, size)


@tap.test
def a_folder_takes_many_pictures_and_one_fault_does_not_stop_the_others():
    out = pathlib.Path(FOLDER.name) / "shop"
    names = ("plumb-line", "deckchair")
    files = [DEMOS / f"{name}.colourway" for name in names]
    done = run("draw", "hank", files[0], DEMOS / "nowhere.colourway", files[1], "-o", f"{out}/", "--format", "jpeg", "--size", "160x60")
    check(done.returncode == 3 and b"nowhere.colourway" in done.stderr, done.returncode, done.stderr)
    check(sorted(name.name for name in out.iterdir()) == sorted(f"{name}-hank.jpg" for name in names), list(out.iterdir()))
    for name, file in zip(names, files):
        data = (out / f"{name}-hank.jpg").read_bytes()
        check(jpeg_size(data) == (160, 60), name)
        check(data == draw("hank", "--size", "160x60", file=file, kind="jpeg"), name, "differs from the picture drawn alone")
    done = run("draw", "hank", *files, "-o", out / "one.png")
    check(done.returncode == 2 and b"folder" in done.stderr, done)


@tap.test
def the_listing_is_as_the_options_say():
    def listing(*options):
        return draw("listing", "--size", "150x150", *options)

    plain = listing()
    for options in (("--turns", "14"), ("--start", "40"), ("--arrangement", "hanks"), ("--ground", "grey"), ("--label", "white")):
        check(listing(*options) != plain, options)
    check(listing("--arrangement", "hanks", "--hanks", "5") != listing("--arrangement", "hanks"), "hanks")
    check(listing("--label", "grey") != listing("--label", "white"), "papers")
    check(listing("--label", "grey", "--label-words") != listing("--label", "grey"), "words on the label")
    check(listing("--label-words") == plain, "words on no label")
    check(listing("--maker", "Two Tides") != plain and listing("--no-drawn-line") != plain, "name and small line")
    check(draw("hank", "--size", "300x90", "--label", "white") != draw("hank", "--size", "300x90"), "a label on the hank alone")
    check(draw("skein", "--size", "200x80", "--wet") != draw("skein", "--size", "200x80"), "wet")
    check(len({draw("skein", "--size", "200x80", "--pan", pan) for pan in ("none", "steel", "enamel")}) == 3, "pans")
    for shape, size in (("square", (2000, 2000)), ("4:5", (1600, 2000)), ("wide", (2000, 1333))):
        check(png_size(draw("listing", "--shape", shape)) == size, shape)


@tap.test
def a_thumbnail_of_every_demo():
    demos = sorted(DEMOS.glob("*.colourway"))
    check(len(demos) >= 5, "only", len(demos), "demos")
    for demo in demos:
        out = pathlib.Path(FOLDER.name) / "thumbnail.png"
        done = run("draw", "pan", demo.as_uri(), "-o", out, "--size", "256x256")
        check(done.returncode == FINE, done)
        check(png_size(out.read_bytes()) == (256, 256), demo)


tap.main()
