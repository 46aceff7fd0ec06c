"""Sick satellites and twins are left out, and that is said."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from tests.samples.navigation import TOE_S, constellation, elements

from backprobe.evidence.orbits import Orbits
from backprobe.formats.navigation import read_navigation
from backprobe.stages.mount.satellites import left_out_notes, satellites_of


def orbits(*sets: object) -> Orbits:
    """A file with these sets."""
    return Orbits(file="brdc", kind="invented", good_for_s=7200.0, sets=sets)  # type: ignore[arg-type]


def test_all_of_a_healthy_constellation_are_taken() -> None:
    """Thirty-one satellites, in the order of their names."""
    found = satellites_of(orbits(*reversed(constellation(31))))
    assert list(found.sets) == [f"G{k:02d}" for k in range(1, 32)]
    assert left_out_notes(found) == ()


def test_one_sick_set_is_enough() -> None:
    """A satellite that is sick at noon is left out for the whole day."""
    found = satellites_of(orbits(elements(3), elements(3, toe_s=TOE_S + 7200, healthy=False), elements(4)))
    assert list(found.sets) == ["G04"]
    assert left_out_notes(found) == ("Left out as not healthy: G03.",)


def test_of_twins_the_one_with_more_sets_is_believed() -> None:
    """G11 stands there with an orbit of G10, which has a second one: G10 is kept, G11's other set too."""
    ten = elements(10)
    found = satellites_of(orbits(replace(ten, id="G11"), ten, elements(10, toe_s=TOE_S + 7200)))
    assert list(found.sets) == ["G10"]
    assert found.twins == (("G11", "G10"),)
    assert "G11 stands in the file with the orbit of G10" in left_out_notes(found)[0]


def test_a_real_file_has_such_twins(shared_data: Path) -> None:
    """In the broadcast file of 29 April 2021 both sets under G11 are other satellites' (gnss_lib_py, MIT)."""
    lines = (shared_data / "orbits" / "brdc1190.21n").read_text(encoding="ascii").splitlines()
    found = satellites_of(read_navigation(lines, file="brdc1190.21n", near_week=2155))
    assert found.twins == (("G11", "G10"), ("G11", "G32"))
    assert len(found.sets) == 31
