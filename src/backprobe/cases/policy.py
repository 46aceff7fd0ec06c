"""A fleet's own policy: the file in the job folder, or the one that was named."""

from __future__ import annotations

from pathlib import Path

from backprobe.errors import JobError
from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.files.open import small_text
from backprobe.formats.policy_toml import POLICY, read_policy


def policy_for(folder: Path, named: Path | None) -> FleetPolicy | None:
    """The fleet's own limits; None where there are none.

    Raises JobError where the folder has a policy and another is named: either could loosen what the other asks for.
    UnreadableError, with the line, for a policy that cannot be read or would loosen a limit.
    """
    own = folder / POLICY
    if named is None:
        return read_policy(small_text(own), own.name) if own.is_file() else None
    if own.is_file() and own.resolve() != named.resolve():
        raise JobError(
            f"{named}: {own} is this job's policy already, and the one must not loosen what the other asks for\n"
            f"put what both ask for into {POLICY}, or take that out of the folder"
        )
    return read_policy(small_text(named), named.name)
