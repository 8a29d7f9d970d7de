#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""
Kills the window at random moments while it is edited and saved by keys. The
file is whole each time, and what comes back lacks the last few seconds at
most. Prints TAP.

Usage: test-kills.py [--kills N] [--seed N]
"""
import argparse
import random
import shutil
import subprocess
import threading
import time

from desk import Desk, wait_for
from program import CLI, DEMO, Program, read
from tap import Tap, expect, skip_without_display

# A draft follows an edit within two seconds; the rest is for a machine that has other work.
LOST_SECONDS = 2 + 5
LONGEST = 12.0


class Victim:
    """Lives from kill to kill. The width goes up by one with each key."""

    def __init__(self, desk, chance):
        self.desk = desk
        self.chance = chance
        self.path = desk.folder / "home/kept.colourway"
        shutil.copy(DEMO, self.path)
        self.width = read(self.path)["cloth"]["width_stitches"]
        self.step = 1
        self.sent = []  # time and width of each key
        self.saves = 0

    def drafts(self):
        return list((self.desk.folder / "data/strandwise/drafts").glob("*/*.colourway"))

    def open(self):
        """Starts, and brings back what there is."""
        if self.drafts():
            program = Program(self.desk).wait_until_shown()
            program.click(program.find("push button", "Bring Back"))
            program.gone("push button", "Bring Back")
        else:
            program = Program(self.desk, self.path).wait_until_shown()
        spin = program.go_to("alt+2", "spin button", "Width")
        return program, spin

    def edit_until_killed(self, program, spin):
        program.click(spin, 0.15)
        wait_for("the focus", lambda: "focused" in spin.states or any("focused" in part.states for part in spin.children()), 10)
        self.step = 1 if self.width < 200 else -1
        self.sent = []
        moment = self.chance.uniform(0.3, LONGEST)
        timer = threading.Timer(moment, program.process.kill)
        timer.start()
        while program.process.poll() is None:
            if self.chance.random() < 0.1:
                program.keys("ctrl+s")
                self.saves += 1
            self.sent.append((time.monotonic(), self.width + self.step * (len(self.sent) + 1)))
            program.desk.xdotool("key", "Up" if self.step > 0 else "Down", check=False)
        timer.join()
        return time.monotonic()

    def check_file(self):
        check = subprocess.run([CLI, "check", self.path], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False)
        expect(check.returncode == 0, f"the file is broken: {check.stdout}")
        for draft in self.drafts():
            read(draft)

    def check_width(self, killed, width):
        """Not older than the last few seconds, and not of the future."""
        sure = [self.width] + [value for sent, value in self.sent if sent < killed - LOST_SECONDS]
        last = self.sent[-1][1] if self.sent else self.width
        low, high = sorted((sure[-1], last))
        expect(low <= width <= high, f"{width} stitches came back; {sure[-1]} were there {LOST_SECONDS} s before the kill, {last} at the kill")

    def run(self, kills):
        program, spin = self.open()
        if program.tree.find("push button", "Skip") is not None:
            program.leave_guide()
        for number in range(1, kills + 1):
            killed = self.edit_until_killed(program, spin)
            program.check_quiet()
            self.check_file()
            program, spin = self.open()
            width = int(spin.value)
            self.check_width(killed, width)
            print(f"# kill {number}: {len(self.sent)} keys, {width} of {self.sent[-1][1]} stitches came back", flush=True)
            self.width = width
        expect(self.saves > 0 or kills < 5, "nothing was saved; the chance was not random")
        program.quit()
        program.check_quiet()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--kills", type=int, default=12)
    parser.add_argument("--seed", type=int, default=time.time_ns() % 100000)
    options = parser.parse_args()
    skip_without_display()
    tap = Tap()
    with Desk() as desk:
        print(f"# --kills {options.kills} --seed {options.seed}")
        victim = Victim(desk, random.Random(options.seed))
        tap.run(f"{options.kills} kills leave a whole file and the last edits", victim.run, options.kills)
    tap.finish()


if __name__ == "__main__":
    main()
