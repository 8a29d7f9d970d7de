# SPDX-License-Identifier: GPL-3.0-or-later
"""
What an assistive technology is told of the program, over the accessibility bus.

GTK tells names, roles and states of all it has announced in one answer, and
announces a thing when it is first asked for as somebody's child. So the whole
tree costs one question, and some more when something new is there; asking each
thing for each of its properties takes a second for a window like ours.
"""
import collections
import functools
import os
import re

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, Gio, GLib  # pylint: disable=wrong-import-position

CLASS = re.compile(r"(Gtk|Adw|Sw)[A-Z]\w*")
ROOT = "/org/a11y/atspi/accessible/root"
NOWHERE = "/org/a11y/atspi/null"
WAIT_MS = 20000
ROLES = {int(role): role.value_nick.replace("-", " ") for role in
         (getattr(Atspi.Role, name) for name in dir(Atspi.Role) if name.isupper())}
STATES = {int(state): state.value_nick for state in
          (getattr(Atspi.StateType, name) for name in dir(Atspi.StateType) if name.isupper())}


def connect(address):
    flags = Gio.DBusConnectionFlags.AUTHENTICATION_CLIENT | Gio.DBusConnectionFlags.MESSAGE_BUS_CONNECTION
    return Gio.DBusConnection.new_for_address_sync(address, flags, None, None)


def ask(bus, name, path, method, arguments=None):
    """`method` with its interface. What has vanished meanwhile answers None."""
    interface, _, method = method.rpartition(".")
    try:
        return bus.call_sync(name, path, interface, method, arguments, None, Gio.DBusCallFlags.NONE, WAIT_MS, None).unpack()
    except GLib.Error:
        return None


@functools.lru_cache(maxsize=None)
def accessibility_bus(session):
    bus = connect(session)
    return connect(ask(bus, "org.a11y.Bus", "/org/a11y/bus", "org.a11y.Bus.GetAddress")[0])


def program_root(pid):
    """The program's tree as it is now, or None while it has not announced itself."""
    bus = accessibility_bus(os.environ["DBUS_SESSION_BUS_ADDRESS"])
    known = ask(bus, "org.a11y.atspi.Registry", ROOT, "org.a11y.atspi.Accessible.GetChildren")
    for name, _ in known[0] if known else []:
        owner = ask(bus, "org.freedesktop.DBus", "/org/freedesktop/DBus", "org.freedesktop.DBus.GetConnectionUnixProcessID",
                    GLib.Variant("(s)", [name]))
        if owner == (pid,):
            return Tree(bus, name).root()
    return None


Item = collections.namedtuple("Item", "own application parent index children interfaces name role description states")
Item.__doc__ = "One thing of the answer, its members in their order there."


class Tree:
    """One look at all the program has to tell."""

    def __init__(self, bus, name):
        self.bus = bus
        self.name = name
        self.items = {}
        self.below = {}
        self.places = {}
        self.look()

    def ask(self, path, method, arguments=None):
        return ask(self.bus, self.name, path, method, arguments)

    def children_of_all(self, paths):
        """All of them at once, without waiting for one answer before the next question."""
        found, open_questions = [], set(paths)

        def answered(bus, answer, asked):
            open_questions.discard(asked)
            try:
                found.extend(child for _, child in bus.call_finish(answer).unpack()[0] if child != NOWHERE)
            except GLib.Error:
                pass  # vanished meanwhile

        for path in paths:
            self.bus.call(self.name, path, "org.a11y.atspi.Accessible", "GetChildren", None, None, Gio.DBusCallFlags.NONE, WAIT_MS,
                          None, answered, path)
        while open_questions:
            GLib.MainContext.default().iteration(True)
        return found

    def property(self, path, interface, name):
        answer = self.ask(path, "org.freedesktop.DBus.Properties.Get", GLib.Variant("(ss)", [interface, name]))
        return answer[0] if answer else None

    def look(self):
        """Until the children of all that is known are known, too."""
        asked = set()
        while True:
            self.read()
            new = [path for path, item in self.items.items() if item.children > len(self.below[path]) and path not in asked]
            if not new:
                break
            while new:
                asked.update(new)
                new = [path for path in self.children_of_all(new) if path not in self.items and path not in asked]

    def read(self):
        answer = self.ask("/org/a11y/atspi/cache", "org.a11y.atspi.Cache.GetItems")
        items = [Item(*item) for item in answer[0]] if answer else []
        self.items = {item.own[1]: item for item in items}
        self.below = collections.defaultdict(list)
        for item in sorted(items, key=lambda item: item.index):
            self.below[item.parent[1]].append(item.own[1])

    def root(self):
        return Node(self, ROOT) if ROOT in self.items else None


