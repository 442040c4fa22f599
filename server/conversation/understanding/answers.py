"""Short answers: acknowledging, yes and no, taking back, greetings. The whole message, but for words that soften it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import (
    Acknowledged,
    Asked,
    Question,
    Small,
    Unclear,
    Understood,
    Undo,
)

_BREAKS = re.compile(r"[,.;!\n]+")
_SOFT = frozenset({"ok", "yes", "no"})
_GOES = frozenset({"i have it", "on our way", "i go", "awake"})
_AGAINST_YES = frozenset({"not yet", "nobody there", "cannot", "still missing", "no"})
LONGEST = 9
"""No answer has more words."""


def short_answer(text: str) -> Understood | None:
    """An answer, undo or greeting, or several of them in one breath ('got it, I'm on it'); `Unclear` where
    they contradict each other, None for anything longer."""
    if "?" in text or len(text) > 120:
        return None
    words = lexicon().words(text)
    whole = _one(words, text)
    if (
        isinstance(whole, Acknowledged)
        and whole.answer in _AGAINST_YES
        and lexicon().answers.get(words[0]) == "yes"
    ):
        return Unclear(text)
    if whole is not None:
        return whole
    parts = [words for part in _BREAKS.split(text) if (words := lexicon().words(part))]
    found = [_one(words, text) for words in parts]
    if len(parts) < 2 or any(f is None for f in found):
        return None
    if any(isinstance(f, Undo) for f in found):
        return Undo()
    answers = [f.answer for f in found if isinstance(f, Acknowledged)]
    firm = set(answers) - _SOFT
    # 'I have it, leaving now': whoever goes has it.
    firm = {"i have it"} if "i have it" in firm and firm <= _GOES else firm
    if len(firm) > 1 or ("yes" in answers and set(answers) & _AGAINST_YES):
        return Unclear(text)
    return Acknowledged(firm.pop() if firm else answers[0], text) if answers else found[0]


def _one(words: Sequence[str], text: str) -> Understood | None:
    if not 0 < len(words) <= LONGEST:
        return None
    known, soft = lexicon().answers, lexicon().soft
    row = list(words)
    tried = [row]
    while len(row) > 1 and soft.word(row[-1]):
        row = row[:-1]
        tried.append(row)
    for start in (list(words), row):
        row = start
        while len(row) > 1 and 0 < (n := soft.begins(row)) < len(row):
            row = row[n:]
            tried.append(row)
    return next((_as_meaning(known[said], text) for r in tried if (said := " ".join(r)) in known), None)


def _as_meaning(answer: str, text: str) -> Understood:
    if answer == "undo":
        return Undo()
    if answer == "help":
        return Asked(Question.HELP_WORD, words=text)
    if answer in ("thanks", "hello"):
        return Small(thanks=answer == "thanks")
    return Acknowledged(answer, text)


def plain(text: str) -> str:
    """The words of a text with blanks between, as names are compared."""
    return " ".join(lexicon().words(text))


def says_right(text: str) -> bool:
    """Whether the words say that what was asked about is right: 'right', 'that's correct', 'stimmt'."""
    return _begun_with(text, lexicon().read["right"].whole)


def _begun_with(text: str, known: frozenset[str]) -> bool:
    row = lexicon().words(text)
    while row and " ".join(row) not in known and (n := lexicon().soft.begins(row)):
        row = row[n:]
    return " ".join(row) in known


def says(words: str, kind: str) -> bool:
    """Whether words hold any of a class of the lexicon, of those that the model sees or of those that rules look for."""
    known = lexicon().read.get(kind) or lexicon().classes[kind]
    return known.has(lexicon().words(words))


def asks_the_way(words: str) -> bool:
    """Whether a question about a meeting is about how to get there."""
    return lexicon().read["way"].has(lexicon().words(words))


def asks_when(words: str) -> bool:
    """Whether a question about light wants its times."""
    return lexicon().read["light_times"].has(lexicon().words(words))


def asks_time_left(words: str) -> bool:
    """Whether a question about leaving is how much time there still is, for whatever it may be."""
    return lexicon().read["time_left"].has(lexicon().words(words))


_OF_ALARM = {
    "alarm_now": Question.ALARM_NOW, "alarm_tell": Question.ALARM_TELL, "alarm_call": Question.ALARM_CALL,
    "alarm_known": Question.ALARM_KNOWN,
    "whats_up": Question.TOLD,
}  # fmt: skip


def asks_of_alarm(text: str) -> Question | None:
    """Which of the plain questions about an open alarm the words ask, the whole of them and nothing else: what do I do now,
    what do I tell them, should I call, what is known. None for any other words."""
    words, read = lexicon().words(text), lexicon().read
    while words:
        for name, question in _OF_ALARM.items():
            if read[name].begins(words) == len(words):
                return question
        words = words[read["lead"].begins(words) or len(words) :]
    return None


def answers_a_notice(text: str) -> bool:
    """Whether the words are nothing but an answer to something that was asked."""
    return isinstance(short_answer(text), Acknowledged)


def takes_back(text: str) -> bool:
    """Whether the words are nothing but 'undo'."""
    return isinstance(short_answer(text), Undo)
