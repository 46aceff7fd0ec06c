"""What a log came to as values that a journal can hold."""

from __future__ import annotations

import json
from dataclasses import fields, replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.bus_heard import cycle_heard

from backprobe.job.canonical import canonical, parsed
from backprobe.stages.bus.answer import answer
from backprobe.stages.bus.heard import Health, Heard, SilentNode, VinHeard
from backprobe.stages.bus.key_cycle import Crank, KeyCycle, KeyOff
from backprobe.stages.bus.summary import MOST_ITEMS, heard_from, summary

FULL = replace(
    cycle_heard(),
    stamped_s=1_700_000_000.25,
    distance=(917, 424_983.515),
    clock=(1_700_000_010.0, 3.0),
    speed_max_kmh=54.90625,
    skipped={"torn_line": 3},
    places=("a.log, line 7: x (a frame)",),
    health=Health(
        nodes=3, errors_before=4, silent=(SilentNode(3, 1.5, None), SilentNode(4, 1.0, 2.0)), busiest=(0.2, 0.3)
    ),
)


def kept(heard: Heard) -> Heard | None:
    """What comes back out of an entry's bytes."""
    back = parsed(canonical(summary(heard)))
    assert isinstance(back, dict)
    return heard_from(back)


def test_the_same_findings_from_the_entry_as_from_the_log() -> None:
    """Every figure comes back to the millionth: the answers are equal."""
    for heard in (cycle_heard(), FULL, cycle_heard(None, starts=False)):
        back = kept(heard)
        assert back is not None
        assert json.dumps(answer(back).as_json()) == json.dumps(answer(heard).as_json())


def test_what_is_kept_is_small() -> None:
    """A log of very many turns of the key stays far below the 64 kB of an entry."""
    crank = Crank(start_s=1.0, end_s=2.0, started=True, starter_rpm=180.0, lowest_V=9.9, lowest_s=1.5, rest_V=12.0)
    many = KeyCycle(
        ons_s=tuple(map(float, range(5000))),
        cranks=(crank,) * 5000,
        offs=(KeyOff(1.0, 2.0),) * 5000,
        stops_s=(1.0,) * 5000,
    )
    vins = tuple(VinHeard("1M8GDM9AXKP042788", i, 1) for i in range(16))
    said = canonical(summary(replace(FULL, key=many, vins=vins, places=("x" * 5000,) * 20)))
    assert len(said) < 40_000
    back = heard_from(json.loads(said))
    assert back is not None
    assert len(back.key.cranks) == MOST_ITEMS


ODD = st.sampled_from([None, True, 0, 1, -5, 2**70, "x", [], [1], ["x"], {}, {"x": 1}, {"v": "1"}, 1.5])


@settings(deadline=None)
@given(st.dictionaries(st.sampled_from(["v", *(each.name for each in fields(Heard))]), ODD))
def test_anything_else_is_nothing(said: dict[str, object]) -> None:
    """Values that no log was ever written as, or of a later version, are None: never an error."""
    found = heard_from(said)  # type: ignore[arg-type]
    assert found is None or found.frames == said["frames"]


@pytest.mark.parametrize("version", [0, 2, None, "1"])
def test_a_later_version_is_not_guessed(version: object) -> None:
    """It is left to the engine that wrote it."""
    assert heard_from({**summary(cycle_heard()), "v": version}) is None  # type: ignore[dict-item]
