"""Fails unless results are the same: agree.py FIRST OTHER...

Profit and cash to a cent, the return on cash to a millionth, months to a billionth. A sum
that lies on half a cent may be rounded either way by what float64 leaves, so a cent apart
is let pass, and how many trials lie so far apart is said.
"""
import sys

import numpy as np

APART = [("profit", 0.01), ("return on cash", 1e-6), ("cash needed", 0.01), ("months", 1e-9)]

first = np.fromfile(sys.argv[1], "<f8").reshape(len(APART), -1)
for path in sys.argv[2:]:
    apart = np.abs(np.fromfile(path, "<f8").reshape(first.shape) - first)
    for (name, most), by in zip(APART, apart):
        if not by.max() <= most * 1.0001:  # also where it is no number
            sys.exit(f"{name} differs by {by.max()} between {sys.argv[1]} and {path}")
    rounded = np.count_nonzero((apart[[0, 2]] > 0.005).any(axis=0))
    print(f"{path} agrees with {sys.argv[1]} in {first.shape[1]} trials, {rounded} of them a cent apart")
