"""Key scripts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.key_turn import ScriptKey
from backprobe.formats.key_script_csv import lacks, read_key_script

GOOD = ["t,key", "2026-03-31T08:00:00Z,off", "2026-03-31T08:01:00Z,on", "2026-03-31T08:02:00Z,off"]


def read(lines):
    """The script that the lines hold."""
    return read_key_script(lines, file="script.csv")


def test_a_script_is_read():
    """Rows come out with their moment as written and their line."""
    script = read(GOOD)
    assert [(str(turn.key), turn.line) for turn in script.turns] == [("off", 2), ("on", 3), ("off", 4)]
    assert script.turns[1].written == "2026-03-31T08:01:00Z"
    assert script.turns[1].time_s - script.turns[0].time_s == 60
    assert not script.zoneless
    assert not script.reordered


def test_other_tables_are_read():
    """Semicolons, more columns, any order of them, capitals, spaces for underscores, comments."""
    script = read(
        [
            "# bay 3",
            "who;key;t",
            "Ines;Off;31.03.2026 08:00:00",
            "Ines;Doors Open;31.03.2026 08:00:09",
            "Ines;ON;31.03.2026 08:01:00",
        ]
    )
    assert [turn.key for turn in script.turns] == [ScriptKey.OFF, ScriptKey.DOORS_OPEN, ScriptKey.ON]
    assert script.zoneless


def test_rows_are_put_in_the_order_of_time():
    """And that is said."""
    script = read([GOOD[0], GOOD[2], GOOD[1]])
    assert [str(turn.key) for turn in script.turns] == ["off", "on"]
    assert script.reordered


def test_a_row_that_cannot_be_read_is_skipped_with_its_place():
    """Reading goes on; nothing is guessed."""
    script = read([*GOOD, "half past,on", "2026-03-31T08:03:00Z,ign", "torn"])
    assert len(script.turns) == 3
    assert [skipped.place.line for skipped in script.skipped] == [5, 6, 7]
    assert "one of: off, accessory, on, crank" in script.skipped[1].expected


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        ([], "a header line: t,key"),
        (["time,key", "1,off"], "t stands there 0 times"),
        (["t,key,key", "1,off,on"], "key stands there 2 times"),
        (["t,key"], "rows beneath the header"),
        (["t,key", "1,x", "y,on"], "not one of 2 rows"),
        (["t,key", "1,on", "2,crank", "3,running"], "turned off"),
        (["t,key", "1,off", "2,accessory", "3,off"], "turned on; there is only: accessory, off"),
        (["t,key", *(f"{i},on" for i in range(2001))], "at most 2,000 rows"),
        (["\0"], "binary"),
    ],
)
def test_a_script_that_cannot_be_used_is_refused(lines, words):
    """In plain words, with what was expected."""
    with pytest.raises(UnreadableError) as caught:
        read(lines)
    assert words in str(caught.value)


@given(st.lists(st.text(alphabet='t,key;0123456789offn-:TZ"\n ', max_size=30), max_size=8))
def test_any_lines_are_read_or_refused(lines):
    """Nothing but the project's own error comes out."""
    try:
        script = read(["t,key", *lines])
    except UnreadableError:
        return
    assert any(turn.key is ScriptKey.OFF for turn in script.turns)


@pytest.mark.parametrize(
    ("rows", "lacking"),
    [
        ([], "rows beneath the header"),
        (["2026-03-31T08:00:00Z,on"], "a script in which the key is turned off"),
        (["2026-03-31T08:00:00Z,off"], "a script in which the key is turned on; there is only: off"),
        (["2026-03-31T08:00:00Z,off", "2026-03-31T08:00:30Z,on"], None),
    ],
)
def test_a_script_that_is_not_finished_is_read_and_says_what_it_lacks(rows, lacking):
    """A technician in the middle of the work is not refused."""
    found = lacks(read_key_script(["t,key", *rows], file="s.csv", finished=False))
    assert found == lacking if lacking is None else found.startswith(lacking)


def test_an_unfinished_script_of_which_nothing_can_be_read_is_refused():
    """Rows are there, and not one is a moment and a key."""
    with pytest.raises(UnreadableError, match="not one of 1 rows can be read"):
        read_key_script(["t,key", "soon,onn"], file="s.csv", finished=False)
