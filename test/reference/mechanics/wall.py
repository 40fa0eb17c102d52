"""Thin plate under even pressure by bicubic Hermite elements: foot and ends clamped, top free or supported.

Prints greatest stress over p h^2/t^2 and greatest deflection over p h^4/(E t^3); nu = 0.35. Needs numpy and scipy.
"""
import json
import numpy as np
import scipy.sparse as sp
from scipy.sparse.linalg import spsolve

NU = 0.35
GAUSS = np.polynomial.legendre.leggauss(4)


def hermite(u, h):
    value = [1 - 3 * u**2 + 2 * u**3, h * (u - 2 * u**2 + u**3), 3 * u**2 - 2 * u**3, h * (u**3 - u**2)]
    slope = [(-6 * u + 6 * u**2) / h, 1 - 4 * u + 3 * u**2, (6 * u - 6 * u**2) / h, 3 * u**2 - 2 * u]
    curve = [(-6 + 12 * u) / h**2, (-4 + 6 * u) / h, (6 - 12 * u) / h**2, (6 * u - 2) / h]
    return np.array(value), np.array(slope), np.array(curve)


def line(n, length):
    """1-D matrices of all pairs of derivatives, and the load."""
    h = length / n
    size = 2 * (n + 1)
    out = {(p, q): np.zeros((size, size)) for p in range(3) for q in range(3)}
    load = np.zeros(size)
    for e in range(n):
        at = [2 * e, 2 * e + 1, 2 * e + 2, 2 * e + 3]
        for x, w in zip(*GAUSS):
            d = hermite((x + 1) / 2, h)
            w = w * h / 2
            load[at] += w * d[0]
            for p in range(3):
                for q in range(3):
                    out[p, q][np.ix_(at, at)] += w * np.outer(d[p], d[q])
    return out, load


def wall(width, top, n=32):
    X, fx = line(n, width)
    Y, fy = line(n, 1.0)
    K = (
        np.kron(X[2, 2], Y[0, 0])
        + np.kron(X[0, 0], Y[2, 2])
        + NU * (np.kron(X[2, 0], Y[0, 2]) + np.kron(X[0, 2], Y[2, 0]))
        + 2 * (1 - NU) * np.kron(X[1, 1], Y[1, 1])
    )
    f = np.kron(fx, fy)
    m = 2 * (n + 1)
    freeX = np.ones(m, bool)
    freeX[[0, 1, m - 2, m - 1]] = False
    freeY = np.ones(m, bool)
    freeY[[0, 1]] = False
    if top == 'supported':
        freeY[m - 2] = False
    free = np.kron(freeX, freeY).astype(bool)
    c = np.zeros(m * m)
    c[free] = spsolve(sp.csr_matrix(K[np.ix_(free, free)]), f[free])
    c = c.reshape(m, m)
    most = 0.0
    hx, hy = width / n, 1 / n
    for i in range(n):
        for j in range(n):
            part = c[2 * i : 2 * i + 4, 2 * j : 2 * j + 4]
            for u in (0, 1):
                for v in (0, 1):
                    a, _, aa = hermite(u, hx)
                    b, _, bb = hermite(v, hy)
                    xx, yy = aa @ part @ b, a @ part @ bb
                    most = max(most, abs(xx + NU * yy), abs(yy + NU * xx))
    return {'stress': 6 * most, 'deflection': np.abs(c[::2, ::2]).max() * 12 * (1 - NU**2)}


print(json.dumps({f'{top} {width}': wall(width, top) for top in ('free', 'supported') for width in (0.5, 1, 2.5)}, indent=1))
