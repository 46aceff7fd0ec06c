"""A key script: columns `t,key` in any order, one row for each thing the hand did; others are passed over."""

from __future__ import annotations

from collections.abc import Iterable

from backprobe.errors import Place, Skipped, UnreadableError
from backprobe.evidence.key_turn import BODY_KEYS, IGNITION_KEYS, KeyScript, KeyTurn, ScriptKey
from backprobe.formats.cells import cells_of, delimiter_of, numbered
from backprobe.formats.instants import EXPECTED, read_instant

COLUMNS = ("t", "key")
KEY_WORDS = ", ".join(ScriptKey)
MOST_ROWS = 2_000


def read_key_script(lines: Iterable[str], *, file: str, finished: bool = True) -> KeyScript:
    """The script that `lines` hold; `file` is the name shown in messages.

    A row that cannot be read is skipped and counted with its place. Rows are put in the order of time. Raises
    UnreadableError where there is no usable header or row, where the key is never turned on, and where the script
    has no off: without one nothing can be said of a unit that never goes off. One that is not yet `finished` may lack
    all but the header.

    >>> script = read_key_script(["t,key", "2026-03-31T08:00:00Z,off", "2026-03-31T08:02:00Z,on"], file="script.csv")
    >>> [str(turn.key) for turn in script.turns], script.zoneless
    (['off', 'on'], False)
    """
    rows = numbered(lines, file=file)
    number, header = next(rows, (None, ""))
    if number is None:
        raise UnreadableError(Place(file), "a header line: t,key")
    delimiter = delimiter_of(header, COLUMNS)
    places = _places(header, delimiter, place=Place(file, number, header))
    turns: list[KeyTurn] = []
    skipped: list[Skipped] = []
    zoneless = False
    for line, text in rows:
        if len(turns) + len(skipped) >= MOST_ROWS:
            raise UnreadableError(Place(file, line), f"at most {MOST_ROWS:,} rows; are these the unit's reports?")
        read = _turn(cells_of(text, delimiter), places, line=line)
        if isinstance(read, str):
            skipped.append(Skipped(Place(file, line, text), read))
            continue
        turn, zoned = read
        turns.append(turn)
        zoneless = zoneless or not zoned
    ordered = sorted(turns, key=lambda turn: turn.time_s)
    script = KeyScript(turns=tuple(ordered), zoneless=zoneless, reordered=ordered != turns, skipped=tuple(skipped))
    if finished or (skipped and not turns):
        _refuse_unusable(script, file)
    return script


def _places(header: str, delimiter: str, *, place: Place) -> tuple[int, int]:
    names = [name.lower() for name in cells_of(header, delimiter)]
    for name in COLUMNS:
        if names.count(name) != 1:
            raise UnreadableError(
                place, f"a header line t,key with each column once; {name} stands there {names.count(name)} times"
            )
    return names.index("t"), names.index("key")


def _turn(cells: list[str], places: tuple[int, int], *, line: int) -> tuple[KeyTurn, bool] | str:
    """The row's turn and whether its zone was stated, or what was expected instead."""
    if len(cells) <= max(places):
        return "a time and a key in each row"
    written, word = cells[places[0]], cells[places[1]].lower().replace(" ", "_")
    instant = read_instant(written)
    if instant is None:
        return EXPECTED
    if word not in set(ScriptKey):
        return f"one of: {KEY_WORDS}"
    return KeyTurn(time_s=instant[0], key=ScriptKey(word), written=written, line=line), instant[1]


def _refuse_unusable(script: KeyScript, file: str) -> None:
    if script.skipped and not script.turns:
        first = script.skipped[0]
        many = len(script.skipped)
        raise UnreadableError(first.place, f"{first.expected} (not one of {many} rows can be read)")
    lacking = lacks(script)
    if lacking is not None:
        raise UnreadableError(Place(file), lacking)


def lacks(script: KeyScript) -> str | None:
    """What a script that proves nothing yet should have held; None where it has all it needs.

    >>> lacks(KeyScript(turns=()))
    'rows beneath the header: what was done with the key, and when'
    """
    keys = {turn.key for turn in script.turns}
    if not keys:
        return "rows beneath the header: what was done with the key, and when"
    if ScriptKey.OFF not in keys:
        return (
            "a script in which the key is turned off; without an off nothing can be said of it, nor of a unit that "
            "never goes off"
        )
    if not keys & IGNITION_KEYS:
        done = ", ".join(sorted(keys - BODY_KEYS))
        return f"a script in which the key is turned on; there is only: {done}"
    return None
