"""`backprobe wire`: what it prints; refusals in plain words."""

import json
import re
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
    validator("wire" if answer["ok"] else "error").validate(answer)
    return code, answer


def test_a_gauge(capsys):
    """18 AWG solid, 10 m at 20 °C: 0.2095 Ω (20.95 Ω/km of the published table); 0 as there is nothing to judge."""
    code, answer = answered(capsys, "wire --awg 18 --length-m 10 --solid")
    assert code == 0
    assert answer["resistance_ohm"] == pytest.approx(0.20948, abs=1e-5)
    assert answer["there_and_back_ohm"] == pytest.approx(0.41896, abs=1e-5)


def test_square_millimetres_hot_and_under_load(capsys):
    """0.75 mm², 5 m at 60 °C: 0.13 × 294.5 / 254.5 = 0.15043 Ω once; 1.2 A lose 0.361 V there and back."""
    code, answer = answered(capsys, "wire --mm2 0,75 --length-m 5 --temperature-C 60 --current-A 1.2")
    assert code == 0
    assert answer["resistance_ohm"] == pytest.approx(0.13 * 294.5 / 254.5, abs=1e-6)
    assert answer["drop_there_and_back_V"]["likely"] == pytest.approx(2 * 1.2 * 0.13 * 294.5 / 254.5, abs=1e-4)


def test_stranded_lies_between_solid_and_the_most(capsys):
    """Two per cent above solid, and below what tinned wire may have."""
    _, stranded = answered(capsys, "wire --awg 18 --length-m 1")
    _, solid = answered(capsys, "wire --awg 18 --length-m 1 --solid")
    assert solid["resistance_ohm"] == stranded["least_ohm"] < stranded["resistance_ohm"] < stranded["most_ohm"]


def test_text_says_once_and_there_and_back(capsys):
    """Both, in mΩ, with their range and sources."""
    assert main(["wire", "--awg", "18", "--length-m", "5", "--current-A", "1.2"]) == 0
    text = capsys.readouterr().out
    assert re.search(r"once +106\.83 mΩ \(104\.74 to 116\.00\)", text)
    assert re.search(r"there and back +213\.67 mΩ", text)
    assert "there and back at 1.2 A: 0.256 V lost" in text
    assert "a name, not an area" in text
    assert "source: UL 1581" in text


@pytest.mark.parametrize(
    ("command", "said"),
    [
        ("wire --awg 55 --length-m 5", "no wire has gauge 55"),
        ("wire --awg 0.75 --length-m 5", "square millimetres go with --mm2"),
        ("wire --awg 18 --length-m -1", "a length of -1 m"),
        ("wire --awg 18 --length-m 0", "a length of 0 m"),
        ("wire --awg 18 --length-m nan", "'nan' is no plain number"),
        ("wire --awg 18 --length-m 5m", "'5m' is no plain number"),
        ("wire --awg 18 --length-m 5 --temperature-C 900", "a wire's temperature of 900 °C"),
        ("wire --mm2 -1 --length-m 5", "a wire of -1 mm²"),
        ("wire --length-m 5", "one of the arguments --awg --mm2 is required"),
        ("wire --awg 18 --mm2 0.75 --length-m 5", "not allowed with argument"),
        ("wire --awg 18", "required: --length-m"),
    ],
)
def test_what_cannot_be_meant_is_refused(capsys, command, said):
    """With exit code 2 and plain words."""
    code, answer = answered(capsys, command)
    assert (code, answer["code"]) == (2, "option")
    assert said in answer["error"]


def test_what_can_be_meant_otherwise_is_asked(capsys):
    """18 mm² may be a gauge."""
    code, answer = answered(capsys, "wire --mm2 18 --length-m 5")
    assert code == 0
    assert answer["questions"] == ["18 mm² is no usual size: was --awg 18 meant?"]
