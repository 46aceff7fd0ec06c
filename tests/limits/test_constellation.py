"""The nominal constellation: two tables of it that were transcribed independently agree."""

from __future__ import annotations

import csv
from itertools import pairwise
from pathlib import Path

import pytest

from backprobe.limits.constellation import HALF_AXIS_KM, HOUR_ANGLE_DEG, INCLINATION_DEG, SLOTS

TABLE_2001 = Path(__file__).resolve().parents[2] / "authorities" / "gps-sps-ps" / "slots-2001.csv"


def test_every_slot_differs_alike_from_the_table_of_2001() -> None:
    """From 2001 to 2020 each node goes on by 16.003° and each argument of latitude by -28.59°: no slip in either."""
    rows = list(csv.DictReader(TABLE_2001.read_text(encoding="utf-8").splitlines()))
    assert {row["slot"] for row in rows} == set(SLOTS)
    for row in rows:
        node, latitude = SLOTS[row["slot"]]
        assert (node - float(row["node_deg"])) % 360 == pytest.approx(16.003, abs=0.006)
        assert (latitude - float(row["latitude_deg"])) % 360 == pytest.approx(360 - 28.59, abs=0.006)


def test_six_planes_of_four() -> None:
    """Six planes, 60° apart, four slots in each; the figures beside them."""
    nodes = sorted({node for node, _ in SLOTS.values()})
    assert [round(b - a, 6) for a, b in pairwise(nodes)] == [60.0] * 5
    assert len(SLOTS) == 24
    assert (HALF_AXIS_KM, INCLINATION_DEG, HOUR_ANGLE_DEG) == (26559.8, 55.0, 100.765)
