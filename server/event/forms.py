"""The forms that a key of an event file may have: how its value is read, every mistake noted; how it is written; what is
said of it, in words and as JSON Schema.

A form reads a key of a `Section` to a value, None where it is not given or wrong (then it is noted).
"""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Mapping
from datetime import timedelta
from enum import StrEnum
from pathlib import PurePosixPath
from typing import Any, Final

from server.event.context import ReadSoFar
from server.event.table_reader import Section, did_you_mean, one_of, shown_short
from server.event.times import (
    zone_names,
)
from server.sentences import Worded, say

Values = dict[str, Any]
TEXT_MAX, WORDS_MAX = 120, 2000
_ODD = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff]")
_PHONE = re.compile(r"\+?[0-9(][0-9 ()./-]*")
_ID = re.compile(r"[a-z0-9][a-z0-9-]{0,39}")
CHANNELS = ("telegram", "email", "push", "web", "webhook", "text", "terminal")
"""What a person's `channels` may name: those of the bot, and the page."""
MINUTE: Final = timedelta(minutes=1)


def slug(name: str) -> str:
    """A name as an id: small letters, digits and hyphens; at most 40."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:40].strip("-")


class Form:
    """Any value. `said`: the form in words; `default`: what holds without it; `empty`: what stands for nothing."""

    said = "table"
    default: Any = None
    empty: tuple[Any, ...] = (None,)

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        """The value at a key. `v`: what has been read of this table before it."""
        return s.raw(key)

    def write(self, value: Any, zone: str) -> Any:
        """The value as it stands in a file; None for nothing."""
        return value

    def schema(self) -> dict[str, Any]:
        """The JSON Schema of the key."""
        return {}


class Text(Form):
    """A text of one line; of several where it may be long."""

    default: Any = ""
    empty = (None, "")

    def __init__(self, most: int = TEXT_MAX, said: str = "") -> None:
        self.most = most
        self.said = said or f"text of at most {most} characters"

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = s.raw(key)
        if value is None or value == "":
            return None
        if not isinstance(value, str):
            listed = isinstance(value, list) and all(isinstance(v, str) for v in value)
            meant = ", ".join(value) if listed else value
            s.error(
                key,
                say("wrong-no-text", value=shown_short(value)),
                say("do-put-quotes", key=key, value=meant),
            )
            return None
        return None if bad_text(s, key, value, self.most) else value

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "maxLength": self.most}


def bad_text(s: Section, key: str, value: str, most: int) -> bool:
    """Whether a text can't be taken, which is noted."""
    odd = _ODD.search(value)
    if odd is not None:
        what = say("wrong-text-holds-control-character-u", character=f"{ord(odd[0]):04X}")
        s.error(key, what, say("do-type-text-anew"))
    elif len(value) > most:
        s.error(key, say("wrong-text-characters", count=len(value)), say("do-keep-it-to", most=most))
    elif most <= TEXT_MAX and "\n" in value:
        s.error(key, say("wrong-text-more-line"), say("do-write-line"))
    else:
        return False
    return True


class Ref(Text):
    """The id of something that stands elsewhere in the file; looked up once all is read."""

    default: Any = None

    def __init__(self, what: str) -> None:
        super().__init__()
        self.what = what

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        word = super().read(s, key, v, d)
        if word is not None:
            d.refs.append((s.at(key), self.what, word))
        return word


def course_named(s: Section, d: ReadSoFar) -> str:
    """The id of the course that a table is on: told where there are several; the first where it can't be known."""
    named = Text().read(s, "course", {}, d)
    if named is not None and named not in d.course_ids:
        remedy = did_you_mean(named, d.course_ids, say("do-known", ids=", ".join(d.course_ids)))
        s.error("course", say("wrong-no-course", course=named), remedy)
    elif named is None and len(d.course_ids) > 1:
        s.missing("course", say("do-several-courses-say", course_ids=", ".join(d.course_ids)))
    return named if named in d.course_ids else d.course_ids[0]


class OfRunner(Ref):
    """A runner; the only one where none is named. `else_say`: what to do where there are several."""

    default = ""

    def __init__(self, else_say: Worded) -> None:
        super().__init__("runner")
        self.else_say = else_say

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        named = super().read(s, key, v, d)
        if named is None and len(d.runner_ids) > 1:
            s.missing(key, self.else_say)
        return d.runner_ids[0] if named is None and len(d.runner_ids) == 1 else named


