"""Whether words say that somebody is in danger: by rule or by model, either is enough. Three tiers: a call for help; the
number first, with the question whether somebody is in danger; the number as the last line of an ordinary reply."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from server.conversation.understanding import subject
from server.conversation.understanding.clauses import Clauses, pieces_of
from server.conversation.understanding.features import key, question_form, topics
from server.conversation.understanding.language import Matcher, lexicon
from server.conversation.understanding.meaning import Danger
from server.conversation.understanding.model import model
from server.conversation.understanding.policy import policy
from server.conversation.understanding.sentence import POINT, Sentence
from server.conversation.understanding.subject import Whose
from server.event.model import PartKind

ON_FOOT = frozenset({PartKind.RUNNER, PartKind.PACER})
_REACH = 4
"""A word that denies stands at most so many words before what it denies."""


@dataclass(frozen=True, slots=True)
class DangerHeard:
    """What a message says of danger. `clause` the one that says it; `by_self` whether by who runs, of themselves; `whose`
    danger it is, of a writer who is not on the course."""

    danger: Danger
    clause: Sentence | None = None
    by_self: bool = False
    whose: Whose = Whose.OPEN
    score: float = -math.inf
    """The highest that the model gave to any clause."""


def _undenied(says: Matcher, words: Sequence[str]) -> bool:
    """Whether it is said, and not that it is not so: 'no chest pain'."""
    deny, gap = lexicon().danger["deny"], lexicon().danger["gap"]
    for at in says.places(words):
        back = at - 1
        while back >= max(0, at - _REACH) and gap.word(words[back]):
            back -= 1
        if back < 0 or back < at - _REACH or not deny.word(words[back]):
            return True
    return False


def by_rule(plain: Sequence[str], *, own: bool) -> Danger:
    """What the words alone say of one clause; `own`: a runner or pacer of themselves."""
    danger = lexicon().danger
    words = danger["harmless"].without(plain, "<harmless>")
    if _undenied(danger["alarm"], words) or " ".join(plain) in danger["alone"].whole:
        return Danger.ALARM
    if own and _undenied(danger["own"], words):
        return Danger.ASK if danger["relief"].has(words) else Danger.ALARM
    return Danger.ASK if _undenied(danger["ask"], words) else Danger.NONE


def by_model(score: float, *, own: bool) -> Danger:
    """What the model's score for danger says. It wakes everybody for whoever writes of themselves, with a word of a red flag
    (`own`); of somebody else it asks, since whoever is with her answers at once."""
    p = policy()
    if own and score >= p.alarm:
        return Danger.ALARM
    return Danger.ASK if score >= p.ask else Danger.DOUBT if score >= p.doubt else Danger.NONE


_RANK = {d: rank for rank, d in enumerate(Danger)}


def _sure_of_none(ruled: Danger, *, unreal: bool) -> float:
    """Below which score of the model, of the clause and of the whole, words that a rule looks for are no danger: far below
    any grave sentence of a hand it had not seen, and farther where the words call for help."""
    p = policy()
    return p.none if ruled is Danger.ALARM and not unreal else p.wonder


def _is_figure(plain: Sequence[str], *, own: bool) -> bool:
    """Whether all that a rule looks for is said of other things as well: 'dying for a coffee', 'emergency: no paper left'.
    Whether it is, here, the model says."""
    figure = lexicon().danger["figure"]
    rest = [w for w in figure.without(plain, "<figure>") if not figure.word(w)]
    return by_rule(rest, own=own) is Danger.NONE


_CRY_MAX = 2
"""So many words, and no more, are a cry and no talk (own choice)."""


def _unreal(text: str) -> bool:
    """Whether a message says itself that it speaks of a drill, a joke or another year: the number and the question do."""
    return _undenied(lexicon().danger["unreal"], lexicon().words(text))


def _without_places(piece: str, clauses: Clauses) -> Sequence[str]:
    """The words of a clause with a stand-in for the point that it surely names: what a place is called is no danger, nor
    that it can't be seen from elsewhere."""
    said = clauses.of(piece)
    if said.point is None or said.point.score < SURELY_NAMED:
        return said.plain
    return (*said.plain[: said.point.start], POINT, *said.plain[said.point.end :])


SURELY_NAMED = 100.0
"""A name as it is written in the event file; of one with a slip in it every word is looked at."""


