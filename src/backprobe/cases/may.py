"""Who may do what: all of it stands here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from backprobe.errors import RefusedError
from backprobe.store.people import Person, Phone


class Deed(StrEnum):
    """What somebody can ask the server to do."""

    HAND_IN = "hand in entries and files"
    GIVE_KEY = "give the key it signs with"
    READ_DAY = "read the jobs of the day"
    READ_OWN_JOBS = "read the jobs they were given"
    READ_ALL_JOBS = "read all jobs"
    MAKE_JOBS = "make and assign jobs, import rosters"
    KEEP_PHONES = "enrol and withdraw phones, and what pushes reports"
    DECIDE_QUARANTINE = "decide on what is in quarantine"
    DECIDE = "decide between what two have said"
    ERASE = "erase files that hold a person's data"
    PUSH_REPORTS = "push reports"


class Role(StrEnum):
    """As what somebody comes."""

    PHONE = "phone"
    WITHDRAWN_PHONE = "withdrawn phone"
    LEAD = "lead"
    INSTALLER = "installer"
    FEED = "feed"


MAY: Mapping[Role, frozenset[Deed]] = {
    Role.PHONE: frozenset({Deed.HAND_IN, Deed.GIVE_KEY, Deed.READ_DAY, Deed.READ_OWN_JOBS}),
    Role.WITHDRAWN_PHONE: frozenset({Deed.HAND_IN}),
    Role.LEAD: frozenset(
        {Deed.READ_ALL_JOBS, Deed.MAKE_JOBS, Deed.KEEP_PHONES, Deed.DECIDE_QUARANTINE, Deed.ERASE, Deed.DECIDE}
    ),
    Role.INSTALLER: frozenset({Deed.READ_ALL_JOBS}),  # at the desk an installer may look
    Role.FEED: frozenset({Deed.PUSH_REPORTS}),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Caller:
    """Whoever asks: as what, in which organisation, for which person, with which phone."""

    role: Role
    organisation: str
    person: str | None = None
    phone: Phone | None = None

    def may(self, deed: Deed) -> bool:
        """Whether they may do it."""
        return deed in MAY[self.role]

    def must(self, deed: Deed) -> None:
        """Raise RefusedError where they may not do it."""
        if self.may(deed):
            return
        if self.role is Role.WITHDRAWN_PHONE:
            raise RefusedError(
                "this phone was withdrawn; what it still holds can be handed in and goes to the lead",
                code="phone_withdrawn",
            )
        raise RefusedError(f"a {self.role} may not {deed}", code="not_allowed")


def phone_caller(phone: Phone) -> Caller:
    """The caller that a phone is."""
    role = Role.WITHDRAWN_PHONE if phone.withdrawn else Role.PHONE
    return Caller(role=role, organisation=phone.organisation, person=phone.person, phone=phone)


def person_caller(person: Person) -> Caller:
    """The caller that somebody at the desk is."""
    return Caller(role=Role(person.role), organisation=person.organisation, person=person.id)
