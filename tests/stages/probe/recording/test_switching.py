"""Wires go live and dead; deep cranks, noise and bad contacts are no switching."""

from itertools import pairwise

import pytest
from tests.samples.waveforms import recording_of

from backprobe.stages.probe.recording.switching import Spell, Switching, is_restless, switchings, unsettled
from backprobe.stages.probe.recording.trace import Sight


def switched(values, *, rate_Hz=100.0, system_V=12):
    """The switching of one channel."""
    recording = recording_of([row / rate_Hz for row in range(len(values))], {"wire": values})
    sight = Sight(recording)
    places = unsettled(sight, recording.voltages, system_V=system_V)
    return switchings(sight, places, system_V=system_V)["wire"]


def alternating(*moments_s):
    """Spells between the moments: dead first, then live, and so on."""
    ends = pairwise(moments_s)
    return Switching(tuple(Spell(a, b, live=bool(i % 2)) for i, (a, b) in enumerate(ends)))


def test_key_on_and_off():
    """Dead for 1 s, live for 2 s, dead for 1 s: edges half way between the samples."""
    found = switched([0.0] * 100 + [12.4] * 200 + [0.1] * 100)
    assert [spell.live for spell in found.spells] == [False, True, False]
    assert [spell.from_s for spell in found.spells] == pytest.approx([0.0, 0.995, 2.995])
    assert found.spells[-1].to_s == pytest.approx(3.99)
    assert found.live_at(2.0) is True
    assert found.live_at(3.5) is False
    assert found.live_at(9.0) is None
    assert round(found.live_s, 2) == 2.0


@pytest.mark.parametrize("system_V", [12, 24])
def test_a_deep_crank_switches_nothing(system_V):
    """A quarter of the system voltage (6.0 of 24 V, 3.0 of 12 V) is neither live nor dead."""
    found = switched([system_V * 1.0] * 100 + [system_V / 4] * 50 + [system_V * 1.0] * 100, system_V=system_V)
    assert [spell.live for spell in found.spells] == [True]


def test_a_5_V_signal_is_never_live():
    """A sensor line that swings between 0 and 5 V does not count as switching."""
    found = switched(([0.0] * 50 + [5.0] * 50) * 3)
    assert [spell.live for spell in found.spells] == [False]


def test_a_bad_contact_is_passed_over():
    """30 ms at zero on a fast recording are no switching, 300 ms are."""
    assert len(switched([12.0] * 100 + [0.0] * 3 + [12.0] * 100).spells) == 1
    assert len(switched([12.0] * 100 + [0.0] * 30 + [12.0] * 100).spells) == 3


def test_a_pulsed_wire_is_restless():
    """A lamp dimmed at 2 Hz for a minute has too many edges to be a switched wire."""
    found = switched(([12.0] * 25 + [0.0] * 25) * 120)
    assert found.restless
    assert found.spells == () or len(found.spells) > 60


def test_a_pulsed_wire_in_a_long_recording_is_restless():
    """The envelope alone tells: each bucket holds both states."""
    values = ([12.0] * 25 + [0.0] * 25) * 2000
    recording = recording_of([row / 1000 for row in range(len(values))], {"wire": values})
    places = unsettled(Sight(recording), recording.voltages, system_V=12)
    assert is_restless(places["wire"])


def test_edges_in_a_long_recording_are_found_to_the_row():
    """In 100 s at 1000 rows/s the wire comes alive at 60 s: the same as in a short recording."""
    values = [0.0] * 60_000 + [12.4] * 40_000
    recording = recording_of([row / 1000 for row in range(len(values))], {"wire": values})
    sight = Sight(recording)
    places = unsettled(sight, recording.voltages, system_V=12)
    found = switchings(sight, places, system_V=12)["wire"]
    assert len(found.spells) == 2
    assert found.spells[1].from_s == pytest.approx(60.0, abs=0.002)


def test_blinks_have_the_other_state_on_both_sides():
    """The first and the last spell were cut by the recording's ends and are no blinks."""
    found = alternating(0, 1, 2, 2.8, 9)
    assert found.blinks(live=False, least_s=0.1, most_s=30) == (Spell(2, 2.8, live=False),)
    assert found.blinks(live=True, least_s=0.1, most_s=30) == (Spell(1, 2, live=True),)
    assert found.blinks(live=False, least_s=1.0, most_s=30) == ()


def test_a_start_wire_rests_dead():
    """Dead but for the crank; an accessory that stays live afterwards does not rest dead."""
    assert alternating(0, 5, 6, 15).rests_dead
    assert not alternating(0, 5, 6, 7, 15).rests_dead
