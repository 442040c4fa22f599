"""The set-up without a browser: the same few questions in the terminal, over the same draft, with the same check."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import click

from server.course import CourseError, build_course, read_gpx
from server.drafting import crew, race
from server.drafting.document import Document
from server.pages.labels import label
from server.pages.setup import folder
from server.pages.setup.folder import RaceFolder
from server.pages.setup.look import DraftLook, look
from server.pages.setup.shown import context, pasted
from server.sentences import sentence

__all__ = ["ask_all"]

RACE = (("name", "name"), ("day", "day"), ("clock", "clock"), ("zone", "zone"), ("limit", "limit"),
        ("control-name", "control"), ("control-phone", "control-phone"), ("emergency", "emergency"),
        ("transport", "transport"))  # fmt: skip
RUNNER = (("name", "runner-name"), ("bib", "bib"), ("finish", "target"), ("carries", "carries"))
PAST = (
    ("past-name", "past-name"),
    ("past-km", "km"),
    ("past-ascent", "past-ascent"),
    ("past-time", "past-time"),
)
HINTS = {"day": "2027-06-19", "clock": "05:00", "zone": "Europe/London", "limit": "30:00", "target": "29:00"}


class Asking:
    """One draft asked about, step by step; what was answered is on disk after every step."""

    def __init__(self, where: Path, language: str) -> None:
        self.where, self.language = where, language
        self.draft = folder.read(where)
        self.doc = Document(self.draft.text)

    def word(self, key: str, **values: str) -> str:
        """A word of the set-up's pages; 'km' is the same in all languages."""
        return key if key == "km" else label(self.language, f"setup-{key}", **values)

    def seen(self) -> DraftLook:
        """What the draft comes to."""
        return look(RaceFolder(self.doc.text(), self.draft.files), self.language)

    def keep(self) -> None:
        """Write the draft."""
        self.draft = RaceFolder(self.doc.text(), self.draft.files)
        folder.write(self.where, self.draft)

    def fields(self, step: str) -> dict[str, str]:
        """What a step's fields hold now."""
        found = context(self.seen(), self.doc, step, self.language, datetime.now(UTC))["f"]
        return {name.replace("_", "-"): value for name, value in found.items()}

    def ask(self, key: str, held: str = "") -> str:
        """One question; an empty answer keeps what is held, '-' takes it out."""
        hint = f" ({HINTS[key]})" if key in HINTS and not held else ""
        typed = str(click.prompt(self.word(key) + hint, default=held, show_default=bool(held))).strip()
        return "" if typed == "-" else typed

    def until_right(self, step: str, ask: Callable[[], None]) -> None:
        """Ask a step, tell what is wrong with it, and ask again as long as that is wanted."""
        click.secho(f"\n{self.word(step)}", bold=True)
        while True:
            ask()
            self.keep()
            wrong = [t for t in self.seen().wrong(step) if t.error]
            for t in wrong:
                click.echo(f"  {t.what}. {t.remedy}")
            if not wrong or not click.confirm(sentence(self.language, "new-again"), default=True):
                return


def ask_all(where: Path, language: str) -> None:
    """Ask about everything, in the order of the pages, and leave the event file in the folder."""
    asking = Asking(where, language)
    asking.until_right("course", lambda: _race(asking))
    _points(asking)
    asking.until_right("runner", lambda: _runner(asking))
    asking.until_right("people", lambda: _people(asking))
    _meetings(asking)
    found = asking.seen()
    click.echo()
    for t in found.told:
        click.echo(
            f"  {asking.word(t.step)}: {'' if t.error else asking.word('doubt') + ' '}{t.what}. {t.remedy}"
        )
    click.echo(asking.word("right" if found.built is not None else "not-right"))
    click.echo(sentence(language, "new-written", file=str(where / "event.toml")))


def _race(a: Asking) -> None:
    while a.seen().course is None:
        path = Path(a.ask("route")).expanduser()
        try:
            data = path.read_bytes()
            course = build_course(read_gpx(data, path.name, stages=True))
        except OSError as error:
            click.echo(sentence(a.language, "new-no-file", file=str(path), why=str(error.strerror)))
            continue
        except CourseError as error:
            click.echo(f"  {path}: {error.in_language(a.language)}")
            continue
        race.put_route(a.doc, course, (a.word("start"), a.word("finish")))
        a.draft = RaceFolder(a.doc.text(), {**a.draft.files, race.ROUTE: data})
    figures = context(a.seen(), a.doc, "course", a.language, datetime.now(UTC))["course"]
    click.echo(a.word("course-found", **figures))
    held = a.fields("course")
    race.put_race(a.doc, {name: a.ask(key, held.get(name, "")) for name, key in RACE})


