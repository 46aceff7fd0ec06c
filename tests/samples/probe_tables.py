"""Readings tables as short texts, for the tests of the probe stage."""

from __future__ import annotations

from dataclasses import replace

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading, ReadingsTable
from backprobe.formats.readings_csv import read_readings
from backprobe.limits.lookup import meter
from backprobe.stages.probe.answer import Answer, answer_table
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.wires import ProbeResult, Wire

HEADER = "wire,key,volts,capture,after_min,load_A,circuit,marks"
SETUP = Setup(system_V=12, meter=meter("basic"))
LOGGING = replace(SETUP, captures=frozenset(Capture))
AT_24_V = replace(SETUP, system_V=24)
ELECTRIC = replace(SETUP, has_crank=False)

# what good and bad wires of one 12 V truck show: battery 12.5 V, charging at 14.1 V, cranking down to about 10.9 V
SHOWN = {
    "constant": "off 12.52 accessory 12.48 on 12.31 crank/min 10.93 running 14.12 after 12.55",
    "ignition": "off 0.02 accessory 0.03 on 12.24 crank/min 11.63 running 14.07",
    "ignition_not_in_crank": "off 0.02 accessory 0.02 on 12.26 crank/min 0.03 running 14.05",
    "accessory": "off 0.01 accessory 12.41 on 12.25 crank/min 0.02 running 14.06",
    "start": "off 0.01 accessory 0.01 on 0.02 crank/max 11.40 running 0.01",
    "retained": "off 12.44 accessory 12.40 on 12.24 crank/min 10.80 running 14.03 after 0.04",
    "running_only": "off 0.01 accessory 0.02 on 0.01 crank/min 0.02 running 14.01",
    "lighting": "off 6.31 accessory 6.40 on 5.92 crank/min 5.01 running 7.35",
    "signal": "off 2.51 accessory 2.48 on 2.52 crank/min 2.44 running 2.50",
    "no_supply": "off 0.01 accessory 0.01 on 0.02 crank/max 0.01 running 0.01 after 0.01",
}


def rows(wire: str, shown: str, *, circuit: str = "", marks: str = "") -> list[str]:
    """Rows out of 'on 12.31 crank/min 10.93 after@5 12.4 on%1.5 12.1': key/capture@minutes%amperes and volts."""
    words = shown.split()
    found = []
    for place, volts in zip(words[::2], words[1::2], strict=True):
        place, _, load = place.partition("%")
        place, _, minutes = place.partition("@")
        key, _, capture = place.partition("/")
        found.append(f"{wire},{key},{volts},{capture},{minutes},{load},{circuit},{marks}")
    return found


def table_of(*lines: list[str] | str, system_V: int = 12) -> ReadingsTable:
    """The table of these rows, read as a file would be."""
    plain = [line for each in lines for line in ([each] if isinstance(each, str) else each)]
    return read_readings([HEADER, *plain], file="readings.csv", system_V=system_V)


def answer_of(*lines: list[str] | str, setup: Setup = SETUP) -> Answer:
    """The answer to these rows."""
    return answer_table(table_of(*lines, system_V=setup.system_V), setup)


def result_of(*lines: list[str] | str, setup: Setup = SETUP) -> ProbeResult:
    """What these rows came to."""
    return answer_of(*lines, setup=setup).result


def wire_of(shown: str, *, setup: Setup = SETUP, circuit: str = "", marks: str = "") -> Wire:
    """The judgement of a single wire that showed this."""
    return result_of(rows("w", shown, circuit=circuit, marks=marks), setup=setup).wires[0]


def readings_of(shown: str, *, system_V: int = 12) -> tuple[Reading, ...]:
    """The readings of a single wire that showed this."""
    return table_of(rows("w", shown), system_V=system_V).readings


def reading(key: str, volts: str, *, capture: str = "display", load_A: float | None = None) -> Reading:
    """One reading on wire w, as typed."""
    count_V = 10.0 ** -len(volts.partition(".")[2])
    return Reading(
        wire="w",
        key=Key(key),
        volts=float(volts),
        typed=volts,
        count_V=count_V,
        capture=Capture(capture),
        after_min=10.0 if key == "after" else None,
        load_A=load_A,
    )


def doubled(shown: str) -> str:
    """The same wire in a 24 V vehicle: twice the volts."""
    return " ".join(f"{2 * float(word):.2f}" if word[0].isdigit() else word for word in shown.split())
