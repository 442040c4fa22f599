"""The printed sheet of each person, part by part: what they do first, then what it rests on. As HTML and as PDF."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape

from server.conversation.telling.things import part_words
from server.event.model import PartKind
from server.paper.before import BeforeStart
from server.paper.document import Page, Sheet, Size, as_data
from server.paper.emergency import cards_page, emergency_page
from server.paper.for_crew import car_page, crew_page, meetings_of, watched_page
from server.paper.for_home import home_page
from server.paper.for_post import post_page
from server.paper.for_runner import runner_pages
from server.paper.on_plan import plan_page
from server.paper.pdf import pdf
from server.paper.writing import Writing
from server.plan.movements import CrewPlan
from server.sentences import fallback

__all__ = ["as_html", "crew_pdf", "crew_sheets", "sheets_of"]

FEW = 1
"""With no more meetings than that everything is one page (own choice)."""


def sheets_of(before: BeforeStart, people: Sequence[str], moves: CrewPlan | None = None) -> tuple[Sheet, ...]:
    """A sheet a person: their parts in the order in which they are acted on, the emergency card, the plan.

    `moves`: the crew's movements, for what each way is made of. Errors: KeyError for a person who is not in the event.
    """
    return tuple(_sheet(Writing(before, p, moves)) for p in people)


def crew_sheets(
    before: BeforeStart,
    people: Sequence[str],
    title: str,
    moves: CrewPlan | None = None,
    size: Size = Size.A4,
) -> str:
    """The sheets as one HTML document, for a telephone and to print."""
    return as_html(sheets_of(before, people, moves), title, size)


def as_html(found: Sequence[Sheet], title: str, size: Size = Size.A4) -> str:
    """Any sheets as one HTML document."""
    language = found[0].language if found else fallback()
    template = _templates().get_template("sheet.html")
    return template.render(
        sheets=as_data(found), marks=[_mark(s) for s in found], title=title, language=language, size=size
    )


def crew_pdf(
    before: BeforeStart, people: Sequence[str], moves: CrewPlan | None = None, size: Size = Size.A4
) -> bytes:
    """The sheets as one PDF, to print."""
    return pdf(sheets_of(before, people, moves), size)


def _templates() -> Environment:
    return Environment(
        loader=PackageLoader("server.paper", "templates"),
        autoescape=select_autoescape(default=True),
        undefined=StrictUndefined,
        trim_blocks=True,
    )


def _mark(sheet: Sheet) -> str:
    """Name and event for the foot of every page, as a CSS string holds them: nothing but letters, digits and escapes."""
    words = f"{sheet.name} - {sheet.event} - "
    return "".join(c if c.isascii() and c.isalnum() else f"\\{ord(c):x} " for c in words)


def _sheet(w: Writing) -> Sheet:
    names = {r.id: r.name for r in w.event.runners}
    return Sheet(
        language=w.say.reader.language,
        name=w.event.person(w.person).name,
        event=w.event.name,
        about=part_words(w.say, w.event.parts_of(w.person), names),
        pages=tuple(p for p in _pages(w) if p.blocks),
    )


def _pages(w: Writing) -> Iterator[Page]:
    kinds = w.kinds
    if PartKind.RUNNER in kinds:
        yield from runner_pages(w)
    if PartKind.SAFETY_CONTACT in kinds:
        yield home_page(w)
    if PartKind.VOLUNTEER in kinds and PartKind.ORGANISER not in kinds:
        yield post_page(w)
    if kinds & {PartKind.CREW, PartKind.PACER}:
        first, then = crew_page(w), car_page(w)
        # A pacer's one meeting leaves room for all of it on the page that lies in the car.
        yield from (Page(first.blocks + then.blocks),) if len(meetings_of(w)) <= FEW else (first, then)
    if w.watches:
        yield watched_page(w)
    if PartKind.ORGANISER in kinds and PartKind.SAFETY_CONTACT not in kinds:
        yield home_page(w)
    if kinds == {PartKind.SUPPORTER}:
        yield crew_page(w)
    yield emergency_page(w)
    if w.sees_numbers:
        yield plan_page(w)
        yield cards_page(w)
