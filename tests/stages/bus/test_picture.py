"""What the picture of a key cycle is made of."""

from __future__ import annotations

import itertools

from tests.samples.bus_frames import key_cycle
from tests.samples.bus_heard import listened

from backprobe.stages.bus.picture import cycle_content, spans


def test_volts_above_and_engine_speed_beneath() -> None:
    """Both over the whole log, the limit and the crank above, the key beneath."""
    content = cycle_content(listened(key_cycle()), system_V=12)
    assert content.volts is not None
    assert content.speed is not None
    assert [line.value for line in content.volts.limits] == [9.0]
    assert [round(each.start_s, 1) for each in content.volts.cranks] == [9.0]
    assert [span.label for span in content.speed.keys] == ["?", "on", "crank", "running", "off"]
    assert min(low for _, low, _ in content.volts.traces[0].points) == 10.2


def test_what_nobody_reports_is_not_drawn() -> None:
    """Without voltages there is no field for them, and the key stands beneath the other."""
    frames = [frame for frame in key_cycle() if frame.can_id >> 8 & 0xFFFF != 65271]
    content = cycle_content(listened(frames), system_V=12)
    assert content.volts is None
    assert content.speed is not None


def test_spans_reach_from_the_first_frame_to_the_last() -> None:
    """What is not known of the key is said by a question mark."""
    found = spans(listened(key_cycle()).heard)
    assert (found[0].label, found[0].start_s, found[-1].label) == ("?", 0.0, "off")
    assert all(a.end_s == b.start_s for a, b in itertools.pairwise(found))
    driving = listened([frame for frame in key_cycle() if 12 < frame.time_s < 20]).heard
    assert [span.label for span in spans(driving)] == ["running"]
