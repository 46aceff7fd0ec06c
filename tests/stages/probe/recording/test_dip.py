"""Whether a channel holds through the crank depends on its lowest value and on what the sampling can have missed."""

import pytest
from tests.samples.waveforms import recording_of

from backprobe.findings import Verdict
from backprobe.limits.lookup import meter
from backprobe.stages.probe.recording.cranks import Crank
from backprobe.stages.probe.recording.dip import deeper_V, dip
from backprobe.stages.probe.recording.in_crank import in_crank
from backprobe.stages.probe.recording.scene import scene_of
from backprobe.stages.probe.setup import Setup


def judged(lowest_V, *, rate_Hz=1000.0, rest_V=12.5, system_V=12, sure=1.0, hidden_V=deeper_V, time_known=True):
    """The finding on a wire that stands at `lowest_V` from 10 to 11 s."""
    times = [i / rate_Hz for i in range(int(20 * rate_Hz))]
    values = [lowest_V if 10.0 <= t < 11.0 else rest_V for t in times]
    recording = recording_of(times, {"wire": values}, time_known=time_known)
    crank = Crank(start_s=10.0 - 0.4 / rate_Hz, end_s=11.0, started=True, sure=sure, why=())
    found = in_crank(scene_of(recording, system_V=system_V), recording.channels[0], crank=crank)
    setup = Setup(system_V=system_V, meter=meter("service"))
    return dip(recording.channels[0], (found,), setup=setup, hidden_V=hidden_V)


@pytest.mark.parametrize(
    ("lowest_V", "system_V", "verdict"),
    [
        (9.50, 12, Verdict.HOLDS),
        (9.04, 12, Verdict.THIN),  # ±(0.5 % + 2 counts of 1 mV) = ±0.047 V: 8.993 V may be true
        (8.99, 12, Verdict.FAILS),
        (19.0, 24, Verdict.HOLDS),
        (17.9, 24, Verdict.FAILS),
    ],
)
def test_fast_enough(lowest_V, system_V, verdict):
    """Only the meter's accuracy is uncertain: 9 V at 12 V, 18 V at 24 V, common practice."""
    found = judged(lowest_V, system_V=system_V, rest_V=12.5 * system_V / 12)
    assert found.verdict is verdict
    assert found.value == lowest_V
    assert found.low == pytest.approx(lowest_V - (0.005 * lowest_V + 0.002))
    assert found.limit.value == 9.0 * system_V / 12
    assert "common practice" in found.limit.warrant


@pytest.mark.parametrize(("lowest_V", "verdict"), [(11.5, Verdict.HOLDS), (10.0, Verdict.THIN), (8.9, Verdict.FAILS)])
def test_in_between_the_trough_may_be_deeper(lowest_V, verdict):
    """At 20 rows/s 0.6 times the shown drop may be hidden: 12.5 → 11.5 allows 10.9 V, 12.5 → 10.0 allows 8.5 V."""
    found = judged(lowest_V, rate_Hz=20.0)
    assert found.verdict is verdict
    if verdict is not Verdict.FAILS:
        assert found.low == pytest.approx(lowest_V - 0.6 * (12.5 - lowest_V) - 0.005 * lowest_V - 0.002)
        assert "our own model" in found.because


def test_a_model_can_be_given():
    """Whoever knows better says how much is hidden; never less than nothing."""
    assert judged(10.0, rate_Hz=20.0, hidden_V=lambda _shown, _rest: 0.1).verdict is Verdict.HOLDS
    assert judged(10.0, rate_Hz=20.0, hidden_V=lambda _shown, _rest: 5.0).verdict is Verdict.THIN
    assert judged(10.0, rate_Hz=20.0, hidden_V=lambda _shown, _rest: -5.0).low < 10.0


@pytest.mark.parametrize(("lowest_V", "verdict"), [(10.0, Verdict.THIN), (12.2, Verdict.OPEN), (8.9, Verdict.FAILS)])
def test_slow_sampling_never_proves(lowest_V, verdict):
    """At 2 rows/s: a shown dip inside the limit is thin, no dip at all is open, outside disproves."""
    found = judged(lowest_V, rate_Hz=2.0)
    assert found.verdict is verdict
    if verdict is not Verdict.FAILS:
        assert found.low is None
        assert "sampled too slowly to prove a dip (one value every 0.50 s)" in found.because
        assert found.next == "record the start again, 200 rows a second or faster"


def test_without_a_clock():
    """Fast rows whose time is not known prove nothing."""
    assert judged(10.0, time_known=False).verdict is Verdict.THIN
    assert "its time is not known" in judged(10.0, time_known=False).because


@pytest.mark.parametrize(("sure", "verdict"), [(0.9, Verdict.HOLDS), (0.6, Verdict.THIN), (0.3, Verdict.OPEN)])
def test_an_unsure_crank_proves_less(sure, verdict):
    """What may not have been a crank does not prove that the wire holds in one."""
    assert judged(11.0, sure=sure).verdict is verdict
    assert judged(8.0, sure=sure).verdict is Verdict.FAILS


def test_a_wire_that_was_dead_before():
    """Dead before the crank is no constant supply, whatever it does in it."""
    found = judged(11.0, rest_V=0.02)
    assert found.verdict is Verdict.FAILS
    assert found.because == "dead before the crank (0.02 V): no constant supply"


def test_no_crank():
    """Nothing to judge: open, and what to record."""
    channel = recording_of([0.0, 1.0], {"wire": [12.0, 12.0]}).channels[0]
    found = dip(channel, (), setup=Setup(system_V=12, meter=meter("service")))
    assert (found.verdict, found.value, found.low, found.high) == (Verdict.OPEN, None, None, None)
    assert found.because == "no crank was found in the recording"
    assert found.next.startswith("record a start")


def test_the_worst_of_two_cranks_counts():
    """9.5 V in one attempt holds, 8.5 V in the other fails."""
    times = [i / 1000 for i in range(20_000)]
    values = [9.5 if 5 <= t < 6 else 8.5 if 10 <= t < 11 else 12.5 for t in times]
    recording = recording_of(times, {"wire": values})
    scene = scene_of(recording, system_V=12)
    cranks = [Crank(start_s=s, end_s=s + 1, started=False, sure=1.0, why=()) for s in (5.0, 10.0)]
    found = [in_crank(scene, recording.channels[0], crank=crank) for crank in cranks]
    assert dip(recording.channels[0], found, setup=Setup(system_V=12, meter=meter("service"))).value == 8.5


def test_the_simple_model():
    """Trough to plateau of the profiles: 4.0 / 2.5 (I), 7.5 / 5.5 (II), 9 / 7 (III), 6 / 5.5 (IV); 1.6 is the most."""
    assert deeper_V(10.0, 12.5) == pytest.approx(0.6 * 2.5)
    assert deeper_V(13.0, 12.5) == 0.0
