"""The answer of `backprobe sky` in lines."""

from __future__ import annotations

from tests.samples.mount import BOX, ROOF, sheet

from backprobe.cli.sky_text import as_text
from backprobe.stages.mount.answer import sky_answer
from backprobe.stages.mount.question import question


def test_the_best_place_stands_first() -> None:
    """Ranked lines, then what each finding rests on with its limit and what to do, satellites, notes."""
    answer = sky_answer(sheet(BOX, ROOF), question((60.2, 24.9), "2021-04-29", time="12:00"))
    lines = as_text(answer).splitlines()
    assert lines[0].startswith("1  on the roof      holds: 100.0 % of the day")
    assert lines[1].startswith("2  in the fuse box  fails: 0.0 % of the day, HDOP none (half the day) none (95 %)")
    assert any("limit at least 88 % of the day" in line for line in lines)
    assert any(line.strip() == "next: take 'on the roof' instead: 100 % of the day" for line in lines)
    assert sum(1 for line in lines if "azimuth" in line) == len(answer.satellites or ())
    assert lines[-1].startswith("note: GPS alone")
