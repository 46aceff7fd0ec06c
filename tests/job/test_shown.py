"""What was shown to the signer, as bytes."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from backprobe.evidence.hand_over import End, HandOver, Missing
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict
from backprobe.job.canonical import canonical
from backprobe.job.shown import findings_bytes, hand_over_bytes, shown_figure

LEAST = Limit("crank", 9.0, "V", Side.AT_LEAST, "a supply while the starter turns", Standing.COMMON_PRACTICE)
CRANK = Finding(
    id="supply_crank",
    stage=Stage.PROBE,
    what="Red: while the engine cranks",
    verdict=Verdict.THIN,
    because="MIN hold",
    next="record it",
    value=9.1,
    low=8.95,
    high=9.2,
    unit="V",
    limit=LEAST,
)
VIN = Finding(id="vin_form", stage=Stage.WALKROUND, what="VIN", verdict=Verdict.HOLDS, because="17 characters")


def test_findings_are_canonical_with_figures_as_text():
    """Keys sorted, no floats: 9.1 V to two digits is "9.10"; the worst of holds and thin is thin."""
    content = findings_bytes([VIN, CRANK])
    said = json.loads(content)
    assert canonical(said) == content
    assert said["verdict"] == "thin"
    crank = said["findings"][1]
    assert (crank["value"], crank["low"], crank["high"], crank["unit"]) == ("9.10", "8.95", "9.20", "V")
    assert crank["limit"] == {
        "id": "crank",
        "value": "9",
        "unit": "V",
        "side": "at least",
        "basis": "a supply while the starter turns",
        "standing": "common practice, no source",
    }
    assert (crank["because"], crank["next"]) == ("MIN hold", "record it")


def test_a_finding_without_figures_says_so():
    """Nothing measured, no limit: nothing, not zero."""
    (vin,) = json.loads(findings_bytes([VIN]))["findings"]
    assert [vin[name] for name in ("value", "low", "high", "limit", "next")] == [None] * 5


@pytest.mark.parametrize(
    "change",
    [
        {"verdict": Verdict.HOLDS},
        {"value": 9.11},
        {"because": "MIN hold."},
        {"limit": replace(LEAST, value=9.01)},
        {"limit": replace(LEAST, basis="a hunch")},
        {"digits": 1},
    ],
)
def test_whatever_changes_in_a_finding_changes_the_bytes(change: dict[str, object]):
    """Verdict, figure, reason, limit, basis, digits."""
    assert findings_bytes([replace(CRANK, **change)]) != findings_bytes([CRANK])


def test_figures_are_rounded_to_their_digits():
    """What differs beyond the declared digits is the same figure; no negative zero."""
    assert findings_bytes([replace(CRANK, value=9.1000000001)]) == findings_bytes([CRANK])
    assert (shown_figure(-0.004, 2), shown_figure(3.0, 0), shown_figure(float("inf"), 2)) == ("0.00", "3", "inf")


def test_half_a_letter_does_not_stop_it():
    """As a broken file name leaves one: written out."""
    content = findings_bytes([replace(VIN, because="cr\udce4nk.csv")])
    assert json.loads(content)["findings"][0]["because"] == "cr\\udce4nk.csv"


def test_how_a_job_ended():
    """Everything that was said, and what was not said as nothing."""
    ended = HandOver(
        end=End.PROVISIONAL,
        missing=(Missing(what="a parked night", owed_by="Tam Orrel", until="2026-04-07"),),
        told_driver=("call the yard",),
    )
    assert hand_over_bytes(ended) == (
        b'{"end":"provisional","missing":[{"owed_by":"Tam Orrel","until":"2026-04-07","what":"a parked night"}],'
        b'"restored":[],"told_driver":["call the yard"],"undone":[],"why":null}'
    )
