"""Ids of entries.

An import from a folder makes its ids from what identifies a row (UUID version 5, RFC 9562 section 5.5), so that the
same row has the same id however often it is imported. Devices that record as they go bring ids of version 7 from
outside: there is no clock and no randomness here.
"""

from __future__ import annotations

import json
from uuid import NAMESPACE_URL, UUID, uuid5

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


def timed_id(time_ms: int, random: bytes) -> str:
    """An id of version 7 (RFC 9562 section 5.7), as text, of milliseconds since 1970 and ten random bytes.

    >>> timed_id(0x017F22E279B0, bytes.fromhex("0cc318c4dc0c0c07398f"))
    '017f22e2-79b0-7cc3-98c4-dc0c0c07398f'
    """
    value = (time_ms & (2**48 - 1)) << 80 | int.from_bytes(random[:10], "big")
    value &= ~(0xF << 76 | 0x3 << 62)
    return str(UUID(int=value | 0x7 << 76 | 0x2 << 62))