def _points(a: Asking) -> None:
    """The race's table, from a file or as pasted; it counts once what was read has been seen."""
    click.secho(f"\n{a.word('points')}", bold=True)
    click.echo(f"{a.word('paste-lead')} ({a.word('paste-hint')})\n{sentence(a.language, 'new-paste-end')}")
    lines: list[str] = []
    while line := str(click.prompt("", default="", show_default=False, prompt_suffix="> ")):
        lines.append(line)
    text = "\n".join(lines)
    if len(lines) == 1 and Path(lines[0].strip()).expanduser().is_file():
        text = Path(lines[0].strip()).expanduser().read_text("utf-8", errors="replace")
    course = a.seen().course
    length = None if course is None else course.length_km
    read, rows = pasted(a.doc, text, length)
    for r in rows:
        state = a.word("read-lost" if r["lost"] else "read-new" if r["new"] else "read-known")
        crews = "" if r["crew"] is None else a.word("crew-yes" if r["crew"] else "crew-no")
        click.echo(f"  {r['km'] or '?'} km  {r['name']}  {r['cut']} {crews}  ({state})")
    for number, left in read.left:
        click.echo(f"  {number}: {left}\n  {a.word('read-left')}")
    if rows and click.confirm(a.word("take", count=str(len(rows))), default=True):
        race.take_rows(a.doc, read.rows, length)
        a.keep()


def _runner(a: Asking) -> None:
    held = a.fields("runner")
    answers = {name: a.ask(key, held[name]) for name, key in RUNNER}
    if not answers["finish"] or held["past-km"]:
        click.echo(a.word("past"))
        answers |= {name: a.ask(key, held[name]) for name, key in PAST}
    crew.put_runner(a.doc, {n: held[n] for n, _ in PAST} | answers | {"language": a.language})


def _people(a: Asking) -> None:
    """Everybody there is, then more of them until a name stays empty."""
    shown = context(a.seen(), a.doc, "people", a.language, datetime.now(UTC))["rows"]
    click.echo(a.word("people-lead"))
    for row in [*shown, None]:
        while True:
            name = row["name"] if row else a.ask("person-name")
            if not name:
                return
            held = row or {"was": "", "phone": "", "kinds": set(), "drives": False, "calls": False}
            click.echo(f"{name}:")
            _person(a, name, held)
            if row:
                break


def _person(a: Asking, name: str, held: dict[str, object]) -> None:
    def yes(key: str, now: bool) -> bool:
        said = label(a.language, key)
        return click.confirm(f"  {said}", default=now)

    kinds = held["kinds"] if isinstance(held["kinds"], set) else set()
    answers = {"was": str(held["was"]), "name": name, "phone": a.ask("phone", str(held["phone"]))}
    if not held["was"]:
        answers["language"] = a.language
    runner = {race.ident(r) for r in a.doc.tables("runners")}
    if answers["was"] not in runner:
        for kind in ("crew", "pacer", "safety contact"):
            key = kind.replace(" ", "-")
            answers[key] = "yes" if yes(f"part-{key}", kind in kinds) else ""
        if answers["crew"]:
            answers["drives"] = "yes" if yes("setup-drives", bool(held["drives"])) else ""
        if answers["safety-contact"]:
            answers["calls"] = "yes" if yes("setup-calls", bool(held["calls"])) else ""
    others = {k.replace(" ", "-"): "yes" for k in kinds - {"crew", "pacer", "safety contact"}}
    kept = {k: str(held.get(k, "")) for k in ("car", "ladder") if held.get(k)}
    crew.put_people(a.doc, [others | kept | answers], [])


def _meetings(a: Asking) -> None:
    click.secho(f"\n{a.word('meetings')}", bold=True)
    if not crew.crew_points(a.doc):
        click.echo(a.word("no-crew-points"))
    elif not crew.drivers(a.doc):
        click.echo(a.word("no-drivers"))
    elif click.confirm(a.word("suggest"), default=True):
        crew.suggest(a.doc)
        people = [race.ident(p) for p in a.doc.tables("people")]
        for leg in context(a.seen(), a.doc, "meetings", a.language, datetime.now(UTC))["legs"]:
            click.echo(a.word("leg", start=leg["start_name"], end=leg["end_name"]))
            if leg["guess"] and not leg["minutes"]:
                click.echo("  " + a.word("guess", minutes=leg["guess"]))
            minutes = a.ask("minutes", leg["minutes"])
            by = (
                a.ask("stands-by", leg["by"] or next(iter(d for d, _ in crew.drivers(a.doc))))
                if minutes
                else ""
            )
            by = by if by in people else next((p for p in people if p == by.casefold()), by)
            crew.put_drives(a.doc, [{"from": leg["start"], "to": leg["end"], "minutes": minutes, "by": by}])
    a.keep()
