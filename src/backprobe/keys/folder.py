"""A folder of keys: whose signatures are known here, and the private keys to sign with.

``NAME.pem`` is a private key, which only its owner may read; ``known/NAME.pem`` is a public one, whose signatures are
believed to be those of NAME.
"""

from __future__ import annotations

import os
import re
import stat
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from backprobe.errors import InputError, OptionError, shortened
from backprobe.keys.ed25519 import (
    is_weak,
    new_private_key,
    public_key_in,
    public_key_of,
    public_pem,
    sign,
)

KNOWN = "known"
MOST_PEM_BYTES = 10_000
OWNER_ONLY = 0o600
_OTHERS = 0o077
_NAME = re.compile(r"\w[\w.@ -]{0,59}")


@dataclass(frozen=True, slots=True)
class KnownKey:
    """A public key (hex) under the name it is known by here; `own` where the private key is here as well."""

    name: str
    key: str
    own: bool


@dataclass(frozen=True, slots=True)
class KeyFolder:
    """The keys at `path`; the folder need not be there until a key is put into it."""

    path: Path

    def new(self, name: str) -> KnownKey:
        """Make a key called `name` and make it known here. Raises InputError where the name is taken."""
        private, known = self._private(name), self._known(name)
        for taken in (private, known):
            if taken.exists():
                raise InputError(f"{taken}: there is a key of this name\nexpected: another name")
        pem = new_private_key()
        key = public_key_of(pem)
        with _about(private), _plain_words():
            _folder(self.path)
            _folder(self.path / KNOWN)
            _write(private, pem)
            _write(known, public_pem(key))
        return KnownKey(name, key, own=True)

    def know(self, name: str, key: str) -> KnownKey:
        """Believe that signatures with the public `key` (hex) are those of `name`.

        Raises InputError where the name is taken by another key, or the key cannot be one to sign with.
        """
        if is_weak(key):
            raise InputError(f"{key}: with this key one signature fits any text\nexpected: a key that somebody made")
        path = self._known(name)
        if path.exists():
            if _public_in(path) == key:
                return KnownKey(name, key, own=self._private(name).exists())
            raise InputError(f"{path}: another key is known by this name\nexpected: another name")
        with _about(path), _plain_words():
            _folder(self.path)
            _folder(self.path / KNOWN)
            _write(path, public_pem(key))
        return KnownKey(name, key, own=False)

    def known(self) -> tuple[KnownKey, ...]:
        """All known keys, by name. Raises InputError, naming the file, where one cannot be read."""
        with _about(self.path), _plain_words():
            found = sorted((self.path / KNOWN).glob("*.pem"))
        return tuple(KnownKey(path.stem, _public_in(path), own=(self.path / path.name).exists()) for path in found)

    def names(self) -> Mapping[str, str]:
        """The name of each known public key (hex)."""
        return {one.key: one.name for one in reversed(self.known())}

    def private(self, name: str | None) -> Signer:
        """The private key called `name`, the only one there is where none is named.

        Raises OptionError where there is none such, or several; InputError where others may read its file.
        """
        with _about(self.path), _plain_words():
            there = sorted(path.stem for path in self.path.glob("*.pem"))
        if name is None and len(there) == 1:
            name = there[0]
        if name is None or name not in there:
            have = f"there are: {', '.join(there)}" if there else "there is none; make one: backprobe keys new NAME"
            asked = "no key was named" if name is None else f"no private key {name!r}"
            raise OptionError(f"{asked} in {self.path}\n{have}")
        return Signer(name, self._private(name))

    def _private(self, name: str) -> Path:
        return self.path / f"{_fit(name)}.pem"

    def _known(self, name: str) -> Path:
        return self.path / KNOWN / f"{_fit(name)}.pem"


@dataclass(frozen=True, slots=True)
class Signer:
    """A private key on disk; its bytes are read when they are needed and never shown."""

    name: str
    path: Path

    @property
    def key(self) -> str:
        """The public key, in hex."""
        with _about(self.path):
            return public_key_of(self._pem())

    def sign(self, message: bytes) -> str:
        """The signature over `message`, in hex."""
        with _about(self.path):
            return sign(self._pem(), message)

    def _pem(self) -> bytes:
        mode = stat.S_IMODE(_stat(self.path).st_mode)
        if os.name == "posix" and mode & _OTHERS:
            raise InputError(
                f"others may read this private key (its mode is {mode:04o}); nothing was signed\n"
                f"expected: only you. Type: chmod 600 '{self.path}'"
            )
        return _bytes_of(self.path)


def keys_folder(chosen: str | None, environment: Mapping[str, str]) -> KeyFolder:
    """The folder of keys: the one chosen, else $BACKPROBE_KEYS, else the user's own (XDG base directories).

    >>> keys_folder(None, {"XDG_CONFIG_HOME": "/home/ines/.config"}).path
    PosixPath('/home/ines/.config/backprobe/keys')
    """
    named = chosen or environment.get("BACKPROBE_KEYS")
    if named:
        return KeyFolder(Path(named))
    base, home = environment.get("XDG_CONFIG_HOME"), environment.get("HOME")
    if not base and not home:
        raise OptionError("it is not known where your keys are: there is no HOME\nexpected: --keys DIR")
    return KeyFolder((Path(base) if base else Path(home or "") / ".config") / "backprobe" / "keys")


def _fit(name: str) -> str:
    if not _NAME.fullmatch(name):
        raise OptionError(
            f"{shortened(name)!r}: not usable as the name of a key\n"
            "expected: at most 60 letters, digits, spaces and . _ @ -, beginning with a letter or digit"
        )
    return name


def _public_in(path: Path) -> str:
    with _about(path):
        key = public_key_in(_bytes_of(path))
        if is_weak(key):
            raise InputError("with this key one signature fits any text; take the file away")
    return key


def _folder(path: Path) -> None:
    if not path.exists():
        path.mkdir(parents=True, mode=0o700)


def _write(path: Path, content: bytes) -> None:
    """Write a file that is not there yet and that only its owner may read."""
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OWNER_ONLY)
    with os.fdopen(handle, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _stat(path: Path) -> os.stat_result:
    with _plain_words():
        return path.stat()


def _bytes_of(path: Path) -> bytes:
    with _plain_words(), path.open("rb") as file:
        return file.read(MOST_PEM_BYTES)


@contextmanager
def _about(path: Path) -> Iterator[None]:
    """Say of which file a refusal is."""
    try:
        yield
    except InputError as fault:
        raise InputError(f"{path}: {fault.message}") from None


@contextmanager
def _plain_words() -> Iterator[None]:
    try:
        yield
    except OSError as fault:
        raise InputError(f"cannot be used; the system says: {fault.strerror or fault}") from None
