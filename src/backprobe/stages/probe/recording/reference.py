"""Which channel shows the battery."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median

from backprobe.evidence.recording import Channel, Recording
from backprobe.stages.probe.recording.switching import LONGEST_CRANK_S, Switching
from backprobe.stages.probe.recording.trace import Sight

BATTERY = "battery"
SUPPLY_LEAST_SHARE, SUPPLY_MOST_SHARE = 0.65, 1.6  # of the system voltage


def is_battery(channel: Channel) -> bool:
    """Whether the channel is the reference on the battery itself: named 'battery', in capitals or not."""
    return channel.name.strip().casefold() == BATTERY


def battery(channels: Sequence[Channel]) -> Channel | None:
    """The battery channel, or None."""
    return next((channel for channel in channels if is_battery(channel)), None)


def steadiest(recording: Recording) -> Channel | None:
    """The voltage that was never far from its highest for most of the time: a first guess at the reference."""
    return max(recording.voltages, key=lambda channel: channel.mean, default=None)


def reference(sight: Sight, switchings: dict[str, Switching], *, system_V: int) -> Channel | None:
    """The channel in whose level cranks are looked for: `battery`, else the wire that is live for longest.

    A wire that goes dead for as long as a crank lasts is taken only where there is no other. None where no channel
    ever stands at the level of a supply.
    """
    supplies = [channel for channel in sight.recording.voltages if _is_supply(channel, system_V=system_V)]
    named = battery(supplies)
    if named is not None or not supplies:
        return named
    return max(supplies, key=lambda channel: _steadiness(switchings[channel.name]))


def _is_supply(channel: Channel, *, system_V: int) -> bool:
    """Whether the channel, where it is live at all, stands at the level of a supply of that system."""
    least_V, most_V = SUPPLY_LEAST_SHARE * system_V, SUPPLY_MOST_SHARE * system_V
    live = [high for high in channel.envelope.highs if high >= 0.3 * system_V]
    return bool(live) and least_V <= median(live) <= most_V


def _steadiness(found: Switching) -> tuple[bool, bool, float]:
    """Better wires compare higher: not pulsed, neither dead nor live for the length of a crank, live for long."""
    dead = found.blinks(live=False, least_s=0.0, most_s=LONGEST_CRANK_S)
    live = found.blinks(live=True, least_s=0.0, most_s=LONGEST_CRANK_S)
    return not found.restless, not dead and not live, found.live_s
