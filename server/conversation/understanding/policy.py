"""How sure it must be before something is done: the table beside this module, read once. And the questions that plain
phrases tell from their neighbours, whatever the model makes of them: 'who am I riding with' is not where she is, 'am I
needed there' not what to bring."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources

from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import Question
from server.conversation.understanding.sentence import Sentence
from server.event.model import PartKind


@dataclass(frozen=True)
class Policy:
    """`tiers` what each intent needs to be done; `tier_of` its tier by name; `two` what the two likeliest need together;
    `clause` what a clause beside others needs; `alarm`, `ask`, `wonder`, `joke`, `none`,
    `light`, `sure` scores of danger."""

    tiers: Mapping[str, float]
    tier_of: Mapping[str, str]
    two: float
    clause: float
    alarm: float
    ask: float
    wonder: float
    joke: float
    none: float
    light: float
    sure: float


@cache
def policy() -> Policy:
    """The table."""
    t = tomllib.loads(resources.files(__package__).joinpath("policy.toml").read_text(encoding="utf-8"))
    tier_of = {i: tier for tier, intents in t["intents"].items() for i in intents}
    tiers = {i: float(t["tiers"][tier]) for i, tier in tier_of.items()}
    unsure, danger = t["unsure"], t["danger"]
    return Policy(tiers, tier_of, unsure["two"], unsure["clause"], **danger)


@dataclass(frozen=True, slots=True)
class Plain:
    """`words`: the phrases of the lexicon, of which one must be there; `also`: others of which one must be there too;
    `said`: it asks without the form of a question ('she should have been here ages ago'); `but`: classes of words of which
    one makes it another question ('when am I needed')"""

    words: str
    intent: str
    question: Question
    also: str = ""
    said: bool = False
    but: tuple[str, ...] = ()
    runner: bool | None = None
    """Asked by her (True), by anybody else (False), or by all (None)."""


_TABLE = (
    Plain("ask_car", "ride", Question.RIDE, runner=False),
    Plain("ask_needed", "duty", Question.NEEDED, runner=False, but=("when", "why", "what", "how")),
    Plain("ask_fetch", "cover", Question.FETCH),
    Plain("ask_next_bit", "course_ahead", Question.NEXT_BIT, runner=True),
    Plain("ask_silent", "catch_up", Question.SILENT, runner=False),
    Plain("ask_spot", "people", Question.ON_SPOT, runner=False),
    Plain("ask_parking", "meeting", Question.PARKING, runner=False),
    Plain("ask_crew_food", "unknown_other", Question.CREW_FOOD, runner=False, but=("when",)),
    Plain("ask_up", "leave", Question.LEAVE, runner=False),
    Plain("ask_took", "finish", Question.TOOK),
    Plain("ask_late_said", "plan_gap", Question.LATE, said=True, runner=False, but=("neg",)),
    Plain("ask_late", "plan_gap", Question.LATE, runner=False),
    Plain("ask_ground", "course_ahead", Question.GROUND),
    Plain("takes_over", "dark", Question.DARK, also="ask_light", runner=False),
)


def plain_question(said: Sentence, parts: frozenset[PartKind]) -> Plain | None:
    """What a clause plainly asks; None where no phrase says it."""
    runs = PartKind.RUNNER in parts
    read = lexicon().read
    for one in _TABLE:
        if one.runner not in (None, runs) or not read[one.words].has(said.masked):
            continue
        if one.also and not read[one.also].has(said.masked):
            continue
        if not any(said.says(c) for c in one.but):
            return one
    return None
