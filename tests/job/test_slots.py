"""Places for one value stay open while two are claimed."""

from __future__ import annotations

from tests.samples.journals import Phone

from backprobe.job.entry import Entry
from backprobe.job.fold import fold
from backprobe.job.slots import Slot, slots_of

SHA, OTHER = "a" * 64, "b" * 64


def job_sheet(digest: str, vin: str | None, serial: str | None) -> dict[str, object]:
    return {"file": "job.toml", "sha256": digest, "bytes": 9, "vin": vin, "serial": serial}


def slots(*entries: Entry) -> dict[str, Slot]:
    return dict(slots_of(fold(entries).standing))


def test_one_claim_is_the_value():
    """A serial number claimed once, or twice the same, is settled."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    found = slots(one.claims("serial", "U-1"), other.claims("serial", "U-1"))
    assert found == {"serial": Slot("serial", ("U-1",))}
    assert (found["serial"].value, found["serial"].is_open) == ("U-1", False)


def test_two_claims_stay_open():
    """Two serial numbers: no value, both shown."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    found = slots(one.claims("serial", "U-1"), other.claims("serial", "U-2"))["serial"]
    assert (found.value, found.is_open, found.values) == (None, True, ("U-1", "U-2"))


def test_the_job_sheet_claims_too():
    """A serial number on the sheet and another one scanned; sheet and VIN stand in their own slots."""
    one = Phone()
    sheet = one.say("job", job_sheet(SHA, "1M8GDM9AXKP042788", "U-1"))
    found = slots(sheet, one.claims("serial", "U-2"))
    assert found["vin"].value == "1M8GDM9AXKP042788"
    assert found["job_sheet"].value == SHA
    assert found["serial"].is_open


def test_two_job_sheets_stay_open():
    """One job has one sheet."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    found = slots(one.say("job", job_sheet(SHA, None, None)), other.say("job", job_sheet(OTHER, None, None)))
    assert found == {"job_sheet": Slot("job_sheet", (SHA, OTHER))}
    assert found["job_sheet"].is_open


def test_two_walkrounds_stay_open():
    """Two people walked round one vehicle and wrote two things: somebody decides which of them counts."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    walks = [
        phone.say("walkround", {"file": "walkround.toml", "sha256": digest, "bytes": 9})
        for phone, digest in ((one, SHA), (other, OTHER))
    ]
    assert slots(*walks) == {"walkround": Slot("walkround", (SHA, OTHER))}


def test_somebody_decides():
    """A claim that replaces both is the value."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    mine, theirs = one.claims("tap_supply", "Red"), other.claims("tap_supply", "Orange")
    body = {"slot": "tap_supply", "value": "Orange"}
    decided = one.say("correction", {"replaces": [mine.id, theirs.id], "kind": "claim", "body": body})
    assert slots(mine, theirs)["tap_supply"].is_open
    assert slots(mine, theirs, decided)["tap_supply"].value == "Orange"


def test_a_claim_withdrawn_by_one_and_corrected_by_another_is_open():
    """One value is left, but not everybody agrees that there is one."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=100)
    mine = one.claims("tap_supply", "Red")
    body = {"slot": "tap_supply", "value": "Orange"}
    corrected = one.say("correction", {"replaces": mine.id, "kind": "claim", "body": body})
    found = slots(mine, corrected, other.withdraws(mine))["tap_supply"]
    assert (found.values, found.value, found.is_open) == (("Orange",), None, True)
