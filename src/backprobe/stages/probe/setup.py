"""What is known of the vehicle and the meter before the first wire is touched."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.meter import DEFAULT_CAPTURES, Meter


@dataclass(frozen=True, slots=True, kw_only=True)
class Setup:
    """The vehicle under the probe and the meter in the hand.

    `system_V` is 12 or 24; `has_crank` is False for electric and hybrid vehicles; `has_accessory` is False where
    the key has no accessory position; `captures` is what the meter can hold; `unit_least_V` is the unit's own
    lowest supply voltage, None where no unit sheet was given; `cylinders` turns a ripple into cranking speed;
    `absent_keys` are positions that are never asked for: the table says that they do not exist on this vehicle, or
    nobody may bring them about. Without `has_crank` the crank is not demanded either.

    `to_come` are positions at which something else than the meter will show the supply that is meant; `loads` names
    the wires that may be read under a test lamp, as it is known what they feed: for a supply that is asked for. `meant`
    names the wire that somebody chose for a slot, by the slot's name: such wires are read in the order of the key.
    """

    system_V: int
    meter: Meter
    has_crank: bool = True
    has_accessory: bool = True
    captures: frozenset[Capture] = DEFAULT_CAPTURES
    unit_least_V: float | None = None
    cylinders: int | None = None
    absent_keys: frozenset[Key] = frozenset()
    to_come: frozenset[Key] = frozenset()
    loads: frozenset[str] = frozenset()
    meant: tuple[tuple[str, str], ...] = ()

    def to_come_for(self, wire: str) -> frozenset[Key]:
        """The positions at which nobody has to read a wire, as its level there will be shown."""
        return self.to_come if wire == self.meant_for("supply") else frozenset()

    def meant_for(self, slot: str) -> str | None:
        """The wire that somebody chose for a slot; None where nobody did."""
        return next((wire for name, wire in self.meant if name == slot), None)
