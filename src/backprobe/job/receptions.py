"""A receiver's log in a job's journal: the file by its digest, and its figures beside it.

The figures are what everybody judges by, so that a phone needs no file of many megabytes and says what the desk says.
They hold no position: where the vehicle stood is in the file alone, which can be erased.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from backprobe.errors import Place, Skipped
from backprobe.evidence.reception import Reception, Rest, SkyBin
from backprobe.job.canonical import Body, Json
from backprobe.job.fold import JobState
from backprobe.job.kinds import RECEPTION, table, text

_COUNTS = ("sentences", "epochs", "fixes", "since_first", "duration_ms", "told", "moving")
_COUNTED = ("used", "hdop_hundredths", "top4_tenths")
_NAMED = ("skipped", "odd")
_BIN_FIGURES = 8


def figures_of(log: Reception) -> Body:
    """The figures of a log as whole numbers and texts, without any position."""
    rest = log.rest
    body: Body = {name: getattr(log, name) for name in _COUNTS}
    body |= {name: dict(getattr(log, name)) for name in _NAMED}
    body |= {name: [[value, count] for value, count in getattr(log, name).items()] for name in _COUNTED}
    body["first_fix_ms"] = log.first_fix_ms
    body["places"] = [[each.place.line, each.expected] for each in log.places]
    body["rest"] = (
        None if rest is None else [rest.duration_s, rest.fixes, rest.independent_tenths, rest.r50_mm, rest.r95_mm]
    )
    body["bins"] = [
        f"{b.satellite} {b.az_bin} {b.el_bin} {b.heard} {b.missing} {b.used} {b.cn0_tenths} {b.az_sum} {b.el_sum}"
        for b in log.bins
    ]
    return body


def reception_from(figures: Body, *, file: str) -> Reception | None:
    """The log whose figures these are; None where they are not such figures."""
    counts = {name: _whole(figures.get(name)) for name in _COUNTS}
    named = {name: _named(figures.get(name)) for name in _NAMED}
    counted = {name: _counted(figures.get(name)) for name in _COUNTED}
    bins, rest = _bins(figures.get("bins")), _rest(figures.get("rest"))
    first = figures.get("first_fix_ms")
    if bins is None or rest is None or (first is not None and _whole(first) is None):
        return None
    if any(each is None for each in (*counts.values(), *named.values(), *counted.values())):
        return None
    return Reception(
        file=file,
        places=tuple(_places(figures.get("places"), file)),
        first_fix_ms=_whole(first),
        rest=rest[0],
        bins=bins,
        **counts,  # type: ignore[arg-type]
        **named,  # type: ignore[arg-type]
        **counted,  # type: ignore[arg-type]
    )


def receptions_of(state: JobState) -> tuple[Reception, ...]:
    """The logs that a job's journal holds, in the order of their files."""
    found = (
        reception_from(table(one.body, "figures"), file=text(one.body, "file") or RECEPTION)
        for one in state.of_kind(RECEPTION)
    )
    return tuple(log for log in found if log is not None)


def known_figures(state: JobState) -> dict[str, Body]:
    """The figures that the journal has already, by the digest of their file: a log is not listened to twice."""
    return {
        text(one.body, "sha256") or "": table(one.body, "figures")
        for one in state.of_kind(RECEPTION)
        if reception_from(table(one.body, "figures"), file="") is not None
    }


def _whole(value: Json) -> int | None:
    return value if isinstance(value, int) and not isinstance(value, bool) and value >= 0 else None


def _named(value: Json) -> Mapping[str, int] | None:
    if not isinstance(value, dict) or any(_whole(each) is None for each in value.values()):
        return None
    return {name: count for name, each in value.items() if (count := _whole(each)) is not None}


def _counted(value: Json) -> Mapping[int, int] | None:
    if not isinstance(value, list):
        return None
    found = {}
    for pair in value:
        if not isinstance(pair, list) or len(pair) != 2:
            return None
        key, count = _whole(pair[0]), _whole(pair[1])
        if key is None or count is None:
            return None
        found[key] = count
    return found


def _rest(value: Json) -> tuple[Rest | None] | None:
    """The rest in a tuple, which may hold None; None where it is something else."""
    if value is None:
        return (None,)
    figures = [_whole(each) for each in value] if isinstance(value, list) else []
    whole = [each for each in figures if each is not None]
    return (Rest(*whole),) if len(whole) == len(figures) == 5 else None


def _bins(value: Json) -> tuple[SkyBin, ...] | None:
    found = [_bin(each) for each in value] if isinstance(value, list) else [None]
    whole = tuple(each for each in found if each is not None)
    return whole if len(whole) == len(found) else None


def _bin(value: Json) -> SkyBin | None:
    satellite, *figures = value.split(" ") if isinstance(value, str) else [""]
    if (
        len(figures) != _BIN_FIGURES
        or not satellite
        or not all(each.isdecimal() and each.isascii() for each in figures)
    ):
        return None
    az_bin, el_bin, heard, missing, *sums = (int(each) for each in figures)
    return SkyBin(satellite, az_bin, el_bin, heard, missing, *sums) if heard + missing else None


def _places(value: Json, file: str) -> Iterator[Skipped]:
    for pair in value if isinstance(value, list) else ():
        if isinstance(pair, list) and len(pair) == 2 and isinstance(pair[1], str):
            yield Skipped(Place(file, _whole(pair[0])), pair[1])
