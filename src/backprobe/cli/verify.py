"""`backprobe verify FILE.pdf|JOBDIR`: is it what was signed, and by whom?"""

from __future__ import annotations

import argparse
import json
from pathlib import Path

from backprobe.cases.verify import verify
from backprobe.cli.keys import folder_of, keys_option
from backprobe.cli.verify_text import as_json, as_text
from backprobe.job.verified import Result


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("path", metavar="FILE.pdf|JOBDIR", help="a record made by backprobe, or a job folder")
    keys_option(parser)
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Verify: 0 when intact and signed with a known key, 1 when not; what cannot be read raises InputError."""
    done = verify(Path(chosen.path), folder_of(chosen).names())
    print(json.dumps(as_json(done), ensure_ascii=False) if chosen.json else as_text(done))
    return 0 if done.verified.result is Result.INTACT else 1
