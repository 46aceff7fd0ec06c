"""`backprobe judge`: what it prints, writes and leaves alone; exit codes; refusals in plain words."""

from __future__ import annotations

import io
import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pikepdf
import pytest
from jsonschema import Draft202012Validator
from tests.samples.jobs import DEMO, demo_job
from tests.samples.photos import bomb

from backprobe.cli.main import main

ROOT = DEMO.parent
CALL = "import sys; from backprobe.cli.main import main; sys.exit(main())"
Printed = pytest.CaptureFixture[str]


@pytest.fixture
def printed(capsys: Printed) -> Printed:
    """What the command prints."""
    return capsys


@pytest.fixture
def good(tmp_path: Path) -> Path:
    """A copy of the demo job that went well."""
    return demo_job(tmp_path, "truck-07")


@pytest.fixture
def wrong(tmp_path: Path) -> Path:
    """A copy of the demo job whose ignition wire is an accessory wire."""
    return demo_job(tmp_path, "truck-12")


def validator(name: str) -> Draft202012Validator:
    """The validator of one of the schemas."""
    return Draft202012Validator(json.loads((ROOT / "schemas" / f"{name}.schema.json").read_text(encoding="utf-8")))


def as_json(printed: Printed, *words: str) -> tuple[int, Any]:
    """Exit code and answer of a run with --json, which prints one line of JSON and nothing else."""
    code = main(["judge", *words, "--json"])
    out, err = printed.readouterr()
    assert err == ""
    assert out.count("\n") == 1
    return code, json.loads(out)


def as_text(printed: Printed, *words: str) -> tuple[int, str]:
    """Exit code and text of a run that was answered."""
    code = main(["judge", *words])
    out, err = printed.readouterr()
    assert err == ""
    return code, out


def files_in(folder: Path) -> dict[str, bytes]:
    """Every file of a folder with its bytes."""
    found = sorted(path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}


def edit(path: Path, before: str, after: str) -> None:
    """Change a text in a file; it must be there."""
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after), encoding="utf-8")


def test_the_good_truck(good: Path, printed: Printed):
    """Exit 0; both wires chosen, only signing left to do, and no other finding but those that hold."""
    code, text = as_text(printed, str(good))
    assert code == 0
    assert text.startswith("job LY-2026-07: holds\n")
    assert text.endswith("\nsupply: X12/4 RD\nignition: X12/9 VT\nnext: sign the job off: backprobe sign JOBDIR\n")
    left = [line for line in text.splitlines() if line.startswith(("  FAILS", "  open", "  thin"))]
    assert left == ["  open   Sign-off"]


def test_the_wrong_truck(wrong: Path, printed: Printed):
    """Exit 1; the wire meant for the ignition fails as an accessory wire, and what to do instead comes last."""
    code, text = as_text(printed, str(wrong))
    assert code == 1
    assert text.startswith("job LY-2026-12: fails\n")
    assert "  FAILS  Ignition wire: X12/6 GY\n         reads as accessory" in text
    assert "\nsupply: none yet\nignition: none yet\nnext: do not use X12/6 GY; measure X12/9 VT in accessory" in text


def test_a_finding_shows_its_figure_its_range_and_its_limit(good: Path, printed: Printed):
    """12.40 - 12.29 = 0.11 V ± 0.04 V against 0.3 V, with what the limit rests on."""
    _, text = as_text(printed, str(good))
    assert (
        "  holds  X12/4 RD: drop under load\n"
        "         0.11 V (true value 0.07 to 0.15); limit at most 0.3 V, drop of the supply under a load of 1 to 2 A "
        "(common practice, no source)\n"
        "         12.40 V without load, 12.29 V at 1.5 A, key on\n"
    ) in text


@pytest.mark.parametrize(("truck", "code", "verdict"), [("truck-07", 0, "holds"), ("truck-12", 1, "fails")])
def test_json_follows_its_schema(tmp_path: Path, printed: Printed, truck: str, code: int, verdict: str):
    """One line of JSON, valid by schemas/judge.schema.json, with the verdict that the exit code stands for."""
    got, said = as_json(printed, str(demo_job(tmp_path, truck)))
    validator("judge").validate(said)
    assert (got, said["verdict"]) == (code, verdict)
    assert said["record"] is None


def test_text_and_json_say_the_same(wrong: Path, printed: Printed):
    """Every finding of the one stands in the other, and so do the pair and the next step."""
    _, text = as_text(printed, str(wrong))
    _, said = as_json(printed, str(wrong))
    for found in said["findings"]:
        assert found["what"] in text
        assert found["because"] in text
    assert f"next: {said['next']}\n" in text


