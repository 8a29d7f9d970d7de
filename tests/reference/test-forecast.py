#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Holds the program's forecast of one sketch against another computation of it. Prints TAP.

Usage: test-forecast.py STRANDWISE-CLI DUMP-FORECAST FILE.colourway

Each line tells how far apart the two are at most, and what is allowed. What is allowed is said,
with its reasons, in docs/science.md, 'How the forecast is checked'.
"""
import csv
import io
import json
import subprocess
import sys

try:
    import numpy as np
    from forecast import Forecast, WIDEST, sketches, stitches
    from strandwise_reference import cloth, colour, dump, liquor, specks, stripes
    from strandwise_reference.tap import Tap
except ImportError as missing:
    print(f"1..0 # SKIP {missing}")
    sys.exit(0)

# How far the two may be apart.
PRINTED = 2e-8  # of a figure: what is printed has nine digits
GRAMS = 1e-9  # of the dye poured
PH = 1e-6
ABSORPTION = 1e-6  # of the greatest K/S: the program keeps it in single precision
PLACE = 1e-6  # of the box: likewise
DEPTH = {  # of the peak
    "straight": 1e-6,  # likewise
    "slanted": 2e-5,  # the program cuts the cells of an edge into eight strips
    "splotch": 2e-3,  # likewise, and at the tips a strip ends many cells from the next
}
COLOUR = 0.05  # CIEDE2000
SPECK_COLOUR = 0.5  # at all but a hundredth of the legs
LAB = 3e-4
GAMMA = 1e-9  # of gamma_inf
GAMMA_ALL_THE_WAY = 5e-3  # of gamma_inf, from the file on
STACK = 1e-9
STACK_ALL_THE_WAY = 0.022  # a neighbour may be the best by a hair for one and not for the other
STACK_IN_CLOTH = {10000: 0.05, 0: 0.15}  # by stitches: a piece without its cast-on against the whole strand
ALIKE = 20.0  # CIELAB, stitches of a stripe's colour: so much a run may span on a gradient
RUN = 1.5  # a factor
LONG_RUN = 20  # stitches


def apart(one, other):
    """Relative difference."""
    one, other = np.asarray(one, float), np.asarray(other, float)
    return np.max(np.abs(one - other) / np.maximum(np.abs(other), 1e-300), initial=0.0, where=one != other)


class Comparison:
    def __init__(self, tap, cli, dump_program, path):
        self.tap, self.cli, self.path = tap, cli, path
        self.ours = Forecast(sketches.read(path))
        self.sketch = self.ours.sketch
        self.theirs = dump.arrays(dump_program, path)
        self.printed = json.loads(self.run("forecast", path, "--json"))
        self.their_lab = np.column_stack([self.theirs[name] for name in ("lab_l", "lab_a", "lab_b")])
        self.their_xyz = np.column_stack([self.theirs[name] for name in ("leg_x", "leg_y", "leg_z")])

    def run(self, *arguments):
        return subprocess.run([self.cli, *arguments], check=True, stdout=subprocess.PIPE).stdout.decode()

    def figures(self):
        ours, printed = self.ours, self.printed
        length = ours.strand.stitch_length_cm
        mine = [ours.strand.length_cm, ours.strand.wraps, self.sketch.reel.circumference_cm, self.sketch.reel.circumference_cm / length, length]
        names = ["strand_length_cm", "wraps", "repeat_cm", "repeat_stitches", "stitch_length_cm"]
        self.tap.hold("lengths and wraps", [apart(printed[name], value) for name, value in zip(names, mine)], PRINTED)
        self.tap.say(printed["stitches"] == ours.strand.n, "stitches", printed["stitches"])
        self.tap.say(tuple(printed["grid"]) == ours.grid.shape[::-1], "grid", printed["grid"])

    def bath(self):
        spans, printed = self.ours.spans, self.printed["bath"]
        states = [self.theirs[f"state{i}"] for i in range(len(spans))]
        self.tap.hold("pH", [abs(state[3] - span.ph) for state, span in zip(states, spans)], PH)
        self.tap.hold("pH as printed", [abs(printed["ph_start"] - spans[0].ph)] + [abs(step["ph"] - span.ph) for step, span in zip(printed["steps"], spans[1:])], PH)
        mine = [[span.minutes, span.temperature_c, span.liquor_ml, span.cover, span.second_face] for span in spans]
        self.tap.hold("time, warmth, liquor, cover, face", apart([state[[0, 1, 2, 4, 5]] for state in states], mine), PRINTED)

    def balance(self):
        mine = np.array([self.ours.balance(i) for i in range(len(self.sketch.dyes))])
        poured = np.maximum(mine[:, :1], 1e-300)
        theirs = np.array([self.theirs[f"dye{i}"] for i in range(len(mine))])
        printed = np.array([[dye["poured_g"], dye["struck_g"], dye["left_g"]] for dye in self.printed["dyes"]])
        self.tap.hold("dye poured = struck + left, both", [abs(b[:, 0] - b[:, 1] - b[:, 2]) / poured[:, 0] for b in (mine, theirs)], GRAMS)
        self.tap.hold("dye poured, struck, left", abs(theirs - mine) / poured, GRAMS)
        self.tap.hold("dye as printed", abs(printed - mine) / poured, GRAMS)
        self.tap.hold("percent of dye struck", apart(self.printed["bath"]["clear_percent"], 100 * mine[:, 1].sum() / mine[:, 0].sum()), PRINTED)

    def palette(self):
        ours = self.ours.palette
        errors = [abs(self.theirs["yarn"] - ours.yarn).max() / ours.yarn.max()]
        errors += [abs(self.theirs[f"slope{i}"] - slope).max() / slope.max() for i, slope in enumerate(ours.dyes)]
        self.tap.hold("absorption of yarn and dyes", errors, ABSORPTION)

    def cells(self):
        for i, dye in enumerate(self.sketch.dyes):
            pours = [self.sketch.steps[at] for at in self.ours.pours[i]]
            if pours:
                theirs, ours = self.theirs[f"field{i}"].reshape(self.ours.grid.shape), self.ours.fields[i]
                allowed = max(DEPTH["splotch" if step.kind == "splotch" else "slanted" if step.angle_deg else "straight"] for step in pours)
                self.tap.hold(f"cells of {dye.name}, of the peak", abs(theirs - ours) / ours.max(), allowed)

    def scattered(self):
        speckles = [step for step in self.sketch.steps if step.kind == "speckle"]
        for i, step in enumerate(speckles):
            ours = specks.scatter(self.sketch, step)
            theirs = self.theirs[f"specks{i}"].reshape(-1, 4)
            shares = [share for _, share in liquor.shares(self.sketch.dye(step.dye))]
            mine = np.concatenate([np.column_stack([ours.x, ours.y, ours.radius, share * ours.grams]) for share in shares])
            self.tap.hold(f"{len(ours.x)} specks of step {step.id}", abs(theirs - mine) / abs(mine).max(axis=0), PLACE)

    def strand(self):
        errors = [abs(self.theirs[name] - place).max() for name, place in zip("xyz", self.ours.strand.legs)]
        self.tap.hold("places of the legs", errors, PLACE)

    def colours(self):
        difference = colour.ciede2000(colour.lab(self.their_xyz), colour.lab(self.ours.xyz))
        speckled = sum(self.ours.specks, np.zeros(len(difference))) > 1e-6
        self.tap.hold(f"colour of {np.sum(~speckled)} legs", difference[~speckled], COLOUR)
        if speckled.any():
            most = np.percentile(difference[speckled], 99)
            detail = f"{most:.2g} in all but a hundredth, allowed {SPECK_COLOUR:.2g}; at most {difference[speckled].max():.2g}"
            self.tap.say(most <= SPECK_COLOUR, f"colour of {np.sum(speckled)} legs with specks", detail)
        self.tap.hold("CIELAB of the stitches from their legs", abs(self.their_lab - stitches(self.their_xyz)), LAB)

    def next_skeins(self):
        self.their_labs = [self.their_lab]
        for turn, ours in enumerate(self.ours.next_skeins(), 1):
            theirs = np.column_stack([self.theirs[f"next_{axis}{turn}"] for axis in "xyz"])
            self.their_labs.append(stitches(theirs))
            difference = colour.ciede2000(colour.lab(theirs), colour.lab(ours))
            self.tap.hold(f"colour of the legs of skein {turn + 1} in turn, all but a hundredth", np.percentile(difference, 99), SPECK_COLOUR)

    def variogram(self):
        gamma, inf = self.theirs["gamma"], self.theirs["cloth"][0]
        same_strand = cloth.variogram(self.their_lab, range(len(gamma)))
        self.tap.hold("variogram of the same colours, every lag", abs(gamma - same_strand) / inf, GAMMA)
        self.tap.hold("its limit", apart(inf, cloth.infinity(self.their_lab)), GAMMA)
        lags = np.arange(0, len(gamma), 3)
        self.tap.hold("variogram all the way", abs(gamma[lags] - cloth.variogram(self.ours.lab, lags)) / inf, GAMMA_ALL_THE_WAY)
        self.gamma = same_strand

    def stacks(self):
        inf, _, cast_on, rows = self.theirs["cloth"]
        width, knitting = self.sketch.cloth.width_stitches, self.ours.knitting()
        theirs = self.theirs["stacks"].reshape(cloth.ROWS, -1)
        table = cloth.stacks(self.gamma, inf, knitting, width)
        self.tap.hold("stack of every neighbour, column by column", abs(theirs - table)[np.isfinite(table)], STACK)
        laid = cloth.laid(knitting, width, self.their_labs)
        ours = len(laid), cloth.whole_cast_on(knitting, width)
        self.tap.say(ours == (rows, cast_on), "rows and cast-on", ours)
        pairs = [(up, right) for up in (1, 2, 3, 8) for right in (-6, -1, 0, 1, 4) if len(laid) > 2 * up]
        errors = [abs(theirs[up - 1, cloth.SIDE + right] - cloth.stack_of_cloth(laid, inf, up, right)) for up, right in pairs]
        allowed = next(allowed for least, allowed in STACK_IN_CLOTH.items() if self.ours.strand.n >= least)
        self.tap.hold("stack in the cloth as laid out", errors, allowed)

    def verdicts(self):
        inf, run, _, _ = self.theirs["cloth"]
        scan = list(csv.DictReader(io.StringIO(self.run("scan", self.path, "--from", "10", "--to", str(WIDEST), "--csv"))))
        for worked in ("flat", "round"):
            rows = [row for row in scan if row["worked"] == worked]
            widths = [int(row["width"]) for row in rows]
            theirs = [cloth.Verdict(float(row["stack"]), int(row["row_step"]), int(row["stitch_step"]), row["verdict"]) for row in rows]

            knitting, quickly = self.ours.knitting(worked), self.sketch.cloth.alternate_skeins == 1
            judge = self.ours.judge(self.gamma, inf, run)
            same = sum(ours == their for ours, their in zip(judge.judge(knitting, widths), theirs))
            self.tap.say(same == len(rows), f"verdicts on every width {worked}, same colours", f"{same} of {len(rows)} alike")

            judge = self.ours.judge(self.ours.variogram(), self.ours.gamma_inf, run)
            ours = judge.judge(knitting, widths, quickly)
            errors = [abs(mine.stack - their.stack) for mine, their in zip(ours, theirs)]
            self.tap.hold(f"best stack of every width {worked}, all the way", errors, STACK_ALL_THE_WAY)
            words = sum(mine.word == their.word for mine, their in zip(ours, theirs))
            self.tap.say(words >= 0.98 * len(rows), f"verdicts {worked}, all the way", f"{words} of {len(rows)} alike, 98 % wanted")

        pooling, settings = self.printed["pooling"], self.sketch.cloth
        printed = cloth.Verdict(*(pooling[name] for name in ("stack", "row_step", "stitch_step", "verdict")))
        ours = self.ours.judge(self.gamma, inf, run).judge(self.ours.knitting(), [settings.width_stitches])[0]
        self.tap.say(ours == printed, "verdict as printed", ours)

    def stripes(self):
        """Another way of cutting cuts elsewhere: colours and the mean run only, and roughly."""
        smooth = stripes.without_specks(self.their_lab)
        short = []
        for stripe in self.printed["stripes"]:
            if stripe["share"] >= 0.1:
                found = np.mean(np.linalg.norm(smooth - stripe["lab"], axis=1) <= ALIKE)
                if found < stripe["share"] / 2:
                    short.append(stripe["name"])
        self.tap.say(not short, "colours of the large stripes are on the strand", ", ".join(short) or "all")
        self.tap.hold("shares of the stripes", abs(sum(stripe["share"] for stripe in self.printed["stripes"]) - 1), PRINTED)
        theirs, ours = self.theirs["cloth"][1], stripes.mean_run(stripes.runs(smooth)[0])
        close = max(theirs, ours) < LONG_RUN or 1 / RUN <= theirs / ours <= RUN
        self.tap.say(close, "mean run", f"{theirs:.1f} and {ours:.1f} stitches, from {LONG_RUN} on within {RUN} times")


def main(cli, dump_program, path):
    tap = Tap()
    comparison = Comparison(tap, cli, dump_program, path)
    for part in ("figures", "bath", "balance", "palette", "cells", "scattered", "strand", "colours", "next_skeins", "variogram", "stacks", "verdicts", "stripes"):
        getattr(comparison, part)()
    tap.end()


if __name__ == "__main__":
    main(*sys.argv[1:])
