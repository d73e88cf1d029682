# Makes stats-distributions.json:  python3 tests/reference/values/stats-distributions.py > tests/reference/values/stats-distributions.json
# Made with mpmath 1.3.0 at 60 digits, from the defining integrals and series; the interval-censored lives with SciPy
# 1.17.1. Nothing of the project is used.
import json
import mpmath as mp
from scipy import optimize
import numpy as np

mp.mp.dps = 60
M = mp.mpf


def bisected(rising, target, low, high):
    """x in (low, high) on a logarithmic scale with rising(x) = target."""
    low, high = mp.log(low), mp.log(high)
    for _ in range(75):
        middle = (low + high) / 2
        if rising(mp.exp(middle)) > target:
            high = middle
        else:
            low = middle
    return float(mp.exp(middle))


def gamma_below(a, x):
    return mp.gammainc(M(a), 0, M(x), regularized=True)


def gamma_above(a, x):
    return mp.gammainc(M(a), M(x), mp.inf, regularized=True)


def vast_gamma(a, x, above):
    # Not from SciPy 1.17.1: it is wrong up to a hundredfold in these lower tails.
    a, x = M(a), M(x)
    deviation = mp.sqrt(a)
    start = (x - a) / deviation
    if start > 10:
        tail = falling_fraction(a, x)
    else:
        outwards = 1 if x > a else -1
        steps = sorted(start + outwards * M(k) / 32 for k in range(640))
        height = mp.exp(a * mp.log(a) - a - mp.loggamma(a)) / deviation
        tail = height * mp.quad(lambda z: mp.exp((a - 1) * mp.log1p(z / deviation) - z * deviation), steps)
    return float(tail if above == (x > a) else 1 - tail)


def falling_fraction(a, x):
    level = M(0)
    for n in range(400, 0, -1):
        level = n * (a - n) / (x + 2 * n + 1 - a + level)
    return mp.exp(a * mp.log(x) - x - mp.loggamma(a)) / (x + 1 - a + level)


def beta_side(a, b, x, y):
    term, total, k = M(1), M(0), 0
    while term > total * M(10) ** -45:
        total += term
        term *= x * (a + b + k) / (a + 1 + k)
        k += 1
    return mp.exp(a * mp.log(x) + b * mp.log(y) + mp.loggamma(a + b) - mp.loggamma(a) - mp.loggamma(b)) / a * total


def beta_below(a, b, x, y=None):
    a, b, x = M(a), M(b), M(x)
    y = 1 - x if y is None else y
    # The shorter series; 60 digits leave enough of a difference that is above 1e-26.
    return 1 - beta_side(b, a, y, x) if x >= (a + 1) / (a + b + 2) or (y < 0.01 and (a + b) * y < 60) else beta_side(a, b, x, y)


def student_tail(size, df):
    df, square = M(df), M(size) ** 2
    return beta_below(df / 2, M(1) / 2, df / (df + square), square / (df + square)) / 2


def normal_quantile(p):
    p = M(p)
    if p == 0.5:
        return 0.0
    small = min(p, 1 - p)
    size = bisected(lambda x: -mp.ncdf(-x), -small, M(10) ** -12, 40)
    return -size if p < 0.5 else size


def interval_weibull(lives):
    def minus(point):
        scale, shape = np.exp(point)
        total = 0.0
        for kind, early, late in lives:
            if kind == "ended":
                total += np.log(shape / scale) + (shape - 1) * np.log(early / scale) - (early / scale) ** shape
            elif kind == "going":
                total -= (early / scale) ** shape
            else:
                total += np.log(np.exp(-((early / scale) ** shape)) - np.exp(-((late / scale) ** shape)))
        return -total

    best = optimize.minimize(minus, [3, 0.3], method="Nelder-Mead", options={"xatol": 1e-11, "fatol": 1e-14, "maxiter": 9000})
    one = optimize.minimize_scalar(lambda at: minus([at, 0.0]), bracket=(2, 4), tol=1e-14)
    return {
        "lives": [{"kind": kind, **({"after": early, "before": late} if kind == "between" else {"at": early})} for kind, early, late in lives],
        "scale": float(np.exp(best.x[0])),
        "shape": float(np.exp(best.x[1])),
        "logLikelihood": -float(best.fun),
        "exponentialMean": float(np.exp(one.x)),
        "exponentialLogLikelihood": -float(one.fun),
    }


xs = [-38.4, -38, -37.5, -37, -30, -20, -12.345, -10, -8, -7.1, -7, -5, -4, -3, -2.81, -2.79, -2, -1, -0.1, 0, 0.3, 1.96, 3, 8.2]
ps = [1e-320, 1e-300, 1e-200, 1e-100, 1e-30, 1e-16, 1e-10, 1e-4, 0.025, 0.07, 0.08, 0.3, 0.5, 0.7, 0.975, 0.9999, 1 - 1e-16]
gammas = [(1e-10, 0.1), (1e-10, 1e-5), (0.01, 0.5), (0.01, 1e-300), (0.5, 1e-10), (0.5, 0.3), (0.5, 2), (0.5, 400), (0.9, 1.49), (0.9, 1.51),
          (1, 1), (3, 0.001), (3, 5), (3, 60), (12, 1e-20), (12, 3), (25, 80), (100, 60), (100, 100), (100, 200), (1000, 900), (1000, 1000),
          (1000, 1300), (1e5, 1e5), (1e5, 9.8e4), (1e5, 1.02e5)]
