#!/usr/bin/python3
"""Writes test/calibration/published/oracles.json: values of independent libraries for the tests to read.

Run once, by hand, with Debian 12's python3-iapws python3-gsw python3-uncertainties python3-mpmath python3-scipy
python3-numpy. Tests only read the file; nothing of this runs with them.
"""

import json
import math
import os
import subprocess

import gsw
import mpmath
import numpy as np
from iapws._iapws import _Liquid, _Tension
from scipy import stats
from uncertainties import ufloat

mpmath.mp.dps = 40
NAMES = ["iapws", "gsw", "uncertainties", "mpmath", "scipy", "numpy"]


def debian(package):
    """The version of the Debian package, which is what `apt-get install` names."""
    return subprocess.run(["dpkg-query", "-W", "-f", "${Version}", package], capture_output=True, text=True, check=True).stdout


def t_quantile(p, dof):
    """Root of the regularised incomplete beta function at 40 digits."""
    dof = mpmath.mpf(dof)
    tail = 1 - mpmath.mpf(str(p))
    upper = lambda t: mpmath.betainc(dof / 2, mpmath.mpf(1) / 2, 0, dof / (dof + t * t), regularized=True) / 2
    guess = mpmath.mpf(float(stats.t.ppf(p, float(dof))))
    return float(mpmath.findroot(lambda t: upper(t) - tail, guess))


def tanaka(t):
    return 999.97495 * (1 - (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881)))


def case(name, dry, immersed, celsius, u_celsius, air, u_air, u_dry, u_immersed, u_water):
    """First-order budget of the hung method by python3-uncertainties."""
    r = ufloat(dry, u_dry)
    w = ufloat(immersed, u_immersed)
    t = ufloat(celsius, u_celsius)
    a = ufloat(air, u_air)
    water = tanaka(t) + ufloat(0, u_water)
    rho = (r / (r - w) * (water - a) + a) / 1000
    return {"name": name, "density": rho.nominal_value, "u": rho.std_dev}


def quantiles(name, draw, trials, seed):
    """Plain Monte Carlo with numpy, with the standard errors of its ends."""
    blocks = [np.quantile(draw(np.random.default_rng(seed + k), trials), [0.02275, 0.97725]) for k in range(10)]
    mean = np.mean(blocks, axis=0)
    error = np.std(blocks, axis=0, ddof=1) / math.sqrt(len(blocks))
    return {"name": name, "trials": trials * 10, "interval": mean.tolist(), "standard_error": error.tolist()}


def rect(rng, half, n):
    return rng.uniform(-half, half, n)


def density(r, d, t, a, water=0.0):
    return (r / d * (tanaka(t) + water - a) + a) / 1000


def kitchen_gold(rng, n):
    """31.1 g and 29.5 g at a 0.1 g display, s = 0.05 g, water 20 °C u 0.5, air 1.2 u 0.03, no other cause."""
    r = 31.1 + rect(rng, 0.05, n) + rect(rng, 0.05, n) + rng.normal(0, 0.05, n)
    w = 29.5 + rect(rng, 0.05, n) + rect(rng, 0.05, n) + rng.normal(0, 0.05, n)
    return density(r, r - w, rng.normal(20, 0.5, n), rng.normal(1.2, 0.03, n))


def few_readings(rng, n):
    """Rise 1.6120 g from four readings with s = 0.0020 g, 31.1035 g dry with s = 0.0001 g known, d = 0.1 mg."""
    d = 0.0001
    r = 31.1035 + rect(rng, d / 2, n) + rect(rng, d / 2, n) + rng.normal(0, 0.0001, n)
    rise = 1.6120 + rect(rng, d / 2, n) + rect(rng, d / 2, n) + 0.0010 * rng.standard_t(3, n)
    return density(r, rise, rng.normal(20, 0.1, n), rng.normal(1.2, 0.03, n))


def bubbles(rng, n):
    """Flask: 73.211 + 31.104 − 101.355 g, d = 1 mg, s = 1 mg each, bubbles 0 to 6 mg."""
    d = 0.001
    one = lambda x: x + rect(rng, d / 2, n) + rect(rng, d / 2, n) + rng.normal(0, 0.001, n)
    r, full, both = one(31.104), one(73.211), one(101.355)
    return density(r, full + r - both - rng.uniform(0, 0.006, n), rng.normal(20, 0.1, n), rng.normal(1.2, 0.03, n))


def numbers(values):
    return [float(v) for v in values]


def isothermal(t):
    """Isothermal compressibility from density at 0 and 10 dbar above 101 325 Pa (the library's own kappa is isentropic)."""
    low, high = gsw.rho_t_exact(0.0, t, 0.0), gsw.rho_t_exact(0.0, t, 10.0)
    return (high - low) / (1e5 * (high + low) / 2)


celsius = list(range(0, 41))
d0 = 1 / math.sqrt(12)
out = {
    "about": "made by test/calibration/oracles.py; see there",
    "versions": {name: debian(f"python3-{name}") for name in NAMES},
    "water": {
        "unit": "kg/m3",
        "celsius": celsius,
        "teos10_at_101325_pa": numbers(gsw.rho_t_exact(0.0, t, 0.0) for t in map(float, celsius)),
        "iapws_sr6_08_at_100_kpa": [None if t == 0 else float(_Liquid(t + 273.15, 0.1)["rho"]) for t in celsius],
        "compressibility_teos10_per_pa": numbers(isothermal(t) for t in map(float, celsius)),
    },
    "solids": {
        "unit": "kg/m3 at 20 °C, TEOS-10",
        "grams_per_kg": [0, 0.1, 0.2, 0.5, 1.0],
        "density": numbers(gsw.rho_t_exact(s, 20.0, 0.0) for s in [0, 0.1, 0.2, 0.5, 1.0]),
    },
    "surface_tension": {
        "unit": "N/m",
        "celsius": [5, 10, 20, 30, 40],
        "iapws": numbers(_Tension(t + 273.15) for t in [5, 10, 20, 30, 40]),
    },
    "student": [
        {"p": p, "dof": dof, "t": t_quantile(p, dof)}
        for dof in [1, 1.5, 2, 3, 4, 7.3, 10, 16, 30, 100, 1000, 5000, 1000000]
        for p in [0.75, 0.95, 0.975, 0.97725, 0.995, 0.99865]
    ],
    "budgets": [
        case("bench", 31.1035, 28.1435, 21.4, 0.1 / 3**0.5, 1.19, 0.03 / 3**0.5,
             math.hypot(1e-4, 1e-4 * d0, 1e-4 * d0), math.hypot(3e-4, 1e-4 * d0, 1e-4 * d0), 0.005),
        case("kitchen", 8.0, 7.38, 19, 1 / 3**0.5, 1.2, 0.05 / 3**0.5,
             math.hypot(0.01, 0.01 * d0, 0.01 * d0), math.hypot(0.01, 0.01 * d0, 0.01 * d0), 0.2),
        case("coin", 8.63, 7.8, 20, 0.5, 1.2, 0.03, math.hypot(0.001 * d0, 0.001 * d0),
             math.hypot(0.001 * d0, 0.001 * d0), 0.0),
    ],
    "intervals": [
        quantiles("kitchen gold", kitchen_gold, 1_000_000, 1),
        quantiles("few readings", few_readings, 1_000_000, 101),
        quantiles("bubbles in a flask", bubbles, 1_000_000, 201),
    ],
}
path = os.path.join(os.path.dirname(os.path.abspath(__file__)), "published", "oracles.json")
with open(path, "w") as file:
    json.dump(out, file, indent=1, ensure_ascii=False)
    file.write("\n")
print(path)
