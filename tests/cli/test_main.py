"""The entry: exit codes, the shape of an error, and no traceback whatever comes in."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from backprobe.cli.main import BAD_INPUT, main

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
