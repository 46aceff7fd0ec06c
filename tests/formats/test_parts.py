"""Values out of JSON text: what is there is given, what is not as it must be is refused by its name."""

from __future__ import annotations

import pytest

from backprobe.errors import InputError, JobError
from backprobe.formats.parts import Parts, lines_in, parts_in


def test_an_object_gives_its_values() -> None:
    """Texts, numbers, and texts by name."""
    parts = parts_in('{"log": "a", "lat": 1, "nmea": {"x": "y"}, "none": null}', "the question")
    assert parts.text("log") == "a"
    assert parts.number("lat") == 1.0
    assert parts.texts("nmea") == {"x": "y"}
    assert parts.maybe("none") is None
    assert parts.maybe("absent") is None
    assert parts.texts("absent") == {}


@pytest.mark.parametrize("text", ["", "{", "[" * 100_000, "NaN,"])
def test_what_is_no_json_is_refused_by_its_name(text: str) -> None:
    """Torn, empty or too deep: one refusal, of the kind that the door asks for."""
    with pytest.raises(JobError, match="the job is no JSON"):
        parts_in(text, "the job", refusal=JobError)


def test_what_is_no_object_is_refused() -> None:
    """A list is JSON, but no object."""
    with pytest.raises(InputError, match="the log is no JSON object"):
        parts_in("[]", "the log")


@pytest.mark.parametrize("value", [1, True, [], {}])
def test_a_text_must_be_one(value: object) -> None:
    """Anything else is refused, where it must be there and where it may be."""
    for read in (Parts({"log": value}).text, Parts({"log": value}).maybe):
        with pytest.raises(InputError, match="log: a text is expected"):
            read("log")


def test_a_text_that_must_be_there_is_missed() -> None:
    """No value, or null."""
    for values in ({}, {"log": None}):
        with pytest.raises(InputError, match="log: a text is expected"):
            Parts(values).text("log")


@pytest.mark.parametrize("value", [True, "1", None])
def test_a_number_must_be_one(value: object) -> None:
    """True counts as no number, a text neither; the refusal says what was expected."""
    with pytest.raises(InputError, match="lat: a number of degrees is expected"):
        Parts({"lat": value}).number("lat", expected="a number of degrees")


@pytest.mark.parametrize("value", ["a", [1], {"x": 1}])
def test_texts_by_name_must_be_texts(value: object) -> None:
    """A text, a list, or an object with anything but texts."""
    with pytest.raises(InputError, match="nmea: an object of names and texts"):
        Parts({"nmea": value}).texts("nmea")


def test_lines_part_where_a_file_s_do() -> None:
    """Three line ends, a form feed that parts nothing, and the empty text."""
    assert lines_in("a\r\nb\rc\x0cd\n") == ["a", "b", "c\x0cd"]
    assert lines_in("") == []
    assert lines_in("a\n\n") == ["a", ""]
