"""What `probe --json`, `judge --json` and every refusal print is what their JSON Schemas say, and nothing else."""

from __future__ import annotations

import contextlib
import copy
import io
import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from tests.samples.as_built import JOINTS
from tests.samples.jobs import CRANK, HEADER, ROWS, crank_recording, demo_job
from tests.samples.prove_world import FAULTS, reports_text, script_text, world_of

from backprobe.cli.main import main
from backprobe.errors import BackprobeError
from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.evidence.keys import Capture, Key
from backprobe.files.corner_file import write_corners
from backprobe.findings import Side, Stage, Standing, Verdict
from backprobe.limits.practice import PRACTICE
from backprobe.stages.probe.roles import Role

jsonschema = pytest.importorskip("jsonschema", reason="jsonschema is not installed")

ROOT = Path(__file__).resolve().parents[2]
SAMPLES = ROOT / "tests" / "samples"
NAMES = ("probe", "judge", "error")
# keys that stand there only where there is something to say: rows that were left out, by reason; a place in words
MOMENTS = {"t", "reported_t"}  # as a file has them: a text or a count of seconds
OPTIONAL = {"other_unit", "doubled", "unreadable", "before_power_up", "clock_never_set", "where"}
SCHEMAS = {name: json.loads((ROOT / "schemas" / f"{name}.schema.json").read_text(encoding="utf-8")) for name in NAMES}
VALIDATORS = {name: jsonschema.Draft202012Validator(schema) for name, schema in SCHEMAS.items()}
OBD = "ENGINE_RUN_TIME (),ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()\n" + "".join(
    f"{max(0, n - 6) // 2},{0 if n < 4 else 220 if n < 6 else 900},{12.1 if n < 4 else 9.1 if n < 6 else 14.1}\n"
    for n in range(40)
)
TABLES = {
    "a good pair": ROWS,
    "nothing but a header": "",
    "wires still to be read": "Red,,,,,\nBlue,,,,,\n",
    "half a table": "Red,on,12.3,,,\nRed,crank,10.1,min,,\nBlue,on,4.9,,,\n",
    "a start wire": "W,off,0,,,\nW,on,0.0,,,\nW,crank,10.4,max,,\nW,running,0.01,,,\n",
    "a level that fits nothing": "W,off,7.1,,,\nW,on,6.2,,,\nW,running,8.3,,,\n",
    "a mistyped line": ROWS + "Red,onn,12.3,,,\n",
    "positions that are not there": ROWS + "Red,isolated,na,,,\n",
}
RECORDINGS = {
    "the demo's crank": CRANK,
    "no battery channel": crank_recording("Red", "Violet", "Grey").replace(",battery,", ",Blue,", 1),
    "no crank": "time_s,battery,Red\n" + "".join(f"{n / 10:.1f},12.6{n % 3},12.5{n % 2}\n" for n in range(80)),
    "what a vehicle says of itself": OBD,
    "a key column": "time_s,Red,key\n"
    + "".join(f"{n / 10:.1f},{'10.1,crank' if 30 <= n < 40 else '12.5,on'}\n" for n in range(90)),
    "one row": "time_s,battery\n0,12.5\n",
}


def as_file(path: Path, text: str) -> str:
    """The name of a new file that holds the text."""
    path.write_text(text, encoding="utf-8")
    return str(path)


def probe_runs(at: Path) -> Iterator[list[str]]:
    """Command lines of `probe` over tables, recordings, systems, meters and options."""
    for number, rows in enumerate(TABLES.values()):
        file = as_file(at / f"table-{number}.csv", f"{HEADER}\n{rows}")
        for options in ("--captures display", "--captures min,logged", "--meter precise", "--no-crank"):
            yield ["probe", file, "--system", "12", *options.split()]
    for number, text in enumerate(RECORDINGS.values()):
        file = as_file(at / f"recording-{number}.csv", text)
        yield ["probe", file, "--system", "12", "--cylinders", "6", "--unit", str(ROOT / "demo/linden-yard/unit.toml")]
        yield ["probe", file, "--system", "24", "--no-accessory"]
    for path in sorted([*SAMPLES.glob("readings/*.csv"), *SAMPLES.glob("recordings/*.csv")]):
        yield ["probe", str(path), "--system", "12"]


