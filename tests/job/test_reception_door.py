"""The engine's door for a receiver's log."""

import json

import pytest
from tests.samples.receiver_world import World, log_lines

from backprobe.job.reception_door import reception_text
from backprobe.job.receptions import reception_from
from backprobe.stages.mount.reception.answer import answer_of

LOG = "\r\n".join(log_lines(World(seed=3, satellites=24, systems=("GP", "GL"), blocked=(90, 210, 90, 22))))


def asked(**changes: object) -> dict[str, object]:
    """What comes out."""
    return dict(json.loads(reception_text(json.dumps({"file": "reception.nmea", "log": LOG, **changes}))))


def test_answer_figures_and_picture() -> None:
    """The answer as from the terminal; its figures give the same findings again; the picture names the blocked side."""
    answer = asked(heading_deg=0)
    assert answer["ok"] is True
    log = reception_from(answer["figures"], file="reception.nmea")  # type: ignore[arg-type]
    assert log is not None
    again = answer_of(log, heading_deg=0.0).as_json()
    assert again["findings"] == answer["findings"]
    assert again["blocked"] == answer["blocked"] != []
    assert "blocked: right rear" in str(answer["picture"])


@pytest.mark.parametrize(
    "changes", [{"file": None}, {"log": 3}, {"heading_deg": "north"}, {"heading_deg": True}, {"log": "no sentence"}]
)
def test_what_cannot_be_answered(changes: dict[str, object]) -> None:
    """Each in the shape of every refusal."""
    answer = asked(**changes)
    assert answer["ok"] is False
    assert answer["error"]


def test_no_json() -> None:
    """Half a text."""
    assert json.loads(reception_text("{"))["code"] == "job"
