"""Joining the unit to the vehicle: wire, fuse, ground, joint."""
