"""What a clause can't be, whatever the model makes of it: a false arrival ends an alarm, so hopes, questions, denials and
hearsay are looked for in the words before anything is taken for a check-in."""

from __future__ import annotations

import re
from functools import cache
from itertools import pairwise

from server.conversation.understanding import questions
from server.conversation.understanding.features import question_form, topics
from server.conversation.understanding.language import Matcher, lexicon, matcher
from server.conversation.understanding.sentence import (
    FINISH,
    LENGTH,
    NUMBER,
    PERSON,
    POINT,
    RUNNER,
    TIME,
    Sentence,
)

MOVES = {
    "in": ("arrive", "finish", "withus"), "out": ("leave",), "through": ("through",),
    "retired": ("ended", "dropped"), "sweep": ("sweep",), "resting": ("rest",), "moving": ("move",),
    "with_us": ("withus", "found"), "race_news": ("delayed",), "alarm_over": ("found",), "crew_there": ("arrive",),
    "crew_left": ("leave",), "cant_come": ("cant",), "can_come": ("cant",), "held_up": ("cant",),
    "race_control_told": ("knows", "control"),
}  # fmt: skip
"""Intents that state a fact, and the classes of the words that do so."""
ASKS_FOR = {
    "in": "when_there", "not_here_yet": "when_there", "finish": "finish", "out": "missed", "through": "missed",
    "sweep": "cut_off", "resting": "where", "moving": "where", "position": "where", "condition": "how_is_she",
    "crew_there": "people", "crew_left": "people", "retired": "heard", "with_us": "where", "note": "unknown_other",
    "race_news": "unknown_rules", "alarm_over": "who_knows", "race_control_told": "who_knows", "awake": "people",
}  # fmt: skip
"""What is asked by words that would report it, were they no question."""
HARD = frozenset({"in", "out", "through", "retired", "sweep", "with_us", "resting", "moving", "alarm_over"})
"""Of these a hope, an if or a denial is the opposite."""
_DONE = "<done>"
NEAR = 4
"""A word that denies stands no more words before what it denies."""


@cache
def _negatives() -> Matcher:
    """Phrases that say something happened by what did not ('did not stop', 'did not start')."""
    words = lexicon()
    neg = words.classes["neg"]
    kinds = (words.classes[k] for k in ("through", "ended", "dns", "byothers"))
    return matcher(p for m in kinds for p in m.whole if " " in p and any(neg.word(w) for w in p.split()))


def segments(said: Sentence) -> list[list[str]]:
    """The clause cut at 'and', 'but', in any language."""
    joins = lexicon().read["joins"]
    out: list[list[str]] = [[]]
    for w in said.masked:
        if joins.word(w):
            out.append([])
        else:
            out[-1].append(w)
    return [s for s in out if s]


def _of_kind(intent: str, said: Sentence) -> list[list[str]]:
    """The segments that say what the intent states; all of them where none does in so many words."""
    classes = [lexicon().classes[c] for c in MOVES.get(intent, ())]
    all_of_it = segments(said)
    return [s for s in all_of_it if any(c.has(s) for c in classes)] or all_of_it


def supposed(intent: str, said: Sentence) -> bool:
    """Whether what it would state is only hoped, guessed, planned or asked to be told."""
    nofact = lexicon().classes["nofact"]
    if said.times and any(t.ahead for t in said.times):
        return True
    if intent in ("retired",) and lexicon().classes["maystop"].has(said.masked):
        return True
    hits = _of_kind(intent, said)
    first = next(iter(segments(said)), [])
    return any(nofact.has(s) for s in (*hits, first[:3]))


def denied(intent: str, said: Sentence) -> bool:
    """Whether a word that denies stands shortly before what it would state."""
    neg = lexicon().classes["neg"]
    classes = [lexicon().classes[c] for c in MOVES.get(intent, ())]
    for s in _of_kind(intent, said):
        words = _negatives().without(s, _DONE) if intent in ("through", "retired") else s
        nots = neg.places(words)
        if not nots or _DONE in words:
            continue
        kinds = sorted({p for c in classes for p in c.places(words)})
        if not kinds or any(0 < k - n <= NEAR for n in nots for k in kinds):
            return True
    return False


def of_the_teller(said: Sentence) -> bool:
    """Whether somebody is said to tell of their own body: 'Tomas says his knee is done'."""
    row, own = list(said.masked), lexicon().read["his_own"]
    told = row[row.index(PERSON) + 1 :] if PERSON in row and not said.named else []
    bodily = any(own.word(a) and "body" in topics((b,)) for a, b in pairwise(told))
    return bodily and lexicon().subject["tells"].has(told)


