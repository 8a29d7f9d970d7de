# SPDX-License-Identifier: GPL-3.0-or-later
"""The strand as cloth: alike by direct sums, stitches as index arrays, neighbours by asking each stitch for its own."""
from dataclasses import dataclass

import numpy as np
from scipy import fft

ROWS, SIDE = 8, 6
EVEN_VARIANCE = 2 * 2.0**2
PATTERN = 0.25
HAIR = 20
TURN = 64


def lags_for(width):
    """Lags that a cloth of that width asks for."""
    return ROWS * (width + TURN) + SIDE + 1


def lags_apart(knitting, width):
    """More than those, when the skeins that are knitted in turn begin at different places."""
    return int(np.ceil(knitting.cast_on * width + (knitting.skeins - 1) * knitting.shift)) + 1 if knitting.skeins > 1 else 0


def variogram(lab, lags):
    """Mean |Lab(i) - Lab(i+h)|^2 for each of the lags, by direct sums; 2 var where the strand ends before."""
    lab, n = np.ascontiguousarray(lab), len(lab)
    gamma = np.full(len(lags), infinity(lab))
    for i, lag in enumerate(lags):
        if lag < n:
            step = (lab[lag:] - lab[: n - lag]).ravel()
            gamma[i] = step @ step / (n - lag)
    return gamma


def variogram_by_fft(lab, n_lags):
    """The same for the first @n_lags at once, to be timed: numpy's own way to be quick."""
    n = len(lab)
    centred = lab - lab.mean(axis=0)
    size = fft.next_fast_len(n + n_lags, real=True)
    spectrum = fft.rfft(centred, size, axis=0)
    alike = fft.irfft((spectrum * spectrum.conj()).sum(axis=1), size)[:n_lags]
    squares = np.concatenate([[0], np.cumsum((centred**2).sum(axis=1))])
    lags = np.arange(min(n, n_lags))
    gamma = np.full(n_lags, infinity(lab))
    gamma[lags] = (squares[n - lags] + squares[n] - squares[lags] - 2 * alike[lags]) / (n - lags)
    return gamma


def infinity(lab):
    return 2 * lab.var(axis=0).sum()


@dataclass
class Knitting:
    """How the cloth takes yarn, in stitches' worth of it."""

    worked: str
    turn: float  # at each turn of flat work
    cast_on: float  # of the first skein, per stitch of width
    skeins: int = 1  # knitted in turn
    rows: int = 1  # from one before the next takes over
    shift: float = 0.0  # further in that each next one starts

    @classmethod
    def of(cls, sketch, length):
        cloth = sketch.cloth
        cast_on = cloth.cast_on * 10 / cloth.stitches_per_10cm / length
        alternation = cloth.alternate_skeins, cloth.alternate_rows, cloth.alternate_shift_cm / length
        return cls(cloth.worked, cloth.turn_cm / length if cloth.worked == "flat" else 0.0, cast_on, *alternation)

    def skein(self, row):
        return row // self.rows % self.skeins

    def own_row(self, row):
        """How many rows its skein has made before."""
        return row // (self.skeins * self.rows) * self.rows + row % self.rows if self.skeins > 1 else row

    def before(self, row, width):
        """Yarn of its skein that lies before a row, counted from where that skein's stitches begin."""
        return self.own_row(row) * (width + self.turn) + (whole_cast_on(self, width) if self.skein(row) == 0 else 0)

    def leftward(self, row):
        return self.worked == "round" or row % 2 == 0

    def cycle(self):
        """Rows that stand for all others: every place in the turn of skeins, in both directions."""
        rows = self.skeins * self.rows if self.skeins > 1 else 1
        return 2 * rows if self.worked == "flat" and rows % 2 else rows


def whole_cast_on(knitting, width):
    return int(np.floor(knitting.cast_on * width + 0.5))


def laid(knitting, width, labs):
    """Rows x columns of CIELAB as seen on the knit side, from each skein's own, as far as they reach."""
    rows = []
    while True:
        row = len(rows)
        skein = knitting.skein(row)
        first = int(np.floor(knitting.before(row, width) + 1e-9))
        if first + width > len(labs[skein]):
            return np.array(rows)
        stitches = labs[skein][first : first + width]
        rows.append(stitches[::-1] if knitting.leftward(row) else stitches)


def stack_of_cloth(cloth, inf, up, right):
    """1 - mean |Lab - Lab of the neighbour|^2 / 2 var, over the stitches that are in the cloth."""
    width = cloth.shape[1]
    columns = np.arange(max(0, -right), width - max(0, right))
    return 1 - np.mean(((cloth[up:][:, columns + right] - cloth[:-up][:, columns]) ** 2).sum(axis=-1)) / inf


def stacks(gamma, inf, knitting, width):
    """1 - gamma / gamma_inf of every neighbour, 8 rows x 13; -inf where the cloth is too narrow for it."""
    table = np.full((ROWS, 2 * SIDE + 1), -np.inf)
    if inf <= 1e-6:
        return np.where(np.abs(np.arange(-SIDE, SIDE + 1)) < width, 0.0, table)
    known = np.append(gamma, inf)
    for up in range(1, ROWS + 1):
        for right in range(max(-SIDE, 1 - width), min(SIDE, width - 1) + 1):
            lags, weights = neighbour_lags(knitting, width, up, right)
            table[up - 1, SIDE + right] = 1 - np.average(known[np.minimum(np.abs(lags), len(gamma))], weights=weights) / inf
    return table


