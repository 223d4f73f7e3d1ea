"""The kitchen weighing of evaluation.bench.ts in numpy: a million plain trials for each line read; prints mean, u, both
ends and the processor time in s."""

import sys
import time

import numpy as np

rng = np.random.default_rng(1)
N = 1_000_000


def trial():
    half = 0.005
    rect = lambda: rng.uniform(-half, half, N)
    dry = 8.00 + rect() + rect() + rng.normal(0, 0.01, N)
    immersed = 7.38 + rect() + rect() + rng.normal(0, 0.01, N)
    t = rng.normal(19, 0.5, N)
    water = 999.97495 * (1 - (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881)))
    water += rng.normal(0, 0.005, N) + rng.uniform(0, 1, N) * (-4.612e-3 + 0.106e-3 * t)
    air = rng.normal(1.2, 0.03, N)
    displaced = dry - immersed - rng.uniform(0, 0.001, N)
    density = (dry / displaced * (water - air) + air) / 1000
    mean, u = density.mean(), density.std()
    low, high = np.quantile(density, [0.02275, 0.97725])
    return mean, u, low, high


print("ready", flush=True)
for _ in sys.stdin:
    start = time.process_time()
    found = trial()
    print(*found, time.process_time() - start, flush=True)
