"""Draws the four inputs of a trial in numpy as pkg/odds draws them, and with less to do; prints ns a figure."""
import sys
import time

import numpy as np

BLOCK, BLOCKS = 4096, 64
rng = np.random.Generator(np.random.PCG64(1))
scores = np.empty((4, BLOCK))
at = np.linspace(-7, 7, 7169)  # scores of a table; what the values are does not matter here
tables = [np.sinh(at / 4) + k for k in range(3)]
tie = 2 * np.sin(np.pi * 0.5 / 6)
rest = np.sqrt(1 - tie * tie)
edges, cases = np.array([0.14, 1.22]), np.array([0.0, 1.0, 3.0])


def normal():
    rng.standard_normal(out=scores)


def beta():
    for _ in range(3):
        rng.beta(2.5, 3.5, BLOCK)
    cases[np.searchsorted(edges, rng.standard_normal(BLOCK))]


def tied():
    normal()
    np.multiply(scores[2], rest, out=scores[2])
    scores[2] += tie * scores[1]
    for k, table in enumerate(tables):
        scores[k] = np.interp(scores[k], at, table)
    scores[3] = cases[np.searchsorted(edges, scores[3])]


draw = {"normal": normal, "beta": beta, "tied": tied}[sys.argv[1]]
best = np.inf
for _ in range(6):  # the first warms up
    began = time.process_time()
    for _ in range(BLOCKS):
        draw()
    best = min(best, time.process_time() - began)
print(f"{best / (4 * BLOCK * BLOCKS) * 1e9:.3f}")
