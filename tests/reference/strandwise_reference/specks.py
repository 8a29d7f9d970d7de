# SPDX-License-Identifier: GPL-3.0-or-later
"""Specks one by one: what each leaves at each leg near it, by integrating its growing Gaussian over time and leg."""
from dataclasses import dataclass

import numpy as np
from scipy import fft
from scipy.spatial import cKDTree
from scipy.special import erf

from . import chance, liquor, pan

SPREAD_WET, SPREAD_DRY = 0.06, 0.03
MOST_DEVIATION = 2.5
MOST_SPECKS = 200000
NODES = 24  # moments of a span
BEYOND = 1e-5  # share of a mark farther out than it is followed

# Parts of a speck's address.
ALONG, ACROSS, SIZE = 1, 2, 3


@dataclass
class Specks:
    x: np.ndarray  # cm
    y: np.ndarray
    radius: np.ndarray  # cm
    grams: np.ndarray


def scatter(sketch, step):
    """The specks of one pour: each by its own address."""
    n = int(np.clip(np.floor(step.specks_per_100_cm2 * step.width_cm * step.length_cm / 100 + 0.5), 0, MOST_SPECKS))
    address = chance.mix(chance.mix(sketch.seed, step.id), np.arange(n))
    along = (chance.even(chance.mix(address, ALONG)) - 0.5) * step.width_cm
    across = (chance.even(chance.mix(address, ACROSS)) - 0.5) * step.length_cm
    deviation = np.clip(chance.normal(chance.mix(address, SIZE)), -MOST_DEVIATION, MOST_DEVIATION)
    radius = step.speck_mm / 20 * np.exp(step.speck_variation * deviation)
    angle = np.radians(step.angle_deg)
    return Specks(
        step.x_cm + along * np.cos(angle) - across * np.sin(angle),
        step.y_cm + along * np.sin(angle) + across * np.cos(angle),
        radius,
        liquor.grams(sketch, step) * radius**3 / np.sum(radius**3),
    )


def moments(sketch, dye, quick, step, spans):
    """When a speck's dye strikes: shares of it, by how much its variance has grown by then, cm2, and the share left at the end.

    Gauss-Legendre in the square root of what a span strikes, since a small spot grows quickly at first.
    """
    slowed = SPREAD_DRY if step.dry else SPREAD_WET
    node, weight = np.polynomial.legendre.leggauss(NODES)
    s, weight = (node + 1) / 2, weight / 2
    mobile, grown, shares, growths = 1.0, 0.0, [], []
    for span in spans:
        if span.minutes <= 0:
            continue
        rate, spread = liquor.strike_rate(sketch, dye, quick, span), slowed * liquor.spread(sketch, dye, span)
        strikes = 1 - np.exp(-rate * span.minutes)
        minutes = -np.log1p(-strikes * s**2) / rate
        shares.append(mobile * strikes * 2 * s * weight)
        growths.append(grown + 2 * spread * minutes)
        grown += 2 * spread * span.minutes
        mobile *= 1 - strikes
    return np.concatenate(shares or [[]]), np.concatenate(growths or [[]]), mobile


def layers(sketch, grid, dye, quick, step, spans):
    """Shares of a speck's struck dye by layers from the first face: a column by itself, turned over at each flip."""
    slowed = SPREAD_DRY if step.dry else SPREAD_WET
    mobile, struck = pan.depth_profile(step.worked_in), np.zeros(grid.nz)
    up_is_second = spans[0].second_face
    for before, span in zip(spans, spans[1:]):
        if span.second_face != before.second_face:
            mobile, struck = mobile[::-1], struck[::-1]
            up_is_second = span.second_face
        if span.minutes > 0:
            rate = liquor.strike_rate(sketch, dye, quick, span)
            away = rate + slowed * liquor.spread(sketch, dye, span) / 3 * (np.arange(grid.nz) * np.pi / grid.lz) ** 2
            modes, kept = fft.dct(mobile), np.exp(-away * span.minutes)
            struck = struck + fft.idct(modes * rate / away * (1 - kept))
            mobile = fft.idct(modes * kept)
    struck = np.maximum(struck[::-1] if up_is_second else struck, 0)
    return struck / struck.sum() if struck.sum() > 0 else np.full(grid.nz, 1 / grid.nz)


def _reach(shares, variances):
    """How far out all but BEYOND of a mark lies: between none and where its widest part alone would end."""
    low, high = 0.0, np.sqrt(2 * variances.max() * np.log(1 / BEYOND))
    while high - low > 1e-3 * high:
        middle = (low + high) / 2
        if np.sum(shares * np.exp(-(middle**2) / (2 * variances))) > BEYOND * shares.sum():
            low = middle
        else:
            high = middle
    return high


def amounts(sketch, grid, spans, step, index, legs, half_cm):
    """What a pour of specks adds to the depth of each leg, % owf.

    @legs: x, y, z as fractions of the box; @half_cm: half the strand that a leg shows, which lies along x
    """
    dye, scattered = sketch.dye(step.dye), scatter(sketch, step)
    x, y = legs[0] * grid.lx, legs[1] * grid.ly
    tree = cKDTree(np.column_stack([x, y]))
    layer_place = np.clip(legs[2] * grid.nz - 0.5, 0, grid.nz - 1)
    column_cm2 = grid.lx / grid.nx * grid.ly / grid.ny
    total = np.zeros(len(x))
    for quick, share in liquor.shares(dye):
        shares, growths, _ = moments(sketch, dye, quick, step, spans[index + 1 :])
        if not len(shares):
            continue
        profile = layers(sketch, grid, dye, quick, step, spans[index:])
        at_layer = np.interp(layer_place, np.arange(grid.nz), profile)
        scale = 100 * share * column_cm2 / pan.grams_per_cell(sketch, grid)
        for sx, sy, radius, grams in zip(scattered.x, scattered.y, scattered.radius, scattered.grams):
            variances = radius**2 / 4 + growths
            near = np.array(tree.query_ball_point((sx, sy), _reach(shares, variances) + half_cm), dtype=int)
            if len(near):
                density = mark(x[near] - sx, y[near] - sy, half_cm, shares, variances)
                total[near] += scale * grams * density * at_layer[near]
    return total


def mark(dx, dy, half_cm, shares, variances):
    """Struck dye per cm2 and gram of the speck, the mean over a leg: error functions along it, a Gaussian across."""
    sd = np.sqrt(variances)
    along = (erf((dx[:, None] + half_cm) / (np.sqrt(2) * sd)) - erf((dx[:, None] - half_cm) / (np.sqrt(2) * sd))) / (4 * half_cm)
    across = np.exp(-(dy[:, None] ** 2) / (2 * variances)) / (np.sqrt(2 * np.pi) * sd)
    return (along * across) @ shares
