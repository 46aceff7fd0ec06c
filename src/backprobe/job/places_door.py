"""The engine's door for the places of a mount sheet: what each would hear, and the sky over one of them.

In: ``{"mount.toml": text, "lat": number, "lon": number, "date": text|null, "shown": name|null}``.
Out: ``{"ok": true, "best": name, "places": [{…, "because", "next", "figures"}, …], "shown": name, "svg", "alt"}``, the
best place first; each as `backprobe sky --json` has it, with the words of its finding and, where it was described and
not measured, the figures that its choices stand for. Or ``{"ok": false, "error": …, "code": …}``.

A job's judgement and this door share what they have worked out: what stands here costs the verdict nothing.
"""

from __future__ import annotations

from backprobe.drawings.sky import SkyPlot
from backprobe.drawings.sky_plot import described_sky, sky_plot
from backprobe.evidence.mount_sheet import MountSheet
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.parts import Parts
from backprobe.job.mounted import predicted, site_of
from backprobe.job.told import told
from backprobe.stages.mount.findings import place_finding
from backprobe.stages.mount.picture import mask_cells
from backprobe.stages.mount.predict import PlacePrediction, ranked

SHEET = "mount.toml"
DEGREES = "a number of degrees"
PHONE_WIDTH = 360.0


def places_text(asked: str) -> str:
    """What the places of a sheet would hear, from JSON text; errors come back in the same shape as everywhere.

    >>> print(places_text("{}"))
    {"code": "job", "error": "mount.toml: a text is expected", "ok": false}
    """
    return told(asked, "the question", answer_to=_answer)


def _answer(parts: Parts) -> dict[str, object]:
    sheet = read_mount(parts.text(SHEET), SHEET)
    where = (parts.number("lat", expected=DEGREES), parts.number("lon", expected=DEGREES))
    site = site_of(where, parts.maybe("date"))
    found = ranked([predicted(place, sheet, site=site) for place in sheet.places])
    wanted = parts.maybe("shown") or sheet.chosen
    shown = next((each for each in found if each.place.name == wanted), found[0])
    plot = SkyPlot(
        title=f"The sky as predicted, {shown.place.name}",
        mask=tuple(mask_cells(shown.mask, shown.heading_deg)),
        heading_deg=shown.heading_deg,
    )
    return {
        "ok": True,
        "best": found[0].place.name,
        "places": [_place(each, sheet) for each in found],
        "shown": shown.place.name,
        "svg": sky_plot(plot, width=PHONE_WIDTH),
        "alt": described_sky(plot),
    }


def _place(found: PlacePrediction, sheet: MountSheet) -> dict[str, object]:
    finding = place_finding(found, sheet)
    supposed = found.place.supposed
    figures = [] if supposed is None else [*supposed.figures, supposed.basis]
    return {**found.as_json(), "because": finding.because, "next": finding.next, "figures": figures}