def not_gone(said: Sentence) -> bool:
    """Whether it says that somebody has not left ('not gone yet', 'noch nicht weg'): no word of not having come."""
    return said.says("leave") and denied("out", said) and not said.says("arrive") and not said.asks


def of_another(said: Sentence) -> bool:
    """Whether it is said of a helper or of some other runner, and not of her."""
    if said.named:
        return False
    if _helper_is(said) or said.reads("unknown_one"):
        return True
    return not said.says("she") and (PERSON in said.masked or said.says("someoneelse"))


def of_a_man(said: Sentence) -> bool:
    """Whether some man is spoken of, and nobody that 'she' would stand for: 'he' after him is he."""
    return not said.named and said.reads("some_man") and not said.reads("she_alone")


def of_him(said: Sentence) -> bool:
    """Whether it speaks of a 'he' and of nobody else."""
    return not said.named and said.reads("he_alone") and not said.reads("she_alone")


def _helper_is(said: Sentence) -> bool:
    """Whether it begins with a helper's name and what that helper is or has: 'Jonas has gone grey and holds his chest'."""
    words = list(said.masked)
    while words and words[0] != PERSON and (n := lexicon().read["lead"].begins(words)):
        words = words[n:]
    return len(words) > 1 and words[0] == PERSON and lexicon().read["is"].begins(words[1:]) > 0


def helper_ends(said: Sentence) -> bool:
    """Whether it is a helper who stops by the words: 'she is in, Tomas is done'."""
    ends, row = lexicon().read["gives_up"].places(said.masked), list(said.masked)
    if PERSON not in row or not ends:
        return False
    between = row[row.index(PERSON) + 1 : ends[-1]]
    return row.index(PERSON) < ends[-1] and not any(
        w == RUNNER or lexicon().classes["she"].word(w) for w in between
    )


def not_her(said: Sentence) -> bool:
    """Whether it says that it is not she who is named: 'not Maren'."""
    neg = lexicon().classes["neg"]
    return any(neg.word(w) and nxt == RUNNER for w, nxt in pairwise(said.masked)) and len(said.runners) == 1


def of_a_thing(said: Sentence) -> bool:
    """Whether it begins with a thing, an animal or somebody at home: 'the dog is gone', 'both cars have left'."""
    if said.named or said.says("she"):
        return False
    words, read = list(said.masked), lexicon().read
    while words and not read["thing"].begins(words):
        n = read["article"].begins(words) or read["lead"].begins(words)
        if not n:
            return False
        words = words[n:]
    return bool(words)


def only_an_idiom(intent: str, said: Sentence) -> bool:
    """Whether the words that would state it are all of phrases that say something else: 'took her gloves off'."""
    rest = lexicon().read["idiom"].without(said.masked, _DONE)
    classes = [lexicon().classes[c] for c in MOVES.get(intent, ())]
    return _DONE in rest and not any(c.has(rest) for c in classes)


def can_but(said: Sentence) -> bool:
    """Whether what somebody can't do is all of phrases that keep nobody from coming: 'can't complain'."""
    rest = lexicon().read["cant_but"].without(said.masked, _DONE)
    return _DONE in rest and not lexicon().read["wont_come"].has(rest)


def of_a_bib(said: Sentence) -> bool:
    """Whether it is said of a bib that nobody here has: '87 dropped here', 'the mill: 87 10.02', 'number 88 is through'."""
    if said.named:
        return False
    row = list(said.masked)
    if strange_bib(said):
        return True
    while len(row) > 1 and (row[0] in (POINT, FINISH) or lexicon().read["at"].word(row[0])):
        row = row[1:]
    moved = len(row) < len(said.masked)
    return len(row) > 1 and row[0] == NUMBER and (not moved or row[1] == TIME)


_BIB = re.compile(r"#?\d{2,5}")


def strange_bib(said: Sentence) -> str:
    """A number of nobody here that is said to go somewhere ('241 went through', 'Nummer 88 ist durch'); '' for none."""
    if said.named:
        return ""
    read, classes, counted = lexicon().read, lexicon().classes, said.masked.count(NUMBER)
    goes = [classes[c] for c in ("through", "arrive", "leave", "ended", "dropped")]
    for i, w in enumerate(said.masked):
        if w != NUMBER or i + 1 >= len(said.masked):
            continue
        marked = i > 0 and read["bib_mark"].word(said.masked[i - 1])
        if i and not marked and said.says("she"):
            continue
        rest = said.masked[i + 1 :]
        acts = read["is"].begins(rest) or read["bib_does"].begins(rest) or any(g.begins(rest) for g in goes)
        if not acts or not (marked or counted == 1):
            continue
        bibs = [x for x in said.plain if _BIB.fullmatch(x)]
        if marked or len(bibs) == 1:
            return bibs[0].lstrip("#") if bibs else ""
    return ""


