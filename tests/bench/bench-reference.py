#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What bench-forecast times, with the numpy and scipy of tests/reference. Usage: bench-reference.py FILE.colourway

Prints lines "figure<tab>median<tab>unit" of the same names. It keeps what an edit leaves as it was, as the
program does, and does everything else in whole arrays. The runs of one colour are left out: they have
no numpy form.
"""
import copy
import pathlib
import statistics
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "reference"))

# pylint: disable=wrong-import-position
import numpy as np
from forecast import WIDEST, Forecast, sketches
from strandwise_reference import pan

RUN = 8.0  # stitches: any will do


def report(figure, rounds, work):
    times = []
    for i in range(rounds):
        begin = time.perf_counter()
        work(i)
        times.append(1000 * (time.perf_counter() - begin))
    print(f"{figure}\t{statistics.median(times):.3f}\tms", flush=True)


def verdict(forecast, gamma, width):
    judge = forecast.judge(gamma, forecast.gamma_inf, RUN)
    return judge.judge(forecast.knitting(), [width], quickly=True)


def first(sketch):
    forecast = Forecast(sketch)
    gamma = forecast.variogram()
    verdict(forecast, gamma, sketch.cloth.width_stitches)
    return forecast, gamma


def drag(forecast, moved, i):
    """The second step's band goes a millimetre on: its pour, its dye, and all that the strand sees of it."""
    step = moved.steps[1]
    step.x_cm += 0.1
    number = next(n for n, dye in enumerate(moved.dyes) if dye.id == step.dye)
    forecast.sketch = moved
    forecast.pours[number][1] = pan.poured(moved, forecast.grid, step)
    forecast.fields[number], forecast.left[number] = forecast.field(number)
    forecast.read[number] = forecast.at_legs(forecast.fields[number], forecast.strand)
    forecast.xyz = forecast.legs()
    forecast.recolour()
    verdict(forecast, forecast.variogram(), moved.cloth.width_stitches)


def scan(forecast):
    judge = forecast.judge(forecast.variogram(), forecast.gamma_inf, RUN)
    for worked in ("flat", "round"):
        judge.judge(forecast.knitting(worked), np.arange(10, WIDEST + 1), quickly=True)


def main(path):
    sketch = sketches.read(path)
    report("first", 3, lambda i: first(sketch))
    forecast, gamma = first(sketch)
    moved = copy.deepcopy(sketch)
    report("drag", 9, lambda i: drag(forecast, moved, i))
    report("width", 21, lambda i: verdict(forecast, gamma, 40 + i))
    report("all_widths", 9, lambda i: scan(forecast))


if __name__ == "__main__":
    main(sys.argv[1])
