"""A phone's key: given with a proof, known by the person's name, of no use to anybody else."""

from __future__ import annotations

from collections.abc import Iterable

import pytest
from tests.samples.journals import Phone
from tests.samples.signing import KEY, OTHER_KEY, SEEDS, private_pem, signed_off
from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.held_job import held_job
from backprobe.cases.may import Caller, Role
from backprobe.cases.signing_keys import PROOF, give_key, list_keys, signers
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.job.entry import Entry
from backprobe.job.sign_off import fingerprint
from backprobe.job.signed import sign_off_finding, sign_offs
from backprobe.keys.ed25519 import sign, signature_holds

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)


def given(yard: Yard, caller: Caller, *, seed: str = SEEDS[0], key: str = KEY, device: str | None = None) -> str:
    """The fingerprint of a key that a phone gives, with its proof."""
    assert caller.phone is not None
    named = PROOF.format(device=device or caller.phone.device).encode()
    return give_key(yard, caller, key=key, proof=sign(private_pem(seed), named))


def test_a_key_is_its_phone_s(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """Given twice it is the same; another phone cannot have it; the desk sees whose it is."""
    assert given(sqlite_yard, ines) == given(sqlite_yard, ines) == fingerprint(KEY)
    with pytest.raises(RefusedError) as refusal:
        given(sqlite_yard, marta)
    assert refusal.value.code == "key_taken"
    [row] = list_keys(sqlite_yard, LEAD)
    assert (row["key"], row["fingerprint"], row["device"]) == (KEY, fingerprint(KEY), "phone-a")
    assert row["person"] == {"id": "ines", "name": "Ines"}
    with pytest.raises(RefusedError):
        list_keys(sqlite_yard, ines)


def test_without_a_proof_no_key_is_taken(sqlite_yard: Yard, ines: Caller) -> None:
    """A proof by another key, over another phone's name, and a key with which any signature would hold."""
    for wrong in (
        lambda: given(sqlite_yard, ines, seed=SEEDS[1]),
        lambda: given(sqlite_yard, ines, device="phone-b"),
        lambda: give_key(sqlite_yard, ines, key="0" * 64, proof="0" * 128),
        lambda: give_key(sqlite_yard, ines, key="zz", proof=""),
    ):
        with pytest.raises(RefusedError) as refusal:
            wrong()
        assert refusal.value.code == "request"
    assert list_keys(sqlite_yard, LEAD) == []


def test_a_withdrawn_phone_gives_none(sqlite_yard: Yard, ines: Caller) -> None:
    """Nor anybody who is no phone."""
    withdrawn = Caller(role=Role.WITHDRAWN_PHONE, organisation=ORGANISATION, person="ines", phone=ines.phone)
    with pytest.raises(RefusedError) as refusal:
        given(sqlite_yard, withdrawn)
    assert refusal.value.code == "phone_withdrawn"


def test_nobody_signs_with_another_phone_s_key(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """A sign-off by Ines's key that Marta's phone hands in is set aside; by a key of nobody's it is kept."""
    given(sqlite_yard, ines)
    hers, unknown = (Phone("phone-b", ids=at, job=job) for at, job in ((0, "job-7"), (500, "job-8")))
    hers.reads("Red", "on", "12.3")
    foreign = [*hers.entries, signed_off(hers.entries)]
    states = [each.code for each in take_batch(sqlite_yard, raws(foreign), caller=marta, at=AT).results]
    assert states == [None, "not_your_key"]
    assert unknown.job != hers.job
    again = signed_off(hers.entries, seed=SEEDS[1], number=2)
    assert [each.state for each in take_batch(sqlite_yard, raws([again]), caller=marta, at=AT).results] == ["kept"]
    assert [each.state for each in take_batch(sqlite_yard, raws(foreign[1:]), caller=ines, at=AT).results] == ["kept"]


def raws(entries: Iterable[Entry]) -> list[str]:
    """The texts of entries."""
    return [entry.raw.decode() for entry in entries]


def test_the_finding_names_whose_key_it_is(sqlite_yard: Yard, ines: Caller) -> None:
    """Ines's by the list of keys; of a key that nobody gave it is said that no phone here has it."""
    given(sqlite_yard, ines)
    phone = Phone()
    phone.reads("Red", "on", "12.3")
    take_batch(sqlite_yard, raws([*phone.entries, signed_off(phone.entries)]), caller=ines, at=AT)
    with sqlite_yard.store.reading() as connection:
        lines = held_job(sqlite_yard, connection, organisation=ORGANISATION, job_id=phone.job).journal.lines
        names = signers(connection, ORGANISATION)
    assert names == {KEY: "Ines"}
    found = sign_offs(lines, signature_holds)
    known = sign_off_finding(lines, found, wanted=True, names=names)
    unknown = sign_off_finding(lines, found, wanted=True, names={OTHER_KEY: "Marta"})
    assert known is not None
    assert unknown is not None
    assert ", with Ines's key " in known.because
    assert unknown.because.endswith(", which no phone here has")