def hear(text: str, clauses: Clauses, *, judged: int) -> DangerHeard:
    """The worst that any clause says; the first `judged` clauses and the whole are shown to the model, all to the rules."""
    foot, p = bool(clauses.ctx.parts & ON_FOOT), policy()
    found_of: list[DangerHeard] = []
    highest = -math.inf
    pieces = pieces_of(text)
    if len(pieces) > 1 and judged:
        pieces.append(text)
    words = lexicon().words(text)
    unreal, well = _unreal(text), lexicon().danger["well"].has(words)
    she, danger = lexicon().classes["she"], lexicon().danger
    light = danger["light"].has(words)
    for number, piece in enumerate(pieces):
        plain = _without_places(piece, clauses) if number < judged else lexicon().words(piece)
        whole = piece is text and number > 0
        own = foot and not she.has(plain)
        cry = danger["cry"].has(plain)
        ruled = Danger.NONE if whole else Danger.ALARM if foot and cry else by_rule(plain, own=own)
        if ruled is Danger.ALARM and well and not cry and by_rule(plain, own=False) is not Danger.ALARM:
            ruled = Danger.ASK  # 'lost a shoe in the bog, laughed so hard. all good'
        found, certain = ruled, foot and ruled is Danger.ALARM
        if number < judged or whole:
            said = clauses.of(piece)
            own = own and not said.named
            # Nonsense has a score too, and 'all good' is how somebody says that it is over: neither is danger unless a
            # rule says so.
            told = any(
                w.isalpha() and model().knows(key(f"w{w}")) for w in said.masked
            )  # a bib alone tells nothing
            if told and not danger["relief"].has(plain):
                score = float(clauses.scores(said)[-1])
                highest = max(highest, score)
                hers = said.named or she.has(plain)
                most = max(score, float(clauses.scores(clauses.of(text))[-1]))
                talk = not hers and (not own or light) and (foot or unreal or not subject.whose(said).apart)
                if found is Danger.ALARM and not (own or (foot and cry)) and said.reads("if_so"):
                    found, certain = Danger.ASK, False  # 'if she collapses on me I am not carrying her'
                if found is Danger.ALARM and not foot and (unreal or (talk and most < p.joke)):
                    # 'Heart attack when I saw the price': the number and the question stand in the reply all the same.
                    found, certain = Danger.ASK, True
                # 'Feet hurt' from who runs is asked about: the model alone wakes nobody over words known to be harmless.
                wakes = own and not well and not danger["harmless"].has(plain)
                wakes = wakes and any(t.startswith("red") for t in topics(said.masked))
                talk = talk and (light or unreal or (len(words) > _CRY_MAX and _is_figure(plain, own=own)))
                if found is Danger.ASK and talk and most < _sure_of_none(ruled, unreal=unreal):
                    found, certain = Danger.NONE, False
                seems = by_model(score, own=wakes)
                if (
                    seems is not Danger.ALARM
                    and ruled is Danger.NONE
                    and (light or unreal)
                    and most < p.light
                ):
                    seems = Danger.NONE  # 'phone nearly dead, no drama'
                found = max(found, seems, key=_RANK.__getitem__)
        if found is Danger.NONE:
            continue
        said = clauses.of(piece)
        # A form without its mark lets off only what no rule found: many words begin as a question does in another language.
        lets_off = said.asks if found is ruled else question_form(said)
        if own and found is ruled and not _is_figure(plain, own=True):
            lets_off = False  # 'is pee like cola normal?' of who runs tells of her
        if lets_off and not certain and highest < p.sure:
            found = Danger.ASK if found is Danger.ALARM else Danger.NONE
        of_self = own or (cry and not said.named and not she.has(plain))
        whose = _whose(piece, pieces, clauses, foot=foot, own=cry or said.says("i") or said.says("we"))
        before = next((h for h in reversed(found_of) if h.danger.grave), None)
        if before is not None and before.whose.apart and whose is Whose.HERS and not (said.named or whole):
            whose = before.whose  # 'a woman has collapsed, she is unconscious'
        found_of.append(DangerHeard(found, said, of_self, whose))
    if found_of and any(subject.denies_her(clauses.of(p)) for p in pieces[:judged]):
        # 'Not Maren! A marshal. Ambulance is coming': what does not say whose it is is not hers.
        found_of = [replace(h, whose=Whose.STRANGERS) if _says_no_one(h) else h for h in found_of]
    return replace(_worst(found_of), score=highest)


def _says_no_one(heard: DangerHeard) -> bool:
    """Whether a clause that sounds like danger names nobody: no runner, no 'she', no 'I'."""
    said = heard.clause
    spoken = said is None or said.named or said.says("she") or said.says("i")
    return not spoken or (said is not None and subject.denies_her(said))


def _whose(piece: str, pieces: Sequence[str], clauses: Clauses, *, foot: bool, own: bool) -> Whose:
    """Whose danger a clause is of. Of who is on the course it is theirs, unless it surely tells of somebody else."""
    if not foot:
        whole = piece is pieces[-1] and len(pieces) > 1
        return _of_whole(pieces, clauses) if whole else subject.whose(clauses.of(piece))
    said = clauses.of(piece)
    apart = subject.denies_her(said) or lexicon().subject["stranger"].has(said.masked)
    return Whose.STRANGERS if apart and not own and subject.whose(said) is Whose.STRANGERS else Whose.HERS


def _of_whole(pieces: Sequence[str], clauses: Clauses) -> Whose:
    """Whose danger a message of several clauses is of, of which none says it alone: hers, where any speaks of her."""
    said = [clauses.of(p) for p in pieces[:-1]]
    if any(s.named and not subject.denies_her(s) for s in said):
        return Whose.HERS
    return next((w for w in map(subject.whose, said) if w is not Whose.OPEN), Whose.OPEN)


def _worst(found: Sequence[DangerHeard]) -> DangerHeard:
    """The worst of what is heard, first of her: of somebody else nobody is called to her, it is asked. What does not say
    whose it is goes with what does."""
    apart = next((h.whose for h in found if h.danger.grave and h.whose.apart), None)
    hers = any(h.whose is Whose.HERS and h.danger.grave for h in found)
    if apart is not None and not hers:
        found = [replace(h, whose=apart) if h.whose is Whose.OPEN else h for h in found]
    asked = [replace(h, danger=Danger.ASK) if h.whose.apart and h.danger.grave else h for h in found]
    return max(asked, key=lambda h: (_RANK[h.danger], not h.whose.apart), default=DangerHeard(Danger.NONE))
