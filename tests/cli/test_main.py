"""The entry: exit codes, the shape of an error, and no traceback whatever comes in."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from backprobe.cli.main import BAD_INPUT, CUT_OFF, main

GOOD = "wire,key,volts\nRed,on,12.4\n"


def test_what_could_be_judged_exits_0(tmp_path, capsys):
    """A table with one reading has an answer."""
    table = tmp_path / "readings.csv"
    table.write_text(GOOD)
    assert main(["probe", str(table), "--system", "12", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["ok"] is True


@pytest.mark.parametrize(
    "words",
    [
        [],
        ["prob"],
        ["probe"],
        ["probe", "no-such-file.csv", "--system", "12"],
        ["probe", "x.csv", "--system", "13"],
        ["probe", "x.csv", "--system", "12", "--captures", "peak"],
        ["probe", "x.csv", "--system", "12", "--meter", "golden"],
        ["probe", "x.csv", "--system", "12", "--cylinders", "-4"],
        ["probe", "x.csv", "--system", "12", "--wobble"],
        ["judge", "no-such-folder"],
    ],
)
def test_bad_words_exit_2_in_plain_words_and_in_json(words, capsys):
    """The same refusal, on the terminal and for a script; nothing is printed as an answer."""
    assert main(words) == BAD_INPUT
    plain = capsys.readouterr()
    assert plain.out == ""
    assert plain.err.startswith("backprobe: ")
    assert main([*words, "--json"]) == BAD_INPUT
    refusal = json.loads(capsys.readouterr().out)
    assert refusal["ok"] is False
    assert refusal["error"]


def test_the_place_of_a_fault_is_in_the_json(tmp_path, capsys):
    """File, line and text of what could not be read."""
    table = tmp_path / "readings.csv"
    table.write_text("wire,key,volts\nRed,on,abc\n")
    assert main(["probe", str(table), "--system", "12", "--json"]) == BAD_INPUT
    assert json.loads(capsys.readouterr().out)["place"] == {"file": "readings.csv", "line": 2, "text": "Red,on,abc"}


CONTENT = st.one_of(st.binary(max_size=400), st.text(max_size=400).map(lambda text: (GOOD + text).encode("utf-8")))
ENTRY = "import sys; from backprobe.cli.main import main; sys.exit(main())"


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    content=st.one_of(st.binary(max_size=400), st.text(max_size=400).map(lambda text: (GOOD + text).encode("utf-8")))
)
def test_whatever_a_file_holds_there_is_an_answer_or_a_refusal(content, tmp_path):
    """Bytes of any kind come to exit 0 or 2, never to a traceback."""
    table = tmp_path / "readings.csv"
    table.write_bytes(content)
    assert main(["probe", str(table), "--system", "12", "--json"]) in (0, BAD_INPUT)


def test_as_a_program_it_prints_no_traceback(tmp_path):
    """What a shell sees: exit 2, one line, no stack."""
    words = [
        "-c",
        "import sys; from backprobe.cli.main import main; sys.exit(main())",
        "probe",
        str(tmp_path),
        "--system",
    ]
    ran = subprocess.run([sys.executable, *words, "12"], capture_output=True, text=True, check=False)
    assert ran.returncode == BAD_INPUT
    assert "Traceback" not in ran.stderr
    assert ran.stderr.startswith("backprobe: ")


def run_with(stdout, *words: str) -> subprocess.CompletedProcess[str]:
    """The program with its answer going to `stdout`."""
    return subprocess.run(
        [sys.executable, "-c", ENTRY, *words], stdout=stdout, stderr=subprocess.PIPE, text=True, check=False
    )


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no /dev/full to stand for a full disk")
def test_an_answer_that_cannot_be_written_is_said(tmp_path):
    """A full disk behind the output: one plain line, no stack."""
    table = tmp_path / "readings.csv"
    table.write_text(GOOD)
    with Path("/dev/full").open("w") as full:
        ran = run_with(full, "probe", str(table), "--system", "12")
    assert ran.returncode == CUT_OFF
    assert ran.stderr.startswith("backprobe: the answer could not be written: ")
    assert "Traceback" not in ran.stderr


WORDS = (
    "probe", "judge", "--system", "12", "-12", "１２", "--no-crank", "--captures", "min", "", "-1", "--meter", "x.toml",
    "--unit", "--cylinders", "9" * 30, "nan", "--json", "--", "-", "--wobble", "a\0b", "🚚", "--system=12",
)  # fmt: skip


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(words=st.lists(st.sampled_from(WORDS), max_size=7), begun=st.booleans())
def test_odd_words_are_answered_or_refused(words, begun, tmp_path, capsys):
    """Negative numbers, words out of place, foreign digits: exit 0 or 2, and JSON where it was asked for."""
    table = tmp_path / "readings.csv"
    table.write_text(GOOD)
    given_words = ["probe", str(table), "--system", "12", *words] if begun else words
    code = main(given_words)
    printed = capsys.readouterr()
    assert code in (0, BAD_INPUT)
    if code == BAD_INPUT and "--json" in given_words:
        assert json.loads(printed.out)["ok"] is False
    elif code == BAD_INPUT:
        assert printed.err.startswith("backprobe: ")
