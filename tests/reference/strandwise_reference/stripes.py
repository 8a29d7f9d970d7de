# SPDX-License-Identifier: GPL-3.0-or-later
"""Runs of one colour by merging: the two neighbours most alike become one, until all neighbours differ.

The program cuts along the strand instead. Both mean the same by a stripe but for its edges and for slow
gradients, so they are compared roughly.
"""
import heapq
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import median_filter

ANOTHER_COLOUR = 10.0
SPECK = 2  # stitches on end that a speck colours at most


@dataclass
class Stripe:
    lab: np.ndarray
    share: float
    runs: int


def without_specks(lab):
    return np.stack([median_filter(channel, 2 * SPECK + 1, mode="nearest") for channel in lab.T], axis=1)


def runs(lab):
    """Lengths and mean colours of the runs."""
    n = len(lab)
    count, total = np.ones(n), lab.copy()
    before, after = np.arange(-1, n - 1), np.arange(1, n + 1)
    version = np.zeros(n, dtype=int)  # of a run; -1 once it is part of another

    def difference(i, j):
        return np.linalg.norm(total[i] / count[i] - total[j] / count[j])

    steps = np.linalg.norm(np.diff(lab, axis=0), axis=1)
    heap = [(step, i, i + 1, 0, 0) for i, step in enumerate(steps)]
    heapq.heapify(heap)
    while heap and heap[0][0] <= ANOTHER_COLOUR:
        _, i, j, seen_i, seen_j = heapq.heappop(heap)
        if version[i] != seen_i or version[j] != seen_j:
            continue
        count[i] += count[j]
        total[i] += total[j]
        version[i] += 1
        version[j] = -1
        after[i] = after[j]
        if after[i] < n:
            before[after[i]] = i
            heapq.heappush(heap, (difference(i, after[i]), i, after[i], version[i], version[after[i]]))
        if before[i] >= 0:
            heapq.heappush(heap, (difference(before[i], i), before[i], i, version[before[i]], version[i]))
    left = version >= 0
    return count[left], total[left] / count[left, None]


def mean_run(lengths):
    """Each stitch counts the run it is in."""
    return (lengths**2).sum() / lengths.sum()
