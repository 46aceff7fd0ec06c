"""What two readings, without a lamp and under it, say of the way up to the tap."""

from __future__ import annotations

import pytest

from backprobe.evidence.keys import Key
from backprobe.evidence.reading import Reading
from backprobe.limits.meters import METERS
from backprobe.stages.join.tap_bound import OWN_SAG, TapBound, tap_bound

BASIC = METERS["basic"]  # ±(0.5 % + 2 counts)


def pair(bare: str, loaded: str, *, key: Key = Key.OFF) -> tuple[Reading, Reading]:
    """Red as it was read without a load and under 1.5 A."""
    without = Reading(wire="Red", key=key, volts=float(bare), typed=bare, count_V=0.01)
    under = Reading(wire="Red", key=key, volts=float(loaded), typed=loaded, count_V=0.01, load_A=1.5)
    return without, under


def test_the_bound_is_the_fall_by_the_lamp():
    """70 mV ± (2 × (10 + 10) + 0.35) mV: 70 / 1.5 = 46.7 mΩ, 110.35 / (1.5 × 0.95) = 77.4 mΩ at most."""
    bound = tap_bound([pair("12.62", "12.55")], meter=BASIC)
    assert bound is not None
    assert bound.ohm.likely == pytest.approx(0.070 / 1.5)
    assert bound.ohm.high == pytest.approx(0.11035 / 1.425)
    assert bound.ohm.low == 0.005  # 29.65 / 1.575 = 18.8 mΩ, of which the battery's own part is not known
    assert bound.because == (
        "from the readings of Red, key off: 12.62 V, and 12.55 V under 1.5 A, up to the tap 46.7 mΩ, 77.4 mΩ at most; "
        f"{OWN_SAG}"
    )


def test_the_pair_that_fell_most_counts_while_the_engine_rests():
    """110 mV at on before 70 mV at off; 300 mV with the engine running are an alternator's matter as well."""
    pairs = [pair("12.62", "12.55"), pair("12.40", "12.29", key=Key.ON), pair("14.10", "13.80", key=Key.RUNNING)]
    bound = tap_bound(pairs, meter=BASIC)
    assert bound is not None
    assert bound.ohm.likely == pytest.approx(0.110 / 1.5)
    assert tap_bound(pairs[2:], meter=BASIC) is None


@pytest.mark.parametrize(("loaded", "most_ohm"), [("12.62", 0.04 / 1.425), ("12.64", (0.04 + 0.0001 - 0.02) / 1.425)])
def test_a_fall_within_the_counts_is_none_or_less(loaded: str, most_ohm: float):
    """No fall at all, and a rise of 20 mV that 40.1 mV of counts can make: the bound is what the counts leave."""
    bound: TapBound | None = tap_bound([pair("12.62", loaded)], meter=BASIC)
    assert bound is not None
    assert (bound.ohm.low, bound.ohm.likely) == (0.0, 0.0)
    assert bound.ohm.high == pytest.approx(most_ohm)


def test_what_rose_beyond_the_counts_is_no_pair():
    """A rise of 60 mV by a load of 1.5 A: one of the two is wrong, or the battery was charged between."""
    assert tap_bound([pair("12.62", "12.68")], meter=BASIC) is None
    assert tap_bound([], meter=BASIC) is None
