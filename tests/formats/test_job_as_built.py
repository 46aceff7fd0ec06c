"""Joints and photos of a job sheet."""

from __future__ import annotations

import pytest

from backprobe.errors import UnreadableError
from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.photo import NamedPhoto, Shows
from backprobe.formats.job_as_built import KEYS, read_joints, read_photos
from backprobe.formats.job_toml import KEYS as SHEET_KEYS
from backprobe.formats.toml_text import TomlTable, parse_toml


def tables(text: str, name: str) -> tuple[TomlTable, ...]:
    """The tables of that name in a TOML text."""
    return parse_toml(text, file="job.toml").tables_of(name)


def test_joints_keep_their_order():
    """As written: the drawing shows them so."""
    text = '[[joint]]\nlead = "ignition"\nwire = "Violet"\nmethod = "fuse_tap"\n[[joint]]\nlead = "ground"\n'
    assert read_joints(tables(text, "joint")) == (
        Joint(lead="ignition", wire="Violet", method=Method.FUSE_TAP),
        Joint(lead="ground"),
    )


def test_empty_texts_say_nothing():
    """A form that was left empty is no method and no wire."""
    text = '[[joint]]\nlead = "power"\nwire = ""\nmethod = ""\nundo = "  "\n'
    assert read_joints(tables(text, "joint")) == (Joint(lead="power"),)


def test_photos_of_which_only_the_file_is_named():
    """They show something else than the asked ones."""
    assert read_photos(tables('[[photo]]\nfile = "photos/a.jpg"\nshows = ""', "photo")) == (
        NamedPhoto(file="photos/a.jpg", shows=Shows.OTHER),
    )


def test_a_key_of_another_table_is_sent_there():
    """A colour belongs under [[wire]]: the message says so, with the line."""
    with pytest.raises(UnreadableError) as caught:
        read_joints(tables('[[joint]]\nlead = "power"\ncolour = "RD"\n', "joint"), SHEET_KEYS)
    assert caught.value.place.line == 3
    assert caught.value.expected == "colour under [wire], not here"


def test_the_keys_are_those_of_the_sheet():
    """What is read here is what the whole sheet lets through."""
    assert {name: SHEET_KEYS[name] for name in KEYS} == KEYS
