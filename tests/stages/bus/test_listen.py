"""A whole bus log, and what it comes to."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.bus_frames import key_cycle, long_message, sent, speed_frame, volts_frame

from backprobe.errors import UnreadableError
from backprobe.evidence.frame import Frame
from backprobe.formats.bus_faults import BusFaults
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.listen import listen

BUSY = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])  # other work may hold the machine

VIN = "1M8GDM9AXKP042788"


def heard(frames: list[Frame]) -> Heard:
    """What frames come to."""
    return listen(frames, faults=BusFaults("a.log"), form="candump").heard


def test_a_key_cycle_is_seen_from_inside() -> None:
    """On at 5.0, cranked at 9.0 for 0.8 s, off at 30.0; the engine stands a second later."""
    found = heard(key_cycle())
    assert found.key.on_s == 5.0
    [crank] = found.key.cranks
    assert crank.start_s == 9.0
    assert crank.end_s == pytest.approx(9.86, abs=0.03)
    assert crank.started is True
    assert found.key.off is not None
    assert found.key.off.silent_s == pytest.approx(29.9, abs=0.11)
    assert found.key.off_s == pytest.approx(31.0, abs=0.05)
    assert found.rpm_max == 750.0


def test_the_lowest_reported_voltage_is_the_crank_s() -> None:
    """One report a second, one of them in the crank: 10.2 V."""
    found = heard(key_cycle())
    assert found.volts is not None
    assert (found.volts.lowest_V, found.volts.lowest_s, found.volts.first_V) == (10.2, 9.0, 12.4)
    assert found.volts.step_s == 1.0
    assert found.key.cranks[0].lowest_V == 10.2


def test_a_log_that_begins_with_the_key_on_says_so() -> None:
    """No turn is made up: the key was on already."""
    found = heard([frame for frame in key_cycle(asleep=False) if frame.time_s > 6.0])
    assert (found.key.on_at_start, found.key.on_s) == (True, None)
    assert found.key.cranks[0].start_s == pytest.approx(3.0, abs=0.05)  # it begins at 6.0 s of the whole


def test_a_log_that_ends_with_the_key_on_shows_no_off() -> None:
    """The engine runs to the last frame."""
    found = heard([frame for frame in key_cycle() if frame.time_s < 25.0])
    assert found.key.off_s is None


def test_a_stalled_engine_is_no_key_off() -> None:
    """It stands, and everybody goes on talking."""
    frames = [frame for frame in key_cycle(off_s=60.0, end_s=40.0) if frame.can_id >> 8 & 0xFFFF != 61444]
    frames += [speed_frame(5.3 + i / 50, 750.0 if 5 < i / 50 < 15 else 0.0) for i in range(1700)]
    found = heard(sorted(frames, key=lambda frame: frame.time_s))
    assert found.key.stops_s != ()
    assert found.key.off_s is None


def test_a_key_turned_on_and_off_without_a_start() -> None:
    """Half of those that talk fall silent together: off, though no engine stopped."""
    found = heard(key_cycle(crank_s=99.0))
    assert found.key.cranks == ()
    assert found.key.off_s == pytest.approx(29.9, abs=0.11)


def test_two_turns_of_the_key() -> None:
    """On, off, asleep, on again: two turns to on, and the last off is the log's."""
    second = [frame._replace(time_s=frame.time_s + 50) for frame in key_cycle()]
    first = [frame for frame in key_cycle(end_s=50.0) if frame.time_s < 40.0 or frame.can_id & 0xFF == 49]
    found = heard([*first, *second])
    assert found.key.ons_s == pytest.approx((5.0, 55.0), abs=0.05)
    assert len(found.key.offs) == 2
    assert found.key.off_s == pytest.approx(81.0, abs=0.1)
    assert [crank.started for crank in found.key.cranks] == [True, True]


