"""The whole walkround: what is well in one finding, what is not by itself, hazards by themselves."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.jobs import NAMED, UNIT, VEHICLE, WALKROUND

from backprobe.evidence.meter import Meter
from backprobe.evidence.walkround import Walkround
from backprobe.findings import Stage, Verdict
from backprobe.formats.job_toml import read_job
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.formats.walkround_toml import read_walkround
from backprobe.stages.walkround.walkround import WALK, photos_named, walkround_findings

SHEET = read_job(f'[vehicle]\n{VEHICLE}[unit]\nsheet = "u.toml"\nserial = "LN2-00417"\n{NAMED}', "job.toml")
LANTERN = read_unit_sheet(UNIT, "u.toml")
GOOD = read_walkround(WALKROUND, "walkround.toml")


def found(walked: Walkround | None):
    """The findings in their order."""
    return walkround_findings(
        walked, SHEET, unit=LANTERN, meter=Meter(name="basic", percent=0.5, counts=2), cranked=False
    )


def test_all_that_is_well_is_told_as_one():
    """Authority, identity, devices, condition, unit and hazards in one finding that holds."""
    (one,) = found(GOOD)
    assert (one.id, one.verdict, one.stage) == ("walkround", Verdict.HOLDS, Stage.WALKROUND)
    assert one.because == (
        "work and cranking allowed by Maud Linden; VIN as on the sheet; key with Ines Okafor; no other device found; "
        "184,220 km, no lamps, no codes; unit ready: firmware 4.2.1; no hazard found"
    )


def test_without_a_walkround_there_is_one_finding_not_twenty():
    """Open, with all that is missing, and the one thing to do."""
    (one,) = found(None)
    assert (one.id, one.verdict, one.next) == ("walkround", Verdict.OPEN, WALK)


def test_what_is_not_well_stands_by_itself():
    """A unit that is not activated, and a trailer to be minded: three findings, the good rest first."""
    walked = replace(GOOD, bench=replace(GOOD.bench, activated=False), hazards=replace(GOOD.hazards, trailer=True))
    assert [(each.id, str(each.verdict)) for each in found(walked)] == [
        ("walkround", "holds"),
        ("unit_ready", "fails"),
        ("hazard_trailer", "holds"),
    ]


def test_an_empty_walkround_leaves_each_matter_open():
    """Nothing is well, so nothing is told as well."""
    findings = found(Walkround())
    assert "walkround" not in {each.id for each in findings}
    assert {each.verdict for each in findings} == {Verdict.OPEN}
    assert {each.id for each in findings} == {
        *("authority", "authority_crank", "identity", "previous_device"),
        *("condition_before", "unit_ready", "hazards"),
    }


def test_photos_that_are_no_pictures_are_open():
    """Each with what was expected of it; with those that are missing in one finding."""
    odd = "photos/b.jpg: expected a picture as JPEG, PNG or WebP; this file is none"
    (one,) = photos_named(("photos/a.jpg",), (odd,))
    assert one.verdict is Verdict.OPEN
    assert one.because == f"named and not there: photos/a.jpg; cannot be shown: {odd}"
    (alone,) = photos_named((), ("photos/b.jpg: expected a whole picture",))
    assert alone.next.startswith("copy the photo again")


def test_photos_that_are_not_there_are_open():
    """Named, in one finding; none where all are there."""
    assert photos_named(()) == ()
    (one,) = photos_named(("photos/a.jpg", "photos/b.jpg"))
    assert (one.verdict, one.because) == (Verdict.OPEN, "named and not there: photos/a.jpg, photos/b.jpg")