def of_the_last(said: Sentence) -> bool:
    """Whether it is said of the last runner, of the first or of all of them: 'last one in 9.28'."""
    return not said.named and not said.reads("she_alone") and said.reads("last_or_first")


def asks(said: Sentence) -> bool:
    """Whether it is put as a question, or ends as one does ('… hasnt she', '… ja oder nein')."""
    tags = lexicon().read["tags"]
    row = list(said.masked)
    return question_form(said) or any(tags.at(row, i) == len(row) - i for i in range(1, len(row)))


def told_by_others(said: Sentence) -> bool:
    """Whether it is hearsay."""
    return said.says("hearsay")


def as_asked(intent: str, said: Sentence) -> str:
    """The intent; of one that reports, in a clause put as a question, the question whether it is so; 'got her' of no place
    is that she is with them."""
    if question_form(said):
        return ASKS_FOR.get(intent, intent)
    return "with_us" if intent == "in" and said.reads("got") and said.point is None else intent


def states(said: Sentence) -> bool:
    """Whether it is put as a statement ('she is …', 'bin …') and asks nothing anywhere."""
    read = lexicon().read
    if said.asks or read["question"].has(said.masked):
        return False
    words = list(said.masked)
    while words and (n := read["lead"].begins(words)) and not read["states"].begins(words):
        words = words[n:]
    if words and words[0] == RUNNER and len(words) > 1:
        words = words[1:]
        return read["is"].begins(words) > 0
    return read["states"].begins(words) > 0


def of_writer(said: Sentence) -> bool:
    """Whether somebody says it of themselves ('i am …', 'wir sind …'), and nothing of her."""
    if said.named or said.says("she"):
        return False
    read = lexicon().read
    words = list(said.masked)
    while words and not read["i_am"].begins(words) and (n := read["lead"].begins(words)):
        words = words[n:]
    return read["i_am"].begins(words) > 0


def _has_question_word(said: Sentence) -> bool:
    return any(said.says(c) for c in ("what", "who", "why", "when", "where", "how", "howfar"))


def asks_something(said: Sentence) -> bool:
    """Whether it is put as a question, or holds a word that asks."""
    return asks(said) or _has_question_word(said)


def _only_tell_me(said: Sentence) -> bool:
    """Whether the one word that wants something told wants it told the writer: 'tell me it is me'."""
    left = lexicon().read["tell_me"].without(said.masked, _DONE)
    return _DONE in left and not lexicon().classes["tell"].has(left)


def _so_long_already(said: Sentence) -> bool:
    """Whether words that may say that she goes on say how long something has lasted: 'a sit down, going on 20 min now'."""
    row, so_long = list(said.masked), lexicon().read["so_long_already"]
    ends = (k + so_long.begins(row[k:]) for k in range(len(row)) if so_long.begins(row[k:]))
    return any(row[end : end + 1] == [LENGTH] for end in ends)


def _off_again(said: Sentence) -> bool:
    """Whether the rest that is told of is over: 'pause de 10 min, là ça repart', and not 'off again in ten'."""
    row = list(said.masked)
    at, rest = lexicon().read["off_again"].places(row), lexicon().classes["rest"].places(row)
    return bool(at and rest) and rest[0] < at[-1] and not {LENGTH, TIME} & set(row[at[-1] :])


def _asks_what(said: Sentence) -> bool:
    """Whether it begins with a word that asks for a thing, a place or somebody, behind words that lead up to it."""
    words, lead = list(said.masked), lexicon().read["lead"]
    while words and (n := lead.begins(words)):
        words = words[n:]
    return bool(words) and any(
        lexicon().classes[c].word(words[0]) for c in ("what", "who", "why", "when", "where")
    )


