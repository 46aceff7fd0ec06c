"""What to mind wherever a bus appears. It gives way to the vehicle maker's instructions."""

from __future__ import annotations

LISTEN_ONLY = (
    "listen only, at the maker's diagnostic plug, with a logger that sends nothing and acknowledges nothing; "
    "never tap bus wires with the unit's power leads"
)


def minded(text: str) -> str:
    """What is to be done at a bus, with the caution behind it.

    >>> minded("log it again").startswith("log it again; listen only")
    True
    """
    return f"{text}; {LISTEN_ONLY}"
