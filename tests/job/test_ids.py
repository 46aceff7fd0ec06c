"""Ids from what identifies a row."""

from __future__ import annotations

import hashlib
from uuid import NAMESPACE_URL, RFC_4122, UUID

from hypothesis import given
from hypothesis import strategies as st

from backprobe.job.ids import PROJECT, folder_id, timed_id

names = st.lists(st.text(st.characters(exclude_categories=["Cs"]), max_size=6) | st.integers(0, 99), max_size=4)


def by_hand(namespace: UUID, name: bytes) -> UUID:
    """RFC 9562 section 5.5: SHA-1 of namespace and name, first 16 bytes, version 5 and variant bits set."""
    digest = bytearray(hashlib.sha1(namespace.bytes + name, usedforsecurity=False).digest()[:16])
    digest[6] = (digest[6] & 0x0F) | 0x50
    digest[8] = (digest[8] & 0x3F) | 0x80
    return UUID(bytes=bytes(digest))


def test_the_ids_are_those_of_rfc_9562():
    """The same id by hand: the job's namespace within the project's, the names as a JSON list."""
    assert by_hand(NAMESPACE_URL, b"backprobe:journal") == PROJECT
    job = by_hand(PROJECT, b"job-7")
    assert folder_id("job-7", "reading", "Ω", 2) == str(by_hand(job, '["reading","Ω",2]'.encode()))


def test_an_id_once_given_stays():
    """Journals already written rest on these values: they never change."""
    assert str(PROJECT) == "3b062492-8877-56f0-b389-2387cd082f55"
    assert folder_id("job-1", "reading", "readings.csv", "red", 1) == "e01b6be3-c92b-591f-b417-a271d797597b"


@given(names, names)
def test_other_names_have_other_ids(one, other):
    """Two lists of names share an id only if they are the same list."""
    assert (folder_id("job-7", *one) == folder_id("job-7", *other)) == (one == other)


@given(names)
def test_other_jobs_have_other_ids(some):
    """The same row of two jobs has two ids."""
    assert folder_id("job-7", *some) != folder_id("job-8", *some)


def test_a_timed_id_is_that_of_the_rfc():
    """RFC 9562, appendix A.6: 2022-02-22 14:22:22 UTC-5, with the random bits that the example gives."""
    random = (0xCC3).to_bytes(2, "big") + (0x18C4DC0C0C07398F).to_bytes(8, "big")
    assert timed_id(0x017F22E279B0, random) == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"


def test_timed_ids_follow_the_clock():
    """Later ids sort later; all random bits but those of version and variant are kept apart."""
    assert timed_id(1_000, b"\xff" * 10) < timed_id(1_001, b"\0" * 10)
    made = UUID(timed_id(5, b"\xff" * 10))
    assert (made.version, made.variant) == (7, RFC_4122)
