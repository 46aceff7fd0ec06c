"""Whether a fuse protects its wire, for one who asks for that alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from backprobe.errors import OptionError
from backprobe.findings import Finding, Verdict, worst
from backprobe.limits.fuse_lookup import ratings_of
from backprobe.limits.fuses import HOT_AMBIENT_C
from backprobe.limits.sourced import Insulation
from backprobe.physics.adiabatic import VALID_TO_S
from backprobe.physics.loop import short_circuit_A
from backprobe.physics.span import Span, exactly
from backprobe.stages.given import above_nothing, within
from backprobe.stages.join.ampacity import ampacity_A, ampacity_bases
from backprobe.stages.join.conductor import Conductor
from backprobe.stages.join.fuse_findings import breaking, load, wire_over_fuse
from backprobe.stages.join.fuse_opening import Fuse, Opening, fuse_of
from backprobe.stages.join.questions import HOT_AROUND_C, about_fuse, about_heat, about_wire
from backprobe.stages.join.short_circuit import TIME_DIGITS, Short, short_at, short_finding, worst_short
from backprobe.stages.join.wire_calc import wire_json

SYSTEMS_V = (12, 24)
LOOP_MOST_OHM, LOAD_MOST_A = 10_000.0, 100.0
COLDEST_C, HOTTEST_C = -60.0, 200.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FuseCase:
    """A fuse on a wire: the loop from battery to the unit's end and back, the surroundings, the load if it is known.

    `assumed` says what nobody gave and was taken.
    """

    fuse: Fuse
    conductor: Conductor
    insulation: Insulation
    loop_ohm: float
    system_V: int
    ambient_C: float = HOT_AMBIENT_C
    load_A: float | None = None
    assumed: tuple[str, ...] = ()

    @property
    def short_A(self) -> float:
        """The current of a dead short at the unit's end, at the system's nominal volts [A]."""
        return short_circuit_A(self.system_V, loop_ohm=self.loop_ohm)

    @property
    def carries_A(self) -> Span:
        """What the wire carries for good in these surroundings [A]."""
        return ampacity_A(self.conductor, self.insulation, ambient_C=self.ambient_C)

    @property
    def short_at_end(self) -> Short:
        """The dead short at the unit's end."""
        wire, k, carries_A = self.conductor, self.insulation.k, self.carries_A
        return short_at(self.short_A, self.fuse, conductor=wire, k=k, carries_A=carries_A)


@dataclass(frozen=True, slots=True, kw_only=True)
class FuseAnswer:
    """The findings on a fuse, what is asked back, and the largest fuse that would hold."""

    case: FuseCase
    findings: tuple[Finding, ...]
    largest_A: float | None
    questions: tuple[str, ...]
    notes: tuple[str, ...]

    @property
    def verdict(self) -> Verdict:
        """The worst of the findings."""
        return worst(finding.verdict for finding in self.findings)

    @property
    def next(self) -> str | None:
        """The one next thing to do: where a smaller fuse would hold, that; None where everything holds."""
        due = next((finding.next for finding in self.findings if finding.verdict is self.verdict), None)
        if due is None or self.largest_A is None or self.largest_A >= self.case.fuse.rating_A:
            return due
        return f"fit a fuse of {self.largest_A:g} A, the largest that holds on this wire and loop, or thicker wire"

    def as_json(self) -> dict[str, object]:
        """The answer as plain JSON values."""
        case, short = self.case, self.case.short_at_end
        fuse = case.fuse
        return {
            "ok": True,
            "verdict": str(self.verdict),
            "rating_A": fuse.rating_A,
            "type": fuse.type,
            "wire": {**wire_json(case.conductor), "insulation": case.insulation.name},
            "loop_ohm": case.loop_ohm,
            "system_V": case.system_V,
            "ambient_C": case.ambient_C,
            "short_A": round(case.short_A, 2),
            "clears_s": None if fuse.gates.only_faster_read else opening_json(short.opening),
            "clears_with_memory_s": opening_json(fuse.opening_with_memory(case.short_A)),
            "wire_withstands_s": round(short.named_s, TIME_DIGITS),
            "least_wire_withstands_s": round(short.withstands_s, TIME_DIGITS),
            "wire_carries_A": case.carries_A.rounded(2),
            "largest_fuse_A": self.largest_A,
            "findings": [finding.as_json() for finding in self.findings],
            "next": self.next,
            "unverified": unverified_json(fuse),
            "bases": [basis.warrant for basis in (case.insulation.basis, *ampacity_bases(case.conductor))],
            "notes": list(self.notes),
            "questions": list(self.questions),
        }


