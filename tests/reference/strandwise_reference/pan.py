# SPDX-License-Identifier: GPL-3.0-or-later
"""Dye over the cells of the laid skein: poured, spread and struck forwards in time, the box turned over at each flip.

A field is an array (layers, across, along), layer 0 the one that is up.
"""
from dataclasses import dataclass

import numpy as np
from scipy import fft

from . import liquor
from .sketch import is_pour

CELL_CM = 0.25
LAYERS = 8
SURFACE = 0.12  # share of the depth in which a pour left alone falls by e
MOST_BLUR_CM = 0.6
LEAST_BLUR = 0.6  # cells
ELLIPSE_CORNERS = 1440


@dataclass(frozen=True)
class Grid:
    nx: int
    ny: int
    nz: int
    lx: float
    ly: float
    lz: float

    @property
    def shape(self):
        return self.nz, self.ny, self.nx


def _cells(length):
    """At least as many as fit, and no prime factor above 5."""
    n = max(int(np.ceil(length / CELL_CM - 1e-9)), 1)
    smooth = sorted(2**a * 3**b * 5**c for a in range(13) for b in range(9) for c in range(7))
    return next(size for size in smooth if size >= n)


def grid_of(sketch):
    lx, ly = sketch.lay_length_cm, sketch.lay_width_cm
    return Grid(_cells(lx), _cells(ly), LAYERS, lx, ly, sketch.lay.depth_cm)


def grams_per_cell(sketch, grid):
    """Of fibre."""
    return sketch.yarn.mass_g * sketch.lay.skeins / np.prod(grid.shape)


def corners(step, grid):
    """An outline as a polygon, corner after corner."""
    angle = np.radians(step.angle_deg)
    if step.kind == "splotch":
        around = np.arange(ELLIPSE_CORNERS) * 2 * np.pi / ELLIPSE_CORNERS
        along, across = step.width_cm / 2 * np.cos(around), step.length_cm / 2 * np.sin(around)
        return np.column_stack(
            [step.x_cm + along * np.cos(angle) - across * np.sin(angle), step.y_cm + along * np.sin(angle) + across * np.cos(angle)]
        )
    low, high = (step.y_cm - step.length_cm / 2, step.y_cm + step.length_cm / 2) if step.length_cm > 0 else (0.0, grid.ly)
    half = step.width_cm / 2
    ends = [step.x_cm + (y - step.y_cm) * np.tan(angle) for y in (low, high)]
    return np.array([(ends[0] - half, low), (ends[0] + half, low), (ends[1] + half, high), (ends[1] - half, high)])


def covered(polygon, grid):
    """Area of each cell under a polygon, exact: the area to the left of every grid line, row by row, and its differences.

    Within a row an edge piece from x0 to x1 takes the mean of min (x, X) times its height; going round
    the polygon, what lies to the left of X remains.
    """
    xs = np.linspace(0, grid.lx, grid.nx + 1)
    ys = np.linspace(0, grid.ly, grid.ny + 1)
    start, end = polygon, np.roll(polygon, -1, axis=0)
    rise = end[:, 1] - start[:, 1]
    start, end, rise = start[rise != 0], end[rise != 0], rise[rise != 0]

    at_low = (ys[:-1, None] - start[:, 1]) / rise
    at_high = (ys[1:, None] - start[:, 1]) / rise
    enters = np.clip(np.minimum(at_low, at_high), 0, 1)
    leaves = np.clip(np.maximum(at_low, at_high), 0, 1)
    row, edge = np.nonzero(leaves > enters)
    run = end[edge, 0] - start[edge, 0]
    x0 = start[edge, 0] + enters[row, edge] * run
    x1 = start[edge, 0] + leaves[row, edge] * run
    height = (leaves - enters)[row, edge] * rise[edge]

    low, high = np.minimum(x0, x1)[:, None], np.maximum(x0, x1)[:, None]
    width = np.maximum(high - low, 1e-300)
    inside = np.clip(xs, low, high)
    mean = np.where(high - low < 1e-12, np.minimum(low, xs), ((inside**2 - low**2) / 2 + inside * (high - inside)) / width)
    mean = np.where(xs <= low, xs, np.where(xs >= high, (low + high) / 2, mean))

    left = np.zeros((grid.ny, grid.nx + 1))
    np.add.at(left, row, height[:, None] * mean)
    return np.abs(np.diff(left, axis=1))


