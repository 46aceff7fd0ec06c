"""`backprobe corners`: an index built, a place named; refusals in plain words."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from tests.samples.street_maps import place_of, street, write_map

from backprobe.cli.corners import circle_of, size
from backprobe.cli.main import main
from backprobe.errors import OptionError

ROOT = Path(__file__).resolve().parents[2]
CROSS = [
    street("Main Street", (0, -100), (0, 0), (0, 100), name__sv="Storgatan"),
    street("Mill Lane", (-100, 0), (0, 0), (100, 0)),
]


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A folder with a map of one crossing and its index, to work in."""
    monkeypatch.chdir(tmp_path)
    write_map(tmp_path / "yard.osm.pbf", CROSS)
    assert main(["corners", "build", "yard.osm.pbf", "--out", "yard.corners"]) == 0
    return tmp_path


def answered(capsys, *words):
    """Exit code and answer with --json: one line, valid by the schema of its kind."""
    capsys.readouterr()
    code = main(["corners", *words, "--json"])
    out, err = capsys.readouterr()
    assert (out.count("\n"), err) == (1, "")
    answer = json.loads(out)
    schema = ROOT / "schemas" / f"{'corners' if answer['ok'] else 'error'}.schema.json"
    Draft202012Validator(json.loads(schema.read_text(encoding="utf-8"))).validate(answer)
    return code, answer


def at(north_m, east_m):
    """A place in metres from the crossing, as it is typed."""
    return "{:.6f},{:.6f}".format(*place_of((north_m, east_m)))


def test_an_index_is_built(folder, capsys):
    """What went into it, how large it is, and whose the names are."""
    code, answer = answered(capsys, "build", "yard.osm.pbf", "--out", "again/yard.corners", "--language", "sv")
    assert code == 0
    assert (answer["corners"], answer["streets"], answer["language"]) == (1, 2, "sv")
    assert answer["bytes"] == (folder / "again" / "yard.corners").stat().st_size
    assert "OpenStreetMap contributors, ODbL" in answer["attribution"]


def test_a_place_is_named(folder, capsys):
    """40 m north-east of the crossing: 28.3 m north and as much east."""
    code, answer = answered(capsys, "name", "yard.corners", "--at", at(28.3, 28.3))
    assert code == 0
    assert answer["text"] == "corner of Main Street and Mill Lane, 40 m north-east"
    assert answer["corner"]["distance_m"] in (39, 40, 41)


def test_in_lines(folder, capsys):
    """The corner, and whose the names are; no attribution where no name is shown."""
    capsys.readouterr()
    main(["corners", "name", "yard.corners", "--at", at(0, 0)])
    assert capsys.readouterr().out.splitlines() == [
        "corner of Main Street and Mill Lane",
        "street names © OpenStreetMap contributors, ODbL",
    ]
    main(["corners", "name", "yard.corners", "--at", at(0, 400)])
    assert capsys.readouterr().out == "no named corner within 300 m\n"


def test_how_far_a_corner_may_be(folder, capsys):
    """400 m are within 500 m."""
    _, answer = answered(capsys, "name", "yard.corners", "--at", at(0, 400), "--reach-m", "500")
    assert answer["text"] == "corner of Main Street and Mill Lane, 400 m east"
    assert answer["reach_m"] == 500.0


def test_a_circle_without_a_corner_is_refused(folder, capsys):
    """Nothing is written then."""
    code, answer = answered(capsys, "build", "yard.osm.pbf", "--out", "none.corners", "--within", "10,10,5")
    assert (code, answer["code"]) == (2, "option")
    assert "none of 1 corners" in answer["error"]
    assert not (folder / "none.corners").exists()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["build", "yard.osm.pbf"], "needs --out"),
        (["name", "yard.corners"], "needs --at"),
        (["name", "yard.corners", "--at", "51,7", "--out", "x"], "takes no --out"),
        (["build", "yard.osm.pbf", "--out", "x", "--reach-m", "9"], "takes no --reach-m"),
        (["build", "yard.osm.pbf", "--out", "x", "--language", "e/n"], "the code of a language"),
        (["build", "yard.osm.pbf", "--out", "x", "--within", "51,7"], "degrees north and east and kilometres"),
        (["name", "yard.corners", "--at", "51,7", "--reach-m", "0"], "more than 0"),
        (["name", "yard.corners", "--at", "91,7"], "degrees north and east"),
        (["build", "yard.corners", "--out", "x"], "an OpenStreetMap extract"),
        (["name", "yard.osm.pbf", "--at", "51,7"], "a text file"),
        (["name", "none.corners", "--at", "51,7"], "there is none of this name"),
        (["build", "none.osm.pbf", "--out", "x"], "there is none of this name"),
        (["build", "yard.osm.pbf", "--out", "yard.osm.pbf"], "it was left as it is"),
        (["show", "yard.corners"], "invalid choice"),
    ],
)
def test_refusals(folder, capsys, words, said):
    """Each in plain words, and with exit code 2."""
    code, answer = answered(capsys, *words)
    assert code == 2
    assert said in answer["error"]


@pytest.mark.parametrize(
    "text", ["", "1,2", "1,2,3,4", "a,b,c", "91,0,1", "0,181,1", "0,0,0", "0,0,-1", "0,0,nan", "0,0,1e9"]
)
def test_a_circle_that_is_none_is_refused(text):
    """Too few figures, too many, none at all, and what no earth has."""
    with pytest.raises(OptionError):
        circle_of(text)


def test_sizes_in_words():
    """Bytes, then thousands, then millions."""
    assert [size(n) for n in (0, 999, 1000, 999_949, 1_000_000)] == [
        "0 bytes",
        "999 bytes",
        "1.0 kB",
        "999.9 kB",
        "1.0 MB",
    ]
