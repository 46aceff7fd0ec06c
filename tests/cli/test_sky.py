"""`backprobe sky`: what it prints, what it draws, how it leaves."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from jsonschema import Draft202012Validator
from tests.samples.mount import DASH_TOML, ROOF_TOML
from tests.samples.navigation import constellation, rinex2

from backprobe.cli.main import main

SCHEMAS = Path(__file__).resolve().parents[2] / "schemas"
BOX_TOML = '[[place]]\nname = "in the fuse box"\ncover = "plastic"\n'
PLACE = ("--at", "60.2,24.9", "--date", "2021-04-29")


@pytest.fixture
def mount(tmp_path: Path) -> Any:
    """A function that writes a mount sheet and returns its path."""

    def write(text: str) -> str:
        path = tmp_path / "mount.toml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def answered(capsys: pytest.CaptureFixture[str], *command: str) -> tuple[int, dict[str, Any]]:
    """Exit code and answer with --json, valid by the schema of its kind."""
    code = main(["sky", *command, "--json"])
    answer = json.loads(capsys.readouterr().out)
    name = "sky" if answer["ok"] else "error"
    Draft202012Validator(json.loads((SCHEMAS / f"{name}.schema.json").read_text(encoding="utf-8"))).validate(answer)
    return code, answer


@pytest.mark.parametrize(("text", "code", "verdict"), [(ROOF_TOML, 0, "holds"), (BOX_TOML, 1, "fails")])
def test_the_exit_code_is_that_of_the_best_place(capsys, mount, text: str, code: int, verdict: str) -> None:
    """0 where the best place holds, 1 where it does not."""
    left, answer = answered(capsys, "--mount", mount(text), *PLACE)
    assert (left, answer["verdict"]) == (code, verdict)
    assert "satellites" not in answer


def test_places_are_ranked_and_stand_in_the_order_of_the_sheet(capsys, mount) -> None:
    """The answer keeps the sheet's order and names the best; each place has all its figures."""
    _, answer = answered(
        capsys, "--mount", mount(BOX_TOML + DASH_TOML.replace('heading = "any"', "") + ROOF_TOML), *PLACE
    )
    assert [place["name"] for place in answer["places"]] == ["in the fuse box", "on the dash", "on the roof"]
    assert answer["best"] == "on the roof"
    assert answer["places"][0]["hdop"] == {"median": None, "p95": None}
    assert 0 < answer["places"][1]["fix_share"] <= 1


def test_satellites_of_a_moment_from_a_file(capsys, mount, tmp_path: Path) -> None:
    """With --time and --nav the satellites above the horizon; a picture is drawn of the best place."""
    nav, picture = tmp_path / "brdc.21n", tmp_path / "sky.svg"
    nav.write_text("\n".join(rinex2(constellation(31))), encoding="ascii")
    command = ("--mount", mount(ROOF_TOML), *PLACE, "--time", "03:00", "--nav", str(nav), "--picture", str(picture))
    _, answer = answered(capsys, *command)
    assert all(set(each) == {"id", "az_deg", "el_deg"} for each in answer["satellites"])
    ElementTree.fromstring(picture.read_text(encoding="utf-8"))
    assert main(["sky", *command]) == 0
    assert "azimuth" in capsys.readouterr().out


def test_the_phones_own_angles(capsys, mount, shared_data: Path) -> None:
    """Azimuth and elevation within 0.01° of those that a phone's measurements carry (gnss_lib_py, MIT)."""
    folder = shared_data / "orbits"
    with (folder / "device_gnss.csv").open(encoding="utf-8", newline="") as file:
        rows = [r for r in csv.DictReader(file) if r["ConstellationType"] == "1" and r["SvAzimuthDegrees"]]
    seen = {f"G{int(r['Svid']):02d}": r for r in rows if r["utcTimeMillis"] == "1619735725999"}
    assert len(seen) == 7
    _, answer = answered(
        capsys,
        *("--mount", mount(ROOF_TOML), "--at", "37.395817,-122.102916", "--date", "2021-04-29"),
        *("--time", "22:35:25.999", "--nav", str(folder / "brdc1190.21n")),
    )
    ours = {each["id"]: each for each in answer["satellites"]}
    for name, row in seen.items():
        assert ours[name]["el_deg"] == pytest.approx(float(row["SvElevationDegrees"]), abs=0.01)
        assert ours[name]["az_deg"] == pytest.approx(float(row["SvAzimuthDegrees"]), abs=0.01)


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (("--at", "60.2"), "--at 60.2: degrees north and east are expected"),
        (("--at", "91,0"), "91 is no latitude"),
        (("--date", "yesterday"), "YYYY-MM-DD is expected"),
        (("--time", "7"), "7 is no time of day"),
        (("--nav", "nowhere.21n"), "there is none of this name"),
        (("--mount", "nowhere.toml"), "there is none of this name"),
    ],
)
def test_bad_input_is_refused_in_plain_words(capsys, mount, more: tuple[str, ...], says: str) -> None:
    """Exit code 2 and the technician's words, for a wrong place, day, time and file."""
    code, answer = answered(capsys, "--mount", mount(ROOF_TOML), *PLACE, *more)
    assert code == 2
    assert says in answer["error"]


def test_a_minus_is_taken_for_south(capsys, mount) -> None:
    """A latitude that begins with a minus is no option."""
    code, _ = answered(capsys, "--mount", mount(ROOF_TOML), "--at", "-33.1,151.2", "--date", "2021-04-29")
    assert code == 0
