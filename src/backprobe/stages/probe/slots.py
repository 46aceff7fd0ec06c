"""Is a wire fit for its slot: the supply, or the ignition?

A slot is a list of requirements, each a reading at a key position against a limit. The wire's verdict is the worst
of them; what was not measured is `open`. The limits are common practice, no source (limits/practice.py).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.findings import Limit, Side, Verdict, judge, worst
from backprobe.limits.lookup import limit
from backprobe.stages.probe.belief import Belief
from backprobe.stages.probe.crank_range import minimum_range
from backprobe.stages.probe.likelihood import is_loaded, position
from backprobe.stages.probe.roles import Role
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.spread import spread_V

PROOF = (Capture.MIN, Capture.LOGGED)
ENOUGH_TRIES = 2  # crank readings after which a better capture than was given is taken as not to be had


class SlotName(StrEnum):
    """What the unit needs a wire for."""

    SUPPLY = "supply"
    IGNITION = "ignition"


ROLE_OF = {SlotName.SUPPLY: Role.CONSTANT, SlotName.IGNITION: Role.IGNITION}
CRANK_LIMIT = {SlotName.SUPPLY: "supply_in_crank", SlotName.IGNITION: "ignition_in_crank"}


@dataclass(frozen=True, slots=True)
class Check:
    """One requirement of a slot against what was measured; all volts."""

    key: Key
    limit: Limit
    verdict: Verdict
    value_V: float | None = None
    low_V: float | None = None
    high_V: float | None = None
    capture: Capture | None = None
    minutes: float | None = None
    source: str | None = None  # who said the value, where it was not the meter


@dataclass(frozen=True, slots=True)
class Fitness:
    """A wire against one slot: its checks and their common verdict."""

    slot: SlotName
    checks: tuple[Check, ...]

    @property
    def verdict(self) -> Verdict:
        """The worst of the checks."""
        return worst(check.verdict for check in self.checks)

    @property
    def crank(self) -> Check | None:
        """The check in the crank, None for a vehicle that has none."""
        return next((check for check in self.checks if check.key is Key.CRANK), None)

    def missing(self) -> tuple[Key, ...]:
        """The key positions at which evidence is still missing."""
        return tuple(check.key for check in self.checks if check.verdict is Verdict.OPEN)


def fitness(belief: Belief, slot: SlotName, *, setup: Setup, rest_V: float) -> Fitness:
    """How the wire stands to a slot; `rest_V` is the battery's level before the crank where the wire shows none."""
    checks = [_steady(belief, key, name=name, setup=setup) for key, name in required(slot, setup)]
    if setup.has_crank:
        checks.append(_crank(belief, slot, setup=setup, rest_V=rest_V))
    return Fitness(slot, tuple(checks))


def required(slot: SlotName, setup: Setup) -> tuple[tuple[Key, str], ...]:
    """The key positions a slot must be proven at outside the crank, each with 'live' or 'dead'.

    Without a crank (electric, hybrid) 'on' alone proves nothing: an ignition is live in READY (`running`) too, and
    dead on the charger and after. Only what a vehicle can truly lack is left out: accessory, and the charger.
    """
    lacking = {Key.ACCESSORY: not setup.has_accessory, Key.CHARGING: setup.has_crank}
    if slot is SlotName.SUPPLY:
        wanted = [(key, "live") for key in (Key.OFF, Key.ACCESSORY, Key.ON, Key.RUNNING, Key.AFTER)]
    else:
        after = () if setup.has_crank else (Key.AFTER, Key.CHARGING)
        wanted = [(key, "dead") for key in (Key.OFF, Key.ACCESSORY, *after)]
        wanted += [(key, "live") for key in (Key.ON, Key.RUNNING)]
    return tuple((key, state) for key, state in wanted if not lacking.get(key, False) and not _absent(key, setup))


def _absent(key: Key, setup: Setup) -> bool:
    return key in (Key.ACCESSORY, Key.CHARGING) and key in setup.absent_keys


