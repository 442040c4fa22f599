"""Pictures for tests: as a telephone makes them, with the place where they were taken."""

from __future__ import annotations

import io

from PIL import Image

CAMERA = "Hillcam 12"


def taken(width: int = 2000, height: int = 1000, *, sideways: bool = False) -> bytes:
    """A JPEG with place, camera and a comment in it; `sideways`: as held upright."""
    image = Image.effect_noise((width, height), 20).convert("RGB")
    image.putpixel((0, 0), (255, 0, 0))
    exif = Image.Exif()
    exif[0x0110] = CAMERA
    if sideways:
        exif[0x0112] = 6
    exif.get_ifd(0x8825)[1] = "N"
    exif.get_ifd(0x8825)[2] = (54.0, 7.0, 24.0)
    out = io.BytesIO()
    image.save(out, "JPEG", quality=40, exif=exif, comment=CAMERA.encode())
    return out.getvalue()
