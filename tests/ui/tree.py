# SPDX-License-Identifier: GPL-3.0-or-later
"""What an assistive technology is told of the program."""
import re

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # pylint: disable=wrong-import-position


CLASS = re.compile(r"(Gtk|Adw|Sw)[A-Z]\w*")


def program_root(pid):
    """The program's node in the tree, or None while it has not announced itself."""
    try:
        desktop = Atspi.get_desktop(0)
        desktop.set_cache_mask(Atspi.Cache.NONE)
        for i in range(desktop.get_child_count()):
            child = desktop.get_child_at_index(i)
            if child is not None and child.get_process_id() == pid:
                child.set_cache_mask(Atspi.Cache.NONE)
                return Node(child)
    except GLib.Error:
        pass
    return None


class Node:
    """One accessible thing. Whatever has vanished meanwhile has no name, no role and no children."""

    def __init__(self, accessible, parent=None):
        self.accessible = accessible
        self.parent = parent

    def _ask(self, question, otherwise):
        try:
            answer = question()
        except GLib.Error:
            answer = None
        return otherwise if answer is None else answer

    @property
    def name(self):
        return self._ask(self.accessible.get_name, "")

    @property
    def description(self):
        return self._ask(self.accessible.get_description, "")

    @property
    def role(self):
        return self._ask(self.accessible.get_role_name, "")

    @property
    def states(self):
        states = self._ask(self.accessible.get_state_set, None)
        return {state.value_nick for state in states.get_states()} if states is not None else set()

    @property
    def showing(self):
        """GTK tells what is visible; what lies on a page that was never shown has no size."""
        return "visible" in self.states and self.extents[2] > 0 and self.extents[3] > 0

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
        def ask():
            iface = self.accessible.get_component_iface()
            return iface.get_extents(Atspi.CoordType.WINDOW) if iface is not None else None
        area = self._ask(ask, None)
        return (area.x, area.y, area.width, area.height) if area is not None else (0, 0, 0, 0)

    @property
    def text(self):
        """Contents of an entry, or the words of a label."""
        def read():
            iface = self.accessible.get_text_iface()
            return Atspi.Text.get_text(iface, 0, Atspi.Text.get_character_count(iface)) if iface is not None else None
        return self._ask(read, "")

    @property
    def value(self):
        def read():
            iface = self.accessible.get_value_iface()
            return iface.get_current_value() if iface is not None else None
        return self._ask(read, None)

    def children(self):
        for i in range(self._ask(self.accessible.get_child_count, 0)):
            child = self._ask(lambda index=i: self.accessible.get_child_at_index(index), None)
            if child is not None:
                yield Node(child, self)

    def walk(self, showing=True):
        """This node and all below it; nothing within what is not shown."""
        if showing and self.role not in ["application", "frame"] and self.name != "GtkStackPage" and not self.showing:
            return
        yield self
        for child in self.children():
            yield from child.walk(showing)

    def all(self, role=None, name=None, showing=True):
        """Nodes below of a role and, if given, with a label that begins with `name`."""
        for node in self.walk(showing):
            if (role is None or node.role == role) and (name is None or node.label.startswith(name)):
                yield node

    def find(self, role=None, name=None, showing=True):
        return next(self.all(role, name, showing), None)

    def words(self):
        """Every label's text below, in order."""
        return [node.name for node in self.walk() if node.role == "label" and node.name]

    def press(self):
        """Acts as an assistive technology would."""
        iface = self.accessible.get_action_iface()
        return iface is not None and self._ask(lambda: iface.do_action(0), False)

    def dump(self, depth=0):
        """For those who write tests."""
        print("  " * depth + self.role, repr(self.name), self.extents, "" if self.showing else "hidden")
        for child in self.children():
            child.dump(depth + 1)


class FocusLog:
    """Tells what the keyboard goes to, as GTK announces it."""

    def __init__(self):
        self.heard = []
        self.listener = Atspi.EventListener.new(self.hear)
        self.listener.register("object:state-changed:focused")

    def hear(self, event):
        if event.detail1 and event.source is not None:
            self.heard.append(Node(event.source))

    def take(self):
        """What has been announced since."""
        context = GLib.MainContext.default()
        while context.pending():
            context.iteration(False)
        heard, self.heard = self.heard, []
        return heard

    def close(self):
        self.listener.deregister("object:state-changed:focused")
