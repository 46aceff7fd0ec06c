"""What the unit says of its supply wire: the level that it reports at the key's positions and some minutes after.

Theory. A unit that reports hangs on the supply wire, so that its own supply figure is a reading there, taken again and
again without anybody in the cab. It lies below the wire by the unit's diode and converter, and is as good as the unit
measures; no sheet says how good that is, so it is taken with a wide margin (`OFF_BY_V`, `OFF_BY_SHARE`: our own
estimate).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from backprobe.evidence.key_turn import BODY_KEYS
from backprobe.evidence.keys import Key
from backprobe.stages.prove.delays import reported_turns
from backprobe.stages.prove.observed import RESTARTS, Edge, observe
from backprobe.stages.prove.proof import Proof

OFF_BY_V = 0.5  # of the unit's diode and converter, which are not the wire
OFF_BY_SHARE = 0.03  # of its own measurement
MINUTE_S = 60.0
STANDING = (Key.ACCESSORY, Key.ON)  # where nothing turns or charges, so that the level is the battery's at rest


@dataclass(frozen=True, slots=True)
class SupplyLevel:
    """The lowest supply that was reported at a position [V], and until how long after key-off."""

    key: Key
    lowest_V: float
    minutes: float | None = None

    @property
    def spread_V(self) -> float:
        """How far the figure may lie from the wire's level, either way [V]."""
        return OFF_BY_V + OFF_BY_SHARE * self.lowest_V


def supply_levels(proof: Proof, *, from_min: float) -> tuple[SupplyLevel, ...]:
    """The supply as reported in accessory, at on, and from `from_min` minutes after the last off, where it was.

    None of it of a unit that was not heard, or whose serial was swapped.
    """
    if proof.alignment is None or proof.other_unit is not None:
        return ()
    standing = (level for key in STANDING for level in _standing(proof, key))
    return (*standing, *_at_rest(proof, from_min=from_min))


def _standing(proof: Proof, key: Key) -> Iterator[SupplyLevel]:
    """While the key stood at a position, until it was turned on."""
    keyed = [row for row in proof.script.rows if row.turn.key not in BODY_KEYS]
    spans = [(row.time_s, after.time_s) for row, after in pairwise(keyed) if str(row.turn.key) == str(key)]
    shown = [volts for start_s, end_s in spans for volts in _between(proof, start_s, end_s=end_s).values()]
    if shown:
        yield SupplyLevel(key, min(shown))


def _at_rest(proof: Proof, *, from_min: float) -> Iterator[SupplyLevel]:
    """From the last row of the script on, an opened door among them, until the key is turned or the unit restarts."""
    off = _last_off(proof)
    if off is None:
        return
    since_s = max(off.hi_s, proof.script.last_s)
    late = _between(proof, since_s + from_min * MINUTE_S, end_s=_rest_ends_s(proof, off))
    if late:
        yield SupplyLevel(Key.AFTER, min(late.values()), (max(late) - since_s) / MINUTE_S)


def _last_off(proof: Proof) -> Edge | None:
    """The report of the script's last turn, where that was an off."""
    if proof.alignment is None or not proof.script.turns:
        return None
    off = reported_turns(proof.alignment.best, proof.script).get(proof.script.turns[-1])
    return None if off is None or off.on else off


def _rest_ends_s(proof: Proof, off: Edge) -> float:
    kept = () if proof.alignment is None else proof.alignment.best.kept
    turned_on = (edge.lo_s for edge in observe(kept).edges if edge.on and edge.lo_s > off.hi_s)
    restarted = (time_s for time_s, report in kept if report.event in RESTARTS and time_s > off.hi_s)
    return min([*turned_on, *restarted], default=math.inf)


def _between(proof: Proof, start_s: float, *, end_s: float) -> dict[float, float]:
    """The volts that were reported from one moment to before another, by moment."""
    kept = () if proof.alignment is None else proof.alignment.best.kept
    return {t: report.supply_V for t, report in kept if report.supply_V is not None and start_s <= t < end_s}
