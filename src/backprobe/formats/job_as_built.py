"""The tables of a job sheet that say what was built: [[joint]], one for each lead of the unit, and [[photo]]."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import TypeAlias

from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.photo import NamedPhoto, Shows
from backprobe.formats.toml_text import TomlTable
from backprobe.limits.fuse_lookup import TYPES

KEYS: dict[str, tuple[str, ...]] = {
    "joint": (
        *(
            "lead",
            "wire",
            "method",
            "fuse_A",
            "fuse_type",
            "place",
            "length_m",
            "end",
            "undo",
            "strip_mm",
            "overlap_mm",
        ),
        *("strain_relief", "damp", "drip_loop", "hottest_C", "pull_N", "tugged", "drop_mV", "drop_A"),
        *("cut_mm", "capped", "tied_back", "right_way", "tap_most_A", "near_module", "bare_mm", "turns"),
    ),
    "photo": ("file", "shows", "note"),
}
Known: TypeAlias = Mapping[str, Collection[str]]  # the keys of every table, for what is said of a wrong one

LEAST_FUSE_A, MOST_FUSE_A = 0.1, 100
MOST_LENGTH_M = 100
COLDEST_C, HOTTEST_C = -40, 200
MOST_TURNS = 50
MOST_CUT_MM = 20_000
MOST_STRIP_MM, MOST_PULL_N, MOST_DROP_MV = 200, 2000, 12_000


def read_joints(tables: tuple[TomlTable, ...], known: Known = KEYS) -> tuple[Joint, ...]:
    """The joints in their order. Raises UnreadableError where one has no lead, or two name the same one."""
    joints: dict[str, Joint] = {}
    for table in tables:
        table.only(known)
        joint = _joint(table)
        if joint.lead in joints:
            raise table.refuse("lead", f"each lead of the unit once; '{joint.lead}' stands twice")
        joints[joint.lead] = joint
    return tuple(joints.values())


def _joint(table: TomlTable) -> Joint:
    method = table.text_of("method", choices=tuple(Method))
    return Joint(
        lead=table.must("lead", table.text_of("lead"), expected='"…", a lead as the unit\'s sheet names it'),
        wire=table.text_of("wire"),
        method=None if method is None else Method(method),
        fuse_A=table.number_of("fuse_A", least=LEAST_FUSE_A, most=MOST_FUSE_A),
        fuse_type=table.text_of("fuse_type", choices=TYPES),
        place=table.text_of("place"),
        length_m=table.number_of("length_m", least=0, most=MOST_LENGTH_M),
        end=table.text_of("end"),
        undo=table.text_of("undo"),
        strip_mm=table.number_of("strip_mm", least=0, most=MOST_STRIP_MM),
        overlap_mm=table.number_of("overlap_mm", least=0, most=MOST_STRIP_MM),
        strain_relief=table.flag_of("strain_relief"),
        damp=table.flag_of("damp"),
        drip_loop=table.flag_of("drip_loop"),
        hottest_C=table.number_of("hottest_C", least=COLDEST_C, most=HOTTEST_C),
        pull_N=table.number_of("pull_N", least=0, most=MOST_PULL_N),
        tugged=table.flag_of("tugged"),
        drop_mV=table.number_of("drop_mV", least=0, most=MOST_DROP_MV),
        drop_A=table.number_of("drop_A", least=LEAST_FUSE_A, most=MOST_FUSE_A),
        cut_mm=table.number_of("cut_mm", least=0, most=MOST_CUT_MM),
        capped=table.flag_of("capped"),
        tied_back=table.flag_of("tied_back"),
        bare_mm=table.number_of("bare_mm", least=0, most=MOST_STRIP_MM),
        turns=table.number_of("turns", least=0, most=MOST_TURNS),
        right_way=table.flag_of("right_way"),
        tap_most_A=table.number_of("tap_most_A", least=LEAST_FUSE_A, most=MOST_FUSE_A),
        near_module=table.flag_of("near_module"),
    )


def read_photos(tables: tuple[TomlTable, ...], known: Known = KEYS) -> tuple[NamedPhoto, ...]:
    """What is said of photos, in their order. Raises UnreadableError where one has no file, or two the same one."""
    photos: dict[str, NamedPhoto] = {}
    for table in tables:
        table.only(known)
        shows = table.text_of("shows", choices=tuple(Shows))
        file = table.must("file", table.text_of("file"), expected='"photos/…", as seen from the job folder')
        if file in photos:
            raise table.refuse("file", f"each photo once; '{file}' stands twice")
        photos[file] = NamedPhoto(
            file=file, shows=Shows.OTHER if shows is None else Shows(shows), note=table.text_of("note")
        )
    return tuple(photos.values())
