"""The pictures of a job's bus logs for its record: volts and engine speed against time, the key beneath."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.cases.bus import listen_to
from backprobe.cases.import_folder import Imported
from backprobe.drawings.bus_cycle import bus_cycle, described_cycle
from backprobe.paper.content import Picture
from backprobe.stages.bus.picture import cycle_content

MOST_BYTES = 20_000_000  # a longer log takes seconds to listen to again, and its curves say little at that width
TITLE = "The key seen from inside"


def bus_pictures(imported: Imported) -> Iterator[Picture]:
    """A picture of each log in the folder that shows a turn of the key, in the order of their names."""
    for path in imported.folder.buses:
        if path.stat().st_size > MOST_BYTES:
            continue
        listened = listen_to(path)
        key = listened.heard.key
        if not (key.ons_s or key.cranks or key.offs):
            continue
        content = cycle_content(listened, system_V=imported.sheet.vehicle.system_V)
        caption = f"{path.name}: the supply and the engine speed as the vehicle's own computers report them"
        yield Picture(svg=bus_cycle(content), caption=caption, alt=described_cycle(content), title=TITLE)
