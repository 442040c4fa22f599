"""Words that say she may be in danger: what is passed on at once as a call for help, and what is kept as how she is
with the numbers to call in front of it."""

from __future__ import annotations

import re

from bot.words import asking
from bot.words.meaning import AskBack, Choice, Context, Distress, Need, Report, Reported, Understood
from bot.words.patterns import pattern
from bot.words.sentence import Sentence
from bot.words.tidy import fold, tidy
from server.event.model import PartKind
from server.facts.entry import Kind

_SEVERE = pattern(r"""
    \b(can not|cannot|could not|can hardly|can barely|unable to|struggl\w+ to) (\w+ )?(breathe?|get (any |enough )?air)\
      (?! through)\b
    \bstopped breathing\b
    \bbleeding (\w+ )?(badly|heavily|a lot|lots|profusely|everywhere|hard|so much)\b
    \bbleeding (will not|does not|is not|has not|did not) stop\w*
    \b(badly|heavily|profusely) bleeding\b
    \b(heavy|severe|bad) bleeding\b
    \b(lots?|a lot|so much) (of )?blood\b(?! (sugar|blister|pressure))
    \b(is|was|has been|been|started) (now )?fitting\b(?! (well|in|out|into|her|my|the|new|a)\b)
    ^(she )?fitting( now| again)?$
    \bhaving (a |an )?(fits|convulsions?)\b
    \b(seizures?|convulsing|heart attack|cardiac arrest|anaphyla\w+)\b
    \b(passed out|blacked out|fainted)\b(?! of\b)
    \bchest pains?\b
    \bpains? in (her|my|the) chest\b
    \b(bekommt|kriegt|kriege|bekomme) (\w+ )?(kaum|keine) luft\b
    \b(kann|kann sie|kann ich) (\w+ )?(nicht|kaum) (mehr )?atmen\b
    \batmet (\w+ )?nicht\b
    \bbrustschmerz\w*
    \bschmerzen in (der|ihrer|meiner) brust\b
    \b(krampfanfall|epileptisch\w*|herzinfarkt|schlaganfall|herzstillstand)\b
    \bblutet (\w+ )?(stark|heftig|schlimm|sehr|viel)\b
    \b(starke|schwere|heftige) blutung\w*
    \bblutung \w+ nicht\b
    \bnicht auf zu bluten\b
""")
_GRAVE = pattern(r"""
    \bbleed\w*
    \bbled\b
    \bnot making (any |much )?sense\b
    \bmak(es|ing) no sense\b
    \b(talking|speaking) (\w+ )?(rubbish|nonsense|gibberish)\b
    \b(slurr\w+|confused|disorient\w+|delirious|concuss\w+|hypotherm\w+|choking)\b
    \bheat ?stroke\b
    \b(hit|banged|bumped|smashed) (her|my) head\b
    \bhead injury\b
    \bblue lips\b
    \b(blutet|blute|verwirrt|desorientiert|krampft|unterkuehlt|hitzschlag)\b
    \bredet (\w+ )?wirr\w*
    \bwirres zeug\b
    \b(keinen|kein) sinn\b
    \bauf den kopf (gefallen|gestuerzt|geschlagen)\b
""")
_UNLESS = re.compile(
    r"\b(?:no|not|never|without|stopped|keine?|niemand|nicht|ohne)"
    r"(?: (?:a|any|an|longer|more|having|been|sign|signs|of|mehr|so))* $"
)
_CLAUSES = re.compile(r"(?<=[.,;!?\n])\s*")


def _found(says: re.Pattern[str], text: str) -> bool:
    """Whether it is said, and not that it is not so: 'no chest pain'."""
    return any(_UNLESS.search(text[: m.start()]) is None for m in says.finditer(text))


def _plain_raw(words: str) -> str:
    """The words as written, umlauts spelt out and signs gone: what German is looked for in."""
    return " ".join(re.sub(r"[^\w\s]+", " ", fold(words.lower())).split())


def needs_help_now(said: Sentence) -> bool:
    """Whether it says of somebody, not as a question, what nobody may wait with: no breath, a fit, bad bleeding."""
    if _found(_SEVERE, said.text) or _found(_SEVERE, said.plain) or _found(_SEVERE, _plain_raw(said.words)):
        clauses = [c for c in _CLAUSES.split(said.words) if c.strip()]
        if not asking.is_question(said.text):
            return True
        # 'She can't breathe, what do we do?': the first half asks nothing.
        return len(clauses) > 1 and any(
            not asking.is_question(tidy(c)) and (_found(_SEVERE, tidy(c)) or _found(_SEVERE, _plain_raw(c)))
            for c in clauses
        )
    return False


def speaks_of_self(said: Sentence, ctx: Context) -> bool:
    """Whether a runner or pacer writes it of themselves."""
    foot = bool(ctx.parts & {PartKind.RUNNER, PartKind.PACER})
    return foot and re.search(r"\b(?:she|her)\b", said.text) is None


