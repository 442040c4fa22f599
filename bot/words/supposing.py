"""What states no fact, or only somebody else's: hopes, plans, guesses, questions in disguise, hearsay.

A false arrival ends an alarm, so these are looked for in the words as written, in either language, before
anything is taken for a check-in.
"""

from __future__ import annotations

import re

from bot.words.german import loose
from bot.words.patterns import pattern
from bot.words.tidy import fold

_NO_FACT = pattern(
    loose(
        r"""
    \b(i|we|they|just|am|are|im)? ?(hope|hoping|wish|wishing|guess|guessing|assume|assuming|bet|doubt|pray|praying)\b
    \b(i|we|they) suppose\b
    \b(hopefully|presumably|probably|maybe|perhaps|possibly|fingers crossed|with (any |a bit of )?luck)\b
    \bby now\b
    \b(in|out|there|here|off|away|through|done) by (\d|half|quarter|noon|midnight|then)
    \b(supposed|meant|expected|due|likely|ought|hoping|going|about|aiming|planning|unlikely) to \
      (be|get|arrive|leave|come|go|reach)\b
    \b(might|may|could|should|would|will|must|can|shall|wont|cant|won't|can't) (not |already |still |well |have |\
      just )*\
      (be|been|get|got|arrive|arrived|leave|left|come|gone|reach|reached|make|made)\b
    \b(should|could|would|might|must|may)(ve|'ve|a|nt|n't)\b
    \b(\w+'ll|(she|he|they|you|we)'d|wonder|wondering)\b
    ^(and |but |so )?(as soon as|in case|unless|whenever|if|once)\b
    \b(as soon as|in case|unless|before|until|till|when|whenever|if|once) \
      (\w+ )?(she|he|they|is|gets|comes|leaves|arrives|in|out|has)\b
    \b(nearly|almost|not quite|practically|any (minute|second|moment)( now)?) (in|out|here|there|at|through|left|off)\b
    \b(out|off|away|there|here|back|done|leaving|gone|going) in (about |a |an |another |like |\
      the next )?(\d{1,2}|few|five|ten|fifteen|\
      twenty|half|couple|hour|minute|min|bit|sec|second|moment|jiffy)\b(?!:)
    \bin (about |another |like )?\d+ ?(m|min|mins|minutes|minuten)\b(?! ago| back| or so ago)
    \b(min|mins|minutes|minute|km|miles?) (away|out|off|to go|from here)\b
    ^(wie|wo|wer|wen|wem|wann|warum|wieso|weshalb|wozu|wohin|woher|welche[rsnm]?|ob)\b
    ^was \w+ (sie|er|es|wir|ich|ihr|man)\b
    ^(ist|is|war|hat|kommt|kann|wird|muss|soll|darf|geht|braucht|isst|trinkt) (sie|er|es|wir|ich|ihr|man|jemand)\b
    \b(sag|sagt|schreib|schreibt|ruf|gib|gebt|melde|meldet|weck|bescheid)\b( \w+)? (mir|uns|mich|dich|bitte|wenn|\
      sobald)\b
    \b(sag|sagt|schreib|schreibt|ruf|gib|gebt|melde|weck)\w* (mir|uns|mich|dich|bitte)\b
    \b(wenn|falls|sobald|bevor|bis) (sie|er|die|ich|wir)\b
    \b(hoffentlich|vermutlich|wahrscheinlich|vielleicht|wohl|eventuell|bestimmt|sicher schon|fast|beinahe|gleich)\b
    \b(sollte|müsste|könnte|dürfte|würde|wird|soll|will|muss|müßte)\b.*\b(sein|ankommen|kommen|erreichen|gehen|\
      laufen|da|durch)\b
    \b(soll|sollte|müsste|dürfte|wird)\b.*\b(um|gegen|bis|bald|heute|dann|in|bei)\b
    \b(da|los|hier|raus|weg|durch|dort) in \d+\b
    \b(hoffe|schätze|vermute|wette)\b
    """
    )
)

