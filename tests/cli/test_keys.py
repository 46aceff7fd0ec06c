"""`backprobe keys`: making keys, showing them, and making others' keys known; no private key is ever printed."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from tests.samples.jobs import DEMO
from tests.samples.signing import KEY, OTHER_KEY, private_pem

from backprobe.cli.main import main
from backprobe.keys.ed25519 import public_pem

SCHEMA = json.loads((DEMO.parent / "schemas" / "keys.schema.json").read_text(encoding="utf-8"))
Printed = pytest.CaptureFixture[str]


@pytest.fixture(autouse=True)
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of keys of this test's own."""
    monkeypatch.setenv("BACKPROBE_KEYS", str(tmp_path / "keys"))
    return tmp_path / "keys"


def keys(printed: Printed, *words: str) -> list[dict[str, object]]:
    """The keys that a run with --json prints, held to the schema."""
    assert main(["keys", *words, "--json"]) == 0
    answer = json.loads(printed.readouterr().out)
    Draft202012Validator(SCHEMA).validate(answer)
    found = answer["keys"]
    assert isinstance(found, list)
    return found


def refusal(printed: Printed, *words: str) -> str:
    """The message of a run that is refused."""
    assert main(["keys", *words]) == 2
    out, err = printed.readouterr()
    assert out == ""
    return err


def test_a_key_is_made_and_listed(capsys: Printed, place: Path):
    """Its name, fingerprint and public key; the private one stays in its file."""
    assert keys(capsys, "list") == []
    (made,) = keys(capsys, "new", "ines")
    assert (made["name"], made["own"]) == ("ines", True)
    assert made["fingerprint"] == hashlib.sha256(bytes.fromhex(str(made["key"]))).hexdigest()
    assert keys(capsys, "list") == keys(capsys, "show", "ines") == [made]
    assert (place / "ines.pem").stat().st_mode & 0o777 == 0o600


def test_no_private_key_is_printed(capsys: Printed, place: Path):
    """In no form, by no action, in text and in JSON."""
    main(["keys", "new", "ines"])
    for words in (["list"], ["show", "ines"], ["new", "ines"], ["know", "tam", str(place / "ines.pem")]):
        for form in ([], ["--json"]):
            main(["keys", *words, *form])
    out, err = capsys.readouterr()
    body = (place / "ines.pem").read_text(encoding="utf-8").splitlines()[1]
    assert body[22:] not in out + err
    assert "PRIVATE" not in out + err


def test_others_keys_are_made_known(capsys: Printed, tmp_path: Path):
    """As 64 digits in any grouping, and out of a file."""
    grouped = " ".join(KEY[at : at + 4] for at in range(0, 64, 4)).upper()
    assert [one["key"] for one in keys(capsys, "know", "ines", grouped)] == [KEY]
    (tmp_path / "tam.pem").write_bytes(public_pem(OTHER_KEY))
    assert [one["key"] for one in keys(capsys, "know", "tam", str(tmp_path / "tam.pem"))] == [OTHER_KEY]
    assert [(one["name"], one["own"]) for one in keys(capsys, "list")] == [("ines", False), ("tam", False)]


def test_what_is_printed_for_people(capsys: Printed):
    """The fingerprint in groups of four, to be read out; where there is no key, how to make one."""
    assert main(["keys", "list"]) == 0
    assert "make one: backprobe keys new NAME" in capsys.readouterr().out
    main(["keys", "know", "tam", OTHER_KEY])
    lines = capsys.readouterr().out.splitlines()
    fingerprint = hashlib.sha256(bytes.fromhex(OTHER_KEY)).hexdigest()
    assert lines[0] == "tam (known)"
    assert lines[1].split() == ["fingerprint", *(fingerprint[at : at + 4] for at in range(0, 64, 4))]
    assert lines[2].split() == ["public", "key", OTHER_KEY]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["new"], "which key? backprobe keys new NAME"),
        (["know"], "which key? backprobe keys know NAME"),
        (["know", "tam"], "where KEY is 64 hex digits or a .pem file"),
        (["know", "tam", "12ab"], "neither 64 hex digits nor a file"),
        (["know", "tam", "n" * 5000], "neither 64 hex digits nor a file"),
        (["know", "tam", "/dev/zero"], "neither 64 hex digits nor a file"),
        (["know", "tam", "01" + "00" * 31], "one signature fits any text"),
        (["show", "tam"], "no key is known as 'tam'"),
        (["list", "tam"], "list takes no name"),
        (["new", "tam", KEY], "new takes no key"),
        (["new", "../tam"], "not usable as the name of a key"),
        (["make", "tam"], "invalid choice"),
        ([], "required"),
    ],
)
def test_what_makes_no_sense_is_refused(capsys: Printed, words: list[str], said: str):
    """Each in words that say what to type."""
    assert said in refusal(capsys, *words)


def test_a_private_key_is_not_taken_for_a_public_one(capsys: Printed, tmp_path: Path):
    """Named with its file."""
    (tmp_path / "ines.pem").write_bytes(private_pem())
    said = refusal(capsys, "know", "ines", str(tmp_path / "ines.pem"))
    assert "ines.pem: this is a private key: it stays with whoever signs" in said


def test_a_folder_may_be_named(capsys: Printed, tmp_path: Path, place: Path):
    """--keys goes before the environment."""
    keys(capsys, "new", "ines", "--keys", str(tmp_path / "other"))
    assert not place.exists()
    assert (tmp_path / "other" / "ines.pem").is_file()
