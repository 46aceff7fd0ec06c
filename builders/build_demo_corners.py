"""Make the demo's index of corners: a few invented streets around an invented yard, no map of any real place.

Streets run straight from east to west (lanes) and from south to north (roads); each lane meets each road but one, where
a roundabout stands. Run ``python builders/build_demo_corners.py``; ``--check`` only says whether the file in demo/
holds these corners.
"""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "src"))

from backprobe.errors import UnreadableError
from backprobe.evidence.corner import Corner, CornerIndex, CornerKind, sorted_corners
from backprobe.files.corner_file import corners_in, write_corners
from backprobe.formats.corner_index import CORNERS

YARD = Path(__file__).resolve().parents[1] / "demo" / "linden-yard"
LANES = {"Ropewalk": -33.0989, "Wharf Lane": -33.1005, "Tar Lane": -33.1018}  # by their latitude
ROADS = {"Anchor Road": 151.1984, "Linden Road": 151.2001, "Cooper's Hill": 151.2017}  # by their longitude
RING = ("Ropewalk", "Cooper's Hill")


def index() -> CornerIndex:
    """The corners of all lanes with all roads."""
    corners = [
        Corner(north, east, (road, lane), CornerKind.ROUNDABOUT if (lane, road) == RING else CornerKind.CORNER)
        for lane, north in LANES.items()
        for road, east in ROADS.items()
    ]
    return CornerIndex(
        corners=sorted_corners(corners), attribution="streets invented for the demo", source="build_demo_corners.py"
    )


def is_current(path: Path) -> bool:
    """Whether a file holds these corners; how they are packed may differ from one machine to another."""
    try:
        return corners_in(path) == index()
    except UnreadableError:
        return False


def main() -> int:
    """Write the file, or with --check say whether it is current; 1 when it is not."""
    path = YARD / CORNERS
    if "--check" not in sys.argv[1:]:
        write_corners(index(), path)
    current = is_current(path)
    print(f"{path.name}: {'current' if current else 'out of date'}")
    return 0 if current else 1


if __name__ == "__main__":
    sys.exit(main())
