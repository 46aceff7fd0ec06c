"""The figures of a readings table, judged for reason."""

from __future__ import annotations

import pytest

from backprobe.evidence.keys import Key
from backprobe.formats.readings_figures import RefusedError, Volts, read_after_min, read_load_A, read_volts


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("12.30", Volts(12.3, 0.01, "12.30")),
        ("12", Volts(12.0, 1.0, "12")),
        ("12,30", Volts(12.3, 0.01, "12,30")),
        ("12.3 V", Volts(12.3, 0.1, "12.3")),
        ("12.3VDC", Volts(12.3, 0.1, "12.3")),
        ("350mV", Volts(0.35, 0.001, "350mV")),  # 350 x 0.001 V, one count 1 mV
        ("12.3e0", Volts(12.3, 0.1, "12.3e0")),
        ("-0.5", Volts(-0.5, 0.1, "-0.5")),
        ("18", Volts(18.0, 1.0, "18")),
    ],
)
def test_volts_kept(text, expected):
    """Figures in reason are kept with count and as typed."""
    assert read_volts(text, system_V=12) == expected


@pytest.mark.parametrize(
    ("text", "system_V", "says"),
    [
        ("120", 12, "-0.5 to 18 V in a 12 V system"),
        ("24.8", 12, "use --system 24"),
        ("18.1", 12, "use --system 24"),
        ("36.1", 24, "-0.5 to 36 V in a 24 V system"),
        ("12300", 12, "millivolts"),
        ("-12.4", 12, "the wrong way round"),
        ("-0.51", 12, "the wrong way round"),
        ("-28", 24, "the wrong way round"),
        ("nan", 12, "a figure in volts"),
        ("inf", 12, "a figure in volts"),
        ("", 12, "a figure in volts"),
        ("ok", 12, "a figure in volts"),
        ("12.3 A", 12, "direct voltage in V or mV, not 'A'"),
        ("230 VAC", 12, "direct voltage"),
        ("9e99", 12, "-0.5 to 18 V"),
    ],
)
def test_volts_refused(text, system_V, says):
    """What no wire of such a vehicle shows is refused, with the likely slip named."""
    with pytest.raises(RefusedError, match=says):
        read_volts(text, system_V=system_V)


def test_24_V_system_takes_what_12_V_refuses():
    """28.4 V is an everyday value of a 24 V vehicle; 36 V = 1.5 x 24 V is its end."""
    assert read_volts("28.4", system_V=24).value_V == 28.4
    assert read_volts("36", system_V=24).value_V == 36.0


@pytest.mark.parametrize(
    ("text", "key", "minutes"),
    [
        ("", Key.AFTER, 10.0),
        ("30", Key.AFTER, 30.0),
        ("2,5 min", Key.AFTER, 2.5),
        ("", Key.ON, None),
        ("0", Key.CRANK, None),
        ("1", Key.OFF, None),
    ],
)
def test_minutes(text, key, minutes):
    """`after` means 10 minutes unless the table says otherwise; other positions have none."""
    assert read_after_min(text, key) == minutes


@pytest.mark.parametrize(
    ("text", "key"), [("-1", Key.AFTER), ("soon", Key.AFTER), ("nan", Key.AFTER), ("30", Key.ON), ("5", Key.OFF)]
)
def test_minutes_refused(text, key):
    """Negative minutes, words, and minutes at a position that has none are refused."""
    with pytest.raises(RefusedError):
        read_after_min(text, key)


@pytest.mark.parametrize(("text", "load_A"), [("", None), ("1.5", 1.5), ("1,5 A", 1.5), ("-0", 0.0)])
def test_load(text, load_A):
    """The load in amperes, with or without its unit."""
    assert read_load_A(text) == load_A


@pytest.mark.parametrize("text", ["-1", "1.5 V", "nan", "21", "lamp"])
def test_load_refused(text):
    """A negative load, volts, words and more than a meter's leads carry are refused."""
    with pytest.raises(RefusedError):
        read_load_A(text)
