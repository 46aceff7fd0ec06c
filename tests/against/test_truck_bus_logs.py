"""Outside check: real logs of real vehicles, recorded by others (../shared/data/README.md says by whom).

Trucks: SystemsCyber/CyberTruckResources @f434e585 and J1939_Attack_Datasets @97511639; cars: eron93br/carOBD @bf09e1c0.
The figures are those that the recordings show when they are decoded by hand; some are decoded again here, another way.
"""

from __future__ import annotations

import re
from collections import defaultdict
from pathlib import Path

import pytest

from backprobe.cases.bus import BusCase, bus_file, listen_to
from backprobe.findings import Verdict
from backprobe.formats.key_script_csv import read_key_script
from backprobe.stages.bus.script import script_lines
from backprobe.stages.walkround.vin_number import has_right_check_digit

LINE = re.compile(r" \((\d+\.\d+)\)  \S+  ([0-9A-F]{8})   \[\d\]  ([0-9A-F ]+)")


@pytest.fixture(scope="module")
def cycle(request: pytest.FixtureRequest) -> BusCase:
    """The truck's key cycle."""
    shared: Path = request.getfixturevalue("shared_data")
    return bus_file(shared / "can" / "truck-key-cycle.candump.txt")


def naive(path: Path) -> dict[int, list[tuple[float, bytes]]]:
    """The frames of an aligned log by the middle of their identifier, as plainly as it goes."""
    found: dict[int, list[tuple[float, bytes]]] = defaultdict(list)
    for line in path.read_text(encoding="ascii").splitlines():
        if match := LINE.match(line):
            found[int(match[2][2:6], 16)].append((float(match[1]), bytes.fromhex(match[3])))
    return found


def test_the_key_cycle_of_a_12_V_diesel_truck(cycle: BusCase) -> None:
    """On with 11.95 V, crank at 17.8 s, running 0.6 s later, off at 58.4 s, lowest 10.35 V: too slow to prove it."""
    answer = cycle.answer.as_json()
    key, lowest = cycle.answer.heard.key, answer["lowest"]
    [crank] = key.cranks
    assert (answer["format"], answer["frames"], answer["skipped"]) == ("candump", 34_980, {})
    assert key.on_s == pytest.approx(11.6, abs=0.05)
    assert crank.start_s == pytest.approx(17.8, abs=0.05)
    assert crank.end_s - crank.start_s == pytest.approx(0.6, abs=0.05)
    assert crank.started is True
    assert key.off_s == pytest.approx(58.4, abs=0.05)
    assert lowest == {"V": 10.35, "at_s": pytest.approx(17.8, abs=0.05)}
    assert cycle.answer.heard.volts is not None
    assert (cycle.answer.heard.volts.first_V, cycle.answer.heard.volts.highest_V) == (11.95, 14.05)
    assert answer["sampled_fast_enough"] is False
    dip = next(each for each in cycle.answer.findings if each.id == "bus_dip")
    assert dip.verdict is Verdict.THIN
    assert "too slow to prove the dip" in dip.because


def test_its_vin_is_put_together_from_three_packets(cycle: BusCase, shared_data: Path) -> None:
    """Against the same packets joined by hand: they follow an announcement of group 0xFEEC, 18 bytes."""
    frames = naive(shared_data / "can" / "truck-key-cycle.candump.txt")
    begun = [time_s for time_s, data in frames[0xECFF] if data[0] == 32 and data[5:7] == b"\xec\xfe"]
    parts = [data for time_s, data in frames[0xEBFF] if begun[0] < time_s < begun[0] + 0.2]
    by_hand = b"".join(part[1:] for part in sorted(parts))[:17].decode("ascii")
    said = cycle.answer.as_json()["vin"]
    assert said == {"value": by_hand, "valid": True}
    assert has_right_check_digit(by_hand)


