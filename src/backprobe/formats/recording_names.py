"""What the name above a column says of it: a time, a voltage, the engine's speed, the key, or nothing for us."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    """What a column holds, as far as its name tells."""

    TIME = "time"
    DATE = "date"  # may hold date and time together
    RUN_TIME = "run time"  # counts only while the engine runs
    DURATION = "duration"  # seconds of something; the recording's clock only where there is no better one
    VOLTAGE = "voltage"
    ENGINE_SPEED = "engine speed"
    KEY = "key"
    UNIT = "unit"  # the unit of the figure in the same row
    UNSURE = "unsure"  # a wire's name without a unit: what it is shows in the rows
    OTHER = "other"  # not for us


@dataclass(frozen=True, slots=True)
class Heading:
    """A column's name without its unit, what it holds, and `per_unit`: how many V, s or rpm one written unit is.

    `per_unit` is a pair (times, by) so that milli can be divided by 1000, which rounds once; None where no unit
    was written.
    """

    name: str
    kind: Kind
    per_unit: tuple[float, float] | None = None


# unit -> what it measures, (times, by)
_UNITS: dict[str, tuple[Kind, tuple[float, float]]] = {
    **dict.fromkeys(("v", "volt", "volts", "vdc"), (Kind.VOLTAGE, (1.0, 1.0))),
    **dict.fromkeys(("mv", "millivolt", "millivolts"), (Kind.VOLTAGE, (1.0, 1000.0))),
    **dict.fromkeys(("s", "sec", "secs", "second", "seconds"), (Kind.TIME, (1.0, 1.0))),
    **dict.fromkeys(("ms", "msec", "millis", "millisecond", "milliseconds"), (Kind.TIME, (1.0, 1000.0))),
    **dict.fromkeys(("us", "µs", "μs", "usec", "microseconds"), (Kind.TIME, (1.0, 1e6))),
    **dict.fromkeys(("ns", "nanoseconds"), (Kind.TIME, (1.0, 1e9))),
    **dict.fromkeys(("min", "minutes"), (Kind.TIME, (60.0, 1.0))),
    **dict.fromkeys(("h", "hours"), (Kind.TIME, (3600.0, 1.0))),
    **dict.fromkeys(("rpm", "1/min", "rev/min", "u/min"), (Kind.ENGINE_SPEED, (1.0, 1.0))),
}


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


_OTHER_UNITS = _words(
    "a ma ua amp amps ohm ohms ω kω hz khz % c °c degc deg f °f degf k w kw wh kwh ah mah nm bar mbar kpa hpa psi km "
    "km/h kmh kph mph m/s g g/s l/h ° db dbm lux ppm vac"
)
_SUFFIX_UNITS = ("mV", "V", "ms", "us", "s", "rpm")

_TIME_NAMES = _words(
    "TIME T X TIMESTAMP TIME_STAMP DATETIME DATE_TIME DATE_AND_TIME ELAPSED ELAPSED_TIME TIME_ELAPSED REL_TIME SECOND "
    "SECONDS SEC UPTIME CLOCK EPOCH UNIX UNIX_TIME UTC TIME_UTC UTC_TIME LOCAL_TIME ZEIT ZEITSTEMPEL DATUM_ZEIT "
    "UHRZEIT TEMPS TEMPO TIEMPO HORA TIJD TID CZAS"
)
_MILLI_NAMES = _words("MS MILLIS MILLISECONDS TIMESTAMP_MS EPOCH_MS")
_DATE_NAMES = _words("DATE DATUM FECHA DATA")
_RUN_TIME_NAMES = _words(  # TINE stands so in real files
    "ENGINE_RUN_TIME ENGINE_RUN_TINE RUN_TIME RUNTIME ENGINE_RUNTIME RUN_TIME_SINCE_ENGINE_START "
    "TIME_SINCE_ENGINE_START"
)
MODULE_VOLTAGE = "CONTROL_MODULE_VOLTAGE"
_SPEED_NAMES = _words("ENGINE_RPM RPM ENGINE_SPEED")
_COUNTING_NAMES = _words("INDEX IDX NO NR NUM NUMBER SAMPLE SAMPLES RECORD ROW LINE ID COUNT N")
_OTHER_WORDS = _words(
    "SERIAL LOGGER STATUS EVENT ALARM NOTE NOTES COMMENT REMARK TEMP TEMPERATURE TEMPERATUR HUMIDITY CURRENT STROM "
    "AMPS SPEED LAT LATITUDE LON LONGITUDE ALTITUDE GPS FREQUENCY PRESSURE POWER ENERGY CAPACITY RESISTANCE"
)

_BRACKETS = re.compile(r"(?P<name>.*?)\s*[(\[](?P<unit>[^()\[\]]*)[)\]]\s*", re.DOTALL)
_SUFFIX = re.compile(rf"(?P<name>.+?)(?:_|\s*[/,]\s*)(?P<unit>{'|'.join(_SUFFIX_UNITS)})\s*", re.DOTALL)


def plain_name(name: str) -> str:
    """The name in capitals, words joined by _: 'Engine RPM' and 'ENGINE_RPM' are the same."""
    return re.sub(r"[^A-Z0-9]+", "_", name.upper()).strip("_")


def read_heading(cell: str) -> Heading:
    """What a header cell says, a unit in brackets or behind an underscore taken off.

    >>> read_heading("Red 12 [mV]")
    Heading(name='Red 12', kind=<Kind.VOLTAGE: 'voltage'>, per_unit=(1.0, 1000.0))
    >>> read_heading("THROTTLE ()").kind, read_heading("Red (pin 4)").kind
    (<Kind.OTHER: 'other'>, <Kind.UNSURE: 'unsure'>)
    """
    name, unit = _split(cell.strip())
    if unit is None:
        return _by_name(name)
    if unit == "":  # '()': the mark of a file of engine data, where each channel is known by name alone
        known = _by_name(name)
        return Heading(name, Kind.OTHER) if known.kind in (Kind.UNSURE, Kind.KEY, Kind.UNIT) else known
    return _by_unit(name, unit)


def with_unit(heading: Heading, cell: str) -> Heading:
    """The heading with the unit that stands beneath it; unchanged where it has one already or none stands there."""
    return _by_unit(heading.name, cell) if is_unit(cell) and heading.per_unit is None else heading


def is_unit(cell: str) -> bool:
    """Whether a cell holds nothing but a unit, such as '(ms)' or 'mV'."""
    return _plain_unit(cell) in _UNITS or _plain_unit(cell) in _OTHER_UNITS


def _plain_unit(unit: str) -> str:
    return "".join(unit.split()).strip("()[]").lower()


def _split(text: str) -> tuple[str, str | None]:
    """Name and unit; the unit is None where none is written, '' where the brackets are empty."""
    match = _BRACKETS.fullmatch(text)
    if match:
        unit = match["unit"].strip()
        return (match["name"], unit) if not unit or is_unit(unit) else (text, None)
    match = _SUFFIX.fullmatch(text)
    return (match["name"], match["unit"]) if match else (text, None)


def _by_unit(name: str, unit: str) -> Heading:
    if _plain_unit(unit) in _OTHER_UNITS:
        return Heading(name, Kind.OTHER)
    kind, per_unit = _UNITS[_plain_unit(unit)]
    if kind is Kind.TIME and plain_name(name) in _RUN_TIME_NAMES:
        kind = Kind.RUN_TIME
    elif kind is Kind.TIME and name and plain_name(name) not in _TIME_NAMES:
        kind = Kind.DURATION
    return Heading(name, kind, per_unit)


def _by_name(name: str) -> Heading:
    plain = plain_name(name)
    if plain in _MILLI_NAMES:
        return Heading(name, Kind.TIME, (1.0, 1000.0))
    for names, kind in (
        (_TIME_NAMES, Kind.TIME),
        (_DATE_NAMES, Kind.DATE),
        (_RUN_TIME_NAMES, Kind.RUN_TIME),
        ((MODULE_VOLTAGE,), Kind.VOLTAGE),
        (_SPEED_NAMES, Kind.ENGINE_SPEED),
        (("KEY",), Kind.KEY),
        (("UNIT", "UNITS", "EINHEIT"), Kind.UNIT),
        (_COUNTING_NAMES, Kind.OTHER),
    ):
        if plain in names:
            return Heading(name, kind)
    other = not plain or not _OTHER_WORDS.isdisjoint(plain.split("_"))
    return Heading(name, Kind.OTHER if other else Kind.UNSURE)
