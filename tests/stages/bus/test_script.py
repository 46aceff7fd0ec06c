"""A bus log's key cycle as a key script."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.bus_frames import key_cycle
from tests.samples.bus_heard import cycle_heard, listened

from backprobe.errors import InputError, UnreadableError
from backprobe.formats.key_script_csv import read_key_script
from backprobe.stages.bus.script import script_lines

NOON_S = 1_774_944_000.0  # 31 March 2026, 08:00:00 UTC


def test_the_script_is_one_that_prove_reads() -> None:
    """On 5 s after the first frame, cranked at 9, running, off where the first computers fell silent."""
    lines = list(script_lines(cycle_heard(), start_s=NOON_S))
    assert lines[:3] == ["t,key", "2026-03-31T08:00:05.000Z,on", "2026-03-31T08:00:09.000Z,crank"]
    script = read_key_script(lines, file="script.csv")
    assert [str(turn.key) for turn in script.turns] == ["on", "crank", "running", "off"]
    assert [round(turn.time_s - NOON_S, 2) for turn in script.turns] == [5.0, 9.0, 9.88, 29.9]
    assert not script.zoneless


def test_stamps_from_1970_need_no_start() -> None:
    """A log that knows the time says it; what is given goes before."""
    heard = replace(cycle_heard(), stamped_s=NOON_S)
    assert next(iter(list(script_lines(heard))[1:])) == "2026-03-31T08:00:05.000Z,on"
    assert list(script_lines(heard, start_s=NOON_S + 60))[1] == "2026-03-31T08:01:05.000Z,on"


def test_a_log_that_knows_no_time_needs_one() -> None:
    """It is asked for, with an example."""
    with pytest.raises(InputError, match="--start 2026"):
        list(script_lines(cycle_heard()))


def test_a_log_without_an_off_proves_nothing() -> None:
    """It is refused: of a unit that never goes off nothing could be said."""
    heard = listened([frame for frame in key_cycle() if frame.time_s < 25]).heard
    with pytest.raises(UnreadableError, match="the key goes off"):
        list(script_lines(heard, start_s=NOON_S))