def test_its_speed_and_voltages_decoded_plainly(cycle: BusCase, shared_data: Path) -> None:
    """Bytes 4 and 5 of each 0xF004 by 0.125, bytes 5 and 6 of each 0xFEF7 by 0.05: the same extremes."""
    frames = naive(shared_data / "can" / "truck-key-cycle.candump.txt")
    speeds = [(data[3] + 256 * data[4]) / 8 for _, data in frames[0xF004]]
    volts = [(data[4] + 256 * data[5]) / 20 for _, data in frames[0xFEF7]]
    assert cycle.answer.heard.rpm_max == max(speeds)
    assert cycle.answer.heard.volts is not None
    assert cycle.answer.heard.volts.samples == len(volts)
    assert (cycle.answer.heard.volts.lowest_V, cycle.answer.heard.volts.highest_V) == (min(volts), max(volts))


def test_its_bus_does_well(cycle: BusCase) -> None:
    """Seven computers, none silent while the key is on, no errors, less than half full."""
    found = {each.id: each.verdict for each in cycle.answer.findings}
    assert [found[name] for name in ("bus_errors", "bus_load", "bus_silent")] == [Verdict.HOLDS] * 3
    assert cycle.answer.heard.health.nodes == 7
    assert cycle.answer.heard.lost_messages == 0


def test_its_key_script_is_one_for_prove(cycle: BusCase) -> None:
    """On, crank, running, off; off where the first computers fell silent, before the engine stood."""
    script = read_key_script(script_lines(cycle.answer.heard, start_s=1_774_944_000.0), file="script.csv")
    turns = [(str(turn.key), round(turn.time_s - 1_774_944_000.0, 1)) for turn in script.turns]
    assert turns == [("on", 11.6), ("crank", 17.8), ("running", 18.4), ("off", 57.3)]


@pytest.mark.parametrize(
    ("name", "form", "frames", "volts", "errors"),
    [
        ("truck-key-on.candump.log", "candump-log", 6_278, (12.1, 12.15), 0),
        ("truck-key-on.trc", "trc", 27_738, (11.35, 12.1), 250),
    ],
)
def test_a_key_that_is_on_and_nothing_more(
    name: str, form: str, frames: int, volts: tuple[float, float], errors: int, shared_data: Path
) -> None:
    """No turn of key or starter is made up; the second log begins with the errors of a bus that sleeps."""
    heard = listen_to(shared_data / "can" / name).heard
    assert (heard.format, heard.frames, heard.rpm_max) == (form, frames, 0.0)
    assert (heard.key.on_at_start, heard.key.on_s, heard.key.off_s, heard.key.cranks) == (True, None, None, ())
    assert heard.volts is not None
    assert (heard.volts.lowest_V, heard.volts.highest_V) == volts
    assert heard.health.errors_before + heard.health.errors_between == errors
    assert heard.stamped_s is not None
    assert heard.stamped_s > 1.6e9


def test_a_truck_that_is_driven(shared_data: Path) -> None:
    """The engine runs from the first frame to the last, 1,147 to 1,786 rpm, 13.95 to 14.1 V."""
    heard = listen_to(shared_data / "can" / "truck-driving.candump.log").heard
    assert heard.key.runs_at_start
    assert (heard.key.on_s, heard.key.off_s, heard.key.cranks) == (None, None, ())
    assert heard.rpm_max == pytest.approx(1786, abs=1)
    assert heard.volts is not None
    assert (heard.volts.lowest_V, heard.volts.highest_V) == (13.95, 14.1)
    assert heard.speed_max_kmh is not None
    assert 40 < heard.speed_max_kmh < 90


@pytest.mark.parametrize(
    ("name", "lowest_V", "verdict"),
    [
        ("obd-idle3.csv", 9.14, Verdict.THIN),
        ("obd-long10.csv", 7.56, Verdict.FAILS),
        ("obd-drive1.csv", 12.03, Verdict.OPEN),  # it starts the engine and misses the dip altogether
    ],
)
def test_a_car_s_start_in_engine_data(name: str, lowest_V: float, verdict: Verdict, shared_data: Path) -> None:
    """About two rows a second: one start each, the lowest value in it, and what that proves."""
    case = bus_file(shared_data / "supply" / name)
    [crank] = case.answer.heard.key.cranks
    assert case.answer.heard.format == "obd-csv"
    assert crank.started is True
    assert crank.lowest_V == pytest.approx(lowest_V, abs=0.005)
    assert next(each.verdict for each in case.answer.findings if each.id == "bus_dip") is verdict
