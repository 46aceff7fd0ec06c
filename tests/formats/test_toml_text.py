"""TOML with places: every refusal names file, line and what was expected."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.formats.toml_text import parse_toml

KNOWN = {"": ("vehicle", "count"), "vehicle": ("system_V", "plate", "name"), "wire": ("name",)}


def table(text):
    """The table that a text holds."""
    return parse_toml(text, file="sheet.toml")


def refusal(read):
    """Line, text and expectation of the refusal that `read` meets."""
    with pytest.raises(UnreadableError) as caught:
        read()
    assert caught.value.place.file == "sheet.toml"
    return caught.value.place.line, caught.value.place.text, caught.value.expected


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("a = 1\nb = 8,5", 2),
        ("a = 1\nb = 12 V\n", 2),
        ("a = 1\nb = HV 204\nc = 2", 2),
        ('a = "x\nb = 1', 1),
        ("a = 1\nb", 2),
        ("a = 1\nb =\n\n", 2),
        ("a = yes", 1),
        ("[a\nb = 1", 1),
        ("a = 1\n\nb = [1, 2\n\n", 3),
    ],
)
def test_what_is_no_toml_is_refused_with_its_line(text, line):
    """Decimal comma, unit, missing quotation marks, brackets left open: the line is named."""
    found, stands, expected = refusal(lambda: table(text))
    assert found == line
    assert stands == text.split("\n")[line - 1]
    assert "key = value" in expected


@pytest.mark.parametrize("text", ["a = 1\na = 2", "[x]\na = 1\n[x]\nb = 2", "[[x]]\n\n[x]"])
def test_what_stands_twice_is_called_so(text):
    """Keys and tables once."""
    line, _, expected = refusal(lambda: table(text))
    assert line == len(text.split("\n")) - (text.count("b = 2"))
    assert "twice" in expected


def test_a_byte_order_mark_is_let_pass():
    """Plain editors put one before the first line."""
    assert table("\ufeffcount = 1").whole_of("count", least=0, most=5) == 1


@pytest.mark.parametrize("text", ["a = " + "[" * 5000, "a = " + "9" * 5000, "a = " + "{b = " * 3000])
def test_monsters_are_refused_not_crashed_on(text):
    """Brackets thousands deep and numbers of thousands of digits."""
    with pytest.raises(UnreadableError):
        table(text)


def test_a_misspelt_key_is_refused_with_the_nearest():
    """sytem_v is nearest to system_V."""
    line, stands, expected = refusal(lambda: table("[vehicle]\n\nsytem_v = 12").table_of("vehicle").only(KNOWN))
    assert (line, stands) == (3, "sytem_v = 12")
    assert "did you mean system_V?" in expected


def test_a_key_of_another_table_is_sent_there():
    """system_V above all headers belongs under [vehicle]."""
    line, _, expected = refusal(lambda: table("count = 1\nsystem_V = 12").only(KNOWN))
    assert line == 2
    assert "system_V under [vehicle]" in expected


def test_a_strange_key_is_answered_with_all_there_are():
    """Nothing near: the keys are listed, nothing is guessed."""
    _, _, expected = refusal(lambda: table("[vehicle]\nqqqq = 1").table_of("vehicle").only(KNOWN))
    assert "system_V, plate, name" in expected
    assert "did you mean" not in expected


def test_a_misspelt_header_is_refused_with_its_line():
    """[vehcle] in line 2."""
    line, stands, expected = refusal(lambda: table("count = 1\n[vehcle]\n").only(KNOWN))
    assert (line, stands) == (2, "[vehcle]")
    assert "did you mean vehicle?" in expected


def test_known_keys_pass():
    """Nothing is raised for keys that there are."""
    sheet = table("count = 1\n[vehicle]\nsystem_V = 12")
    sheet.only(KNOWN)
    sheet.table_of("vehicle").only(KNOWN)
    assert sheet.table_of("vehicle").values == {"system_V": 12}


def test_missing_and_empty_are_the_same():
    """A template's empty text is as good as none."""
    sheet = table('a = ""\nb = "  "')
    assert sheet.text_of("a") is sheet.text_of("b") is sheet.text_of("c") is None
    assert sheet.number_of("c", least=0, most=1) is sheet.flag_of("c") is sheet.day_of("c") is None
    assert sheet.texts_of("c") == sheet.texts_of("a") == ()
    assert sheet.tables_of("c") == ()
    assert sheet.table_of("c").values == {}


