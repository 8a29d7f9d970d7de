#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What those who do not see the window, or have no pointer, get of it. Prints TAP."""
import re
import time

from desk import Desk, wait_for
from program import DEMO, Program, read
from tap import Tap, expect, skip_without_display

PLACES = ["Pan", "Cloth", "Dye Sheet", "Listing"]
CONTROLS = {"push button", "toggle button", "check box", "radio button", "entry", "text", "spin button", "slider",
            "combo box", "list item", "canvas", "page tab"}

# Windows have keys of their own for these.
FRAME = {"Minimize", "Maximize", "Close"}

# More than any place has.
MOST_TABS = 160


def show_place(program, number):
    """Opens one of the four and returns what is in it."""
    program.keys(f"alt+{number + 1}")
    wait_for(f"the place {PLACES[number]}",
             lambda: any(tab.label == PLACES[number] and "selected" in tab.states for tab in program.tree.all("page tab")))
    pan = program.tree.find(showing=False, condition=lambda node: node.name == "SwPanPage")
    return pan.parent.children()[number]


def controls(node):
    """What the keyboard can use of what is shown; what is in an insensitive row is so, too, and does not say it."""
    for part in node.all():
        if part.role in CONTROLS and "focusable" in part.states and part.label not in FRAME and not is_part(part):
            if all("sensitive" in above.states for above in part.line() if above.role not in ["frame", "application"]):
                yield part


def is_part(node):
    """The toolkit's own inner pieces: a button that carries the name of the button around it, the list within a chooser."""
    above = list(node.line())[1:7]
    if any(one.role in ["scroll bar", "combo box"] for one in above):
        return True
    if node.role != "push button" or node.label:
        return False
    return above[0].label != "" or above[0].role == "push button" and is_part(above[0])


def says(node):
    return f"{node.role} “{node.label}” at {node.extents} in {[above.label or above.role for above in node.line()][1:4]}"


def check_names(program):
    """Of the places, of a pour's and a dye's properties, and of the header."""
    def unnamed(where, parts):
        return [f"{where}: {says(node)}" for part in parts for node in controls(part) if not node.label]

    missed = unnamed("header", [program.find("push button", "Main Menu").parent.parent])
    for number, place in reversed(list(enumerate(PLACES))):
        missed += unnamed(place, [show_place(program, number)])
    program.click(program.canvas(), 0.2, 0.485)
    program.find("text", "Place along")
    missed += unnamed("a pour", [show_place(program, 0)])
    program.click(program.find("push button", "Colour, Depth"))
    done = program.find("push button", "Done")
    missed += unnamed("a dye", [show_place(program, 0)])
    program.click(done)
    expect(not missed, "without a name:\n" + "\n".join(missed))


def numbers(words):
    return [float(number.replace(",", ".")) for number in re.findall(r"\d+(?:[.,]\d+)?", words)]


def missing_words(step, words):
    """What a pour's line does not tell of it."""
    if step.get("name") and step["name"] not in words:
        yield "its name"
    for member, scale in [("amount_ml", 1), ("amount_g", 1), ("x_cm", 1), ("width_cm", 1), ("worked_in", 100), ("minutes", 1),
                          ("temperature_c", 1)]:
        value = step.get(member)
        if value and not any(abs(number - scale * value) <= 0.006 * max(1, scale * value) for number in numbers(words)):
            yield f"{member} = {value}"


def check_steps(program):
    """Each step of the file is a line of the list, in order, with its numbers in words."""
    show_place(program, 0)
    items = [node for node in program.find("list", "Steps").children() if node.role == "list item"]
    steps = read(DEMO)["steps"]
    expect(len(items) == len(steps), f"{len(steps)} steps, {len(items)} lines")
    short = []
    for step, item in zip(steps, items):
        words = " ".join(part.name + " " + part.description for part in item.walk())
        short += [f"“{words}” does not tell {what}" for what in missing_words(step, words)]
    expect(not short, "\n".join(short))


def check_pictures(program):
    """Each picture says in words what it shows."""
    for name in ["Skein in the pan", "Colours along one loop of the strand", "Knitted cloth"]:
        node = program.find(name=name)
        expect(node.description.strip(), f"“{name}” has no description")


def focused(program):
    """The innermost thing that has the keyboard."""
    return next((node for node in reversed(list(program.tree.walk())) if "focused" in node.states), None)


def press(program, key):
    program.keys(key)
    time.sleep(0.02)
    return focused(program)


def walk_by_tab(program, reached):
    """Once around the window."""
    first = None
    for _ in range(MOST_TABS):
        node = press(program, "Tab")
        if node is None:
            continue
        if node.path == first and len(reached) > 5:
            return
        first = first or (node.path if node.role != "panel" else None)
        reached.add(node.path)
    expect(False, "Tab does not come around")


def walk_list(program, rows, reached):
    """From a thing in the list by arrows, which an amount leaves to the list while Ctrl is held."""
    for key in ["ctrl+Up", "ctrl+Down"]:
        for _ in range(len(rows)):
            node = press(program, key)
            if node is not None:
                reached.add(node.path)


def check_keyboard(program, number):
    """Tab gets to every control of a place and of the header; to a row of a list, arrows or what is in it do."""
    shown = show_place(program, number)
    header = program.find("push button", "Main Menu").parent.parent
    wanted = [node for part in (shown, header) for node in controls(part)]
    reached = set()
    if number == 0:
        walk_properties(program, reached)
    walk_by_tab(program, reached)
    for title in [node for node in shown.all("list") if node.label in ["Dye Pots", "Steps"]]:
        rows = [node for node in title.children() if node.role == "list item"]
        program.click(next(part for row in rows[1:] for part in row.all() if part.role in ["push button", "text"]))
        press(program, "Escape")
        walk_list(program, rows, reached)
    missed = [node for node in wanted if node.path not in reached and not any(part.path in reached for part in node.walk())]
    expect(not missed, "the keyboard does not reach\n" + "\n".join(map(says, missed)))


def walk_properties(program, reached):
    """With nothing selected they are the colourway's; Return goes to them from the pan, where Tab would select a pour."""
    program.keys("Escape")
    node = press(program, "Return")
    for _ in range(30):
        reached.add(node.path)
        node = press(program, "Tab")
        if node is None or node.role == "page tab":
            break


def leave_guide(program):
    program.find("push button", "Skip")
    program.keys("Escape")
    program.gone("push button", "Skip")


def main():
    skip_without_display()
    tap = Tap(one_job=False)
    with Desk() as desk:
        program = Program(desk).wait_until_shown()
        tap.run("Escape leaves the guide", leave_guide, program)
        tap.run("each step is told in words", check_steps, program)
        tap.run("the pictures are described", check_pictures, program)
        for number, place in enumerate(PLACES):
            tap.run(f"the keyboard reaches everything of the place {place}", check_keyboard, program, number)
        tap.run("every control has a name", check_names, program)
        tap.run("the program has complained of nothing", program.check_quiet)
    tap.finish()


if __name__ == "__main__":
    main()