def blurred(plane, sigma_x, sigma_y):
    """By Gaussians of those sd's, cells, before mirrors at the walls: the mirrored plane is periodic, and its Fourier modes fade."""
    mirrored = np.concatenate([plane, plane[:, ::-1]], axis=1)
    mirrored = np.concatenate([mirrored, mirrored[::-1]], axis=0)
    ny, nx = mirrored.shape
    modes = fft.rfft2(mirrored)
    modes *= np.exp(-0.5 * (2 * np.pi * sigma_x * fft.rfftfreq(nx)) ** 2)
    modes *= np.exp(-0.5 * (2 * np.pi * sigma_y * fft.fftfreq(ny)) ** 2)[:, None]
    return fft.irfft2(modes, s=mirrored.shape)[: plane.shape[0], : plane.shape[1]]


def depth_profile(worked_in, layers=LAYERS):
    """Shares of a pour by layers from the face that is up: the integral of e^(-depth / d) over each."""
    faces = np.linspace(0, 1, layers + 1)
    if worked_in >= 1:
        return np.diff(faces)
    below = np.exp(-faces * (1 - worked_in) / SURFACE)
    return -np.diff(below) / (below[0] - below[-1])


def poured(sketch, grid, step):
    """Cells of one pour, g, as it lies beneath the face that is up."""
    area = covered(corners(step, grid), grid)
    if area.sum() > 1e-9 * grid.lx * grid.ly:
        plane = area * (liquor.grams(sketch, step) / area.sum())
    else:  # it missed the skein
        plane = np.full(area.shape, liquor.grams(sketch, step) / area.size)
    sigma = MOST_BLUR_CM * step.worked_in
    plane = blurred(plane, max(sigma * grid.nx / grid.lx, LEAST_BLUR), max(sigma * grid.ny / grid.ly, LEAST_BLUR))
    return depth_profile(step.worked_in)[:, None, None] * plane


def decay(grid, spread):
    """D |q|^2 of every mode, per minute."""
    squares = [(np.arange(n) * np.pi / length) ** 2 for n, length in ((grid.nz, grid.lz), (grid.ny, grid.ly), (grid.nx, grid.lx))]
    return spread * (squares[0][:, None, None] / 3 + squares[1][:, None] + squares[2])


def move_on(mobile, struck, grid, minutes, rate, spread):
    """Both fields after a span of steady conditions."""
    modes = fft.dctn(mobile, type=2)
    away = rate + decay(grid, spread)
    kept = np.exp(-away * minutes)
    strikes = modes * (rate / away) * (1 - kept)
    return fft.idctn(modes * kept, type=2), struck + fft.idctn(strikes, type=2)


def struck_dye(sketch, grid, spans, dye, pours):
    """Struck dye at the end, g a cell, layer 0 the first face; and what is left in the liquor, g.

    @pours: the cells of each of the dye's bands and splotches by the number of its step
    """
    total, left = np.zeros(grid.shape), 0.0
    for quick, share in liquor.shares(dye):
        mobile, struck = np.zeros(grid.shape), np.zeros(grid.shape)
        for i, step in enumerate(sketch.steps):
            span = spans[i + 1]
            if i in pours:
                mobile = mobile + share * pours[i]
            elif step.kind == "flip":
                mobile, struck = mobile[::-1], struck[::-1]
            elif span.minutes > 0 and mobile.any():
                rate, spread = liquor.strike_rate(sketch, dye, quick, span), liquor.spread(sketch, dye, span)
                mobile, struck = move_on(mobile, struck, grid, span.minutes, rate, spread)
        total += struck[::-1] if spans[-1].second_face else struck
        left += mobile.sum()
    return total, left


def pours_of(sketch, grid, dye):
    return {
        i: poured(sketch, grid, step)
        for i, step in enumerate(sketch.steps)
        if is_pour(step) and step.kind != "speckle" and step.dye == dye.id
    }
