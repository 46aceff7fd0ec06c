"""What the desk asks of people, phones and feeds."""

from __future__ import annotations

from typing import Annotated, Literal

from fastapi import APIRouter, Path, Request
from pydantic import Field

from backprobe.cases import desk_people
from backprobe.cases.desk_people import NewPerson
from backprobe.cases.enrol import make_code, withdraw
from backprobe.cases.signing_keys import list_keys
from backprobe.server.callers import Desk, Here, origin_of
from backprobe.server.phone_calls import MOST_NAME, Strict, without_nul

MOST_COLUMNS = 12

router = APIRouter(prefix="/api/desk", tags=["desk"])
Id = Annotated[str, Path(min_length=1, max_length=MOST_NAME)]
Name = Annotated[str, Field(max_length=MOST_NAME)]


class PersonBody(Strict):
    """Somebody new."""

    name: str = Field(min_length=1, max_length=MOST_NAME)
    language: Literal["en", "es"] = "en"
    units: Literal["metric", "us"] = "metric"


class PhoneBody(Strict):
    """Whose phone is to be enrolled."""

    person: str = Field(max_length=MOST_NAME)


class FeedBody(Strict):
    """A feed, and what it calls our columns."""

    label: str = Field(max_length=MOST_NAME)
    columns: dict[Name, Name] = Field(default={}, max_length=MOST_COLUMNS)


@router.get("/people")
def people(here: Here, desk: Desk) -> dict[str, object]:
    """Who works here."""
    return {"people": desk_people.list_people(here.yard, desk.caller)}


@router.post("/people", status_code=201)
def new_person(body: PersonBody, here: Here, *, desk: Desk) -> dict[str, object]:
    """Somebody more."""
    new = NewPerson(name=body.name, language=body.language, units=body.units)
    return desk_people.add_person(here.yard, desk.caller, new=new)


@router.get("/phones")
def phones(here: Here, desk: Desk) -> dict[str, object]:
    """All phones."""
    return {"phones": desk_people.list_phones(here.yard, desk.caller)}


@router.get("/keys")
def keys(here: Here, desk: Desk) -> dict[str, object]:
    """The keys that phones sign with, and whose they are."""
    return {"keys": list_keys(here.yard, desk.caller)}


@router.post("/phones", status_code=201)
def new_phone(body: PhoneBody, here: Here, *, desk: Desk, request: Request) -> dict[str, object]:
    """A code for somebody's phone, as text, address and picture; shown this once."""
    person_id = without_nul(body.person) or ""
    made = make_code(here.yard, desk.caller, person_id=person_id, origin=origin_of(request, here.settings))
    return {"code": made.code, "url": made.url, "qr_svg": made.qr_svg, "expires_at": made.expires_at}


@router.post("/phones/{phone_id}/withdraw")
def withdraw_phone(phone_id: Id, here: Here, *, desk: Desk) -> dict[str, object]:
    """From now on the phone may only hand in."""
    withdraw(here.yard, desk.caller, phone_id=without_nul(phone_id) or "")
    return {"id": phone_id, "withdrawn": True}


@router.get("/feeds")
def feeds(here: Here, desk: Desk) -> dict[str, object]:
    """All feeds of reports."""
    return {"feeds": desk_people.list_feeds(here.yard, desk.caller)}


@router.post("/feeds", status_code=201)
def new_feed(body: FeedBody, here: Here, *, desk: Desk) -> dict[str, object]:
    """A feed more; its token is shown this once."""
    return desk_people.add_feed(here.yard, desk.caller, label=body.label, columns=body.columns)


@router.post("/feeds/{feed_id}/withdraw")
def withdraw_feed(feed_id: Id, here: Here, *, desk: Desk) -> dict[str, object]:
    """The feed's token ends."""
    desk_people.withdraw_feed(here.yard, desk.caller, feed_id=without_nul(feed_id) or "")
    return {"id": feed_id, "withdrawn": True}
