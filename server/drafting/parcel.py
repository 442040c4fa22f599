"""A draft taken out as a zip (event.toml and the files it names) and put in again, byte for byte."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from typing import Final

__all__ = ["EVENT", "ParcelError", "pack", "unpack"]

EVENT: Final = "event.toml"
BYTES_MAX: Final = 100_000_000
FILES_MAX: Final = 60


class ParcelError(ValueError):
    """A file that is no draft; `reason` is 'zip' (none that can be read), 'event' (no event.toml in it), 'large'."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def pack(files: Mapping[str, bytes]) -> bytes:
    """The zip. Its times are fixed, so that the same draft makes the same bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as z:
        for name in sorted(files, key=lambda n: (n != EVENT, n)):
            z.writestr(zipfile.ZipInfo(name), files[name], zipfile.ZIP_DEFLATED)
    return out.getvalue()


def unpack(data: bytes) -> dict[str, bytes]:
    """Files by name, event.toml among them; those of a folder inside the zip lose its name. An event.toml alone will do."""
    if not data.startswith(b"PK"):
        return {EVENT: data}
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as z:
            listed = [i for i in z.infolist() if not i.is_dir()]
            if len(listed) > FILES_MAX or sum(i.file_size for i in listed) > BYTES_MAX:
                raise ParcelError("large")
            root = next((i.filename.removesuffix(EVENT) for i in listed if i.filename.endswith(EVENT)), None)
            if root is None:
                raise ParcelError("event")
            names = {i.filename.removeprefix(root): i for i in listed if i.filename.startswith(root)}
            return {name: z.read(i) for name, i in names.items() if _plain(name)}
    except (zipfile.BadZipFile, RuntimeError, OSError, NotImplementedError, EOFError) as error:
        raise ParcelError("zip") from error


def _plain(name: str) -> bool:
    """A file that stands beside event.toml: no other folder, no way out."""
    return (
        bool(name)
        and not any(c in name for c in "/\\:\0")
        and name not in (".", "..")
        and not name.startswith(".")
    )
