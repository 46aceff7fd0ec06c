"""`backprobe serve`: the store, the calls of phones and desk, and the pages."""

from __future__ import annotations

import argparse
import getpass
import sys
from pathlib import Path

from backprobe.errors import OptionError

MOST_PORT = 65_535
READ_HEADERS_BYTES = 65_536


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("--data", metavar="DIR", help="the folder to keep everything in (backprobe-data)")
    parser.add_argument("--store", metavar="ADDRESS", help="a database elsewhere: postgresql+psycopg://user@host/name")
    parser.add_argument("--listen", metavar="HOST:PORT", help="where to listen (127.0.0.1:8750: this machine alone)")
    parser.add_argument("--certificate", metavar="FILE", help="the certificate for HTTPS, with its chain, as PEM")
    parser.add_argument("--key", metavar="FILE", help="the certificate's private key, as PEM")
    parser.add_argument("--origin", metavar="URL", help="how others reach the server: https://yard.example")
    parser.add_argument("--pages", metavar="DIR", help="the built pages, where they are not those installed")
    parser.add_argument("--name", metavar="TEXT", help="what a new organisation is called")
    parser.add_argument("--add-lead", metavar="LOGIN", help="give a lead a login, ask for the password, and leave")


def run(chosen: argparse.Namespace) -> int:
    """Serve until it is stopped; 0 then."""
    from backprobe.server.serving import serve, settings_from

    settings = settings_from(given(chosen))
    if chosen.add_lead is not None:
        from backprobe.cases.login import add_lead
        from backprobe.cases.yard import open_yard

        yard = open_yard(settings.data, address=settings.store, name=settings.name)
        who = add_lead(yard, chosen.add_lead, password=_password())
        yard.store.close()
        print(f"{who.name} can log in")
        return 0
    serve(settings, say=print)
    return 0


def given(chosen: argparse.Namespace) -> dict[str, object]:
    """The settings that were given as options; the others come from the environment or stay as they are."""
    names = ("data", "store", "certificate", "key", "origin", "pages", "name")
    found = {name: value for name in names if (value := getattr(chosen, name)) is not None}
    paths = {name: Path(value) for name, value in found.items() if name in ("data", "certificate", "key", "pages")}
    return {**found, **paths, **(listened(chosen.listen) if chosen.listen is not None else {})}


def listened(text: str) -> dict[str, object]:
    """Host and port of `--listen`. Raises OptionError.

    >>> listened("0.0.0.0:8443"), listened("[::1]:80")
    ({'host': '0.0.0.0', 'port': 8443}, {'host': '::1', 'port': 80})
    """
    host, _, port = text.rpartition(":")
    if not host or not port.isdecimal() or int(port) > MOST_PORT:
        raise OptionError(f"--listen {text}: HOST:PORT is expected, 0.0.0.0:8443")
    return {"host": host.removeprefix("[").removesuffix("]"), "port": int(port)}


def _password() -> str:
    """The password, typed unseen; from a pipe its first line."""
    if sys.stdin is not None and sys.stdin.isatty():
        return getpass.getpass("password: ")
    return sys.stdin.readline().rstrip("\n") if sys.stdin is not None else ""
