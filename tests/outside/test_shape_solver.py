"""The solver against a general one: L-BFGS-B of scipy.optimize (https://docs.scipy.org/doc/scipy/reference/generated/scipy.optimize.minimize.html)
minimising an energy written down once more here, term by term, from the published formulas.

Hinge energy: "A Quadratic Bending Model for Inextensible Surfaces", Bergou, Wardetzky, Harmon, Zorin, Grinspun 2006, section 3.
"""

import math

import numpy as np
import pytest
from scipy.optimize import minimize

from loopwright.measuring.relax import relax, stitch_graph
from loopwright.measuring.relax.part import parts_of
from loopwright.measuring.relax.shape import BENDING
from tests.measuring.relax import forms


def corner(opposite, one, two):
    return math.acos(max(-1.0, min(1.0, (one**2 + two**2 - opposite**2) / (2 * one * two))))


def hinges(triangles):
    """(four nodes, their coefficients, 3 / (A0 + A1)) of every inner edge, one triangle at a time."""
    edges: dict[tuple[int, int], list[tuple[int, dict[int, float], float]]] = {}
    for nodes, (l01, l12, l20) in triangles:
        angles = (corner(l12, l01, l20), corner(l20, l12, l01), corner(l01, l20, l12))
        area = 0.5 * l01 * l20 * math.sin(angles[0])
        for k in range(3):
            i, j = int(nodes[k]), int(nodes[(k + 1) % 3])
            at = {i: angles[k], j: angles[(k + 1) % 3]}
            edges.setdefault((min(i, j), max(i, j)), []).append((int(nodes[(k + 2) % 3]), at, area))
    for (i, j), sides in edges.items():
        if len(sides) == 2:
            (p, at_p, area_p), (q, at_q, area_q) = sides
            cot = [[1 / math.tan(at[n]) for n in (i, j)] for at in (at_p, at_q)]
            yield (i, j, p, q), (cot[0][1] + cot[1][1], cot[0][0] + cot[1][0], -sum(cot[0]), -sum(cot[1])), 3 / (area_p + area_q)


def written_down(part, bending):
    """The energy as a function of all coordinates, with its slope by the same terms."""
    springs = [(part.pairs, part.rest, np.ones(len(part.pairs))), (part.soft_pairs, part.soft_rest, part.soft)]
    bends = [(np.array(n), np.array(k), w / 2) for h in part.hinges for n, k, w in hinges(zip(h.nodes, h.lengths_mm / part.unit_mm, strict=True))]
    nodes, k = np.array([b[0] for b in bends]), np.array([b[1] for b in bends])
    weight = np.array([b[2] for b in bends]) * bending

    def energy(flat):
        x = flat.reshape(-1, 3)
        total, slope = 0.0, np.zeros_like(x)
        for pairs, rest, stiff in springs:
            d = x[pairs[:, 0]] - x[pairs[:, 1]]
            length = np.sqrt((d**2).sum(axis=1))
            total += 0.5 * (stiff * (length - rest) ** 2).sum()
            force = (stiff * (length - rest) / length)[:, None] * d
            np.add.at(slope, pairs[:, 0], force)
            np.add.at(slope, pairs[:, 1], -force)
        bent = (k[:, :, None] * x[nodes]).sum(axis=1)
        total += 0.5 * (weight * (bent**2).sum(axis=1)).sum()
        for c in range(4):
            np.add.at(slope, nodes[:, c], (weight * k[:, c])[:, None] * bent)
        return total, slope.ravel()

    return energy


@pytest.mark.parametrize(
    ("text", "kind"), [(forms.disc("dc", 12, 4), "dc"), (forms.disc("dc", 8, 4), "dc"), (forms.disc("hdc", 8, 3, 3), "hdc"), (forms.rectangle("sc", 6, 5), "sc")],
)
def test_no_general_solver_finds_a_lower_energy(text, kind):
    fabric, sizes = forms.made(text), forms.sizes(kind)
    part = parts_of(stitch_graph(fabric, sizes))[0]
    energy = written_down(part, BENDING)
    ours = energy((relax(fabric, sizes).points / part.unit_mm).ravel())[0]
    rng = np.random.default_rng(7)
    best = math.inf
    for spread in (0.0, 0.3, 1.0):  # from where we ended, shaken a little and much
        start = (relax(fabric, sizes).points / part.unit_mm + rng.normal(0, spread + 1e-6, (len(part), 3))).ravel()
        found = minimize(energy, start, jac=True, method="L-BFGS-B", options={"maxiter": 4000, "maxfun": 8000, "ftol": 1e-13, "gtol": 1e-9})
        best = min(best, float(found.fun))
    assert ours <= best * 1.001 + 1e-4


def test_the_energy_is_the_one_written_down():
    part = parts_of(forms.graph_of(forms.disc("dc", 12, 4, 2), "dc"))[0]
    x = np.random.default_rng(9).normal(0, 3, (len(part), 3))
    assert part.energy(BENDING)(x)[0] == pytest.approx(written_down(part, BENDING)(x.ravel())[0], rel=1e-9)
