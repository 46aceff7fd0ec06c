"""A folder of keys."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.signing import KEY, OTHER_KEY, key_folder, private_pem

from backprobe.errors import BackprobeError, InputError, OptionError
from backprobe.keys.ed25519 import public_pem, signature_holds
from backprobe.keys.folder import KeyFolder, keys_folder


def mode_of(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


def test_a_new_key_is_its_owner_s_alone(tmp_path: Path):
    """Files 0600, folders 0700, whatever the umask; known at once; it signs."""
    before = os.umask(0)
    try:
        keys = KeyFolder(tmp_path / "some" / "keys")
        made = keys.new("Ines Okafor")
    finally:
        os.umask(before)
    assert mode_of(keys.path) == mode_of(keys.path / "known") == 0o700
    assert mode_of(keys.path / "Ines Okafor.pem") == mode_of(keys.path / "known" / "Ines Okafor.pem") == 0o600
    assert keys.known() == (made,)
    assert made.own
    assert keys.names() == {made.key: "Ines Okafor"}
    signer = keys.private("Ines Okafor")
    assert signer.key == made.key
    assert signature_holds(made.key, signer.sign(b"12.30"), message=b"12.30")


def test_a_name_is_given_once(tmp_path: Path):
    """No key is ever written over, by a new one or a known one."""
    keys = KeyFolder(tmp_path)
    made = keys.new("ines")
    keys.know("tam", OTHER_KEY)
    for name in ("ines", "tam"):
        with pytest.raises(InputError, match="there is a key of this name"):
            keys.new(name)
    with pytest.raises(InputError, match="another key is known by this name"):
        keys.know("tam", KEY)
    assert {one.name: one.key for one in keys.known()} == {"ines": made.key, "tam": OTHER_KEY}


def test_a_known_key_has_a_name_and_no_private_half(tmp_path: Path):
    """Known twice under the same name is known once."""
    keys = KeyFolder(tmp_path / "keys")
    assert keys.known() == ()
    for _ in range(2):
        assert not keys.know("tam", OTHER_KEY).own
    assert keys.names() == {OTHER_KEY: "tam"}
    with pytest.raises(OptionError, match=r"no private key 'tam'(?s:.*)make one: backprobe keys new NAME"):
        keys.private("tam")


def test_the_only_key_need_not_be_named(tmp_path: Path):
    """With two, the names are told."""
    keys = KeyFolder(tmp_path)
    with pytest.raises(OptionError, match="no key was named"):
        keys.private(None)
    keys.new("ines")
    assert keys.private(None).name == "ines"
    keys.new("tam")
    with pytest.raises(OptionError, match="there are: ines, tam"):
        keys.private(None)


@pytest.mark.parametrize("mode", [0o640, 0o604, 0o660, 0o644, 0o620, 0o777])
def test_a_private_key_that_others_may_read_is_refused(tmp_path: Path, mode: int):
    """With the line to type; typed, it signs again."""
    signer = key_folder(tmp_path).private("ines")
    signer.path.chmod(mode)
    with pytest.raises(InputError) as caught:
        signer.sign(b"12.30")
    message = caught.value.message
    assert message.startswith(f"{signer.path}: others may read this private key (its mode is {mode:04o})")
    command = message.rpartition("Type: ")[2]
    assert command == f"chmod 600 '{signer.path}'"
    assert private_pem().splitlines()[1].decode() not in message
    signer.path.chmod(0o600)
    assert signature_holds(KEY, signer.sign(b"12.30"), message=b"12.30")


def test_a_stricter_mode_is_fine(tmp_path: Path):
    """Read-only for its owner."""
    signer = key_folder(tmp_path).private("ines")
    signer.path.chmod(0o400)
    assert signer.key == KEY


@pytest.mark.parametrize(
    "name", ["", ".", "..", "../x", "a/b", ".hidden", "-n", "a\nb", "a\0b", "x" * 61, " a", "a\\b"]
)
def test_a_name_that_could_lead_elsewhere_is_refused(tmp_path: Path, name: str):
    """Nothing outside the folder is ever written or read by a name."""
    for action in (KeyFolder(tmp_path).new, lambda given: KeyFolder(tmp_path).know(given, KEY)):
        with pytest.raises(OptionError, match="not usable as the name of a key"):
            action(name)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("name", ["ines", "Інес О.", "yard-3_desk", "ines@yard", "7"])
def test_names_in_any_script(tmp_path: Path, name: str):
    """Letters, digits, spaces, and . _ @ -."""
    assert KeyFolder(tmp_path).new(name).name == name


def test_a_weak_key_is_never_known(tmp_path: Path):
    """Neither asked for nor found in the folder."""
    weak = "01" + "00" * 31
    keys = KeyFolder(tmp_path)
    with pytest.raises(InputError, match="one signature fits any text"):
        keys.know("mallory", weak)
    (tmp_path / "known").mkdir()
    (tmp_path / "known" / "mallory.pem").write_bytes(public_pem(weak))
    with pytest.raises(InputError, match=r"mallory\.pem: with this key one signature fits any text"):
        keys.known()


@given(content=st.binary(max_size=300))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60, deadline=None)
def test_whatever_stands_in_a_key_file(tmp_path: Path, content: bytes):
    """Refused in the project's own words, with the file."""
    known = tmp_path / "known"
    known.mkdir(exist_ok=True)
    for path in (known / "ines.pem", tmp_path / "ines.pem"):
        path.write_bytes(content)
        path.chmod(0o600)
    keys = KeyFolder(tmp_path)
    for action in (keys.known, lambda: keys.private("ines").key):
        with pytest.raises(BackprobeError, match=r"ines\.pem"):
            action()


def test_a_folder_that_cannot_be_used(tmp_path: Path):
    """A file where the folder should be."""
    (tmp_path / "keys").write_text("x", encoding="utf-8")
    with pytest.raises(InputError, match="cannot be used; the system says"):
        KeyFolder(tmp_path / "keys").new("ines")


def test_where_keys_are(tmp_path: Path):
    """The option, else BACKPROBE_KEYS, else the user's configuration."""
    environment = {"BACKPROBE_KEYS": "/k", "XDG_CONFIG_HOME": "/x", "HOME": "/home/ines"}
    assert keys_folder(str(tmp_path), environment).path == tmp_path
    assert keys_folder(None, environment).path == Path("/k")
    assert keys_folder(None, environment | {"BACKPROBE_KEYS": ""}).path == Path("/x/backprobe/keys")
    assert keys_folder(None, {"HOME": "/home/ines"}).path == Path("/home/ines/.config/backprobe/keys")
    with pytest.raises(OptionError, match="--keys DIR"):
        keys_folder(None, {})
