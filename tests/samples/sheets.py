"""Sheets of an invented job, as the desk sends them."""

UNIT = """
name = "LN-2"
[supply]
least_V = 9.0
most_V = 32.0
"""


def job_sheet(job: str, *, serial: str | None = None, vin: str | None = None, plate: str = "LY 01") -> str:
    """A job sheet with no more than the desk knows at first."""
    lines = ["[vehicle]", f'plate = "{plate}"', "system_V = 12", "[unit]", 'sheet = "unit.toml"']
    lines += [] if serial is None else [f'serial = "{serial}"']
    lines += ["[job]", f'id = "{job}"']
    lines[1:1] = [] if vin is None else [f'vin = "{vin}"']
    return "\n".join(lines) + "\n"
