"""Codes for phones, what they hold, and who may make and withdraw them."""

from __future__ import annotations

import io

import numpy as np
import pytest
import typst
import zxingcpp
from PIL import Image

from backprobe.cases.enrol import caller_of_token, enrol, feed_of_token, make_code, plain_label, withdraw
from backprobe.cases.may import Caller, Role
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError

ORIGIN = "https://yard.test:8443"


@pytest.fixture
def lead(ines: Caller) -> Caller:
    """A lead where Ines works."""
    return Caller(role=Role.LEAD, organisation=ines.organisation)


def test_the_picture_holds_the_address(sqlite_yard: Yard, lead: Caller) -> None:
    """The QR, read by another program's eye: the address with the code; good for 15 minutes."""
    made = make_code(sqlite_yard, lead, person_id="ines", origin=ORIGIN)
    assert made.url == f"{ORIGIN}/#enrol={made.code}"
    assert made.qr_svg.startswith("<svg")
    assert now(14 * 60) < made.expires_at < now(16 * 60)
    assert zxingcpp.read_barcodes(drawn(made.qr_svg))[0].text == made.url


def drawn(svg: str) -> object:
    """The code as a printer would set it, as a grey picture."""
    page = "#set page(width: 400pt, height: 400pt, margin: 0pt)\n#image(bytes(sys.inputs.svg), width: 100%)"
    png = typst.compile(page.encode(), format="png", ppi=72, sys_inputs={"svg": svg})
    assert isinstance(png, bytes)
    return np.asarray(Image.open(io.BytesIO(png)).convert("L"))


def test_only_the_lead_makes_codes_and_withdraws(sqlite_yard: Yard, ines: Caller, lead: Caller) -> None:
    """And only for people and phones that are here."""
    with pytest.raises(RefusedError) as refusal:
        make_code(sqlite_yard, ines, person_id="ines", origin=ORIGIN)
    assert refusal.value.code == "not_allowed"
    with pytest.raises(RefusedError) as refusal:
        make_code(sqlite_yard, lead, person_id="nobody", origin=ORIGIN)
    assert refusal.value.code == "not_found"
    with pytest.raises(RefusedError) as refusal:
        withdraw(sqlite_yard, lead, phone_id="nobody")
    assert refusal.value.code == "not_found"


def test_a_phone_is_known_by_its_token(sqlite_yard: Yard, lead: Caller) -> None:
    """Withdrawn, it comes as a withdrawn phone; a fresh code lets it in again."""
    code = make_code(sqlite_yard, lead, person_id="ines", origin=ORIGIN).code
    token = enrol(sqlite_yard, code, device="phone-c", label="x").token
    caller = caller_of_token(sqlite_yard, token)
    assert (caller.role, caller.person) == (Role.PHONE, "ines")
    assert caller.phone is not None
    withdraw(sqlite_yard, lead, phone_id=caller.phone.id)
    assert caller_of_token(sqlite_yard, token).role is Role.WITHDRAWN_PHONE
    code = make_code(sqlite_yard, lead, person_id="ines", origin=ORIGIN).code
    fresh = enrol(sqlite_yard, code, device="phone-c", label="x").token
    assert caller_of_token(sqlite_yard, fresh).role is Role.PHONE


def test_unknown_tokens_are_nobody_s(sqlite_yard: Yard) -> None:
    """Neither a phone's nor a feed's."""
    for ask in (caller_of_token, feed_of_token):
        with pytest.raises(RefusedError) as refusal:
            ask(sqlite_yard, "nonsense")
        assert refusal.value.code == "not_enrolled"


def test_labels_are_one_line() -> None:
    """Of at most 80 letters."""
    assert plain_label("  Ines's\n phone\0 ") == "Ines's phone"
    assert len(plain_label("x" * 200)) == 80
