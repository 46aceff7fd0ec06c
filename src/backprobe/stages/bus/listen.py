"""A whole bus log, and what it comes to."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.frame import Frame
from backprobe.formats import j1939
from backprobe.formats.bus_faults import BusFaults
from backprobe.stages.bus.engine import EngineTrack
from backprobe.stages.bus.envelope import EnvelopeTrack
from backprobe.stages.bus.heard import Health, Heard, SilentNode, VinHeard, VoltsHeard
from backprobe.stages.bus.key_cycle import BEGINS_S, WAKES_S, KeyCycle, KeyOff, first_offs, key_offs
from backprobe.stages.bus.listener import CUT, LOST, Listener
from backprobe.stages.bus.nodes import OFF_BOARD, SILENCE_S, LoadTrack, NodeTrack
from backprobe.stages.bus.steady import steady
from backprobe.stages.bus.volts import VoltTrack

ELEVEN_BIT, IMPLAUSIBLE = "eleven_bit", "implausible_voltage"
FROM_1970_S = 1e9  # stamps from here on count from 1970 (this is September 2001)
BIT_RATES_KBIT = (250, 500)
FULL = 0.95  # a bus cannot carry more: then it runs at the higher rate
MOST_SILENT = 32


@dataclass(frozen=True, slots=True, kw_only=True)
class Listened:
    """What a log comes to, and its supply and engine speed against time for the picture."""

    heard: Heard
    volts: EnvelopeTrack
    rpm: EnvelopeTrack


def listen(frames: Iterable[Frame], *, faults: BusFaults, form: str) -> Listened:
    """What the frames of a log come to; `form` names its format. Raises UnreadableError where there is not one frame.

    >>> from backprobe.formats.candump_text import read_candump
    >>> faults = BusFaults("a.log")
    >>> frames = read_candump(["(0.0) can0 0CF00400#FFFFFFA00FFFFFFF"], faults=faults)
    >>> listen(frames, faults=faults, form="candump").heard.rpm_max
    500.0
    """
    listener = Listener(faults)
    take = listener.take
    for frame in steady(frames, faults=faults):
        take(frame)
    return finished(listener, form=form)


def finished(listener: Listener, *, form: str) -> Listened:
    """What a listener has heard when the log ends."""
    if not listener.frames:
        raise _nothing(listener.faults, errors=listener.errors[0])
    engine = _ended(listener)
    cycle = key_cycle(listener, engine)
    heard = Heard(
        file=listener.faults.file,
        format=form,
        frames=listener.frames,
        length_s=listener.last_s,
        skipped=_skipped(listener),
        places=tuple(str(each) for each in listener.faults.places),
        stamped_s=listener.begun_s if listener.begun_s >= FROM_1970_S else None,
        vins=tuple(VinHeard(text, source, times) for (text, source), times in listener.vins.most_common()),
        lost_messages=listener.lost[LOST],
        key=cycle,
        volts=volts_heard(listener.volts),
        rpm_max=None if engine is None else engine.highest_rpm,
        speed_max_kmh=listener.speed_kmh,
        distance=_distance(listener),
        clock=listener.clock,
        health=_health(listener, cycle),
    )
    return Listened(heard=heard, volts=listener.volt_points, rpm=listener.rpm_points)


def _nothing(faults: BusFaults, *, errors: int) -> UnreadableError:
    if faults.places:
        first = faults.places[0]
        return UnreadableError(first.place, f"{first.expected} (not one frame can be read)")
    held = f"; this holds {errors} error frames and nothing else" if errors else ""
    return UnreadableError(Place(faults.file), f"a bus log with at least one frame in it{held}")


def _ended(listener: Listener) -> EngineTrack | None:
    """The engine, with what was still going on when the log ended."""
    engine = listener.engine
    for node in listener.nodes.values():
        node.finish()
    for load in listener.loads.values():
        load.finish()
    if engine is not None:
        attempts = len(engine.attempts)
        engine.finish()
        if len(engine.attempts) > attempts:
            listener.cranked(engine)
    for lost in listener.transport.left():
        listener.lost[CUT if listener.last_s - lost.time_s < SILENCE_S else LOST] += 1
    return engine


def key_cycle(listener: Listener, engine: EngineTrack | None) -> KeyCycle:
    """The key's turns: from the keyswitch's own voltage where it is sent, else from who wakes and who falls silent."""
    at_start = bool(engine) and any(appeared_s <= BEGINS_S for appeared_s, _ in listener.wakes_s)
    ran = engine is not None and engine.ran_at_start
    ons, offs = _woken(listener), key_offs(engine, _own(listener), end_s=listener.last_s)
    if any(not on for _, on in listener.keyswitch):
        at_start = listener.keyswitch[0][1]
        ons = tuple(time_s for time_s, on in listener.keyswitch if on and time_s > BEGINS_S)
        offs = tuple(KeyOff(time_s, time_s) for time_s, on in listener.keyswitch[1:] if not on)
    return KeyCycle(
        on_at_start=at_start,
        ons_s=ons,
        cranks=tuple(listener.cranks),
        stops_s=() if engine is None else tuple(engine.stops_s),
        offs=first_offs(offs, ons),
        end_s=listener.last_s,
        runs_at_start=ran,
    )


def _own(listener: Listener) -> tuple[NodeTrack, ...]:
    """The vehicle's own computers: a service tool at the diagnostic plug comes and goes as it likes."""
    return tuple(node for node in listener.nodes.values() if node.address not in OFF_BOARD)


