"""The sign-offs of a job folder: which there are, which one stands, and whether it is still judged as it was."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any

from backprobe.cases.import_folder import Imported
from backprobe.errors import JournalError
from backprobe.files.blobs import is_kept, read_blob
from backprobe.findings import Finding
from backprobe.job.kinds import text
from backprobe.job.sign_off import SignOff
from backprobe.job.signed import FINDING, Signed, sign_offs, widest
from backprobe.keys.ed25519 import signature_holds
from backprobe.stages.hand_over.ending import ENDING

SHOWN = 3
NAME_UNKNOWN = "a person whose name is not at hand"


def sign_offs_of(imported: Imported) -> tuple[Signed, ...]:
    """All sign-offs in the folder's journal, in their order."""
    return sign_offs(imported.journal.lines, signature_holds)


def standing(imported: Imported) -> SignOff | None:
    """The sign-off that covers all there is and whose signature holds, the last of several; None where there is none.

    Whose key it is, is not asked here.
    """
    found = sign_offs_of(imported)
    best = widest(imported.journal.lines, [one for one in found if one.holds])
    return best[0].sign_off if best is not None and not best[1] and all(one.holds for one in found) else None


def signer_name(imported: Imported, sign_off: SignOff) -> str:
    """The name of whoever signed, from the blob that holds it."""
    by = next((entry for entry in imported.journal.entries if entry.id == sign_off.entry.by), None)
    sha256 = None if by is None else text(by.body, "sha256")
    said = None if sha256 is None else read_json(imported, sha256)
    name = said.get("name") if said is not None else None
    return name if isinstance(name, str) and name else NAME_UNKNOWN


def read_json(imported: Imported, sha256: str) -> Mapping[str, Any] | None:
    """The table that a blob holds as JSON; None where the blob is not there or is no such table."""
    content = blob_bytes(imported, sha256)
    try:
        value = None if content is None else json.loads(content)
    except ValueError:
        return None
    return value if isinstance(value, dict) else None


def blob_bytes(imported: Imported, sha256: str) -> bytes | None:
    """The bytes of a blob; None where it is missing or altered."""
    folder = imported.folder.path
    try:
        return read_blob(folder, sha256) if is_kept(folder, sha256) else None
    except JournalError:
        return None


def judged_otherwise(imported: Imported, findings: Sequence[Finding]) -> tuple[str, ...]:
    """A note on what the engine at hand judges otherwise than what was signed, from the same evidence; else nothing."""
    sign_off = standing(imported)
    signed = None if sign_off is None else read_json(imported, sign_off.judged.findings)
    if sign_off is None or signed is None:
        return ()
    then = [(one["id"], one["what"], one["verdict"]) for one in signed.get("findings", ()) if one["id"] != ENDING]
    now = [(one.id, one.what, str(one.verdict)) for one in findings if one.id not in (ENDING, FINDING)]
    if sorted(then) == sorted(now):
        return ()
    before = dict.fromkeys(what for _, what, _ in [*set(then) - set(now), *set(now) - set(then)])
    named = "; ".join(sorted(before)[:SHOWN])
    engine = sign_off.entry.engine
    return (f"backprobe {engine} judged otherwise when this was signed, from the same evidence: {named}",)
