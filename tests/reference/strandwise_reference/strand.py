# SPDX-License-Identifier: GPL-3.0-or-later
"""Where the strand lies: wound on the reel wrap by wrap, folded into the pan, cut into stitches."""
import numpy as np

from . import chance

LEGS = (0.275, 0.725)  # middles of a stitch's legs, and half of each, in stitch lengths
LEG_HALF = 0.175
SLOTS = 16  # wraps that share out the cross-section among them
CORRELATIONS = 8  # of the wander in one circumference
KNOTS = 1.241  # between its knots, correlations
MUNDEN = {"dry": 19.0, "wet": 21.6}

# Parts of the strand's address.
U_PLACE, V_PLACE, U_WANDER, V_WANDER = range(4)
# Parts of a scattered wrap's.
ORDER, WITHIN = range(2)


class Strand:
    """One skein's strand, from its start to its last whole stitch.

    @turn: which of the skeins that are knitted in turn, 0 the first: each is of the next place in the pan, and when
    all places are used, of another pan of the same recipe.
    """

    def __init__(self, sketch, turn=0):
        reel, cloth = sketch.reel, sketch.cloth
        lanes = sketch.lay.skeins
        place = (cloth.skein - 1 + turn) % lanes
        self.number = place + 1 + turn // lanes * lanes
        start = cloth.start_cm + turn * cloth.alternate_shift_cm
        self.length_cm = sketch.yarn.mass_g * sketch.yarn.metres_per_100_g
        self.stitch_length_cm = stitch_length(cloth)
        self.n = int((self.length_cm - start) / self.stitch_length_cm + 1e-9)
        self.starts = wrap_starts(self.length_cm, reel.circumference_cm, reel.growth)
        last = np.searchsorted(self.starts, self.length_cm, side="right") - 1
        self.wraps = last + (self.length_cm - self.starts[last]) / (self.starts[last + 1] - self.starts[last])

        middles = start + (np.arange(self.n)[:, None] + LEGS) * self.stitch_length_cm
        loop, u, v = self._on_reel(sketch, middles.ravel())
        self.legs = lay(sketch, place, loop, u, v)

    def _on_reel(self, sketch, t):
        reel = sketch.reel
        address = chance.mix(sketch.seed, self.number)
        wrap = np.searchsorted(self.starts, t, side="right") - 1
        loop = (t - self.starts[wrap]) / (self.starts[wrap + 1] - self.starts[wrap])
        v = scattered(chance.mix(address, V_PLACE), len(self.starts))[wrap]
        if reel.winding == "by-hand":
            u = scattered(chance.mix(address, U_PLACE), len(self.starts))[wrap]
        else:
            u = (wrap + loop) / reel.wraps_per_sweep
        knot = t * CORRELATIONS / (KNOTS * reel.circumference_cm)
        u = u + reel.wander * wander(chance.mix(address, U_WANDER), knot)
        v = v + reel.wander * wander(chance.mix(address, V_WANDER), knot)
        return loop, fold(u), fold(v)


def stitch_length(cloth):
    if cloth.stitch_length_cm > 0:
        return cloth.stitch_length_cm
    return np.sqrt(MUNDEN[cloth.state] / (cloth.stitches_per_10cm / 10 / row_height(cloth)))


def row_height(cloth):
    if cloth.rows_per_10cm > 0:
        return 10 / cloth.rows_per_10cm
    return 10 / (cloth.stitches_per_10cm * 5.0 / 3.8)


def wrap_starts(length, circumference, growth):
    """Where each wrap begins, one after the other, till past the end of the strand."""
    step = growth * circumference * (1 + growth / 2) / length
    starts = [0.0]
    while starts[-1] <= length:
        starts.append(starts[-1] + circumference * (1 + step * (len(starts) - 1)))
    return np.array(starts + [starts[-1] + circumference])


def scattered(address, n):
    """Each block of SLOTS wraps fills as many slots, in an order of its own, each wrap at a chance place within its slot."""
    wraps = np.arange(-(-n // SLOTS) * SLOTS)
    order = chance.mix(chance.mix(address, ORDER), wraps).reshape(-1, SLOTS)
    slot = order.argsort(axis=1).argsort(axis=1).ravel()
    return (slot + chance.even(chance.mix(chance.mix(address, WITHIN), wraps))) / SLOTS


def wander(address, place):
    """A Catmull-Rom spline through chance knots, at every place divided by its own sd."""
    knots = chance.normal(chance.mix(address, np.arange(-1, int(place.max()) + 3).astype(np.uint64)))  # from knot -1 on
    cell = place.astype(int)
    f = (place - cell)[:, None]
    weights = np.hstack([-f + 2 * f**2 - f**3, 2 - 5 * f**2 + 3 * f**3, f + 4 * f**2 - 3 * f**3, f**3 - f**2])
    return (knots[cell[:, None] + np.arange(4)] * weights).sum(axis=1) / np.sqrt((weights**2).sum(axis=1))


def fold(place):
    """Reflected at 0 and 1."""
    return 1 - np.abs(1 - np.abs(place) % 2)


def lay(sketch, lane, loop, u, v):
    """Fractions of the laid length, width and depth."""
    runs, lanes = sketch.lay.runs, sketch.lay.skeins
    run = np.minimum((loop * runs).astype(int), runs - 1)
    r = loop * runs - run
    x = np.where(run % 2 == 0, r, 1 - r)
    if sketch.lay.folding == "stacked":
        return x, (lane + u) / lanes, (run + v) / runs
    return x, (lane + (run + u) / runs) / lanes, v
