"""What a folder says now against what its journal has of it: the entries to add, and no others.

Rows are matched by what identifies them and then by what they say, so that a row that merely moved is not taken for a
changed one. What changed becomes a correction, what is gone is withdrawn, what moved is noted.
"""

from __future__ import annotations

from collections import Counter, defaultdict, deque
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from backprobe.errors import JournalError
from backprobe.job.canonical import Body, Json, canonical
from backprobe.job.entry import Entry, digest
from backprobe.job.fold import fold
from backprobe.job.ids import folder_id
from backprobe.job.journal import Draft
from backprobe.job.kinds import CORRECTION, KINDS, ROWS_MOVED, WITHDRAWN, content, identity, text
from backprobe.job.lineage import Statement
from backprobe.job.rows import Row
from backprobe.job.table import place_in, place_of

MOVED_IN_ONE = 1_000  # pairs of id and place in one entry: about 50 bytes each, so that it stays below 64 kB
GONE = "no longer in the folder"


@dataclass(frozen=True, slots=True)
class Pair:
    """What stands in the journal (None: nothing yet) and the row of the folder for it (None: it is gone)."""

    old: Statement | None
    new: Row | None

    @property
    def same(self) -> bool:
        """Whether both say the same."""
        return self.old is not None and self.new is not None and _says(self.old) == _says(self.new)


def changes(entries: Iterable[Entry], rows: Sequence[Row], *, job: str) -> tuple[Draft, ...]:
    """The entries that bring a journal up to `rows`; `entries` are those that the folder's own imports wrote.

    Nothing at all where the rows say what the journal says already. `by` of every entry is the row of kind `person`,
    where there is one. Raises JournalError where a later version has written what this one cannot read.
    """
    own = tuple(entries)
    state = fold(own)
    if state.unknown:
        raise JournalError(
            f"a later version of backprobe has imported this folder; use that one: {state.unknown[0].why}"
        )
    pairs = _paired(state.standing, rows)
    written = Counter(identity(entry.kind, entry.body) for entry in own if entry.kind in KINDS)
    moved_before = sum(1 for entry in own if entry.kind == ROWS_MOVED)
    drafts = [
        *_new_and_corrected(pairs, written, job=job),
        *_withdrawn(pairs, job=job),
        *_moved(pairs, state.places, job=job, before=moved_before),
    ]
    by = _person(pairs, drafts)
    return tuple(draft if draft.id == by else replace(draft, by=by) for draft in drafts)


def _says(one: Statement | Row) -> tuple[str, bytes]:
    kind = one.kind or ""
    return kind, canonical(content(kind, one.body))


def _paired(standing: Iterable[Statement], rows: Sequence[Row]) -> list[Pair]:
    """Every row with what stands for it, in the order of the rows; then what is gone."""
    unmatched = {one.id: one for one in standing}
    alike: dict[tuple[str, bytes], deque[str]] = defaultdict(deque)
    for one in unmatched.values():
        alike[_says(one)].append(one.id)
    matched = [unmatched.pop(same.popleft()) if (same := alike[_says(row)]) else None for row in rows]
    left: dict[tuple[str, ...], deque[str]] = defaultdict(deque)
    for one in unmatched.values():
        left[identity(one.kind or "", one.body)].append(one.id)
    pairs = []
    for row, old in zip(rows, matched, strict=True):
        changed = left[identity(row.kind, row.body)]
        pairs.append(Pair(old or (unmatched.pop(changed.popleft()) if changed else None), row))
    return pairs + [Pair(old, None) for old in unmatched.values()]


def _new_and_corrected(pairs: Iterable[Pair], written: Counter[tuple[str, ...]], *, job: str) -> Iterator[Draft]:
    for pair in pairs:
        if pair.new is None or pair.same:
            continue
        row = pair.new
        if pair.old is None:
            row_name = identity(row.kind, row.body)
            written[row_name] += 1
            yield Draft(id=folder_id(job, *row_name, written[row_name]), kind=row.kind, body=row.body, blobs=row.blobs)
        else:
            body: Body = {"replaces": pair.old.id, "kind": row.kind, "body": row.body}
            name = folder_id(job, CORRECTION, digest(canonical(body)))
            yield Draft(id=name, kind=CORRECTION, body=body, blobs=row.blobs)


def _withdrawn(pairs: Iterable[Pair], *, job: str) -> Iterator[Draft]:
    for pair in pairs:
        if pair.old is not None and pair.new is None:
            body: Body = {"entry": pair.old.id, "why": GONE}
            yield Draft(id=folder_id(job, WITHDRAWN, pair.old.id), kind=WITHDRAWN, body=body)


def _moved(pairs: Iterable[Pair], places: Mapping[str, int], *, job: str, before: int) -> Iterator[Draft]:
    """Where unchanged rows stand now, file by file; `before` is how many such entries there are already."""
    by_file: dict[str, list[Json]] = defaultdict(list)
    for pair in pairs:
        if pair.old is None or pair.new is None or not pair.same:
            continue
        place = place_in(pair.new.body)
        if place is not None and place != place_of(pair.old, places):
            by_file[text(pair.new.body, "file") or ""].append([pair.old.id, place])
    chunks = ((file, some) for file, moved in by_file.items() for some in _chunks(moved))
    for number, (file, moved) in enumerate(chunks, before + 1):
        body: Body = {"file": file, "moved": moved}
        yield Draft(id=folder_id(job, ROWS_MOVED, number, digest(canonical(body))), kind=ROWS_MOVED, body=body)


def _chunks(moved: list[Json]) -> Iterator[list[Json]]:
    yield from (moved[start : start + MOVED_IN_ONE] for start in range(0, len(moved), MOVED_IN_ONE))


def _person(pairs: Iterable[Pair], drafts: Iterable[Draft]) -> str | None:
    """The id of the entry that stands for the person named in the folder, written before or just now."""
    known = (pair.old.id for pair in pairs if pair.old and pair.new and pair.new.kind == "person")
    fresh = (draft.id for draft in drafts if draft.kind == "person")
    return next(iter([*known, *fresh]), None)