def judge_runs(at: Path) -> Iterator[list[str]]:
    """Command lines of `judge`: both demo jobs, and jobs with other readings and recordings."""
    for truck in ("truck-07", "truck-12"):
        folder = demo_job(at, truck)
        yield ["judge", str(folder)]
        yield ["judge", str(folder), "--record", str(at / f"{truck}.pdf")]
    for number, rows in enumerate(TABLES.values()):
        folder = demo_job(at / f"table-{number}", "truck-12")
        as_file(folder / "readings.csv", f"{HEADER}\n{rows}")
        yield ["judge", str(folder)]
    for number, text in enumerate(RECORDINGS.values()):
        folder = demo_job(at / f"recording-{number}", "truck-07")
        as_file(folder / "recordings" / "more.csv", text)
        (folder / "readings.csv").unlink()
        yield ["judge", str(folder)]
    for number, joints in enumerate(
        (JOINTS, JOINTS.replace("fuse_A = 3", "fuse_A = 30"), '[[joint]]\nlead = "lamp"\n')
    ):
        folder = demo_job(at / f"joints-{number}", "truck-12")
        bare = (folder / "job.toml").read_text(encoding="utf-8").partition("[[joint]]")[0]
        (folder / "job.toml").write_text(bare + joints, encoding="utf-8")
        yield ["judge", str(folder)]
    folder = demo_job(at / "odd-rows", "truck-07")
    odd = "".join(f"LN2-00417,{t},,,,,,,,,0,\n" for t in ("soon", "1970-01-01T00:10:00Z", "2026-03-20T08:00:00Z"))
    as_file(folder / "reports.csv", (folder / "reports.csv").read_text(encoding="utf-8") + odd)
    corner = Corner(-33.1, 151.2, ("Main Street", "Mill Lane"))
    index = CornerIndex(corners=(corner,), attribution="© somebody", source="m.osm.pbf")
    write_corners(index, folder / "corners.txt")
    yield ["judge", str(folder)]
    for fault in FAULTS:
        folder = demo_job(at / f"proof-{fault}", "truck-07")
        world = world_of(fault, 7)
        as_file(folder / "key-script.csv", script_text(world))
        as_file(folder / "reports.csv", reports_text(world))
        yield ["judge", str(folder)]
    folder = demo_job(at / "bare", "truck-07")
    shutil.rmtree(folder / "recordings")
    (folder / "readings.csv").unlink()
    as_file(folder / "job.toml", '[vehicle]\nsystem_V = 24\nhas_crank = false\n[unit]\nsheet = "../unit.toml"\n')
    yield ["judge", str(folder)]
    folder = demo_job(at / "begun", "truck-07")
    shutil.rmtree(folder / "recordings")
    (folder / "reports.csv").unlink()
    as_file(folder / "readings.csv", f"{HEADER}\nX12/4 RD,off,12.62,,,\n")  # next under a lamp
    yield ["judge", str(folder)]


def refused_runs(at: Path) -> Iterator[list[str]]:
    """Command lines that cannot be answered."""
    folder = demo_job(at, "truck-07")
    empty, photo = as_file(at / "empty.csv", ""), at / "photo.csv"
    photo.write_bytes(b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(99))
    torn = as_file(at / "torn.csv", "wire,key,volts\nRed,onn,12.3\n")
    yield from ([], ["judge"], ["probe"], ["juge", "x"], ["judge", str(folder), "--nonsense"])
    yield from (["judge", str(at / "nowhere")], ["judge", str(at)], ["judge", str(folder), "--record", str(folder)])
    yield from (["probe", file, "--system", "12"] for file in (empty, str(photo), torn, str(at / "nowhere.csv")))
    yield from (["probe", torn, "--system", "13"], ["probe", torn])
    yield ["probe", torn, "--system", "12", "--captures", "eye"]
    as_file(folder / "job.toml", "[vehicle\n")
    yield ["judge", str(folder)]
    other = demo_job(at / "journal", "truck-12")
    as_file(other / "journal.jsonl", '{"a":1}\n')
    yield ["judge", str(other)]


Said = dict[str, Any]


