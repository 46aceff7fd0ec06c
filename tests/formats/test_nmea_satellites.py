"""One satellite has one id, whichever sentence tells of it."""

import pytest

from backprobe.formats.nmea_satellites import is_main_signal, satellite_id


@pytest.mark.parametrize(
    ("talker", "number", "system", "found"),
    [
        ("GP", "01", "", "G01"),
        ("GN", "32", "", "G32"),
        ("GN", "5", "1", "G05"),
        ("GP", "46", "", "S133"),
        ("GP", "133", "", "S133"),
        ("GL", "65", "", "R01"),
        ("GL", "1", "", "R01"),
        ("GN", "88", "", "R24"),
        ("GN", "70", "2", "R06"),
        ("GA", "11", "", "E11"),
        ("GN", "311", "", "E11"),
        ("GN", "11", "3", "E11"),
        ("GB", "19", "", "C19"),
        ("BD", "219", "", "C19"),
        ("GN", "401", "", "C01"),
        ("QZ", "02", "", "J02"),
        ("GQ", "194", "", "J02"),
        ("GN", "193", "", "J01"),
        ("GA", "102", "", "E102"),
        ("XX", "999", "", "X999"),
    ],
)
def test_numbers_of_all_systems(talker: str, number: str, system: str, found: str) -> None:
    """Own counts, the common count, and system numbers come to the same."""
    assert satellite_id(talker, number, system=system) == found


@pytest.mark.parametrize("text", ["", "0", "1000", "-3", "7a", "²"])
def test_what_is_no_number(text: str) -> None:
    """No id is made up."""
    assert satellite_id("GP", text) is None


def test_main_signals() -> None:
    """L1 of GPS is 1, of Galileo 6 and 7; without an id nothing is told apart."""
    assert is_main_signal("G07", "1")
    assert not is_main_signal("G07", "8")
    assert is_main_signal("E07", "7")
    assert not is_main_signal("E07", "1")
    assert is_main_signal("R07", "")
    assert is_main_signal("C07", "0")
