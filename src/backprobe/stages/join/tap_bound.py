"""The most that battery and wiring up to the tap resist, out of two readings: without a lamp and under it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from backprobe.evidence.keys import Key
from backprobe.evidence.meter import Meter
from backprobe.evidence.reading import Reading
from backprobe.physics.ground_drop import drop_ohm
from backprobe.physics.span import Span
from backprobe.stages.given import said
from backprobe.stages.join.measured import LOAD_SURE_TO, UNREAD_TAP_OHM
from backprobe.stages.probe.supply_findings import drop_spread_V

AT_REST = (Key.OFF, Key.ACCESSORY, Key.ON)  # the engine at rest: an alternator would make up for the load
OWN_SAG = "the battery's own sag is in it"
MEASURE_TAP = "measure it directly: the drop between the battery and the tap, under a load"


@dataclass(frozen=True, slots=True, kw_only=True)
class TapBound:
    """What battery and wiring up to the tap resist at most [Ω], and `because` in words.

    `ohm.low` is what wiring that works has at least: how much of the drop is the battery's own is not known.
    """

    ohm: Span
    because: str


def tap_bound(pairs: Iterable[tuple[Reading, Reading]], *, meter: Meter) -> TapBound | None:
    """The bound by the pair that fell most, the engine at rest; None where there is no such pair.

    A pair that rose by more than the meter's counts is none: no load lifts a supply. Of 12.62 V and 12.55 V at 1.5 A,
    read to ±(0.5 % + 2 counts), 70 ± 40.35 mV by 1.425 to 1.575 A are 46.7 mΩ, at most 77.4 mΩ.
    """
    at_rest = [pair for pair in pairs if pair[0].key in AT_REST and pair[1].load_A]
    if not at_rest:
        return None
    bare, loaded = max(at_rest, key=lambda pair: pair[0].volts - pair[1].volts)
    drop_mV = 1000.0 * (bare.volts - loaded.volts)
    spread_mV, load_A = 1000.0 * drop_spread_V(bare, loaded, meter=meter), loaded.load_A or 0.0
    if drop_mV + spread_mV <= 0.0:
        return None
    amperes = Span(load_A * (1.0 - LOAD_SURE_TO), load_A, load_A * (1.0 + LOAD_SURE_TO))
    ohm = drop_ohm(Span(drop_mV - spread_mV, drop_mV, drop_mV + spread_mV), load_A=amperes)
    because = (
        f"from the readings of {bare.wire}, key {bare.key}: {bare.typed} V, and {loaded.typed} V under {load_A:g} A, "
        f"up to the tap {said(1000.0 * ohm.likely)} mΩ, {said(1000.0 * ohm.high)} mΩ at most; {OWN_SAG}"
    )
    return TapBound(ohm=Span(min(UNREAD_TAP_OHM.low, ohm.low), ohm.likely, ohm.high), because=because)
