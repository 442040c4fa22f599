"""Crew in trouble on the road: stuck, late, a car that broke down. It says nothing of her."""

from __future__ import annotations

import re

from bot.words import asking
from bot.words.meaning import Context, Report, Reported
from bot.words.patterns import pattern
from bot.words.sentence import Sentence
from bot.words.tidy import fold
from server.event.model import PartKind
from server.facts.entry import Kind

_TROUBLE = pattern(r"""
    \b(we|i) (are|am|will be|might be|may be|are going to be|am going to be) (\w+ ){0,4}(late|delayed|held up|stuck)\b
    \bstuck (behind|in|on|at) (?!(the )?(mud|bog|snow)\b)
    \b(traffic|roadworks|road (is )?closed|closed road|road ?block|tailback)\b
    \b(car|van|engine|battery) (\w+ ){0,2}(broke|broken|dead|will not start|would not start|does not start|overheat\w*|\
      stuck|bogged)\b
    \b(broke|broken) down\b
    \b(flat tyre|flat tire|puncture|out of (petrol|fuel|diesel))\b
    ^(we |i )?(are |am )?(bit |very |really |still )*(running|going to be) (\w+ ){0,2}late( \d+ min)?$
    \b(we|i) (have )?(overslept|slept in)\b
    \b(wir|ich) (stehen|stehe|stecken|stecke|sitzen|haengen) (\w+ ){0,3}(stau|fest|hinter)\b
    \b(im|in) stau\b
    \b(wir|ich) (\w+ )?(verspaeten|verspaete) (uns|mich)\b
    \b(wir|ich) (kommen|komme|sind|bin) (\w+ ){0,3}(zu spaet|spaeter)\b
    \b(auto|wagen|bus) (\w+ ){0,2}(kaputt|liegengeblieben|springt nicht an)\b
    \b(springt nicht an|reifenpanne|autopanne|platten|eine panne|verschlafen|verpennt)\b
    \b(stehen|stehe|stecken|stecke|haengen|haenge) (\w+ ){0,3}(hinter|im stau|fest)\b
""")
_CREW = frozenset({PartKind.CREW, PartKind.SAFETY_CONTACT, PartKind.ORGANISER})
_OF_HER = re.compile(r"\b(?:she|her|sie|ihr)\b")
_ASKS = re.compile(r"^(?:are|am|is|will|do|should|how|what|when|sind|bin|ist)\b")


def trouble(said: Sentence, ctx: Context) -> Reported | None:
    """A note that crew are held up, in their words; None where it is of her, or asks."""
    raw = " ".join(re.sub(r"[^\w\s]+", " ", fold(said.words.lower())).split())
    if PartKind.RUNNER in ctx.parts or not ctx.parts & _CREW or said.named or _OF_HER.search(said.text):
        return None
    if said.words.rstrip().endswith("?") or _ASKS.search(raw) or asking.is_question(said.text):
        return None
    if _TROUBLE.search(said.text) is None and _TROUBLE.search(raw) is None:
        return None
    runner = said.runner.id if said.runner else None
    return Reported((Report(Kind.NOTE, ctx.now, runner, words=said.words, of_crew=True),))