def neighbour_lags(knitting, width, up, right):
    """How much farther along the yarn the neighbours of a row's stitches are, column by column, and how often.

    A skein is taken to be to another, at the same places, as it is to itself. Where the yarn between two rows is no
    whole number of stitches, it is sometimes the one below and sometimes the one above.
    """
    lags, weights = [], []
    for row in range(knitting.cycle()):
        above = row + up
        between = knitting.before(above, width) - knitting.before(row, width)
        between += (knitting.skein(above) - knitting.skein(row)) * knitting.shift
        whole, part = divmod(between, 1)
        if knitting.worked == "round":
            apart = np.array([-right])
        else:
            column = np.arange(max(0, -right), width - max(0, right))
            here = width - 1 - column if knitting.leftward(row) else column
            apart = (width - 1 - column - right if knitting.leftward(above) else column + right) - here
        for stitches, weight in ((int(whole), 1 - part), (int(whole) + 1, part)):
            if weight > 0:
                lags.append(apart + stitches)
                weights.append(np.full(len(apart), weight / len(apart)))
    return np.concatenate(lags), np.concatenate(weights)


def stacks_quickly(gamma, inf, knitting, widths):
    """stacks() of many widths of one skein at once, to be timed: running sums over every second lag stand for the columns."""
    worked, turn = knitting.worked, knitting.turn
    known = np.concatenate([gamma, np.full(ROWS * (widths.max() + TURN) + 2 * widths.max(), inf)])
    sums = known.copy()
    for parity in (0, 1):
        sums[parity::2] = np.cumsum(sums[parity::2])
    sums = np.concatenate([[0, 0], sums])  # sums[lag + 2] - sums[lag + 2 - 2 n]: n lags up to that one
    table = np.full((len(widths), ROWS, 2 * SIDE + 1), -np.inf)

    def mean(first, up, side):
        if worked == "round":
            return known[first - side]
        if up % 2 == 0:
            return (known[first - side] + known[first + side]) / 2
        count = np.maximum(widths - abs(side), 1)
        last = first + widths - 1 - abs(side)
        return (sums[last + 2] - sums[last + 2 - 2 * count]) / count

    for up in range(1, ROWS + 1):
        whole, part = divmod(up * turn, 1)
        for side in range(-SIDE, SIDE + 1):
            first = up * widths + int(whole)
            value = mean(first, up, side)
            if part > 0:
                value = value + part * (mean(first + 1, up, side) - value)
            table[:, up - 1, SIDE + side] = np.where(abs(side) < widths, 1 - value / inf, -np.inf)
    return table


@dataclass
class Verdict:
    stack: float
    row_step: int
    stitch_step: int
    word: str


class Judge:
    """The rules of docs/science-cloth.md by which one neighbour and one word are chosen."""

    def __init__(self, gamma, inf, n, run, stitch_width, row_height):
        """@n: stitches in a strand; @run: mean run of one colour, stitches"""
        self.gamma, self.inf, self.n, self.run = gamma, inf, n, run
        up, right = (grid.ravel() for grid in np.mgrid[1 : ROWS + 1, -SIDE : SIDE + 1])
        away = np.floor(1e4 * np.hypot(right * stitch_width, up * row_height) + 0.5).astype(int)  # micrometres
        self.order = np.lexsort((-right, abs(right), up, away))  # of equals the nearest, then the lowest, the straightest, the right one
        self.up, self.right = up, right

    def judge(self, knitting, widths, quickly=False):
        """A Verdict for each width."""
        widths = np.asarray(widths)
        if quickly:
            tables = stacks_quickly(self.gamma, self.inf, knitting, widths)
        else:
            tables = np.array([stacks(self.gamma, self.inf, knitting, width) for width in widths])
        rows = np.minimum(self.n * knitting.skeins // (2 * widths), ROWS)  # that at least half of the stitches have above them
        tables[np.arange(ROWS) >= rows[:, None]] = -np.inf
        thousandths = np.floor(1000 * np.maximum(tables, -1) + 0.5 + 1e-6).astype(int)
        best = self.order[np.argmax(thousandths.reshape(len(widths), -1)[:, self.order], axis=1)]
        up, right, stack = self._shortened(thousandths, self.up[best], self.right[best])
        none = rows == 0
        up[none], right[none], stack[none] = 1, 0, 0
        return [Verdict(s / 1000, int(u), int(r), self._word(w, s / 1000, r)) for w, s, u, r in zip(widths, stack, up, right)]

    @staticmethod
    def _shortened(thousandths, up, right):
        """The same direction in the fewest rows that are as good but for a hair."""
        at = np.arange(len(up))
        best = thousandths[at, up - 1, SIDE + right]
        found = [up.copy(), right.copy(), best.copy()]
        for part in range(2, ROWS + 1):  # the largest part that fits is the last to be written
            fits = (up % part == 0) & (right % part == 0)
            nearer = thousandths[at, np.where(fits, up // part, 1) - 1, SIDE + np.where(fits, right // part, 0)]
            fits &= nearer >= best - HAIR
            for kept, new in zip(found, (up // part, right // part, nearer)):
                kept[fits] = new[fits]
        return found

    def _word(self, width, stack, right):
        if self.inf < EVEN_VARIANCE:
            return "even"
        quarter = width // 4
        if self.run >= width and quarter < len(self.gamma) and self.gamma[quarter] <= (1 - PATTERN) * self.inf:
            return "stripes"
        if stack < PATTERN:
            return "scatters"
        return "columns" if right == 0 else "drifts"
