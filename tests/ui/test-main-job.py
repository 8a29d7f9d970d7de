#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A dyer's first sitting: from the demo to a saved colourway, through a crash. Prints TAP."""
from desk import Desk, wait_for
from program import DEMO, Program, forecast, read
from tap import Tap, expect, skip_without_display

WIDTH, LATER_WIDTH = 71, 80


class Sitting:
    """What goes from one step of the job to the next."""

    def __init__(self, desk):
        self.desk = desk
        self.path = desk.folder / "home/first.colourway"
        self.program = None
        self.page = None

    def open_first_time(self):
        self.program = Program(self.desk).wait_until_shown()
        frame = self.program.tree.find("frame")
        expect(frame.label == read(DEMO)["title"], f"the window is called “{frame.label}”, not after the demo")
        steps = [node for node in self.program.find("list", "Steps").children() if node.role == "list item"]
        expect(len(steps) == len(read(DEMO)["steps"]), f"{len(steps)} steps are listed")

    def leave_guide(self):
        self.program.leave_guide()

    def skein_looks_dyed(self):
        """The demo's deep water lies at the skein's beginning, a pale gap right of its middle."""
        strip = self.program.area(self.program.find(name="Colours along one loop of the strand"))
        water = self.mean_of(strip, 0.06, 0.5)
        mist = self.mean_of(strip, 0.32, 0.5)
        expect(water[2] > water[0] + 30 and sum(water) < 300, f"deep water looks like {water}")
        expect(min(mist) > 150, f"the mist looks like {mist}")

    def mean_of(self, area, along, across, share=0.02):
        x, y, width, height = area
        side = max(4, round(share * width))
        return self.desk.screen.mean(round(x + along * width) - side // 2, round(y + across * height) - side // 2, side, side)

    def change_width(self):
        spin = self.program.go_to("alt+2", "spin button", "Width")
        cloth = self.program.area(self.program.find(name="Knitted cloth"))
        before = self.desk.screen.print_of(*cloth)
        self.program.set_spin(spin, WIDTH)
        wait_for("the cloth to change", lambda: self.desk.screen.print_of(*cloth) != before)
        self.program.find("label", f"At {WIDTH} stitches")

    def undo_and_redo(self):
        spin = self.program.find("spin button", "Width")
        canvas = self.program.find(name="Pooling at every width")
        self.program.click(canvas, 0.5, 0.9)
        clicked = wait_for("the width that was clicked", lambda: spin.value != WIDTH and spin.value)
        self.program.keys("ctrl+z")
        wait_for("the undo", lambda: spin.value == WIDTH)
        self.program.keys("ctrl+shift+z")
        wait_for("the redo", lambda: spin.value == clicked)
        self.program.keys("ctrl+z")
        wait_for("the second undo", lambda: spin.value == WIDTH)

    def save(self):
        self.program.save_as(self.path)
        saved, demo = read(self.path), read(DEMO)
        expect(saved["cloth"]["width_stitches"] == WIDTH, f"the file says {saved['cloth']}")
        for part in ["title", "yarn", "lay", "dyes", "steps"]:
            expect(saved[part] == demo[part], f"“{part}” in the file is not as in the demo")
        wait_for("the draft to go", lambda: not drafts(self.desk))

    def forecast_agrees(self):
        """The window and the command line say the same of the same file."""
        sentence = next(words for words in self.program.tree.find("frame").words() if words.startswith(f"At {WIDTH} "))
        said = forecast(self.path)
        expect(sentence in str(said), f"the window says “{sentence}”, the command line something else")

    def be_killed(self):
        spin = self.program.find("spin button", "Width")
        self.program.set_spin(spin, LATER_WIDTH)
        wait_for("a draft with the last edit",
                 lambda: any(read(draft)["cloth"]["width_stitches"] == LATER_WIDTH for draft in drafts(self.desk)))
        self.program.check_quiet()
        self.program.kill()
        expect(read(self.path)["cloth"]["width_stitches"] == WIDTH, "the file has changed without being saved")

    def recover(self):
        self.program = Program(self.desk).wait_until_shown()
        self.program.click(self.program.find("push button", "Bring Back"))
        self.program.gone("push button", "Bring Back")
        spin = self.program.go_to("alt+2", "spin button", "Width")
        wait_for("the last edit", lambda: spin.value == LATER_WIDTH)
        expect(self.program.tree.find("push button", "Skip") is None, "the guide is back")

    def save_recovered(self):
        self.program.save(self.path)
        expect(read(self.path)["cloth"]["width_stitches"] == LATER_WIDTH, "the recovered drawing was not saved into its file")
        wait_for("the draft to go", lambda: not drafts(self.desk))

    def leave(self):
        self.program.quit()
        self.program.check_quiet()


def drafts(desk):
    return list((desk.folder / "data/strandwise/drafts").glob("*/*.colourway"))


def main():
    skip_without_display()
    tap = Tap()
    with Desk() as desk:
        job = Sitting(desk)
        tap.run("the first start shows the demo", job.open_first_time)
        tap.run("the guide can be left", job.leave_guide)
        tap.run("the strand looks dyed", job.skein_looks_dyed)
        tap.run("the width changes the cloth and its verdict", job.change_width)
        tap.run("a click on the width scan is undone and done again", job.undo_and_redo)
        tap.run("saving writes what was edited, and only that", job.save)
        tap.run("the command line forecasts the same", job.forecast_agrees)
        tap.run("a kill leaves the file as it was", job.be_killed)
        tap.run("the next start brings the last edit back", job.recover)
        tap.run("what was brought back is saved into its own file", job.save_recovered)
        tap.run("the program ends well and has complained of nothing", job.leave)
        if tap.failed and job.program is not None:
            job.program.keep_picture()
            print("#", job.program.errors.read_text().replace("\n", "\n# "))
    tap.finish()


if __name__ == "__main__":
    main()
