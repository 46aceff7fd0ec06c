"""The heading of a roster: which column is which, under our names, usual ones, or those that a map gives."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from backprobe.errors import OptionError, Place, UnreadableError, shortened
from backprobe.evidence.roster import RosterKind

VEHICLE = ("vin", "plate", "fleet_number")
# ours -> what offices write as well; compared without capitals, spaces, hyphens, dots and underscores
USUAL: dict[str, tuple[str, ...]] = {
    "plate": ("registration", "reg", "reg no", "number plate", "licence plate", "license plate"),
    "fleet_number": ("fleet no", "fleet id", "vehicle number", "vehicle no"),
    "vin": ("vin number", "chassis", "chassis no", "chassis number"),
    "type": ("vehicle type", "model"),
    "yard": ("depot", "site", "location"),
    "lat": ("latitude",),
    "lon": ("lng", "longitude"),
    "unit_serial": ("serial", "serial no", "serial number", "unit serial number"),
    "unit_type": ("unit model",),
    "unit_id": ("device id",),
    "day": ("date", "planned day", "planned date"),
    "installer": ("technician", "fitter"),
}
KNOWN = tuple(USUAL)
_PUNCTUATION = str.maketrans("", "", " _-./\u00a0\r\n\t")
EXPECTED = f"a heading with one of {', '.join(VEHICLE)} or unit_serial; other names need a column map (--columns)"


@dataclass(frozen=True, slots=True)
class RosterColumns:
    """Where each known column stands, what it is headed in the file, and what the list is about."""

    kind: RosterKind
    places: Mapping[str, int]
    headings: Mapping[str, str]
    width: int
    passed_over: tuple[str, ...]


def roster_names(text: str) -> dict[str, str]:
    """A column map as typed: `name=theirs,…`. Raises OptionError.

    >>> roster_names("plate=Kennzeichen, vin=FIN")
    {'plate': 'Kennzeichen', 'vin': 'FIN'}
    """
    names: dict[str, str] = {}
    for pair in text.split(","):
        ours, equals, theirs = (part.strip() for part in pair.partition("="))
        if not equals or not theirs or ours not in USUAL or ours in names:
            raise OptionError(f"--columns {text}: name=theirs,… is expected, each name once: {', '.join(KNOWN)}")
        names[ours] = theirs
    return names


def roster_columns(cells: Sequence[str], names: Mapping[str, str], *, place: Place) -> RosterColumns:
    """The columns that the cells of a heading name.

    A name of the map goes before ours, ours before a usual one. Raises UnreadableError where nothing tells a vehicle or
    a unit, where a column stands there twice, and where the map names one that is not there.
    """
    plain = [_plain(cell) for cell in cells]
    places: dict[str, int] = {}
    for name in KNOWN:
        at = _place(name, plain, names=names, place=place)
        if at is not None and at not in places.values():
            places[name] = at
    if not {*VEHICLE, "unit_serial"} & set(places):
        raise UnreadableError(place, EXPECTED)
    if ("lat" in places) != ("lon" in places):
        raise UnreadableError(place, "columns for both degrees of a place, lat and lon, or for neither")
    kind = RosterKind.VEHICLES if set(VEHICLE) & set(places) else RosterKind.UNITS
    return RosterColumns(
        kind=kind,
        places=places,
        headings={name: _shown(cells[at]) or name for name, at in places.items()},
        width=len(cells),
        passed_over=tuple(
            shown for at, cell in enumerate(cells) if (shown := _shown(cell)) and at not in places.values()
        ),
    )


def find_heading(
    rows: Sequence[tuple[int, Sequence[str]]], names: Mapping[str, str], *, file: str
) -> tuple[int, RosterColumns]:
    """Which of a table's first rows is its heading, counted from 0, and its columns: the first that can be one.

    Raises UnreadableError where none can, about the row that comes nearest to it.
    """
    faults: list[tuple[int, UnreadableError]] = []
    known = {_plain(usual) for name in KNOWN for usual in (name, *USUAL[name], names.get(name, name))}
    for at, (line, cells) in enumerate(rows):
        try:
            return at, roster_columns(cells, names, place=Place(file, line, ", ".join(cells)))
        except UnreadableError as fault:
            faults.append((sum(1 for cell in cells if _plain(cell) in known), fault))
    raise max(faults, key=lambda each: each[0])[1] if faults else UnreadableError(Place(file), EXPECTED)


def _place(name: str, plain: Sequence[str], *, names: Mapping[str, str], place: Place) -> int | None:
    wanted = [names[name]] if name in names else [name, *USUAL[name]]
    taken = {_plain(theirs) for ours, theirs in names.items() if ours != name}
    for heading in map(_plain, wanted):
        count = 0 if heading in taken else plain.count(heading)
        if count > 1:
            raise UnreadableError(place, f"each column once; {heading} stands there {count} times")
        if count:
            return plain.index(heading)
    if name in names:
        raise UnreadableError(place, f"a column {names[name]!r} for {name}, as the column map says")
    return None


def _shown(heading: str) -> str:
    """A heading as it may be shown: on one line, without what a terminal would act on."""
    return shortened(" ".join(heading.split()))


def _plain(heading: str) -> str:
    return heading.translate(_PUNCTUATION).casefold()
