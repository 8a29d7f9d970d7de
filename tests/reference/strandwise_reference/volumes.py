# SPDX-License-Identifier: GPL-3.0-or-later
"""The bath by finite volumes: dye passes between cells that touch, and the sparse system's exponential is applied.

Knows nothing of cosine modes, so that it can judge whoever uses them; exact only as its cells get small.
"""
import numpy as np
from scipy import fft, sparse
from scipy.sparse.linalg import cg, expm_multiply

from . import liquor


def _line(n, length):
    """Exchange along a row of @n cells with closed ends, per cm2/min of spread."""
    touching = sparse.diags([np.ones(n - 1), np.ones(n - 1)], [-1, 1], shape=(n, n))
    return (touching - sparse.diags(np.asarray(touching.sum(axis=1)).ravel())) * (n / length) ** 2


def exchange(shape, grid):
    """Of all cells of a box with @grid's extent, Dxy = 1 and Dz a third."""
    nz, ny, nx = shape
    one_z, one_y, one_x = (sparse.identity(n) for n in shape)
    across = sparse.kron(sparse.kron(one_z, _line(ny, grid.ly)), one_x) + sparse.kron(sparse.kron(one_z, one_y), _line(nx, grid.lx))
    return (across + sparse.kron(sparse.kron(_line(nz, grid.lz), one_y), one_x) / 3).tocsr()


def finer(cells, times):
    """Amounts in cells so many times finer along each axis, between the given ones as their cosine series runs."""
    modes = fft.dctn(cells, type=2)
    padded = np.zeros([n * times for n in cells.shape])
    padded[tuple(slice(n) for n in cells.shape)] = modes
    return fft.idctn(padded, type=2)


def struck_dye(sketch, grid, spans, dye, pours, times):
    """As pan.struck_dye of a dye of one share, in cells @times (odd) finer, read at the middles of the grid's cells."""
    shape = tuple(n * times for n in grid.shape)
    moves = exchange(shape, grid)
    mobile, struck = np.zeros(shape), np.zeros(shape)
    for i, step in enumerate(sketch.steps):
        span = spans[i + 1]
        if i in pours:
            mobile = mobile + finer(pours[i], times)
        elif step.kind == "flip":
            mobile, struck = mobile[::-1], struck[::-1]
        elif span.minutes > 0:
            rate, spread = liquor.strike_rate(sketch, dye, False, span), liquor.spread(sketch, dye, span)
            away = rate * sparse.identity(moves.shape[0], format="csr") - spread * moves
            after = expm_multiply(-away * span.minutes, mobile.ravel())
            # d mobile/dt = -away mobile, so that its integral over the span is away^-1 (before - after).
            integral, failed = cg(away, mobile.ravel() - after, tol=1e-10)
            if failed:
                raise ArithmeticError("the system was not solved")
            mobile, struck = after.reshape(shape), struck + rate * integral.reshape(shape)
    struck = struck[::-1] if spans[-1].second_face else struck
    middle = slice(times // 2, None, times)
    return struck[middle, middle, middle] * times**3
