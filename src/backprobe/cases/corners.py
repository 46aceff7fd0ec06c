"""An index of corners out of a map."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from backprobe.errors import OptionError
from backprobe.files.corner_file import write_corners
from backprobe.files.osm_pbf import Around, MapRead, read_corners


@dataclass(frozen=True, slots=True)
class Built:
    """A map that was read, and the file that its corners went into with its size."""

    read: MapRead
    out: Path
    size_bytes: int

    @property
    def notes(self) -> tuple[str, ...]:
        """What should be known of the index."""
        return tuple(_notes(self.read))

    def as_json(self) -> dict[str, object]:
        """The answer as plain JSON values."""
        index = self.read.index
        return {
            "ok": True,
            "file": str(self.out),
            "bytes": self.size_bytes,
            "corners": len(index.corners),
            "streets": len(index.streets),
            "source": index.source,
            "as_of": index.as_of,
            "language": index.language,
            "ways": {"streets": self.read.ways, "passed_over": self.read.passed_over},
            "left_out": {"outside": self.read.outside, "lost": self.read.lost},
            "attribution": index.attribution,
            "notes": list(self.notes),
        }


def build_corners(path: Path, out: Path, *, around: Around | None = None, language: str | None = None) -> Built:
    """Read a map and write its corners to `out`. Raises InputError; nothing is written where no corner is within."""
    read = read_corners(path, language=language, around=around)
    if around is not None and not read.index.corners:
        north, east = around.place
        raise OptionError(
            f"--within {north:g},{east:g},{around.km:g}: none of {read.outside} corners in {path.name} lies there"
        )
    return Built(read, out, write_corners(read.index, out))


def _notes(read: MapRead) -> Iterator[str]:
    index = read.index
    if not index.corners:
        yield "no two named streets meet on this map"
    if index.as_of is None:
        yield "the map does not say of which day it is"
    if read.lost:
        yield f"{read.lost} corners lie beyond the edge at which the map was cut, and were left out"
    if read.outside:
        yield f"{read.outside} meetings of streets beyond the circle were left out"
