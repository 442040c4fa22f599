"""Example sentences: where they stand, how they are taken in, and how a clause is made of each."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from functools import cache
from hashlib import sha256
from pathlib import Path

import tomli_w

from server.conversation.telling.answer import PointHere, RunnerHere
from server.conversation.understanding.meaning import Context
from server.conversation.understanding.policy import policy
from server.conversation.understanding.sentence import Sentence, read_sentence
from server.conversation.understanding.words import words_of
from server.event.model import PartKind

LANGUAGES = Path(__file__).parents[1] / "languages"
WORLDS = LANGUAGES / "worlds.toml"
NOW = datetime(2027, 6, 19, 14, 10, tzinfo=UTC)
GRAVE, HARMLESS = "grave", "harmless"
_PARTS = {
    "runner": PartKind.RUNNER,
    "pacer": PartKind.PACER,
    "home": PartKind.SAFETY_CONTACT,
    "volunteer": PartKind.VOLUNTEER,
    "organiser": PartKind.ORGANISER,
    "supporter": PartKind.SUPPORTER,
}
_TAG = re.compile(r"^\[(\w+)\]\s*")


@dataclass(frozen=True)
class Example:
    """One sentence by one hand: its intents (one but in several.tsv), or GRAVE or HARMLESS."""

    text: str
    intents: tuple[str, ...]
    language: str
    hand: str
    part: PartKind

    @property
    def grave(self) -> bool:
        """Whether somebody is in danger."""
        return self.intents == (GRAVE,)


def _named(lists: dict[str, list[str]]) -> Context:
    points = tuple(PointHere(f"p{i}", n, float(i)) for i, n in enumerate(dict.fromkeys(lists["points"])))
    runners = []
    for i, r in enumerate(dict.fromkeys(lists["runners"])):
        name, _, bib = r.rpartition(" ")
        runners.append(
            RunnerHere(f"r{i}", name if bib.isdigit() else r, bib if bib.isdigit() else "", NOW, points)
        )
    people = tuple((f"h{i}", p) for i, p in enumerate(dict.fromkeys(lists["people"])))
    return Context(NOW, "Europe/London", tuple(runners), people=people)


@cache
def worlds() -> dict[str, Context]:
    """The names that each hand's sentences speak of."""
    return {hand: _named(lists) for hand, lists in tomllib.loads(WORLDS.read_text(encoding="utf-8")).items()}


def sentence(example: Example) -> Sentence:
    """The clause as the model sees it."""
    return read_sentence(example.text, replace(worlds()[example.hand], parts=frozenset({example.part})))


def lines(path: Path, hand: str = "") -> Iterator[tuple[str, str]]:
    """Hand and line of a file of sentences."""
    for raw in path.read_text(encoding="utf-8").splitlines():
        line = " ".join(raw.split())
        if line.startswith("#"):
            m = re.fullmatch(r"#\s*hand:\s*(\S+)", line)
            hand = m[1] if m else hand
        elif line:
            yield hand, line


def _part(line: str) -> tuple[PartKind, str]:
    m = _TAG.match(line)
    if m is None or m[1] not in _PARTS:
        return PartKind.CREW, line
    return _PARTS[m[1]], line[m.end() :]


@cache
def examples() -> tuple[Example, ...]:
    """Every sentence of every folder, in the order of the files."""
    out = []
    for folder in sorted(p for p in LANGUAGES.iterdir() if p.is_dir()):
        files = [*sorted((folder / "intents").glob("*.txt")), folder / "grave.txt", folder / "harmless.txt"]
        for path in files:
            for hand, line in lines(path) if path.is_file() else ():
                part, text = _part(line)
                out.append(Example(text, (path.stem,), folder.name, hand, part))
        several = folder / "several.tsv"
        for hand, line in lines(several) if several.is_file() else ():
            intents, _, said = line.partition(" | ")
            part, text = _part(said)
            out.append(Example(text, tuple(i.strip() for i in intents.split("+")), folder.name, hand, part))
    return tuple(out)


def made_of() -> str:
    """A mark of all that a model is made from but code and lexicon: of other examples it is another."""
    kinds = ("intents/*.txt", "grave.txt", "harmless.txt", "several.tsv", "grammar.toml")
    files = sorted(
        {p for kind in kinds for p in LANGUAGES.glob(f"*/{kind}")} | set(LANGUAGES.glob("wor*.[nt]*"))
    )
    whole = sha256()
    for path in files:
        whole.update(path.relative_to(LANGUAGES).as_posix().encode() + b"\0" + path.read_bytes())
    return whole.hexdigest()


def take(source: Path) -> list[str]:
    """Take in the sentences of every hand of a folder, each once; what is said of what could not be taken. What the same
    hands gave before is replaced."""
    said = []
    given = {p.name for p in source.iterdir() if p.is_dir()}
    known: dict[str, dict[str, list[str]]] = {}
    if WORLDS.is_file():
        known = tomllib.loads(WORLDS.read_text(encoding="utf-8"))
    files: dict[Path, list[tuple[str, str]]] = {}
    seen: set[tuple[tuple[str, bool], str]] = set()
    for path in sorted(LANGUAGES.glob("*/**/*.t*")):
        if path.suffix in (".txt", ".tsv"):
            files[path] = [(h, x) for h, x in lines(path) if h not in given]
            seen |= {(_kind(path.relative_to(LANGUAGES)), _same(x)) for _, x in files[path]}
    for hand in sorted(given):
        world = tomllib.loads((source / hand / "world.toml").read_text(encoding="utf-8"))
        known[hand] = {k: list(world[k]) for k in ("runners", "people", "points")}
        for path in sorted((source / hand).glob("*/**/*.t*")):
            rest = path.relative_to(source / hand)
            if path.parent.name == "intents" and path.stem not in policy().tiers:
                said.append(f"{rest}: no such intent")
                continue
            target = LANGUAGES / rest
            for _, line in _cleaned(path, hand):
                mark = (_kind(rest), _same(line))
                if mark in seen:
                    continue
                seen.add(mark)
                files.setdefault(target, []).append((hand, line))
    for path, rows in files.items():
        _write(path, rows)
    WORLDS.write_text(tomli_w.dumps(dict(sorted(known.items()))), encoding="utf-8")
    worlds.cache_clear()
    examples.cache_clear()
    return said


def _cleaned(path: Path, hand: str) -> Iterator[tuple[str, str]]:
    for raw in path.read_text(encoding="utf-8").splitlines():
        line = raw.strip()
        if not line or line.startswith("#"):
            continue
        if path.suffix == ".tsv":
            intents, _, text = line.partition("\t")
            line = f"{intents.strip()} | {' '.join(text.split())}"
            if not text or any(i.strip() not in policy().tiers for i in intents.split("+")):
                continue
        line = " ".join(line.strip('"“”').split())
        if line:
            yield hand, line


def _kind(path: Path) -> tuple[str, bool]:
    """Language of a file, and whether of danger only: what sounds grave and is not may stand with its intent too."""
    return path.parts[0], path.stem == HARMLESS


def _same(line: str) -> str:
    return " ".join(words_of(_TAG.sub("", line.rpartition(" | ")[2])))


def _write(path: Path, rows: list[tuple[str, str]]) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    out: list[str] = []
    last = ""
    for hand, line in sorted(rows, key=lambda r: r[0]):
        if hand != last:
            out += [*([""] if out else []), f"# hand: {hand}"]
            last = hand
        out.append(line)
    if out:
        path.write_text("\n".join(out) + "\n", encoding="utf-8")
    else:
        path.unlink(missing_ok=True)
