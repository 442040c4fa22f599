"""The sentences hold together: every one that is asked for exists, takes what it is given, and is used."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from fluent.syntax import FluentParser, visitor
from fluent.syntax import ast as ftl

from server import sentences
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say, slug
from server.facts.entry import CHECK_INS, Kind
from server.facts.validation import Reason
from server.forecast.outlook import Window
from server.sentences import WordingError, sentence
from server.watch.alarms import FINISHED, IN_HAND, RETIRED, SIGHTED, STOOD_DOWN, TAKEN_BACK

ROOT = Path(__file__).parents[3]
CODE = [p for room in ("server", "bot", "demo_event") for p in sorted((ROOT / room).rglob("*.py"))]
OWN_SENTENCES = ROOT / "server" / "pages"
"""Pages have sentences of their own (pages.ftl)."""
CODE = [p for p in CODE if not p.is_relative_to(OWN_SENTENCES)]


class _Variables(visitor.Visitor):
    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: ftl.VariableReference) -> None:
        self.names.add(node.id.name)


def variables(language: str, *, pages: bool = False) -> dict[str, set[str]]:
    """Sentence -> the values it puts in."""
    found = {}
    for text in sentences.sources(language, pages=pages).values():
        for entry in FluentParser().parse(text).body:
            if isinstance(entry, ftl.Message):
                v = _Variables()
                v.visit(entry)
                found[entry.id.name] = v.names
    return found


def calls() -> Iterator[tuple[str, str, set[str] | None]]:
    """Every `….s("key", name=…)`, `say("key", name=…)` and `sentence(language, "key", …)` in the code: where, key, names of
    values (None where a mapping is spread in)."""
    for path in CODE:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            position = {"s": 0, "say": 0, "sentence": 1}.get(called)
            if position is None or len(node.args) <= position:
                continue
            keys = node.args[position]
            options = [keys.body, keys.orelse] if isinstance(keys, ast.IfExp) else [keys]
            spread = any(k.arg is None for k in node.keywords)
            names = None if spread else {k.arg for k in node.keywords if k.arg}
            for option in options:
                if isinstance(option, ast.Constant) and isinstance(option.value, str):
                    yield f"{path.name}:{node.lineno}", option.value, names


def test_every_sentence_asked_for_exists_with_its_values() -> None:
    """A call names a sentence there is, and gives it exactly the values it puts in."""
    known = variables("en")
    wrong = []
    seen = 0
    for where, key, names in calls():
        seen += 1
        if key not in known:
            wrong.append(f"{where}: no sentence {key!r}")
        elif names is not None and not known[key] <= names:
            wrong.append(f"{where}: {key!r} also needs {sorted(known[key] - names)}")
    assert seen > 150, "the search for calls finds next to nothing: it is broken"
    assert not wrong, "\n".join(wrong)


def test_every_sentence_is_used() -> None:
    """A sentence that nothing asks for is removed, not kept."""
    text = "\n".join(p.read_text(encoding="utf-8") for p in CODE)
    literals = set(re.findall(r"[\"']([a-z][a-z0-9_-]*)[\"']", text))
    prefixes = set(re.findall(r"f[\"']([a-z-]+-)\{", text))
    unused = [
        key
        for key in variables("en")
        if key not in literals
        and not any(key.startswith(p) for p in prefixes)
        and not any(key == f"{a}{b}" for a in literals for b in ("-due",))
    ]
    assert not unused, unused


OTHERS = [x for x in sentences.languages() if x != sentences.fallback()]


def test_languages_are_found() -> None:
    """A language is a folder: nobody lists them, and one more is no fault."""
    assert set(sentences.languages()) >= {"de", "en", "fr"}


@pytest.mark.parametrize("pages", [False, True], ids=["told", "pages"])
@pytest.mark.parametrize("language", OTHERS)
def test_every_language_says_the_same_things(language: str, pages: bool) -> None:
    """No gap and nothing of its own: nobody reads two languages in one message."""
    behind, other = (variables(x, pages=pages) for x in (sentences.fallback(), language))
    assert (set(behind) - set(other), set(other) - set(behind)) == (set(), set())


@pytest.mark.parametrize("pages", [False, True], ids=["told", "pages"])
@pytest.mark.parametrize("language", OTHERS)
def test_every_language_takes_the_same_values(language: str, pages: bool) -> None:
    """What one language chooses by or puts in (a plural, an optional part), the others do too."""
    behind, other = (variables(x, pages=pages) for x in (sentences.fallback(), language))
    assert {k: (behind[k], other[k]) for k in behind if other.get(k, set()) != behind[k]} == {}


@pytest.mark.parametrize("language", OTHERS)
def test_every_language_has_the_same_files(language: str) -> None:
    """A sentence is looked for in the file where the others have it."""
    behind = sentences.fallback()
    for pages in (False, True):
        files = [sentences.sources(x, pages=pages) for x in (behind, language)]
        names = [
            {k: set(re.findall(r"^([a-z][a-z0-9_-]*) =", t, re.MULTILINE)) for k, t in f.items()}
            for f in files
        ]
        assert names[0] == names[1]


def test_no_code_names_a_language() -> None:
    """One more language is one more folder: nothing is asked of one by its name."""
    names = frozenset(sentences.languages())
    found = [
        f"{path.relative_to(ROOT)}:{node.lineno}"
        for room in ("server", "bot")
        for path in sorted((ROOT / room).rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant) and node.value in names
    ]
    assert found == []


def test_an_unknown_language_reads_english() -> None:
    """Whoever reads a language there is no folder for, or says none, gets the fallback; 'de-AT' gets German."""
    assert sentence("xx", "thanks") == sentence("", "thanks") == sentence("en", "thanks")
    assert sentence("de-AT", "thanks") == sentence("de", "thanks")


def test_a_missing_value_never_holds_a_message_back() -> None:
    """At night a text with a gap goes out; in the tests the gap is found by its mark."""
    assert sentence("en", "meeting-wait") == "Wait until …."


def test_a_missing_sentence_is_our_fault() -> None:
    """Asking for a sentence there is none of says which, and where to add it."""
    with pytest.raises(WordingError, match=r"languages/en has no sentence 'no-such-thing': add it"):
        sentence("en", "no-such-thing")


def test_every_reason_for_doubt_has_a_sentence() -> None:
    """Whatever makes a report doubtful can be said."""
    assert not {f"doubt-{r.value}" for r in Reason} - set(variables("en"))


@pytest.mark.parametrize("language", sentences.languages())
def test_every_end_of_an_alarm_has_a_sentence(language: str) -> None:
    """What ended an alarm is said in the language of whoever reads it, never as the word of the program."""
    ends = (SIGHTED, STOOD_DOWN, TAKEN_BACK, RETIRED, FINISHED, IN_HAND)
    assert not {f"stand-down-reason-{slug(e)}" for e in ends} - set(variables(language))


@pytest.mark.parametrize("language", sentences.languages())
def test_no_misleading_words(language: str) -> None:
    """Words that mislead at 3 a.m. stand in no sentence (list of the glossary)."""
    told = "\n".join(sentences.sources(language).values())
    lines = (line for line in told.splitlines() if not line.startswith("#"))
    text = "\n".join(re.sub(r"^[a-z0-9_-]+ =", "", line) for line in lines)
    for word in (r"\bpassed\b", r"\bstopped\b", r"\bdead\b", r"she.s out", r"\bhurry\b"):
        assert not re.search(word, text, re.IGNORECASE), word


@pytest.mark.parametrize("kind", [*sorted(CHECK_INS), Kind.IN_HAND])
@pytest.mark.parametrize("language", sentences.languages())
def test_a_fact_without_a_place_is_a_sentence_of_its_own(kind: Kind, language: str) -> None:
    """Not 'wieder unterwegs ab Ort nicht genannt': what stands for no place fits in no sentence made for one."""
    say = Say(Reader(language, "UTC", "UTC"), datetime(2027, 6, 19, tzinfo=UTC))
    said = say.fact(kind.value, say.place_of("", None))
    assert said == sentence(language, f"fact-{slug(kind.value)}-nowhere")
    assert not re.search(r"\b(?:ab|in|aus|from|at|of|bei|durch) (?:Ort|a place|place)\b", said)


def test_german_facts_by_the_kilometre_are_german() -> None:
    """Where only a kilometre is known: 'macht Pause, 45 km nach dem Start', never 'in 45 km nach dem Start'."""
    say = Say(Reader("de", "UTC", "UTC"), datetime(2027, 6, 19, tzinfo=UTC))
    for kind in (
        Kind.RESTING,
        Kind.MOVING_AGAIN,
        Kind.ASKED_FOR_HELP,
        Kind.RETIRED,
        Kind.POSITION,
        Kind.IN_HAND,
    ):
        said = say.fact(kind.value, say.place_of("", 45.0))
        assert said.endswith(", 45,0 km nach dem Start"), said


def test_a_german_window_that_is_over_reads_after_a_name() -> None:
    """'Als Nächstes: Brindle, Maren war erwartet für 14:35': it stands after her name and after a colon."""
    say = Say(Reader("de", "UTC", "UTC"), datetime(2027, 6, 19, 18, tzinfo=UTC))
    at = datetime(2027, 6, 19, 14, 35, tzinfo=UTC)
    window = Window("gate", at - timedelta(minutes=25), at, at + timedelta(minutes=45))
    assert say.window(window).startswith("war erwartet für 14:35 (14:10 bis 15:20), von dort")
