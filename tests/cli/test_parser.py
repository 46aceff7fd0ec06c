"""Options are parsed by the command they belong to, and only that command is loaded."""

from __future__ import annotations

from importlib import import_module

import pytest

from backprobe.cli.parser import COMMANDS, Parser, parsed
from backprobe.errors import OptionError


@pytest.mark.parametrize("name", COMMANDS)
def test_each_command_has_its_module(name):
    """A command that is listed can be run: its module has options and run."""
    module = import_module(f"backprobe.cli.{name.replace('-', '_')}")
    assert callable(module.options)
    assert callable(module.run)


def test_the_command_of_the_word_is_given_back():
    """'probe' leads to the probe module with its options."""
    options, run = parsed(["probe", "file.csv", "--system", "24", "--no-crank"])
    assert (options.file, options.system, options.no_crank, options.no_accessory) == ("file.csv", 24, True, False)
    assert run.__module__ == "backprobe.cli.probe"


def test_a_bad_option_is_refused_with_where_to_look():
    """The message names the fault and the help."""
    with pytest.raises(OptionError, match=r"--system.*\nsee: backprobe probe --help"):
        parsed(["probe", "file.csv"])


def test_options_are_never_guessed_from_their_beginning():
    """'--sys' might mean something else tomorrow."""
    with pytest.raises(OptionError):
        parsed(["probe", "file.csv", "--sys", "12"])


def test_version_leaves_with_0(capsys):
    """--version prints the name with it."""
    with pytest.raises(SystemExit) as left:
        parsed(["--version"])
    assert left.value.code == 0
    assert capsys.readouterr().out.startswith("backprobe ")


def test_the_parser_raises_instead_of_leaving():
    """A refusal can be answered in JSON only if the parser does not end the program itself."""
    with pytest.raises(OptionError):
        Parser(prog="backprobe").parse_args(["--nothing"])
