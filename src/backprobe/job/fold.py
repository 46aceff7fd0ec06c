"""A job as it stands: the fold of its entries, the same in whatever order they arrived."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from backprobe.errors import JournalError, Skipped
from backprobe.evidence.key_turn import KeyScript
from backprobe.evidence.light_seen import LightSeen
from backprobe.evidence.reading import ReadingsTable
from backprobe.job.entry import VERSION, Entry
from backprobe.job.kinds import ERASED, KINDS, LIGHTS, ROWS_MOVED, SIGN_OFF, misfit, text, texts
from backprobe.job.lineage import Dispute, Statement, standing, statement
from backprobe.job.prove_rows import is_disputed, lights_of_rows, script_of_rows, skipped_of, unreadable_row
from backprobe.job.slots import Slot, slots_of
from backprobe.job.table import ROW_KINDS, place_of, readings_table, unreadable

_NOT_EVIDENCE = frozenset({ERASED, ROWS_MOVED, SIGN_OFF})


@dataclass(frozen=True, slots=True, order=True)
class NotUnderstood:
    """An entry that is kept but says nothing to this version, and why."""

    id: str
    kind: str
    v: int
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JobState:
    """What the entries of one job come to.

    `standing` is everything said that is neither corrected nor withdrawn, in a fixed order; `disputes` are the entries
    that were corrected in two ways; `awaited` the ids that were named and have not arrived; `unknown` what this version
    does not understand; `erased` the digests of files deleted on purpose. `table` holds the readings, `slots` the
    places for one value; `script` is what was done with the key, `script_disputed` whether a turn of it was said in two
    ways, `lights` what was seen of the unit's lights, with the lines of it that were passed over. While any of
    disputes, awaited or unknown is not empty, somebody has still to look.
    """

    job: str | None = None
    standing: tuple[Statement, ...] = ()
    disputes: tuple[Dispute, ...] = ()
    awaited: tuple[str, ...] = ()
    unknown: tuple[NotUnderstood, ...] = ()
    erased: frozenset[str] = frozenset()
    table: ReadingsTable = field(default_factory=ReadingsTable)
    script: KeyScript | None = None
    script_disputed: bool = False
    lights: tuple[LightSeen, ...] = ()
    lights_skipped: tuple[Skipped, ...] = ()
    slots: Mapping[str, Slot] = field(default_factory=dict)
    places: Mapping[str, int] = field(default_factory=dict)

    def of_kind(self, kind: str) -> tuple[Statement, ...]:
        """What stands of one kind."""
        return tuple(one for one in self.standing if one.kind == kind)

    @property
    def open_slots(self) -> tuple[Slot, ...]:
        """The slots for which somebody has still to decide."""
        return tuple(slot for slot in self.slots.values() if slot.is_open)

    @property
    def settled(self) -> bool:
        """Whether nothing is disputed, awaited or not understood, and every slot that was filled holds one value."""
        return not (self.disputes or self.awaited or self.unknown or self.open_slots)


def fold(entries: Iterable[Entry]) -> JobState:
    """The state of the job whose entries these are, in any order, repeats allowed.

    Raises JournalError where two jobs are mixed or two different entries bear one id.
    """
    by_id = unique(entries)
    jobs = sorted({entry.job for entry in by_id.values()})
    if len(jobs) > 1:
        raise JournalError(f"entries of more than one job are mixed: {', '.join(jobs)}")
    unknown = [odd for entry in by_id.values() if (odd := _not_understood(entry)) is not None]
    odd_ids = {one.id for one in unknown}
    known = [entry for entry in by_id.values() if entry.id not in odd_ids]
    stands = standing((statement(entry) for entry in known if entry.kind not in _NOT_EVIDENCE), by_id)
    unknown += [odd for one in stands.statements if (odd := _not_evidence(one)) is not None]
    places = _places(known)
    odd_ids |= {one.id for one in unknown}
    clear = _in_order((one for one in stands.statements if one.id not in odd_ids), places)
    return JobState(
        job=jobs[0] if jobs else None,
        standing=clear,
        disputes=stands.disputes,
        awaited=stands.awaited,
        unknown=tuple(sorted(unknown)),
        erased=frozenset(blob for entry in known if entry.kind == ERASED for blob in texts(entry.body, "blobs")),
        table=readings_table([one for one in clear if one.kind in ROW_KINDS], places),
        script=script_of_rows(clear, places),
        script_disputed=is_disputed(clear),
        lights=lights_of_rows(clear, places),
        lights_skipped=skipped_of(clear, places, file=LIGHTS),
        slots=slots_of(clear),
        places=places,
    )


def unique(entries: Iterable[Entry]) -> dict[str, Entry]:
    """The entries by id, each once, sorted by device and number; JournalError where one id has two contents."""
    by_id: dict[str, Entry] = {}
    for entry in entries:
        other = by_id.setdefault(entry.id, entry)
        if other.raw != entry.raw:
            raise JournalError(f"two different entries bear the id {entry.id}: {other} and {entry}; neither was taken")
    return dict(sorted(by_id.items(), key=lambda item: (item[1].device, item[1].seq, item[0])))


def _not_understood(entry: Entry) -> NotUnderstood | None:
    why = f"version {entry.v} is later than {VERSION}" if not entry.version_known else misfit(entry.kind, entry.body)
    return None if why is None else NotUnderstood(entry.id, entry.kind, entry.v, why)


def _not_evidence(one: Statement) -> NotUnderstood | None:
    """Whether what stands cannot be read as evidence: a correction may bring a body that does not fit its kind."""
    kind = one.kind or ""
    if kind not in KINDS:
        return NotUnderstood(one.id, kind, one.entry.v, f"{kind!r} is no kind of evidence")
    why = misfit(kind, one.body) or unreadable(kind, one.body) or unreadable_row(kind, one.body)
    return None if why is None else NotUnderstood(one.id, kind, one.entry.v, why)


def _places(known: Iterable[Entry]) -> dict[str, int]:
    """Where rows stand that moved in their file without changing; `known` is in the order of the devices' numbers."""
    places: dict[str, int] = {}
    for entry in known:
        moved = entry.body["moved"] if entry.kind == ROWS_MOVED else None
        for pair in moved if isinstance(moved, list) else ():
            if isinstance(pair, list) and isinstance(pair[0], str) and isinstance(pair[1], int):
                places[pair[0]] = pair[1]
    return places


def _in_order(statements: Iterable[Statement], places: dict[str, int]) -> tuple[Statement, ...]:
    """By file and place there; what came from no file follows by device and number."""

    def rank(one: Statement) -> tuple[bool, str, int, str, int, str]:
        file = text(one.body, "file")
        place = place_of(one, places)
        return file is None, file or "", -1 if place is None else place, one.entry.device, one.entry.seq, one.id

    return tuple(sorted(statements, key=rank))
