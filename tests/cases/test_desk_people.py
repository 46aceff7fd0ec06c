"""People, phones and feeds as the desk keeps them."""

from __future__ import annotations

import pytest
from tests.samples.stores import ORGANISATION

from backprobe.cases import desk_people as desk
from backprobe.cases.desk_people import NewPerson
from backprobe.cases.enrol import feed_of_token
from backprobe.cases.may import Caller, Role
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError

LEAD = Caller(role=Role.LEAD, organisation=ORGANISATION)


def test_people_and_phones_are_listed_without_secrets(sqlite_yard: Yard, ines: Caller, marta: Caller) -> None:
    """Two people by name, two phones with whose they are."""
    added = desk.add_person(sqlite_yard, LEAD, new=NewPerson(name=" Ada\n", language="es", units="us"))
    assert (added["name"], added["role"], added["language"]) == ("Ada", "installer", "es")
    assert [who["name"] for who in desk.list_people(sqlite_yard, LEAD)] == ["Ada", "Ines", "Marta"]
    phones = desk.list_phones(sqlite_yard, LEAD)
    assert [(each["device"], each["person"]["name"]) for each in phones] == [("phone-a", "Ines"), ("phone-b", "Marta")]
    assert not any("token" in name for each in phones for name in each)


def test_a_feed_ends_when_it_is_withdrawn(sqlite_yard: Yard) -> None:
    """Its token is known until then."""
    feed = desk.add_feed(sqlite_yard, LEAD, label="collector", columns={})
    caller, row = feed_of_token(sqlite_yard, str(feed["token"]))
    assert (caller.role, row["id"]) == (Role.FEED, feed["id"])
    desk.withdraw_feed(sqlite_yard, LEAD, feed_id=str(feed["id"]))
    with pytest.raises(RefusedError):
        feed_of_token(sqlite_yard, str(feed["token"]))
    assert desk.list_feeds(sqlite_yard, LEAD)[0]["withdrawn_at"] is not None


def test_only_the_lead_changes_anything(sqlite_yard: Yard) -> None:
    """An installer at the desk may look at people and phones."""
    installer = Caller(role=Role.INSTALLER, organisation=ORGANISATION)
    assert desk.list_people(sqlite_yard, installer) == []
    with pytest.raises(RefusedError) as refusal:
        desk.add_person(sqlite_yard, installer, new=NewPerson(name="Eve"))
    assert refusal.value.code == "not_allowed"
