"""`backprobe battery`: what it prints; refusals in plain words."""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from backprobe.cli.main import main

ROOT = Path(__file__).resolve().parents[2]


def validator(name):
    """The validator of one of the schemas."""
    return Draft202012Validator(json.loads((ROOT / "schemas" / f"{name}.schema.json").read_text(encoding="utf-8")))


def answered(capsys, command):
    """Exit code and answer of a command with --json: one line, valid by the schema of its kind."""
    code = main([*command.split(), "--json"])
    out, err = capsys.readouterr()
    assert (out.count("\n"), err) == (1, "")
    answer = json.loads(out)
    validator("battery" if answer["ok"] else "error").validate(answer)
    return code, answer


def test_a_rested_battery(capsys):
    """12.24 V flooded is half full, 39 to 65 % on a basic meter (±0.081 V); 0 as there is nothing to judge."""
    code, answer = answered(capsys, "battery --rest-V 12.24 --hours-since-charge 24 --kind flooded")
    assert code == 0
    assert answer["state_of_charge"] == {"low": 0.387, "likely": 0.5, "high": 0.652}
    assert answer["rested"] is True


def test_too_soon_after_the_charge(capsys):
    """An hour after it the same volts may be much less, and it is said to wait."""
    _, soon = answered(capsys, "battery --rest-V 12.60 --hours-since-charge 1")
    _, later = answered(capsys, "battery --rest-V 12.60 --hours-since-charge 24")
    assert soon["state_of_charge"]["low"] < later["state_of_charge"]["low"] - 0.25
    assert "wait 8 h, better 24 h" in soon["notes"][0]


def test_how_the_figure_was_typed_counts(capsys):
    """12.6 was read to 0.1 V only: wider, and questioned."""
    _, fine = answered(capsys, "battery --rest-V 12.60 --hours-since-charge 24")
    _, coarse = answered(capsys, "battery --rest-V 12.6 --hours-since-charge 24")
    assert coarse["each_V"]["low"] < fine["each_V"]["low"]
    assert coarse["questions"] == ["the reading is to 0.1 V only: can two decimals be read?"]


def test_two_in_series(capsys):
    """25.20 V over two is 12.60 V each."""
    code, answer = answered(capsys, "battery --rest-V 25.20 --hours-since-charge 24 --system 24 --temperature-C 5")
    assert (code, answer["each_V"]["likely"]) == (0, 12.6)


def test_a_better_meter(capsys):
    """The precise class leaves less doubt than the basic one."""
    _, basic = answered(capsys, "battery --rest-V 12.40 --hours-since-charge 24 --kind agm")
    _, precise = answered(capsys, "battery --rest-V 12.40 --hours-since-charge 24 --kind agm --meter precise")
    assert basic["state_of_charge"]["low"] < precise["state_of_charge"]["low"]


def test_text_gives_the_range(capsys):
    """Likely, and from where to where."""
    assert main(["battery", "--rest-V", "12.24", "--hours-since-charge", "24", "--kind", "flooded"]) == 0
    assert "state of charge 50%, anywhere from 39% to 65%" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("command", "said"),
    [
        ("--rest-V 9 --hours-since-charge 12", "a cell is gone (five rest at 9.9 to 10.6 V), or a load is on"),
        ("--rest-V 18 --hours-since-charge 12 --system 24", "18 V over two batteries, each: 9.00 V is no battery"),
        ("--rest-V 12.5 --hours-since-charge 12 --temperature-C 77", "are these °F? 77 °F are 25 °C"),
        ("--rest-V 25.2 --hours-since-charge 12", "is it a 24 V system?"),
        ("--rest-V 14.3 --hours-since-charge 3", "a charger or the alternator is on"),
        ("--rest-V 12.5 --hours-since-charge -1", "a rest of -1 h"),
        ("--rest-V nan --hours-since-charge 1", "'nan' is no plain number"),
        ("--rest-V 12.5V --hours-since-charge 1", "'12.5V' is no plain number"),
        ("--rest-V 12.5 --hours-since-charge 1 --meter brass", "no class of meters is called 'brass'"),
        ("--rest-V 12.5 --hours-since-charge 1 --kind lithium", "invalid choice: 'lithium'"),
        ("--rest-V 12.5", "required: --hours-since-charge"),
    ],
)
def test_what_cannot_be_a_battery_at_rest_is_refused(capsys, command, said):
    """With exit code 2, in words that say what may be the matter."""
    code, answer = answered(capsys, f"battery {command}")
    assert (code, answer["code"]) == (2, "option")
    assert said in answer["error"]