def test_the_record_is_archival_with_the_journal_inside(good: Path, tmp_path: Path, printed: Printed):
    """PDF/A-3, two to four pages, journal.jsonl inside byte for byte; a folder that is not there yet is made."""
    out = tmp_path / "records" / "2026" / "truck-07.pdf"
    code, said = as_json(printed, str(good), "--record", str(out))
    assert (code, said["record"]) == (0, str(out))
    with pikepdf.open(io.BytesIO(out.read_bytes())) as pdf:
        with pdf.open_metadata() as metadata:
            assert metadata["pdfaid:part"] == "3"
        assert 2 <= len(pdf.pages) <= 4
        assert pdf.attachments["journal.jsonl"].get_file().read_bytes() == (good / "journal.jsonl").read_bytes()


def test_a_photo_that_cannot_be_shown_is_a_note_and_no_more(good: Path, tmp_path: Path, printed: Printed):
    """A bomb among the photos: said in the answer, the job holds as before, the record is written."""
    (good / "photos" / "bomb.png").write_bytes(bomb())
    code, said = as_json(printed, str(good), "--record", str(tmp_path / "out.pdf"))
    assert code == 0
    assert [note.split(";")[0] for note in said["notes"]] == ["photos/bomb.png cannot be shown"]
    assert (tmp_path / "out.pdf").read_bytes().startswith(b"%PDF")


def test_the_record_of_a_failing_job_is_written_too(wrong: Path, tmp_path: Path, printed: Printed):
    """Exit 1 and a record of what is wrong."""
    out = tmp_path / "truck-12.pdf"
    assert as_text(printed, str(wrong), "--record", str(out))[0] == 1
    with pikepdf.open(out) as pdf:
        assert str(pdf.docinfo["/Subject"]).startswith("fails: ")


def test_a_second_run_changes_nothing(good: Path, tmp_path: Path, printed: Printed):
    """The folder, journal and blobs are byte for byte what they were, and the answer is the same."""
    first = as_json(printed, str(good))
    before = files_in(good)
    assert as_json(printed, str(good)) == first
    assert files_in(good) == before
    assert {"journal.jsonl", "job.toml", "readings.csv", "recordings/crank.csv"} < set(before)


def test_the_technician_s_files_are_never_touched(wrong: Path, printed: Printed):
    """What was in the folder before is there after, byte for byte."""
    before = files_in(wrong)
    as_text(printed, str(wrong))
    after = files_in(wrong)
    assert {name: after.get(name) for name in before} == before


def test_an_earlier_record_is_written_over(good: Path, tmp_path: Path, printed: Printed):
    """A PDF, or an empty file, makes room for the new one."""
    out = tmp_path / "out.pdf"
    out.touch()
    as_text(printed, str(good), "--record", str(out))
    assert out.read_bytes().startswith(b"%PDF")
    as_text(printed, str(good), "--record", str(out))
    assert out.read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize("name", ["journal.jsonl", "job.toml", "readings.csv", "recordings/crank.csv"])
def test_a_record_never_takes_the_place_of_evidence(good: Path, printed: Printed, name: str):
    """--record on a file of the job: refused, and the file is what it was."""
    as_text(printed, str(good))
    before = files_in(good)
    code, said = as_json(printed, str(good), "--record", str(good / name))
    assert (code, said["code"]) == (2, "job")
    assert "there is a file of this name that is no PDF; it was left as it is" in said["error"]
    assert files_in(good) == before


def photo(folder: Path) -> None:
    (folder / "recordings" / "photo.jpg").write_bytes(b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(200))


def zeros(folder: Path) -> None:
    (folder / "recordings" / "crank.csv").write_bytes(bytes(5000))


def emptied(name: str) -> Callable[[Path], None]:
    return lambda folder: (folder / name).write_bytes(b"")


def written(name: str, text: str) -> Callable[[Path], None]:
    return lambda folder: (folder / name).write_text(text, encoding="utf-8") and None


