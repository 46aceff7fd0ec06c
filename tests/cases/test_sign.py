"""Signing a job off: what may be signed, what is written, and what a later change does to it."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from tests.samples.jobs import demo_job
from tests.samples.signing import HAND_OVER, KEY, SEEDS, STAMP, handed_over, key_folder, sign_job, unended

from backprobe.cases import sign as signing
from backprobe.cases.judge import judge_folder
from backprobe.cases.sign import sign_folder
from backprobe.errors import InputError, JobError
from backprobe.files.blobs import blob_faults
from backprobe.files.journal_file import held_journal, load_journal
from backprobe.findings import Verdict
from backprobe.job.journal import Draft, continued
from backprobe.job.sign_off import bytes_to_sign, read_sign_off
from backprobe.keys.ed25519 import signature_holds
from backprobe.keys.folder import KeyFolder

ABANDONED = """
[hand_over]
end = "abandoned"
undone = "both taps taken out, wires closed"
restored = ["fuse F12 back in its place", "lamps and wipers tested"]
why = "the ignition wire is an accessory wire and no other could be named"
"""


@pytest.fixture
def keys(tmp_path: Path) -> KeyFolder:
    """A folder with one key."""
    return key_folder(tmp_path / "keys")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """The demo job that went well, ending provisionally."""
    return handed_over(tmp_path)


def edit(path: Path, before: str, after: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after), encoding="utf-8")


def bytes_in(folder: Path) -> bytes:
    return (folder / "journal.jsonl").read_bytes()


def test_a_sign_off_is_the_last_entry(job: Path, keys: KeyFolder):
    """Behind all others, on a chain of the key's own, with the clock's time, by the technician; its signature holds."""
    done = sign_job(job, keys)
    *before, last = load_journal(job).entries
    read = read_sign_off(last)
    assert last == done.entry
    assert (last.seq, last.prev, last.at, last.engine) == (1, None, STAMP.at, "0.1.0")
    assert last.device == f"key-{hashlib.sha256(bytes.fromhex(KEY)).hexdigest()[:16]}"
    assert (read.entries, done.covers) == (len(before), len(before))
    assert {device: (head.seq, head.digest) for device, head in read.heads.items()} == {
        "folder": (len(before), hashlib.sha256(before[-1].raw).hexdigest())
    }
    assert last.by == next(entry.id for entry in before if entry.kind == "person")
    assert signature_holds(KEY, read.signature, message=bytes_to_sign(last))


def test_what_was_shown_is_kept(job: Path, keys: KeyFolder):
    """The findings as judge shows them, but for the sign-off itself; how the job ended; the entries' digests."""
    done = sign_job(job, keys)
    read = read_sign_off(done.entry)
    assert done.entry.blobs == tuple(read.blobs.values())
    assert blob_faults(job, done.entry.blobs) == ()
    findings, hand_over, entries = ((job / "blobs" / sha256).read_bytes() for sha256 in read.blobs.values())
    shown = [(one.id, str(one.verdict)) for one in judge_folder(job).judged.findings if one.id != "sign_off"]
    assert sorted((one["id"], one["verdict"]) for one in json.loads(findings)["findings"]) == sorted(shown)
    assert json.loads(findings)["verdict"] == str(done.verdict) == read.judged.verdict == "open"
    assert json.loads(hand_over)["missing"] == [
        {"what": "one parked night", "owed_by": "the yard office", "until": "2026-04-07"}
    ]
    assert entries.decode().split() == [entry.digest for entry in load_journal(job).entries[:-1]]


def test_unit_sheet_engine_and_limits_are_named_by_digest(job: Path, keys: KeyFolder):
    """The sheet's bytes; the engine and the limits at hand."""
    judged = read_sign_off(sign_job(job, keys).entry).judged
    assert judged.unit_sheet == hashlib.sha256((job.parent / "unit.toml").read_bytes()).hexdigest()
    assert judged.engine == signing.engine_sha256()
    assert judged.limits == signing.limits_sha256()


def test_names_stand_in_blobs_only(job: Path, keys: KeyFolder):
    """Neither the technician's, nor a signer's given by name, nor of whoever owes something."""
    edit(job / "job.toml", "the yard office", "Tam Orrel")
    sign_folder(job, keys.private(None), stamp=STAMP, name="Mara Lindqvist")
    assert not any(name in bytes_in(job) for name in (b"Okafor", b"Orrel", b"Lindqvist"))
    holding = [path for path in (job / "blobs").iterdir() if b"Lindqvist" in path.read_bytes()]
    assert len(holding) == 1


def test_another_signer_is_a_person_of_their_own(job: Path, keys: KeyFolder):
    """First the person, then the sign-off by that person, both on the key's chain; a second time no person again."""
    first = sign_folder(job, keys.private(None), stamp=STAMP, name="Mara Lindqvist")
    *_, person, sign_off = load_journal(job).entries
    assert (person.kind, person.seq, sign_off.seq) == ("person", 1, 2)
    assert sign_off.by == person.id
    assert first.covers == len(load_journal(job).entries) - 1
    stamp = signing.Stamp(at=STAMP.at, time_ms=STAMP.time_ms + 1, random=STAMP.random)
    again = sign_folder(job, keys.private(None), stamp=stamp, name="Mara Lindqvist")
    assert (again.entry.seq, again.entry.by) == (3, person.id)


