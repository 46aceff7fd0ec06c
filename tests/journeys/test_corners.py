"""The corners around the day's jobs are on the phone when there is no line."""

from __future__ import annotations

import pytest
from tests.journeys.conftest import Phone, Yard

from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.files.corner_file import write_corners
from backprobe.formats.corner_index import read_corner_index

PLACE = "\n[place]\nlat = -33.10015\nlon = 151.20035\n"
NEAR, FAR = (
    Corner(-33.1005, 151.2001, ("Linden Road", "Wharf Lane")),
    Corner(-34.0, 151.2001, ("Far Road", "Hill Road")),
)
KEPT = """() => new Promise((resolve, reject) => {
  const opened = indexedDB.open("backprobe");
  opened.onerror = () => reject(opened.error);
  opened.onsuccess = () => {
    const found = opened.result.transaction("settings").objectStore("settings").get("corners");
    found.onsuccess = () => resolve(found.result);
  };
})"""


@pytest.fixture(autouse=True)
def _placed(monkeypatch: pytest.MonkeyPatch) -> None:
    """The truck's job says where it stands."""
    from tests.journeys import trucks

    monkeypatch.setattr(trucks, "SHEET", trucks.SHEET + PLACE)


@pytest.fixture
def _corners(yard: Yard) -> None:
    """The server has an index of two corners before the phone asks for its day."""
    index = CornerIndex(corners=(FAR, NEAR), attribution="© somebody", source="m.osm.pbf")
    write_corners(index, yard.desk.server.yard.made.parent / "corners.txt")


@pytest.mark.usefixtures("_corners")
def test_the_day_brings_the_corners_around_its_jobs(phone: Phone) -> None:
    """Of two corners the one near the truck is kept on the phone, with what is owed to the map."""
    phone.offline()
    kept = phone.page.evaluate(KEPT)
    index = read_corner_index(kept, file="kept")
    assert index.streets == ("Linden Road", "Wharf Lane")
    assert index.attribution == "© somebody"
