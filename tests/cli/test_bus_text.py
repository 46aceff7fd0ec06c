"""A bus log's answer for people."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.bus_heard import VIN, cycle_heard

from backprobe.cli.bus_text import as_text
from backprobe.stages.bus.answer import answer


def test_the_head_the_findings_and_what_is_next() -> None:
    """How many frames, the VIN, the lowest voltage, each finding, the one next step, the caution."""
    lines = as_text(answer(cycle_heard())).splitlines()
    assert lines[0].startswith("truck.log: candump, ")
    assert lines[1:3] == [f"VIN {VIN}", "lowest 10.20 V at 9.0 s, as the vehicle reports it"]
    at = lines.index("thin   lowest voltage reported while the starter turns: 10.20 V")
    assert lines[at + 1].startswith("       limit at least 9 V, a constant supply while the starter turns (common")
    assert lines[at + 2].startswith("       the vehicle's own computers reported 10.20 V")
    assert lines[-2].startswith("next: record the start again")
    assert lines[-1].startswith("mind: listen only")


def test_what_was_passed_over_is_counted_and_placed() -> None:
    """By reason, with the first places."""
    heard = replace(cycle_heard(), skipped={"torn_line": 2}, places=("a.log, line 7: (0.5 (a frame)",))
    text = as_text(answer(heard))
    assert "passed over: 2 × torn line" in text
    assert "    a.log, line 7" in text


def test_the_caution_stands_once() -> None:
    """Where the next step has it, it is not said again."""
    text = as_text(answer(cycle_heard(crank_s=99.0)))
    assert text.splitlines()[-1].startswith("next: ")
    assert text.splitlines()[-1].count("listen only") == 1