def test_judging_again_adds_nothing_and_says_that_it_is_signed(job: Path, keys: KeyFolder):
    """The import leaves the sign-off alone; the finding on it holds."""
    sign_job(job, keys)
    before = bytes_in(job)
    judged = judge_folder(job).judged
    assert bytes_in(job) == before
    (finding,) = (one for one in judged.findings if one.id == "sign_off")
    assert finding.verdict is Verdict.HOLDS


def test_later_evidence_demands_a_new_sign_off(job: Path, keys: KeyFolder):
    """A reading changed after signing: open, named; signed again: settled."""
    sign_job(job, keys)
    edit(job / "readings.csv", "12.58", "12.57")
    later = {one.id: one for one in judge_folder(job).judged.findings}["sign_off"]
    assert later.verdict is Verdict.OPEN
    assert later.because.startswith("signed off before 2 entries came: correction on line ")
    assert sign_job(job, keys, number=2).entry.seq == 2
    settled = {one.id: one for one in judge_folder(job).judged.findings}["sign_off"]
    assert settled.verdict is Verdict.HOLDS


def test_an_unsigned_job_is_asked_for_only_when_it_is_to_end(tmp_path: Path):
    """No finding on a sign-off while [hand_over] is not there; open when it is, and the next thing to do."""
    plain = unended(demo_job(tmp_path / "plain", "truck-07"))
    assert "sign_off" not in [one.id for one in judge_folder(plain).judged.findings]
    assert judge_folder(plain).judged.verdict is Verdict.HOLDS
    ending = handed_over(tmp_path / "ending")
    judged = judge_folder(ending).judged
    assert {one.id: one.verdict for one in judged.findings}["sign_off"] is Verdict.OPEN
    assert judged.next == "sign the job off"


@pytest.mark.parametrize(
    ("says", "words"),
    [
        ("", "nothing says how this job ends"),
        ('\n[hand_over]\nend = "proven"\n[[hand_over.missing]]\nwhat = "a night"\n', "proven, yet to lack: a night"),
        ('\n[hand_over]\nend = "provisional"\n', "what is missing is not said"),
        ('\n[hand_over]\nend = "provisional"\n[[hand_over.missing]]\nwhat = "a night"\n', "who owes it is not said"),
        ('\n[hand_over]\nend = "abandoned"\n', "why the job was abandoned is not said"),
    ],
)
def test_what_cannot_be_signed_is_refused_and_leaves_no_trace(tmp_path: Path, keys: KeyFolder, says: str, words: str):
    """In plain words; the journal has no sign-off, and nothing was kept for one."""
    job = handed_over(tmp_path, says=says)
    judge_folder(job)
    before, blobs = bytes_in(job), sorted((job / "blobs").iterdir())
    with pytest.raises(JobError, match=words):
        sign_job(job, keys)
    assert (bytes_in(job), sorted((job / "blobs").iterdir())) == (before, blobs)


def test_a_job_that_fails_is_not_signed_as_provisional_but_as_abandoned(tmp_path: Path, keys: KeyFolder):
    """The demo's truck 12 has an accessory wire for its ignition."""
    job = handed_over(tmp_path / "a", "truck-12")
    with pytest.raises(JobError, match=r"cannot be signed as provisional:\n  .*: fails"):
        sign_job(job, keys)
    done = sign_job(handed_over(tmp_path / "b", "truck-12", says=ABANDONED), keys)
    assert (done.hand_over.end, done.verdict) == ("abandoned", Verdict.FAILS)


def test_somebody_must_sign(tmp_path: Path, keys: KeyFolder):
    """No technician on the sheet and no name given."""
    job = handed_over(tmp_path)
    edit(job / "job.toml", 'technician = "Ines Okafor"\n', "")
    with pytest.raises(JobError, match="nobody is named who signs"):
        sign_job(job, keys)
    assert sign_folder(job, keys.private(None), stamp=STAMP, name="Tam Orrel").name == "Tam Orrel"


def test_a_key_that_others_may_read_signs_nothing(job: Path, keys: KeyFolder):
    """Refused before anything is written."""
    (keys.path / "ines.pem").chmod(0o644)
    judge_folder(job)
    before = bytes_in(job)
    with pytest.raises(InputError, match="chmod 600"):
        sign_job(job, keys)
    assert bytes_in(job) == before


def test_two_people_sign_one_after_the_other(job: Path, keys: KeyFolder, tmp_path: Path):
    """Each on a chain of their own; the second covers the first."""
    sign_job(job, keys)
    other = key_folder(tmp_path / "other", "tam", SEEDS[1])
    second = read_sign_off(sign_job(job, other, number=2).entry)
    assert set(second.heads) == {"folder", f"key-{hashlib.sha256(bytes.fromhex(KEY)).hexdigest()[:16]}"}


