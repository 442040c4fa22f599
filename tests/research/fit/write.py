"""Writes the fitted constants as the data file that the forecast reads."""

import json
from collections.abc import Sequence
from dataclasses import fields, is_dataclass
from enum import Enum
from pathlib import Path
from typing import Any

import numpy as np


def plain(value: Any) -> Any:
    """Of fitted constants what JSON can hold: numbers to five figures, records by field, arrays row by row."""
    if is_dataclass(value):
        return {f.name: plain(getattr(value, f.name)) for f in fields(value)}
    if isinstance(value, np.ndarray | list | tuple):
        return [plain(v) for v in value]
    if isinstance(value, Enum | str):
        return str(value)
    return value if isinstance(value, int) else float(f"{float(value):.5g}")


def write(path: Path, constants: dict[str, Any]) -> None:
    """Write the file: a line for each part of a part, so that what has changed can be seen."""
    said = []
    for name, value in constants.items():
        rows = plain(value)
        if isinstance(value, Sequence) and not isinstance(value, str):
            rows = "[\n" + ",\n".join(f"  {json.dumps(row)}" for row in rows) + "\n ]"
        else:
            rows = json.dumps(rows)
        said.append(f" {json.dumps(name)}: {rows}")
    path.write_text("{\n" + ",\n".join(said) + "\n}\n", encoding="utf-8")
