# SPDX-License-Identifier: GPL-3.0-or-later
"""Prints the Test Anything Protocol, and tells what is missing for a display."""
import shutil
import sys
import time
import traceback

NEEDED = {"Xvfb": "xvfb", "dbus-daemon": "dbus-daemon", "xdotool": "xdotool", "openbox": "openbox", "xcompmgr": "xcompmgr"}
SKIPPED = 77


class Failure(Exception):
    """What was expected of the program did not happen."""


def expect(truth, sentence):
    if not truth:
        raise Failure(sentence)


def skip_without_display():
    """Only a machine that has no such display is excused; a half-installed one fails."""
    if shutil.which("Xvfb") is None:
        print("1..0 # SKIP Xvfb is not installed")
        sys.exit(SKIPPED)
    missing = [package for tool, package in NEEDED.items() if shutil.which(tool) is None]
    if missing:
        print("Bail out! Not installed:", " ".join(missing))
        sys.exit(1)


class Tap:
    """Numbers checks. As steps of one job, the later ones make no sense after one has failed, and are not tried."""

    def __init__(self, one_job=True):
        self.count = 0
        self.failed = False
        self.one_job = one_job

    def run(self, sentence, step, *arguments):
        self.count += 1
        if self.failed and self.one_job:
            print(f"not ok {self.count} - {sentence} # not tried after the failure above", flush=True)
            return
        begin = time.monotonic()
        try:
            step(*arguments)
            print(f"# {time.monotonic() - begin:.1f} s")
            print(f"ok {self.count} - {sentence}", flush=True)
        except Exception as error:  # pylint: disable=broad-except
            self.failed = True
            if not isinstance(error, Failure):
                for line in traceback.format_exc().splitlines():
                    print("#", line)
            for line in str(error).splitlines():
                print("#", line)
            print(f"not ok {self.count} - {sentence}", flush=True)

    def finish(self):
        print(f"1..{self.count}", flush=True)
        sys.exit(1 if self.failed else 0)
