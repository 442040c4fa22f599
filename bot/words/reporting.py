"""Reports in free text: 'in at mill 5 to 3', 'saw her on the ridge road going up', 'hasn't peed since noon'.

Sentences come tidied, with names replaced as for questions and the time cut out. The first line of the
table that fits says which kind of entry it is. Words that mislead ('out', 'dropped', 'pulled') are left to
be asked back.
"""

from __future__ import annotations

import re

from bot.words.patterns import pattern
from server.facts.entry import Kind, Retired

_LOOKS = (
    r"(?:rough|tired|strong|good|great|fine|well|bad|happy|sad|fresh|fed up|low|cold|hot|hurting|limp\w*|shuffl\w*|"
    r"struggl\w*|suffer\w*|cheer\w*|smil\w*|moan\w*|knackered|shattered|steady|wobbl\w*|confused|grumpy|miserable|"
    r"awful|terrible|ok|drained|chatty|pale|sore)"
)
_CONDITION = pattern(
    r"""
    \b(eat|eating|eaten|ate|drink|drinking|drank|peeing|weed|wee|urine|feet|foot|blisters?|toe\w*)\b
    \b(mood|spirits|morale|clear ?headed|headed|lucid|energy|hydrat\w*|headache|sunburn\w*|temperature)\b
    \b(sick|vomit\w*|threw up|throwing up|puk\w*|nause\w*|stomach|tummy|dizzy|hallucinat\w*|seeing things)\b
    \b(legs?|knees?|ankle|quads?|calf|calves|cramp\w*|chaf\w*|shiver\w*|cold hands|sleepy|confus\w*)\b
    \b(coughing|breath\w*|in pain|fine in herself|smiling|crying|in tears|limping)\b
    \b(looks?|looking|feels?|feeling|seems?|seemed|looked|felt|is|in) (\w+ ){0,2}LOOKS\b
    \b(running|moving|going|walking|doing) (\w+ )?LOOKS\b
    \b(good (spirits|form|shape)|bad (way|shape))\b
    \b(slipped|fell|fallen|tripped|cut her|medics?|not well|unwell)\b
    \bpulled (a |her )?(muscle|hamstring|calf|groin|quad|ligament|something)\b
    \b(talking|speaking|making) (\w+ )?(rubbish|nonsense|gibberish|sense)\b
    \bout of (it|breath|sorts|energy|puff|steam)\b
    \ball (is )?(good|fine|ok|well)\b.*\bfalse alarm\b
    \bfalse alarm\b.*\b(all|i am) (is )?(good|fine|ok|well)\b
    ^(she )?(is )?(so |very |really |bit |a bit |too |still |quite |just )*(LOOKS|thirsty|hungry|starving|wet|\
      dehydrated|exhausted|\
      wrecked|broken|bonking|bonked)( now| today| but ok| again)?$
    ^(she )?(needs|wants|would like|is asking for|asks for)\s
    """,
    {"LOOKS": _LOOKS},
)