class Texts(Form):
    """A list of texts. `of`: ids of those things."""

    default = ()

    def __init__(self, most: int = TEXT_MAX, said: str = "list of texts", of: str = "") -> None:
        self.most, self.said, self.of = most, said, of

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = s.raw(key)
        if value is None:
            return None
        if not isinstance(value, list) or not all(isinstance(x, str) for x in value):
            s.error(
                key,
                say("wrong-no-list-texts", value=shown_short(value)),
                say("do-write-list-of-texts", key=key),
            )
            return None
        if self.of:
            d.refs += [((*s.at(key), i), self.of, x) for i, x in enumerate(value) if x]
        return tuple(x for x in value if x and not bad_text(s, key, x, self.most))

    def write(self, value: Any, zone: str) -> Any:
        return list(value)

    def schema(self) -> dict[str, Any]:
        return {"type": "array", "items": {"type": "string", "maxLength": self.most}}


class Number(Form):
    """A number within bounds."""

    def __init__(self, low: float, high: float) -> None:
        self.low, self.high = low, high
        self.said = f"number from {low:g} to {high:g}"

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = s.raw(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int | float):
            comma = isinstance(value, str) and "," in value
            remedy = say("do-write-number-point-not-comma" if comma else "do-write-number-without-quotes")
            s.error(key, say("wrong-no-number", value=shown_short(value)), remedy)
            return None
        if not math.isfinite(value) or not self.low <= value <= self.high:
            what = say("wrong-number-outside", value=value, low=f"{self.low:g}", high=f"{self.high:g}")
            s.error(key, what, say("do-give-within-range", key=key))
            return None
        return float(value)

    def write(self, value: Any, zone: str) -> Any:
        return int(value) if value == int(value) else value

    def schema(self) -> dict[str, Any]:
        return {"type": "number", "minimum": self.low, "maximum": self.high}


class Whole(Number):
    """A whole number within bounds."""

    def __init__(self, low: int, high: int) -> None:
        super().__init__(low, high)
        self.said = f"whole number from {low} to {high}"

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = super().read(s, key, v, d)
        if value is not None and value != int(value):
            s.error(key, say("wrong-no-whole-number", value=value), say("do-write-without-decimals"))
            return None
        return None if value is None else int(value)

    def schema(self) -> dict[str, Any]:
        return super().schema() | {"type": "integer"}


class Minutes(Number):
    """A length in minutes, at most a day."""

    default = timedelta(0)

    def __init__(self) -> None:
        super().__init__(0, 24 * 60)
        self.said = "minutes, from 0 to 1440"

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = super().read(s, key, v, d)
        return None if value is None else timedelta(minutes=value)

    def write(self, value: Any, zone: str) -> Any:
        return super().write(value / MINUTE, zone)


class Yes(Form):
    """true or false."""

    said = "true or false"
    default = False

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = s.raw(key)
        if value is None or isinstance(value, bool):
            return value
        what = say("wrong-neither-true-nor-false", value=shown_short(value))
        s.error(key, what, say("do-write-true-false-without-quotes"))
        return None

    def schema(self) -> dict[str, Any]:
        return {"type": "boolean"}


class OneOf(Text):
    """One of some words, each with what it stands for: the members of an enum, or as told."""

    default: Any = None

    def __init__(self, words: Mapping[str, Any] | type[StrEnum]) -> None:
        self.words = dict(words) if isinstance(words, Mapping) else {k.value: k for k in words}
        super().__init__(said=one_of(self.words))

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        return self.member(s, (key,), super().read(s, key, v, d))

    def member(self, s: Section, at: tuple[str | int, ...], word: str | None) -> Any:
        """What a word stands for; None for none, which is noted."""
        if word is None or word in self.words:
            return None if word is None else self.words[word]
        remedy = did_you_mean(word, self.words, say("do-write", words=", ".join(self.words)))
        s.report.error((*s.path, *at), say("wrong-not-known-here", word=word), remedy)
        return None

    def write(self, value: Any, zone: str) -> Any:
        return next(w for w, meant in self.words.items() if meant == value)

    def schema(self) -> dict[str, Any]:
        return {"enum": list(self.words)}


class Choices(OneOf):
    """A list of such words, as a tuple in the order given."""

    default = ()

    def __init__(self, words: Mapping[str, Any] | type[StrEnum]) -> None:
        super().__init__(words)
        self.said = f"list of words; {self.said}"

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        words = Texts().read(s, key, v, d)
        found = [self.member(s, (key, i), w) for i, w in enumerate(words or ())]
        return None if words is None else tuple(x for x in found if x is not None)

    def write(self, value: Any, zone: str) -> Any:
        found = [meant for meant in self.words.values() if meant in value]
        return [
            super(Choices, self).write(x, zone) for x in (found if isinstance(value, frozenset) else value)
        ]

    def schema(self) -> dict[str, Any]:
        return {"type": "array", "items": super().schema()}


