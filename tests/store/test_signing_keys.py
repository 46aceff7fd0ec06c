"""Keys of phones: each has one owner, whoever comes later; whose it is can be listed. On both databases."""

from __future__ import annotations

import threading

from tests.samples.stores import AT, ORGANISATION

from backprobe.cases.may import Caller
from backprobe.cases.yard import Yard
from backprobe.store import people, signing_keys

KEY, OTHER = "a" * 64, "b" * 64


def test_a_key_has_one_owner_even_in_a_race(yard: Yard, ines: Caller, marta: Caller) -> None:
    """Two phones give the same key at once: both are told the same owner, and there is one row."""
    start = threading.Barrier(2)
    owners: list[str] = []

    def give(caller: Caller) -> None:
        assert caller.phone is not None
        start.wait()
        with yard.store.writing() as connection:
            owners.append(signing_keys.add_key(connection, ORGANISATION, key=KEY, phone_id=caller.phone.id, at=AT))

    threads = [threading.Thread(target=give, args=(caller,)) for caller in (ines, marta)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(owners) == 2
    assert len(set(owners)) == 1
    with yard.store.reading() as connection:
        assert signing_keys.phones_of(connection, ORGANISATION, keys=[KEY, OTHER]) == {KEY: owners[0]}
        assert len(signing_keys.listed(connection, ORGANISATION)) == 1


def test_keys_are_listed_with_phone_and_person(yard: Yard, ines: Caller) -> None:
    """Two keys of one phone, the second given later; after the phone was withdrawn they say so."""
    assert ines.phone is not None
    phone_id = ines.phone.id
    with yard.store.writing() as connection:
        for key, at in ((OTHER, AT), (KEY, "2026-03-31T09:00:00.000Z")):
            assert signing_keys.add_key(connection, ORGANISATION, key=key, phone_id=phone_id, at=at) == phone_id
        people.withdraw_phone(connection, ORGANISATION, phone_id=phone_id, at=AT)
    with yard.store.reading() as connection:
        rows = signing_keys.listed(connection, ORGANISATION)
        assert signing_keys.listed(connection, "another") == ()
        assert signing_keys.phones_of(connection, ORGANISATION, keys=[]) == {}
    assert [row["key"] for row in rows] == [OTHER, KEY]
    assert (rows[0]["person_name"], rows[0]["device"], rows[0]["withdrawn_at"]) == ("Ines", "phone-a", AT)
