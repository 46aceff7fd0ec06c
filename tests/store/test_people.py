"""People and phones: known by hashes, codes good once, phones withdrawn."""

from __future__ import annotations

import threading

from tests.samples.stores import AT, ORGANISATION

from backprobe.store import people
from backprobe.store.opened import Store
from backprobe.store.people import Person, Phone

LATER = "2026-03-31T09:00:00.000Z"
INES = Person(id="ines", organisation=ORGANISATION, name="Ines Okafor", language="en", units="metric", role="installer")
PHONE = {"id": "p1", "organisation": ORGANISATION, "person": "ines", "device": "phone-a", "label": "hers"}


def test_a_person_is_found_by_id_and_login(store: Store) -> None:
    """Nobody can log in before a password was set."""
    with store.writing() as connection:
        people.add_person(connection, INES, made_at=AT)
        assert people.person_of(connection, ORGANISATION, person_id="ines") == INES
        assert people.person_of(connection, "other", person_id="ines") is None
        assert people.people(connection, ORGANISATION) == (INES,)
        assert not people.has_login(connection, ORGANISATION)
        people.set_login(connection, "ines", login="ines", password_hash="hash")
        assert people.by_login(connection, "ines") == (INES, "hash")
        assert people.by_login(connection, "other") is None
        assert people.has_login(connection, ORGANISATION)
        assert people.organisation_name(connection, ORGANISATION) == "Linden Yard"


def test_a_code_is_good_once_even_in_a_race(store: Store) -> None:
    """Ten phones with one code at once: one is let in. A late code lets nobody in."""
    code = {"organisation": ORGANISATION, "person": "ines"}
    with store.writing() as connection:
        people.add_code(connection, {**code, "code_sha256": "c1", "expires_at": LATER})
        people.add_code(connection, {**code, "code_sha256": "late", "expires_at": AT})
        assert people.use_code(connection, "late", at=AT) is None
    start = threading.Barrier(10)
    let_in: list[tuple[str, str] | None] = []

    def use() -> None:
        start.wait()
        with store.writing() as connection:
            let_in.append(people.use_code(connection, "c1", at=AT))

    threads = [threading.Thread(target=use) for _ in range(10)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert [each for each in let_in if each] == [(ORGANISATION, "ines")]
    assert len(let_in) == 10


def test_a_phone_is_known_by_its_token_until_it_gets_another(store: Store) -> None:
    """Renewed, the old token ends; withdrawn, it is known as withdrawn."""
    with store.writing() as connection:
        people.add_person(connection, INES, made_at=AT)
        people.add_phone(connection, {**PHONE, "token_sha256": "t1", "enrolled_at": AT})
        known = Phone(id="p1", organisation=ORGANISATION, person="ines", device="phone-a", withdrawn=False)
        assert people.phone_by_token(connection, "t1") == known
        assert people.phone_of_device(connection, ORGANISATION, device="phone-a") == known
        assert people.devices_of_others(connection, ORGANISATION, but="p1") == frozenset()
        assert people.devices_of_others(connection, ORGANISATION, but="p2") == {"phone-a"}
        assert people.withdraw_phone(connection, ORGANISATION, phone_id="p1", at=AT)
        assert not people.withdraw_phone(connection, "other", phone_id="p1", at=AT)
        withdrawn = people.phone_by_token(connection, "t1")
        assert withdrawn is not None
        assert withdrawn.withdrawn
        people.renew_phone(connection, "p1", row={"token_sha256": "t2", "label": "hers", "enrolled_at": LATER})
        people.seen(connection, "p1", at=LATER)
        assert people.phone_by_token(connection, "t1") is None
        assert people.phone_by_token(connection, "t2") == known
        [row] = people.phones(connection, ORGANISATION)
    assert (row["person_name"], row["seen_at"], row["withdrawn_at"]) == ("Ines Okafor", LATER, None)
    assert "token_sha256" not in row


def test_a_session_ends(store: Store) -> None:
    """By its time or by logging out."""
    with store.writing() as connection:
        people.add_person(connection, INES, made_at=AT)
        people.add_session(connection, {"token_sha256": "s", "person": "ines", "csrf": "x", "expires_at": LATER})
        assert people.session_of(connection, "s", at=AT) == (INES, "x")
        assert people.session_of(connection, "s", at=LATER) is None
        people.end_session(connection, "s", at=AT)
        assert people.session_of(connection, "s", at=AT) is None
