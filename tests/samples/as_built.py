"""Joints for the good job of `tests.samples.jobs`, and the unit's sheet they go with."""

from __future__ import annotations

UNIT = """\
name = "Lantern 2"
[supply]
least_V = 8.0
most_V = 32.0
[[lead]]
name = "power"
purpose = "supply"
colour = "RD"
mm2 = 0.75
fuse_A = 3
[[lead]]
name = "ground"
purpose = "ground"
colour = "BK"
awg = 18
[[lead]]
name = "ignition"
purpose = "ignition"
[[lead]]
name = "door"
purpose = "input"
"""
JOINTS = """\
[[joint]]
lead = "power"
wire = "Red"
method = "soldered_sleeve"
fuse_A = 3
place = "behind connector X12"
length_m = 1.8
undo = "cut the sleeve out, close Red with a butt connector"
[[joint]]
lead = "ground"
method = "ring_terminal"
place = "bolt of the pedal bracket"
undo = "take the ring off, tighten the bolt again"
[[joint]]
lead = "ignition"
wire = "Violet"
method = "fuse_tap"
fuse_A = 1
[[joint]]
lead = "door"
end = "capped 60 mm from the unit"
"""