@pytest.fixture(scope="module")
def answers(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Said]]:
    """What all those command lines print, by the schema that it is said to follow."""
    found: dict[str, list[Said]] = {}
    for name, runs in (("probe", probe_runs), ("judge", judge_runs), ("error", refused_runs)):
        place = tmp_path_factory.mktemp(name)
        found[name] = [printed(words, wanted=name) for words in runs(place)]
    return found


def printed(words: list[str], *, wanted: str) -> Said:
    """What a command prints with --json; its exit code goes with it."""
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        code = main([*words, "--json"])
    (line,) = out.getvalue().splitlines()
    said: Said = json.loads(line, parse_constant=lambda name: pytest.fail(f"{name} is no JSON"))
    assert (code == 2) == (wanted == "error"), (words, said)
    assert said["ok"] is (code != 2)
    return said


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_answer_follows_its_schema(answers: dict[str, list[Said]], name: str):
    """Tables, recordings, jobs and refusals: each answer is valid, and there are many."""
    assert len(answers[name]) >= 15
    for said in answers[name]:
        VALIDATORS[name].validate(said)


@pytest.mark.parametrize("name", SCHEMAS)
def test_no_other_command_s_answer_passes(answers: dict[str, list[Said]], name: str):
    """A schema tells its own answers from those of the others."""
    for other in set(SCHEMAS) - {name}:
        assert not [said for said in answers[other] if VALIDATORS[name].is_valid(said)]


# a table alone names no circuits, and only on a wire whose circuit is identified a reading under a lamp is asked for
ASKED_IN_JOBS_ALONE = {"probe": {"loaded"}}


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_key_of_the_schema_was_seen(answers: dict[str, list[Said]], name: str):
    """No key is allowed that no answer ever had."""
    seen = {key for said in answers[name] for key in keys_of(said)}
    assert set(allowed(SCHEMAS[name])) - seen == ASKED_IN_JOBS_ALONE.get(name, set())


def keys_of(value: object) -> Iterator[str]:
    """Every key at any depth."""
    for part in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from keys_of(part)
    yield from value if isinstance(value, dict) else ()


def allowed(schema: object) -> Iterator[str]:
    """Every property that a schema allows, at any depth."""
    if isinstance(schema, dict):
        yield from schema.get("properties", {}) if schema.get("type") == "object" else ()
    for part in schema.values() if isinstance(schema, dict) else schema if isinstance(schema, list) else ():
        yield from allowed(part)


def spoiled(value: Any) -> Iterator[Any]:
    """The same value with one thing wrong at a time: a key too many or too few, a figure as text, a word misspelt."""
    if isinstance(value, dict):
        yield {**value, "surprise": 1}
        for key, part in value.items():
            if key not in OPTIONAL:
                yield {name: other for name, other in value.items() if name != key}
            for wrong in spoiled(part) if key not in MOMENTS else ():
                yield {**value, key: wrong}
    elif isinstance(value, list):
        for at, part in enumerate(value[:1]):
            for wrong in spoiled(part):
                yield [*value[:at], wrong, *value[at + 1 :]]
    elif isinstance(value, bool) or value is None:
        yield "maybe" if value is not None else True
    elif isinstance(value, int | float):
        yield str(value)
    else:
        yield 3


@pytest.mark.parametrize("name", SCHEMAS)
def test_the_schemas_are_strict(answers: dict[str, list[Said]], name: str):
    """Each answer, spoiled in one place after the other, is refused."""
    richest = max(answers[name], key=lambda said: len(json.dumps(said)))
    tries = list(spoiled(copy.deepcopy(richest)))
    assert len(tries) > 5
    passed = [wrong for wrong in tries if VALIDATORS[name].is_valid(wrong)]
    assert passed == []


