"""The vehicle's condition before the work, and against it the condition after."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.walkround import Condition
from backprobe.findings import Finding, Stage
from backprobe.stages.walkround.doubts import Doubt, Matter, not_said, wrong

BEFORE = Matter("condition_before", "Condition before the work")
AFTER = Matter("condition_after", "Condition after the work", Stage.HAND_OVER)
LOOK = "key on before anything is touched: write lamps, codes and odometer under [before], and photograph the dash"
LOOK_AGAIN = "when the work is done, key on: write lamps, codes and odometer under [after], and photograph the dash"
FIND_OUT = "find out what set it before the vehicle goes back, put it right, and write [after] anew"
EXPLAIN = "say why under [after] (explained): a code that was cleared can no longer be looked into"
READ_AGAIN = "read the photos or the dash again: none of these figures runs backwards"


def condition_before(before: Condition) -> Finding:
    """Whether the condition was written down before anything was touched; what stood then is nobody's fault here."""
    missing = _missing(before)
    doubts = [not_said(f"not written down: {', '.join(missing)}", LOOK)] if missing else []
    return BEFORE.finding(doubts, well=told(before))


def condition_after(before: Condition, after: Condition | None) -> Finding:
    """Lamps, codes, odometer and engine hours after the work against those before.

    A lamp or code that was not there before fails. One that is gone is open until it is explained. An odometer or an
    hour meter that runs backwards is open: one of the two figures was misread.
    """
    if after is None:
        return AFTER.finding([not_said("not written down yet", LOOK_AGAIN)], well="")
    missing = _missing(after)
    doubts = [not_said(f"not written down: {', '.join(missing)}", LOOK_AGAIN)] if missing else []
    doubts += _changed("warning lamp", before.lamps, now=after.lamps, explained=after.explained)
    doubts += _changed("fault code", before.codes, now=after.codes, explained=after.explained)
    doubts += _counters(before, after)
    return AFTER.finding(doubts, well=_well(before, after))


def _well(before: Condition, after: Condition) -> str:
    """The condition after the work, with what was before where that was not the same."""
    same = all(
        {_plain(text) for text in was or ()} == {_plain(text) for text in now or ()}
        for was, now in ((before.lamps, after.lamps), (before.codes, after.codes))
    )
    was = "as before" if same else f"before: {told(before)}; {after.explained}"
    return f"{told(after)}; {was}"


def told(state: Condition) -> str:
    """A condition in a few words.

    >>> told(Condition(odometer_km=184220.0, engine_h=7011.5, lamps=("ABS",), codes=()))
    '184,220 km, 7,011.5 h, lamps: ABS, no codes'
    """
    figures = [f"{value:,.15g} {unit}" for _, unit, value in _figures(state) if value is not None]
    return ", ".join([*figures, _list("lamps", state.lamps), _list("codes", state.codes)])


def _list(name: str, found: tuple[str, ...] | None) -> str:
    if found is None:
        return f"{name} not known"
    return f"{name}: {', '.join(found)}" if found else f"no {name}"


def _figures(state: Condition) -> tuple[tuple[str, str, float | None], ...]:
    """What only ever counts up: its name, unit and value."""
    return (
        ("odometer", "km", state.odometer_km),
        ("odometer", "mi", state.odometer_mi),
        ("engine hours", "h", state.engine_h),
    )


def _missing(state: Condition) -> list[str]:
    said = {
        "warning lamps": state.lamps is not None,
        "fault codes": state.codes is not None,
        "odometer": state.odometer_km is not None or state.odometer_mi is not None,
    }
    return [name for name, is_said in said.items() if not is_said]


def _changed(
    name: str, was: tuple[str, ...] | None, *, now: tuple[str, ...] | None, explained: str | None
) -> Iterator[Doubt]:
    if was is None or now is None:
        return
    for new in _only_in(now, was):
        yield wrong(f"{name} {new} was not there before", FIND_OUT)
    for gone in _only_in(was, now):
        if explained is None:
            yield not_said(f"{name} {gone} is gone, and why is not said", EXPLAIN)


def _only_in(some: tuple[str, ...], others: tuple[str, ...]) -> list[str]:
    known = {_plain(text) for text in others}
    return [text for text in some if _plain(text) not in known]


def _plain(text: str) -> str:
    return "".join(text.split()).casefold()


def _counters(before: Condition, after: Condition) -> Iterator[Doubt]:
    for (name, unit, was), (_, _, now) in zip(_figures(before), _figures(after), strict=True):
        if was is not None and now is not None and now < was:
            yield not_said(f"{name}: {was:,.15g} {unit} before, {now:,.15g} {unit} after", READ_AGAIN)
    units = [[unit for _, unit, value in _figures(state)[:2] if value is not None] for state in (before, after)]
    if units[0] and units[1] and units[0] != units[1]:
        yield not_said("odometer in km and in miles: they cannot be compared", "read both in the same unit")