_SELF = pattern(
    r"""
    \b(help|sos|mayday|hurt|injured|lost|bleeding|collapsed|ambulance|rescue me|emergency|stuck)\b
    \bcan not (move|walk|get up|go on|stand)\b
    \b(can not|can no longer|do not|unable to|could not) (find|see|know) (the |my |any |where )?(path|way|trail|\
      markers?|markings?|course|route|\
      i am|track|next marker)\b
    ^(i |she |have |has |just )*(fell|fallen|fell over|fallen over|had a fall)( over| down| off| badly| hard| bad)*$
    \bbroken (my |an? )?(leg|ankle|arm|wrist)\b
    \b(hilfe|notfall|verletzt|verlaufen|verirrt|bewusstlos|krankenwagen|rettungswagen|bergwacht)\b
    \bgebrochen(es|er|en)?\b
    ^(please )?(call |ring |ruf |rufe? )?(999|112|911)( now| please| an)?$
    ^(s o s|h e l p|hlep|halp|hepl)\b
    \b(trapped|hypothermi\w+|allergic reaction|dying|urgent(ly)?)\b
    \b(need|want|require) (urgent )?(assistance|rescue|rescuing|a doctor|a medic|medics?|mountain rescue|picking up)\b
    \b(come (and )?(get|fetch|find|save)|pick up|rescue|save) me\b
    \bget me (out|off|down)\b
    \bmountain rescue\b
    \b(leg|ankle|arm|wrist|hip|knee|neck|back) (is |has )?broken?\b
    \bbroke my\b
    \b(can not|cannot|hard to|struggling to|trouble) breath\w*\b
    \bhit my head\b
    \bblood (everywhere|coming|in my)\b|\b(vomiting|throwing up|coughing|peeing|weeing) (up )?blood\b
    \b(fell|fallen|slid|slipped) (down|off|into)\b
    \bsomething is (really |very |badly )?wrong with me\b
    \b(no idea|do not know|not sure|dunno) where i am\b|^where am i$
    \b(au secours|aidez moi|a l ?aide|socorro|ayuda|aiuto|pomocy|ratunku|hjalp|hjälp|apua)\b
    """
)
_NOT_SELF = pattern(
    r"""
    \blost (time|\d+|some time|weight)\b
    \blost (my|a|the|her) (bottle|gloves?|hat|buff|poles?|cup|gels?|torch|appetite)\b
    """
)
_FOR_HER = pattern(
    r"""
    \b(asked|asking|asks|calling|called|shouting|needs?|wants|needing) (for )?(urgent )?\
      (help|rescue|a medic|a doctor|an? ambulance|medics?|ambulance)\b
    \bshe (is |has |was )?(badly |seriously )?(hurt|injured|collapsed|unconscious|bleeding|lost)\b
    \b(sos|mayday)\b
    \b(ambulance|air ambulance|helicopter|mountain rescue) (is |has been |was )?(called|coming|on (its|it is) way|\
      on the way|requested)\b
    \b(called|calling|rung|phoned|requested) (an|the|for an|999|112|for the) ?(air )?(ambulance|helicopter|\
      mountain rescue)\b
    \bcall (someone|somebody)\b
    \b(unconscious|collapsed|not breathing|unresponsive|having a (fit|seizure))\b
    \bcall (an ambulance|for help|rescue|mountain rescue)\b
    \b(no pulse|doing cpr|cpr)\b
    \bshe is (fitting|having a seizure|missing(?! (a|an|her|the|one|two|some)\b))
    \bshe (has )?(gone|went) missing\b
    \b(does not|will not|is not|not) (respond\w*|react\w*|wak\w* up)\b
    \bshe (has )?(broke|broken) (her |an? )?(leg|ankle|arm|wrist|hip|neck|back)\b
    \b(called|rung|phoned|rang|calling) (mountain rescue|999|112|911|the ambulance)\b
    \b(casualty|runner down)\b
    \b(a |the |one )?(runner|somebody|someone) (here )?(is |has been )?(badly |seriously )?(hurt|injured|unconscious)\b
    \b(texted|texts|messaged|writes|wrote|says|said) help\b
    \breagiert nicht\b|\b(bewusstlos|krampfanfall|atmet nicht)\b
    """
)


def call_for_help(said: Sentence, ctx: Context) -> Distress | None:
    """Help is never argued with: a runner's or pacer's word is enough; of others, that she needs it."""
    of_self = bool(ctx.parts & {PartKind.RUNNER, PartKind.PACER})
    runner = said.runner.id if said.runner else None
    if of_self and _SELF.search(said.plain) and not _NOT_SELF.search(said.plain):
        return Distress(said.words, ctx.now, runner, by_self=True)
    text = said.text
    if _FOR_HER.search(text) and not asking.is_question(text):
        return Distress(
            said.words, ctx.now, runner, by_self=not of_self and re.search("sos|mayday", text) is not None
        )
    if needs_help_now(said):
        return Distress(said.words, ctx.now, runner, by_self=speaks_of_self(said, ctx))
    return None


def is_grave(words: str) -> bool:
    """Whether the words, as typed, say that somebody may be in danger."""
    texts = (tidy(words), _plain_raw(words))
    return any(_found(says, text) for says in (_SEVERE, _GRAVE) for text in texts)


def kept(said: Sentence, ctx: Context) -> Understood | None:
    """How she is, of words that nothing else was found in but that she may be in danger; else None."""
    if not is_grave(said.words) or asking.is_question(said.text):
        return None
    one = Report(Kind.HOW_SHE_IS, ctx.now, said.runner.id if said.runner else None, words=said.words)
    if said.runner is not None:
        return Reported((one,))
    if len(ctx.runners) < 2:
        return None
    return AskBack(
        Need.RUNNER,
        tuple(
            Choice(r.id, Reported((Report(one.kind, one.seen_at, r.id, words=one.words),)))
            for r in ctx.runners
        ),
    )
