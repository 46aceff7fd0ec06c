"""What a whole bus log comes to: few figures, however long it is; all that findings are made of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from backprobe.stages.bus.key_cycle import KeyCycle


@dataclass(frozen=True, slots=True, kw_only=True)
class VoltsHeard:
    """The supply as the vehicle's computers report it [V, s from the first frame]."""

    samples: int
    first_V: float
    first_s: float
    lowest_V: float
    lowest_s: float
    highest_V: float
    step_s: float | None
    running_V: tuple[float, float] | None
    system_V: int


@dataclass(frozen=True, slots=True)
class VinHeard:
    """A VIN as it was sent, by which node, and how often."""

    text: str
    source: int
    times: int


@dataclass(frozen=True, slots=True)
class SilentNode:
    """A computer that talked all the time and fell silent while the key was on; `back_s` is when it talked again."""

    address: int
    silent_s: float
    back_s: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Health:
    """How the bus itself does.

    `errors_between` counts error frames between good frames, `errors_before` those before the first. Loads are shares
    of `bit_rate_kbit`, in the busiest second and on average, without stuffed bits and with the most of them.
    """

    nodes: int = 0
    eleven_bit: int = 0
    errors_before: int = 0
    errors_between: int = 0
    silent: tuple[SilentNode, ...] = ()
    bit_rate_kbit: int = 250
    busiest: tuple[float, float] | None = None
    average: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """Everything that a bus log says. Times are seconds from its first frame.

    `stamped_s` is the first frame's stamp where it counts from 1970. `distance` is the number of the quantity and its
    kilometres. `clock` is what the vehicle's own clock said (seconds since 1970 UTC), and when. `times_known` is False
    where the file's clock stands still.
    """

    file: str
    format: str
    frames: int
    length_s: float
    skipped: Mapping[str, int] = field(default_factory=dict)
    places: tuple[str, ...] = ()
    stamped_s: float | None = None
    times_known: bool = True
    vins: tuple[VinHeard, ...] = ()
    lost_messages: int = 0
    key: KeyCycle = field(default_factory=KeyCycle)
    volts: VoltsHeard | None = None
    rpm_max: float | None = None
    speed_max_kmh: float | None = None
    distance: tuple[int, float] | None = None
    clock: tuple[float, float] | None = None
    health: Health = field(default_factory=Health)
