"""The probe's answer as plain JSON values, and the whole way from evidence to it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from backprobe.errors import Skipped
from backprobe.evidence.keys import Key
from backprobe.evidence.reading import ReadingsTable, WireFacts
from backprobe.evidence.recording import Recording
from backprobe.stages.probe.crank_range import MODELLED_HOLD_MS, hidden_V
from backprobe.stages.probe.reasons import reasons
from backprobe.stages.probe.recording.view import RecordingView, look, readings_from
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.wires import ProbeResult, Wire, judge_wires

PROBABILITY_DIGITS = 3
SKIPPED_SHOWN = 20
REFERENCE = "battery"  # the channel that others are compared with, never a candidate


@dataclass(frozen=True, slots=True)
class Answer:
    """What a readings table or a recording came to; `view` is None for a table."""

    result: ProbeResult
    facts: Mapping[str, WireFacts]
    skipped: tuple[Skipped, ...]
    skipped_count: int
    view: RecordingView | None = None

    def as_json(self) -> dict[str, object]:
        """The answer as plain JSON values; figures rounded to their declared digits."""
        result = self.result
        answer: dict[str, object] = {
            "ok": True,
            "system_V": result.setup.system_V,
            "wires": [self._wire(wire) for wire in result.wires],
            "choice": {"supply": result.supply, "ignition": result.ignition},
            "next": self._next(),
            "skipped": {"count": self.skipped_count, "first": [str(s) for s in self.skipped[:SKIPPED_SHOWN]]},
        }
        if self.view is not None:
            answer.update(self.view.as_json())
        return answer

    def reasons(self, wire: Wire) -> tuple[str, ...]:
        """Why `wire` was judged as it was, in sentences."""
        return reasons(wire, self.facts.get(wire.name), setup=self.result.setup)

    def _wire(self, wire: Wire) -> dict[str, object]:
        return {
            "wire": wire.name,
            "role": str(wire.role),
            "probability": round(wire.probability, PROBABILITY_DIGITS),
            "verdict": str(wire.verdict),
            "tap": wire.tap,
            "reasons": list(self.reasons(wire)),
        }

    def _next(self) -> dict[str, object] | None:
        upcoming = self.result.next
        if upcoming is None:
            return None
        return {
            "wire": upcoming.wire,
            "key": str(upcoming.key),
            "capture": str(upcoming.capture),
            "why": upcoming.why,
            **({"loaded": True} if upcoming.loaded else {}),
        }


def answer_table(table: ReadingsTable, setup: Setup) -> Answer:
    """The answer to a readings table; positions it says do not exist are left out of what is asked."""
    fitted = without_absent(setup, table.absent_keys)
    return Answer(judge_wires(table, fitted), table.facts, table.skipped, len(table.skipped))


def answer_recording(recording: Recording, setup: Setup) -> Answer:
    """The answer to a recording: its channels are judged as wires by what they show at each key position.

    A channel sampled too slowly for the inrush counts as a MIN hold of 100 ms, however quick the meter's own hold is.
    """
    meter = replace(setup.meter, min_capture_ms=max(setup.meter.min_capture_ms, MODELLED_HOLD_MS))
    slow = replace(setup, meter=meter)
    view = look(recording, slow, hidden_V=_deeper_V(slow))
    names = tuple(channel.name for channel in recording.voltages if channel.name.casefold() != REFERENCE)
    readings = tuple(reading for reading in readings_from(view) if reading.wire in names)
    table = ReadingsTable(readings=readings, wires=names)
    return Answer(judge_wires(table, slow), {}, recording.skipped, recording.skipped_count, view)


def _deeper_V(setup: Setup) -> Callable[[float, float], float]:
    """The model of the MIN hold in the form that a recording's analysis asks for."""
    return lambda shown_V, rest_V: hidden_V(shown_V, rest_V, system_V=setup.system_V, hold_ms=MODELLED_HOLD_MS)


def without_absent(setup: Setup, absent: frozenset[Key]) -> Setup:
    """The setup with the key positions that the table says do not exist on this vehicle."""
    return replace(
        setup,
        absent_keys=setup.absent_keys | absent,
        has_crank=setup.has_crank and Key.CRANK not in absent,
        has_accessory=setup.has_accessory and Key.ACCESSORY not in absent,
    )