class Node:
    """One accessible thing: its words, role and states as they were at that look; place, text and value as they are now."""

    def __init__(self, tree, path):
        self.tree = tree
        self.path = path
        self.item = tree.items[path]
        self.name = self.item.name
        self.description = self.item.description
        self.role = ROLES.get(self.item.role, "")

    @property
    def parent(self):
        path = self.item.parent[1]
        return Node(self.tree, path) if path in self.tree.items else None

    @staticmethod
    def states_of(words):
        bits = words[0] | words[1] << 32
        return {name for bit, name in STATES.items() if bits >> bit & 1}

    @property
    def states(self):
        return self.states_of(self.item.states)

    def is_now(self, state):
        answer = self.tree.ask(self.path, "org.a11y.atspi.Accessible.GetState")
        return answer is not None and state in self.states_of(answer[0])

    @property
    def showing(self):
        """GTK tells what is visible; what lies on a page that was never shown has no size."""
        if "visible" not in self.states:
            return False
        if self.path not in self.tree.places:
            self.tree.places[self.path] = self.extents
        return all(side > 0 for side in self.tree.places[self.path][2:])

    @property
    def on_screen(self):
        """It shows, and so does all that it is in; a page of a stack has no place of its own."""
        return all(node.showing or node.role in ["application", "frame"] or node.name == "GtkStackPage" for node in self.line())

    @property
    def label(self):
        """The name in words of this program: GTK 4.8 puts mnemonics and the names of classes in between."""
        words = [word for word in self.name.split() if not CLASS.fullmatch(word)]
        if words and words[0].startswith("_"):
            return " ".join(words).replace("_", "", 1)[:len(" ".join(words)) // 2].strip()
        return " ".join(words)

    def line(self):
        """This node and those above it, the nearest first."""
        node = self
        while node is not None:
            yield node
            node = node.parent

    @property
    def extents(self):
        """x, y, width and height within the window."""
        answer = self.tree.ask(self.path, "org.a11y.atspi.Component.GetExtents", GLib.Variant("(u)", [Atspi.CoordType.WINDOW]))
        return answer[0] if answer else (0, 0, 0, 0)

    @property
    def text(self):
        """Contents of an entry, or the words of a label."""
        length = self.tree.property(self.path, "org.a11y.atspi.Text", "CharacterCount") or 0
        answer = self.tree.ask(self.path, "org.a11y.atspi.Text.GetText", GLib.Variant("(ii)", [0, length]))
        return answer[0] if answer else ""

    @property
    def value(self):
        return self.tree.property(self.path, "org.a11y.atspi.Value", "CurrentValue")

    def children(self):
        return [Node(self.tree, path) for path in self.tree.below[self.path]]

    def walk(self):
        """This node and all below it, shown or not."""
        yield self
        for child in self.children():
            yield from child.walk()

    def all(self, role=None, name=None, showing=True, condition=None):
        """Nodes below of a role and, if given, with a label that begins with `name`."""
        for node in self.walk():
            if ((role is None or node.role == role) and (name is None or node.label.startswith(name))
                    and (condition is None or condition(node)) and (not showing or node.on_screen)):
                yield node

    def find(self, role=None, name=None, showing=True, condition=None):
        return next(self.all(role, name, showing, condition), None)

    def words(self):
        """Every label's text below, in order."""
        return [node.name for node in self.all("label") if node.name]

    def dump(self, depth=0):
        """For those who write tests."""
        print("  " * depth + self.role, repr(self.name), self.extents, "" if self.on_screen else "hidden")
        for child in self.children():
            child.dump(depth + 1)
