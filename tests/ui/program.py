# SPDX-License-Identifier: GPL-3.0-or-later
"""The built program on a desk, used by pointer and keys."""
import json
import math
import os
import pathlib
import re
import signal
import subprocess
import sys
import time

from desk import WINDOW, die_with_parent, wait_for
from tap import Failure, expect
from tree import program_root

TOP = pathlib.Path(__file__).resolve().parents[2]
BUILD = pathlib.Path(os.environ.get("STRANDWISE_BUILD", TOP / "build"))
CLI = BUILD / "src/cli/strandwise-cli"
DEMO = TOP / "data/demos/lamplighters-walk.colourway"
COMPLAINT = re.compile(r"(WARNING|CRITICAL|ERROR) \*\*|-(WARNING|CRITICAL|ERROR)|runtime error|AddressSanitizer|LeakSanitizer")


class Program:
    """One process of Strandwise and its first window."""

    def __init__(self, desk, *files, **environment):
        self.desk = desk
        self.errors = desk.folder / f"stderr-{len(desk.processes)}"
        self.output = desk.folder / f"stdout-{len(desk.processes)}"
        env = dict(desk.environment, GSETTINGS_SCHEMA_DIR=str(BUILD / "data"), **environment)
        with self.errors.open("w") as errors, self.output.open("w") as output:
            self.process = subprocess.Popen([BUILD / "src/app/strandwise", *map(str, files)], env=env, stdout=output,
                                            stderr=errors, preexec_fn=die_with_parent, start_new_session=True)
        desk.processes.append(self.process)
        self.window = None
        self.margin = 0  # of the frame around the window's inside, in pixels

    # Its life

    def wait_until_shown(self, drawn=True):
        """The window is up and stands in the corner, its inside 1280 x 800 whatever its frame; if there is yarn, it is `drawn`."""
        self.window = wait_for("the window", self.find_window)

        def placed():
            """Asked again: what is asked of a window while it is still being put up may get lost."""
            frame, window = self.tree.find("frame"), self.find_window()
            if frame is None or window is None:
                return False
            self.window = window
            width, height = frame.extents[2:]
            x, y, outer, _ = self.geometry(self.window)
            self.margin = (outer - self.desk.scale * width) // 2
            if (x, y, width, height) == (0, 0, *WINDOW):
                return True
            size = [side * self.desk.scale + 2 * self.margin for side in WINDOW]
            self.desk.xdotool("windowmove", self.window, 0, 0, "windowsize", self.window, *size, "windowfocus", self.window, check=False)
            return False
        try:
            wait_for("the window's size", placed, pause=0.2)
        except Failure:
            self.keep_picture()
            raise
        if drawn:
            wait_for("a picture of the skein", self.skein_is_drawn)
        return self

    def find_window(self):
        """The X window of the drawing: a dialog before it is smaller."""
        expect(self.process.poll() is None, f"the program ended with {self.process.poll()}: {self.errors.read_text()}")
        ids = self.desk.xdotool("search", "--onlyvisible", "--pid", self.process.pid, ".", check=False)
        return max(ids.split(), key=lambda window: math.prod(self.geometry(window)[2:]), default=None)

    def skein_is_drawn(self):
        """Yarn has thousands of colours, an empty pane a few, whichever place is open."""
        return self.desk.screen.colours(self.margin, self.margin, *(side * self.desk.scale for side in WINDOW)) > 3000

    def geometry(self, window):
        lines = self.desk.xdotool("getwindowgeometry", "--shell", window, check=False)
        values = dict(line.split("=") for line in lines.splitlines())
        return tuple(int(values.get(key, 0)) for key in ["X", "Y", "WIDTH", "HEIGHT"])

    def other_windows(self):
        """Places and sizes of popovers and dialogs on the screen."""
        ids = self.desk.xdotool("search", "--onlyvisible", "--pid", self.process.pid, ".", check=False)
        return [self.geometry(window) for window in ids.split() if window != self.window]

    @property
    def tree(self):
        """Asked anew each time; the bus may be late when the machine is busy."""
        expect(self.process.poll() is None, f"the program has ended with {self.process.poll()}: {self.errors.read_text()}")
        return wait_for("the accessibility tree", lambda: program_root(self.process.pid))

    def kill(self):
        """As a crash or a cut of the power would."""
        self.process.kill()
        self.process.wait()

    def quit(self, seconds=30):
        """Asks politely, as the end of a session does."""
        self.process.send_signal(signal.SIGTERM)
        expect(self.process.wait(seconds) == 0, "the program did not end well when it was asked to")

    def check_quiet(self):
        """Nothing that GTK or a library complained about."""
        lines = [line for line in self.errors.read_text().splitlines() if COMPLAINT.search(line)]
        expect(not lines, "complaints of the program:\n" + "\n".join(sorted(set(lines))))

    # Its looks

    def picture(self, path, colours=None):
        """The window's inside as PNG."""
        self.desk.screen.save(path, self.margin, self.margin, *(side * self.desk.scale for side in WINDOW), colours=colours)

    def wait_until_still(self, pause=0.6, seconds=60):
        """Nothing has changed for a moment: what runs beside the hand has caught up."""
        area = (self.margin, self.margin, *(side * self.desk.scale for side in WINDOW))

        def still():
            before = self.desk.screen.print_of(*area)
            time.sleep(pause)
            return self.desk.screen.print_of(*area) == before
        wait_for("the window to be still", still, seconds)

    # Finding things

    def find(self, role=None, name=None, seconds=60, within=None):
        """Waits until it is shown."""
        def look():
            return (within or self.tree).find(role, name)
        try:
            return wait_for(f"{role or 'something'} “{name}”", look, seconds)
        except Failure:
            self.keep_picture()
            raise

    def gone(self, role, name, seconds=60):
        wait_for(f"the end of {role} “{name}”", lambda: self.tree.find(role, name) is None, seconds)

    def area(self, node):
        """Where a thing is on the screen: x, y, width, height."""
        scale = self.desk.scale
        x, y, width, height = (scale * side for side in node.extents)
        left, top = self.origin(node)
        return left + x, top + y, width, height

    def origin(self, node):
        """Extents count from the inside of the window, popover or dialog that a thing is in."""
        others = None
        for above in node.line():
            if above.extents[:2] != (0, 0) or above.role == "frame" and above.parent.role == "application":
                continue
            others = self.other_windows() if others is None else others
            size = [self.desk.scale * side for side in above.extents[2:]]
            for x, y, width, height in others:
                margin = (width - size[0]) // 2
                if 0 <= margin <= 10 * self.desk.scale and height - size[1] == width - size[0]:
                    return x + margin, y + margin
        return self.margin, self.margin

    def keep_picture(self):
        """For whoever has to find out why a test failed."""
        folder = BUILD / "meson-logs"
        if folder.is_dir():
            self.desk.screen.save(folder / f"ui-{os.path.basename(sys.argv[0])}.png")

    # Hands

    def point(self, node, along=0.5, across=0.5):
        """A place on the screen, by shares of a thing's width and height."""
        x, y, width, height = self.area(node)
        return round(x + along * width), round(y + across * height)

    def move(self, x, y):
        """As a hand does: in more than one step, for GTK takes the first over a popover as an arrival only."""
        self.desk.xdotool("mousemove", x - 4, y - 2, "sleep", 0.04, "mousemove", x - 1, y, "sleep", 0.04, "mousemove", x, y, "sleep", 0.04)

    def click(self, node, along=0.5, across=0.5, button=1):
        self.move(*self.point(node, along, across))
        self.desk.xdotool("mousedown", button, "sleep", 0.06, "mouseup", button)

    def drag(self, start, end, steps=12, pause=0.02):
        """From one place of the screen to another by the first button."""
        self.move(*start)
        words = ["mousedown", 1, "sleep", 0.08]
        for i in range(1, steps + 1):
            place = (round(a + (b - a) * i / steps) for a, b in zip(start, end))
            words += ["mousemove", *place, "sleep", pause]
        self.desk.xdotool(*words, "sleep", 0.1, "mouseup", 1)

    def keys(self, *keys):
        self.desk.xdotool("key", "--clearmodifiers", "--delay", 20, *keys)

    def type(self, text):
        self.desk.xdotool("type", "--delay", 15, str(text))

    def set_spin(self, spin, value):
        """By typing, as a dyer does."""
        self.click(spin, 0.15)
        self.keys("ctrl+a")
        self.type(value)
        self.keys("Return")
        wait_for(f"{spin.label} to be {value}", lambda: spin.value == value)

    # The main things everyone does

    def canvas(self):
        return self.find(name="Skein in the pan")

    def go_to(self, key, role, name):
        """To one of the four places; waits until something that is only there is shown, and returns it."""
        self.keys(key)
        return self.find(role, name)

    def show_place(self, number):
        """One of the four, from 1."""
        self.keys(f"alt+{number}")
        wait_for(f"place {number}", lambda: "selected" in list(self.tree.all("page tab"))[number - 1].states)

    def bring_back(self):
        """What a crash has left. A question that has just come up may not have the keyboard yet, and miss the key."""
        def answered():
            self.keys("alt+b")
            time.sleep(0.2)
            return not self.other_windows()
        wait_for("the question about an unsaved drawing", self.other_windows)
        wait_for("the end of the question", answered, pause=0.5)

    def leave_guide(self):
        self.click(self.find("push button", "Skip"))
        self.gone("push button", "Skip")

    def save_as(self, path):
        """Through the real dialog: its name field takes a whole path."""
        self.keys("ctrl+shift+s")
        self.type_path(path)
        wait_for("the file", path.exists)

    def type_path(self, path):
        """Into a dialog that asks where something is to be saved, which is then closed."""
        field = self.find("text", "Name:")
        wait_for("the name to be asked for", lambda: field.is_now("focused"))

        def typed():
            """The dialog may still be busy with its folder, and take the first words for nothing."""
            self.keys("ctrl+a")
            self.type(str(path))
            return field.text == str(path)
        wait_for("the path to be typed", typed, pause=0.3)
        self.keys("Return")

    def save(self, path):
        """Saves again under the name it has, and waits until the file is new."""
        before = path.stat().st_mtime_ns
        self.keys("ctrl+s")
        wait_for("the file to be written", lambda: path.stat().st_mtime_ns != before)


def read(path):
    """A colourway as it lies in a file."""
    return json.loads(pathlib.Path(path).read_text())


def forecast(path):
    """What the command line says will come of it."""
    run = subprocess.run([CLI, "forecast", path, "--json"], check=True, stdout=subprocess.PIPE, text=True)
    return json.loads(run.stdout)


__all__ = ["BUILD", "CLI", "DEMO", "TOP", "WINDOW", "Program", "forecast", "read"]