def opening_json(opening: Opening) -> dict[str, float] | None:
    """When a fuse opens as plain JSON values; None where it is not sure to open."""
    if opening.least_s is None or opening.most_s is None:
        return None
    return {"least": round(opening.least_s, TIME_DIGITS), "most": round(opening.most_s, TIME_DIGITS)}


def unverified_json(fuse: Fuse) -> list[dict[str, object]]:
    """The gates that are from memory, with what they rest on."""
    return [
        {"percent": gate.percent, "least_s": gate.least_s, "most_s": gate.most_s, "basis": gate.basis.warrant}
        for gate in fuse.gates.unverified
    ]


def fuse_answer(case: FuseCase) -> FuseAnswer:
    """The answer on a fuse. Raises OptionError for a loop, temperature or load that cannot be meant."""
    _check(case)
    questions = (
        *about_wire(case.conductor),
        *about_heat(case.ambient_C, hottest_C=HOT_AROUND_C),
        *about_fuse(case.fuse, case.carries_A, loop_ohm=case.loop_ohm, conductor=case.conductor),
    )
    return FuseAnswer(
        case=case,
        findings=tuple(fuse_findings(case)),
        largest_A=_largest_A(case),
        questions=questions,
        notes=tuple(_notes(case)),
    )


def fuse_findings(case: FuseCase) -> Iterator[Finding]:
    """Every finding on a fuse: a dead short, its wire, its breaking capacity and, where it is known, its load."""
    carries_A, wire, k = case.carries_A, case.conductor, case.insulation.k
    short = worst_short(case.short_A, case.fuse, conductor=wire, k=k, carries_A=carries_A)
    yield short_finding(short, case.fuse, at_end_A=case.short_A, insulation=case.insulation)
    yield wire_over_fuse(case.fuse, carries_A, ambient_C=case.ambient_C)
    yield breaking(case.short_A)
    if case.load_A is not None:
        yield load(case.fuse, exactly(case.load_A), ambient_C=case.ambient_C)


def _check(case: FuseCase) -> None:
    if case.system_V not in SYSTEMS_V:
        raise OptionError(f"a system of {case.system_V} V is not known: 12 or 24")
    above_nothing(case.loop_ohm, what="a loop", unit="Ω", most=LOOP_MOST_OHM)
    within(case.ambient_C, what="the surroundings' temperature", unit="°C", least=COLDEST_C, most=HOTTEST_C)
    if case.load_A is not None:
        above_nothing(case.load_A, what="a load", unit="A", most=LOAD_MOST_A)


def _largest_A(case: FuseCase) -> float | None:
    """The largest rating of the same type that would hold on this wire and loop [A]; None where none does."""
    for rating_A in reversed(ratings_of(case.fuse.type)):
        other = replace(case, fuse=fuse_of(rating_A, case.fuse.type), load_A=None)
        if all(finding.verdict is Verdict.HOLDS for finding in fuse_findings(other)):
            return rating_A
    return None


def _notes(case: FuseCase) -> Iterator[str]:
    yield from case.assumed
    yield f"short_A is at {case.system_V} V; with the engine running it is more and the fuse opens sooner"
    gates = case.fuse.gates
    if gates.only_faster_read:
        yield f"no times were read for type {case.fuse.type} above {gates.as_A:g} A: clears_s is left out"
    if gates.as_A > case.fuse.rating_A:
        yield f"times were read from {gates.as_A:g} A upwards; at the same amperes a smaller fuse opens no later"
    if case.short_A > max(case.fuse.gate_currents_A) and not gates.only_faster_read:
        last = gates.verified[-1].percent
        yield f"beyond {last:g} % of the rating no time was read: I²t is taken as there, our own model"
    if case.short_at_end.named_s > VALID_TO_S:
        yield f"wire_withstands_s is above {VALID_TO_S:g} s: reckoned without cooling, the wire stands longer"
