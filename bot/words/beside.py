"""What a question names that no table of ours knows: 'the dog', 'a toilet', 'wifi'. Of such things the plan says nothing,
and an arrival time alone would look like the answer.

The words known are those of the tables themselves, and the small words that hold sentences together; names are stand-ins
by then. A word that may be one of them, mistyped, is left alone.
"""

from __future__ import annotations

import re
from functools import lru_cache

from rapidfuzz.distance import OSA

from bot.words import german_phrases, reporting, tidy
from bot.words.questions import SHORT, TABLE, unknown
from bot.words.tidy import fold

__all__ = ["not_known_here"]

SHORTEST = 3
"""Shorter words name nothing by themselves."""
NAMED_MAX = 3

_SMALL = frozenset(
    """
    the and but for from with without into onto over under about above below behind between near next after before until
    till since while than then that this these those there here where when what which who whom whose why how whether
    not never ever also too very much many more most less least few lots some any all both each every other another same
    such only just even still yet already again now soon later once twice today tonight tomorrow yesterday morning evening
    afternoon night noon midnight hour hours minute minutes second seconds day days time times sec secs
    she her hers herself they them their you your yours mine our ours his him its one ones anyone someone everyone nobody
    somebody anybody everybody something anything nothing everything thing things
    are was were been being has had have having does did doing done can could may might must shall should will would
    ought need needs want wants wanted let lets make makes made making take takes took taken taking get gets got gotten
    getting give gives gave given giving put puts keep keeps kept come comes came coming going goes gone went look looks
    looked looking see sees saw seen seeing know knows knew known think thinks thought say says said tell tells told ask
    asks asked call calls called find finds found feel feels felt seem seems hope guess suppose reckon mean means meant
    please sorry thanks thank hello hey hiya yes yeah okay sure well right good great fine nice really actually basically
    probably maybe perhaps possibly hopefully roughly exactly quite rather pretty almost nearly ages bit lot little while
    way back away off out down through round around along across towards past ahead left side per via like able worth
    quick quickly long longer far further big small old new first last final early late sooner hard easy best better worse
    wondering wonder curious idea clue chance odds plan planned mate pal guys folks love dear god damn bloody hell wtf lol
    girl lady woman lass runner runners crew team people person friend sister daughter wife mum mom boss
    predicted current full complete wil shop hoping wrong siri alexa google
    monday tuesday wednesday thursday friday saturday sunday weekend
    montag dienstag mittwoch donnerstag freitag samstag sonntag aktuell aktuelle ankunft sicher
    her shes whats whens wheres hows
    der die das den dem des ein eine einen einem einer eines und oder aber auch noch schon mal nur doch denn dann wenn als
    weil dass ob wie wer was wann warum wieso weshalb welche welcher welches welchen welchem man ich wir sie ihr ihn ihm
    uns euch mich mir dich dir sich mein meine meinen meiner dein deine unser unsere unseren euer eure ihre ihren ihrem ihrer
    ist sind war waren bin bist seid sein hat haben habe habt hatte hatten wird werden wurde wurden kann koennen koennt
    konnte darf duerfen muss muessen musste soll sollen sollte will wollen wollte moechte mag wuerde koennte gibt geben geht
    gehen kommt kommen macht machen tut tun nimmt nehmen bleibt bleiben steht stehen laeuft laufen braucht brauchen weiss
    bei beim mit nach vor von vom zum zur auf aus fuer durch ueber unter gegen ohne seit bis ins ans ums hinter neben
    zwischen heute morgen gestern nacht abend mittag jetzt gleich bald spaeter frueher hier dort dahin dorthin her hin weg
    nicht kein keine keinen nichts nie immer wieder alle alles viel viele mehr weniger etwa ungefaehr circa genau ganz sehr
    bitte danke hallo moin ja nein okay gut schlecht lange lang weit etwas jemand niemand andere anderen eigentlich
    vielleicht lohnt aufhoert aufhoeren gehn sehn stehn fahrn
    lohnen wert zeit uhr stunde stunden minuten mal leute frau maedel laeuferin da
    """.split()  # noqa: SIM905 - a list of words reads better as words
)


@lru_cache(maxsize=1)
def _known() -> frozenset[str]:
    """Every word that stands in a table of questions, reports or German phrases, and the small words."""
    sources = [lines for _, lines in TABLE]
    sources += [*SHORT.values(), unknown.WEATHER, unknown.LEAVE_THERE, unknown.CATCH_UP]
    sources += [p for p, _ in german_phrases.PHRASES] + [to for _, to in german_phrases.PHRASES]
    sources += [p.pattern for p in reporting.patterns()]
    sources += [*tidy.WRITTEN_OUT, *tidy.WRITTEN_OUT.values(), *tidy.MENDED]
    words = {w for s in sources for w in re.findall(r"[a-z]{2,}", re.sub(r"\\[a-z]", " ", fold(s.lower())))}
    return frozenset(words) | _SMALL


# 'mitzubringen' is 'mitbringen'.
_PARTED = re.compile(r"^(ab|an|auf|aus|ein|hin|los|mit|weiter|zurueck)zu(?=\w{3})")


@lru_cache(maxsize=4096)
def _is_known(word: str) -> bool:
    known = _known()
    word = _PARTED.sub(r"\1", word)
    if word in known or any(
        word.removesuffix(end) in known for end in ("s", "es", "ed", "ing", "er", "en", "e", "n", "t")
    ):
        return True
    slips = 0 if len(word) < 5 else 1
    alike = (w for w in known if abs(len(w) - len(word)) <= slips and w[0] == word[0] and len(w) > SHORTEST)
    return any(OSA.distance(word, w, score_cutoff=slips) <= slips for w in alike)


def not_known_here(text: str, typed: str = "") -> str:
    """The words of a tidied question, names replaced by stand-ins, of which nothing is known, in their order, as they were
    `typed`; '' where there are none."""
    as_typed = {fold(w).lower(): w for w in re.findall(r"\w+", typed)}
    words = [w for w in re.findall(r"[A-Za-z]+", text) if w.islower() and len(w) >= SHORTEST]
    found = list(dict.fromkeys(w for w in words if not _is_known(w)))[:NAMED_MAX]
    return ", ".join(as_typed.get(w, w) for w in found)