_HEARSAY = pattern(
    loose(
        r"""
    \b(apparently|supposedly|allegedly|reportedly|rumou?rs?|word is|according to)\b
    \b(says?|said|saying|reckons?|reckoned|thinks?|thought|claims?|claimed|believes?|believed|heard|hears?|hearing)\b
    \b(told|tells|telling) (me|us)\b
    \b(looks|looked|seems|seemed|sounds|appears) (like|as if|as though|to be)\b
    \bnot (100 )?(percent |% |entirely |quite )?(sure|certain)\b
    \b(tracker|tracking|dot|map|app|website|live ?trail\w*|results?) (says?|shows?|has|puts)\b
    \b(angeblich|laut|anscheinend|offenbar|offensichtlich|scheinbar)\b
    \b(sagt|meint|glaubt|denkt|sagte|meinte|gehört|glaube|glaub|denke|denk)\b
    """
    )
)


def _plain(words: str) -> str:
    return " ".join(fold(words.lower()).replace("’", "'").split())


def says_no_fact(words: str) -> bool:
    """Whether a sentence as written asks, hopes, plans or supposes, in either language: never an arrival.

    Looked for in the words themselves, as what has been put into the tables' English may have lost it.
    """
    return _NO_FACT.search(_plain(words)) is not None


def is_hearsay(words: str) -> bool:
    """Whether the writer passes on what somebody or something else says, or only thinks so: kept, never counted
    until somebody stands for it."""
    return _HEARSAY.search(_plain(words)) is not None


_QUESTION_WORD = re.compile(
    loose(
        r"^(?:und |also |aber )?(?:(?:wann|wo|wer|wie|warum|wieso|weshalb|welche[rsnm]?|ob|hilft|helfen)\b|"
        r"was (?:hilft|tun|tut|mach\w*|soll\w*|kann|könn\w*|gib\w*|geben|ist|wenn|bei|gegen|hat|braucht|nimmt|nehmen|"
        r"bedeutet|heißt|darf|dürf\w*|muss|müss\w*|isst|trinkt|nun|jetzt)\b|"
        r"(?:darf|dürfen|kann|können|soll|sollen|sollte|muss|müssen|ist|hat|wird|geht|tut|kommt|braucht) "
        r"(?:sie|er|es|ihr|ihm|man|ich|wir)\b|"
        r"(?:hat|haben|ist|sind|gibt|gibts|kostet|lohnt|braucht|darf|kann|muss|geht|macht|liegt|kommt) (?:der|die|das|den|"
        r"es|ein|eine|einen|dort|da|man|ihr|sich|jemand|unser\w*|mein\w*)\b|gibts\b|"
        r"(?:ist|sind) \w+ (?:\w+ )?(?:gut|schlecht|ok|schlimm|gefährlich|sinnvoll|erlaubt|normal)\b)"
    )
)
_REMEDY = re.compile(
    loose(
        r"\b(?:schlafen|hinlegen|ausruhen|ibu\w*|paracetamol|aspirin|schmerz\w*|salz\w*|cola|koffein|kaffee|tablette\w*|"
        r"medikament\w*|magnesium|elektrolyt\w*|blase\w*|krampf|krämpfe|übel\w*|durchfall|magen\w*|unterkühl\w*|"
        r"friert|frieren|kotz\w*|übergibt|erbr\w*|arzt|verwirrt|schwindl\w*|müde|müdigkeit|kalt|zitter\w*|füße\w*|knöchel|knie)\b"
    )
)


def asks_in_german(words: str) -> bool:
    """Whether it is put as a German question is: by its first word, or by verb before subject."""
    return _QUESTION_WORD.search(_plain(words)) is not None


def asks_for_a_remedy(words: str) -> bool:
    """Whether a German question is about what troubles her, or what may help."""
    asks = asks_in_german(words) or words.rstrip().endswith("?")
    return asks and _REMEDY.search(_plain(words)) is not None


_HOW = re.compile(
    r"^(?:und |also |aber )?(?:(?:ist|hat|geht|tut) (?:sie|er|es|ihr|ihm)\b|wie (?:geht|sind|sehen) )"
)


def asks_how(words: str) -> bool:
    """Whether a German question asks how she is rather than what to do: 'hat sie Blasen', 'ist ihr kalt'."""
    return _HOW.search(_plain(words)) is not None
