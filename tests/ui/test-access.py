#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What those who do not see the window, or have no pointer, get of it. Prints TAP."""
import re
import time

from desk import Desk
from program import DEMO, Program, read
from tap import Tap, expect, skip_without_display
from tree import FocusLog

CONTROLS = {"push button", "toggle button", "check box", "radio button", "entry", "text", "spin button", "slider",
            "combo box", "list", "image", "canvas", "page tab"}
PLACES = {"alt+1": ("list", "Steps"), "alt+2": ("spin button", "Width"), "alt+3": ("label", "Dye Sheet"), "alt+4": ("label", "Listing")}

# What the keyboard must reach from the beginning of each place: starts of labels.
REACHED = {"alt+1": ["Save", "Main Menu", "Pan", "Skein in the pan"],
           "alt+2": ["Save", "Cloth", "Width", "Pooling at every width"]}


def is_part(node):
    """GTK's own inner pieces: they are named by the button or group right around them, or belong to a chooser."""
    above = list(node.line())[1:7]
    if above[0].role == "push button" and not above[0].label:
        return is_part(above[0])
    return above[0].label != "" and above[0].role != "list item" or any(one.role in ["scroll bar", "combo box"] for one in above)


def names_given(program):
    for key, (role, name) in PLACES.items():
        program.go_to(key, role, name)
        for node in program.tree.walk():
            if node.role in CONTROLS and not node.label and not is_part(node) and node.role != "image":
                yield f"{key}: a {node.role} at {node.extents} in {[above.label or above.role for above in node.line()][1:5]}"


def check_names(program):
    unnamed = list(names_given(program))
    expect(not unnamed, "without a name:\n" + "\n".join(unnamed))


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
    program.go_to("alt+1", "list", "Steps")
    items = [node for node in program.find("list", "Steps").children() if node.role == "list item"]
    steps = read(DEMO)["steps"]
    expect(len(items) == len(steps), f"{len(steps)} steps, {len(items)} lines")
    short = []
    for step, item in zip(steps, items):
        words = " ".join(part.name + " " + part.description for part in item.walk(showing=False))
        short += [f"“{words}” does not tell {what}" for what in missing_words(step, words)]
    expect(not short, "\n".join(short))


def check_pictures(program):
    """Each picture says in words what it shows."""
    for name in ["Skein in the pan", "Colours along one loop of the strand", "Knitted cloth"]:
        node = program.find(name=name)
        expect(node.description.strip(), f"“{name}” has no description")


def tab_walk(program, key, presses=45):
    """Labels that get the focus when Tab is pressed time and again; a list does when one of its lines has it."""
    program.go_to(key, *PLACES[key])
    lists = [node for node in program.tree.all("list") if node.label in REACHED[key]]
    log = FocusLog()
    reached = set()
    try:
        for _ in range(presses):
            program.keys("Tab")
            time.sleep(0.08)
            reached.update(node.label for node in log.take())
            reached.update(node.label for node in lists
                           if node.label not in reached and any("focused" in line.states for line in node.children()))
    finally:
        log.close()
    return reached


def check_keyboard(program, key):
    reached = tab_walk(program, key)
    missed = [label for label in REACHED[key] if not any(words.startswith(label) for words in reached)]
    expect(not missed, f"Tab does not reach {missed}, only {sorted(filter(None, reached))}")


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
        tap.run("Tab reaches the main things of the pan", check_keyboard, program, "alt+1")
        tap.run("Tab reaches the main things of the cloth", check_keyboard, program, "alt+2")
        tap.run("every control has a name", check_names, program)
        tap.run("the program has complained of nothing", program.check_quiet)
    tap.finish()


if __name__ == "__main__":
    main()
