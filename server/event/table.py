"""A table of the event file is a frozen dataclass: each field that stands in the file is declared once, with `key`.

The reader (`read_table`), the writer (`write_table`), the list of keys and the JSON Schema follow from that. What only code
can say of a table stands in its `look`: mistakes between its keys, and what follows from one that is not given.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import MISSING, dataclass, field, fields, replace
from typing import Any, ClassVar, Final, TypeVar, cast

from server.event.context import At, ReadSoFar
from server.event.forms import Form, Id, Values
from server.event.table_reader import ITEMS_MAX, Section
from server.sentences import Worded, say

T = TypeVar("T", bound="Table")
_KEY: Final = "key"


class UnusableError(Exception):
    """Worded by a `look` whose table can't be taken: what is wrong is noted."""


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a table: its form, what it means, an example as it stands in the file.

    `name` in the file, `field` of the value; the rest as told to `key`.
    """

    name: str
    form: Form
    means: str
    example: str = ""
    need: Worded | None = None
    must: bool = False
    default: Any = None
    field: str = ""


def key(
    form: Form,
    means: str,
    example: str = "",
    *,
    name: str = "",
    need: Worded | None = None,
    must: bool = False,
    default: Any = MISSING,
) -> Any:
    """Declares a field as a key of the table, by the name of the field unless it has another.

    `need`: what to do where the file does not give it. `must`: the value can't be made without it, though the file can.
    `default` is that of the form unless told; with `need` or `must` it is what holds until it is given, None: the table is
    left out.
    """
    held = form.default if default is MISSING else default
    made = Key(name, form, means, example, need, must or bool(need) or isinstance(form, Id), held)
    return field(default=MISSING if made.must else held, metadata={_KEY: made})


class Table:
    """A table of the event file. The first paragraph of its docstring says what it is to whoever writes one."""

    __slots__ = ()
    MORE: ClassVar[tuple[Key, ...]] = ()
    """Keys that `look` itself reads, since they are no field of the value."""

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Check and complete the values `v` of a table, by field."""


def apart() -> Any:
    """Declares a field that is no key and has no default."""
    return field()


_KEYS: Final[dict[type[Table], tuple[Key, ...]]] = {}


def keys_of(table: type[Table]) -> tuple[Key, ...]:
    """The keys that are fields of a table."""
    if table not in _KEYS:
        declared: Any = table
        found = [(f, f.metadata[_KEY]) for f in fields(declared) if _KEY in f.metadata]
        _KEYS[table] = tuple(replace(k, field=f.name, name=k.name or f.name) for f, k in found)
    return _KEYS[table]


_READ: dict[type[Table], list[Key]] = {}


def _in_order(table: type[Table]) -> list[Key]:
    """As they are read: what an id is made of goes before it, and all else after, to be named by it."""
    if table in _READ:
        return _READ[table]
    keys = keys_of(table)
    made_of = {f for k in keys if isinstance(k.form, Id) for f in k.form.made_of}
    found = sorted(keys, key=lambda k: (k.field not in made_of, not isinstance(k.form, Id)))
    return _READ.setdefault(table, found)


def read_values(s: Section, table: type[Table], d: ReadSoFar, **given: Any) -> Values:
    """What each key of a table holds, by field. `given`: fields that are known already."""
    v: Values = dict(given)
    for k in _in_order(table):
        if k.field not in given:
            v[k.field] = read_key(s, k, v, d)
    return v


def read_table(s: Section, table: type[T], d: ReadSoFar, **given: Any) -> T | None:
    """A value of that table; None where it can't be taken, which is noted."""
    v = read_values(s, table, d, **given)
    try:
        table.look(s, v, d)
    except UnusableError:
        return None
    finally:
        s.done()
    lost = any(v[k.field] is None and k.need for k in keys_of(table))
    made: Any = table
    return None if lost else cast(T, made(**{f.name: v[f.name] for f in fields(made) if f.name in v}))