_TABLE: tuple[tuple[Kind, str], ...] = (
    (
        # Before 'not here yet': the sweep coming through without her is the worse news of the two.
        Kind.SWEEP_THROUGH,
        r"""
        \b(sweep|sweeps|sweeper|sweepers|tail ?runners?|broom wagon|back marker)\b(?:(?! not ).)*\b(through|past)\b
        """,
    ),
    (
        Kind.NOT_HERE_YET,
        r"""
        \bnot (here|in|arrived|there|seen|come|been|shown|at PT|appeared)\b.* yet\b
        \bno sign\b
        \bnot (yet |here |there )?with (us|me)\b
        \b(is )?(still|yet) (not|no|nothing|waiting|to (come|arrive|appear|show))\b
        \b(has|have|did|is|was) not (yet )?(arrived?|come|been|seen|show\w*|turn\w*|appear\w*|here|in)\b
        \bnothing (here )?yet\b
        \bnobody (yet|through|here)\b
        \bnot yet (here|in|at|arrived|seen|come)\b
        \b(nobody|no one|noone|none of us) (here )?(has |have |had )?(seen|saw|spotted)\b
        \bnot seen (her|she)\b
        \bno show\b
        \bnever (arrived|came|showed|turned|got|made it)\b
        \bnot (yet )?(been |gone |come |got |go |be )?(through|past|by)\b
        \bno she( yet| so far| here)?$
        \b(not|never|nobody|no one|noone) (\w+ )?(seen|saw|spotted|met)\b(?!.*\bsince\b)
        \bnot (here|arrived|shown)\b
        \bno runner\b
        \bwaiting for (her|she)\b
        """,
    ),
    (
        Kind.SWEEP_THROUGH,
        r"""
        \b(sweep|sweeps|sweeper|sweepers|tail ?runners?|broom wagon|back marker|tail end charlie)\b(?!.*\bnot\b)
        """,
    ),
    (
        Kind.RACE_CONTROL_TOLD,
        r"""
        \b(told|called|rang|rung|informed|phoned|spoke to|spoken to|notified|let) (\w+ )?(\w+ )?race control\b
        \brace control (knows?|told|informed|is aware|has been told|been told)\b
        """,
    ),
    (
        Kind.IN_HAND,
        r"""
        \b(have|got|has) (her|she) (safe |safely )?(in|into) (the|our|my) (car|van)\b
        \bpicked (her|she) up\b
        \b(her|she) is (safe )?(in the (car|van)|with (us|me) in|safe with)\b
        \bin hand\b
        \b(she|her) (is )?safe and (sound|well)\b
        \b(we|i) (have|have got|got) (her|she)( now| safe| safely| with us| here)?( and\b.*)?$
        GOTHER
        """,
    ),
    (
        Kind.STAND_DOWN,
        r"""
        ^(it (is|was) )?(a )?false alarm$
        ^(the )?alarm (is )?(over|off|cancelled)$
        ^(cancel|end|stop) the alarm$
        ^FINE(stand(ing)? down|all clear)( everyone| everybody| all| the alarm| now)?( (for |about )?(she|her))?FINALLY$
        ^call off the (search|alarm)$
        """,
    ),
    (
        Kind.START_DELAYED,
        r"""
        \bstart (is |has been |was )?(delayed|put back|moved|postponed|pushed|late)\b
        \bdelayed start\b
        """,
    ),
    (
        Kind.HELD,
        r"""
        \brunners? (are |is )?(being )?held\b
        \brace (is )?(held|paused|on hold)\b
        \bholding (the )?runners\b
        """,
    ),
    (
        Kind.RELEASED,
        r"""
        \brunners? (are |is )?(released|let go)\b
        \brace (is )?(back on|resumed)\b
        """,
    ),
    (
        Kind.THROUGH,
        r"""
        \bthrough\b
        \b(did|does) not (even |really |want to )?stop\b
        \bwithout stopping\b
        \b(ran|went|flew|blew|run|gone|goes|shot|cruised|breezed) (straight |right )?(past|by)\b
        \bno stop\b
        """,
    ),
    (
        Kind.MOVING_AGAIN,
        r"""
        \b(off|up|going|moving|walking|running|started|start|on the move|on) again\b.*\b(nap|rest|sleep|\
          break|sit|lie)\b
        \b(after|from) (her|a|the|she) (nap|rest|sleep|break|sit|lie|kip)\b
        \b(moving|walking|running|going|on the move) again\b
        \bon the move\b
        \b(woke|woken|wakes|awake now)\b
        \bback on her feet\b
        \bresum\w+\b
        \bup and (moving|running|going|about)\b
        ^moving$
        """,
    ),
    (
        Kind.RESTING,
        r"""
        \b(rest|rests|resting|nap|naps|napping|sleep|sleeps|sleeping|asleep|kip|dozing|snooze|snoozing|\
          shut ?eye)\b
        \b(lying|lie|lies|laid) down\b
        \b(sat|sitting|sits|sit) (down|by|at|on|under|in)\b
        \bhaving a (break|sit|breather|lie|minute|5)\b
        \btaking a (break|breather|5)\b
        \bstopped (for|to) (a|\d+|LENGTH|change|fix|tape|eat)\b
        \bpaus\w+\b
        """,
    ),
    (
        Kind.POSITION,
        r"""
        \b(saw|seen|spotted|sighted|overtook|overtaken|met|noticed|bumped into|walked past|ran past|\
          came across|ran into)\b
        \b(passed|walked with|talked to|spoke to|caught) (her|she)\b
        """,
    ),
)


