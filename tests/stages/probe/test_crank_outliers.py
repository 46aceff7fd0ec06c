"""A crank reading that stands out is measured again before it is believed."""

import pytest
from tests.samples.probe_tables import AT_24_V, SETUP, readings_of, rows, table_of

from backprobe.evidence.keys import Key
from backprobe.stages.probe.belief import Belief, believe
from backprobe.stages.probe.crank_outliers import AGREE_V, APART_V, set_outliers_aside
from backprobe.stages.probe.setup import Setup

IGNITION = "off 0.02 accessory 0.03 on 12.24 running 14.07 crank/min "


def beliefs_of(*shown: str, setup: Setup = SETUP) -> list[Belief]:
    """The beliefs about wires that showed this, outliers set aside."""
    alone = [
        believe(f"w{i}", readings_of(each, system_V=setup.system_V), others=(), setup=setup)
        for i, each in enumerate(shown)
    ]
    return set_outliers_aside(alone, setup)


def doubted(*shown: str, setup: Setup = SETUP) -> list[str]:
    """The figures that are doubtful on the first wire."""
    return [reading.typed for reading in beliefs_of(*shown, setup=setup)[0].doubtful]


def test_a_min_far_above_every_other_is_set_aside():
    """11.9 V on one wire and 10.3 V on the other: more than 1 V apart, as '11.9' typed for '10.9' would be."""
    assert doubted(IGNITION + "11.90", "on 12.4 crank/min 10.30") == ["11.90"]
    assert beliefs_of(IGNITION + "11.90", "on 12.4 crank/min 10.30")[0].at(Key.CRANK) == ()


def test_wires_that_differ_by_their_drops_are_left_alone():
    """10.3 + 1.0 V is the highest that needs no second look; the lower wire is never set aside."""
    assert doubted(IGNITION + f"{10.30 + APART_V:.2f}", "on 12.4 crank/min 10.30") == []
    assert doubted("on 12.4 crank/min 9.10", IGNITION + "11.90") == []


def test_a_second_crank_close_by_confirms():
    """11.90 and 11.55 V agree within 0.5 V; 11.90 and 10.40 V do not: the higher one is set aside, and answered."""
    confirming = f"{IGNITION}11.90 crank/min {11.90 - AGREE_V + 0.15:.2f}"
    assert doubted(confirming, "on 12.4 crank/min 10.30") == []
    first = beliefs_of(IGNITION + "11.90 crank/min 10.40", "on 12.4 crank/min 10.30")[0]
    assert [reading.typed for reading in first.doubtful] == ["11.90"]
    assert [reading.typed for reading in first.at(Key.CRANK)] == ["10.40"]


@pytest.mark.parametrize(
    "other", ["on 12.4", "on 0.02 crank/min 0.03", "on 12.4 crank 10.30", "on 12.4 crank/logged 10.1"]
)
def test_only_like_is_compared_with_like(other: str):
    """No other crank, a dead wire, a display and another way of holding say nothing about a MIN."""
    assert doubted(IGNITION + "11.90", other) == []


def test_at_24_v_wires_may_differ_by_twice_as_much():
    """23.0 V beside 21.2 V is 1.8 V apart: within 2 V."""
    shown = "off 0.02 accessory 0.03 on 24.6 running 28.1 crank/min "
    assert doubted(shown + "23.00", "on 24.8 crank/min 21.20", setup=AT_24_V) == []
    assert doubted(shown + "23.30", "on 24.8 crank/min 21.20", setup=AT_24_V) == ["23.30"]


def test_a_doubtful_crank_does_not_accuse_the_others():
    """A MIN that hardly fell is doubtful by itself; the good one beside it stands."""
    good = believe("g", table_of(rows("g", "on 12.4 crank/min 10.9")).readings, others=(), setup=SETUP)
    slipped = believe("s", table_of(rows("s", "on 12.4 crank/min 12.38")).readings, others=(), setup=SETUP)
    after = set_outliers_aside([good, slipped], SETUP)
    assert after[0].doubtful == ()
    assert len(after[1].doubtful) == 1
