"""Sheets as PDF, by typst: no browser, nothing fetched. What people wrote goes in as data and is never read as markup."""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import cache
from importlib import resources
from pathlib import Path
from typing import Final

import matplotlib
import typst

from server.paper.document import Sheet, Size, as_data

FONT: Final = "DejaVu Sans"
"""matplotlib ships it; a system's own fonts stand behind it for scripts that it has not got."""


def pdf(sheets: Sequence[Sheet], size: Size = Size.A4) -> bytes:
    """One PDF of all sheets, each with page numbers of its own; the same bytes for the same sheets."""
    data = {"sheets": as_data(sheets), "paper": _PAPER[size], "font": FONT}
    found: bytes = typst.compile(
        _template(), font_paths=_fonts(), sys_inputs={"data": json.dumps(data)}, format="pdf"
    )
    return found


_PAPER: Final = {Size.A4: "a4", Size.LETTER: "us-letter"}


@cache
def _template() -> bytes:
    return resources.files("server.paper").joinpath("templates/sheet.typ").read_bytes()


@cache
def _fonts() -> typst.Fonts:
    return typst.Fonts(font_paths=[Path(matplotlib.get_data_path()) / "fonts" / "ttf"])
