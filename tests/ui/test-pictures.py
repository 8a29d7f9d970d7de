#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The pictures that the window saves and copies are those that the command line draws of the same file. Prints TAP."""
import subprocess
import time

import gi

gi.require_version("GdkPixbuf", "2.0")
from gi.repository import GdkPixbuf  # pylint: disable=wrong-import-position

from desk import Desk, wait_for
from program import CLI, DEMO, Program
from tap import Tap, expect, skip_without_display

# What another program on the desk finds on the clipboard; it fails if that is no picture.
PASTE = """
import gi, sys
gi.require_version("Gdk", "4.0")
gi.require_version("Gtk", "4.0")
from gi.repository import Gdk, GLib, Gtk
Gtk.init()
loop = GLib.MainLoop()
found = []
def pasted(clipboard, result):
    try:
        found.append(clipboard.read_texture_finish(result))
    except GLib.Error:
        pass
    loop.quit()
Gdk.Display.get_default().get_clipboard().read_texture_async(None, pasted)
loop.run()
sys.exit(0 if found and found[0] is not None and found[0].save_to_png(sys.argv[1]) else 1)
"""

SAVED = {"cloth": "Cloth…", "skein": "Laid Skein…", "hank": "Twisted Hank…", "listing": "Listing…", "pan": "Skein in the Pan…",
         "strip": "Strand Strip…", "scan": "Width Scan…"}
COPIED = {"cloth": "Cloth", "hank": "Twisted Hank"}


class Pictures:
    def __init__(self, desk):
        self.desk = desk
        self.program = None

    def open(self):
        self.program = Program(self.desk, DEMO).wait_until_shown()

    def choose(self, name):
        """From the menu of pictures, by keys."""
        self.program.click(self.program.find("push button", "Pictures"))
        item = wait_for(f"the choice of {name}", lambda: self.program.tree.find("menu item", name, condition=lambda node: node.label == name))

        def reached():
            self.program.keys("Down")
            time.sleep(0.1)
            return item.is_now("focused")
        wait_for(f"{name} to be reached", reached)
        self.program.keys("Return")

    def save(self, picture):
        path, (drawn_size, drawn) = self.desk.folder / f"home/{picture}.png", self.draw(picture)
        self.choose(SAVED[picture])
        self.program.type_path(path)
        size, pixels = wait_for(f"the picture of {picture}", lambda: decode(path))
        expect(size == drawn_size, f"the window's {picture} has {size} pixels, the command line's {drawn_size}")
        differing = sum(a != b for a, b in zip(pixels, drawn)) if pixels != drawn else 0
        expect(differing == 0, f"{differing} of {len(drawn)} bytes of the {picture} differ")

    def copy(self, picture):
        """The clipboard may hold the one before for a moment."""
        path, drawn = self.desk.folder / f"home/{picture}-copied.png", self.draw(picture)

        def pasted():
            run = subprocess.run(["/usr/bin/python3", "-c", PASTE, path], env=self.desk.environment, check=False, timeout=60)
            return run.returncode == 0 and decode(path) == drawn
        self.choose(COPIED[picture])
        wait_for(f"the {picture} on the clipboard, as the command line draws it", pasted, pause=0.5)

    def draw(self, picture):
        path = self.desk.folder / f"home/{picture}-drawn.png"
        subprocess.run([CLI, "draw", picture, DEMO, "-o", path], check=True, env=self.desk.environment)
        size, pixels = decode(path)
        expect(len(set(pixels)) > 20, f"the {picture} shows nothing")
        return size, pixels

    def close(self):
        self.program.quit()
        self.program.check_quiet()


def decode(path):
    """Size and pixels; None while the file is not whole."""
    try:
        picture = GdkPixbuf.Pixbuf.new_from_file(str(path)).add_alpha(False, 0, 0, 0)
    except gi.repository.GLib.Error:
        return None
    return (picture.get_width(), picture.get_height()), picture.get_pixels()


def main():
    skip_without_display()
    tap = Tap()
    with Desk() as desk:
        desk.settings(guide_seen="true")
        pictures = Pictures(desk)
        tap.run("a colourway is opened", pictures.open)
        for picture in SAVED:
            tap.run(f"the {picture} that the window saves is the one that the command line draws", pictures.save, picture)
        for picture in COPIED:
            tap.run(f"the {picture} that it copies is, too", pictures.copy, picture)
        tap.run("the program ends without complaint", pictures.close)
    tap.finish()


if __name__ == "__main__":
    main()
