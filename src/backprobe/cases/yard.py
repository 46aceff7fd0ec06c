"""Everything the server keeps, opened: the database, the folder of files, the organisation."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from backprobe.errors import OptionError
from backprobe.store.blobs import BlobFolder, Blobs
from backprobe.store.migrate import migrate
from backprobe.store.opened import Store, opened
from backprobe.store.people import make_organisation

HOME = "home"  # the one organisation of a server, until there are more
DATABASE, FILES, MADE = "backprobe.sqlite3", "blobs", "made"


@dataclass(frozen=True, slots=True, kw_only=True)
class Yard:
    """`store` for entries and rows, `blobs` for files, `made` for what can be made again from them, by the digest."""

    store: Store
    blobs: Blobs
    made: Path
    organisation: str


def open_yard(folder: Path, *, address: str | None = None, name: str = "Backprobe") -> Yard:
    """The yard in `folder`, made where there is none, its tables brought up to date.

    `address` is that of a database elsewhere, else an SQLite file in the folder. Raises OptionError and StoreError.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        (folder / MADE).mkdir(exist_ok=True)
    except OSError as fault:
        raise OptionError(f"{folder}: a folder to keep things in is expected; {fault.strerror or fault}") from None
    store = opened(address or f"sqlite:///{folder / DATABASE}")
    migrate(store)
    with store.writing() as connection:
        make_organisation(connection, HOME, name=name)
    return Yard(store=store, blobs=BlobFolder(folder / FILES), made=folder / MADE, organisation=HOME)
