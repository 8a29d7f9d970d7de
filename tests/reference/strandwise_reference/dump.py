# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads what dump-forecast prints of the program's own forecast."""
import subprocess

import numpy as np


def arrays(program, path):
    """By their names: a line 'name type count', then so many numbers, and again."""
    text = subprocess.run([program, path], check=True, stdout=subprocess.PIPE).stdout
    found, at = {}, 0
    while at < len(text):
        end = text.index(b"\n", at)
        name, kind, count = text[at:end].decode().split()
        found[name] = np.frombuffer(text, kind, int(count), end + 1).astype(float)
        at = end + 1 + int(count) * np.dtype(kind).itemsize
    return found
