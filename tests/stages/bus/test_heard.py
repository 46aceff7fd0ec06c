"""What a whole log comes to."""

from __future__ import annotations

from backprobe.stages.bus.heard import Health, Heard


def test_a_log_that_says_nothing() -> None:
    """Nothing that was not heard has a figure."""
    heard = Heard(file="a", format="candump", frames=1, length_s=0.0)
    assert (heard.volts, heard.rpm_max, heard.distance, heard.clock, heard.key.on_s, heard.key.off_s) == (None,) * 6
    assert heard.health == Health()