def test_a_logger_s_pause_is_no_turn_of_the_key() -> None:
    """The engine runs before and behind it."""
    frames = [frame for frame in key_cycle() if not 15.0 < frame.time_s < 20.0]
    found = heard(frames)
    assert found.key.ons_s == (5.0,)
    assert len(found.key.offs) == 1


def test_the_keyswitch_s_own_voltage_goes_before_what_is_inferred() -> None:
    """SPN 158 goes from 0 to 12.3 V at 7.0 s and back at 28.0 s."""
    frames = key_cycle() + [
        volts_frame(i / 10, None, key_V=12.3 if 70 <= i < 280 else 0.0, source=7) for i in range(400)
    ]
    found = heard(sorted(frames, key=lambda frame: frame.time_s))
    assert (found.key.on_s, found.key.off_s) == (7.0, 28.0)
    assert found.volts is not None
    assert found.volts.lowest_V == 10.2  # 0 V behind the key's switch is no supply


def test_the_vin_and_who_says_it() -> None:
    """Put together from its packets; what is cut by the log's beginning is not counted as lost."""
    vin = long_message(f"{VIN}*".encode(), 65260, start_s=12.0)
    cut = long_message(f"{VIN}*".encode(), 65260, source=3)[2:]
    found = heard([*cut, *sorted(key_cycle() + vin, key=lambda frame: frame.time_s)])
    assert [(each.text, each.source, each.times) for each in found.vins] == [(VIN, 0, 1)]
    assert (found.lost_messages, dict(found.skipped)) == (0, {"cut_by_the_log": 1})


def test_a_lost_packet_is_counted() -> None:
    """One packet of a long message never came."""
    vin = long_message(f"{VIN}*".encode(), 65260, start_s=12.0)
    found = heard(sorted(key_cycle() + vin[:2] + vin[3:], key=lambda frame: frame.time_s))
    assert (found.vins, found.lost_messages, found.skipped["lost_packets"]) == ((), 1, 1)


def test_distance_speed_and_clock() -> None:
    """SPN 917 raw 2000 × 5 m = 10 km goes before SPN 245; 20 × 256 / 256 km/h; the clock as it was sent."""
    fine = sent(1.0, 65217, (2000).to_bytes(4, "little") + b"\xff" * 4)
    coarse = sent(1.0, 65248, b"\xff" * 4 + (88).to_bytes(4, "little"))
    fast = sent(2.0, 65265, b"\xff" + (20 * 256).to_bytes(2, "little") + b"\xff" * 5)
    clock = sent(3.0, 65254, bytes((0, 0, 12, 3, 60, 39, 125, 125)))
    found = heard([sent(0.0, 61444, b"\xff" * 8), fine, coarse, fast, clock])
    assert (found.distance, found.speed_max_kmh) == ((917, 10.0), 20.0)
    assert found.clock == (1710504000.0, 3.0)  # 15 March 2024, 12:00:00
    assert found.rpm_max is None  # 'not available' is no speed


def test_short_identifiers_are_counted_and_not_guessed() -> None:
    """A car's frames say nothing here, whatever their bytes."""
    found = heard([Frame(i / 100, 0x0C4, bytes(8), extended=False) for i in range(50)])
    assert (found.frames, found.health.eleven_bit, found.skipped) == (50, 50, {"eleven_bit": 50})
    assert found.volts is None


def test_error_frames_are_counted_apart() -> None:
    """Those before the first good frame, and those between good ones; times count from the first good frame."""
    error = Frame(0.0, 0, b"", error=True)
    found = heard([error, error, *(frame._replace(time_s=frame.time_s + 7) for frame in key_cycle()), error])
    assert (found.health.errors_before, found.health.errors_between) == (2, 1)
    assert found.key.on_s == 5.0


