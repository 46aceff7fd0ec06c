"""Who may do what."""

from __future__ import annotations

import pytest

from backprobe.cases.may import MAY, Caller, Deed, Role, person_caller, phone_caller
from backprobe.errors import RefusedError
from backprobe.store.people import Person, Phone


def test_every_role_has_its_row() -> None:
    """And nobody but the lead keeps phones, makes jobs or decides on quarantine."""
    assert set(MAY) == set(Role)
    for deed in (Deed.MAKE_JOBS, Deed.KEEP_PHONES, Deed.DECIDE_QUARANTINE, Deed.ERASE, Deed.DECIDE):
        assert [role for role in Role if deed in MAY[role]] == [Role.LEAD]


def test_a_withdrawn_phone_may_hand_in_alone() -> None:
    """Told apart by its own code."""
    phone = Phone(id="p", organisation="o", person="ines", device="d", withdrawn=True)
    caller = phone_caller(phone)
    caller.must(Deed.HAND_IN)
    with pytest.raises(RefusedError) as refusal:
        caller.must(Deed.READ_DAY)
    assert refusal.value.code == "phone_withdrawn"


def test_others_are_not_allowed() -> None:
    """A feed reads nothing; an installer at the desk changes nothing."""
    who = Person(id="i", organisation="o", name="I", language="en", units="us", role="installer")
    for caller in (Caller(role=Role.FEED, organisation="o"), person_caller(who)):
        with pytest.raises(RefusedError) as refusal:
            caller.must(Deed.MAKE_JOBS)
        assert refusal.value.code == "not_allowed"
    assert person_caller(who).may(Deed.READ_ALL_JOBS)
