"""mount.toml: where the unit could sit and what is around it there, in millimetres from the unit."""

from __future__ import annotations

from backprobe.evidence.mount_sheet import MountPlace, MountSheet, Part, Side
from backprobe.formats.mount_choices import CHOICES, described
from backprobe.formats.toml_text import TomlTable, parse_toml
from backprobe.limits.materials import MATERIALS

ANY = "any"
REACHES = ("ahead_mm", "behind_mm", "left_mm", "right_mm", "from_mm", "to_mm")
KEYS: dict[str, tuple[str, ...]] = {
    "": ("heading", "chosen", "wanted", "place"),
    "wanted": ("share_percent", "pdop_most", "hdop_most"),
    "place": ("name", "cover", "elsewhere", "part", *CHOICES),
    "place.part": ("of", "where", "away_mm", "rake_deg", *REACHES),
}
# which reaches a part on a side has: the others would not be about it
_REACHES_OF = {
    Side.ABOVE: ("ahead_mm", "behind_mm", "left_mm", "right_mm"),
    Side.AHEAD: ("left_mm", "right_mm", "from_mm", "to_mm"),
    Side.BEHIND: ("left_mm", "right_mm", "from_mm", "to_mm"),
    Side.LEFT: ("ahead_mm", "behind_mm", "from_mm", "to_mm"),
    Side.RIGHT: ("ahead_mm", "behind_mm", "from_mm", "to_mm"),
}
_OPPOSITE = (("ahead_mm", "behind_mm"), ("left_mm", "right_mm"))
_ONE_OF = f"a material: {', '.join(MATERIALS)}"
MOST_MM = 30_000
MOST_PLACES, MOST_PARTS = 20, 40
LEAST_RAKE_DEG, MOST_RAKE_DEG = 10, 170
MOST_DOP = 50


def read_mount(text: str, file: str) -> MountSheet:
    """The places that the TOML `text` holds; `file` is the name shown in messages.

    Raises UnreadableError, with the line, for TOML that cannot be parsed, for keys and materials that do not exist
    (naming the nearest one), for values of the wrong kind, and for a part that reaches nowhere.
    """
    sheet = parse_toml(text, file=file)
    sheet.only(KEYS)
    places = tuple(_place(table) for table in sheet.tables_of("place"))
    if not places:
        raise sheet.refuse(None, "a table [[place]] for each place that the unit could have; there is none")
    if len(places) > MOST_PLACES:
        raise sheet.refuse("place", f"at most {MOST_PLACES} places")
    _names_differ(sheet, places)
    wanted = sheet.table_of("wanted")
    wanted.only(KEYS)
    return MountSheet(
        file=file,
        places=places,
        heading_deg=_heading(sheet),
        chosen=sheet.text_of("chosen", choices=tuple(place.name for place in places)),
        share_percent=wanted.number_of("share_percent", least=1, most=100),
        pdop_most=wanted.number_of("pdop_most", least=1, most=MOST_DOP),
        hdop_most=wanted.number_of("hdop_most", least=0.5, most=MOST_DOP),
    )


def _names_differ(sheet: TomlTable, places: tuple[MountPlace, ...]) -> None:
    seen: set[str] = set()
    for table, place in zip(sheet.tables_of("place"), places, strict=True):
        if place.name.casefold() in seen:
            raise table.refuse("name", "a name for each place that no other place has")
        seen.add(place.name.casefold())


def _heading(sheet: TomlTable) -> float | None:
    """Where the front points; None for anywhere, which is what is meant where nothing is said."""
    if sheet.values.get("heading", ANY) == ANY:
        return None
    if isinstance(sheet.values["heading"], str):
        raise sheet.refuse("heading", f'degrees from north over east, heading = 90, or heading = "{ANY}"')
    value = sheet.number_of("heading", least=-360, most=360)
    return None if value is None else value % 360.0


def _place(table: TomlTable) -> MountPlace:
    table.only(KEYS)
    parts = table.tables_of("part")
    if len(parts) > MOST_PARTS:
        raise table.refuse("part", f"at most {MOST_PARTS} parts for a place")
    name = table.must("name", table.text_of("name"), expected='"…", what the place is called')
    cover = tuple(_known(table, "cover", material=each) for each in table.texts_of("cover"))
    choice = next((key for key in CHOICES if key in table.values), None)
    if choice is not None and (parts or "elsewhere" in table.values):
        raise table.refuse(choice, "a place that is described by choices, or one that was measured part by part")
    if choice is not None:
        return described(table, name, cover=cover)
    return MountPlace(
        name=name,
        parts=tuple(_part(part) for part in parts),
        cover=cover,
        elsewhere=_known(table, "elsewhere", material=table.text_of("elsewhere") or "metal"),
    )


def _known(table: TomlTable, key: str, *, material: str) -> str:
    if material not in MATERIALS:
        raise table.refuse(key, f"{_ONE_OF}; '{material}' is none of them")
    return material


def _part(table: TomlTable) -> Part:
    table.only(KEYS)
    side = Side(table.must("where", table.text_of("where", choices=tuple(Side)), expected=f"one of {', '.join(Side)}"))
    away_mm = table.must(
        "away_mm", table.number_of("away_mm", least=1, most=MOST_MM), expected="millimetres from the unit to it"
    )
    if side is Side.ABOVE and "rake_deg" in table.values:
        raise table.refuse("rake_deg", "no rake for a part above: it lies flat; a sloping one is ahead, behind, …")
    for key in REACHES:
        if key in table.values and key not in _REACHES_OF[side]:
            raise table.refuse(key, f"a part {side} reaches {', '.join(_REACHES_OF[side])}")
    part = Part(
        material=_known(table, "of", material=table.must("of", table.text_of("of"), expected=_ONE_OF)),
        side=side,
        away_mm=away_mm,
        rake_deg=table.number_of("rake_deg", least=LEAST_RAKE_DEG, most=MOST_RAKE_DEG) or 90.0,
        **{key: table.number_of(key, least=-MOST_MM, most=MOST_MM) for key in REACHES},
    )
    _reaches_somewhere(table, part)
    return part


def _reaches_somewhere(table: TomlTable, part: Part) -> None:
    """Refuse a part whose one edge lies beyond the other."""
    for one, other in _OPPOSITE:
        reaches = (getattr(part, one), getattr(part, other))
        if None not in reaches and reaches[0] + reaches[1] <= 0:
            raise table.refuse(one, f"{one} + {other} above 0: this part would have no width")
    if part.from_mm is not None and part.to_mm is not None and part.to_mm <= part.from_mm:
        raise table.refuse("to_mm", "to_mm above from_mm: this part would have no height")
