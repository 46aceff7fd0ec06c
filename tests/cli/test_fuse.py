"""`backprobe fuse`: what it prints; exit codes; refusals in plain words."""

import json
from itertools import product
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from backprobe.cli.main import main
from backprobe.limits.fuse_lookup import ratings_of
from backprobe.limits.wires import INSULATIONS

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
    validator("fuse" if answer["ok"] else "error").validate(answer)
    return code, answer


def test_a_fuse_that_holds(capsys):
    """3 A on 18 AWG at 0.3 Ω: 12 / 0.3 = 40 A; 0."""
    code, answer = answered(capsys, "fuse --rating-A 3 --awg 18 --loop-ohm 0.3 --system 12")
    assert (code, answer["verdict"], answer["short_A"]) == (0, "holds", 40.0)
    assert answer["clears_s"]["most"] < answer["least_wire_withstands_s"]


def test_a_fuse_that_fails(capsys):
    """15 A on 0.35 mm²; 1, with the largest that would hold."""
    code, answer = answered(capsys, "fuse --rating-A 15 --mm2 0.35 --loop-ohm 0.2 --system 12")
    assert (code, answer["verdict"], answer["largest_fuse_A"]) == (1, "fails", 5.0)


def test_a_loop_too_resistive(capsys):
    """10 A at 2 Ω: 6 A never clear it; null and fails."""
    code, answer = answered(capsys, "fuse --rating-A 10 --awg 18 --loop-ohm 2 --system 12")
    assert (code, answer["verdict"], answer["clears_s"]) == (1, "fails", None)
    assert "too resistive" in answer["findings"][0]["because"]


def test_a_hundred_amperes_on_half_a_square_millimetre(capsys):
    """Judged, failed and questioned."""
    code, answer = answered(capsys, "fuse --rating-A 100 --mm2 0.5 --loop-ohm 0.1 --system 12")
    assert (code, answer["verdict"]) == (1, "fails")
    assert "is that meant?" in answer["questions"][0]


def test_what_is_given_is_not_assumed(capsys):
    """With type, insulation and surroundings said, no note says that they were taken."""
    given = "--type F --insulation xlpe-125 --temperature-C 40 --load-A 1"
    _, answer = answered(capsys, f"fuse --rating-A 3 --awg 18 --loop-ohm 0.3 --system 24 {given}")
    assert (answer["type"], answer["wire"]["insulation"], answer["ambient_C"]) == ("F", "xlpe-125", 40.0)
    assert [finding["id"] for finding in answer["findings"]][-1] == "fuse_load"
    assert not any("taken as" in note and "I²t" not in note for note in answer["notes"])
    _, bare = answered(capsys, "fuse --rating-A 3 --awg 18 --loop-ohm 0.3 --system 24")
    assert bare["notes"][:2] == ["type C is taken", "insulation is taken as PVC rated 105 °C"]


def test_every_fuse_has_a_valid_answer(capsys):
    """Over all types and ratings, insulations, thin and thick wire, short and long loops."""
    fuses = [(kind, rating) for kind in "CEF" for rating in ratings_of(kind)]
    rest = list(product(INSULATIONS, ("--awg 24", "--mm2 4"), (0.02, 0.6, 9), (12, 24)))
    for number, (kind, rating) in enumerate(fuses * 3):
        insulation, size, loop_ohm, system = rest[number * 5 % len(rest)]
        fuse = f"fuse --rating-A {rating:g} --type {kind} {size} --insulation {insulation}"
        code, answer = answered(capsys, f"{fuse} --loop-ohm {loop_ohm} --system {system} --load-A 1")
        assert code == (0 if answer["verdict"] == "holds" else 1)


def test_text_names_limits_and_the_next_step(capsys):
    """Each finding with its limit and what that rests on."""
    assert main(["fuse", "--rating-A", "15", "--mm2", "0.35", "--loop-ohm", "0.2", "--system", "12"]) == 1
    text = capsys.readouterr().out
    assert "15 A fuse on 0.35 mm², 12 V: fails" in text
    assert "(common practice, no source)" in text
    assert "next: fit a fuse of 5 A, the largest that holds on this wire and loop, or thicker wire" in text


@pytest.mark.parametrize(
    ("command", "said"),
    [
        ("--rating-A 10 --awg 18 --loop-ohm 0 --system 12", "a loop of 0 Ω"),
        ("--rating-A 10 --awg 18 --loop-ohm -1 --system 12", "a loop of -1 Ω"),
        ("--rating-A nan --awg 18 --loop-ohm 1 --system 12", "'nan' is no plain number"),
        ("--rating-A 0 --awg 18 --loop-ohm 1 --system 12", "a fuse of 0 A"),
        ("--rating-A 200 --awg 18 --loop-ohm 1 --system 12", "type E are made for 20 to 100 A"),
        ("--rating-A 40 --type F --awg 18 --loop-ohm 1 --system 12", "type F are made for 2 to 30 A"),
        ("--rating-A 10 --awg 99 --loop-ohm 1 --system 12", "no wire has gauge 99"),
        ("--rating-A 10 --awg 18 --loop-ohm 1 --system 48", "invalid choice: 48"),
        ("--rating-A 10 --awg 18 --loop-ohm 1 --system 12 --temperature-C 900", "temperature of 900 °C"),
        ("--rating-A 10 --awg 18 --loop-ohm 1", "required: --system"),
    ],
)
def test_what_cannot_be_meant_is_refused(capsys, command, said):
    """With exit code 2 and plain words."""
    code, answer = answered(capsys, f"fuse {command}")
    assert (code, answer["code"]) == (2, "option")
    assert said in answer["error"]
