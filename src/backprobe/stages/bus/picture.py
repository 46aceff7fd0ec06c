"""What the picture of a key cycle from inside is made of."""

from __future__ import annotations

from itertools import pairwise

from backprobe.drawings.bus_cycle import BusCycle
from backprobe.drawings.trace import CrankSpan, KeySpan, LimitLine, Trace, Waveform
from backprobe.limits.lookup import limit
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.key_cycle import key_spans
from backprobe.stages.bus.listen import Listened

TITLE = "Key cycle seen from inside"
NOTE = "As the vehicle's own computers report it: what happens between two reports is not seen."
UNSEEN = "?"  # before the first turn that was seen


def cycle_content(listened: Listened, *, system_V: int) -> BusCycle:
    """The supply with its limit in the crank above, the engine speed with the key beneath, both over the whole log."""
    heard = listened.heard
    keys = spans(heard)
    cranks = tuple(CrankSpan(each.start_s, each.end_s) for each in heard.key.cranks)
    rule = limit("supply_in_crank", system_V=system_V)
    limits = (LimitLine(rule.value, f"supply {rule.side} {rule.value:g} V"),) if cranks else ()
    volts, rpm = Trace("supply", tuple(listened.volts.points)), Trace("engine speed", tuple(listened.rpm.points))
    upper = Waveform(
        traces=(volts,), limits=limits, cranks=cranks, keys=() if rpm.points else keys, title=TITLE, unit="V"
    )
    lower = Waveform(traces=(rpm,), keys=keys, cranks=() if volts.points else cranks, title=TITLE, unit="rpm")
    return BusCycle(
        volts=upper if volts.points else None,
        speed=lower if rpm.points else None,
        length_s=heard.length_s,
        title=f"{TITLE}: {heard.file}",
        note=NOTE,
    )


def spans(heard: Heard) -> tuple[KeySpan, ...]:
    """The key's positions for the strip, those of no length left out."""
    turns = [(time_s, str(key)) for time_s, key in key_spans(heard.key)]
    if not turns:
        return ()
    edges = [(0.0, UNSEEN), *turns, (heard.length_s, "")]
    found = (KeySpan(from_s, to_s, word) for (from_s, word), (to_s, _) in pairwise(edges))
    return tuple(span for span in found if span.end_s > span.start_s)
