"""The small world in which sentences are understood, and the short form in which meanings are compared.

Saturday 19 June 2027, 15:10 in Britain. Maren (bib 214) was last out of Long Stile back and is due at
Wether Lathe; Tove (bib 87) is at Skelter Mill. Long Stile is passed twice, as is Harrow Fold (start and
finish).
"""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from zoneinfo import ZoneInfo

from server.conversation.telling.answer import PointHere, RunnerHere
from server.conversation.understanding import (
    Acknowledged,
    AskBack,
    Asked,
    Context,
    Distress,
    Kept,
    Need,
    OtherRunner,
    Report,
    Reported,
    Requested,
    Several,
    Small,
    Unclear,
    Understood,
    Undo,
    understand,
)
from server.event.model import PartKind
from server.facts.entry import Kind

ZONE = "Europe/London"
NOW = datetime(2027, 6, 19, 14, 10, tzinfo=UTC)
CREW = frozenset({PartKind.CREW})

POINTS = (
    PointHere("start", "Harrow Fold", 0.0),
    PointHere("pell", "Pell Bridge", 10.5),
    PointHere("mill", "Skelter Mill", 21.0, ("the mill",), crew_access=True),
    PointHere("stile-out", "Long Stile out", 33.0, ("the stile",), crew_access=True),
    PointHere("chapel", "Corrie Chapel", 39.5),
    PointHere("stile-back", "Long Stile back", 46.0, ("the stile",), crew_access=True),
    PointHere("lathe", "Wether Lathe", 61.0, crew_access=True),
    PointHere("brindle", "Brindle Gate", 74.0, crew_access=True),
    PointHere("kettle", "Kettle Howe", 87.0, crew_access=True),
    PointHere("ravel", "Ravel Dod", 100.5),
    PointHere("ashen", "Ashen Ford", 114.0, ("the ford",), crew_access=True),
    PointHere("ember", "Ember Quarry", 128.0, ("quarry",)),
    PointHere("candle", "Candle Moss", 144.5, crew_access=True),
    PointHere("finish", "Harrow Fold", 160.9, finish=True),
)
START = datetime(2027, 6, 19, 4, 30, tzinfo=UTC)
MAREN = RunnerHere("maren", "Maren", "214", START, POINTS, reached="stile-back")
TOVE = RunnerHere("tove", "Tove", "87", START, POINTS, reached="mill", at="mill", going="at a point")
PEOPLE = (("ana", "Ana"), ("jonas", "Jonas"), ("tomas", "Tomas"), ("ruth", "Ruth"))


def crew_of_maren(now: datetime = NOW) -> Context:
    """Somebody of Maren's crew on Saturday afternoon."""
    return Context(now, ZONE, (MAREN, TOVE), CREW, ("maren",), PEOPLE)


def the_runner() -> Context:
    """Maren herself."""
    return replace(crew_of_maren(), parts=frozenset({PartKind.RUNNER}))


def volunteer_at(point: str) -> Context:
    """A volunteer at a point, who reports every runner."""
    return Context(NOW, ZONE, (MAREN, TOVE), frozenset({PartKind.VOLUNTEER}), (), PEOPLE, point=point)


def at_night() -> Context:
    """Sunday 03:20, Maren last out of Kettle Howe."""
    maren = replace(MAREN, reached="kettle")
    now = datetime(2027, 6, 20, 2, 20, tzinfo=UTC)
    return replace(crew_of_maren(now), runners=(maren, TOVE))


def at_the_lathe() -> Context:
    """Maren is in at Wether Lathe."""
    return replace(
        crew_of_maren(), runners=(replace(MAREN, reached="lathe", at="lathe", going="at a point"), TOVE)
    )


def near_the_end() -> Context:
    """Maren was last out of Candle Moss."""
    return replace(crew_of_maren(), runners=(replace(MAREN, reached="candle"), TOVE))


def numbered() -> Context:
    """An event whose aid stations have numbers for names."""
    points = (
        PointHere("start", "Start", 0.0),
        *(PointHere(f"aid-{n}", f"Aid Station {n}", 8.0 * n, crew_access=True) for n in (1, 2, 12)),
        PointHere("finish", "Finish", 110.0, finish=True),
    )
    return replace(crew_of_maren(), runners=(replace(MAREN, points=points, reached="start"),))


