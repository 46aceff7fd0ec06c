"""`backprobe prove` as it is typed."""

import json
from pathlib import Path

import pytest
from tests.samples.prove_cases import HEADER, STEPS, at, healthy, row

from backprobe.cli.main import main
from backprobe.cli.prove import place_of
from backprobe.errors import OptionError
from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.files.corner_file import write_corners

jsonschema = pytest.importorskip("jsonschema", reason="jsonschema is not installed")
ROOT = Path(__file__).resolve().parents[2]
ANSWER = jsonschema.Draft202012Validator(
    json.loads((ROOT / "schemas" / "prove.schema.json").read_text(encoding="utf-8"))
)
ACCESSORY = [row(102, "ignition_on", 1), row(220, "ignition_off", 0)]


@pytest.fixture
def typed(tmp_path, capsys):
    """Runs prove on a script and reports; gives exit code and what was printed."""

    def run(*words, rows=None, steps=STEPS, header=HEADER):
        script, reports = tmp_path / "script.csv", tmp_path / "reports.csv"
        script.write_text("\n".join(["t,key", *(f"{at(t)},{key}" for t, key in steps)]), encoding="utf-8")
        reports.write_text("\n".join([header, *(healthy() if rows is None else rows)]), encoding="utf-8")
        code = main(["prove", "--script", str(script), "--reports", str(reports), *words])
        return code, capsys.readouterr().out

    return run


def answered(output):
    """The JSON that was printed, which is as the schema says."""
    found = json.loads(output)
    ANSWER.validate(found)
    return found


@pytest.mark.parametrize(
    ("words", "rows", "code", "verdict"),
    [
        (("--at", "-33.1,151.2"), None, 0, "holds"),
        (("--at=-33.1,151.2,5",), None, 0, "holds"),
        ((), None, 1, "open"),
        (("--at", "-33.1,151.2"), [*[r for r in healthy() if "heartbeat" not in r], *ACCESSORY], 1, "fails"),
        (("--at", "-33.1001,151.2003,5"), None, 1, "fails"),
        (("--at", "-33.1,151.2"), [row(-60, "boot"), row(302, "ignition_on"), row(820, "ignition_off")], 0, "holds"),
    ],
)
def test_the_exit_code_is_that_of_the_verdict(typed, words, rows, code, verdict):
    """0 holds, 1 anything else."""
    found_code, output = typed("--unit-id", "L1", "--json", *words, rows=rows)
    assert (found_code, answered(output)["verdict"]) == (code, verdict)


def test_a_place_in_the_south_is_no_option(typed):
    """--at -33.1,151.2 as well as --at=-33.1,151.2."""
    plain = answered(typed("--unit-id", "L1", "--json", "--at", "-33.1,151.2")[1])
    joined = answered(typed("--unit-id", "L1", "--at=-33.1,151.2", "--json")[1])
    assert plain == joined
    assert plain["position"]["distance_m"] == 0.0


@pytest.mark.parametrize(
    ("text", "place"),
    [("-33.1,151.2", (-33.1, 151.2, None)), ("+1, -2 ,7.5", (1.0, -2.0, 7.5)), ("−33.1,0", (-33.1, 0.0, None))],
)
def test_places_are_read(text, place):
    """With a third figure for the accuracy; a typographic minus is one too."""
    found = place_of(text)
    assert (found.lat_deg, found.lon_deg, found.accuracy_m) == place


@pytest.mark.parametrize("text", ["", "1", "1,2,3,4", "91,0", "0,181", "a,b", "nan,0", "1,2,-3", "1;2"])
def test_places_that_are_none_are_refused(text):
    """With an example."""
    with pytest.raises(OptionError, match=r"-33\.1,151\.2"):
        place_of(text)


