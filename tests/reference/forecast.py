#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The forecast of one sketch, computed another way. Usage: forecast.py FILE.colourway

Prints the figures of `strandwise-cli forecast FILE --json` that it knows. See strandwise_reference/.
"""
import json
import sys

import numpy as np
from scipy.ndimage import map_coordinates

from strandwise_reference import cloth, colour, liquor, pan, specks
from strandwise_reference import sketch as sketches
from strandwise_reference.strand import LEG_HALF, Strand, row_height

WIDEST = 600


def stitches(xyz):
    """CIELAB of each stitch: of the mean light of its legs."""
    return colour.lab(xyz.reshape(-1, 2, 3).mean(axis=1))


class Forecast:
    """Everything, stage after stage; each may be asked for again by itself, to be timed."""

    def __init__(self, sketch):
        self.sketch = sketch
        self.palette = colour.Palette(sketch)
        self.grid = pan.grid_of(sketch)
        self.spans = liquor.schedule(sketch)
        self.strand = Strand(sketch)
        self.pours = [pan.pours_of(sketch, self.grid, dye) for dye in sketch.dyes]
        spread = [self.field(i) for i in range(len(sketch.dyes))]
        self.fields = [field for field, _ in spread]
        self.left = [left for _, left in spread]
        self.read = [self.at_legs(field, self.strand) for field in self.fields]
        self.specks = [self.speckled(dye, self.strand) for dye in sketch.dyes]
        self.xyz = self.legs()
        self.recolour()

    def field(self, number):
        """One dye's struck cells, % owf, and the grams of it left in the liquor; specks not counted."""
        struck, left = pan.struck_dye(self.sketch, self.grid, self.spans, self.sketch.dyes[number], self.pours[number])
        return 100 * struck / pan.grams_per_cell(self.sketch, self.grid), left

    def at_legs(self, field, strand):
        """By straight lines between the middles of cells, held beyond the outermost."""
        x, y, z = strand.legs
        places = [z * self.grid.nz - 0.5, y * self.grid.ny - 0.5, x * self.grid.nx - 0.5]
        return map_coordinates(field, places, order=1, mode="nearest")

    def speckled(self, dye, strand):
        """What the dye's specks add at each leg."""
        half = LEG_HALF * strand.stitch_length_cm
        total = np.zeros(2 * strand.n)
        for i, step in enumerate(self.sketch.steps):
            if step.kind == "speckle" and step.dye == dye.id:
                total += specks.amounts(self.sketch, self.grid, self.spans, step, i, strand.legs, half)
        return total

    def legs(self):
        """XYZ, two a stitch."""
        depths = np.array([read + more for read, more in zip(self.read, self.specks)]).reshape(-1, 2 * self.strand.n)
        return self.palette.xyz(depths)

    def next_skeins(self):
        """XYZ of the legs of the other skeins that are knitted in turn."""
        for turn in range(1, self.sketch.cloth.alternate_skeins):
            strand = Strand(self.sketch, turn)
            dyes = zip(self.fields, self.sketch.dyes)
            depths = [self.at_legs(field, strand) + self.speckled(dye, strand) for field, dye in dyes]
            yield self.palette.xyz(np.array(depths).reshape(-1, 2 * strand.n))

    def recolour(self):
        """CIELAB of each stitch, and how much it varies."""
        self.lab = stitches(self.xyz)
        self.gamma_inf = cloth.infinity(self.lab)

    def variogram(self):
        """As far as any neighbour of a scan, or of the cloth if that is wider, can be."""
        widest, knitting = max(WIDEST, self.sketch.cloth.width_stitches), self.knitting()
        return cloth.variogram_by_fft(self.lab, cloth.lags_for(widest) + cloth.lags_apart(knitting, widest))

    def judge(self, gamma, gamma_inf, run):
        """@run: mean run of one colour, stitches"""
        settings = self.sketch.cloth
        return cloth.Judge(gamma, gamma_inf, self.strand.n, run, 10 / settings.stitches_per_10cm, row_height(settings))

    def knitting(self, worked=None):
        """As the sketch says, or worked otherwise."""
        knitting = cloth.Knitting.of(self.sketch, self.strand.stitch_length_cm)
        if worked is not None:
            knitting.worked = worked
            knitting.turn = self.sketch.cloth.turn_cm / self.strand.stitch_length_cm if worked == "flat" else 0.0
        return knitting

    def balance(self, number):
        """Grams poured, struck and left of one dye: its cells added up, and its specks'."""
        dye = self.sketch.dyes[number]
        poured = sum(liquor.grams(self.sketch, step) for step in self.sketch.steps if sketches.is_pour(step) and step.dye == dye.id)
        left = self.left[number]
        struck = self.fields[number].sum() / 100 * pan.grams_per_cell(self.sketch, self.grid)
        for i, step in enumerate(self.sketch.steps):
            if step.kind == "speckle" and step.dye == dye.id:
                for quick, share in liquor.shares(dye):
                    shares, _, mobile = specks.moments(self.sketch, dye, quick, step, self.spans[i + 1 :])
                    struck += liquor.grams(self.sketch, step) * share * shares.sum()
                    left += liquor.grams(self.sketch, step) * share * mobile
        return poured, struck, left


def main(path):
    forecast = Forecast(sketches.read(path))
    balances = [forecast.balance(i) for i in range(len(forecast.sketch.dyes))]
    length = forecast.strand.stitch_length_cm
    figures = {
        "dyes": [
            {"name": dye.name, "poured_g": poured, "struck_g": struck, "left_g": left}
            for dye, (poured, struck, left) in zip(forecast.sketch.dyes, balances)
        ],
        "strand_length_cm": forecast.strand.length_cm,
        "wraps": forecast.strand.wraps,
        "repeat_cm": forecast.sketch.reel.circumference_cm,
        "repeat_stitches": forecast.sketch.reel.circumference_cm / length,
        "stitch_length_cm": length,
        "stitches": forecast.strand.n,
        "bath": {"ph_start": forecast.spans[0].ph},
        "grid": list(forecast.grid.shape[::-1]),
    }
    json.dump(figures, sys.stdout, indent=2)
    print()


if __name__ == "__main__":
    main(sys.argv[1])