def test_text_must_stand_in_quotation_marks():
    """A number is not taken for text: 0012 and 1_2 would come out changed."""
    line, stands, expected = refusal(lambda: table("a = 12").text_of("a"))
    assert (line, stands) == (1, "a = 12")
    assert 'a = "…"' in expected


def test_a_choice_names_the_nearest():
    """The word suply is not one of the choices, supply is meant."""
    _, _, expected = refusal(lambda: table('a = "suply"').text_of("a", choices=("supply", "ground")))
    assert expected == "one of: supply, ground; did you mean supply?"
    assert table('a = "ground"').text_of("a", choices=("supply", "ground")) == "ground"


def test_one_text_or_a_list_of_texts():
    """Writing circuit = "F1" is circuit = ["F1"]; a number in the list is refused."""
    assert table('a = "F1"').texts_of("a") == ("F1",)
    assert table('a = ["F1 ", "", "F2"]').texts_of("a") == ("F1", "F2")
    assert refusal(lambda: table('a = ["F1", 2]').texts_of("a"))[0] == 1


@pytest.mark.parametrize("value", ['"12"', "true", "nan", "inf", "-inf", "61", "-1", "[1]", "1" + "0" * 400])
def test_numbers_are_numbers_within_bounds(value):
    """Text, true, nan, infinities, values out of bounds and lists are no volts."""
    assert "a number from 0 to 60" in refusal(lambda: table(f"a = {value}").number_of("a", least=0, most=60))[2]


def test_numbers_at_the_bounds_pass():
    """Both bounds are allowed, whole or not."""
    assert table("a = 60").number_of("a", least=0, most=60) == 60.0
    assert table("a = 0.0").number_of("a", least=0, most=60) == 0.0


def test_whole_numbers_may_be_written_with_a_point_but_not_with_a_fraction():
    """6.0 cylinders are 6; 4.5 are none."""
    assert table("a = 6.0").whole_of("a", least=1, most=16) == 6
    assert "whole number" in refusal(lambda: table("a = 4.5").whole_of("a", least=1, most=16))[2]


def test_flags_are_true_or_false():
    """1 is not true."""
    assert table("a = false").flag_of("a") is False
    assert "true or false" in refusal(lambda: table("a = 1").flag_of("a"))[2]


def test_dates_may_be_toml_or_text():
    """A TOML date and a text; a time of day alone is no date."""
    assert table("a = 2026-03-31").day_of("a") == "2026-03-31"
    assert table("a = 2026-03-31T07:45:00").day_of("a") == "2026-03-31T07:45:00"
    assert table('a = "31 March"').day_of("a") == "31 March"
    assert "a date" in refusal(lambda: table("a = 07:45:00").day_of("a"))[2]


def test_what_must_be_there_is_asked_for_at_the_head_of_its_table():
    """The line of the header, and which key is missing."""
    vehicle = table('a = 1\n[vehicle]\nplate = "x"').table_of("vehicle")
    line, _, expected = refusal(lambda: vehicle.must("system_V", None, expected="12 or 24"))
    assert line == 2
    assert expected == "system_V = 12 or 24, in [vehicle]"
    assert vehicle.must("plate", "x", expected="") == "x"


def test_tables_in_single_brackets_are_told_to_use_double():
    """[wire] is one table, [[wire]] one of many."""
    line, _, expected = refusal(lambda: table('a = 1\n[wire]\nname = "Red"').tables_of("wire"))
    assert line == 2
    assert "[[wire]]" in expected
    assert [entry.title for entry in table("[[wire]]\n[[wire]]").tables_of("wire")] == [
        "[[wire]] number 1",
        "[[wire]] number 2",
    ]


def test_a_value_in_the_place_of_a_table_is_refused():
    """A number, vehicle = 3, is no table."""
    assert "headed [vehicle]" in refusal(lambda: table("vehicle = 3").table_of("vehicle"))[2]


@given(
    st.text(alphabet=st.characters(codec="utf-8"), max_size=60) | st.text(alphabet="ab=[]{}\".'\n,#1_-:T ", max_size=60)
)
def test_any_text_gives_a_table_or_a_refusal_with_a_line_that_exists(text):
    """The parser raises nothing but the project's own error, and never names a line past the end."""
    line = line_refused(text)
    assert line is None or 1 <= line <= text.count("\n") + 1


def line_refused(text):
    """The line in which a text is refused; None where it is not refused or no line is named."""
    try:
        table(text)
    except UnreadableError as error:
        return error.place.line
    return None
