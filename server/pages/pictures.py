"""Pictures of the course with what is known of her: SVG for pages, PNG for chats."""

from __future__ import annotations

import asyncio
import io
from dataclasses import dataclass

from aiohttp import web

from server.api import answers, photos
from server.api.ask import Ask, not_yours, parts_in
from server.api.auth import acting, caller
from server.api.parts import PARTS
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.conversation.telling.answers import known_fact
from server.conversation.telling.reader import reader_in
from server.course import profile
from server.pages.profile import Marks, profile_svg
from server.pages.view import Pen

PAPER, INK, SOFT, FACT = "#15120d", "#f1e7d3", "#b3a585", "#f0b55e"


def marked_profile(picture: Picture, runner: str, share: May, pen: Pen) -> str:
    """The profile with her marks, as far as that part may see them; without any for a volunteer."""
    course = picture.course(runner)
    seen, miles = marks(picture, runner, share, pen), pen.reader.miles
    return profile_svg(picture.event, runner, course, seen, pen.word("profile"), miles=miles)


def marks(picture: Picture, runner: str, share: May, pen: Pen) -> Marks:
    """What may be drawn of her: the fact for those who may see where she is, the estimate for fewer."""
    if share is May.NO:
        return Marks()
    answer = answers.whereabouts(picture, runner, share)
    last, where = answer.fresh.last, answer.where
    words = ""
    if last is not None:
        words = f"{pen.when(last.at)} {known_fact(pen.say, last)}"
    return Marks(
        last_km=last.km if last else None,
        last_words=words,
        low_km=where.low_km if where else None,
        high_km=where.high_km if where else None,
    )


@dataclass(frozen=True, slots=True)
class _Asked:
    picture: Picture
    runner: str
    marks: Marks
    title: str


async def _asked(request: web.Request) -> _Asked:
    parts = request.app[PARTS]
    ask = Ask(parts, request, parts.clock.now())
    ask.who = await caller(request, parts, ask.now)
    ask.person_parts = await parts_in(ask, ask.event)
    share = may(ask.person_parts, Call.WHERE, ask.runner)
    if share is May.NO:
        raise not_yours(Call.WHERE)
    picture = await ask.picture()
    pen = Pen(reader_in(picture.event, ask.person), ask.now)
    return _Asked(picture, ask.runner, marks(picture, ask.runner, share, pen), pen.word("profile"))


async def svg(request: web.Request) -> web.StreamResponse:
    """GET …/picture.svg."""
    asked = await _asked(request)
    course = asked.picture.course(asked.runner)
    text = profile_svg(asked.picture.event, asked.runner, course, asked.marks, asked.title)
    return web.Response(text=text, content_type="image/svg+xml", headers=_PRIVATE)


async def png(request: web.Request) -> web.StreamResponse:
    """GET …/picture.png: the same for chats that show no SVG."""
    asked = await _asked(request)
    drawn = await asyncio.to_thread(profile_png, asked.picture, asked.runner, asked.marks)
    return web.Response(body=drawn, content_type="image/png", headers=_PRIVATE)


async def photo(request: web.Request) -> web.StreamResponse:
    """GET …/photos/{picture}: one that somebody sent, for those it went to."""
    parts = request.app[PARTS]
    who = acting(await caller(request, parts, parts.clock.now()))
    event, name = request.match_info["event"], request.match_info["picture"]
    content, kind = await photos.shown(parts, event, name, who)
    return web.Response(body=content, content_type=kind, headers=_PRIVATE)


def profile_for(picture: Picture, runner: str, share: May, person: str) -> bytes:
    """The PNG that a chat shows to that person."""
    pen = Pen(reader_in(picture.event, person), picture.now)
    return profile_png(picture, runner, marks(picture, runner, share, pen))


_PRIVATE = {"Cache-Control": "no-store", "Content-Security-Policy": "default-src 'none'; style-src 'none'"}


def profile_png(picture: Picture, runner: str, known: Marks) -> bytes:
    """PNG of 1000 × 450: height along the way, crew points named, the fact as a line, the estimate hatched."""
    # Only here: what a start has to load is what a call for help waits for after a crash.
    from matplotlib.figure import Figure

    course = picture.course(runner)
    corners = [(p.km, p.height_m) for p in profile(course)] or [(0.0, 0.0), (course.length_km, 0.0)]
    kms, heights = [k for k, _ in corners], [h for _, h in corners]
    low, high = min(heights), max(heights)
    floor = low - max(40.0, (high - low) * 0.1)
    figure = Figure(figsize=(10, 4.5), dpi=100, facecolor=PAPER, layout="constrained")
    axes = figure.add_subplot(facecolor=PAPER)
    axes.fill_between(kms, heights, floor, color=SOFT, alpha=0.22, linewidth=0)
    axes.plot(kms, heights, color=SOFT, linewidth=1.4)
    axes.set_xlim(0, course.length_km)
    axes.set_ylim(floor, high + (high - floor) * 0.55)
    for point in picture.event.course_of(runner).points:
        if point.crew_access or point.finish:
            axes.axvline(point.km or 0.0, color=SOFT, linewidth=1.0, alpha=0.6)
            axes.text(
                point.km or 0.0,
                high + (high - floor) * 0.06,
                f" {point.name}",
                rotation=55,
                color=INK,
                fontsize=9,
            )
    if known.low_km is not None and known.high_km is not None:
        axes.axvspan(known.low_km, known.high_km, facecolor="none", edgecolor=INK, hatch="//", alpha=0.5)
    if known.last_km is not None:
        axes.axvline(known.last_km, color=FACT, linewidth=3)
        axes.set_title(known.last_words, color=FACT, fontsize=14, loc="left")
    for side in axes.spines.values():
        side.set_visible(False)
    axes.tick_params(colors=SOFT)
    axes.set_xlabel("km", color=SOFT)
    out = io.BytesIO()
    figure.savefig(out, format="png", facecolor=PAPER)
    return out.getvalue()
