# SPDX-License-Identifier: GPL-3.0-or-later
"""The bath's liquor step by step, its pH by the roots of a polynomial, and how fast dye strikes in it."""
from dataclasses import dataclass

import numpy as np
from numpy.polynomial import Polynomial

from .sketch import is_pour

PKW = 13.995
CARBONIC = (6.352, 10.329)
ACIDS = {"acetic": ((4.756,), 60.052), "citric": ((3.127, 4.759, 6.397), 192.124)}
TAP_PH = 8.0

GAS = 8.314462618e-3  # kJ/(mol K)
FIBRES = {  # as if so much cooler, and a factor
    "superwash-wool": (0.0, 1.0),
    "wool": (10.0, 1.0),
    "superwash-nylon": (-2.5, 1.0),
    "nylon": (-10.0, 1.0),
    "silk": (0.0, 0.7),
}

# The unknown of the polynomials is [H+] in tenths of a millimole a litre, so that their figures are of one size.
UNIT = 1e-4


def _forms(pkas):
    """Of an acid with those pKa's: its forms, and their charges, as polynomials of [H+] over one scale."""
    n = len(pkas)
    betas = np.cumprod([1.0] + [10.0**-pka / UNIT for pka in pkas])  # of the form that has lost j protons
    forms = Polynomial(betas[::-1])  # beta_j h^(n - j)
    charges = Polynomial((betas * np.arange(n + 1))[::-1])
    return forms, charges


def ph(acid, molar, alkalinity, carbonate=0.0):
    """Charge balance times its denominators: h + A - Kw/h - molar x n(h) - carbonate x n'(h) = 0."""
    acid_forms, acid_charges = _forms(ACIDS[acid][0])
    carbonic_forms, carbonic_charges = _forms(CARBONIC)
    h = Polynomial([0.0, 1.0])
    water = h * h + alkalinity / UNIT * h - 10.0**-PKW / UNIT**2
    balance = (
        water * acid_forms * carbonic_forms
        - molar / UNIT * h * acid_charges * carbonic_forms
        - carbonate / UNIT * h * carbonic_charges * acid_forms
    )
    roots = balance.roots()
    real = roots[(np.abs(roots.imag) <= 1e-9 * np.abs(roots)) & (roots.real > 0)].real
    if len(real) != 1:
        raise ArithmeticError(f"a charge balance has one positive root, not {len(real)}")
    return -np.log10(real[0] * UNIT)


def carbonate_of_tap(alkalinity):
    """mol/L of carbonic species in tap water of that alkalinity, whose pH is TAP_PH."""
    forms, charges = _forms(CARBONIC)
    h = 10.0**-TAP_PH
    charge = charges(h / UNIT) / forms(h / UNIT)
    return max(0.0, (h - 10.0**-PKW / h + alkalinity) / charge)


@dataclass
class Span:
    """What the bath is while a step lasts."""

    minutes: float
    temperature_c: float
    liquor_ml: float
    ph: float
    cover: float
    second_face: bool


def schedule(sketch):
    """A Span for the start and one for each step."""
    bath = sketch.bath
    liquor, tap, acid_mol = bath.water_ml, bath.water_ml, 0.0
    temperature, second = bath.temperature_c, False
    alkalinity = bath.alkalinity_meq_per_l / 1000
    carbonate = carbonate_of_tap(alkalinity) if bath.keep_carbonate else 0.0

    def acid(ml, percent):
        return ml * percent / 100 / ACIDS[bath.acid][1]

    def span(minutes):
        thinned = tap / liquor
        molar = acid_mol / (liquor / 1000)
        return Span(minutes, temperature, liquor, ph(bath.acid, molar, alkalinity * thinned, carbonate * thinned), cover(sketch, liquor), second)

    liquor += bath.acid_ml
    acid_mol += acid(bath.acid_ml, bath.acid_percent)
    spans = [span(0.0)]
    for step in sketch.steps:
        minutes = 0.0
        if is_pour(step):
            liquor += 0.0 if step.kind == "speckle" and step.dry else step.amount_ml
        elif step.kind == "acid":
            liquor += step.volume_ml
            acid_mol += acid(step.volume_ml, step.acid_percent)
        elif step.kind == "water":
            liquor += step.volume_ml
            tap += step.volume_ml
        elif step.kind == "flip":
            second = not second
        else:
            minutes, temperature = step.minutes, step.temperature_c
        spans.append(span(minutes))
    return spans


def cover(sketch, liquor_ml):
    """Liquor over what just fills the laid box beside the fibre."""
    box = sketch.lay_length_cm * sketch.lay_width_cm * sketch.lay.depth_cm
    fibre = sketch.yarn.mass_g * sketch.lay.skeins / 1.31
    return float(np.clip(liquor_ml / max(box - fibre, 1.0), 0.1, 3.0))


def strike_rate(sketch, dye, quick, span):
    """k, per minute."""
    half_time = dye.quick_half_time_min if quick else dye.half_time_min
    lag, factor = FIBRES[sketch.yarn.fibre]
    protonated = (1 + 10 ** (4.0 - 4.2)) / (1 + 10 ** (span.ph - 4.2))
    kelvin = span.temperature_c - lag + 273.15
    warmth = np.exp(dye.activation_kj_per_mol / GAS * (1 / 363.15 - 1 / kelvin))
    return np.log(2) / half_time * protonated * warmth * factor


def spread(sketch, dye, span):
    """Dxy, cm2/min; Dz is a third of it."""
    return sketch.bath.spread_cm2_per_min * dye.spread * span.cover


def grams(sketch, step):
    """Dye in a pour."""
    if step.kind == "speckle" and step.dry:
        return step.grams
    return step.amount_ml * sketch.dye(step.dye).stock_percent / 100


def shares(dye):
    """The two shares of a dye that strike each by its own half-time: (quick, how much)."""
    return [(quick, share) for quick, share in ((False, 1 - dye.quick_share), (True, dye.quick_share)) if share > 0]
