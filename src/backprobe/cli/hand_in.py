"""`backprobe hand-in`: job folders into the store that `backprobe serve` shows."""

from __future__ import annotations

import argparse
from pathlib import Path


def options(parser: argparse.ArgumentParser) -> None:
    """The command's options."""
    parser.add_argument("folders", metavar="JOBDIR", nargs="+", help="job folders, each with its job.toml")
    parser.add_argument("--data", metavar="DIR", help="the folder that serve keeps everything in (backprobe-data)")
    parser.add_argument("--store", metavar="ADDRESS", help="a database elsewhere: postgresql+psycopg://user@host/name")
    parser.add_argument("--name", metavar="TEXT", help="what a new organisation is called")
    parser.add_argument(
        "--to", metavar="PERSON", help="who gets the jobs that are new; added where nobody is so called"
    )


def run(chosen: argparse.Namespace) -> int:
    """Hand the folders in, one after the other; 0 where all went well."""
    from backprobe.cases.desk_people import person_called
    from backprobe.cases.hand_in_folder import hand_in_folder
    from backprobe.cases.may import Caller, Role
    from backprobe.cases.yard import open_yard
    from backprobe.server.serving import settings_from

    given = {"data": chosen.data and Path(chosen.data), "store": chosen.store, "name": chosen.name}
    settings = settings_from({name: value for name, value in given.items() if value is not None})
    yard = open_yard(settings.data, address=settings.store, name=settings.name)
    lead = Caller(role=Role.LEAD, organisation=yard.organisation)
    try:
        people = [person_called(yard, lead, name=chosen.to)] if chosen.to else []
        for folder in chosen.folders:
            done = hand_in_folder(yard, lead, folder=Path(folder), people_ids=people)
            print(f"{folder}: job {done.job}, {done.new_entries} new entries, {done.new_files} new files")
            for note in done.notes:
                print(f"  {note}")
    finally:
        yard.store.close()
    return 0