NOT_ONE = "wire,key,volts\nRed,onn,12.3\nBlue,off,x\n"
DEFECTS: dict[str, tuple[Callable[[Path], None], str, str]] = {
    "no such folder": (shutil.rmtree, "job", "a job folder is expected; there is no folder of this name"),
    "no job sheet": (lambda at: (at / "job.toml").unlink(), "job", "there is no job.toml in it"),
    "a folder that is a file": (
        lambda at: (shutil.rmtree(at), at.write_text("x"))[0],
        "job",
        "a job folder is expected",
    ),
    "a typo": (lambda at: edit(at / "job.toml", "plate =", "palte ="), "unreadable", "did you mean plate?"),
    "no equals sign": (
        lambda at: edit(at / "job.toml", "system_V = 12", "system_V 12"),
        "unreadable",
        "job.toml, line 11: system_V 12",
    ),
    "no unit sheet": (
        lambda at: (at / ".." / "unit.toml").unlink(),
        "job",
        "as the unit's sheet; there is no such file",
    ),
    "a photo among the recordings": (photo, "unreadable", "photo.jpg\nexpected: a text file; this looks like a photo"),
    "a recording of zeros": (zeros, "unreadable", "crank.csv"),
    "a table without one good row": (written("readings.csv", NOT_ONE), "unreadable", "not one of 2 rows can be read"),
    "a table without a header": (written("readings.csv", "1,2,3\n"), "unreadable", "readings.csv, line 1"),
    "a table of a million volts": (
        written("readings.csv", "wire,key,volts\nRed,on,1000000\n"),
        "unreadable",
        "readings.csv, line 2",
    ),
    "an empty job sheet": (emptied("job.toml"), "unreadable", "this one is empty"),
    "an empty table": (emptied("readings.csv"), "unreadable", "this one is empty"),
    "an empty recording": (emptied("recordings/crank.csv"), "unreadable", "this one is empty"),
    "an empty unit sheet": (emptied("../unit.toml"), "unreadable", "this one is empty"),
    "a journal that is none": (written("journal.jsonl", '{"a":1}\n'), "journal", "journal line 1: not an entry"),
    "a journal that is a folder": (lambda at: (at / "journal.jsonl").mkdir(), "job", "journal.jsonl: cannot be used"),
    "recordings that are a file": (
        lambda at: (shutil.rmtree(at / "recordings"), (at / "recordings").touch())[0],
        "job",
        "a folder of recordings is expected",
    ),
}


@pytest.mark.parametrize("defect", DEFECTS)
def test_bad_input_is_refused_in_plain_words(good: Path, printed: Printed, defect: str):
    """Exit 2; on --json the shape of all refusals; without it words on stderr, nothing on stdout, no traceback."""
    spoil, code, words = DEFECTS[defect]
    spoil(good)
    got, said = as_json(printed, str(good))
    validator("error").validate(said)
    assert (got, said["code"]) == (2, code)
    assert words in said["error"]
    assert main(["judge", str(good)]) == 2
    out, err = printed.readouterr()
    assert out == ""
    assert err == f"backprobe: {said['error']}\n"
    assert "Traceback" not in err


@pytest.mark.parametrize("defect", DEFECTS)
def test_nothing_is_lost_by_a_refusal(good: Path, printed: Printed, defect: str):
    """What stood in the folder before the refusal stands there after it, byte for byte."""
    spoil, _, _ = DEFECTS[defect]
    spoil(good)
    before = files_in(good.parent)
    main(["judge", str(good)])
    printed.readouterr()
    after = files_in(good.parent)
    assert {name: after.get(name) for name in before} == before


def test_a_journal_that_was_altered_is_refused(good: Path, printed: Printed):
    """One figure changed in the journal: named with its line, and nothing is written."""
    as_text(printed, str(good))
    edit(good / "journal.jsonl", '"12.62"', '"12.26"')
    before = files_in(good)
    code, said = as_json(printed, str(good))
    assert (code, said["code"]) == (2, "journal")
    assert "altered after writing" in said["error"]
    assert files_in(good) == before


def test_a_record_that_cannot_be_written(good: Path, tmp_path: Path, printed: Printed):
    """Below a file, and in the place of a folder: refused with the path and the system's reason."""
    for out in (good / "job.toml" / "out.pdf", good):
        code, said = as_json(printed, str(good), "--record", str(out))
        validator("error").validate(said)
        assert (code, said["code"]) == (2, "job")
        assert said["error"].startswith(f"the record could not be written to {out}: ")


@pytest.mark.parametrize("words", [[], ["--nonsense"], ["a", "b"], ["--record"]])
def test_bad_options_have_the_same_shape(printed: Printed, words: list[str]):
    """Exit 2 and code 'option', with where to look."""
    code, said = as_json(printed, *words)
    validator("error").validate(said)
    assert (code, said["code"]) == (2, "option")
    assert "--help" in said["error"]


