"""What is asked back where a figure can be meant otherwise than it was typed."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.limits.fuse_lookup import ratings_of
from backprobe.limits.wires import EQUIVALENTS, IEC_60228, ISO_6722
from backprobe.physics.span import Span
from backprobe.stages.given import said
from backprobe.stages.join.conductor import Conductor, gauge_name
from backprobe.stages.join.fuse_opening import Fuse

LONG_LEAD_M = 30.0
THICK_GAUGE, THICK_MM2 = 6, 10.0
LOOP_LEAST_OHM, LOOP_MOST_OHM = 0.005, 20.0
FUSE_OVER_WIRE = 3.0
HOT_WIRE_C, HOT_AROUND_C = 105.0, 90.0


def about_wire(conductor: Conductor) -> Iterator[str]:
    """Questions on a size: one that nobody makes, or a battery cable where a lead is likelier."""
    gauge, mm2 = conductor.gauge, conductor.mm2
    if gauge is not None and gauge <= THICK_GAUGE:
        meant = f": was --mm2 {gauge} meant?" if gauge > 0 else ": is it meant?"
        yield f"{gauge_name(gauge)} has {conductor.area_mm2:.3g} mm² and is a battery cable{meant}"
    if mm2 is not None and mm2 not in {*IEC_60228, *ISO_6722}:
        yield f"{mm2:g} mm² is no usual size{_as_gauge(mm2)}"
    elif mm2 is not None and mm2 >= THICK_MM2:
        yield f"{mm2:g} mm² is a battery cable{_as_gauge(mm2)}"


def _as_gauge(mm2: float) -> str:
    return f": was --awg {mm2:g} meant?" if mm2 % 2 == 0 and THICK_MM2 <= mm2 <= 26 else ": is it meant?"


def about_length(length_m: float) -> Iterator[str]:
    """Questions on a length."""
    if length_m > LONG_LEAD_M:
        yield f"{length_m:g} m is longer than any lead in a vehicle: are these metres?"


def about_heat(temperature_C: float, *, hottest_C: float) -> Iterator[str]:
    """A question on a temperature above `hottest_C`, which few wires see.

    >>> list(about_heat(140.0, hottest_C=100.0))
    ['140 °C is hotter than most vehicle wire may get: are these °F? 140 °F are 60 °C']
    """
    if temperature_C > hottest_C:
        as_C = (temperature_C - 32.0) * 5.0 / 9.0
        hot = f"{temperature_C:g} °C is hotter than most vehicle wire may get"
        yield f"{hot}: are these °F? {temperature_C:g} °F are {as_C:.0f} °C"


def about_fuse(fuse: Fuse, carries_A: Span, *, loop_ohm: float, conductor: Conductor) -> Iterator[str]:
    """Questions on a rating and on a loop."""
    if fuse.rating_A not in ratings_of(fuse.type):
        yield f"no blade fuse of type {fuse.type} is rated {fuse.rating_A:g} A: what stands on it?"
    if fuse.rating_A > FUSE_OVER_WIRE * carries_A.likely:
        wire = f"{conductor.name}, which carries {said(carries_A.likely)} A"
        yield f"a {fuse.rating_A:g} A fuse on {wire}: is that meant?"
    if loop_ohm < LOOP_LEAST_OHM:
        yield f"a loop of {loop_ohm:g} Ω is less than a battery alone has: is it ohms?"
    if loop_ohm > LOOP_MOST_OHM:
        yield f"a loop of {loop_ohm:g} Ω: are these milliohms?"


def equivalent_name(conductor: Conductor) -> str | None:
    """How wiring diagrams name the size in the other system, with the true area; None where they have no name."""
    if conductor.mm2 is not None:
        gauge = EQUIVALENTS.get(conductor.mm2)
        return None if gauge is None else f"wiring diagrams write {conductor.mm2:g} mm² for {gauge_name(gauge)}"
    sizes = [mm2 for mm2, gauge in EQUIVALENTS.items() if gauge == conductor.gauge]
    true = f"{conductor.area_mm2:.3g} mm²"
    return f"wiring diagrams write {sizes[0]:g} mm² for {conductor.name}, which has {true}" if sizes else None
