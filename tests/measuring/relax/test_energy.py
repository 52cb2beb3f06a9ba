"""Every force is the slope of its energy; the factor solves its matrix; flat fabrics hold no bending."""

import numpy as np
import pytest
from scipy.sparse import identity

from loopwright.measuring.relax.bending import bending_rows
from loopwright.measuring.relax.contact import Contact
from loopwright.measuring.relax.descent import SMALL, Factor
from loopwright.measuring.relax.flat import Board, Guard
from loopwright.measuring.relax.ordering import dissected
from loopwright.measuring.relax.part import parts_of
from loopwright.measuring.relax.starts import by_distance
from loopwright.measuring.relax.stuffing import Stuffing, Volume
from tests.measuring.relax import forms


@pytest.fixture(scope="module")
def part():
    return parts_of(forms.graph_of(forms.disc("dc", 12, 4, 2), "dc"))[0]


@pytest.fixture(scope="module")
def x(part):
    x = by_distance(part.pairs, part.rest, len(part)) + np.random.default_rng(3).normal(0, 0.2, (len(part), 3))
    return x if Volume(part.tris, len(part))(x)[0] > 0 else -x


def slope(force, x, way, step=1e-5):
    return (force(x + step * way)[0] - force(x - step * way)[0]) / (2 * step)


@pytest.mark.parametrize("which", ["springs", "stuffing", "contact", "board", "guard"])
def test_forces_are_slopes(which, part, x):
    ways = np.random.default_rng(4).normal(0, 1, (3, *x.shape))
    if which == "guard":
        x, ways = x[:, :2], ways[:, :, :2]
    contact = Contact(part.pairs, len(part))
    contact.pairs = np.array([[0, 9], [3, 40]])
    x = x.copy()
    x[9] = x[0] + 0.2
    force = {
        "springs": part.energy(0.05), "stuffing": Stuffing(Volume(part.tris, len(part)), 2.0, 50.0), "contact": contact, "board": Board(),
        "guard": Guard(part.tris, x),
    }[which]
    energy, gradient = force(x)
    assert energy != 0
    for way in ways:
        assert slope(force, x, way) == pytest.approx(float(np.vdot(gradient, way)), rel=1e-4, abs=1e-6)


def test_the_factor_solves(part, x):
    energy = part.energy(0.05)
    a = energy.laplacian() + energy.bending + SMALL * identity(len(part))
    b = np.random.default_rng(5).normal(0, 1, x.shape)
    assert np.allclose(a @ Factor(energy, x).solve(b), b, atol=1e-8)


def test_the_order_of_factoring_holds_every_node_once():
    part = parts_of(forms.graph_of(forms.rectangle("sc", 30, 30), "sc"))[0]
    order = dissected((part.energy(0.05).laplacian() + identity(len(part))).tocsr(), by_distance(part.pairs, part.rest, len(part)))
    assert sorted(order.tolist()) == list(range(len(part)))


def test_a_flat_fabric_holds_no_bending_and_a_rolled_one_does():
    part = parts_of(forms.graph_of(forms.rectangle("sc", 12, 12), "sc"))[0]
    rows = bending_rows(part.hinges, len(part), 1.0)
    place = part.graph.along.place[part.nodes]
    row = part.graph.along.row[place]
    column = place - part.graph.along.start[row]
    column = np.where(row % 2 == 1, 11 - column, column)  # every other row is worked back, the foundation first
    flat = np.column_stack([column * 1.0, row * 0.92, np.zeros(len(part))])
    rolled = np.column_stack([4 * np.sin(flat[:, 0] / 4), flat[:, 1], 4 * np.cos(flat[:, 0] / 4)])
    held = [float(np.square(rows @ p).sum()) for p in (flat, rolled)]
    assert held[0] < 1e-9 * held[1]


def test_a_closed_box_has_its_volume_and_an_open_one_is_capped():
    p = np.array([[x, y, z] for x in (0, 1) for y in (0, 1) for z in (0, 2)], float)
    quads = [(0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3)]
    tris = np.array([t for a, b, c, d in quads for t in ((a, b, c), (a, c, d))])
    assert Volume(tris, 8)(p)[0] == pytest.approx(2)
    assert Volume(tris[:-2], 8)(p)[0] == pytest.approx(2)
    assert Volume(tris[:-2], 8).largest_opening(p) == pytest.approx(4 / np.pi)
