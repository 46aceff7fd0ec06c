"""A file that somebody opens at a job: what it is, told from what it holds, and what the journal is to hold of it.

The same kinds, the same figures beside them and the same rows as a job folder's import makes, so that a file says the
same whichever way it came in.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import islice

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.report import ReportNames
from backprobe.formats.candump_text import is_candump
from backprobe.formats.cells import cells_of, delimiter_of, says_something
from backprobe.formats.lights_csv import COLUMNS as LIGHT_COLUMNS
from backprobe.formats.lights_csv import read_lights
from backprobe.formats.nmea_sentence import Sentence, sentences_in
from backprobe.formats.obd_csv import is_engine_data
from backprobe.formats.parts import lines_in
from backprobe.formats.recording_csv import read_recording
from backprobe.formats.report_columns import report_columns_of
from backprobe.formats.reports_csv import read_reports
from backprobe.formats.text import HEAD_BYTES, encoding_of, is_wide, refuse_binary, refuse_known
from backprobe.job.bus import log_body
from backprobe.job.canonical import Body
from backprobe.job.kinds import BUS_LOG, LIGHTS, RECEPTION, REPORTS
from backprobe.job.prove_rows import light_rows
from backprobe.job.receptions import figures_of
from backprobe.job.rows import Row, plain
from backprobe.stages.bus.door import listen_to_lines
from backprobe.stages.mount.reception.listen import reception_of

HEAD_LINES = 100
SOUGHT_LINES = 20_000  # in which a receiver's first good sentence must stand
DESK_LOGS = {b"LOGG": "BLF", b"MDF     ": "MDF", b"UnFinMF ": "MDF"}  # how they begin
DESK_TEXTS = {";$FILEVERSION=": "TRC", "date ": "ASC", "base ": "ASC"}
TO_THE_DESK = "a log that a phone can read; this is a bus log in the form {form}: give it to the desk, which reads it"
EXPECTED = (
    "a receiver's log (NMEA), a bus log (candump, or engine data as CSV), the unit's reports, what its lights showed, "
    "or a recording; this is none of them"
)
OF_REPORTS = frozenset({"unit_id", "received_at", "lat", "event"})  # beside a time one of these: no recording has them


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """What a file is: the kind of its entry, its name in the journal, what stands beside its digest, rows of its own.

    `counted` says how much of it was understood, in a few words.
    """

    kind: str
    file: str
    counted: str
    more: Body
    rows: tuple[Row, ...] = ()


def opened(content: bytes, *, file: str, names: ReportNames | None = None) -> Opened:
    """What a file called `file` is. Raises UnreadableError where it is nothing that can be kept at a job from here.

    `names` is what the server of the unit calls the columns of its reports.
    """
    name = plain(file.replace("\\", "/").rpartition("/")[2]) or "file"
    if not content:
        raise UnreadableError(Place(name), "a file with something in it; this one is empty")
    form = next((form for first, form in DESK_LOGS.items() if content.startswith(first)), None)
    if form is not None:
        raise UnreadableError(Place(name), TO_THE_DESK.format(form=form))
    refuse_known(content[:HEAD_BYTES], file=name)
    receiver = _receiver_lines(content)
    if _has_sentence(receiver):
        return _reception(receiver, name)
    return _of_text(_text_lines(content, name), name, names=names or ReportNames())


def _receiver_lines(content: bytes) -> list[str]:
    """The lines as a receiver's log is read: bytes of other protocols pass as letters."""
    wide = is_wide(content[:HEAD_BYTES])
    return lines_in(content.decode(encoding_of(content[:HEAD_BYTES]) if wide else "latin-1", errors="replace"))


def _has_sentence(lines: Sequence[str]) -> bool:
    return any(
        isinstance(each, Sentence) for line in lines[:SOUGHT_LINES] if "$" in line for each in sentences_in(line)
    )


def _text_lines(content: bytes, name: str) -> list[str]:
    """The lines of any other text; a tail of zeros, as a power cut leaves it, is shown as one."""
    refuse_binary(content[:HEAD_BYTES], file=name)
    text = content.decode(encoding_of(content[:HEAD_BYTES]), errors="replace")
    return lines_in(text.rstrip("\0") + "\0" if text.endswith("\0") else text)


def _of_text(lines: list[str], name: str, *, names: ReportNames) -> Opened:
    first = next(((number, line) for number, line in enumerate(lines, 1) if says_something(line)), (1, ""))
    start = first[1].lstrip("\ufeff \t").lower()
    form = next((form for begins, form in DESK_TEXTS.items() if start.startswith(begins.lower())), None)
    if form is not None:
        raise UnreadableError(Place(name, *first), TO_THE_DESK.format(form=form))
    if any(is_candump(line) for line in lines[:HEAD_LINES]) or is_engine_data(lines[:HEAD_LINES]):
        return _bus_log(lines, name)
    if _is_lights(first[1]):
        return _lights(lines)
    if _is_reports(first[1], names):
        return _reports(lines, names)
    return _recording(lines, name, first=first)


def _reception(lines: list[str], name: str) -> Opened:
    log = reception_of(lines, file=name)
    return Opened(
        kind=RECEPTION,
        file=f"nmea/{name}",
        counted=f"{log.sentences} sentences",
        more={"stored": True, "figures": figures_of(log)},
    )


def _bus_log(lines: list[str], name: str) -> Opened:
    heard = listen_to_lines(lines, file=name).heard
    return Opened(
        kind=BUS_LOG,
        file=f"bus/{name}",
        counted=f"{heard.frames} {'rows' if heard.format == 'obd-csv' else 'frames'}",
        more={"stored": True, "heard": log_body(heard)},
    )


def _lights(lines: list[str]) -> Opened:
    seen, skipped = read_lights(lines, file=LIGHTS)
    return Opened(
        kind="lights_file",
        file=LIGHTS,
        counted=f"{len(seen)} lights",
        more={},
        rows=tuple(light_rows(seen, skipped)),
    )


def _reports(lines: list[str], names: ReportNames) -> Opened:
    table = read_reports(lines, file=REPORTS, names=names, may_be_empty=True)
    return Opened(kind="reports", file=REPORTS, counted=f"{len(table.reports)} reports", more={"stored": True})


def _recording(lines: list[str], name: str, *, first: tuple[int, str]) -> Opened:
    """A recording, which is what is left; what cannot be read as one is none of all."""
    try:
        recording = read_recording(lambda: lines, file=name, thresholds_V=())
    except UnreadableError as fault:
        raise UnreadableError(Place(name, *first), f"{EXPECTED} (as a recording: {fault.expected})") from None
    channels = ", ".join(channel.name for channel in islice(recording.channels, 4))
    return Opened(kind="recording", file=f"recordings/{name}", counted=channels, more={"stored": True})


def _is_lights(header: str) -> bool:
    cells = {cell.lower() for cell in cells_of(header, delimiter_of(header, LIGHT_COLUMNS))}
    return {"light", "pattern"} <= cells


def _is_reports(header: str, names: ReportNames) -> bool:
    """Whether a header is that of reports, under the project's names or the server's own."""
    return any(_names_reports(header, each) for each in (names, ReportNames()))


def _names_reports(header: str, names: ReportNames) -> bool:
    try:
        columns = report_columns_of(header, names, place=Place(REPORTS))
    except UnreadableError:
        return False
    return bool(OF_REPORTS & set(columns.places))