betas = [(0.5, 0.5, 1e-12), (0.5, 0.5, 0.3), (2, 3, 0.4), (2, 3, 1e-100), (0.01, 5, 0.1), (50, 3, 0.7), (50, 60, 0.2), (50, 60, 0.6),
         (1000, 0.5, 0.99), (1000, 0.5, 0.999999), (0.5, 1000, 1e-3), (1e4, 1e4, 0.49), (1e5, 3e5, 0.2501), (1e5, 0.5, 0.9999), (3, 148, 0.004)]
students = [(0.5, 3), (0.1, 1e100), (1, 1e-8), (1, 1), (1, 1e200), (2.5, 4), (3, 1e60), (10, 2.228), (10, 1e10), (30, 0.001), (30, 2.75),
            (30, 1000), (200, 5), (1e4, 12), (1e4, 37), (99999, 6), (99999, 37), (100001, 6), (100001, 37), (1e6, 1.96), (1e6, 20), (1e6, 37)]
lives = [("between", 0.0, 6.0), ("between", 3.0, 9.0), ("ended", 7.5, 0), ("between", 9.0, 16.0), ("going", 10.0, 0), ("ended", 12.25, 0),
         ("between", 14.0, 22.0), ("going", 21.0, 0), ("between", 20.0, 31.0), ("going", 35.0, 0)]

print(json.dumps({
    "source": "made by stats-distributions.py, mpmath 1.3.0 at 60 digits; intervalWeibull by SciPy 1.17.1",
    "normal": [[x, float(mp.ncdf(M(x)))] for x in xs],
    "normalQuantiles": [[p, normal_quantile(p)] for p in ps],
    "logGammas": [[x, float(mp.loggamma(M(x)))] for x in
                  [1e-300, 1e-5, 0.3, 0.5, 0.7, 1 - 1e-9, 1 + 1e-9, 1.2, 1.5, 1.9, 2 - 1e-9, 2.4, 2.6, 3.3, 7.7, 11.99, 12, 50, 1e3, 1e10, 1e300]],
    "gammas": [[a, x, float(gamma_below(a, x)), float(gamma_above(a, x))] for a, x in gammas],
    "vastGammas": [[a, x, vast_gamma(a, x, False), vast_gamma(a, x, True)]
                   for a, x in [(1e8, 1.0003e8), (1e8, 9.99e7), (1e8, 1.003e8), (1e9, 1e9), (1e12, 1.000003e12), (1e12, 9.99995e11)]],
    "gammaQuantiles": [[a, p, bisected(lambda x: gamma_below(a, x), M(p), M(10) ** -305, 1e5)]
                       for a, p in [(1, 1e-300), (3, 1e-300), (25, 1e-300), (100, 1e-300), (0.5, 1e-30), (3, 1e-30), (1000, 1e-30), (0.5, 0.025),
                                    (10, 0.025), (10, 0.5), (10, 0.975), (1000, 0.975), (3, 1 - 1e-16)]],
    "gammaUpperQuantiles": [[a, q, bisected(lambda x: -gamma_above(a, x), -M(q), M(10) ** -305, 1e5)]
                            for a, q in [(0.01, 1e-300), (0.5, 1e-300), (1, 1e-300), (3, 1e-300), (100, 1e-300), (1000, 1e-300), (0.5, 1e-30), (11, 0.025)]],
    "betas": [[a, b, x, float(beta_below(a, b, x))] for a, b, x in betas],
    "betaQuantiles": [[a, b, p, bisected(lambda x: beta_below(a, b, x), M(p), M(10) ** -305, 1 - M(10) ** -18)]
                      for a, b, p in [(3, 148, 0.025), (4, 147, 0.975), (1, 1e4, 1e-300), (2, 5, 1e-300), (50, 60, 1e-300), (0.5, 0.5, 1e-30),
                                      (0.5, 30, 1e-30), (300, 200, 1e-30), (50, 60, 0.5)]],
    "students": [[df, t, float(student_tail(t, df))] for df, t in students],
    "studentQuantiles": [[df, p, -bisected(lambda t: -student_tail(t, df), -M(p), M(10) ** -9, M(10) ** 305)]
                         for df, p in [(1, 1e-300), (3, 1e-300), (10, 1e-300), (30, 1e-300), (1, 1e-30), (2.5, 1e-30), (30, 1e-30), (200, 1e-30),
                                       (34, 0.025), (3, 0.25), (3, 0.4999), (0.5, 0.1)]],
    "intervalWeibull": interval_weibull(lives),
}, indent=1))