def take(d: ReadSoFar, sections: Iterable[Section], table: type[T], into: list[At[T]], **given: Any) -> None:
    """Read tables of a list."""
    for section in sections:
        value = read_table(section, table, d, **given)
        if value is not None:
            into.append(At(value, section.path))


def read_key(s: Section, k: Key, v: Values, d: ReadSoFar) -> Any:
    """What a key holds: the value that is given, else its default."""
    found = k.form.read(s, k.name, v, d)
    if found is not None:
        return found
    if k.need and s.raw(k.name) in k.form.empty:
        s.missing(k.name, k.need)
    return k.default


def write_table(value: Table, zone: str) -> dict[str, Any]:
    """A value as a table of the file: without what holds when it is not given."""
    found = {}
    for k in keys_of(type(value)):
        held = getattr(value, k.field)
        if held is not None and (k.must or held != k.default):
            found[k.name] = k.form.write(held, zone)
    return {name: x for name, x in found.items() if x not in ("", [])}


class One(Form):
    """A table within another. `without`: fields that are no keys there."""

    def __init__(self, table: type[Table], without: Sequence[str] = ()) -> None:
        self.table, self.without = table, without

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        inner = s.table(key)
        return None if inner is None else read_table(inner, self.table, d)

    def write(self, value: Any, zone: str) -> Any:
        return write_table(value, zone)

    def schema(self) -> dict[str, Any]:
        return schema(self.table, self.without)


class Tables(One):
    """A list of tables within another. `texts`: a plain text stands for a table with that name; `or_one`: the remedy where
    a single table is what people mean."""

    said = "list of tables"
    default = ()

    def __init__(
        self,
        table: type[Table],
        *,
        texts: bool = False,
        or_one: Worded | None = None,
        without: Sequence[str] = (),
    ) -> None:
        super().__init__(table, without)
        self.texts, self.or_one = texts, or_one
        if texts or or_one:
            self.said = "list of texts or tables, mixed" if texts else "table, or list of tables"

    def read(self, s: Section, key: str, v: Values, d: ReadSoFar) -> Any:
        value = s.raw(key)
        if value is None:
            return None
        if self.texts:
            sections = self._mixed(s, key, value)
        elif self.or_one and not isinstance(value, dict | list):
            s.error(key, say("wrong-no-table", value=f"{value!r}"), self.or_one)
            return None
        else:
            sections = s.tables(key)
        given = {k.field: k.default for k in keys_of(self.table) if k.field in self.without}
        found = (read_table(x, self.table, d, **given) for x in sections)
        return tuple(x for x in found if x is not None)

    def _mixed(self, s: Section, key: str, value: object) -> list[Section]:
        if not isinstance(value, list):
            remedy = say("do-write-poles-name-torch-hours", key=key)
            s.error(key, say("wrong-no-list", key=key), remedy)
            return []
        tables = (x if isinstance(x, dict) else {"name": x} for x in value)
        return [Section(s.report, x, (*s.at(key), i)) for i, x in enumerate(tables)]

    def write(self, value: Any, zone: str) -> Any:
        written = [write_table(x, zone) for x in value]
        return [x["name"] if self.texts and list(x) == ["name"] else x for x in written]

    def schema(self) -> dict[str, Any]:
        one = super().schema()
        listed = {"type": "array", "maxItems": ITEMS_MAX, "items": one}
        if self.texts:
            return listed | {"items": {"anyOf": [{"type": "string"}, one]}}
        return {"anyOf": [one, listed]}


def schema(table: type[Table], without: Sequence[str] = ()) -> dict[str, Any]:
    """The JSON Schema of a table."""
    keys = [k for k in (*keys_of(table), *table.MORE) if k.field not in without]
    named = {k.name: {"description": k.means, **k.form.schema()} for k in keys}
    needed = [k.name for k in keys if k.need]
    found: dict[str, Any] = {"type": "object", "properties": named, "additionalProperties": False}
    return found | ({"required": needed} if needed else {})
