#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Holds the other computation itself against published tables and against a third way. Prints TAP.

Usage: test-methods.py DUMP-FORECAST SMALL-PAN.colourway
"""
import csv
import pathlib
import sys

try:
    import numpy as np
    from strandwise_reference import cloth, colour, dump, liquor, pan, volumes
    from strandwise_reference import sketch as sketches
    from strandwise_reference.tap import Tap
except ImportError as missing:
    print(f"1..0 # SKIP {missing}")
    sys.exit(0)

TABLES = pathlib.Path(__file__).resolve().parent


def rows(name):
    with open(TABLES / name, newline="", encoding="utf-8") as lines:
        return list(csv.DictReader(lines))


def numbers(table, *names):
    return np.array([[float(row[name]) for name in names] for row in table])


def published(tap):
    """See SOURCES.md for where these come from."""
    pairs = rows("ciede2000_pairs.csv")
    ours = colour.ciede2000(numbers(pairs, "L1", "a1", "b1"), numbers(pairs, "L2", "a2", "b2"))
    tap.hold("CIEDE2000 of Sharma, Wu & Dalal's pairs", abs(ours - numbers(pairs, "ciede2000")[:, 0]), 6e-5)

    baths = rows("ph_examples.csv")
    for column, kept in (("ph", False), ("ph_if_carbonate_kept", True)):
        ours = []
        for row in baths:
            alkalinity = float(row["alkalinity_eq_per_l"])
            ours.append(liquor.ph(row["acid"], float(row["molar"]), alkalinity, liquor.carbonate_of_tap(alkalinity) if kept else 0.0))
        tap.hold(f"pH of the worked baths, {column}", abs(np.array(ours) - numbers(baths, column)[:, 0]), 1e-4)

    table, targets = rows("smoothest_reflectance.csv"), rows("smoothest_reflectance_targets.csv")
    ours = [colour.smoothest(xyz) for xyz in numbers(targets, "X", "Y", "Z")]
    names = [f"srgb_{row['r']}_{row['g']}_{row['b']}" for row in targets]
    tap.hold("smoothest reflectances", abs(np.array(ours).T - numbers(table, *names)), 2e-6)


def quick_ways(tap):
    """What is timed is as good as the slow ways that are trusted."""
    lab = np.random.default_rng(1).normal(50, 20, (900, 3)).cumsum(axis=0) / 20
    inf = cloth.infinity(lab)
    slow, quick = cloth.variogram(lab, range(cloth.lags_for(60))), cloth.variogram_by_fft(lab, cloth.lags_for(60))
    tap.hold("variogram by FFT", abs(slow - quick) / inf, 1e-11)

    widths = np.arange(3, 61)
    for worked, turn in (("round", 0.0), ("flat", 0.0), ("flat", 1.37)):
        knitting = cloth.Knitting(worked, turn, 0.0)
        tables = np.array([cloth.stacks(slow, inf, knitting, width) for width in widths])
        quick = cloth.stacks_quickly(slow, inf, knitting, widths)
        same = np.array_equal(np.isfinite(tables), np.isfinite(quick))
        known = np.isfinite(tables)
        errors = abs(tables[known] - quick[known]) if same else np.inf
        tap.hold(f"stacks of many widths {worked}, turns of {turn:g}", errors, 1e-11)


def finite_volumes(tap, program, path):
    """Cells a third as wide err a ninth as much, and lead to what the cosine modes give at once."""
    sketch = sketches.read(path)
    grid, spans, dye = pan.grid_of(sketch), liquor.schedule(sketch), sketch.dyes[0]
    pours = pan.pours_of(sketch, grid, dye)
    modes, _ = pan.struck_dye(sketch, grid, spans, dye, pours)
    theirs = dump.arrays(program, path)["field0"].reshape(grid.shape) / 100 * pan.grams_per_cell(sketch, grid)
    coarse, fine = (volumes.struck_dye(sketch, grid, spans, dye, pours, times) for times in (1, 3))
    tap.hold("finite volumes of the grid's own cells, of the peak", abs(coarse - modes) / modes.max(), 0.03)
    tap.hold("finite volumes of a third", abs(fine - modes) / modes.max(), 3e-3)
    tap.hold("finite volumes of a third, against the program", abs(fine - theirs) / modes.max(), 3e-3)
    nearer = abs(coarse - modes).max() / abs(fine - modes).max()
    tap.say(nearer > 7, "their error falls with the square of their size", f"{nearer:.1f} times less, 9 expected")


def main(program, path):
    tap = Tap()
    published(tap)
    quick_ways(tap)
    finite_volumes(tap, program, path)
    tap.end()


if __name__ == "__main__":
    main(*sys.argv[1:])
