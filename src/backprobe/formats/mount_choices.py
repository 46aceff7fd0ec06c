"""A place in mount.toml that was described by a few choices: the parts that they stand for, with the doubt in them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import IntEnum

from backprobe.evidence.mount_sheet import MountPlace, Part, Side, Supposed
from backprobe.formats.toml_text import TomlTable
from backprobe.limits.cab import (
    ANY_NEAR_MM,
    ANY_RAKE_DEG,
    ANY_WINDSCREEN_MM,
    BASIS,
    NEAR_MM,
    RAKE_DEG,
    REACH_DOUBT,
    SEATS,
    WINDSCREEN_MM,
    Seat,
    Span,
    Wall,
)
from backprobe.limits.materials import MATERIALS

MATERIAL = tuple(str(side) for side in Side)
NEAR = tuple(f"{side}_near" for side in Side)
AWAY = tuple(f"{side}_away_mm" for side in Side)
CHOICES = ("sits", "rake", "rake_deg", *MATERIAL, *NEAR, *AWAY)
OWN_CASE = ("plastic",)
METAL = "metal"
MOST_AWAY_MM = 5_000
UPRIGHT_DEG = 90.0


class At(IntEnum):
    """How the doubt about figures is settled: against the place, in the middle, for it."""

    WORST = -1
    MIDDLE = 0
    BEST = 1


@dataclass(frozen=True, slots=True)
class Told:
    """One wall of a place as it was told: its material, how far it is, how it leans, where its upper edge is."""

    wall: Wall
    material: str
    away_mm: Span
    rake_deg: Span
    top_mm: float | None


@dataclass(frozen=True, slots=True)
class Choices:
    """What a table says: materials and distances by side, the windscreen's rake and the word that was chosen for it."""

    materials: dict[Side, str | None]
    away_mm: dict[Side, Span | None]
    rake: str | None
    rake_deg: Span


def described(table: TomlTable, name: str, *, cover: tuple[str, ...]) -> MountPlace:
    """The place that a table's choices describe. Raises UnreadableError for a choice that there is not.

    What is not told is taken as metal, and a distance that is not told as anything from a hand to an arm. Choices for
    which a seat has no use, such as a windscreen's rake for one in the roof lining, make no difference.
    """
    sits = table.must("sits", table.text_of("sits", choices=tuple(SEATS)), expected=f"one of {', '.join(SEATS)}")
    seat, choices = SEATS[sits], _choices(table)
    told = tuple(_told(choices, wall) for wall in seat.walls)
    parts = {at: tuple(_parts(told, seat, at=at)) for at in At}
    figures = (seat.what, *(_words(each) for each in told))
    supposed = Supposed(parts[At.WORST], parts[At.BEST], figures, BASIS.warrant)
    return MountPlace(name=name, parts=parts[At.MIDDLE], cover=cover or OWN_CASE, supposed=supposed)


def _choices(table: TomlTable) -> Choices:
    rake = table.text_of("rake", choices=tuple(RAKE_DEG))
    measured = table.number_of("rake_deg", least=10, most=90)
    return Choices(
        materials={side: table.text_of(side, choices=tuple(MATERIALS)) for side in Side},
        away_mm={side: _away(table, side) for side in Side},
        rake=rake,
        rake_deg=_exactly(measured) if measured is not None else RAKE_DEG[rake] if rake else ANY_RAKE_DEG,
    )


def _away(table: TomlTable, side: Side) -> Span | None:
    """How far it is on a side: as it was measured, else as it was chosen."""
    measured = table.number_of(f"{side}_away_mm", least=1, most=MOST_AWAY_MM)
    chosen = table.text_of(f"{side}_near", choices=tuple(NEAR_MM))
    if measured is not None:
        return _exactly(measured)
    return NEAR_MM[chosen] if chosen else None


def _exactly(value: float) -> Span:
    return Span(value, value, value)


