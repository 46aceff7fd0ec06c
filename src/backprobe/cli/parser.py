"""Options from a command line, with bad ones answered in the same shape as any other error."""

from __future__ import annotations

import argparse
import re
from collections.abc import Callable, Sequence
from importlib import import_module
from typing import NoReturn

from backprobe import __version__
from backprobe.errors import OptionError

# One line a command; its module is loaded only when it is asked for, so that the first answer comes at once.
COMMANDS = {
    "probe": "which wire is which: a table of readings or a recording",
    "judge": "a job folder: findings, and the record on paper",
    "join": "whether the wiring of a job will hold: wire, fuse, ground, joint",
    "prove": "what the unit reported, held against what the hand did with the key",
    "bus": "what the vehicle's own bus says of its key, its supply and itself",
    "corners": "which corner a place lies at: an index of street corners out of a map",
    "roster": "what a list of vehicles or units holds, and which of its cells cannot be taken",
    "hand-in": "job folders into the store that serve shows",
    "serve": "the server: what phones hand in, the desk, the pages",
    "sign": "sign a job off when it is handed over",
    "verify": "whether a record or a job folder is what was signed, and by whom",
    "keys": "the keys to sign with, and those that are known",
    "wire": "what a length of wire resists",
    "fuse": "whether a fuse protects its wire",
    "battery": "how full a battery is, from its volts at rest",
    "sky": "which place for the unit sees the sky, before anything is fixed",
    "reception": "what the receiver hears where it sits, and which side of the sky is blocked",
    "parked": "how many days a parked vehicle still starts",
}


_NEGATIVE = re.compile(r"-[0-9.]")


class Parser(argparse.ArgumentParser):
    """A parser that raises OptionError instead of leaving."""

    def error(self, message: str) -> NoReturn:
        """Raise OptionError with the parser's message."""
        raise OptionError(f"{message}\nsee: {self.prog} --help")


def parsed(arguments: Sequence[str]) -> tuple[argparse.Namespace, Callable[[argparse.Namespace], int]]:
    """The options and the command to run. Raises OptionError; leaves with 0 after --help and --version."""
    top = Parser(prog="backprobe", description="Turns an installer's evidence into findings.", allow_abbrev=False)
    top.add_argument("--version", action="version", version=f"backprobe {__version__}")
    commands = top.add_subparsers(dest="command", metavar="COMMAND", required=True, parser_class=Parser)
    wanted = next((word for word in arguments if word in COMMANDS), None)
    chosen = {name: commands.add_parser(name, help=text, allow_abbrev=False) for name, text in COMMANDS.items()}
    if wanted is None:
        top.parse_args(arguments)
        raise OptionError("no command was given\nsee: backprobe --help")
    module = import_module(f"backprobe.cli.{wanted.replace('-', '_')}")
    module.options(chosen[wanted])
    return top.parse_args(joined(arguments)), module.run


def joined(arguments: Sequence[str]) -> list[str]:
    """The words with a value that begins with a minus joined to its option, so that it is not taken for one itself.

    >>> joined(["prove", "--at", "-33.1,151.2", "--json"])
    ['prove', '--at=-33.1,151.2', '--json']
    """
    words: list[str] = []
    for word in arguments:
        option = words[-1] if words else ""
        if _NEGATIVE.match(word) and option.startswith("--") and "=" not in option:
            words[-1] = f"{option}={word}"
        else:
            words.append(word)
    return words
