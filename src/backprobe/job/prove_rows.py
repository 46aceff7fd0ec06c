"""A key script and what was seen of the lights as bodies of entries, one a row, and back from what stands of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from backprobe.errors import Place, Skipped
from backprobe.evidence.key_turn import KeyScript, KeyTurn, ScriptKey
from backprobe.evidence.light_seen import LightSeen
from backprobe.formats.figures import read_figure
from backprobe.formats.instants import read_instant
from backprobe.job.canonical import Body
from backprobe.job.kinds import LIGHTS, SCRIPT, text
from backprobe.job.lineage import Statement
from backprobe.job.rows import MOST_TEXT, Row, figure, plain, short_name
from backprobe.job.table import place_of


def script_rows(script: KeyScript) -> Iterator[Row]:
    """The rows that say all that a script holds, read from the folder's own file."""
    for turn in script.turns:
        written = short_name(turn.written, f"{SCRIPT}, line {turn.line}")
        yield Row("key_turn", {"file": SCRIPT, "t": written, "key": str(turn.key), "line": turn.line})
    yield from _skipped_rows(script.skipped, SCRIPT)


def light_rows(seen: Sequence[LightSeen], skipped: Sequence[Skipped]) -> Iterator[Row]:
    """The rows that say all that was seen of the lights."""
    for each in seen:
        where = f"{LIGHTS}, line {each.line}"
        body: Body = {
            "file": LIGHTS,
            "light": short_name(each.light, where),
            "pattern": short_name(each.pattern, where),
            "after_s": figure(each.after_s),
            "line": each.line,
        }
        yield Row("light_seen", body)
    yield from _skipped_rows(skipped, LIGHTS)


def _skipped_rows(skipped: Sequence[Skipped], file: str) -> Iterator[Row]:
    for each in skipped:
        said = None if each.place.text is None else plain(each.place.text)[:MOST_TEXT]
        body: Body = {"file": file, "text": said, "line": each.place.line, "expected": each.expected}
        yield Row("skipped_line", body)


def unreadable_row(kind: str | None, body: Body) -> str | None:
    """Why a well-formed body of a row cannot be read as evidence; None where it can."""
    if kind == "key_turn" and text(body, "key") not in set(ScriptKey):
        return f"key: {text(body, 'key')!r} is no key position known to this version"
    if kind == "key_turn" and read_instant(text(body, "t") or "") is None:
        return "t: expected a moment such as 2026-03-31T08:00:00Z"
    after = text(body, "after_s")
    if kind == "light_seen" and after is not None and read_figure(after) is None:
        return "after_s: expected seconds such as 41"
    return None


def script_of_rows(rows: Sequence[Statement], places: Mapping[str, int]) -> KeyScript | None:
    """The script that the rows of it and of its lines that were passed over make up; None where nobody has said any.

    Two turns that are disputed both stand in it; `is_disputed` says whether there are any.
    """
    turns = [row for row in rows if row.kind == "key_turn"]
    skipped = skipped_of(rows, places, file=SCRIPT)
    if not turns and not skipped:
        return None
    read = [(_turn(row.body, place_of(row, places)), read_instant(text(row.body, "t") or "")) for row in turns]
    ordered = sorted((turn for turn, _ in read), key=lambda turn: turn.time_s)
    return KeyScript(
        turns=tuple(ordered),
        zoneless=any(instant is not None and not instant[1] for _, instant in read),
        reordered=ordered != [turn for turn, _ in read],
        skipped=skipped,
    )


def is_disputed(rows: Sequence[Statement]) -> bool:
    """Whether a turn of the key has been said in two ways."""
    return any(row.kind == "key_turn" and row.disputed for row in rows)


def lights_of_rows(rows: Sequence[Statement], places: Mapping[str, int]) -> tuple[LightSeen, ...]:
    """What was seen of the lights; of two ways in which it was said the last."""
    return tuple(_light(row.body, place_of(row, places)) for row in rows if row.kind == "light_seen")


def skipped_of(rows: Sequence[Statement], places: Mapping[str, int], *, file: str) -> tuple[Skipped, ...]:
    """The lines of one file that were passed over."""
    return tuple(
        Skipped(Place(file, place_of(row, places), text(row.body, "text")), text(row.body, "expected") or "")
        for row in rows
        if row.kind == "skipped_line" and text(row.body, "file") == file
    )


def _turn(body: Body, line: int | None) -> KeyTurn:
    written = text(body, "t") or ""
    instant = read_instant(written)
    time_s = 0.0 if instant is None else instant[0]  # never: `unreadable_row` has refused it
    return KeyTurn(time_s=time_s, key=ScriptKey(text(body, "key") or ""), written=written, line=line)


def _light(body: Body, line: int | None) -> LightSeen:
    after = read_figure(text(body, "after_s") or "")
    return LightSeen(
        light=text(body, "light") or "",
        pattern=text(body, "pattern") or "",
        after_s=None if after is None else after.value(),
        line=line,
    )
