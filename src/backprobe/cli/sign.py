"""`backprobe sign JOBDIR`: judge a job and sign it off."""

from __future__ import annotations

import argparse
import json
import os
import time
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

from backprobe.cases.sign import SignedJob, Stamp, sign_folder
from backprobe.cli.keys import folder_of, keys_option
from backprobe.findings import Verdict
from backprobe.job.sign_off import grouped

RANDOM_BYTES = 10  # of an id


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("folder", metavar="JOBDIR", help="a job folder whose job.toml says how the job ends")
    parser.add_argument("--key", metavar="NAME", help="the key to sign with; needed where there are several")
    parser.add_argument("--name", metavar="NAME", help="who signs, where it is not the technician in job.toml")
    keys_option(parser)
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Sign the job off and say what was signed; 0 when it was signed. Raises JobError where it cannot be."""
    signer = folder_of(chosen).private(chosen.key)
    now_ms = time.time_ns() // 1_000_000
    at = datetime.fromtimestamp(now_ms // 1000, tz=UTC).isoformat().replace("+00:00", "Z")
    stamp = Stamp(at=at, time_ms=now_ms, random=(os.urandom(RANDOM_BYTES), os.urandom(RANDOM_BYTES)))
    signed = sign_folder(Path(chosen.folder), signer, stamp=stamp, name=chosen.name)
    print(json.dumps(as_json(signed), ensure_ascii=False) if chosen.json else as_text(signed, chosen.folder))
    return 0


def as_json(signed: SignedJob) -> dict[str, object]:
    """What was signed, as JSON values."""
    body = signed.entry.body
    return {
        "ok": True,
        "job": signed.entry.job,
        "end": str(signed.hand_over.end),
        "verdict": str(signed.verdict),
        "name": signed.name,
        "at": signed.entry.at,
        "id": signed.entry.id,
        "entries": signed.covers,
        "findings": len(signed.findings),
        "fingerprint": signed.fingerprint,
        "key": body["key"],
        "notes": list(signed.job.notes),
    }


def as_text(signed: SignedJob, folder: str) -> str:
    """What was signed, for people."""
    return "\n".join(_lines(signed, folder))


def _lines(signed: SignedJob, folder: str) -> Iterator[str]:
    yield f"signed off: job {signed.entry.job} as {signed.hand_over.end}, by {signed.name}, {signed.entry.at}"
    yield f"  covers {signed.covers} entries and {len(signed.findings)} findings; the worst of them: {signed.verdict}"
    for finding in signed.findings:
        if finding.verdict is not Verdict.HOLDS:
            yield f"    {finding.verdict}  {finding.what}: {finding.because}"
    yield f"  key    {grouped(signed.fingerprint)}"
    yield from (f"note: {note}" for note in signed.job.notes)
    yield f"next: the record to hand over: backprobe judge {folder} --record OUT.pdf"
