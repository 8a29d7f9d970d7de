# SPDX-License-Identifier: GPL-3.0-or-later
"""The strand as cloth: alike by direct sums, stitches as index arrays, neighbours by asking each stitch for its own."""
from dataclasses import dataclass

import numpy as np
from scipy import fft

from . import strand

ROWS, SIDE = 8, 6
EVEN_VARIANCE = 2 * 2.0**2
PATTERN = 0.25
HAIR = 20
TURN = 64


def lags_for(width):
    """Lags that a cloth of that width asks for."""
    return ROWS * (width + TURN) + SIDE + 1


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
class Layout:
    """Which stitch of the strand is where."""

    worked: str
    width: int
    cast_on: int
    turn: float  # stitches' worth of yarn at each turn
    n: int

    @classmethod
    def of(cls, sketch, length, n):
        cloth = sketch.cloth
        cast_on = cloth.cast_on * cloth.width_stitches * 10 / cloth.stitches_per_10cm / length
        return cls(cloth.worked, cloth.width_stitches, int(np.floor(cast_on + 0.5)), cloth.turn_cm / length, n)

    def stitches(self):
        """Rows x columns of stitch numbers, as seen on the knit side, for the rows that are full."""
        rows = np.arange((self.n - self.cast_on) // self.width + 1)
        turns = np.floor(rows * self.turn).astype(int) if self.worked == "flat" else 0
        starts = self.cast_on + rows * self.width + turns
        starts = starts[starts + self.width <= self.n]
        cloth = starts[:, None] + np.arange(self.width)[::-1]  # to the left
        if self.worked == "flat":
            cloth[1::2] = cloth[1::2, ::-1]
        return cloth


def stack_of_cloth(layout, lab, up, right):
    """1 - mean |Lab - Lab of the neighbour|^2 / 2 var, over the stitches that are in the cloth."""
    cloth = layout.stitches()
    if layout.worked == "round":  # the neighbour beyond the edge is in the row below or above
        here, there = cloth[:-up], cloth[:-up] + up * layout.width - right
        inside = (there < layout.n) & (there >= 0)
        here, there = here[inside], there[inside]
    else:
        columns = np.arange(max(0, -right), layout.width - max(0, right))
        here, there = cloth[:-up][:, columns], cloth[up:][:, columns + right]
    return 1 - np.mean(((lab[there] - lab[here]) ** 2).sum(axis=-1)) / infinity(lab)


def stacks(gamma, inf, worked, width, turn):
    """1 - gamma / gamma_inf of every neighbour, 8 rows x 13; -inf where the cloth is too narrow for it.

    Flat, a neighbour's lag is asked of every column: even rows run to the left and odd ones back.
    """
    table = np.full((ROWS, 2 * SIDE + 1), -np.inf)
    if inf <= 1e-6:
        return np.where(np.abs(np.arange(-SIDE, SIDE + 1)) < width, 0.0, table)
    known = np.append(gamma, inf)

    def at(lags):
        return known[np.minimum(lags, len(gamma))].mean()

    for up in range(1, ROWS + 1):
        whole, part = divmod(up * turn, 1) if worked == "flat" else (0, 0.0)
        for right in range(max(-SIDE, 1 - width), min(SIDE, width - 1) + 1):
            lags = neighbour_lags(worked, width, up, right) + int(whole)
            mean = at(lags)
            if part > 0:
                mean += part * (at(lags + 1) - mean)
            table[up - 1, SIDE + right] = 1 - mean / inf
    return table


def neighbour_lags(worked, width, up, right):
    """How much farther along the strand, turns apart, the neighbours of a row's stitches are."""
    if worked == "round":
        return np.array([up * width - right])
    column = np.arange(max(0, -right), width - max(0, right))
    leftward = np.stack([width - 1 - column, column])  # where in its row: worked to the left, to the right
    above = np.stack([width - 1 - (column + right), column + right])
    if up % 2:
        above = above[::-1]
    return (up * width + above - leftward).ravel()


def stacks_quickly(gamma, inf, worked, widths, turn):
    """stacks() of many widths at once, to be timed: running sums over every second lag stand for the columns."""
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
        whole, part = divmod(up * turn, 1) if worked == "flat" else (0, 0.0)
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

    def __init__(self, gamma, inf, n, turn, run, stitch_width, row_height):
        self.gamma, self.inf, self.n, self.turn, self.run = gamma, inf, n, turn, run
        up, right = (grid.ravel() for grid in np.mgrid[1 : ROWS + 1, -SIDE : SIDE + 1])
        away = np.floor(1e4 * np.hypot(right * stitch_width, up * row_height) + 0.5).astype(int)  # micrometres
        self.order = np.lexsort((-right, abs(right), up, away))  # of equals the nearest, then the lowest, the straightest, the right one
        self.up, self.right = up, right

    def judge(self, worked, widths, quickly=False):
        """A Verdict for each width."""
        widths = np.asarray(widths)
        if quickly:
            tables = stacks_quickly(self.gamma, self.inf, worked, widths, self.turn)
        else:
            tables = np.array([stacks(self.gamma, self.inf, worked, width, self.turn) for width in widths])
        rows = np.minimum(self.n // (2 * widths), ROWS)  # that at least half of the stitches have above them
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


def judge_of(sketch, its_strand, gamma, inf, run):
    cloth = sketch.cloth
    turn = cloth.turn_cm / its_strand.stitch_length_cm
    return Judge(gamma, inf, its_strand.n, turn, run, 10 / cloth.stitches_per_10cm, strand.row_height(cloth))
