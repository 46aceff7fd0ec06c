"""`backprobe keys …`: the keys to sign with, and those whose signatures are known here."""

from __future__ import annotations

import argparse
import json
import os
from pathlib import Path

from backprobe.errors import InputError, OptionError, shortened
from backprobe.job.entry import is_sha256
from backprobe.job.sign_off import fingerprint, grouped
from backprobe.keys.ed25519 import public_key_in
from backprobe.keys.folder import MOST_PEM_BYTES, KeyFolder, KnownKey, keys_folder

ACTIONS = ("list", "new", "show", "know")


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("action", metavar="list|new|show|know", choices=ACTIONS, help="what to do")
    parser.add_argument("name", metavar="NAME", nargs="?", help="the name of a key")
    parser.add_argument("key", metavar="KEY|FILE", nargs="?", help="for know: a public key, 64 hex digits or a .pem")
    keys_option(parser)
    parser.add_argument("--json", action="store_true", help="print JSON")


def keys_option(parser: argparse.ArgumentParser) -> None:
    """The option that says where keys are."""
    where = "the folder of keys; else $BACKPROBE_KEYS, else ~/.config/backprobe/keys"
    parser.add_argument("--keys", metavar="DIR", help=where)


def folder_of(chosen: argparse.Namespace) -> KeyFolder:
    """The folder of keys that the options and the environment name."""
    return keys_folder(chosen.keys, os.environ)


def run(chosen: argparse.Namespace) -> int:
    """Do one thing with the keys, print those it was about, and return 0. Raises InputError and OptionError."""
    folder = folder_of(chosen)
    keys = _done(folder, chosen)
    if chosen.json:
        rows = [{"name": k.name, "key": k.key, "fingerprint": fingerprint(k.key), "own": k.own} for k in keys]
        print(json.dumps({"ok": True, "folder": str(folder.path), "keys": rows}, ensure_ascii=False))
    else:
        print("\n".join(map(as_text, keys)) or f"no keys in {folder.path}; make one: backprobe keys new NAME")
    return 0


def _done(folder: KeyFolder, chosen: argparse.Namespace) -> tuple[KnownKey, ...]:
    if chosen.key is not None and chosen.action != "know":
        raise OptionError(f"{chosen.action} takes no key\nsee: backprobe keys --help")
    if chosen.action == "list":
        if chosen.name is not None:
            raise OptionError("list takes no name; one key: backprobe keys show NAME")
        return folder.known()
    if chosen.name is None:
        raise OptionError(f"which key? backprobe keys {chosen.action} NAME")
    if chosen.action == "new":
        return (folder.new(chosen.name),)
    if chosen.action == "know":
        if chosen.key is None:
            raise OptionError("which key? backprobe keys know NAME KEY, where KEY is 64 hex digits or a .pem file")
        return (folder.know(chosen.name, public_key(chosen.key)),)
    found = tuple(one for one in folder.known() if one.name == chosen.name)
    if not found:
        raise OptionError(f"no key is known as {chosen.name!r} in {folder.path}\nsee: backprobe keys list")
    return found


def public_key(given: str) -> str:
    """The public key (hex) that is written out, with or without spaces, or stands in a file."""
    plain = "".join(given.split()).lower()
    if is_sha256(plain):
        return plain
    pem = _content(Path(given))
    if pem is None:
        raise OptionError(f"{shortened(given)}: neither 64 hex digits nor a file that can be read")
    try:
        return public_key_in(pem)
    except InputError as fault:
        raise InputError(f"{given}: {fault.message}") from None


def _content(path: Path) -> bytes | None:
    """The first bytes of a plain file; None where there is none that can be read."""
    try:
        if not path.is_file():
            return None
        with path.open("rb") as file:
            return file.read(MOST_PEM_BYTES)
    except (OSError, ValueError):
        return None


def as_text(key: KnownKey) -> str:
    """One key in lines: its name, its fingerprint to be compared, and the public key to be handed on."""
    whose = "yours, to sign with" if key.own else "known"
    return f"{key.name} ({whose})\n  fingerprint  {grouped(fingerprint(key.key))}\n  public key   {key.key}"
