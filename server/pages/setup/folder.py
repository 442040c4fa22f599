"""A draft on disk: event.toml and, beside it, the files it may name."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from server.drafting.parcel import EVENT, pack

__all__ = ["RaceFolder", "read", "replace", "write"]

REPLACED: Final = "replaced.zip"
BESIDE: Final = frozenset({".gpx", ".csv", ".fit", ".tcx"})


@dataclass(frozen=True, slots=True)
class RaceFolder:
    """The text of event.toml ('' where there is none yet) and the other files by name."""

    text: str = ""
    files: Mapping[str, bytes] = field(default_factory=dict)

    def all_files(self) -> dict[str, bytes]:
        """Everything by name."""
        return {EVENT: self.text.encode(), **self.files}


def read(folder: Path) -> RaceFolder:
    """The draft of a folder; an empty one where there is none. Text that is not UTF-8 is read as far as it goes."""
    if not folder.is_dir():
        return RaceFolder()
    event = folder / EVENT
    text = event.read_bytes().decode("utf-8", "replace") if event.is_file() else ""
    beside = (p for p in sorted(folder.iterdir()) if p.suffix.lower() in BESIDE and p.is_file())
    return RaceFolder(text, {p.name: p.read_bytes() for p in beside})


def write(folder: Path, draft: RaceFolder) -> None:
    """Write what differs, each file whole or not at all."""
    folder.mkdir(parents=True, exist_ok=True)
    before = read(folder).all_files()
    for name, content in draft.all_files().items():
        if before.get(name) != content:
            beside = folder / f".{name}.new"
            beside.write_bytes(content)
            os.replace(beside, folder / name)


def replace(folder: Path, draft: RaceFolder) -> None:
    """Another draft in the place of this one, which stays beside it in `REPLACED`."""
    old = read(folder).all_files()
    if folder.is_dir() and any(old.values()):
        (folder / REPLACED).write_bytes(pack(old))
    write(folder, draft)
    for name in old.keys() - draft.all_files().keys():
        (folder / name).unlink(missing_ok=True)