@pytest.mark.parametrize(
    ("words", "rows", "steps", "said"),
    [
        (("--unit-id", "L7"), [row(t) for t in range(0, 900, 60)], STEPS, "L7"),
        (("--unit-id", "L1"), [], STEPS, "reports beneath the header"),
        (("--unit-id", "L1"), None, [(0, "on"), (60, "crank")], "turned off"),
        (("--at", "x"), None, STEPS, "--at x"),
        (("--columns", "when=Sent"), None, STEPS, "--columns"),
        (("--lights", "nowhere.csv"), None, STEPS, "nowhere.csv"),
        (("--idle-volts", "12"), None, STEPS, "--transmit-volts"),
        ((), [*healthy(), row(0, unit="L2")], STEPS, "--unit-id"),
    ],
)
def test_bad_input_is_refused_in_plain_words(typed, words, rows, steps, said):
    """Exit 2 and the one shape of errors."""
    code, output = typed(*words, "--json", rows=rows, steps=steps)
    refused = json.loads(output)
    assert code == 2
    assert refused["ok"] is False
    assert said in refused["error"]


def test_script_and_reports_are_needed(capsys):
    """Or --plan."""
    assert main(["prove", "--json"]) == 2
    assert "--plan" in json.loads(capsys.readouterr().out)["error"]


def test_times_without_zone_are_taken_as_utc_and_that_is_said(typed):
    """The same proof as with zone."""
    rows = [line.replace("Z,", ",") for line in healthy()]
    found = answered(typed("--unit-id", "L1", "--at", "-33.1,151.2", "--json", rows=rows)[1])
    assert found["verdict"] == "holds"
    assert any("UTC" in note for note in found["notes"])


def test_columns_of_other_names(typed):
    """Given on the command line."""
    header = HEADER.replace("unit_id,t,", "Device,Sent at,")
    words = ("--unit-id", "L1", "--at", "-33.1,151.2", "--columns", "unit_id=Device,t=Sent at", "--json")
    assert answered(typed(*words, header=header)[1])["verdict"] == "holds"


def test_a_plan(capsys, tmp_path):
    """A script that can be filled in, or JSON; without script and reports."""
    assert main(["prove", "--plan", "--no-accessory"]) == 0
    lines = [line for line in capsys.readouterr().out.splitlines() if not line.startswith("#")]
    assert lines[0].startswith("t,key")
    assert [line.split(",")[1] for line in lines[1:]] == ["off", "on", "crank", "running", "off", "doors_shut"]
    assert main(["prove", "--plan", "--json", "--no-crank"]) == 0
    assert [step["key"] for step in answered(capsys.readouterr().out)["plan"]][3:6] == ["on", "running", "off"]


def test_the_answer_in_words(typed):
    """For people, with the same exit code."""
    code, output = typed("--unit-id", "L1", "--at", "-33.1,151.2")
    assert code == 0
    assert output.startswith("unit L1: holds\n")


def test_where_the_unit_reports_itself(typed, tmp_path):
    """With an index of corners, in lines and as JSON; without one nothing is said of it."""
    corner = Corner(-33.1, 151.2, ("Main Street", "Mill Lane"))
    index = CornerIndex(corners=(corner,), attribution="© somebody", source="m.osm.pbf")
    write_corners(index, tmp_path / "yard.corners")
    words = ("--at", "-33.1,151.2", "--corners", str(tmp_path / "yard.corners"))
    code, output = typed(*words)
    assert code == 0
    assert "reported from       corner of Main Street and Mill Lane (© somebody)" in output.splitlines()
    found = answered(typed(*words, "--json")[1])
    assert found["position"]["where"]["corner"]["streets"] == ["Main Street", "Mill Lane"]
    assert "where" not in answered(typed("--at", "-33.1,151.2", "--json")[1])["position"]


def test_corners_that_are_none(typed, tmp_path):
    """A table is no index."""
    (tmp_path / "x.csv").write_text("a,b\n", encoding="utf-8")
    code, output = typed("--corners", str(tmp_path / "x.csv"), "--json")
    assert code == 2
    assert "an index of corners" in json.loads(output)["error"]
