"""A receiver's log from its file."""

from pathlib import Path
from xml.etree import ElementTree

import pytest
from tests.samples.receiver_world import World, log_lines

from backprobe.cases.reception import judged_file, picture_of, reception_file
from backprobe.errors import UnreadableError
from backprobe.findings import Verdict


def test_a_log_is_judged_and_drawn(tmp_path: Path) -> None:
    """A blocked world: the side is found, named by the cab, and drawn with the same words."""
    path = tmp_path / "reception.nmea"
    world = World(seed=3, satellites=24, systems=("GP", "GL"), blocked=(90, 210, 90, 22))
    path.write_text("\r\n".join(log_lines(world)), encoding="ascii")
    answer = judged_file(path, heading_deg=0.0)
    assert answer.findings[0].id == "reception_blocked"
    assert answer.findings[0].verdict in (Verdict.THIN, Verdict.FAILS)
    assert "rear" in answer.findings[0].because
    picture = picture_of(answer)
    words = [node.text or "" for node in ElementTree.fromstring(picture).iter("{http://www.w3.org/2000/svg}text")]
    assert any(text.startswith("blocked: ") and "rear" in text for text in words)
    assert reception_file(path).file == "reception.nmea"


def test_a_photo_is_refused(tmp_path: Path) -> None:
    """A JPEG that is called .nmea."""
    path = tmp_path / "photo.nmea"
    path.write_bytes(b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(99))
    with pytest.raises(UnreadableError, match="JPEG"):
        judged_file(path)
