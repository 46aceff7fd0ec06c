"""Where in a TOML text a table or a key stands."""

from backprobe.formats.toml_lines import header_line, key_line, lines_of

TEXT = '''# a job
title = "x"
["vehicle"]
system_V = 12  # volts
'plate' = "HV 204"

[[wire]]
name = "Red"
notes = """
[[wire]]
name = "not a wire"
"""
[[ wire ]]
name = "Blue"
'''


def test_headers_are_found_quoted_or_not():
    """["vehicle"] and [[ wire ]] are headers as well."""
    assert header_line(TEXT, "vehicle") == 3
    assert header_line(TEXT, "wire") == 7


def test_a_header_inside_a_long_text_does_not_count():
    """The second [[wire]] stands in line 13; what looks like one in line 10 is text."""
    assert header_line(TEXT, "wire", index=1) == 13
    assert header_line(TEXT, "wire", index=2) is None


def test_keys_are_found_in_their_own_table():
    """The name of the first and the second wire; system_V of the vehicle; a key above all headers."""
    assert key_line(TEXT, "name", table="wire") == 8
    assert key_line(TEXT, "name", table="wire", index=1) == 14
    assert key_line(TEXT, "system_V", table="vehicle") == 4
    assert key_line(TEXT, "title") == 2


def test_quoted_keys_are_found():
    """'plate' = … is plate = …"""
    assert key_line(TEXT, "plate", table="vehicle") == 5


def test_a_key_that_is_not_there_has_no_line():
    """Neither in another table nor as part of a longer word."""
    assert key_line(TEXT, "plate", table="wire") is None
    assert key_line(TEXT, "system", table="vehicle") is None
    assert key_line(TEXT, "system_V") is None


def test_inline_and_dotted_tables_are_found():
    """A table may be vehicle = { … } in one line, and vehicle.plate = …"""
    assert key_line('a = 1\nvehicle = { system_V = 12, plate = "x" }', "plate", table="vehicle") == 2
    assert key_line('a = 1\nvehicle.plate = "x"', "plate", table="vehicle") == 2
    assert key_line("vehicle = { template = 1 }", "plate", table="vehicle") is None


def test_a_long_text_that_ends_in_its_own_line_is_closed():
    """Triple quotes opened and closed in one line leave nothing open; other quotes inside do not close."""
    assert key_line('a = """one line"""\nb = 2', "b") == 2
    assert key_line("a = '''\n\"\"\" c = 1\n'''\nb = 2", "b") == 4
    assert key_line("a = '''\nc = 1\n'''\nb = 2", "c") is None


def test_lines_end_with_line_feeds_only():
    """A form feed or a Unicode line separator does not end a TOML line; a carriage return is no part of it."""
    assert lines_of("a\r\nb\x0cc\u2028d\ne") == ["a", "b\x0cc\u2028d", "e"]
