"""What a place in a cab is like where nobody has measured it: figures for 'a hand away', 'a steep windscreen'.

Our own model, each figure with the span that it may have: no source gives such figures. A tape measure goes before
them.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from backprobe.evidence.mount_sheet import Side
from backprobe.findings import Standing
from backprobe.limits.sourced import Basis

BASIS = Basis("figures of a cab that nobody has measured", Standing.MODEL)
REACH_DOUBT = 0.25  # how far a part reaches may be so much more or less


@dataclass(frozen=True, slots=True)
class Span:
    """A figure with the least and the most that it may be."""

    least: float
    value: float
    most: float

    def __str__(self) -> str:
        """The figure in words.

        >>> str(Span(80, 150, 220)), str(Span(160, 160, 160))
        ('150 (80 to 220)', '160')
        """
        return f"{self.value:g}" if self.least == self.most else f"{self.value:g} ({self.least:g} to {self.most:g})"


NEAR_MM = {  # from the unit to what is there
    "hand": Span(80.0, 150.0, 220.0),  # its breadth to its span
    "forearm": Span(220.0, 350.0, 500.0),
    "arm": Span(500.0, 700.0, 900.0),
}
RAKE_DEG = {  # of the windscreen against the floor
    "car": Span(25.0, 34.0, 48.0),
    "steep": Span(48.0, 62.0, 72.0),
    "upright": Span(72.0, 82.0, 90.0),
}
WINDSCREEN_MM = {"car": 450.0, "steep": 700.0, "upright": 800.0}  # its upper edge over the dash


ANY_NEAR_MM = Span(80.0, 350.0, 900.0)  # where nobody has said
ANY_RAKE_DEG, ANY_WINDSCREEN_MM = Span(25.0, 62.0, 90.0), 600.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """What is on one side of a seat: how far, None where that is asked; how far it reaches [mm].

    `raked`: it is the windscreen, whose rake is asked and whose upper edge goes with it. `to_roof`: it ends at what is
    above.
    """

    side: Side
    away_mm: Span | None = None
    reach_mm: dict[str, float] = field(default_factory=dict)
    raked: bool = False
    to_roof: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """A place in a cab as people name it; `sunk`: it lies beneath a panel, with windscreen and roof over that."""

    what: str
    walls: tuple[Wall, ...]
    sunk: bool = False


def _roof(**reach_mm: float) -> Wall:
    return Wall(side=Side.ABOVE, reach_mm=reach_mm)


def _window(side: Side) -> Wall:
    """A side window beside the dash."""
    reach_mm = {"from_mm": 50.0, "to_mm": 600.0, "ahead_mm": 100.0, "behind_mm": 900.0}
    return Wall(side=side, away_mm=Span(700.0, 1000.0, 1300.0), reach_mm=reach_mm)


WINDOWS = (_window(Side.LEFT), _window(Side.RIGHT))
SEATS = {
    "shelf": Seat(
        what="on the overhead shelf",
        walls=(
            _roof(ahead_mm=350.0, behind_mm=1200.0, left_mm=900.0, right_mm=900.0),
            Wall(
                side=Side.AHEAD,
                away_mm=Span(250.0, 350.0, 450.0),
                reach_mm={"left_mm": 900.0, "right_mm": 900.0},
                to_roof=True,
            ),
            Wall(
                side=Side.BEHIND,
                away_mm=Span(900.0, 1200.0, 1500.0),
                reach_mm={"left_mm": 900.0, "right_mm": 900.0},
                to_roof=True,
            ),
            *(
                Wall(
                    side=side,
                    away_mm=Span(600.0, 900.0, 1200.0),
                    reach_mm={"ahead_mm": 350.0, "behind_mm": 1200.0},
                    to_roof=True,
                )
                for side in (Side.LEFT, Side.RIGHT)
            ),
        ),
    ),
    "lining": Seat(
        what="in the roof lining", walls=(_roof(ahead_mm=500.0, behind_mm=900.0, left_mm=500.0, right_mm=500.0),)
    ),
    "dash": Seat(
        what="on top of the dash",
        walls=(
            Wall(
                side=Side.AHEAD,
                reach_mm={"from_mm": -50.0, "left_mm": 900.0, "right_mm": 900.0},
                raked=True,
            ),
            *WINDOWS,
        ),
    ),
    "behind_dash": Seat(
        what="behind the dash panel",
        walls=(
            _roof(ahead_mm=120.0, behind_mm=150.0, left_mm=250.0, right_mm=250.0),
            Wall(side=Side.AHEAD, away_mm=Span(200.0, 350.0, 500.0), raked=True),
        ),
        sunk=True,
    ),
    "screen": Seat(
        what="on the windscreen, near its upper edge",
        walls=(
            Wall(
                side=Side.AHEAD,
                away_mm=Span(10.0, 20.0, 40.0),
                reach_mm={"from_mm": -500.0, "to_mm": 120.0, "left_mm": 700.0, "right_mm": 700.0},
                raked=True,
            ),
            *WINDOWS,
        ),
    ),
    "other": Seat(
        what="another place",
        walls=(
            _roof(ahead_mm=500.0, behind_mm=500.0, left_mm=500.0, right_mm=500.0),
            *(
                Wall(side=side, reach_mm={"from_mm": 0.0, "to_mm": 500.0, "left_mm": 500.0, "right_mm": 500.0})
                for side in (Side.AHEAD, Side.BEHIND)
            ),
            *(
                Wall(side=side, reach_mm={"from_mm": 0.0, "to_mm": 500.0, "ahead_mm": 500.0, "behind_mm": 500.0})
                for side in (Side.LEFT, Side.RIGHT)
            ),
        ),
    ),
}