def test_lines_that_were_passed_over_are_shown_and_counted(good: Path, printed: Printed):
    """A mistyped line of the table, and 30 torn rows of the recording, of which 20 are shown."""
    edit(good / "readings.csv", "X12/6 GY,accessory,12.49", "X12/6 GY,acessory,12.49")
    rows = (good / "recordings" / "crank.csv").read_text(encoding="utf-8").splitlines(keepends=True)
    torn = [f"{row.split(',')[0]},oops\n" if 100 <= at < 130 else row for at, row in enumerate(rows)]
    (good / "recordings" / "crank.csv").write_text("".join(torn), encoding="utf-8")
    _, text = as_text(printed, str(good))
    assert "passed over: readings.csv, line 7: X12/6 GY,acessory,12.49" in text
    assert text.count("passed over: crank.csv, line ") == 20
    assert "passed over: 10 more lines of crank.csv\n" in text


def test_what_a_recording_leaves_uncertain_is_said(good: Path, printed: Printed):
    """A recording without a battery channel: the note names its file."""
    edit(good / "recordings" / "crank.csv", ",battery,", ",X9/1 RD,")
    _, text = as_text(printed, str(good))
    assert "note: crank.csv: no battery channel: cranks were looked for on " in text


def test_a_file_that_is_no_recording_is_noted(good: Path, printed: Printed):
    """A folder among the recordings is passed over and named."""
    (good / "recordings" / "old").mkdir()
    assert "note: recordings/old was passed over: not a plain file\n" in as_text(printed, str(good))[1]
    assert as_json(printed, str(good))[1]["notes"] == ["recordings/old was passed over: not a plain file"]


def called(*words: str, encoding: str = "utf-8") -> subprocess.CompletedProcess[bytes]:
    """The command in a process of its own, with the given encoding of what it prints."""
    env = {**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONIOENCODING": encoding}
    return subprocess.run([sys.executable, "-c", CALL, "judge", *words], capture_output=True, env=env, check=False)


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "utf-8"])
def test_any_terminal_can_print_it(good: Path, encoding: str):
    """Ω and a file name that is no text: letters that the terminal lacks come by their number, and JSON stays JSON."""
    odd = os.fsdecode(b"cr\xe4nk.csv")
    (good / "recordings" / "crank.csv").rename(good / "recordings" / odd)
    text, answer = called(str(good), encoding=encoding), called(str(good), "--json", encoding=encoding)
    assert (text.returncode, text.stderr, answer.returncode, answer.stderr) == (0, b"", 0, b"")
    assert ("MΩ".encode() if encoding == "utf-8" else rb"M\u03a9") in text.stdout
    said = json.loads(answer.stdout.decode(encoding))
    validator("judge").validate(said)
    assert [each["file"] for each in said["recordings"]] == [odd]


def test_a_reader_that_left_is_no_fault(wrong: Path):
    """Into a pipe that nobody reads: no traceback, and 141 as the shell says it, not the code of a job that holds."""
    reader, writer = os.pipe()
    os.close(reader)
    env = {**os.environ, "PYTHONPATH": str(ROOT / "src")}
    command = [sys.executable, "-c", CALL, "judge", str(wrong)]
    done = subprocess.run(command, stdout=writer, stderr=subprocess.PIPE, env=env, check=False)
    os.close(writer)
    assert (done.returncode, done.stderr) == (141, b"")


def test_a_fleets_policy_tightens_the_judgement(good: Path, tmp_path: Path, printed: Printed):
    """Truck 7's ground drops 18 mV: within 100 mV, not within the fleet's 15 mV; in the folder or named."""
    policy = tmp_path / "fleet.toml"
    policy.write_text("[join]\nground_drop_mV = 15\n", encoding="utf-8")
    code, answer = as_json(printed, str(good), "--policy", str(policy))
    validator("judge").validate(answer)
    found = next(each for each in answer["findings"] if each["id"] == "join_ground_drop")
    assert (code, answer["policy"], found["verdict"], found["limit"]["value"]) == (1, "fleet.toml", "fails", 15.0)
    assert found["limit"]["basis"].startswith("fleet.toml, the fleet's own policy; without it 100 mV")
    policy.rename(good / "policy.toml")
    code, answer = as_json(printed, str(good))
    assert (code, answer["policy"]) == (1, "policy.toml")


def test_a_policy_that_would_loosen_is_refused_before_anything_is_written(good: Path, printed: Printed):
    """Nothing is judged by a looser limit, and no journal begun."""
    (good / "policy.toml").write_text("[join]\nground_drop_mV = 500\n", encoding="utf-8")
    assert main(["judge", str(good)]) == 2
    assert "policy.toml, line 2" in printed.readouterr().err
    assert not (good / "journal.jsonl").exists()
