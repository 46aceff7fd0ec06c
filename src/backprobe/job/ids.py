"""Ids of entries.

An import from a folder makes its ids from what identifies a row (UUID version 5, RFC 9562 section 5.5), so that the
same row has the same id however often it is imported. Devices that record as they go bring ids of version 7 from
outside: there is no clock and no randomness here.
"""

from __future__ import annotations

import json
from uuid import NAMESPACE_URL, uuid5

PROJECT = uuid5(NAMESPACE_URL, "backprobe:journal")  # fixed for ever: every id made here stands on it


def folder_id(job: str, *names: str | int) -> str:
    """The id of what `names` identify within `job`, as text.

    Names are joined as a JSON list, so that no two lists of names can run into one another.

    >>> folder_id("job-1", "reading", "readings.csv", "red", 1)
    'e01b6be3-c92b-591f-b417-a271d797597b'
    >>> folder_id("job-1", "ab", "c") == folder_id("job-1", "a", "bc")
    False
    """
    name = json.dumps(names, ensure_ascii=False, separators=(",", ":"))
    return str(uuid5(uuid5(PROJECT, job), name))