def after(sentence: str, ctx: Context) -> Context:
    """The context once that question has been asked; 'as runner', 'at night' … choose another world."""
    worlds = {
        "": ctx,
        "as runner": the_runner(),
        "as volunteer": volunteer_at("lathe"),
        "at night": at_night(),
        "at the lathe": at_the_lathe(),
        "near the end": near_the_end(),
        "numbered": numbered(),
        "in german": replace(ctx, language="de"),
    }
    if sentence in worlds:
        return worlds[sentence]
    before = understand(sentence, ctx)
    assert isinstance(before, Asked), f"{sentence!r} was not taken for a question"
    return replace(ctx, last=before)


def parts(meant: Understood) -> tuple[Understood, ...]:
    """Each thing that a message means."""
    return meant.parts if isinstance(meant, Several) else (meant,)


def reports_in(meant: Understood) -> list[Report]:
    """The reports of a message; of one that is asked back, those that are clear."""
    if isinstance(meant, AskBack):
        return list(meant.also)
    return [r for p in parts(meant) if isinstance(p, Reported) for r in p.reports]


def _report(r: Report) -> str:
    local = r.seen_at.astimezone(ZoneInfo(ZONE)).strftime("%H:%M")
    kind = "seen" if r.kind is Kind.POSITION and r.placed_by_words else r.kind.value
    parts = [kind]
    if r.kind not in (Kind.HOW_SHE_IS, Kind.POSITION) or r.point:
        parts.append(r.point or "-")
    parts.append(local)
    if r.how:
        parts.append(r.how.value)
    if r.runner == "tove":
        parts.append("/tove")
    return " ".join(parts)


_POINT_MATTERS = frozenset(
    {"at", "last stop", "cut-off", "missed", "wait or go", "people", "bring", "take back", "food", "leave", "drive",
     "who drives there",     "dark", "slower", "leaves now"}
)  # fmt: skip


def brief(u: Understood) -> str:
    """What was understood, in the short form of the tables."""
    match u:
        case Asked():
            words = [u.question.value]
            if u.question.value == "slower" and u.factor is not None:
                words.append(str(round((u.factor - 1) * 100)))
            if u.question.value in _POINT_MATTERS and u.point:
                words.append(u.point)
            if u.runner == "tove":
                words.append("/tove")
            return " ".join(words)
        case Reported():
            return " & ".join(_report(r) for r in u.reports)
        case Several():
            return " & ".join(brief(p) for p in u.parts)
        case Distress():
            return "distress"
        case Kept():
            return "kept"
        case Requested():
            return f"wants {u.request.value}"
        case OtherRunner():
            return "other runner"
        case AskBack() if u.need is Need.MEANING:
            return "unsure " + " or ".join(brief(c.then) for c in u.choices)
        case AskBack():
            return "ask " + ("retired" if u.need is Need.DROPPED else u.need.value)
        case Acknowledged():
            return "acknowledge"
        case Undo():
            return "undo"
        case Small():
            return "small"
        case Unclear():
            return "unclear"


def _writer(part: str) -> Context:
    """The world as it is for somebody of that part."""
    if part == PartKind.VOLUNTEER.value:
        return volunteer_at("lathe")
    return replace(crew_of_maren(), parts=frozenset({PartKind(part)}))


_ON_RECORD = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH, Kind.RETIRED, Kind.SWEEP_THROUGH})


def _on_record(u: Understood, expected: str) -> bool:
    """Whether taking it so would say something about a runner's race that ends a watch or begins an alarm;
    of what need only be 'not counted', whether it would be kept as confirmed."""
    if isinstance(u, Several):
        return any(_on_record(p, expected) for p in u.parts)
    if isinstance(u, Reported):
        kept = [r for r in u.reports if r.kind in _ON_RECORD]
        return any(expected == "no check-in" or not r.guessed for r in kept)
    return isinstance(u, Distress)


def score(rows: tuple[tuple[str, ...], ...]) -> tuple[list[str], list[str], int]:
    """What came out wrong, what was asked back though it was clear, and how many were right. A row may
    name the writer's part; else it is crew."""
    wrong, asked_back, right = [], [], 0
    for sentence, expected, before, *part in rows:
        meant = understand(sentence, after(before, _writer(part[0] if part else "crew")))
        got = brief(meant)
        if expected.startswith("acknowledge ") and isinstance(meant, Acknowledged):
            got = f"acknowledge {meant.answer}"
        if got == expected or (
            expected in ("no check-in", "not counted") and not _on_record(meant, expected)
        ):
            right += 1
        elif got.startswith("ask ") or got == "unclear":
            asked_back.append(f"{sentence!r} ({before}): {got}, not {expected}")
        else:
            wrong.append(f"{sentence!r} ({before}): {got}, not {expected}")
    return wrong, asked_back, right
