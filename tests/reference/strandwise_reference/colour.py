# SPDX-License-Identifier: GPL-3.0-or-later
"""Spectra and the colours they make, straight from the CIE table in doubles."""
import csv
import pathlib

import numpy as np
from scipy.optimize import minimize

BANDS = np.arange(380, 731, 10)
DARKEST = 1e-6  # no reflectance is taken to be less
TABLE = pathlib.Path(__file__).resolve().parent.parent / "cie_1931_2deg_d65_5nm.csv"


def _weights():
    """Observer times D65 at every tenth nanometre, white's Y 100."""
    with open(TABLE, newline="", encoding="utf-8") as lines:
        rows = {round(float(row["nm"])): row for row in csv.DictReader(lines)}
    table = np.array([[float(rows[nm][name]) for name in ("x_bar", "y_bar", "z_bar", "d65")] for nm in BANDS])
    weights = table[:, :3] * table[:, 3:]
    return 100 * weights / weights[:, 1].sum()


WEIGHTS = _weights()
WHITE = WEIGHTS.sum(axis=0)

# IEC 61966-2-1, as printed.
SRGB_TO_XYZ = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])


def xyz_from_srgb(codes):
    """Codes 0..255; over the standard's white, times ours."""
    encoded = np.asarray(codes, dtype=float) / 255
    linear = np.where(encoded <= 12.92 * 0.0031308, encoded / 12.92, ((encoded + 0.055) / 1.055) ** 2.4)
    return WHITE * (SRGB_TO_XYZ @ linear) / SRGB_TO_XYZ.sum(axis=1)


def lab(xyz):
    ratio = np.asarray(xyz) / WHITE
    f = np.where(ratio > (6 / 29) ** 3, np.cbrt(ratio), ratio / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.stack([116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])], axis=-1)


def xyz_from_lab(values):
    lightness, a, b = values
    f = (lightness + 16) / 116 + np.array([a / 500, 0, -b / 200])
    return WHITE * np.where(f > 6 / 29, f**3, 3 * (6 / 29) ** 2 * (f - 4 / 29))


def smoothest(xyz):
    """The reflectance (tanh z + 1) / 2 of that colour with the least sum of squared steps of z: sequential quadratic programming."""

    def reflectance(z):
        return 1 / (1 + np.exp(-2 * z))

    def slopes(z):
        r = reflectance(z)
        return (WEIGHTS * (2 * r * (1 - r))[:, None]).T

    def steps_gradient(z):
        step = np.diff(z)
        return 2 * (np.concatenate([[0], step]) - np.concatenate([step, [0]]))

    start = np.full(len(BANDS), np.arctanh(2 * xyz[1] / WHITE[1] - 1))
    found = minimize(
        lambda z: np.sum(np.diff(z) ** 2),
        start,
        jac=steps_gradient,
        method="SLSQP",
        constraints={"type": "eq", "fun": lambda z: reflectance(z) @ WEIGHTS - xyz, "jac": slopes},
        options={"maxiter": 1000, "ftol": 1e-15},
    )
    if not found.success:
        raise ArithmeticError(found.message)
    return reflectance(found.x)


def sample_reflectance(sample):
    if "reflectance" in sample:
        return np.array(sample["reflectance"], dtype=float)
    return smoothest(xyz_from_srgb(sample["srgb"]) if "srgb" in sample else xyz_from_lab(sample["lab"]))


def absorption(reflectance):
    """K/S."""
    r = np.maximum(reflectance, DARKEST)
    return (1 - r) ** 2 / (2 * r)


class Palette:
    """K/S of the yarn, and of each dye per 1 % on the weight of fibre."""

    def __init__(self, sketch):
        self.yarn = absorption(sample_reflectance(sketch.yarn.undyed))
        gains = [absorption(sample_reflectance(dye.sample)) - self.yarn for dye in sketch.dyes]
        self.dyes = np.array([np.maximum(gain, 0) / dye.sample_depth_percent for gain, dye in zip(gains, sketch.dyes)]).reshape(-1, len(BANDS))

    def xyz(self, depths):
        """@depths: dyes x places, % owf."""
        ks = self.yarn + np.maximum(depths, 0).T @ self.dyes
        return (1 + ks - np.sqrt(ks * (ks + 2))) @ WEIGHTS


def ciede2000(one, other):
    """Sharma, Wu & Dalal 2005, equations 2 to 22, on arrays of Lab."""
    (l1, a1, b1), (l2, a2, b2) = np.moveaxis(one, -1, 0), np.moveaxis(other, -1, 0)
    mean_c7 = ((np.hypot(a1, b1) + np.hypot(a2, b2)) / 2) ** 7
    g = 0.5 * (1 - np.sqrt(mean_c7 / (mean_c7 + 25.0**7)))
    a1, a2 = (1 + g) * a1, (1 + g) * a2
    c1, c2 = np.hypot(a1, b1), np.hypot(a2, b2)
    h1, h2 = np.degrees(np.arctan2(b1, a1)) % 360, np.degrees(np.arctan2(b2, a2)) % 360
    grey = c1 * c2 == 0
    turn = np.where(grey, 0, (h2 - h1 + 180) % 360 - 180)
    big_h = 2 * np.sqrt(c1 * c2) * np.sin(np.radians(turn) / 2)
    mean_l, mean_c = (l1 + l2) / 2, (c1 + c2) / 2
    mean_h = np.where(grey, h1 + h2, np.where(np.abs(h1 - h2) <= 180, (h1 + h2) / 2, ((h1 + h2 + 360) / 2) % 360))

    def cosine(times, less):
        return np.cos(np.radians(times * mean_h - less))

    t = 1 - 0.17 * cosine(1, 30) + 0.24 * cosine(2, 0) + 0.32 * cosine(3, -6) - 0.2 * cosine(4, 63)
    s_l = 1 + 0.015 * (mean_l - 50) ** 2 / np.sqrt(20 + (mean_l - 50) ** 2)
    s_c, s_h = 1 + 0.045 * mean_c, 1 + 0.015 * mean_c * t
    r_c = 2 * np.sqrt(mean_c**7 / (mean_c**7 + 25.0**7))
    r_t = -np.sin(np.radians(60 * np.exp(-(((mean_h - 275) / 25) ** 2)))) * r_c
    l, c, h = (l2 - l1) / s_l, (c2 - c1) / s_c, big_h / s_h
    return np.sqrt(np.maximum(l**2 + c**2 + h**2 + r_t * c * h, 0))
