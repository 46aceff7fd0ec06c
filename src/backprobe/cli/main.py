"""The entry: one command, its exit code, and every error in plain words."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Sequence

from backprobe.cli.parser import parsed
from backprobe.errors import BackprobeError, error_json

BAD_INPUT = 2


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code: 0 or 1 as the command says, 2 for bad input."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    try:
        options, run = parsed(words)
        return run(options)
    except BackprobeError as error:
        _say(error, as_json="--json" in words)
        return BAD_INPUT
    except BrokenPipeError:  # the reader of our output has left, as `head` does
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        return 130


def _say(error: BackprobeError, *, as_json: bool) -> None:
    if not as_json:
        print(f"backprobe: {error.message}", file=sys.stderr)
        return
    print(json.dumps(error_json(error), ensure_ascii=False))
