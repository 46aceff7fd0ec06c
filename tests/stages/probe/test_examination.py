"""A small examination of the whole loop: awkward vehicles, every kind of meter and technician, nothing unsafe chosen.

`bench/probe_search.py` is the large one, with its figures printed.
"""

from __future__ import annotations

import random

import pytest
from tests.samples import vehicles as plain
from tests.samples.probe_cases import CASES, Case, examine, mean
from tests.samples.probe_tables import SETUP

from backprobe.stages.probe.wires import judge_wires

PROVES_NOTHING = ("12 V, after at 5 min", "12 V, display for min", "12 V, display only")
CAREFUL = CASES[0]
MOST_OF_A_TABLE = 0.5
SLOTS = {"supply": ("constant", 9.0), "ignition": ("ignition", 10.0)}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_nothing_unsafe_is_chosen_and_no_promise_broken(case: Case):
    """Ten vehicles each: every choice at every step is safe, and `next` asks for what meter and vehicle have."""
    tally = examine(case, 10, seed=500)
    assert [leak[:2] for leak in tally.unsafe] == []
    assert tally.broken == []
    assert case.name not in PROVES_NOTHING or tally.found == 0


def test_most_pairs_are_found_with_less_than_half_a_table():
    """Of thirty vehicles those with a fit pair mostly get it; a full table is positions × wires."""
    tally = examine(CAREFUL, 30, seed=900)
    assert tally.fit >= 8
    assert tally.found >= 0.75 * tally.fit
    assert mean(tally.shares) <= MOST_OF_A_TABLE
    assert mean(tally.when_fit) <= MOST_OF_A_TABLE


def test_probabilities_are_kept():
    """Of the wires named in sixty vehicles about as many are rightly named as was said, to within 6 in 100."""
    named = examine(CAREFUL, 60, seed=1300).named
    assert len(named) >= 80
    assert mean([right for _, right in named]) == pytest.approx(mean([p for p, _ in named]), abs=0.06)


def test_vehicles_of_another_make_are_safe_too():
    """Forty vehicles made without a look at these: signals near battery level, lamps that burn by chance."""
    found = 0
    for number in range(40):
        vehicle = plain.make_vehicle(random.Random(number), wires=8)
        technician = plain.Technician(vehicle, SETUP, typo_share=0.01)
        readings, waiting = [], list(vehicle.wires)
        result = judge_wires(plain.table_of(readings), SETUP)
        while result.next is not None and (result.next.wire or waiting):
            name = result.next.wire or waiting.pop()
            readings.append(technician.read(name, result.next.key, result.next.capture))
            result = judge_wires(plain.table_of(readings), SETUP)
            for slot, (role, least_V) in SLOTS.items():
                wire = getattr(result, slot)
                assert wire is None or vehicle.wires[wire].role == role, (number, slot)
                assert wire is None or vehicle.lowest_V(wire) >= least_V - 1.0, (number, slot)
        found += None not in (result.supply, result.ignition)
    assert found >= 4
