"""A key script and what was seen of the lights, as entries and back."""

from __future__ import annotations

import pytest
from tests.samples.journals import Phone

from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.lights_csv import read_lights
from backprobe.job.entry import Entry
from backprobe.job.fold import fold
from backprobe.job.prove_rows import light_rows, script_rows, unreadable_row

SCRIPT = [
    "t,key",
    "2026-03-31T08:00:00Z,off",
    "2026-03-31T08:03:00Z,on",
    "31.03.2026 08:01:00,accessory",
    "later,off",
    "2026-03-31T08:05:00Z,off",
]
LIGHTS = ["light,pattern,after_s", "network,one flash a second,41", "sky,steady,", "door"]


def read_script():
    """The script above, as a file has it."""
    return read_key_script(SCRIPT, file="key-script.csv")


def said_by(phone: Phone) -> list[Entry]:
    """Script and lights, row by row, said by a phone."""
    seen, skipped = read_lights(LIGHTS, file="lights.csv")
    return [phone.say(row.kind, row.body) for row in (*script_rows(read_script()), *light_rows(seen, skipped))]


def test_a_script_comes_back_as_the_file_has_it():
    """Every row with its line, its zone or the lack of it, the order of the file, and the line that was passed over."""
    assert fold(said_by(Phone())).script == read_script()


def test_lights_come_back_as_the_file_has_them():
    """Patterns, seconds, and the line that was passed over."""
    state = fold(said_by(Phone()))
    seen, skipped = read_lights(LIGHTS, file="lights.csv")
    assert state.lights == seen
    assert state.lights_skipped == skipped


def test_lines_that_were_passed_over_are_no_readings():
    """The readings table has none of them."""
    assert fold(said_by(Phone())).table.skipped == ()


def test_nothing_said_is_no_script():
    """None, and no light."""
    state = fold([Phone().reads("Red", "on", "12.30")])
    assert (state.script, state.lights, state.script_disputed) == (None, (), False)


def test_a_turn_said_in_two_ways_is_disputed():
    """Two phones correct one turn differently: both stand, and somebody has to decide."""
    phone, other = Phone(), Phone("phone-b", ids=100)
    said = said_by(phone)
    turn = next(entry for entry in said if entry.kind == "key_turn")
    for device, key in ((phone, "on"), (other, "accessory")):
        body = {"t": "2026-03-31T08:00:00Z", "key": key}
        said.append(device.say("correction", {"replaces": turn.id, "kind": "key_turn", "body": body}))
    state = fold(said)
    assert state.script_disputed
    assert not fold(said[:-1]).script_disputed
    assert len(state.disputes) == 1


@pytest.mark.parametrize(
    ("kind", "body", "why"),
    [
        ("key_turn", {"t": "2026-03-31T08:00:00Z", "key": "warp"}, "key: 'warp' is no key position"),
        ("key_turn", {"t": "soon", "key": "on"}, "t: expected a moment"),
        ("light_seen", {"light": "a", "pattern": "b", "after_s": "soon"}, "after_s: expected seconds"),
        ("light_seen", {"light": "a", "pattern": "b"}, None),
        ("key_turn", {"t": "2026-03-31T08:00:00Z", "key": "doors_shut"}, None),
    ],
)
def test_rows_that_a_later_version_wrote(kind, body, why):
    """What this version cannot read is kept and listed, not guessed at."""
    found = unreadable_row(kind, body)
    assert found is None if why is None else found.startswith(why)
    state = fold([Phone().say(kind, body)])
    assert bool(state.unknown) is (why is not None)
