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
        self.step = self.band = self.cm_per_pixel = self.saved_steps = None

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

    # The skein lies across the canvas: shares of its width and height that are surely on it, where the demo is pale.
    MIDDLE, BAND_FROM, BAND_TO = 0.485, 0.58, 0.64

    def draw_band(self):
        """With the band's tool, along the skein; the first pot is the one in hand."""
        self.program.save_as(self.path)
        canvas = self.program.canvas()
        self.program.click(canvas, 0.5, 0.95)
        self.program.keys("b")
        start, end = (self.program.point(canvas, along, self.MIDDLE) for along in (self.BAND_FROM, self.BAND_TO))
        before = self.yarn_between(start, end)
        self.program.drag(start, end)
        step = self.saved_new_step()
        dye = read(self.path)["dyes"][0]
        expect(step["kind"] == "band" and step["dye"] == dye["id"], f"a band was drawn, but the file has {step}")
        expect(step["amount_ml"] > 0 and 2 < step["width_cm"] < 12, f"the band is not what was drawn: {step}")
        self.step, self.cm_per_pixel = step, step["width_cm"] / (end[0] - start[0])
        self.told(step, f"Band of {dye['name']}", "On the first face")
        colour = dye["sample"]["srgb"]
        wait_for("the yarn to take the dye's colour",
                 lambda: distance(self.yarn_between(start, end), colour) < 0.6 * distance(before, colour))
        self.band = (start, end)

    def told(self, step, *words):
        """The steps list says it in words, in its place."""
        place = [one["id"] for one in read(self.path)["steps"]].index(step["id"])

        def line():
            lines = [node.name for node in self.program.find("list", "Steps").children() if node.role == "list item"]
            return len(lines) > place and all(word in lines[place] for word in words)
        wait_for(f"the steps list to say {words}", line)

    def yarn_between(self, start, end):
        """Mean colour inside the band, clear of its outline and of its number."""
        inset = (end[0] - start[0]) // 4
        return self.desk.screen.mean(start[0] + inset, start[1] + 8, end[0] - start[0] - 2 * inset, 8)

    def saved_new_step(self):
        """Saves; the one step that the demo has not."""
        self.program.save(self.path)
        known = {step["id"] for step in read(DEMO)["steps"]}
        new = [step for step in read(self.path)["steps"] if step["id"] not in known]
        expect(len(new) == 1, f"{len(new)} new steps instead of one")
        return new[0]

    def drag_band(self):
        """To the right by 40 pixels, then undone and done again by keys; Alt keeps it from catching on anything."""
        (left, y), (right, _) = self.band
        middle = (left + right) // 2
        self.program.keys("s")
        self.desk.xdotool("keydown", "alt")
        self.program.drag((middle, y), (middle + 40, y))
        self.desk.xdotool("keyup", "alt")
        moved = self.saved_new_step()
        way = moved["x_cm"] - self.step["x_cm"]
        expect(abs(way - 40 * self.cm_per_pixel) < 0.4, f"dragged by {40 * self.cm_per_pixel:.2f} cm, moved by {way:.2f} cm")
        expect(moved["width_cm"] == self.step["width_cm"], "the drag has changed the width as well")
        self.program.keys("ctrl+z")
        expect(self.saved_new_step()["x_cm"] == self.step["x_cm"], "undo did not take the band back")
        self.program.keys("ctrl+shift+z")
        expect(self.saved_new_step()["x_cm"] == moved["x_cm"], "redo did not move the band again")

    def forecast_has_band(self):
        """The dye that was poured strikes, and the first pot gives more of it than in the demo; the window says what the command line says."""
        self.program.find("label", forecast(self.path)["pooling"]["sentence"])
        before, after = (forecast(path)["dyes"][0] for path in (DEMO, self.path))
        poured = self.step["amount_ml"] * read(self.path)["dyes"][0]["stock_percent"] / 100
        expect(abs(after["poured_g"] - before["poured_g"] - poured) < 1e-6, f"{before} has become {after}")
        expect(after["struck_g"] > before["struck_g"] + 0.9 * poured, f"of {poured} g hardly anything has struck")

    def speckle_second_face(self):
        canvas = self.program.canvas()
        self.program.keys("f", "k")
        before = {step["id"] for step in read(self.path)["steps"]}
        self.program.find("push button", "Second Face")
        self.program.wait_until_still()
        (left, top), (right, bottom) = (self.program.point(canvas, *place) for place in [(0.2, self.MIDDLE - 0.03), (0.35, self.MIDDLE + 0.03)])
        zone = (left + 8, top + 4, right - left - 16, bottom - top - 8)
        clean = self.desk.screen.mean(*zone)
        self.program.drag((left, top), (right, bottom))
        self.program.save(self.path)
        steps = read(self.path)["steps"]
        kinds = [step["kind"] for step in steps]
        places = [i for i, step in enumerate(steps) if step["id"] not in before]
        expect(len(places) == 1 and kinds[places[0]] == "speckle", f"a speckle zone was drawn, the steps are {kinds}")
        expect(kinds[:places[0]].count("flip") == 1, "the speckles do not lie on the second face")
        self.told(steps[places[0]], "Speckles of", "On the second face")
        wait_for("specks on the yarn", lambda: distance(self.desk.screen.mean(*zone), clean) > 3)
        self.saved_steps = steps
        self.program.keys("f", "s")

    def change_width(self):
        spin = self.program.go_to("alt+2", "spin button", "Width")
        self.program.wait_until_still()
        cloth = self.program.area(self.program.find(name="Knitted cloth"))
        before = self.desk.screen.print_of(*cloth)
        self.program.set_spin(spin, WIDTH)
        wait_for("the cloth to change", lambda: self.desk.screen.print_of(*cloth) != before)
        self.program.find("label", f"At {WIDTH} stitches")

    def undo_and_redo(self):
        """Of a click on the chart. Back at what was saved there is nothing to save."""
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
        save = self.program.find("push button", "Save")
        wait_for("nothing to save", lambda: not save.is_now("sensitive"))

    def save(self):
        self.program.save(self.path)
        saved, demo = read(self.path), read(DEMO)
        expect(saved["cloth"]["width_stitches"] == WIDTH, f"the file says {saved['cloth']}")
        for part in ["title", "yarn", "lay", "dyes"]:
            expect(saved[part] == demo[part], f"“{part}” in the file is not as in the demo")
        expect(saved["steps"] == self.saved_steps, "the steps have changed with the width")
        wait_for("the draft to go", lambda: not drafts(self.desk))

    def forecast_agrees(self):
        """The window and the command line say the same of the same file."""
        sentence = forecast(self.path)["pooling"]["sentence"]
        expect(sentence.startswith(f"At {WIDTH} "), f"the command line says “{sentence}”")
        self.program.find("label", sentence)

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
        self.program.bring_back()
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


def distance(one, other):
    return sum((a - b) ** 2 for a, b in zip(one, other)) ** 0.5


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
        tap.run("a band is drawn and its yarn takes the dye", job.draw_band)
        tap.run("a drag moves it, undo and redo too", job.drag_band)
        tap.run("the forecast counts its dye", job.forecast_has_band)
        tap.run("a speckle zone goes on the second face", job.speckle_second_face)
        tap.run("the width changes the cloth and its verdict", job.change_width)
        tap.run("saving writes what was edited, and only that", job.save)
        tap.run("the command line forecasts the same", job.forecast_agrees)
        tap.run("a click on the width scan is undone and done again", job.undo_and_redo)
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
