"""The way of the unit's current, part by part."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.wiring import AT_STUD, GOOD, ON_RED, POWER, built, told

from backprobe.stages.join.fuse_opening import fuse_of
from backprobe.stages.join.path import path_parts, to_unit_ohm


def test_the_way_to_the_unit_and_back():
    """Lead 60.2, ground lead 30.1, fuse 32.9, two joints of 2, ground 7 mΩ."""
    ohm = to_unit_ohm(GOOD, POWER, joint=ON_RED, fuse=fuse_of(3))
    assert ohm is not None
    assert ohm.likely == pytest.approx(0.1342, abs=0.0002)
    assert ohm.low < ohm.likely < ohm.high


def test_every_part_has_its_name_and_says_whether_it_was_read():
    """Joints that nobody read say how they would be; the ground was read."""
    parts = path_parts(GOOD, POWER, joint=ON_RED, fuse=fuse_of(3))
    assert parts is not None
    assert [part.name for part in parts] == [
        *("the joint of 'power'", "the 3 A fuse", "lead 'power'", "the joint of 'ground'", "lead 'ground'"),
        "the ground",
    ]
    assert [part.name for part in parts if part.unread] == ["the joint of 'power'", "the joint of 'ground'"]
    read = replace(AT_STUD, drop_mV=4.0, drop_A=2.0)
    parts = path_parts(built(read), POWER, joint=ON_RED, fuse=None)
    assert parts is not None
    assert [part.name for part in parts if part.unread] == ["the joint of 'power'"]
    assert parts[2].ohm.likely == pytest.approx(0.002)  # 4 mV / 2 A


def test_what_nobody_read_of_the_ground_is_named():
    """It stands at the end of the way."""
    parts = path_parts(told(ground=None), POWER, joint=ON_RED, fuse=None)
    assert parts is not None
    assert parts[-1].unread == "drop_mV and load_A under [ground]"


def test_a_lead_of_unknown_length_has_no_way():
    """Nothing is guessed."""
    joint = replace(ON_RED, length_m=None)
    assert path_parts(GOOD, POWER, joint=joint, fuse=None) is None
    assert to_unit_ohm(GOOD, POWER, joint=joint, fuse=None) is None
