"""What was written down of battery and rest."""

from backprobe.evidence.parked_sheet import BatterySheet, ParkedSheet, Typed


def test_nothing_is_made_up():
    """What was not written is None; the kind is unknown."""
    assert ParkedSheet().battery == BatterySheet(kind="unknown")
    assert (ParkedSheet().wanted_days, BatterySheet().capacity_Ah, BatterySheet().rest_V) == (None, None, ())


def test_a_figure_keeps_its_last_digit():
    """12.60 was read to 0.01."""
    assert Typed(12.6, 0.01).count == 0.01
