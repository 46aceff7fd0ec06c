"""`backprobe roster preview`: what a list of vehicles or units holds, and which of its cells cannot be taken."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator
from pathlib import Path

from backprobe.evidence.roster import RosterFault
from backprobe.job.roster_preview import RosterPreview

MOST_SHOWN = 40


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("action", metavar="preview", choices=("preview",), help="look at a list; nothing is written")
    parser.add_argument("file", metavar="FILE", help="the list, CSV or a workbook (.xlsx)")
    parser.add_argument("--known", metavar="FILE", help="an earlier list, to see what is new and what has changed")
    parser.add_argument("--columns", metavar="MAP", help="name=theirs,… where the columns have other names")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(chosen: argparse.Namespace) -> int:
    """Print the preview: 0 when every row can be taken as it is, 1 when a cell is bad or to be looked at."""
    from backprobe.cases.roster import roster_in  # loads the readers: only where they are wanted
    from backprobe.formats.roster_columns import roster_names
    from backprobe.job.roster_preview import preview_roster

    names = None if chosen.columns is None else roster_names(chosen.columns)
    roster = roster_in(Path(chosen.file), names=names)
    known = () if chosen.known is None else roster_in(Path(chosen.known), names=names).rows
    preview = preview_roster(roster, known)
    print(json.dumps(preview.as_json(), ensure_ascii=False) if chosen.json else "\n".join(_lines(preview)))
    return 1 if preview.bad or preview.doubts else 0


def _lines(preview: RosterPreview) -> Iterator[str]:
    roster = preview.roster
    counts = [f"{len(preview.new)} new", f"{len(preview.changed)} changed", f"{len(preview.unchanged)} unchanged"]
    counts += [f"{preview.bad_rows} that cannot be taken"] if preview.bad else []
    yield f"{roster.file}, {roster.kind}: {', '.join(counts)}"
    for change in preview.changed[:MOST_SHOWN]:
        said = (f"{what} {'(none)' if before is None else before} → {after}" for what, before, after in change.changes)
        yield f"  row {change.row.line}, {change.after.name}: {'; '.join(said)}"
    yield from _faults("cannot be taken", preview.bad)
    yield from _faults("to be looked at", preview.doubts)
    if roster.passed_over:
        yield f"columns passed over: {', '.join(roster.passed_over)}"
    yield from (f"note: {note}" for note in roster.notes)
    if preview.bad:
        yield "nothing would be taken until every row can be"


def _faults(what: str, faults: tuple[RosterFault, ...]) -> Iterator[str]:
    if faults:
        yield f"{what}:"
        yield from (f"  {fault}" for fault in faults[:MOST_SHOWN])
    if len(faults) > MOST_SHOWN:
        yield f"  … and {len(faults) - MOST_SHOWN} more"
