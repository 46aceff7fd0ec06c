"""Corners around the demo's yard, invented."""

from __future__ import annotations

from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.formats.corner_index import write_corner_index

# 0.00025° south and 0.00035° west of where truck 07 stands: 28 m and 33 m, so it stands 43 m north-east of the corner
INDEX = CornerIndex(
    corners=(Corner(-33.1004, 151.2, ("Linden Road", "Wharf Lane")),), attribution="© nobody", source="yard.osm.pbf"
)
TEXT = write_corner_index(INDEX)
SAID = "reported from: corner of Linden Road and Wharf Lane, 40 m north-east (© nobody)"
