"""The table of questions: the first line whose pattern is found in a sentence says what is asked.

Sentences come tidied, with names replaced: PT a point, PERSON somebody, FINISH the finish, LATER a time to
come, 'she' a runner. WE, GO and TROUBLE stand for their words below. The ways of asking stand in `race`, `crew`
and `other`; the order is here and part of the table: what is narrower stands first. To teach a new way of
asking, add it to its lines and to the table in the tests.
"""

from __future__ import annotations

from bot.words.meaning import Question
from bot.words.questions import crew, other, race, remedy

_WE = r"(?:we|i|us|me|you|crew|they)"
_GO = (
    r"(?:leave|go|set off|set out|head (?:off|out|over)|head|get going|get off|drive off|start driving|depart|"
    r"be off|move|get moving|hit the road|get away|make a move|get on the road|shoot off|take off|drive|leaving)"
)
_TROUBLE = (
    r"(?:feet|foot|blisters?|hot ?spot|stomach|tummy|belly|sick|vomit\w*|throw\w* up|puk\w*|nause\w*|fell|fall\w*|"
    r"ankle|knee|cold|shiver\w*|hypotherm\w*|hot|heat|overheat\w*|cramp\w*|chaf\w*|sleepy|falling asleep|"
    r"wants to (?:stop|quit|drop|give up)|(?:wont|not|can not|will not) (?:eat|drink)|dizzy|confused|thunder\w*|storm)"
)

TABLE: tuple[tuple[Question, str], ...] = (
    (Question.AT, race.AT_PAST),
    (Question.REPORT, race.REPORT),
    (Question.COVER, crew.COVER),
    (Question.TOWARDS, crew.TOWARDS),
    (Question.TOLD, other.TOLD),
    (Question.MY_RACE, race.MY_RACE),
    (Question.GOALS, race.GOALS),
    (Question.CUT_OFF, race.CLOSES),
    (Question.DUTY, other.DUTY),
    (Question.USAGE, other.USAGE),
    (Question.SLOWER, race.SLOWER),
    (Question.LEAVES_NOW, race.LEAVES_NOW),
    (Question.HOW, other.HOW_PLAIN),
    (Question.TAKE_BACK, crew.TAKE_BACK),
    (Question.NUMBERS, other.NUMBERS),
    (Question.CARDS, other.CARDS),
    (Question.CARDS, remedy.REMEDY),
    (Question.RIDE, crew.RIDE),
    (Question.BRING, crew.WHO_HAS),
    (Question.PEOPLE, crew.PEOPLE),
    (Question.PICTURE, other.PICTURE),
    (Question.DARK, other.DARK),
    (Question.WAIT, crew.WAIT),
    (Question.MISSED, race.MISSED),
    (Question.CUT_OFF, race.CUT_OFF),
    (Question.LAST_STOP, race.LAST_STOP),
    (Question.DRIVE, crew.DRIVE),
    (Question.LEAVE, crew.LEAVE),
    (Question.MEETING, crew.MEETING),
    (Question.HEARD, race.HEARD),
    (Question.PLAN_GAP, race.PLAN_GAP),
    (Question.FOOD, crew.FOOD),
    (Question.BRING, crew.BRING),
    (Question.HOW, other.HOW),
    (Question.FINISH, race.FINISH),
    (Question.AT, race.AT),
    (Question.WHERE, race.WHERE),
    (Question.PLAN, race.PLAN),
    (Question.NEXT, race.NEXT),
)

_WALK = (
    r"(?:walk\w*|run|runs|running|hik\w*|go|goes|going|head|heads|heading|set off|setting off|jog\w*|climb\w*|"
    r"pop|pops|nip|drive up)"
)
_TO_HER = (
    r"(?:towards?|out (?:to|and) (?:meet|find|look)|to meet (?:her|she)|back (?:along|up|down) the|(?:up|along|"
    r"down) the "
    r"(?:hill|trail|path|course|track|route)|find (?:her|she)|look for (?:her|she)|in and (?:find|meet|look))"
)

SHORT = {"WE": _WE, "GO": _GO, "TROUBLE": _TROUBLE, "WALK": _WALK, "TOHER": _TO_HER}