def test_words_are_those_of_the_engine():
    """Verdicts, keys, captures, roles, stages, sides, standings, limits and codes: the schemas list just these."""
    parts = SCHEMAS["judge"]["$defs"]
    limit = parts["limit"]["properties"]
    for listed, words in (
        (parts["verdict"], Verdict),
        (parts["key"], Key),
        (parts["capture"], Capture),
        (parts["role"], Role),
        (parts["stage"], Stage),
        (limit["side"], Side),
        (limit["standing"], Standing),
    ):
        assert set(listed["enum"]) == {str(word) for word in words}
    never_judged = {"after_minutes", "reading_most", "reading_least"}
    of_sheets = {"supply_unit_least", "supply_unit_most", "unit_backup_least", "fuse_asked"}
    assert set(limit["id"]["anyOf"][0]["enum"]) == (set(PRACTICE) - never_judged) | of_sheets
    assert set(SCHEMAS["error"]["properties"]["code"]["enum"]) == set(codes(BackprobeError))


def codes(error: type[BackprobeError]) -> Iterator[str]:
    """The codes of an error and of all that derive from it."""
    yield error.code
    for derived in error.__subclasses__():
        yield from codes(derived)


def test_what_both_answers_share_is_said_alike():
    """The same parts, word for word, in both schemas."""
    probe, judge = SCHEMAS["probe"]["$defs"], SCHEMAS["judge"]["$defs"]
    of_the_proof = {name for name in judge if name.startswith("proof")}
    assert set(probe) == set(judge) - {"recording"} - of_the_proof
    assert {name: judge[name] for name in probe} == probe


def test_the_proof_in_a_job_is_said_as_by_its_own_command():
    """The same parts as in the schema of `prove`, under names that tell them from the job's own."""
    own = json.loads((ROOT / "schemas" / "prove.schema.json").read_text(encoding="utf-8"))["$defs"]
    judge = SCHEMAS["judge"]["$defs"]
    inside = {name.removeprefix("proof_"): part for name, part in judge.items() if name.startswith("proof")}
    assert set(inside) == set(own) - {"plan", "step", "verdict"}
    for name, part in inside.items():
        plain = json.dumps(part).replace("#/$defs/proof_", "#/$defs/")
        assert json.loads(plain) == own[name], name


def test_every_finding_id_is_told_apart(answers: dict[str, list[Said]]):
    """Ids are those that the schema lists; the jobs above make most of them."""
    ids = {found["id"] for said in answers["judge"] for found in said["findings"]}
    assert {"vin_check_digit", "supply_wire", "supply_loaded_drop", "ignition_dead", "ignition_crank"} <= ids
    for name in ("supply_wird", "crank", "recording.dip.", "ignition_loaded_drop"):
        assert not VALIDATORS["judge"].evolve(schema=finding_schema()).is_valid({**a_finding(answers), "id": name})


def finding_schema() -> Said:
    """The schema of a finding alone."""
    return {**SCHEMAS["judge"]["$defs"]["finding"], "$defs": SCHEMAS["judge"]["$defs"]}


def a_finding(answers: dict[str, list[Said]]) -> Said:
    """One finding of the first job."""
    found: Said = answers["judge"][0]["findings"][0]
    return found


def test_a_place_goes_with_what_cannot_be_read():
    """A fault in a file has its place, other refusals have none."""
    place = {"file": "a.csv", "line": 3, "text": "Red,onn,12.3"}
    refusal = {"ok": False, "error": "words"}
    assert VALIDATORS["error"].is_valid({**refusal, "code": "unreadable", "place": place})
    assert not VALIDATORS["error"].is_valid({**refusal, "code": "unreadable"})
    assert VALIDATORS["error"].is_valid({**refusal, "code": "option"})
    assert not VALIDATORS["error"].is_valid({**refusal, "code": "option", "place": place})


def test_real_logs_follow_the_schema(shared_data: Path, tmp_path: Path):
    """Each real recording of a supply, judged as a 12 V vehicle's."""
    files = sorted((shared_data / "supply").glob("*.csv"))
    assert len(files) >= 4
    for path in files:
        said = printed(["probe", str(path), "--system", "12"], wanted="probe")
        VALIDATORS["probe"].validate(said)


PATTERN = re.compile(SCHEMAS["judge"]["properties"]["journal"]["properties"]["sha256"]["pattern"])


def test_a_digest_is_64_hex_digits(answers: dict[str, list[Said]]):
    """The journal's sha256 of each job."""
    assert all(PATTERN.fullmatch(said["journal"]["sha256"]) for said in answers["judge"])
    assert not PATTERN.fullmatch("0" * 63)
