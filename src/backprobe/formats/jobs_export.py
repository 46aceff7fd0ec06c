"""A list of jobs as other programs read it: CSV, JSON, GeoJSON.

CSV is RFC 4180: every cell quoted, lines end in CR LF. A text that a spreadsheet would take for a formula gets an
apostrophe in front, which spreadsheets do not show (OWASP, CSV Injection; from memory), also behind a semicolon or tab,
where a spreadsheet set to another delimiter would begin a new cell. JSON and GeoJSON hold every text as it is. GeoJSON
is RFC 7946: degrees of WGS 84, east first; a job whose place is not known has no geometry.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator

from backprobe.evidence.job_row import COLUMNS, JobRow

DIGITS = 6  # RFC 7946, 11.2: six decimals are about 10 cm
_FORMULA = re.compile(r"(^\s*|[;\t]\s*)(?=[=+\-@＝＋－＠|%])")
_BREAKS = re.compile(r"[\r\n\v\f\u2028\u2029]+")
_PLACE = ("lat_deg", "lon_deg")


def jobs_csv(jobs: Iterable[JobRow]) -> str:
    r"""The jobs as CSV, a heading first. Written to a file, spreadsheets want it in UTF-8 with a byte order mark.

    >>> jobs_csv([JobRow(id="j1", name="=1+1", state="open", verdict="open")]).split("\r\n")[1][:14]
    '"j1","\'=1+1","'
    """
    return "".join(_lines(jobs))


def _lines(jobs: Iterable[JobRow]) -> Iterator[str]:
    yield ",".join(f'"{name}"' for name in COLUMNS) + "\r\n"
    for job in jobs:
        yield ",".join(_cell(getattr(job, name)) for name in COLUMNS) + "\r\n"


def _cell(value: str | float | None) -> str:
    if value is None:
        return '""'
    text = harmless(value) if isinstance(value, str) else repr(_figure(value))
    return '"' + text.replace('"', '""') + '"'


def harmless(text: str) -> str:
    """A text that no spreadsheet works out, on one line.

    >>> harmless("=2+5"), harmless("LY 07;@SUM(A1)"), harmless("X12/6 GY")
    ("'=2+5", "LY 07;'@SUM(A1)", 'X12/6 GY')
    """
    return _FORMULA.sub(r"\1'", _BREAKS.sub(" ", text))


def jobs_json(jobs: Iterable[JobRow]) -> str:
    """The jobs as a JSON object: `{"ok": true, "jobs": […]}`."""
    return json.dumps({"ok": True, "jobs": [_values(job) for job in jobs]}, ensure_ascii=False)


def jobs_geojson(jobs: Iterable[JobRow]) -> str:
    """The jobs as a GeoJSON feature collection, one feature a job.

    >>> json.loads(jobs_geojson([JobRow(id="j1", name="a", state="open", verdict="open")]))["features"][0]["geometry"]
    """
    features = [_feature(job) for job in jobs]
    return json.dumps({"type": "FeatureCollection", "features": features}, ensure_ascii=False)


def _feature(job: JobRow) -> dict[str, object]:
    geometry = None
    if job.lat_deg is not None and job.lon_deg is not None:
        geometry = {"type": "Point", "coordinates": [_figure(job.lon_deg), _figure(job.lat_deg)]}
    properties = {name: value for name, value in _values(job).items() if name not in _PLACE and name != "id"}
    return {"type": "Feature", "id": job.id, "geometry": geometry, "properties": properties}


def _values(job: JobRow) -> dict[str, str | float | None]:
    found = {name: getattr(job, name) for name in COLUMNS}
    return {name: _figure(value) if isinstance(value, float) else value for name, value in found.items()}


def _figure(value: float) -> float:
    return round(value, DIGITS) + 0.0 if isinstance(value, float) else value
