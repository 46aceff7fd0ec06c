"""Draw the demo's three photos: nothing real is shown, no plate, no hand, no truck.

Run ``python builders/build_demo_photos.py``; ``--check`` only says whether the photos in demo/ show what it would draw.
Coders of pictures differ from version to version in their last bits, so what is compared is what can be seen.
"""

from __future__ import annotations

import io
import math
import random
import sys
from collections.abc import Callable
from dataclasses import dataclass
from importlib import resources
from pathlib import Path

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageFont, ImageOps, ImageStat

OUT = Path(__file__).resolve().parents[1] / "demo" / "linden-yard" / "truck-07" / "photos"
SIZE = (640, 480)
FINE = 2  # drawn at this multiple, then made smaller: soft edges
QUALITY = 82
ALIKE = 2.0  # mean difference of two pictures that show the same, in levels of 255
MOST_BYTES = 60_000
ORIENTATION = 0x0112  # Exif 2.3
SIDEWAYS = 6  # the camera was held upright: to be turned by 90° to the right

Colour = tuple[int, int, int]
STEEL, DARK, COPPER, RED, BLACK = (150, 154, 158), (58, 60, 64), (196, 122, 70), (176, 36, 34), (34, 34, 36)


@dataclass(frozen=True)
class Plates:
    """What stands on the vehicle's plate and on the unit's label."""

    vehicle: str
    vin: str
    rating: str
    unit: str
    serial: str


SEVEN = Plates("HARROW & VALE   DROVER 7", "5ZLDR7HV5KR200417", "G.V.W. 7 490 kg      12 V", "LANTERN 2", "LN2-00417")


def font(size: int, *, bold: bool = False) -> ImageFont.FreeTypeFont:
    """The page's own font, at a size in drawn points."""
    name = "AtkinsonHyperlegible-Bold.ttf" if bold else "AtkinsonHyperlegible-Regular.ttf"
    file = resources.files("fontpkg_atkinson_hyperlegible").joinpath("files").joinpath(name)
    return ImageFont.truetype(io.BytesIO(file.read_bytes()), size * FINE)


def sheet(colour: Colour, seed: int) -> tuple[Image.Image, ImageDraw.ImageDraw]:
    """An uneven ground to draw on: light from the top left, scratches."""
    width, height = SIZE[0] * FINE, SIZE[1] * FINE
    light = Image.linear_gradient("L").rotate(35).crop((60, 60, 196, 196)).resize((width, height))
    ground = ImageOps.colorize(light, tuple(min(255, part + 28) for part in colour), colour)
    pen = ImageDraw.Draw(ground)
    chance = random.Random(seed)
    for _ in range(160):
        x, y, length = chance.uniform(0, width), chance.uniform(0, height), chance.uniform(20, 160)
        shade = tuple(max(0, part + chance.randint(-10, 14)) for part in colour)
        pen.line((x, y, x + length, y + length * 0.1), fill=shade, width=FINE)
    return ground, pen


def at(x: float, y: float) -> tuple[float, float]:
    """A place in the finished picture as one in the drawing."""
    return x * FINE, y * FINE


def box(*edges: float) -> tuple[float, float, float, float]:
    """A rectangle of the finished picture (left, top, right, bottom) as one of the drawing."""
    left, top, right, bottom = edges
    return (*at(left, top), *at(right, bottom))


def cable(pen: ImageDraw.ImageDraw, points: list[tuple[float, float]], *, colour: Colour, width: float) -> None:
    """A round cable along the points, lighter where the light falls."""
    line = [at(*point) for point in points]
    high = [(x - width * 0.1, y - width * 0.25 * FINE) for x, y in line]
    for path, shade, wide in ((line, colour, width), (high, tuple(min(255, part + 60) for part in colour), width / 6)):
        pen.line(path, fill=shade, width=round(wide * FINE), joint="curve")
        for x, y in (path[0], path[-1]):
            reach = wide * FINE / 2
            pen.ellipse((x - reach, y - reach, x + reach, y + reach), fill=shade)


def serial_and_vin(plates: Plates = SEVEN, *, behind: Colour = (92, 100, 112)) -> Image.Image:
    """The unit's label held to the plate with the VIN."""
    ground, pen = sheet(behind, 1)
    pen.rounded_rectangle(box(50, 60, 590, 250), 14 * FINE, fill=(188, 190, 190), outline=DARK, width=3 * FINE)
    for x, y in ((72, 82), (568, 82), (72, 228), (568, 228)):
        pen.ellipse(box(x - 9, y - 9, x + 9, y + 9), fill=STEEL, outline=DARK, width=2 * FINE)
    pen.text(at(110, 82), plates.vehicle, font=font(22), fill=DARK)
    pen.text(at(110, 124), plates.vin, font=font(40, bold=True), fill=BLACK)
    pen.text(at(110, 190), plates.rating, font=font(22), fill=DARK)
    pen.rounded_rectangle(box(210, 280, 560, 440), 10 * FINE, fill=(244, 243, 238), outline=STEEL, width=2 * FINE)
    pen.text(at(232, 292), plates.unit, font=font(24, bold=True), fill=BLACK)
    pen.text(at(232, 326), f"S/N {plates.serial}", font=font(32, bold=True), fill=BLACK)
    chance, x = random.Random(plates.serial), 234
    while x < 530:
        wide = chance.choice((2, 2, 4, 6))
        pen.rectangle(box(x, 376, x + wide, 424), fill=BLACK)
        x += wide + chance.choice((2, 4))
    return ground


