"""What shows how she runs: recordings of her own, split times of past years on this course, as files beside the draft."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from server.drafting.document import Document
from server.event.forms import slug

__all__ = ["drop", "recordings", "results", "take"]

Named = Sequence[tuple[str, bytes]]


def recordings(doc: Document) -> list[str]:
    """The files of her own runs, as the event file names them."""
    held = doc.table("runners").get("own_runs")
    return [str(n) for n in held] if isinstance(held, list) else []


def results(doc: Document) -> str:
    """The file of others' split times, '' for none."""
    return str(doc.table("event").get("results", ""))


def take(doc: Document, own: Named, splits: Named) -> dict[str, bytes]:
    """Name new files in the event file; returns them under the names they get there, which no path is part of."""
    files: dict[str, bytes] = {}
    for name, content in own:
        files[_safe(name, "run", recordings(doc))] = content
    if files and doc.tables("runners"):
        doc.change("runners", 0, {"own_runs": [*recordings(doc), *files]})
    for name, content in splits[:1]:
        files[_safe(name, "results", [])] = content
        doc.put("event", {"results": _safe(name, "results", [])})
    return files


def drop(doc: Document, given: Mapping[str, str]) -> None:
    """Name no more those that a form wants out ('gone-NAME'); the files stay beside the draft."""
    kept = [n for n in recordings(doc) if not given.get(f"gone-{n}")]
    if kept != recordings(doc):
        doc.change("runners", 0, {"own_runs": kept or None})
    if results(doc) and given.get(f"gone-{results(doc)}"):
        doc.put("event", {"results": None})


def _safe(name: str, otherwise: str, taken: Sequence[str]) -> str:
    stem, _, kind = name.replace("\\", "/").rpartition("/")[2].rpartition(".")
    base, end = slug(stem) or otherwise, slug(kind) or "gpx"
    names = (f"{base}.{end}" if n == 1 else f"{base}-{n}.{end}" for n in range(1, 1000))
    return next(n for n in names if n not in taken and n != "route.gpx")