def _told(choices: Choices, wall: Wall) -> Told:
    top_mm = wall.reach_mm.get("to_mm")
    if wall.raked and top_mm is None:
        top_mm = WINDSCREEN_MM[choices.rake] if choices.rake else ANY_WINDSCREEN_MM
    return Told(
        wall,
        material=choices.materials[wall.side] or METAL,
        away_mm=choices.away_mm[wall.side] or wall.away_mm or ANY_NEAR_MM,
        rake_deg=choices.rake_deg if wall.raked else _exactly(UPRIGHT_DEG),
        top_mm=top_mm,
    )


def _parts(told: tuple[Told, ...], seat: Seat, *, at: At) -> Iterator[Part]:
    """The parts of a place; what is metal needs none, as everything is that no part names."""
    above = next((each for each in told if each.wall.side is Side.ABOVE), None)
    for each in told:
        part = _part(each, at, roof_mm=None if above is None else _far(above.away_mm, at))
        if seat.sunk and part.side is Side.ABOVE:
            yield from (part, *_frame(part))
        elif seat.sunk:
            yield from (part, _roof_behind(part))
        elif each.material != METAL:
            yield part


def _part(told: Told, at: At, *, roof_mm: float | None) -> Part:
    wall = told.wall
    reach_mm = {name: _reach(name, value, at=at) for name, value in wall.reach_mm.items()}
    if wall.raked and told.top_mm is not None:
        reach_mm["to_mm"] = _reach("to_mm", told.top_mm, at=at)
    if wall.to_roof and roof_mm is not None:
        reach_mm["to_mm"] = roof_mm
    return Part(
        material=told.material,
        side=wall.side,
        away_mm=_far(told.away_mm, at),
        rake_deg=_far(told.rake_deg, at),
        **reach_mm,
    )


def _far(span: Span, at: At) -> float:
    """Far off and upright is the worst: less of the sky is seen through it."""
    return {At.WORST: span.most, At.MIDDLE: span.value, At.BEST: span.least}[at]


def _reach(name: str, value: float, *, at: At) -> float:
    """A reach, which is the better the further it is from the unit; a lower edge above the unit the nearer it is."""
    lower_edge = name == "from_mm" and value > 0
    return round(value * (1 + REACH_DOUBT * (-at if lower_edge else at)), 1)


def _frame(panel: Part) -> Iterator[Part]:
    """Metal in the plane of a panel, all round it."""
    metal = Part(material=METAL, side=Side.ABOVE, away_mm=panel.away_mm)
    ahead, behind, left, right = (panel.ahead_mm or 0, panel.behind_mm or 0, panel.left_mm or 0, panel.right_mm or 0)
    yield replace(metal, behind_mm=-ahead)
    yield replace(metal, ahead_mm=-behind)
    yield replace(metal, right_mm=-left, ahead_mm=ahead, behind_mm=behind)
    yield replace(metal, left_mm=-right, ahead_mm=ahead, behind_mm=behind)


def _roof_behind(windscreen: Part) -> Part:
    """The metal roof, which begins where the windscreen ends."""
    top_mm = windscreen.to_mm or ANY_WINDSCREEN_MM
    begins_mm = windscreen.away_mm - top_mm / math.tan(math.radians(windscreen.rake_deg))
    return Part(material=METAL, side=Side.ABOVE, away_mm=top_mm, ahead_mm=round(begins_mm, 1))


def _words(told: Told) -> str:
    """A wall in words.

    >>> _words(Told(SEATS["dash"].walls[0], "glass", NEAR_MM["hand"], RAKE_DEG["steep"], 700.0))
    'ahead: glass, 150 (80 to 220) mm from the unit, 62 (48 to 72)° against the floor, up to 700 mm'
    """
    rake = f", {told.rake_deg}° against the floor, up to {told.top_mm:g} mm" if told.wall.raked else ""
    return f"{told.wall.side}: {told.material}, {told.away_mm} mm from the unit{rake}"