def bare_joint(label: str = "X12/4", *, behind: Colour = (120, 114, 104)) -> Image.Image:
    """A bared wire with the strands of another wrapped round it."""
    ground, pen = sheet(behind, 2)
    cable(pen, [(0, 250), (190, 244)], colour=RED, width=46)
    cable(pen, [(450, 236), (640, 228)], colour=RED, width=46)
    for strand in range(9):
        y = 230 + strand * 4
        shade = tuple(part + 18 * (strand % 3) for part in COPPER)
        pen.line(box(188, y, 452, y - 8), fill=shade, width=5 * FINE)
    for turn in range(9):
        x = 236 + turn * 19
        pen.arc(box(x - 14, 206, x + 20, 286), 250, 110, fill=(226, 158, 104), width=7 * FINE)
        pen.arc(box(x - 10, 208, x + 20, 286), 260, 100, fill=(150, 84, 44), width=2 * FINE)
    cable(pen, [(410, 470), (380, 390), (330, 320), (262, 290)], colour=(196, 44, 40), width=26)
    cable(pen, [(60, 250), (150, 246)], colour=(28, 28, 30), width=54)
    pen.text(at(70, 400), label, font=font(30, bold=True), fill=(240, 238, 230))
    return ground


def ground_point(*, behind: Colour = (70, 78, 84)) -> Image.Image:
    """A ring terminal under a bolt, on bared metal."""
    ground, pen = sheet(behind, 3)
    pen.ellipse(box(180, 80, 470, 370), fill=(176, 176, 170))
    pen.ellipse(box(196, 96, 454, 354), fill=(202, 200, 192))
    cable(pen, [(640, 470), (560, 420), (470, 350)], colour=(30, 30, 32), width=34)
    pen.polygon([at(*point) for point in ((350, 290), (400, 236), (492, 330), (442, 378))], fill=(186, 164, 120))
    pen.ellipse(box(236, 136, 416, 316), fill=(206, 184, 136), outline=(140, 120, 84), width=3 * FINE)
    pen.ellipse(box(262, 162, 390, 290), fill=(168, 170, 172), outline=DARK, width=2 * FINE)
    corners = [
        (326 + 52 * math.cos(math.radians(60 * n + 14)), 226 + 52 * math.sin(math.radians(60 * n + 14)))
        for n in range(6)
    ]
    pen.polygon([at(*corner) for corner in corners], fill=(124, 128, 132), outline=(52, 54, 58))
    pen.ellipse(box(294, 194, 358, 258), fill=(142, 146, 150))
    pen.text(at(312, 212), "8.8", font=font(18, bold=True), fill=(70, 72, 76))
    return ground


def photographed(drawn: Image.Image, seed: int) -> Image.Image:
    """The drawing as a cheap camera sees it: a little soft, a little grain."""
    small = drawn.resize(SIZE, Image.Resampling.LANCZOS).filter(ImageFilter.GaussianBlur(0.7))
    chance = random.Random(seed)
    grain = Image.frombytes("L", SIZE, bytes(chance.choices(range(121, 136), k=SIZE[0] * SIZE[1])))
    return ImageChops.add(small, Image.merge("RGB", (grain,) * 3), offset=-128)


def as_jpeg(picture: Image.Image, orientation: int = 1) -> bytes:
    """The picture as a camera writes it, which notes how it was held."""
    held = picture.transpose(Image.Transpose.ROTATE_90) if orientation == SIDEWAYS else picture
    notes = Image.Exif()
    notes[ORIENTATION] = orientation
    made = io.BytesIO()
    held.save(made, "JPEG", quality=QUALITY, optimize=True, exif=notes)
    return made.getvalue()


PHOTOS: dict[str, Callable[[], bytes]] = {
    "serial-and-vin.jpg": lambda: as_jpeg(photographed(serial_and_vin(), 11)),
    "bare-joint.jpg": lambda: as_jpeg(photographed(bare_joint(), 12), SIDEWAYS),
    "ground.jpg": lambda: as_jpeg(photographed(ground_point(), 13)),
}


def shows_the_same(path: Path, made: bytes) -> bool:
    """Whether a file shows the picture that was made."""
    if not path.is_file():
        return False
    there, wanted = (Image.open(io.BytesIO(content)) for content in (path.read_bytes(), made))
    if there.size != wanted.size or there.getexif() != wanted.getexif():
        return False
    apart = ImageStat.Stat(ImageChops.difference(there.convert("RGB"), wanted.convert("RGB"))).mean
    return max(apart) <= ALIKE


def main() -> int:
    """Draw the photos, or with --check compare them."""
    stale = []
    for name, make in PHOTOS.items():
        made = make()
        if len(made) > MOST_BYTES:
            raise SystemExit(f"{name}: {len(made)} bytes, more than {MOST_BYTES}")
        if "--check" not in sys.argv[1:]:
            OUT.mkdir(parents=True, exist_ok=True)
            (OUT / name).write_bytes(made)
        elif not shows_the_same(OUT / name, made):
            stale.append(name)
    print("\n".join(f"{name}: not what {Path(__file__).name} would draw" for name in stale) or "photos: current")
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main())
