# SPDX-License-Identifier: GPL-3.0-or-later
"""Test lines that tell how far apart two computations are, and how far they may be."""
import sys

import numpy as np


class Tap:
    def __init__(self):
        self.number, self.failed = 0, 0

    def say(self, good, name, detail):
        self.number += 1
        self.failed += not good
        print(f"{'ok' if good else 'not ok'} {self.number} {name}: {detail}", flush=True)

    def hold(self, name, error, allowed):
        """@error: one or many; the largest counts, and NaN is never allowed."""
        error = float(np.max(error)) if np.size(error) else 0.0
        self.say(error <= allowed, name, f"{error:.2g}, allowed {allowed:.2g}")

    def end(self):
        print(f"1..{self.number}")
        sys.exit(self.failed > 0)
