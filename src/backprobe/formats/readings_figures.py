"""The figures in a readings table, judged for reason: volts, minutes since key-off, amperes of load.

Volts: down to -0.5 V is kept, for a meter's zero may be off and a lead may pick up a little ground offset
(common practice, no source); below that the probes are the wrong way round. Upwards the long-term overvoltage of
ISO 16750-2 4.3 is the most that a wire of a working vehicle can show: 18 V in a 12 V system (second-hand digest
of the standard), 36 V in a 24 V system (from memory, unverified).
"""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.keys import Key
from backprobe.formats.figures import VOLT_UNITS, read_figure

LEAST_V = -0.5
MOST_V_PER_SYSTEM_V = 1.5  # 18 V of 12 V, 36 V of 24 V
MOST_LOAD_A = 20.0  # a meter's current range ends at 10 A, 20 A for some seconds: common practice, no source
MOST_AFTER_MIN = 100_000.0  # some two months
OFF_WITHIN_MIN = 1.0  # 'off' is a reading within a minute of key-off
AFTER_MIN = 10.0  # 'after' without minutes means this


class RefusedError(Exception):
    """A cell that cannot be taken; the message is what was expected there. Never leaves this package."""

    def __init__(self, expected: str) -> None:
        super().__init__(expected)
        self.expected = expected


@dataclass(frozen=True, slots=True)
class Volts:
    """A voltage: `value_V`, one count of its last digit `count_V`, and the figure as typed."""

    value_V: float
    count_V: float
    typed: str


def read_volts(text: str, *, system_V: int) -> Volts:
    """The voltage in a cell such as '12.30', '12,3 V' or '350mV'; raises RefusedError where it cannot be true.

    `typed` is the figure as written; 'V' behind it is left out, any other unit stays.

    >>> read_volts("350 mV", system_V=12)
    Volts(value_V=0.35, count_V=0.001, typed='350 mV')
    """
    figure = read_figure(text)
    if figure is None:
        raise RefusedError("a figure in volts such as 12.30, or na where the vehicle lacks this position")
    shift = VOLT_UNITS.get(figure.unit.lower(), 0 if not figure.unit else None)
    if shift is None:
        raise RefusedError(f"direct voltage in V or mV, not {figure.unit!r}")
    value_V = figure.value(shift)
    _refuse_unreasonable(value_V, system_V)
    return Volts(value_V, figure.count(shift), _as_typed(text, "" if shift else figure.unit))


def _as_typed(text: str, unit: str) -> str:
    return text.strip().removesuffix(unit).rstrip()


def _refuse_unreasonable(value_V: float, system_V: int) -> None:
    most_V = MOST_V_PER_SYSTEM_V * system_V
    if LEAST_V <= value_V <= most_V:
        return
    if -most_V <= value_V < LEAST_V:
        raise RefusedError(f"not below {LEAST_V} V: the probes the wrong way round?")
    if most_V < value_V <= 36.0:
        raise RefusedError(f"at most {most_V:.0f} V in a {system_V} V system: a 24 V vehicle? use --system 24")
    in_mV = ": millivolts? write mV behind the figure" if 1000 <= value_V <= most_V * 1000 else ""
    raise RefusedError(f"{LEAST_V} to {most_V:.0f} V in a {system_V} V system{in_mV}")


def read_after_min(text: str, key: Key) -> float | None:
    """Minutes since key-off; 10 where the key is `after` and nothing is written; None for the other positions."""
    if not text:
        return AFTER_MIN if key is Key.AFTER else None
    minutes = _amount(text, "minutes since key-off", units=("min", "minutes"), most=MOST_AFTER_MIN)
    if key is Key.AFTER:
        return minutes
    if minutes > OFF_WITHIN_MIN or (minutes and key is not Key.OFF):
        raise RefusedError(f"the key position 'after' where after_min is given; {key} stands there")
    return None


def read_load_A(text: str) -> float | None:
    """The load on the wire in amperes; None where nothing is written."""
    return _amount(text, "the load in amperes", units=("a", "amp", "amps"), most=MOST_LOAD_A) if text else None


def _amount(text: str, what: str, *, units: tuple[str, ...], most: float) -> float:
    figure = read_figure(text)
    if figure is None or figure.unit.lower() not in ("", *units) or not 0 <= figure.value() <= most:
        raise RefusedError(f"{what}, 0 to {most:.0f}, or nothing")
    return figure.value() + 0.0