def test_a_journal_that_grows_meanwhile_is_not_signed(job: Path, keys: KeyFolder, monkeypatch: pytest.MonkeyPatch):
    """A phone's entry arrives between judging and signing: refused, for nobody has seen what it comes to."""

    def judged_then_grown(folder: Path) -> object:
        done = judge_folder(folder)
        with held_journal(folder) as held:
            draft = Draft(id="01890000-0000-7000-8000-000000000001", kind="absent_key", body={"key": "charging"})
            held.append(continued(held.journal, [draft], job=done.imported.job, device="phone-a", engine="0.1.0"))
        return done

    monkeypatch.setattr(signing, "judge_folder", judged_then_grown)
    with pytest.raises(JobError, match="the journal grew while the job was being judged"):
        sign_job(job, keys)
    assert load_journal(job).entries[-1].device == "phone-a"


def test_the_same_clock_and_chance_make_the_same_sign_off(tmp_path: Path, keys: KeyFolder):
    """Nothing else goes into it: two copies of a job, byte for byte."""
    one, two = handed_over(tmp_path / "a"), handed_over(tmp_path / "b")
    assert HAND_OVER in (one / "job.toml").read_text(encoding="utf-8")
    sign_job(one, keys)
    sign_job(two, keys)
    assert bytes_in(one) == bytes_in(two)


def with_reports_until(folder: Path, moment: str) -> Path:
    """The job folder with the unit's reports as they were fetched at a moment."""
    file = folder / "reports.csv"
    head, *rows = file.read_text(encoding="utf-8").splitlines()
    kept = [row for row in rows if row.split(",")[2] < moment]
    file.write_text("\n".join([head, *kept]) + "\n", encoding="utf-8")
    return folder


def without_positions(folder: Path) -> None:
    """Every position of every unit is taken out of the reports."""
    file = folder / "reports.csv"
    rows = (line.split(",") for line in file.read_text(encoding="utf-8").splitlines())
    kept = [",".join(row if row[3] == "lat" else [*row[:3], "", "", "", *row[6:]]) for row in rows]
    file.write_text("\n".join(kept) + "\n", encoding="utf-8")


def refused(job: Path, keys: KeyFolder) -> str:
    """What is said to a job that cannot be signed."""
    with pytest.raises(JobError) as caught:
        sign_job(job, keys)
    return caught.value.message


def test_a_job_whose_unit_is_proven_is_signed_as_proven(tmp_path: Path, keys: KeyFolder):
    """The demo's truck 7 as it is: every finding on the unit's own reports holds."""
    done = sign_job(demo_job(tmp_path, "truck-07"), keys)
    assert (done.hand_over.end, done.verdict) == ("proven", Verdict.HOLDS)
    assert "prove_parked" in {each.id for each in done.findings}


@pytest.mark.parametrize(
    ("spoil", "missing", "owed"),
    [
        (
            lambda job: with_reports_until(job, "2026-03-31T15:00"),
            "Reports over a parked night: open: 'constant' is proven for ",
            'what = "parked night"',
        ),
        (
            lambda job: with_reports_until(job, "2026-03-31T13:00"),
            "Whether the unit works in the vehicle: open: reports.csv: expected reports of unit LN2-00417",
            'what = "no coverage"',
        ),
        (
            lambda job: edit(job / "job.toml", "[place]\nlat = -33.10015\nlon = 151.20035\naccuracy_m = 5\n", ""),
            "Where the unit takes itself to be: open: where the vehicle stands is not known",
            'what = "Where the unit takes itself to be"',
        ),
        (
            without_positions,
            "Where the unit takes itself to be: open: no report since power-up has a position",
            'what = "indoor yard"',
        ),
    ],
)
def test_what_is_not_proven_is_refused_with_what_is_missing_and_how_to_end(
    tmp_path: Path, keys: KeyFolder, spoil: Callable[[Path], object], missing: str, owed: str
):
    """In plain words; and what it says to write, written in place of the end, can be signed."""
    job = demo_job(tmp_path, "truck-07")
    edit(job / "job.toml", 'serial = "LN2-00417"', 'serial = "LN2-00417"\nid = "LN2-00417"')
    spoil(job)
    said = refused(job, keys)
    assert said.startswith("this job cannot be signed as proven:\n")
    assert missing in said
    assert owed in said
    example = said.partition("in place of [hand_over] in job.toml:\n")[2]
    sheet = unended(job) / "job.toml"
    lines = "\n".join(line.strip() for line in example.splitlines())
    sheet.write_text(f"{sheet.read_text(encoding='utf-8')}\n{lines}\n", encoding="utf-8")
    assert sign_job(job, keys).hand_over.end == "provisional"


def test_what_fails_is_not_offered_to_be_owed(tmp_path: Path, keys: KeyFolder):
    """Truck 12 said to be proven: what fails comes with why, and it is to be put right or undone."""
    job = handed_over(tmp_path, "truck-12", says='\n[hand_over]\nend = "proven"\n')
    said = refused(job, keys)
    assert "  Pattern: on in accessory: fails: The ignition lead sits on an accessory wire" in said
    assert said.endswith("put right what fails; or undo the work and end the job as abandoned")
