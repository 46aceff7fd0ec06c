"""`backprobe serve`: options become settings; a lead gets a login."""

from __future__ import annotations

import argparse
import io
import socket
from pathlib import Path

import pytest

from backprobe.cases.login import add_lead, log_in
from backprobe.cases.yard import open_yard
from backprobe.cli import serve
from backprobe.cli.main import main
from backprobe.errors import OptionError

PASSWORD = "correct horse battery"


def chosen(*words: str) -> argparse.Namespace:
    """The options that words stand for."""
    parser = argparse.ArgumentParser()
    serve.options(parser)
    return parser.parse_args(words)


def test_only_what_was_given_becomes_a_setting() -> None:
    """Paths as paths; host and port out of one word."""
    assert serve.given(chosen()) == {}
    assert serve.given(chosen("--data", "d", "--listen", "0.0.0.0:8443", "--origin", "https://y")) == {
        "data": Path("d"),
        "host": "0.0.0.0",
        "port": 8443,
        "origin": "https://y",
    }


@pytest.mark.parametrize("text", ["8443", ":8443", "host:", "host:x", "host:70000"])
def test_a_place_to_listen_that_makes_no_sense_is_said(text: str) -> None:
    """With what is expected."""
    with pytest.raises(OptionError, match="HOST:PORT is expected"):
        serve.listened(text)


def test_a_lead_gets_a_login(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The password comes from the pipe; the lead can log in then."""
    monkeypatch.setattr("sys.stdin", io.StringIO(f"{PASSWORD}\n"))
    assert main(["serve", "--data", str(tmp_path), "--add-lead", "ada"]) == 0
    assert capsys.readouterr().out == "ada can log in\n"
    yard = open_yard(tmp_path)
    assert log_in(yard, "ada", password=PASSWORD).person.name == "ada"
    yard.store.close()


def test_an_open_door_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Listening to all without HTTPS: bad options, and why."""
    assert main(["serve", "--data", str(tmp_path), "--listen", "0.0.0.0:0"]) == 2
    assert "phones need HTTPS" in capsys.readouterr().err


def test_a_port_that_is_taken_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Bad options, where it would have listened, and what to do; nothing of the system's own words."""
    with socket.create_server(("127.0.0.1", 0)) as other:
        taken = other.getsockname()[1]
        assert main(["serve", "--data", str(tmp_path), "--listen", f"127.0.0.1:{taken}"]) == 2
    said = capsys.readouterr()
    assert f"cannot listen on 127.0.0.1:{taken}: another program listens there" in said.err
    assert "stop it, or give another port (--listen HOST:" in said.err
    assert "Errno" not in said.err + said.out
    assert "serves" not in said.out


def test_an_address_that_is_not_this_machines_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """192.0.2.1 is nobody's (RFC 5737); nothing else stops it here: there is HTTPS, and somebody can log in."""
    yard = open_yard(tmp_path)
    add_lead(yard, "ada", password=PASSWORD)
    yard.store.close()
    words = ["serve", "--data", str(tmp_path), "--listen", "192.0.2.1:8750", "--origin", "https://yard.example"]
    assert main(words) == 2
    assert "cannot listen on 192.0.2.1:8750: this machine has no such address" in capsys.readouterr().err
