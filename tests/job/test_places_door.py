"""The door for the places of a mount sheet."""

from __future__ import annotations

import json
from dataclasses import replace

from tests.samples.mount import BOX, DASH_TOML, JOB, ROOF_TOML

from backprobe.evidence.mount_sheet import MountSheet
from backprobe.formats.mount_toml import read_mount
from backprobe.job import mounted
from backprobe.job.mounted import judged_mount
from backprobe.job.places_door import places_text

ASKED = {"mount.toml": DASH_TOML + ROOF_TOML, "lat": -33.1, "lon": 151.2, "date": "2026-03-31"}


def asked(**more: object) -> dict[str, object]:
    """What the door says."""
    return dict(json.loads(places_text(json.dumps({**ASKED, **more}))))


def test_the_places_are_ranked_and_one_is_drawn() -> None:
    """The roof is better than the dash; the best is drawn, or the one that is asked for, or the one that was chosen."""
    found = asked()
    assert [place["name"] for place in found["places"]] == ["on the roof", "on the dash"]
    assert (found["best"], found["shown"]) == ("on the roof", "on the roof")
    assert str(found["svg"]).startswith("<svg")
    assert asked(shown="on the dash")["shown"] == "on the dash"
    chosen = asked(**{"mount.toml": 'chosen = "on the dash"\n' + DASH_TOML + ROOF_TOML})
    assert chosen["shown"] == "on the dash"


def test_it_says_what_the_judgement_says() -> None:
    """Share and words of the place that was taken are those of the job's own finding."""
    text = 'chosen = "on the dash"\n' + DASH_TOML + ROOF_TOML
    judged = judged_mount(read_mount(text, "mount.toml"), replace(JOB, date="2026-03-31"))
    assert judged is not None
    found = next(each for each in asked(**{"mount.toml": text})["places"] if each["name"] == "on the dash")
    assert (found["because"], found["verdict"]) == (judged.findings[0].because, str(judged.findings[0].verdict))
    assert round(100 * found["fix_share"], 1) == judged.findings[0].value


def test_a_place_is_worked_out_once() -> None:
    """That another place is added, or that it is chosen, costs nothing again."""
    mounted._predicted.cache_clear()
    asked()
    misses = mounted._predicted.cache_info().misses
    asked(**{"mount.toml": 'chosen = "on the dash"\n' + DASH_TOML + ROOF_TOML})
    judged_mount(read_mount('chosen = "on the roof"\n' + DASH_TOML + ROOF_TOML, "mount.toml"), JOB)
    sheet = MountSheet(file="mount.toml", places=(BOX,))
    judged_mount(sheet, replace(JOB, date="2026-03-31"))
    assert mounted._predicted.cache_info().misses <= misses + 2  # the box, and the job's own day if it is another


def test_what_was_described_says_its_figures() -> None:
    """The figures that choices stand for, with what they rest on; none for a place that was measured."""
    sheet = '[[place]]\nname = "there"\nsits = "lining"\nabove = "fibreglass"\nabove_near = "hand"\n'
    figures = asked(**{"mount.toml": sheet})["places"][0]["figures"]
    assert figures == [
        "in the roof lining",
        "above: fibreglass, 150 (80 to 220) mm from the unit",
        "figures of a cab that nobody has measured (our own model)",
    ]
    assert asked()["places"][0]["figures"] == []


def test_bad_input_is_refused_in_words() -> None:
    """No latitude, no sheet, no JSON: the same shape as everywhere."""
    assert "lat" in asked(lat=None)["error"]
    assert asked(**{"mount.toml": ""})["ok"] is False
    assert json.loads(places_text("["))["ok"] is False
