# SPDX-License-Identifier: GPL-3.0-or-later
"""Chance with an address: every random number is a function of a seed and of what it belongs to.

The mixing is the finaliser of splitmix64 (Steele, Lea & Flood 2014, OOPSLA), on arrays of unsigned 64-bit
numbers, which wrap round by themselves.
"""
import numpy as np

GOLDEN = np.uint64(0x9E3779B97F4A7C15)
FIRST = np.uint64(0xBF58476D1CE4E5B9)
SECOND = np.uint64(0x94D049BB133111EB)


def _unsigned(numbers):
    if isinstance(numbers, int):
        numbers = numbers % 2**64
    array = np.atleast_1d(np.asarray(numbers))
    return array if array.dtype == np.uint64 else array.astype(np.uint64)


def mix(seed, part):
    """The address of a part of what @seed is the address of."""
    z = _unsigned(seed) + GOLDEN * (_unsigned(part) + np.uint64(1))
    z = (z ^ (z >> np.uint64(30))) * FIRST
    z = (z ^ (z >> np.uint64(27))) * SECOND
    return z ^ (z >> np.uint64(31))


def even(address):
    """Even in [0, 1): the upper 53 bits."""
    return (mix(address, 0) >> np.uint64(11)) / 2.0**53


def normal(address):
    """Mean 0, sd 1: the cosine of Box & Muller 1958."""
    radius = np.sqrt(-2 * np.log(1 - even(mix(address, 1))))
    return radius * np.cos(2 * np.pi * even(mix(address, 2)))