_OF_THE_FILE = frozenset({"start_time", "clock", "course_ahead", "my_reports", "clothing"})
_OF_WAITING = ("yet", "arrive", "see", "through", "lost", "missed", "wait", "sweep", "news", "they")
"""Words of which one stands in what says that she has not come."""
NUMBERS_MAX = 5
"""So many words ask for a telephone number without the form of a question ('race control number please')."""
TALKED_OF = frozenset({"dark", "unknown_weather"})
"""What people speak of without asking anything."""
_TIMED = frozenset({"in", "out", "through"})
_GOES = frozenset({"in", "out", "through", "resting", "moving", "retired", "sweep", "with_us"})
_OF_CREW = frozenset({"crew_there", "crew_left"})
_OF_HER = HARD - {"sweep", "alarm_over"}
_HERS = HARD | {"position", "condition", "not_here_yet"}


def may_be(intent: str, said: Sentence, *, foot: bool) -> bool:
    """Whether the words allow an intent. `foot`: the writer is on the course, and may speak of their own race."""
    if intent in _HERS - {"alarm_over"} and not foot and of_writer(said):
        return False  # the first person is the writer, never her
    if intent == "crew_left" and said.reads("left_thing"):
        return False  # 'left the van up on the lane'
    if intent in _HERS - {"alarm_over"} and not foot and said.reads("i_have_not") and not said.says("see"):
        return False  # 'I have not run a step yet'
    if intent in _OF_CREW and said.named and not (said.says("i") or said.says("we")):
        return False
    if intent in questions.OF_INTENT and intent != "complaint" and states(said):
        return False  # a question needs the form of one
    if (
        intent in _OF_THE_FILE
        and (said.says("she") or said.named)
        and not (asks(said) or _has_question_word(said))
    ):
        return False  # 'her lips look blue' does not ask what she wears
    if intent in _OF_HER | {"hearsay", "condition"} and of_the_teller(said):
        return False
    if intent in ("retired", "hearsay") and said.says("undo"):
        return False  # 'ignore the page that has her out' says that she is not
    if intent == "pass_message" and (_asks_what(said) or said.reads("tell_not") or _only_tell_me(said)):
        return False  # 'what did they tell him' wants nothing told, 'don't tell her' least of all
    if intent == "race_control_told" and said.reads("told_me"):
        return False  # 'a woman from the race office just told me' says what she told, not that they know
    if intent in ("out", "through", "moving") and _so_long_already(said):
        return False
    if intent == "resting" and _off_again(said):
        return False
    if intent == "drive_takes" and asks(said):
        return False  # 'it is only half an hour to the mill isn't it'
    if intent in ("resting", "condition") and said.says("you") and not (said.named or said.says("she")):
        return False  # 'go and have a lie down, you have earned it'
    if intent == "what_if" and said.reads("by_car") and not asks_something(said):
        return False  # 'nearly hit a deer, all good, driving slower now'
    if intent == "cut_off" and said.reads("of_a_road"):
        return False  # 'what time do they shut the road'
    if intent == "not_here_yet" and not any(said.says(c) for c in _OF_WAITING) and not said.reads("here"):
        return False  # that something is not so says nothing of where she is
    if intent == "numbers" and not question_form(said) and len(said.masked) > NUMBERS_MAX:
        return False  # a number in a story asks for none
    if intent in MOVES:
        if question_form(said):
            return False
        if intent in HARD and of_another(said):
            return False
        if intent in _OF_HER and of_the_last(said) and not foot:
            return False
        if intent in _TIMED and (of_a_bib(said) or said.masked.count(NUMBER) > 1):
            return False  # 'at the ford: 5, 22, 61' is others' bibs; a list of known ones is read before
        if intent in _GOES and (of_a_thing(said) or only_an_idiom(intent, said)):
            return False
        if intent in HARD and (supposed(intent, said) or denied(intent, said)):
            return False
    if intent == "condition" and (of_another(said) or of_a_bib(said) or said.reads("quoted")):
        return False
    if intent == "resting" and said.reads("only_wished"):
        return False  # 'she wants to sit down every ten minutes' is no rest yet
    if intent == "condition" and of_a_man(said) and said.says("she"):
        return False  # 'the man on the gate wants a tenner, is he serious'
    if intent == "cant_come" and can_but(said):
        return False
    if intent == "sweep" and of_the_last(said) and not said.says("sweep"):
        return False  # 'le dernier est passé' is a runner
    if intent == "sweep" and said.reads("sets_off"):
        return False  # who sets off at eight has passed nobody
    if intent == "not_here_yet" and said.reads("still_there") and not said.says("neg"):
        return False  # 'she is still behind the toilets' is no word of waiting for her
    if intent == "not_here_yet" and said.says("sweep") and not said.says("she") and not said.named:
        return False  # that the sweep is still to come says nothing of her
    return not (intent == "not_here_yet" and (question_form(said) or of_a_thing(said) or not_gone(said)))