class CheckedText(Text):
    """A text that has to be of a certain make."""

    def __init__(self, said: str, make: str, wrong: tuple[str, Worded], most: int) -> None:
        super().__init__(most, said)
        self.make, self.wrong = re.compile(make), wrong

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        text = super().read(s, key, v, d)
        if text is not None and self.make.fullmatch(text) is None:
            s.error(key, say(self.wrong[0], text=text), self.wrong[1])
        return text


class Phone(Text):
    """A telephone number: digits and the usual signs, 7 to 15 digits (ITU-T E.164 allows 15); `short` ones
    of 3 to 6 digits (emergency numbers) where they make sense."""

    def __init__(self, *, short: bool = False) -> None:
        super().__init__(said="telephone number in quotes, with country code")
        self.least = 3 if short else 7

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        text = super().read(s, key, v, d)
        if text is None:
            return None
        digits = sum(c.isdigit() for c in text)
        if _PHONE.fullmatch(text) is None or not self.least <= digits <= 15:
            remedy = say("do-write-country-code-44-1632")
            s.error(key, say("wrong-no-telephone-number", text=text), remedy)
        elif not text.startswith(("+", "00")) and digits > 6:
            remedy = say("do-write-from-abroad-44-1632")
            s.report.warn(s.at(key), say("wrong-no-country-code", text=text), remedy)
        return text


class Zone(Text):
    """The name of a time zone."""

    default = None

    def __init__(self) -> None:
        super().__init__(said='area and city in quotes, as in "Europe/London"')

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        name = super().read(s, key, v, d)
        if name is None or name in zone_names():
            return name
        remedy = did_you_mean(name, zone_names(), say("do-write-area-city-europe-london"))
        s.error(key, say("wrong-no-time-zone", name=name), remedy)
        return None


class Language(Text):
    """A language there is; '' where nothing says, which is the one behind all others."""

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        if not d.languages:
            return super().read(s, key, v, d)
        return OneOf({x: x for x in d.languages}).read(s, key, v, d)


class Channels(Texts):
    """The ways to reach somebody, in the order to try."""

    def __init__(self) -> None:
        super().__init__(said=f"list of words, in the order to try; {one_of(CHANNELS)}")

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        names = super().read(s, key, v, d) or ()
        for i, name in enumerate(names):
            if name not in CHANNELS:
                remedy = did_you_mean(name, CHANNELS, say("do-known", ids=", ".join(CHANNELS)))
                s.report.error((*s.at(key), i), say("wrong-no-channel", name=name), remedy)
        if len(set(names)) < len(names):
            s.error(key, say("wrong-channel-named-twice"), say("do-name-each-once-order-try"))
        return names

    def schema(self) -> dict[str, Any]:
        return {"type": "array", "items": {"enum": list(CHANNELS)}}


class FileName(Text):
    """The name of a file that stands beside the event file."""

    def __init__(self) -> None:
        super().__init__(said="name of a file beside the event file")

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        name = super().read(s, key, v, d)
        return name if name is None or beside(s, key, name) else None


def beside(s: Section, key: str, name: str) -> bool:
    """Whether a name is that of a file beside the event file; another is noted."""
    path = PurePosixPath(name)
    if path.is_absolute() or ".." in path.parts or "\\" in name or ":" in name:
        last = name.replace("\\", "/").rstrip("/").rsplit("/", 1)[-1] or "file.gpx"
        remedy = say("do-copy-file-next-event-file", last=last)
        s.error(key, say("wrong-not-beside-event-file", name=name), remedy)
        return False
    return True


class Id(Text):
    """The id of a table, by default made of other keys (by their fields); names the table in messages."""

    def __init__(self, *made_of: str) -> None:
        super().__init__(said="small letters, digits and hyphens, at most 40")
        self.made_of = made_of

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        given = super().read(s, key, v, d)
        if given and _ID.fullmatch(given) is None:
            remedy = say("do-use-small-letters-digits-hyphens", value=slug(given) or "point-1")
            s.error(key, say("wrong-id-cannot-used", given=given), remedy)
            given = slug(given)
        made = slug("-".join(v.get(f) or "" for f in self.made_of))
        found = given or made or "-".join(str(p) for p in s.path)
        if s.path != ("event",):  # There is one: its keys are called by the table.
            s.name_me(found)
        return found

    def schema(self) -> dict[str, Any]:
        return super().schema() | {"pattern": f"^{_ID.pattern}$"}
