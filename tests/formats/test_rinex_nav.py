"""RINEX navigation files: versions 2 and 3, mixed systems, torn and spliced blocks, other files."""

from __future__ import annotations

import dataclasses
from itertools import chain

import pytest
from tests.samples.navigation import TOE_S, constellation, elements, other_set, rinex2, rinex3

from backprobe.errors import UnreadableError
from backprobe.evidence.orbits import Elements
from backprobe.formats.rinex_nav import is_rinex, read_rinex_nav


def same(one: Elements, other: Elements) -> bool:
    """Whether two sets agree to the twelve digits that a file holds."""
    pairs = zip(dataclasses.astuple(one), dataclasses.astuple(other), strict=True)
    return all(a == b if isinstance(a, str | bool) else a == pytest.approx(b, rel=1e-11) for a, b in pairs)


@pytest.mark.parametrize("write", [rinex2, rinex3])
def test_every_figure_is_read(write) -> None:
    """Both versions give back all elements of each satellite, and the leap seconds of the head."""
    sets = constellation(5)
    orbits = read_rinex_nav(write(sets), file="brdc")
    assert [same(*pair) for pair in zip(orbits.sets, sets, strict=True)] == [True] * 5
    assert (orbits.leap_s, orbits.skipped_count, orbits.ids[0]) == (18, 0, "G01")


def test_other_systems_are_counted() -> None:
    """Of a mixed file GPS is read; Galileo (seven lines a set) and GLONASS (three) are counted, not taken for torn."""
    lines = rinex3(
        constellation(3), others=[*other_set("E", lines=7), *other_set("R", lines=3), *other_set("E", lines=7)]
    )
    orbits = read_rinex_nav(lines, file="brdc")
    assert (len(orbits.sets), orbits.skipped_count) == (3, 0)
    assert orbits.others == {"Galileo": 2, "GLONASS": 1}


def test_other_systems_alone_are_refused() -> None:
    """A file without one GPS satellite is refused, naming what it holds."""
    with pytest.raises(UnreadableError, match="this one holds Galileo alone"):
        read_rinex_nav(rinex3([], others=other_set("E", lines=7)), file="brdc")


@pytest.mark.parametrize("write", [rinex2, rinex3])
def test_a_torn_line_costs_its_own_set_alone(write) -> None:
    """Half a line in the second of three sets: the others are read, the fault is shown with the line of its set."""
    lines = write(constellation(3))
    first = next(k for k, line in enumerate(lines) if "END OF HEADER" in line) + 1
    lines[first + 8 + 4] = lines[first + 8 + 4][:41]
    orbits = read_rinex_nav(lines, file="brdc")
    assert orbits.ids == ("G01", "G03")
    assert orbits.skipped_count == 1
    assert orbits.skipped[0].place.line == first + 8 + 1


def test_a_lost_line_costs_its_own_set_alone() -> None:
    """A line that is missing altogether, or the line with the satellite's name, spoils no neighbour."""
    for gone in (8 + 3, 8):
        lines = rinex2(constellation(3))
        del lines[lines.index(next(line for line in lines if "END OF" in line)) + 1 + gone]
        assert read_rinex_nav(lines, file="brdc").ids == ("G01", "G03")


def test_a_spliced_figure_is_no_orbit() -> None:
    """A figure that slid into the place of the root of the half axis is noticed: 0.005 is no orbit of GPS."""
    lines = rinex2([elements(1), dataclasses.replace(elements(2), sqrt_a=0.005)])
    orbits = read_rinex_nav(lines, file="brdc")
    assert orbits.ids == ("G01",)
    assert "root of the half axis is 0.005" in orbits.skipped[0].expected


def test_the_week_does_not_matter() -> None:
    """A writer that counts weeks modulo 1024 is read alike: the date of the clock tells the week."""
    lines = [line.replace("0.215500000000D+04", "0.107000000000D+03") for line in rinex2([elements(7)])]
    assert "0.107000000000D+03" in "".join(lines)
    assert read_rinex_nav(lines, file="brdc").sets[0].toe_s == TOE_S


def test_a_sick_satellite_is_known_as_such() -> None:
    """A health other than 0 is kept."""
    assert not read_rinex_nav(rinex2([elements(3, healthy=False)]), file="brdc").sets[0].healthy


@pytest.mark.parametrize(
    ("first", "says"),
    [
        ("     2.11           OBSERVATION DATA    G (GPS)", "observation file"),
        ("     4.00           N                   M", "versions from 4 on"),
        ("     2              GLONASS NAV DATA", "another kind"),
    ],
)
def test_other_rinex_files_are_refused(first: str, says: str) -> None:
    """What is RINEX but no GPS navigation of version 2 or 3 is refused by what it is."""
    lines = [f"{first:<60}RINEX VERSION / TYPE", f"{'':60}END OF HEADER"]
    assert is_rinex(lines)
    with pytest.raises(UnreadableError, match=says):
        read_rinex_nav(lines, file="x.rnx")


def test_rubbish_without_end_is_not_kept() -> None:
    """A million lines without a satellite's name are passed over as one torn set; the sets around them are read."""
    lines = rinex2(constellation(2))
    rubbish = ("rubbish" for _ in range(1_000_000))
    orbits = read_rinex_nav(chain(lines, rubbish, rinex2([elements(3)])[4:]), file="brdc")
    assert orbits.ids == ("G01", "G02", "G03")
    assert orbits.skipped_count == 1


def test_a_file_without_its_head_or_body_is_refused() -> None:
    """A head that never ends, and a head alone, are refused."""
    with pytest.raises(UnreadableError, match="END OF HEADER"):
        read_rinex_nav(rinex2([elements()])[:2], file="x.rnx")
    with pytest.raises(UnreadableError, match="at least one satellite"):
        read_rinex_nav(rinex2([]), file="x.rnx")
