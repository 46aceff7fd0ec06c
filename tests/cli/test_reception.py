"""`backprobe reception`: what it prints, what it draws, how it leaves."""

import json
from pathlib import Path
from xml.etree import ElementTree

import pytest
from jsonschema import Draft202012Validator
from tests.samples.nmea import gga, gsv, rmc, sentence
from tests.samples.receiver_world import World, log_lines

from backprobe.cli.main import main
from backprobe.cli.reception import heading_of
from backprobe.errors import OptionError

SCHEMAS = Path(__file__).resolve().parents[2] / "schemas"
GOOD = World(seed=7, satellites=24, systems=("GP", "GL", "GA"), shift_dB=6.0, step_s=10)
BLOCKED = World(seed=3, satellites=24, systems=("GP", "GL"), blocked=(90, 210, 90, 22))
VOID = ["$GPGGA,,,,,,0,,,,M,,M,,*66", "$GPRMC,,V,,,,,,,,,,N*53"]


def log_file(folder: Path, lines: list[str]) -> str:
    """A log with these lines."""
    path = folder / "reception.nmea"
    path.write_text("\n".join(lines), encoding="utf-8")
    return str(path)


def answered(capsys, *command):
    """Exit code and answer with --json, valid by the schema of its kind."""
    code = main(["reception", *command, "--json"])
    answer = json.loads(capsys.readouterr().out)
    name = "reception" if answer["ok"] else "error"
    Draft202012Validator(json.loads((SCHEMAS / f"{name}.schema.json").read_text(encoding="utf-8"))).validate(answer)
    return code, answer


@pytest.mark.parametrize(
    ("lines", "code", "verdict"),
    [
        (log_lines(GOOD), 0, "holds"),
        (log_lines(BLOCKED), 1, None),
        (VOID * 30, 1, "fails"),
        ([gga("120000"), rmc("120000"), *gsv([(5, 41, 100, 40)])], 1, None),
        ([sentence("GPHDT,123.4,T")], 1, "open"),
        ([gga("120000")[:30], "nothing", rmc("120000")], 1, None),
        ([sentence("GPRMC,990000,A,,,,,,,,,"), *VOID, *log_lines(BLOCKED), *log_lines(BLOCKED)], 1, None),
    ],
)
def test_exit_codes_and_shape(capsys, tmp_path, lines, code, verdict):
    """0 holds; 1 thin, fails or open; the answer is as its schema says, whatever the log."""
    found, answer = answered(capsys, log_file(tmp_path, lines))
    assert found == code
    assert verdict in (None, answer["verdict"])


@pytest.mark.parametrize(
    "content", [b"", b"wire,key,volts\n", b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(99), b"$GPGGA,1\n" * 9]
)
def test_bad_input(capsys, tmp_path, content):
    """Empty, a table, a photo, and not one good sentence: 2, with the file's name."""
    path = tmp_path / "a.nmea"
    path.write_bytes(content)
    code, answer = answered(capsys, str(path))
    assert (code, answer["code"]) == (2, "unreadable")
    assert "a.nmea" in answer["error"]


def test_where_the_metal_is(capsys, tmp_path):
    """The sector from 90° to 210° is found; front to the north it is the right rear, and so on round."""
    file = log_file(tmp_path, log_lines(BLOCKED))
    _, answer = answered(capsys, file)
    (blocked,) = answer["blocked"]
    assert (150 - blocked["from_deg"]) % 360 < (blocked["to_deg"] - blocked["from_deg"]) % 360
    for heading, side in (("0", "right rear"), ("90", "right front"), ("60", "right")):
        main(["reception", file, "--heading", heading])
        assert f"Blocked part of the sky: {side}\n" in capsys.readouterr().out


def test_in_words_and_drawn(capsys, tmp_path):
    """The verdict first, what to do last; the sky is a picture, and nothing but a picture is written over."""
    file, picture = log_file(tmp_path, log_lines(BLOCKED)), tmp_path / "sky.svg"
    assert main(["reception", file, "--picture", str(picture)]) == 1
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("reception.nmea: ")
    assert lines[-1].startswith("next: ")
    assert ElementTree.fromstring(picture.read_text(encoding="utf-8")).tag.endswith("svg")
    assert main(["reception", file, "--picture", str(picture)]) == 1
    picture.write_text("a letter", encoding="utf-8")
    assert main(["reception", file, "--picture", str(picture)]) == 2
    assert picture.read_text(encoding="utf-8") == "a letter"


@pytest.mark.parametrize("text", ["north", "-1", "361", "nan", ""])
def test_a_heading_that_is_none(text):
    """0 to 360 degrees."""
    with pytest.raises(OptionError, match="--heading"):
        heading_of(text)
