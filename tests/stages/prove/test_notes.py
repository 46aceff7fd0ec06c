"""What is said beside a proof."""

import pytest
from tests.samples.prove_cases import HEADER, healthy, proven, row


def says(answer, *words):
    """Whether one note holds all these words."""
    return any(all(word in note for word in words) for note in answer.notes)


def zoneless(lines):
    """The lines without their zone."""
    return [line.replace("Z,", ",") for line in lines]


def test_times_without_zone_are_said_to_be_taken_as_utc():
    """Of the reports; with a zone nothing is said."""
    assert says(proven(zoneless(healthy())), "UTC", "reports")
    assert not says(proven(healthy()), "UTC")


def test_absence_proves_nothing_while_off_is_slower_than_the_crank():
    """The crank lasts 2 s: an off-delay of 20 s hides it, one of 0.4 s with an uncertainty of 0.6 s does not."""
    assert says(proven(healthy()), "not_live_in_crank", "proves nothing", "2.0 s")
    quick = proven(healthy(1.0, 0.4, late=None))
    assert says(quick, "would show")
    assert not says(quick, "proves nothing")
    assert says(proven([row(-60, "boot"), row(302, "ignition_on"), row(830)]), "off-delay is not known")


def test_the_sum_of_delay_and_clock():
    """Said where there are no arrivals."""
    assert says(proven(healthy(late=None)), "no received_at", "sum")
    assert not says(proven(healthy()), "sum")


def test_the_level_of_the_supply():
    """Said wherever it is shown."""
    assert says(proven(healthy()), "diode and converter", "joint and lead")
    assert not says(proven([each.replace(",12.4,", ",,") for each in healthy()]), "diode")


def test_other_units_of_the_file():
    """Named, up to five."""
    assert says(proven([*healthy(), *(row(0, unit=f"L{n}") for n in range(2, 9))]), "8 units", "L2, L3, L4, L5, L6, …")


def test_for_how_long_it_is_proven():
    """Minutes, hours, or a night."""
    assert says(proven(healthy()), "'Constant' is proven for 20 min", "parked night")
    assert says(proven([*healthy(), row(820 + 9 * 3600, ignition=0)]), "over a parked night (9.0 h)")


@pytest.mark.parametrize(
    ("rows", "setup", "words"),
    [
        (healthy(), {"place": None}, ("--at",)),
        ([each.replace("-33.1,151.2,4", "0,0,") for each in healthy()], {}, ("has a position",)),
        (healthy()[1:], {}, ("No power-up shows",)),
        ([row(-90_000), *healthy()[1:]], {}, ("silence of over 6 hours",)),
        ([row(t) for t in range(-9000, -3000, 60)], {}, ("No report of the unit is from the time of the script",)),
        ([*healthy(), "L1,soon,,,,,,,,,,"], {}, ("1 rows of reports could not be read", "line")),
        (healthy(unit="L9"), {"unit_id": None}, ("only one, L9",)),
    ],
)
def test_what_was_assumed_or_left_out(rows, setup, words):
    """Nothing is done silently."""
    assert says(proven(rows, **setup), *words)


def test_a_table_without_ignition_or_event():
    """Nothing can be said of the key, and that is said."""
    assert HEADER.endswith("ignition,event")
    assert not says(proven(healthy()), "neither an ignition nor an event column")
