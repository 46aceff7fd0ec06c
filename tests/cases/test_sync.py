"""What becomes of each text that a phone hands in, and who may read what."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from tests.samples.journals import JOB, Phone
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.may import Caller, Role
from backprobe.cases.sync import digest_of, pull_page, take_batch
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.store import jobs, quarantine


def states(yard: Yard, texts: list[str], caller: Caller) -> list[tuple[str, str | None]]:
    """State and code for each text."""
    return [(each.state, each.code) for each in take_batch(yard, texts, caller=caller, at=AT).results]


def aside(yard: Yard) -> list[tuple[bytes, str]]:
    """What is in quarantine: bytes and code."""
    with yard.store.reading() as connection:
        return [(row["raw"], row["code"]) for row in quarantine.listed(connection, ORGANISATION)]


def test_other_bytes_under_a_taken_id_are_refused_and_set_aside(sqlite_yard: Yard, ines: Caller) -> None:
    """The first stays as it is; the second is kept in quarantine, also where both come in one batch."""
    first, second = Phone().reads("Red", "on", "12.3"), Phone().reads("Red", "on", "9.9")
    both = [first.raw.decode(), second.raw.decode()]
    assert states(sqlite_yard, both, ines) == [("kept", None), ("refused", "id_taken")]
    assert states(sqlite_yard, both, ines) == [("known", None), ("refused", "id_taken")]
    assert aside(sqlite_yard) == [(second.raw, "id_taken")]
    page = pull_page(sqlite_yard, ines, after=0, limit=9, job_id=None)
    assert [each.raw for each in page.entries] == [first.raw]


@pytest.mark.parametrize("text", ["", "{", "[]", "\ud800", '{"id": 7}', '{"id":"a\\u0000b","job":"x"}', "\0"])
def test_what_is_no_entry_is_refused_and_set_aside(sqlite_yard: Yard, ines: Caller, text: str) -> None:
    """Any text at all is answered, and its bytes are kept."""
    assert states(sqlite_yard, [text], ines) == [("refused", "journal")]
    [(raw, code)] = aside(sqlite_yard)
    assert (raw, code) == (text.encode("utf-8", "surrogatepass"), "journal")
    assert len(digest_of(text)) == 64


def test_an_unknown_kind_and_a_later_version_are_kept(sqlite_yard: Yard, ines: Caller) -> None:
    """Byte for byte, though nobody here knows what they say."""
    phone = Phone()
    unknown = phone.say("torque_seen", {"bolt": "M8"}).raw.decode()
    later = json.dumps({**json.loads(unknown), "v": 2, "seq": 2, "id": unknown[:0] + phone.reads("R", "on", "1").id})
    later = json.dumps({**json.loads(later), "prev": "ab" * 32, "more": 1.5})
    assert states(sqlite_yard, [unknown, later], ines) == [("kept", None)] * 2
    page = pull_page(sqlite_yard, ines, after=0, limit=9, job_id=JOB)
    assert [each.raw.decode() for each in page.entries] == [unknown, later]


def test_names_that_no_index_takes_are_refused(sqlite_yard: Yard, ines: Caller) -> None:
    """A job's id of 201 letters, and one with a control character."""
    sent = [Phone(job=name).reads("Red", "on", "1").raw.decode() for name in ("j" * 201, "a\0b")]
    assert states(sqlite_yard, sent, ines) == [("refused", "journal")] * 2
    assert states(sqlite_yard, [Phone(job="j" * 200).reads("Red", "on", "1").raw.decode()], ines) == [("kept", None)]


def test_nobody_speaks_under_another_s_name(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """The server's name and Marta's phone are refused; a folder's import and a key's sign-off are not a phone's."""
    said = {name: Phone(name, ids=n * 10).reads("Red", "on", "1") for n, name in enumerate(NAMES)}
    result = states(sqlite_yard, [entry.raw.decode() for entry in said.values()], ines)
    assert dict(zip(NAMES, result, strict=True)) == NAMES
    assert marta.phone is not None


NAMES = {
    "server": ("refused", "not_your_device"),
    "phone-b": ("refused", "not_your_device"),
    "phone-a": ("kept", None),
    "folder": ("kept", None),
    "key-00112233445566": ("kept", None),
}


def test_a_withdrawn_phone_hands_in_and_reads_nothing(sqlite_yard: Yard, ines: Caller) -> None:
    """What was kept before is known, the rest goes to quarantine; reading is refused."""
    phone = Phone()
    before, after = phone.reads("Red", "on", "12.3"), phone.reads("Red", "off", "0")
    states(sqlite_yard, [before.raw.decode()], ines)
    gone = replace(ines, role=Role.WITHDRAWN_PHONE)
    sent = [before.raw.decode(), after.raw.decode()]
    assert states(sqlite_yard, sent, gone) == [("known", None), ("quarantined", "phone_withdrawn")]
    assert aside(sqlite_yard) == [(after.raw, "phone_withdrawn")]
    with pytest.raises(RefusedError) as refusal:
        pull_page(sqlite_yard, gone, after=0, limit=9, job_id=None)
    assert refusal.value.code == "phone_withdrawn"


def test_a_new_job_is_given_to_whoever_began_it(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """Ines reads it, Marta does not, until it is given to both; what Marta adds is kept all the same."""
    states(sqlite_yard, [Phone().reads("Red", "on", "12.3").raw.decode()], ines)
    states(sqlite_yard, [Phone("phone-b", ids=50).reads("Red", "off", "0").raw.decode()], marta)
    assert len(pull_page(sqlite_yard, ines, after=0, limit=9, job_id=JOB).entries) == 2
    assert pull_page(sqlite_yard, marta, after=0, limit=9, job_id=JOB).entries == ()
    with sqlite_yard.store.writing() as connection:
        jobs.assign(connection, ORGANISATION, job_id=JOB, people=["ines", "marta"])
    page = pull_page(sqlite_yard, marta, after=0, limit=1, job_id=None)
    assert (page.cursor, page.more, len(page.entries)) == (1, True, 1)


def test_a_batch_of_501_is_refused_whole(sqlite_yard: Yard, ines: Caller) -> None:
    """Nothing of it is kept."""
    phone = Phone()
    sent = [phone.reads("Red", "on", str(number)).raw.decode() for number in range(501)]
    with pytest.raises(RefusedError, match="at most 500") as refusal:
        take_batch(sqlite_yard, sent, caller=ines, at=AT)
    assert refusal.value.code == "too_large"
    assert pull_page(sqlite_yard, ines, after=0, limit=9, job_id=None).entries == ()
