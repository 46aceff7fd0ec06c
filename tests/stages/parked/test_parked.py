"""A parked vehicle from its sheets."""

import pytest
from tests.samples.parked import parked

from backprobe.errors import OptionError
from backprobe.evidence.parked_sheet import Typed
from backprobe.stages.parked.parked import drain_span_mA, parked_answer


def test_a_drain_has_its_meters_bounds():
    """25 mA to 1 mA: ±(0.5 + 3). Read too early, it may be anything less."""
    asleep = drain_span_mA(Typed(25.0, 1.0), asleep=True)
    assert (asleep.low, asleep.high) == pytest.approx((21.5, 28.5))
    assert drain_span_mA(Typed(25.0, 1.0), asleep=False).low == 0.0


@pytest.mark.parametrize("key", ["capacity_Ah", "hours_since_charge", "vehicle_drain_mA", "coldest_C"])
def test_what_is_lacking_is_named_and_nothing_is_reckoned(key):
    """No days without it."""
    answer = parked_answer(parked(**{key: None}))
    assert [key in lack for lack in answer.lacking] == [True]
    assert answer.days is None
    assert answer.changes == ()


def test_the_weaker_of_two_counts():
    """Two in series are as full as the emptier one."""
    two = parked_answer(parked(system_V=24, rest_V=(Typed(12.7, 0.01), Typed(12.3, 0.01))))
    weak = parked_answer(parked(rest_V=(Typed(12.3, 0.01),)))
    assert two.unsure.charge == weak.unsure.charge
    assert two.days == weak.days


def test_volts_of_two_systems_do_not_mix():
    """25.20 V in 24 V is 12.60 V in 12 V; the same battery lasts as long. 25.20 V in 12 V is refused."""
    one, two = parked_answer(parked()), parked_answer(parked(system_V=24, rest_V=(Typed(25.2, 0.01),)))
    assert two.days.likely == pytest.approx(one.days.likely)
    with pytest.raises(OptionError, match="is it a 24 V system"):
        parked_answer(parked(rest_V=(Typed(25.2, 0.01),)))


@pytest.mark.parametrize(
    ("figures", "said"),
    [
        ({"rest_V": (Typed(9.0, 0.01),)}, "9.00 V is no battery at rest"),
        ({"count": 2}, "2 battery of 12 V in series in a 12 V system: count = 1"),
        ({"rest_V": (Typed(12.6, 0.01),) * 2}, "2 rest voltages in a 12 V system"),
    ],
)
def test_what_cannot_be_is_refused(figures, said):
    """In words."""
    with pytest.raises(OptionError, match=said):
        parked_answer(parked(**figures))


@pytest.mark.parametrize(
    ("figures", "question"),
    [
        ({"coldest_C": 45.0}, "coldest_C = 45: are these °F?"),
        ({"coldest_C": 30.0}, "is warmer than the battery is now"),
        ({"vehicle_drain_mA": Typed(0.03, 0.01)}, "was that read in amperes?"),
        ({"vehicle_drain_mA": Typed(0.0, 1.0)}, "was the meter in series"),
        ({"rest_V": (Typed(12.6, 0.1),)}, "can two decimals be read?"),
    ],
)
def test_what_may_be_meant_otherwise_is_asked(figures, question):
    """And judged all the same."""
    answer = parked_answer(parked(**figures))
    assert any(question in asked for asked in answer.questions)
    assert answer.days is not None