def _woken(listener: Listener) -> tuple[float, ...]:
    """When the bus woke with the engine's computer; not where the log merely begins or goes on with the engine running.

    The engine's computer takes a moment; the key was turned when the first frame of that stretch of talk came.
    """
    engine = listener.engine
    ran = set() if engine is None else set(engine.ran_when_heard_s)
    return tuple(
        burst_s if appeared_s - burst_s <= WAKES_S else appeared_s
        for appeared_s, burst_s in listener.wakes_s
        if appeared_s > BEGINS_S and appeared_s not in ran
    )


def _skipped(listener: Listener) -> dict[str, int]:
    """How much was passed over, by reason; reasons without any are not named."""
    counts = Counter(listener.faults.counts)
    counts.update(listener.lost)
    counts[ELEVEN_BIT] += listener.eleven_bit
    counts[IMPLAUSIBLE] += listener.volts.implausible
    return {reason: count for reason, count in sorted(counts.items()) if count}


def volts_heard(volts: VoltTrack) -> VoltsHeard | None:
    """The supply over the whole log; None where nobody reported it."""
    if not volts.samples:
        return None
    return VoltsHeard(
        samples=volts.samples,
        first_V=volts.first_V,
        first_s=volts.first_s,
        lowest_V=volts.lowest_V,
        lowest_s=volts.lowest_s,
        highest_V=volts.highest_V,
        step_s=volts.step_s,
        running_V=volts.running_V,
        system_V=volts.system_V,
    )


def _distance(listener: Listener) -> tuple[int, float] | None:
    """The number of the quantity and its kilometres, the finer one where both are sent."""
    for quantity in (j1939.DISTANCE_KM_FINE, j1939.DISTANCE_KM):
        if quantity.spn in listener.distance:
            return quantity.spn, listener.distance[quantity.spn]
    return None


def _health(listener: Listener, cycle: KeyCycle) -> Health:
    loads = [load for load in listener.loads.values() if load.busy_seconds]
    fullest = max(loads, key=lambda load: load.busiest_most, default=None)
    rate_kbit = BIT_RATES_KBIT[0]
    if fullest is not None and fullest.busiest_least > FULL * rate_kbit * 1000:
        rate_kbit = BIT_RATES_KBIT[1]
    return Health(
        nodes=len(listener.nodes),
        eleven_bit=listener.eleven_bit,
        errors_before=listener.errors[0],
        errors_between=listener.errors[1],
        silent=_silent(_own(listener), cycle),
        bit_rate_kbit=rate_kbit,
        busiest=None if fullest is None else _shares(fullest, rate_kbit=rate_kbit, busiest=True),
        average=None if fullest is None else _shares(fullest, rate_kbit=rate_kbit, busiest=False),
    )


def _shares(load: LoadTrack, *, rate_kbit: int, busiest: bool) -> tuple[float, float]:
    """The load without stuffed bits and with the most of them."""
    bits = (load.busiest_least, load.busiest_most) if busiest else (load.least_bits, load.most_bits)
    seconds = 1 if busiest else load.busy_seconds
    low, high = (round(each / seconds / (rate_kbit * 1000), 4) for each in bits)
    return low, high


def _silent(nodes: Sequence[NodeTrack], cycle: KeyCycle) -> tuple[SilentNode, ...]:
    """Who fell silent while the key was on, though it had talked all the time."""
    found: list[SilentNode] = []
    for node in nodes:
        for spell, later in zip(node.spells, [*node.spells[1:], None], strict=True):
            if not spell.steady or spell.to_s >= cycle.end_s - SILENCE_S or _goes_off(cycle, spell.to_s):
                continue
            found.append(SilentNode(node.address, spell.to_s, None if later is None else later.from_s))
    return tuple(sorted(found, key=lambda each: each.silent_s)[:MOST_SILENT])


def _goes_off(cycle: KeyCycle, at_s: float) -> bool:
    """Whether the key went off then, or was off already: from the first silence until it is on again."""
    for off in cycle.offs:
        again_s = min((on_s for on_s in cycle.ons_s if on_s > off.off_s), default=cycle.end_s)
        if off.silent_s <= at_s <= again_s:
            return True
    on_s = 0.0 if cycle.on_at_start else min(cycle.ons_s, default=0.0)
    return at_s < on_s
