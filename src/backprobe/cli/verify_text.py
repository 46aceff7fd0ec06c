"""A verification for people and as JSON values."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from backprobe.cases.at_hand import engine_sha256, limits_sha256
from backprobe.cases.verify import Verification
from backprobe.job.chain import Fault, Line
from backprobe.job.sign_off import grouped
from backprobe.job.signed import Signed
from backprobe.job.verified import Result

SHOWN = 20
HEADLINE = {
    Result.ALTERED: "altered: this is not what was signed",
    Result.NEVER_SIGNED: "never signed",
    Result.NOT_COVERED: "not wholly covered: the sign-off is older than what stands here now",
    Result.KEY_UNKNOWN: "intact, but the key it was signed with is not known here",
    Result.INTACT: "intact, and signed with a key that is known here",
}
NEXT = {
    Result.ALTERED: "do not rely on it; ask whoever made it for the record or the folder again",
    Result.NEVER_SIGNED: "ask for a signed record: backprobe sign JOBDIR",
    Result.NOT_COVERED: "look at what came later and have the job signed off again: backprobe sign JOBDIR",
}
PAGES = (
    "This says nothing about the printed pages: hold their verdict and figures against the signed findings, and their "
    "digest or its code against the journal's sha256 above."
)


def as_text(done: Verification) -> str:
    """The verification in lines."""
    return "\n".join(_printable(line) for line in _lines(done))


def _printable(line: str) -> str:
    """A line without what would steer a terminal: what is verified may come from anybody."""
    return "".join(letter if letter.isprintable() else " " for letter in line)


def _lines(done: Verification) -> Iterator[str]:
    verified = done.verified
    yield f"{done.path.name or done.path}: {HEADLINE[verified.result]}"
    yield f"  journal  {len(verified.rows.journal.lines)} entries, sha256 {done.sha256}"
    yield from (f"  {_place(fault)}{fault.what}" for fault in verified.faults[:SHOWN])
    yield from _more(len(verified.faults))
    for signed in verified.signed:
        yield from _sign_off(done, signed)
    yield from (f"  not covered  {_late(line)}" for line in verified.late[:SHOWN])
    yield from _more(len(verified.late))
    yield from (f"  not covered  {words}" for words in verified.pending)
    if verified.result is not Result.ALTERED:
        yield from _findings(done.findings)
        yield from _hand_over(done.hand_over)
    yield from (f"note: {note}" for note in _notes(done))
    then = next_step(done)
    yield from [f"next: {then}"] if then else []


def _place(fault: Fault) -> str:
    where = f"line {fault.line}, " if fault.line else ""
    named = f"entry {fault.entry}: " if fault.entry else ""
    return f"{where}{named}"


def _late(line: Line) -> str:
    return f"line {line.number}, entry {line.entry.id}: {line.entry.kind} by {line.entry.device!r}"


def _more(count: int) -> Iterator[str]:
    if count > SHOWN:
        yield f"  and {count - SHOWN} more"


def _sign_off(done: Verification, signed: Signed) -> Iterator[str]:
    """Who signed what, and when."""
    sign_off = signed.sign_off
    name = done.verified.known_as(signed)
    held = "" if signed.holds else "NOT HELD BY ITS SIGNATURE: "
    when = f"{sign_off.entry.at} by the signing device's clock" if sign_off.entry.at else "at a time not known"
    yield f"  signed   {held}{sign_off.judged.end}, {when}"
    yield f"           by {name or 'a key not known here'}: {grouped(sign_off.fingerprint)}"
    yield f"           over {sign_off.entries} entries; verdict {sign_off.judged.verdict}{_engine(signed)}"


def _engine(signed: Signed) -> str:
    judged = signed.sign_off.judged
    same = judged.engine is not None and judged.engine == engine_sha256()
    limits = "by the same limits" if judged.limits == limits_sha256() else "by other limits than those here"
    here = "the one here" if same else "not the one here"
    return f" (backprobe {signed.sign_off.entry.engine}, {here}, {limits})"


def _findings(findings: Mapping[str, object] | None) -> Iterator[str]:
    """The findings that were signed: counted, and those that do not hold named."""
    listed = [] if findings is None else _tables(findings.get("findings"))
    if not listed:
        return
    counts = Counter(str(one.get("verdict")) for one in listed)
    yield f"  findings  {len(listed)} were signed: " + ", ".join(f"{n} {word}" for word, n in sorted(counts.items()))
    short = [one for one in listed if one.get("verdict") != "holds"]
    yield from (f"    {one.get('verdict')}  {one.get('what')}: {one.get('because')}" for one in short[:SHOWN])
    yield from _more(len(short))


def _hand_over(hand_over: Mapping[str, object] | None) -> Iterator[str]:
    if hand_over is None:
        return
    for one in _tables(hand_over.get("missing")):
        yield f"  missing  {one.get('what')}, owed by {one.get('owed_by')} until {one.get('until')}"
    for name in ("undone", "restored", "told_driver"):
        items = hand_over.get(name)
        yield from (f"  {name.replace('_', ' ')}  {item}" for item in (items if isinstance(items, list) else []))
    if hand_over.get("why"):
        yield f"  why  {hand_over['why']}"


def _tables(value: object) -> list[Mapping[str, object]]:
    return [one for one in value if isinstance(one, Mapping)] if isinstance(value, list) else []


def _notes(done: Verification) -> Iterator[str]:
    """What this verification does not show."""
    if done.is_pdf:
        yield PAGES
    if done.only_named:
        yield f"files of the evidence that are named by digest only: {done.only_named}; the job folder has them"
    odd = done.verified.not_understood
    if odd:
        named = ", ".join(f"line {line.number} ({line.entry.kind}, entry {line.entry.id})" for line in odd[:SHOWN])
        yield f"not understood by this version of backprobe: {named}"
    yield from (f"{name} is attached as well; nobody has signed it" for name in done.beside)
    unknown = [one for one in done.verified.signed if one.holds and done.verified.known_as(one) is None]
    if done.verified.result is Result.INTACT and unknown:
        yield f"sign-offs by keys that are not known here: {len(unknown)}"


def next_step(done: Verification) -> str | None:
    """The one thing to do next; None where nothing is."""
    verified = done.verified
    if verified.result is not Result.KEY_UNKNOWN or verified.counts is None:
        return NEXT.get(verified.result)
    return (
        "ask the signer, by phone or on paper, for the fingerprint that `backprobe keys list` shows them; "
        f"only if it is the same: backprobe keys know NAME {verified.counts.sign_off.key}"
    )


def as_json(done: Verification) -> dict[str, object]:
    """The verification as JSON values."""
    verified = done.verified
    faults = [{"line": one.line or None, "id": one.entry or None, "what": one.what} for one in verified.faults]
    return {
        "ok": True,
        "result": str(verified.result),
        "file": str(done.path),
        "form": "record" if done.is_pdf else "folder",
        "journal": {"entries": len(verified.rows.journal.lines), "sha256": done.sha256},
        "first_altered": faults[0] if faults else None,
        "altered": faults,
        "not_covered": [
            {"line": one.number, "id": one.entry.id, "kind": one.entry.kind, "device": one.entry.device}
            for one in verified.late
        ],
        "not_taken_in": list(verified.pending),
        "sign_offs": [_sign_off_json(done, one) for one in verified.signed],
        "findings": None if verified.result is Result.ALTERED else done.findings,
        "hand_over": None if verified.result is Result.ALTERED else done.hand_over,
        "notes": list(_notes(done)),
        "next": next_step(done),
    }


def _sign_off_json(done: Verification, signed: Signed) -> dict[str, object]:
    sign_off = signed.sign_off
    return {
        "line": signed.line,
        "id": sign_off.entry.id,
        "signature_holds": signed.holds,
        "at": sign_off.entry.at,
        "by": sign_off.entry.by,
        "end": sign_off.judged.end,
        "verdict": sign_off.judged.verdict,
        "entries": sign_off.entries,
        "key": sign_off.key,
        "fingerprint": sign_off.fingerprint,
        "known_as": done.verified.known_as(signed),
        "engine": sign_off.entry.engine,
        "engine_is_here": sign_off.judged.engine is not None and sign_off.judged.engine == engine_sha256(),
        "limits_are_here": sign_off.judged.limits == limits_sha256(),
    }
