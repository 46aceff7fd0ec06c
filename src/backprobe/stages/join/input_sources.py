"""What drives one of the unit's inputs: one wire or several, through a diode or a relay, with or without a coil."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.join_sheet import SignalLevels
from backprobe.evidence.unit_sheet import Pull, UnitInput
from backprobe.findings import Finding
from backprobe.physics.span import Span
from backprobe.stages.join.matter import either

DIODE, RELAY, NOTHING = "diode", "relay", "none"
DIODE_V = Span(0.3, 0.6, 1.0)  # our own model: what a diode of either kind takes at an input's current
APART = {DIODE: "a diode each keeps them apart", RELAY: "a relay keeps them apart"}
SPIKE = "hundreds of volts when it lets go"
PRACTICE = "common practice, no source"


def follows_diode(level: SignalLevels) -> bool:
    """Whether the input sits behind diodes: then it is open whenever none of its wires is on."""
    return level.isolation == DIODE


def circuit(entry: UnitInput, level: SignalLevels) -> Iterator[Finding | str]:
    """The finding on what hangs on an input, or what is missing for it."""
    missing, faults = tuple(_missing(entry, level)), tuple(_faults(entry, level))
    yield from missing
    if missing and not faults:
        return
    yield either(
        f"join_{entry.name}_circuit",
        f"What hangs on '{entry.name}'",
        faults=faults,
        fine="; ".join((*_fine(entry, level), f"nothing that was written of it speaks against it ({PRACTICE})")),
        then="put in what is named, then prove the input by a report of the unit",
    )


def bridged(level: SignalLevels) -> str | None:
    """In words that two wires meet at an input with nothing between them; None where they do not."""
    if len(level.sources) < 2 or level.isolation in APART:
        return None
    joined = " and ".join(level.sources)
    return f"'{level.lead}' joins {joined} with nothing between them" if level.isolation == NOTHING else None


def _missing(entry: UnitInput, level: SignalLevels) -> Iterator[str]:
    if len(level.sources) > 1 and level.isolation is None:
        yield f"isolation of '{entry.name}', which follows {' and '.join(level.sources)}: diode, relay or none"
    if (level.isolation == RELAY or (level.coil and not level.isolated)) and level.diode is None:
        yield f"diode of '{entry.name}': whether the relay's coil has a flyback diode"
    if _pull_wanted(entry, level) is not None and _pull(entry, level) is None:
        yield f"pull of '{entry.name}' in the unit's sheet, or pulled: the wire is open when off"


def _faults(entry: UnitInput, level: SignalLevels) -> Iterator[str]:
    joined = bridged(level)
    if joined:
        yield joined
    wanted, pull = _pull_wanted(entry, level), _pull(entry, level)
    if wanted is not None and pull is not None and pull != wanted:
        yield f"the wire is open when off and the input is not pulled {wanted}: it floats"
    if level.isolation == RELAY and level.diode is False:
        yield f"the relay that keeps the wires apart has no flyback diode at its coil: {SPIKE}"
    elif level.coil and level.diode is False and not level.isolated:
        yield f"a coil without a flyback diode hangs on it: {SPIKE}"
    kind = active(entry, level)
    if level.active is not None and kind is not None and kind != level.active:
        yield f"the unit is set to active {level.active}, and the signal is active {kind}"


def _fine(entry: UnitInput, level: SignalLevels) -> Iterator[str]:
    if len(level.sources) > 1 and level.isolation in APART:
        yield f"{' and '.join(level.sources)}: {APART[level.isolation]}"
    wanted = _pull_wanted(entry, level)
    if wanted is not None:
        where = "by a resistor that was put in" if level.pulled else "inside the unit"
        yield f"open when off, pulled {wanted} {where}"
    kind = active(entry, level)
    if kind is not None:
        yield f"active {kind}"


def active(entry: UnitInput, level: SignalLevels) -> str | None:
    """Whether the signal is on when it is high or when it is low; None where its levels do not say."""
    on_V, off_V = level.on_V, level.off_V
    if on_V is not None and off_V is not None and on_V != off_V:
        return "high" if on_V > off_V else "low"
    if on_V is not None and level.floats_off:
        return "high" if on_V >= entry.high_least_V else "low"
    return None


def _pull_wanted(entry: UnitInput, level: SignalLevels) -> str | None:
    """Where an input must be pulled while its wire is open: away from where the signal takes it."""
    if not (level.floats_off or follows_diode(level)) or level.on_V is None:
        return None
    return str(Pull.UP if level.on_V < entry.high_least_V else Pull.DOWN)


def _pull(entry: UnitInput, level: SignalLevels) -> str | None:
    """Where it is pulled: by a resistor that was put in, else inside the unit; None where nobody said."""
    return level.pulled or (None if entry.pull is None else str(entry.pull))
