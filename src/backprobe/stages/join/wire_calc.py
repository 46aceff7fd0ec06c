"""The resistance of a wire, for one who asks for that alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from backprobe.limits.wires import ISO_6722, ISO_6722_BASIS
from backprobe.physics.span import Span
from backprobe.physics.wire import at_temperature_ohm
from backprobe.stages.given import above_nothing, within
from backprobe.stages.join.conductor import Conductor
from backprobe.stages.join.questions import HOT_WIRE_C, about_heat, about_length, about_wire, equivalent_name

OHM_DIGITS, AREA_DIGITS, DROP_DIGITS = 7, 4, 4
LENGTH_MOST_M = 1000.0
COLDEST_C, HOTTEST_C = -60.0, 200.0
CURRENT_MOST_A = 1000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class WireAnswer:
    """What a wire resists: `single_ohm` for its length once [Ω], at `temperature_C`."""

    conductor: Conductor
    length_m: float
    temperature_C: float
    single_ohm: Span
    current_A: float | None
    questions: tuple[str, ...]
    notes: tuple[str, ...]

    @property
    def there_and_back_ohm(self) -> Span:
        """The same for the length twice: out to the unit and back through a ground lead of the same size."""
        return self.single_ohm.times(2.0)

    def as_json(self) -> dict[str, object]:
        """The answer as plain JSON values."""
        wire, single, back = self.conductor, self.single_ohm, self.there_and_back_ohm
        drop = None if self.current_A is None else back.times(self.current_A).rounded(DROP_DIGITS)
        return {
            "ok": True,
            "wire": wire_json(wire),
            "length_m": self.length_m,
            "temperature_C": self.temperature_C,
            "resistance_ohm": round(single.likely, OHM_DIGITS),
            "least_ohm": round(single.low, OHM_DIGITS),
            "most_ohm": round(single.high, OHM_DIGITS),
            "there_and_back_ohm": round(back.likely, OHM_DIGITS),
            "ohm_per_m": round(single.likely / self.length_m, OHM_DIGITS),
            "current_A": self.current_A,
            "drop_there_and_back_V": drop,
            "bases": [basis.warrant for basis in wire.bases],
            "notes": list(self.notes),
            "questions": list(self.questions),
        }


def wire_json(conductor: Conductor) -> dict[str, object]:
    """A wire's size as plain JSON values."""
    return {
        "name": conductor.name,
        "awg": conductor.gauge,
        "mm2": conductor.mm2,
        "solid": conductor.solid,
        "area_mm2": round(conductor.area_mm2, AREA_DIGITS),
        "least_area_mm2": round(conductor.least_area_mm2, AREA_DIGITS),
    }


def resistance_ohm(conductor: Conductor, length_m: float, *, temperature_C: float) -> Span:
    """The resistance of a length of wire, once [Ω], at `temperature_C`: least, the one to reckon with, most."""
    spans = conductor.ohm_per_m
    figures = (at_temperature_ohm(ohm, temperature_C) * length_m for ohm in (spans.low, spans.likely, spans.high))
    low, likely, high = figures
    return Span(low, likely, high)


def wire_answer(
    conductor: Conductor, *, length_m: float, temperature_C: float = 20.0, current_A: float | None = None
) -> WireAnswer:
    """The answer on a length of wire. Raises OptionError for a length, temperature or current that cannot be meant."""
    above_nothing(length_m, what="a length", unit="m", most=LENGTH_MOST_M)
    within(temperature_C, what="a wire's temperature", unit="°C", least=COLDEST_C, most=HOTTEST_C)
    if current_A is not None:
        above_nothing(current_A, what="a current", unit="A", most=CURRENT_MOST_A)
    return WireAnswer(
        conductor=conductor,
        length_m=length_m,
        temperature_C=temperature_C,
        single_ohm=resistance_ohm(conductor, length_m, temperature_C=temperature_C),
        current_A=current_A,
        questions=(
            *about_wire(conductor),
            *about_length(length_m),
            *about_heat(temperature_C, hottest_C=HOT_WIRE_C),
        ),
        notes=tuple(_notes(conductor, length_m=length_m, temperature_C=temperature_C)),
    )


def _notes(conductor: Conductor, *, length_m: float, temperature_C: float) -> Iterator[str]:
    if conductor.solid:
        yield "resistance_ohm is that of solid copper; most_ohm is what the standard allows"
    elif conductor.gauge is not None:
        yield "resistance_ohm is 2 % above solid copper of the gauge; most_ohm that of thin-stranded, tinned wire"
    else:
        yield "resistance_ohm is the most that plain fine-stranded wire of the size may have; most_ohm that of tinned"
    name = equivalent_name(conductor)
    if name is not None:
        yield f"{name}: a name, not an area"
    listed = None if conductor.mm2 is None else ISO_6722.get(conductor.mm2)
    if listed is not None:
        ohm = at_temperature_ohm(listed / 1000.0, temperature_C) * length_m
        yield f"{ISO_6722_BASIS.warrant}: {ohm:.4g} Ω at most; shown beside, not used"
