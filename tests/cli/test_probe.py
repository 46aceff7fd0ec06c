"""`backprobe probe`: what the options make of the vehicle and the meter."""

from __future__ import annotations

import json

import pytest

from backprobe.cli.main import main
from backprobe.cli.parser import parsed
from backprobe.cli.probe import captures_of, setup_of
from backprobe.errors import OptionError
from backprobe.evidence.keys import Capture

PAIR = """\
wire,key,volts,capture,after_min,circuit
Red,off,12.60,,,
Violet,off,0.02,,,
Red,accessory,12.55,,,
Violet,accessory,0.03,,,
Red,on,12.41,,,
Violet,on,12.37,,,
Red,crank,11.30,min,,
Violet,crank,11.60,min,,
Red,running,14.10,,,
Violet,running,14.05,,,
Red,after,12.58,,12,
"""


def setup(*words: str):
    """The setup that these options describe."""
    return setup_of(parsed(["probe", "file.csv", *words])[0])


def test_the_options_describe_the_vehicle():
    """System, crank, accessory and cylinders come from the words."""
    found = setup("--system", "24", "--no-crank", "--no-accessory", "--cylinders", "6")
    assert (found.system_V, found.has_crank, found.has_accessory, found.cylinders) == (24, False, False, 6)


def test_without_captures_the_meter_says_what_it_can_do():
    """The plainest class holds display, min and max."""
    assert setup("--system", "12").captures == {Capture.DISPLAY, Capture.MIN, Capture.MAX}


def test_captures_are_read_whatever_their_case_and_spaces():
    """'Display, MIN' is understood."""
    assert captures_of("Display, MIN") == {Capture.DISPLAY, Capture.MIN}


@pytest.mark.parametrize("text", ["", ",", "peak", "min;max"])
def test_other_captures_are_refused_with_the_list(text):
    """The refusal names what is possible."""
    with pytest.raises(OptionError, match="display, min, max, logged"):
        captures_of(text)


def test_the_units_own_minimum_comes_from_its_sheet(tmp_path):
    """--unit reads the sheet's least_V."""
    sheet = tmp_path / "unit.toml"
    leads = "".join(f'[[lead]]\nname = "{name}"\npurpose = "{name}"\n' for name in ("supply", "ground"))
    sheet.write_text(f'name = "Lantern 2"\n[supply]\nleast_V = 8.0\nmost_V = 32.0\n{leads}')
    assert setup("--system", "12", "--unit", str(sheet)).unit_least_V == 8.0


def test_a_proven_pair_is_chosen_and_nothing_more_is_asked(tmp_path, capsys):
    """All that both slots require was measured and holds or is thin within reach."""
    table = tmp_path / "readings.csv"
    table.write_text(PAIR)
    assert main(["probe", str(table), "--system", "12", "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert answer["choice"] == {"supply": "Red", "ignition": "Violet"}
    assert answer["next"] is None
    assert [wire["role"] for wire in answer["wires"]] == ["constant", "ignition"]


@pytest.mark.parametrize("left_out", [",after,", ",crank,11.30", ",crank,11.60", ",accessory,0.03", "Red,on"])
def test_without_one_requirement_the_pair_is_not_whole(left_out, tmp_path, capsys):
    """One missing reading keeps its slot empty, and is what is asked for next."""
    table = tmp_path / "readings.csv"
    table.write_text("".join(line for line in PAIR.splitlines(keepends=True) if left_out not in line))
    assert main(["probe", str(table), "--system", "12", "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert None in answer["choice"].values()
    assert answer["next"] is not None


def test_a_banned_circuit_is_never_tapped(tmp_path, capsys):
    """Perfect volts do not help a wire that was identified as an airbag feed."""
    table = tmp_path / "readings.csv"
    table.write_text(PAIR.replace("Red,off,12.60,,,", "Red,off,12.60,,,airbag control unit"))
    assert main(["probe", str(table), "--system", "12", "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert answer["choice"]["supply"] is None
    assert answer["wires"][0]["tap"] == "never"


@pytest.mark.parametrize(
    ("options", "word"),
    [
        (["--bus-ahead", "2"], "--bus-ahead belongs to --bus"),
        (["--bus", "a.log", "--bus-ahead", "soon"], "--bus-ahead soon: seconds are expected"),
        (["--bus", "a.log", "--bus-ahead", "nan"], "seconds are expected"),
        (["--bus", "a.log"], "is a readings table"),
    ],
)
def test_a_bus_log_that_cannot_label_is_said_so(options, word, tmp_path, capsys):
    """Seconds without a log, seconds that are none, a table."""
    table = tmp_path / "readings.csv"
    table.write_text("wire,key,volts\nRed,on,12.4\n")
    assert main(["probe", str(table), "--system", "12", *options]) == 2
    assert word in capsys.readouterr().err
