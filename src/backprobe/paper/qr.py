"""A text as a QR code (ISO/IEC 18004), to be read off paper with a telephone."""

from __future__ import annotations


def qr_svg(text: str) -> str:
    """The code of `text` as an SVG string, with the quiet zone that readers need; about 15 % of it may be soiled.

    Equal texts give equal strings.
    """
    import zxingcpp

    code = zxingcpp.create_barcode(text, zxingcpp.BarcodeFormat.QRCode, ec_level="M")
    return zxingcpp.write_barcode_to_svg(code, add_quiet_zones=True)