_STAND_DOWN = {
    "FINE": r"(?:(?:ok|yes|no|all|she|her|it|everything|is|has|good|fine|clear|and|so|now|with) )*",
    "FINALLY": r"(?: (?:all|she|her|everything|is|good|fine|ok|and|with))*",
}
_GOT_HER = (
    r"^(?:(?:yes|ok|right|now|and|phew|finally|at last|good news|all good|just) )*(?:(?:we|i) )?(?:have |now |just |both )*"
    r"(?:have|got|found) (?:her|she)(?: (?:now|here|back|again|at last|finally|with us|with me|at PT|at FINISH))*"
    r"(?: (?:and|she is)\b.*)?$"
)
_REPORTS = tuple((kind, pattern(lines, {**_STAND_DOWN, "GOTHER": _GOT_HER})) for kind, lines in _TABLE)
_HAS_HER = re.compile(_GOT_HER)
_IS_WITH_US = re.compile(
    r"\b(?:she|her) is (?:(?:now|here|back|just|safely|finally|already|in) )*with (?:us|me)\b"
)

_OUT = pattern(r"""
    \bout (of|from)\b
    \b(is |has |just |she )*(left|leaving|leaves|departed|departing|departs)\b
    \b(heading|headed|heads|head|moving|going|gone|setting|set|off|took|moved|went|goes) (out|off|on|for|\
      to|away|again)\b
    \b(on her way|away|gone|underway|under way)\b
    \bout\b
    \boff\b
""")
_IN = pattern(r"""
    \b(arrived|arrives|arriving|here|reached|landed|turned up|rocked up|checked in|made it|appeared|\
      showed up)\b
    \b(got|gets|get|coming|come|came|comes|just|is|been|rolled|strolled|pulled|pulling|walked|ran|now|\
      back) in\b
    \b(got|gets|gotten) (here|to|there|into)\b
    \b(has|just|she) got to\b
    \bwith (us|me)\b
    \b(is|now|she|just|been) at (PT|FINISH|the)\b
    \bat (PT|FINISH)\b
    \bin\b
    \bfinish(ed|es)?\b
    \bhome\b
""")
_CREW = pattern(r"""
    \b(we|i|crew|car) (are|am|is|have|has)?\s?(\w+ )?(at|arrived|here|parked|there|in position|set up|\
      ready at|got to)\b
    ^(parked|parked up|in position|set up|here now|on site|crew here|crew there)\b
    \b(we|i) (got|made it) (to|here|there)\b
""")
_CREW_OFF = pattern(r"""
    \b(we|i|crew) (are|am|have|is|has)?\s?(\w+ )?(leaving|left|off|set off|setting off|driving|heading|\
      moving on|on our way|on my way|departed|on the road)\b
    ^(leaving|on our way|on my way|driving(?! time)|heading|setting off|set off|heading off|en route|\
      on the road|\
      moving on)\b
""")

_ENDED = pattern(r"""
    \b(retired|retires|retiring|retirement|dnf|withdrawn|withdrew|withdraws|withdrawing|quit|quits|quitting)\b
    \bout of the race\b
    \b(her )?race is over\b
    \b(binned|bins|binning|chucked|thrown|jacked) (it|in)\b
    \b(thrown|throwing|threw) in the towel\b
    \bbailed\b
    \b(given|giving|gave|gives) up\b
    \b(packed|packing|called|calling|jacked) it (in|a day|quits)\b
    \b(done|finished) for the (day|night)\b
    \b(timed|time) out\b
    \bmissed (the |her )?cutoff\b
    \bdropped out\b
    \b(dns|not starting|will not start|is not going to start|not going to start)\b
    \bstopped for good\b
    \b(medics?|doctors?|officials?|marshals?) (will not|are not|is not|did not|have not) (let|letting|allow)\b
    \bnot allowed (to )?(go on|continue|carry on|out)\b
    \b(hung up|hanging up) her\b
    \b(pulled|taken|took|pulling|stopped|withdrawn) (\w+ ){0,4}(out )?by (the )?(\w+ )?(medic|doc|doctor|official|\
      marshal|race|organis)\w*
    \b(medics?|doctors?|officials?|marshals?|race control|doc|organis\w+) (\w+ )?(pulled|stopped|withdr\w+|\
      took|taken|dropped|have taken|has taken)\b
""")
_BY_OTHERS = re.compile(
    r"\b(?:medics?|medical|doctors?|doc|officials?|marshals?|race control|organis\w+|withdrawn by|safety team)\b"
)
_TIMED = re.compile(r"\b(?:tim(?:e|ed) out|cutoff|out of time|too slow|swept)\b")
_DNS = re.compile(r"\b(?:dns|not starting|not start|not going to start)\b")
_OWN = re.compile(
    r"\b(?:own (?:choice|decision|call)|decided|decision|choice|wants|wanted|enough|herself|quit|given up|gave up)\b"
)
_DROPPED = re.compile(
    r"\b(?:dropped|drops|dropping|pulled|pulling|pulls|stopped|stopping|had enough|is done|done|finished)\b"
)
# 'dropped her bottle', 'pulled a muscle', 'dropping into Brindle', 'stopped her watch': nobody's race is over.
_DROPPED_THINGS = re.compile(
    r"\b(?:dropped|dropping|drops|pulled|pulling|pulls|stopped|stopping) "
    r"(?:(?:her|the|my|our|a|an|his|some|it) (?!out)\w+"
    r"|(?:down |back )?(?:in|into|to|towards|down to|behind|back)\b|\w+ away)"
)


