"""Findings on places."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.mount import BOX, DASH, ROOF, sheet, thin_sky

from backprobe.evidence.mount_sheet import MountPlace, Part, Side
from backprobe.findings import Stage, Verdict
from backprobe.stages.mount.findings import findings_of, loss_notes, not_chosen, place_finding
from backprobe.stages.mount.predict import predict

COATED = MountPlace(name="behind it", parts=(Part(material="coated_glass", side=Side.ABOVE, away_mm=300),))


def test_each_place_has_its_finding_the_best_first() -> None:
    """Value between low and high, limit with its basis, and for the worse ones the better place as the next thing."""
    wanted = sheet(BOX, ROOF)
    best, worst = findings_of(predict(wanted, thin_sky()), wanted)
    assert (best.id, best.stage, best.verdict, best.next) == ("mount_sky", Stage.MOUNT, Verdict.HOLDS, None)
    assert (best.value, worst.value) == (100.0, 0.0)
    assert worst.next == "take 'on the roof' instead: 100 % of the day"
    assert worst.limit is not None
    assert "worst place on earth" in worst.limit.warrant
    assert "in the way: plastic 0 dB, metal 40 dB" in worst.because


def test_what_to_do_with_one_place() -> None:
    """A thin one is tried out first; behind coated glass another pane is looked for; in metal glass or plastic."""
    thin = replace(predict(sheet(DASH), thin_sky())[0], verdict=Verdict.THIN)
    assert "let the unit lie there powered" in str(place_finding(thin, sheet(DASH)).next)
    for place, words in ((COATED, "glass without coating"), (BOX, "instead of metal")):
        found = predict(sheet(place), thin_sky())[0]
        assert found.verdict is Verdict.FAILS
        assert words in str(place_finding(found, sheet(place)).next)


def test_the_heading_is_said() -> None:
    """Under a stated heading that one, else the worst."""
    assert "at the worst heading, 0°" in place_finding(predict(sheet(BOX), thin_sky())[0], sheet(BOX)).because
    stated = sheet(BOX, heading_deg=90.0)
    assert place_finding(predict(stated, thin_sky())[0], stated).because.startswith("heading 90°")


def test_a_place_not_chosen_is_open() -> None:
    """The finding names the best place, and the line to write."""
    wanted = sheet(BOX, ROOF)
    found = not_chosen(wanted, predict(wanted, thin_sky())[1])
    assert found.verdict is Verdict.OPEN
    assert found.next == 'write into mount.toml which place was taken: chosen = "on the roof"'


def test_every_loss_is_told_with_its_source() -> None:
    """Each material once, with least and most and what that rests on; and that GPS alone is reckoned with."""
    notes = loss_notes(sheet(DASH, BOX))
    assert [note.split(":")[0] for note in notes[:-1]] == ["plastic", "glass", "metal"]
    assert "1 to 4 dB" in notes[1]
    assert "from memory, unverified" in notes[1]
    assert notes[-1].startswith("GPS alone")
