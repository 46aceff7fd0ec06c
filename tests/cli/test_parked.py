"""`backprobe parked`: what it prints, what it draws, how it leaves."""

import json
from pathlib import Path
from xml.etree import ElementTree

import pytest
from jsonschema import Draft202012Validator
from tests.samples.jobs import demo_job
from tests.samples.parked import SHEET

from backprobe.cli.main import main

SCHEMAS = Path(__file__).resolve().parents[2] / "schemas"


@pytest.fixture
def sheet(tmp_path):
    """A function that writes a job sheet with the tables, one text in them changed."""

    def write(old="", new=""):
        path = demo_job(tmp_path, "truck-12") / "job.toml"
        path.write_text(path.read_text(encoding="utf-8") + SHEET.replace(old, new), encoding="utf-8")
        return str(path)

    return write


def answered(capsys, *command):
    """Exit code and answer with --json, valid by the schema of its kind."""
    code = main(["parked", *command, "--json"])
    answer = json.loads(capsys.readouterr().out)
    name = "parked" if answer["ok"] else "error"
    Draft202012Validator(json.loads((SCHEMAS / f"{name}.schema.json").read_text(encoding="utf-8"))).validate(answer)
    return code, answer


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("", "", 0),
        ("wanted_days = 5", "wanted_days = 30", 1),
        ("wanted_days = 5", "wanted_days = 200", 1),
        ("minutes_after_lock = 60", "minutes_after_lock = 5", 1),
        ("capacity_Ah = 110", "", 1),
        ('"12.60"', '"9.00"', 2),
        ("capacity_Ah = 110", "capacity_Ah = 0", 2),
        ("coldest_C = -5", "coldest_C = 68", 2),
        ('"25"', "-25", 2),
    ],
)
def test_exit_codes(capsys, sheet, old, new, code):
    """0 holds; 1 thin, fails or open; 2 nothing was judged."""
    found, answer = answered(capsys, sheet(old, new))
    assert found == code
    assert answer["ok"] == (code < 2)


def test_in_words_and_drawn(capsys, sheet, tmp_path):
    """The days first; the curve is a picture."""
    picture = tmp_path / "curve.svg"
    assert main(["parked", sheet(), "--svg", str(picture)]) == 0
    assert capsys.readouterr().out.startswith("days parked: ")
    assert ElementTree.fromstring(picture.read_text(encoding="utf-8")).tag.endswith("svg")


def test_nothing_else_is_written_over(capsys, sheet, tmp_path):
    """A file that is no picture stays."""
    other = tmp_path / "notes.txt"
    other.write_text("mine", encoding="utf-8")
    assert main(["parked", sheet(), "--svg", str(other)]) == 2
    assert other.read_text(encoding="utf-8") == "mine"
    assert "no SVG" in capsys.readouterr().err


def test_nothing_to_draw_is_said(capsys, sheet, tmp_path):
    """While something is lacking."""
    assert main(["parked", sheet("capacity_Ah = 110", ""), "--svg", str(tmp_path / "curve.svg")]) == 2
    assert "there is nothing to draw yet: [battery] capacity_Ah" in capsys.readouterr().err


def test_a_fleets_policy_wants_more(capsys, sheet, tmp_path):
    """5 days hold; the fleet wants 200."""
    policy = tmp_path / "fleet.toml"
    policy.write_text("[parked]\nwanted_days = 200\n", encoding="utf-8")
    code, answer = answered(capsys, sheet(), "--policy", str(policy))
    assert (code, answer["policy"], answer["wanted_days"]) == (1, "fleet.toml", 200.0)


def test_what_to_change_is_said_only_where_something_must(capsys, sheet):
    """5 days are reached in any case, 30 are not."""
    main(["parked", sheet()])
    assert "to reach" not in capsys.readouterr().out


def test_what_to_change_is_said_where_it_must(capsys, sheet):
    """One line for each thing that could be changed."""
    main(["parked", sheet("wanted_days = 5", "wanted_days = 30")])
    assert "to reach 30 days: " in capsys.readouterr().out