def test_a_clock_that_is_set_back_is_counted_and_time_goes_on() -> None:
    """At 20 s the logger's clock falls back by an hour: the cycle stays what it is."""
    frames = [frame._replace(time_s=frame.time_s - 3600 * (frame.time_s > 20)) for frame in key_cycle()]
    found = heard(frames)
    assert found.skipped == {"clock_set_back": 1}
    assert "3600" not in found.places[0] or "3599" in found.places[0]
    assert found.key.off_s == pytest.approx(31.0, abs=0.1)


def test_a_stamp_that_leaps_ahead_does_not_move_the_rest() -> None:
    """A digit fell over in one line: the frame is left out and counted, the cycle stays what it is."""
    frames = key_cycle()
    frames[1000] = frames[1000]._replace(time_s=frames[1000].time_s + 8e9)
    found = heard(frames)
    assert found.skipped == {"clock_leapt": 1}
    assert "frame 1,001 of the log" in found.places[0]
    assert found.key.off_s == pytest.approx(31.0, abs=0.1)


def test_stamps_from_1970_are_known_as_such() -> None:
    """A log that knows the time keeps it for the key script."""
    found = heard([frame._replace(time_s=frame.time_s + 1.7e9) for frame in key_cycle()])
    assert found.stamped_s == 1.7e9
    assert found.key.on_s == pytest.approx(5.0, abs=1e-6)
    assert heard(key_cycle()).stamped_s is None


def test_who_falls_silent_while_the_key_is_on() -> None:
    """Computer 11 is silent from 15 to 20 s, and comes back."""
    frames = [f for f in key_cycle() if not (f.can_id & 0xFF == 11 and 15.0 < f.time_s < 20.0)]
    [silent] = heard(frames).health.silent
    assert silent.address == 11
    assert silent.silent_s == pytest.approx(15.0, abs=0.11)
    assert silent.back_s == pytest.approx(20.0, abs=0.11)


def test_a_service_tool_may_come_and_go() -> None:
    """Address 249 talks for ten seconds and is unplugged: no computer of the vehicle fell silent."""
    tool = [sent(8 + i / 10, 61440, bytes(8), source=249) for i in range(100)]
    assert heard(sorted(key_cycle() + tool, key=lambda frame: frame.time_s)).health.silent == ()


def test_nobody_is_said_to_be_silent_where_the_key_went_off() -> None:
    """That is what the key does."""
    assert heard(key_cycle()).health.silent == ()


def test_a_bus_too_full_for_250_kbit_runs_at_500() -> None:
    """2,500 frames of 131 bits in a second are more than 250,000 bits."""
    found = heard([sent(i / 2500, 61441, bytes(8)) for i in range(5000)])
    assert found.health.bit_rate_kbit == 500
    assert found.health.busiest is not None
    assert found.health.busiest[0] == pytest.approx(2500 * 131 / 500_000, rel=0.01)


def test_a_log_without_a_frame_is_refused() -> None:
    """Nothing, or nothing but errors, is no log."""
    with pytest.raises(UnreadableError, match="at least one frame"):
        heard([])
    with pytest.raises(UnreadableError, match="2 error frames and nothing else"):
        heard([Frame(0.0, 0, b"", error=True)] * 2)


@BUSY
@given(
    st.lists(
        st.tuples(
            st.floats(0, 2e9),
            st.sampled_from([0x0CF00400, 0x18FEF700, 0x18FEEC00, 0x1CECFF00, 0x1CEBFF00, 0x18FEE600, 0x123]),
            st.binary(max_size=8),
            st.booleans(),
        ),
        max_size=60,
    )
)
def test_any_frames_are_borne(content: list[tuple[float, int, bytes, bool]]) -> None:
    """No frames whatever end in anything but an answer or a refusal; all are counted."""
    frames = [Frame(time_s, can_id, data, error=error) for time_s, can_id, data, error in content]
    good = sum(not frame.error for frame in frames)
    if good:
        found = heard(frames)
        assert found.frames + found.skipped.get("clock_leapt", 0) == good
