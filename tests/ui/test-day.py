#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A short timer of a dye day in the real window: killed half-way, taken up again, told of when it is up. Prints TAP."""
import datetime
import json
import re
import threading
import time

import gi

gi.require_version("Gio", "2.0")
from gi.repository import Gio, GLib  # pylint: disable=wrong-import-position

from desk import Desk, wait_for
from program import DEMO, Program, read
from tap import Tap, expect, skip_without_display

SOAK_S = 14
NOTIFICATIONS = """<node><interface name="org.freedesktop.Notifications">
<method name="Notify"><arg type="s"/><arg type="u"/><arg type="s"/><arg type="s"/><arg type="s"/><arg type="as"/><arg type="a{sv}"/>
<arg type="i"/><arg type="u" direction="out"/></method>
<method name="CloseNotification"><arg type="u"/></method>
<method name="GetCapabilities"><arg type="as" direction="out"/></method>
<method name="GetServerInformation"><arg type="s" direction="out"/><arg type="s" direction="out"/><arg type="s" direction="out"/>
<arg type="s" direction="out"/></method></interface></node>"""


class Listener:
    """A desktop that shows notifications, as far as a program can tell."""

    def __init__(self, address):
        self.heard = []
        self.context = GLib.MainContext()
        self.loop = GLib.MainLoop(self.context)
        self.ready = threading.Event()
        threading.Thread(target=self.serve, args=(address,), daemon=True).start()
        expect(self.ready.wait(10), "nobody listens for notifications")

    def serve(self, address):
        self.context.push_thread_default()
        flags = Gio.DBusConnectionFlags.AUTHENTICATION_CLIENT | Gio.DBusConnectionFlags.MESSAGE_BUS_CONNECTION
        bus = Gio.DBusConnection.new_for_address_sync(address, flags, None, None)
        interface = Gio.DBusNodeInfo.new_for_xml(NOTIFICATIONS).interfaces[0]
        bus.register_object("/org/freedesktop/Notifications", interface, self.called, None, None)
        bus.call_sync("org.freedesktop.DBus", "/org/freedesktop/DBus", "org.freedesktop.DBus", "RequestName",
                      GLib.Variant("(su)", ["org.freedesktop.Notifications", 0]), None, Gio.DBusCallFlags.NONE, -1, None)
        self.ready.set()
        self.loop.run()

    def called(self, _bus, _sender, _path, _interface, method, arguments, invocation):
        answers = {"Notify": ("(u)", [1]), "GetCapabilities": ("(as)", [["body"]]),
                   "GetServerInformation": ("(ssss)", ["desk", "test", "1", "1.2"])}
        if method == "Notify":
            self.heard.append(arguments.unpack()[3])
        kind = answers.get(method)
        invocation.return_value(GLib.Variant(*kind) if kind else None)


def make_drawing(desk):
    """The demo, with a soak of a few seconds."""
    drawing = read(DEMO)
    drawing.setdefault("sheet", {})["presoak_min"] = SOAK_S / 60
    path = desk.folder / "home/soak.colourway"
    path.write_text(json.dumps(drawing))
    return path


def state(desk):
    files = list((desk.folder / "data/strandwise/days").glob("*.json"))
    return json.loads(files[0].read_text()) if files else None


def end_of_soak(desk):
    timer = state(desk)["timers"][0]
    return datetime.datetime.fromisoformat(timer["ends"].replace("Z", "+00:00")).timestamp()


def seconds_shown(program):
    """The huge digits; the first label that looks like them."""
    for node in program.tree.all("label"):
        found = re.fullmatch(r"(\+?)(\d+):(\d\d)", node.label or node.text or "")
        if found:
            seconds = 60 * int(found[2]) + int(found[3])
            return -seconds if found[1] else seconds
    return None


def look(program):
    """When it was begun to look, what was seen, and when that was there: looking takes its time."""
    before = time.time()
    shown = seconds_shown(program)
    return None if shown is None else (before, shown, time.time())


def start(run):
    run.begin(drawn=True)
    run.program.keys("ctrl+shift+d")
    wait_for("the digits", lambda: seconds_shown(run.program) is not None)
    day = wait_for("the day's file", lambda: state(run.desk))
    begun = datetime.datetime.fromisoformat(day["begun"].replace("Z", "+00:00")).timestamp()
    expect(abs(end_of_soak(run.desk) - begun - SOAK_S) < 0.01, "the timer does not end when it should")


def kill(run):
    """No good-bye: what lasts is in the file."""
    run.program.kill()
    expect(state(run.desk)["deed"] == 0, "another deed than the first is under way")


def resume(run):
    """It is there again by itself, with what is left by the clock on the wall."""
    run.begin(drawn=False)
    before, shown, after = wait_for("the digits", lambda: look(run.program))
    end = end_of_soak(run.desk)
    expect(end - after - 1.2 <= shown <= end - before + 1.2, f"{shown} s are shown, and {end - after:.1f} to {end - before:.1f} s are left")


def ring(run):
    wait_for("the end of the timer", lambda: any(event["what"] == "up" for event in state(run.desk)["log"]), SOAK_S + 10)
    expect(time.time() >= end_of_soak(run.desk) - 0.01, "it rang early")
    wait_for("the notification", lambda: run.listener.heard, 5)
    expect("Soak the skeins" in run.listener.heard[0], f"the notification says {run.listener.heard}")
    wait_for("digits that count on", lambda: (seconds_shown(run.program) or 1) <= 0)


def go_on(run):
    """Space for what is done, Backspace for a slip."""
    for key, deed in [("space", 1), ("space", 2), ("BackSpace", 1)]:
        run.program.keys(key)
        wait_for(f"deed {deed}", lambda wanted=deed: state(run.desk)["deed"] == wanted)
    run.program.check_quiet()


class Run:
    """One desk, and the program on it that is of today."""

    def __init__(self, desk):
        self.desk = desk
        self.program = None
        self.listener = Listener(desk.environment["DBUS_SESSION_BUS_ADDRESS"])
        self.path = make_drawing(desk)

    def begin(self, drawn):
        self.program = Program(self.desk, self.path).wait_until_shown(drawn)


def main():
    skip_without_display()
    tap = Tap()
    with Desk() as desk:
        desk.settings(guide_seen="true", place="'sheet'")
        run = Run(desk)
        tap.run("A timer of a dye day is started", start, run)
        tap.run("The program is killed half-way", kill, run)
        tap.run("The day is taken up again with what is left", resume, run)
        tap.run("The end is told of, by the desktop too", ring, run)
        tap.run("Keys go through the day, and nothing complains", go_on, run)
    tap.finish()


if __name__ == "__main__":
    main()