def _steady(belief: Belief, key: Key, *, name: str, setup: Setup) -> Check:
    """One requirement at a standing key position: the reading that stands worst to it.

    Whether a wire is dead is settled under a load where one was put on: stray volts on a meter of 10 MΩ vanish then.
    A meter's readings go before what another source says, unless that is too low whatever it may be off by.
    """
    against = limit(name, system_V=setup.system_V)
    found_there = belief.at(key)
    metered = tuple(reading for reading in found_there if reading.source is None)
    told = tuple(reading for reading in found_there if reading.source is not None)
    readings = (*metered, *(r for r in told if r.volts + spread_V(r, setup.meter) < against.value)) if metered else told
    loaded = tuple(reading for reading in readings if is_loaded(reading)) if against.side is Side.AT_MOST else ()
    found = [_steady_check(reading, key, against=against, setup=setup) for reading in loaded or readings]
    return worst_of(found) if found else Check(key, against, Verdict.OPEN)


def _steady_check(reading: Reading, key: Key, *, against: Limit, setup: Setup) -> Check:
    spread = spread_V(reading, setup.meter)
    low, high = reading.volts - spread, reading.volts + spread
    verdict = judge(against, reading.volts, low=low, high=high)
    return Check(key, against, verdict, reading.volts, low, high, reading.capture, reading.after_min, reading.source)


def _crank(belief: Belief, slot: SlotName, *, setup: Setup, rest_V: float) -> Check:
    """The crank: proven only by a MIN hold or a fast recorder, disproven by anything outside the limit."""
    against = limit(CRANK_LIMIT[slot], system_V=setup.system_V)
    found = [r for r in belief.at(Key.CRANK) if r.capture is not Capture.MAX]
    level = belief.volts(Key.ON) or belief.volts(Key.OFF)
    rest = level if level is not None and level > rest_V / 2.0 else rest_V
    checks = [_crank_check(reading, against, setup=setup, rest_V=rest) for reading in found]
    failing = [check for check in checks if check.verdict is Verdict.FAILS]
    if failing:
        return _worst_check(failing) or failing[0]
    logged = [check for check in checks if check.capture is Capture.LOGGED]
    proving = logged or [check for check in checks if check.capture in PROOF]
    return _worst_check(proving) or _worst_check(checks) or Check(Key.CRANK, against, Verdict.OPEN)


def _crank_check(reading: Reading, against: Limit, *, setup: Setup, rest_V: float) -> Check:
    found = minimum_range(
        reading.volts,
        reading.capture,
        rest_V=rest_V,
        setup=setup,
        count_V=reading.count_V,
    )
    verdict = judge(against, found.shown_V, low=found.low_V, high=found.high_V)
    if reading.capture not in PROOF and verdict is not Verdict.FAILS:
        verdict = Verdict.OPEN
    return Check(Key.CRANK, against, verdict, found.shown_V, found.low_V, found.high_V, reading.capture)


def _worst_check(checks: Sequence[Check]) -> Check | None:
    return worst_of(checks) if checks else None


def worst_of(checks: Sequence[Check]) -> Check:
    """The check with the least room: by verdict, then by how far its range leaves the limit."""
    order = (Verdict.FAILS, Verdict.OPEN, Verdict.THIN, Verdict.HOLDS)
    return min(checks, key=lambda check: (order.index(check.verdict), _room_V(check)))


def _room_V(check: Check) -> float:
    """How far inside the limit the worst value of the range lies [V]."""
    ends = [check.limit.margin(value) for value in (check.low_V, check.high_V) if value is not None]
    return min(ends, default=0.0)


def better_capture_to_be_had(belief: Belief, setup: Setup) -> bool:
    """Whether a fast recorder could still settle a thin crank: the meter at hand has one and was not tried in vain."""
    tries = [r for r in belief.readings if position(r) is Key.CRANK and r.capture is not Capture.MAX]
    had = any(reading.capture is Capture.LOGGED for reading in tries)
    return Capture.LOGGED in setup.captures and not had and len(tries) < ENOUGH_TRIES


def choosable(found: Fitness, belief: Belief, *, setup: Setup) -> bool:
    """Whether a wire of the right role may be tapped on this evidence.

    `holds` always; `thin` only where no better capture can be had and the range ends within 1 V (24 V: 2 V) of
    the crank limit; a thin reading at a standing key position is never enough.
    """
    if found.verdict is Verdict.HOLDS:
        return True
    crank = found.crank
    if found.verdict is not Verdict.THIN or crank is None or crank.low_V is None:
        return False
    if any(check.verdict is Verdict.THIN for check in found.checks if check is not crank):
        return False
    near_V = setup.system_V / 12.0
    return crank.low_V >= crank.limit.value - near_V and not better_capture_to_be_had(belief, setup)
