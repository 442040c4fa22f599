"""Words about two runners at once ('beide sind los', 'both in', 'got both'), put as one sentence for each of them."""

from __future__ import annotations

import re

from bot.words.meaning import Context

_BOTH = re.compile(
    r"\b(?:(?:alle|die|all|the) )?(?:both of (?:them|the girls|the runners)|both (?:runners|girls|of em)|both|"
    r"beiden? (?:läuferinnen|frauen|mädels)|beiden?)\b(?! (?:bottles?|poles?|feet|knees?|legs?|flaschen|füße|knie|"
    r"beine|stöcke|schuhe|ways|cars?|autos?|points?|punkte)\b)",
    re.IGNORECASE,
)
_HAVE_BOTH = re.compile(
    r"(?:i|we|wir|ich)?(?:'ve)? ?(?:have got|have|got|hab|habe|haben) (?:alle |them |sie )?(?:both(?: of them)?|beide)"
    r"(?: (?:now|safe|here|with (?:us|me)|in the (?:car|van)|jetzt|bei (?:mir|uns)|eingesammelt|im auto|sicher))*[.! ]*",
    re.IGNORECASE,
)
_SINGULAR = {
    "are": "is", "were": "was", "have": "has", "sind": "ist", "haben": "hat", "waren": "war", "kommen": "kommt",
    "laufen": "läuft", "gehen": "geht", "liegen": "liegt", "brauchen": "braucht", "need": "needs", "want": "wants",
}  # fmt: skip
_VERB = re.compile(rf"\b(?:{'|'.join(_SINGULAR)}) BOTH\b|\bBOTH (?:{'|'.join(_SINGULAR)})\b", re.IGNORECASE)


def each(text: str, ctx: Context) -> tuple[str, ...] | None:
    """The sentence once for each of the writer's two runners, with her name; None where it is not about two."""
    runners = ctx.candidates()
    if len(runners) != 2:
        return None
    text = _by_both_names(text, runners[0].name, runners[1].name)
    if any(_named(text, r.name) or (r.bib and _named(text, r.bib)) for r in runners):
        return None
    if _HAVE_BOTH.fullmatch(text.strip()):
        return tuple(f"we have {r.name}" for r in runners)
    if _BOTH.search(text) is None:
        return None
    one = _BOTH.sub("BOTH", text, count=1)
    one = _VERB.sub(lambda m: _singular(m[0]), one)
    return tuple(one.replace("BOTH", r.name) for r in runners)


def of_them(text: str, ctx: Context) -> tuple[str, ...]:
    """The writer's two runners where the words of a call for help say 'they' and name nobody; else ()."""
    runners = ctx.candidates()
    nobody = not any(_named(text, r.name) or (r.bib and _named(text, r.bib)) for r in runners)
    return tuple(r.id for r in runners) if len(runners) == 2 and nobody and _THEY.search(text) else ()


_THEY = re.compile(
    r"\bthey(?:'re| are| have| need| can't| cannot|'ve)?\b|\bsie (?:sind|brauchen|haben|können)\b",
    re.IGNORECASE,
)


def _by_both_names(text: str, one: str, other: str) -> str:
    """'Maren and Tove need help' is said of both, as 'both need help' is."""
    first, second = re.escape(one), re.escape(other)
    pair = rf"\b(?:{first}\s*(?:and|und|&|\+|,)\s*{second}|{second}\s*(?:and|und|&|\+|,)\s*{first})\b(?!['’])"
    return re.sub(pair, "both", text, count=1, flags=re.IGNORECASE)


def _named(text: str, name: str) -> bool:
    return re.search(rf"\b{re.escape(name)}\b", text, re.IGNORECASE) is not None


def _singular(words: str) -> str:
    return " ".join(_SINGULAR.get(w.lower(), w) for w in words.split())
