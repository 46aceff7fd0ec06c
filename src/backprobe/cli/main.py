"""The entry: one command, its exit code, and every error in plain words."""

from __future__ import annotations

import codecs
import contextlib
import io
import json
import os
import sys
from collections.abc import Sequence

from backprobe.cli.parser import parsed
from backprobe.errors import BackprobeError, error_json

BAD_INPUT = 2
STOPPED = 130  # as a shell says of what was stopped from the keyboard
CUT_OFF = 141  # and of what wrote to a reader that had left; here also of what could not be written at all


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code: 0 or 1 as the command says, 2 for bad input."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    _let_every_letter_be_printed()
    try:
        options, run = parsed(words)
        code = run(options)
        if sys.stdout is not None:  # a shell may start us without one
            sys.stdout.flush()
        return code
    except BackprobeError as error:
        _say(error, as_json="--json" in words)
        return BAD_INPUT
    except BrokenPipeError:  # the reader of our output has left, as `head` does
        _write_no_more()
        return CUT_OFF
    except OSError as error:  # files that cannot be read were refused above: this is our own output
        print(f"backprobe: the answer could not be written: {error.strerror or error}", file=sys.stderr)
        _write_no_more()
        return CUT_OFF
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        return STOPPED


def _let_every_letter_be_printed() -> None:
    """What a terminal has no letter for is written by its number, as JSON writes it, instead of ending in an error."""
    codecs.register_error("backprobe", _by_number)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backprobe")


def _write_no_more() -> None:
    """Nothing is left in the buffer that the interpreter would try to write on its way out."""
    with contextlib.suppress(OSError, ValueError, AttributeError):  # no stdout, or one that is no file
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _by_number(fault: UnicodeError) -> tuple[str, int]:
    if not isinstance(fault, UnicodeEncodeError):
        raise fault
    return json.dumps(fault.object[fault.start : fault.end])[1:-1], fault.end


def _say(error: BackprobeError, *, as_json: bool) -> None:
    if not as_json:
        print(f"backprobe: {error.message}", file=sys.stderr)
        return
    print(json.dumps(error_json(error), ensure_ascii=False))