def patterns() -> tuple[re.Pattern[str], ...]:
    """Every pattern of this room's reports: for those who ask which words are known at all."""
    return (*(p for _, p in _REPORTS), _CONDITION, _OUT, _IN, _CREW, _CREW_OFF, _ENDED)


def kind_in(text: str) -> Kind | None:
    """The kind of report a tidied sentence (names and time replaced) is, but for in, out and retired."""
    return next((kind for kind, says in _REPORTS if says.search(text)), None)


_SWEEP_TO_COME = re.compile(
    r"\b(?:sweep|sweeps|sweepers?|tail ?runners?|broom wagon|back marker)\b"
    r".{0,12}\bnot\b.{0,24}\b(?:through|past|here|come|came|arrived|been|in)\b"
)


def has_her(text: str) -> str:
    """'got' where the writer says that they have her, 'here' where that she is with them; '' for anything else. What that
    means is for the state of her race to say."""
    if _HAS_HER.search(text):
        return "got"
    return "here" if _IS_WITH_US.search(text) else ""


def is_sweep_to_come(text: str) -> bool:
    """Whether it says that the sweep has not been yet, which says nothing of her."""
    return _SWEEP_TO_COME.search(text) is not None and kind_in(text) is not Kind.SWEEP_THROUGH


_BACK_ON_COURSE = pattern(r"""
    \bback on (the |my )?(right )?(course|route|trail|path|way|track)\b(?! record)
    \b(found|find) (the |my |our )?(path|way|trail|course|route|track|markers?|markings?)\b
    \b(no longer|not) lost\b
    \b(on our way|on my way|under ?way) again\b
""")
_NOT_BACK = re.compile(
    r"\b(?:can not|not (?:yet )?(?:back|found)|unable to|try\w* to|hope\w*|never|nobody|nothing)\b"
)
_ALL_FINE = re.compile(
    r"\b(?:all|i am|am|everything|feel\w*) (?:\w+ )?(?:good|fine|ok|well)\b|\b(?:fine|ok|good) now\b"
)


def says_back_on_course(text: str) -> bool:
    """Whether somebody who was off the course says to be on it again."""
    return _BACK_ON_COURSE.search(text) is not None and _NOT_BACK.search(text) is None


def says_all_fine(text: str) -> bool:
    """Whether the writer says that they themselves are well."""
    return _ALL_FINE.search(text) is not None


def says_out(text: str) -> bool:
    """Whether it says that she left."""
    return _OUT.search(text) is not None


def says_in(text: str) -> bool:
    """Whether it says that she arrived."""
    return _IN.search(text) is not None


def says_crew_there(text: str) -> bool:
    """Whether the writer says that they themselves have arrived."""
    return _CREW.search(text) is not None


def says_crew_off(text: str) -> bool:
    """Whether the writer says that they themselves are leaving."""
    return _CREW_OFF.search(text) is not None and not re.search(r"\b(?:she|her)\b", text)


def says_ended(text: str) -> bool:
    """Whether it says plainly that her race is over."""
    return _ENDED.search(text) is not None


def ended_words(text: str) -> str:
    """The words that say that her race is over; '' where there are none."""
    m = _ENDED.search(text)
    return m[0] if m else ""


def says_condition(text: str) -> bool:
    """Whether it says how she is."""
    return _CONDITION.search(text) is not None


def dropped_word(text: str) -> str | None:
    """A word that may mean the end of her race or something quite harmless; None if there is none."""
    m = _DROPPED.search(_DROPPED_THINGS.sub(" ", text))
    return m[0] if m else None


def how_ended(text: str) -> Retired | None:
    """How her race ended, if the words say."""
    if _DNS.search(text):
        return Retired.DID_NOT_START
    if _TIMED.search(text):
        return Retired.TIMED_OUT
    if _BY_OTHERS.search(text):
        return Retired.WITHDRAWN
    return Retired.OWN_CHOICE if _OWN.search(text) else None
