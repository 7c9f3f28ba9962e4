"""Facts of a home: what the plan states, what stands in relation, and what is computed, each found once when asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from speclint.citation import Citation
from speclint.measures.register import Measure, find_measure
from speclint.model.element import Element, settings_of
from speclint.model.home import Home
from speclint.model.kinds import KINDS
from speclint.model.settings import Setting
from speclint.quantity import Absent, Missing, Quantity
from speclint.relations.links import Links
from speclint.science.after import range_notes, source_of
from speclint.span import NOWHERE

if TYPE_CHECKING:
    from speclint.tables.rain_record import RainRecord


class NotStated(Exception):
    """A measure lacks an input; carries what is missing."""

    def __init__(self, absent: Absent) -> None:
        super().__init__(f"{absent.name} of {absent.element}")
        self.absent = absent


class CircularMeasure(Exception):
    """A measure that needs itself: a fault of the program."""


class Facts(dict[str, Any]):
    """The facts of one element by name: SI values, words, other elements' facts, or `None` where nothing is known."""

    __slots__ = ("element", "label", "sheet", "told")

    def __init__(self, element: Element, sheet: Sheet) -> None:
        super().__init__()
        self.element = element
        self.label = element.label
        self.sheet = sheet
        self.told: dict[str, Quantity | Absent | None] = {}  # nothing while it is being computed

    def __missing__(self, name: str) -> Any:
        value = self.sheet.find(self, name)
        self[name] = value
        return value

    def __bool__(self) -> bool:
        return True  # an element is there even while none of its facts has been asked for

    def __hash__(self) -> int:  # type: ignore[override]
        return id(self)

    def __eq__(self, other: object) -> bool:
        return self is other


class Sheet:
    """All facts of a home."""

    def __init__(self, home: Home, records: Mapping[str, RainRecord] | None = None) -> None:
        self.home = home
        self.records: Mapping[str, RainRecord] = records or {}
        self.links = Links(home)
        self.facts = {label: Facts(element, self) for label, element in home.elements.items()}
        self.drawn: dict[str, Any] = {}

    def __getitem__(self, label: str) -> Facts:
        return self.facts[label]

    def let_go(self) -> None:
        """Forget all facts. They hold one another in circles, and would wait for a search of the whole memory."""
        for facts in self.facts.values():
            facts.clear()
            facts.told.clear()
        self.facts.clear()
        self.drawn.clear()

    def value(self, label: str, name: str) -> Any:
        """The value of a fact of an element; nothing where there is no such element, or nothing is known."""
        facts = self.facts.get(label)
        return None if facts is None else facts[name]

    def of_kind(self, kind: str) -> list[Facts]:
        """The facts of every element of a kind, in the order of the plan."""
        return [self.facts[element.label] for element in self.home.of_kind(kind)]

    def find(self, facts: Facts, name: str) -> Any:
        """The value of a fact: a setting, a relation, or a measure."""
        sort, setting = _sort_of(type(facts.element), name)
        if sort == "measure":
            result = self.quantity(facts, name)
            return result.value if isinstance(result, Quantity) else None
        if setting is None:
            return self.related(facts, name)
        found = getattr(facts.element, setting.attribute)
        if sort == "setting":
            return found
        if setting.many:
            return None if found is None else tuple(self.facts[label] for label in found)
        return self.facts.get(found) if found else None

    def related(self, facts: Facts, name: str) -> Any:
        """The elements of a kind that an element names or is named by; the first where the kind is in the singular."""
        if name in KINDS:
            if KINDS[name].single or name == "foundation":
                return next(iter(self.of_kind(name)), None)
            labels = self.links.near(facts.label, name)
            return self.facts[labels[0]] if labels else None
        kind = "porch" if name == "porches" else name.removesuffix("s")
        return tuple(self.facts[label] for label in self.links.near(facts.label, kind))

    def quantity(self, facts: Facts, name: str) -> Quantity | Absent:
        """A fact with its provenance."""
        found = facts.told.get(name)
        if found is not None:
            return found
        if name in facts.told:
            raise CircularMeasure(f"{name} of {facts.label} needs itself")
        origin = _origin(type(facts.element), name)
        told = self._computed(facts, origin) if isinstance(origin, Measure) else _stated(facts, name, origin)
        facts.told[name] = told
        return told

    def _computed(self, facts: Facts, measure: Measure) -> Quantity | Absent:
        name = measure.name
        working = Working(self, facts, name, measure.dimension, measure.meaning)
        facts.told[name] = None
        try:
            value = measure.function(facts, working)
        except NotStated as trouble:
            return Absent(name, facts.label, trouble.absent.missing, trouble.absent.reason)
        finally:
            del facts.told[name]
        return working.quantity(value)


def _stated(facts: Facts, name: str, setting: Setting) -> Quantity | Absent:
    element = facts.element
    given = element.given.get(name)
    value = getattr(element, setting.attribute)
    if value is None or given is None:
        return Absent(name, facts.label, (Missing(facts.label, name, element.place),))
    how = "stated" if given.how == "alternate" else given.how
    return Quantity(name, facts.label, value, setting.dimension, how, given.span, given.text, given.reason)


@lru_cache(maxsize=8192)
def _origin(model: type[Element], name: str) -> Setting | Measure:
    """Where a number of a kind of element comes from.

    Raises:
        UnknownMeasure: If it is neither a setting nor a measure.
    """
    setting = settings_of(model).get(name)
    return find_measure(model.kind, name) if setting is None else setting


@lru_cache(maxsize=8192)
def _sort_of(model: type[Element], name: str) -> tuple[str, Setting | None]:
    """What a name is for a kind of element: a setting, a part it names, a relation by kind, or a measure."""
    setting = settings_of(model).get(name)
    if setting is not None and setting.dimension != "part":
        return "setting", setting
    if name in KINDS or name.removesuffix("s") in KINDS or name == "porches":
        return "relation", None
    return ("part", setting) if setting is not None else ("measure", None)


@lru_cache(maxsize=1024)
def _followed(function: Callable[..., Any]) -> tuple[Citation, tuple[str, ...]]:
    """The publication that a function follows, and the names of the inputs for which it gives a range."""
    source = source_of(function)
    return Citation(source.key, source.place, source.standing), tuple(source.valid)


class Working:
    """What a measure has used so far: inputs, citations and notes are kept while it computes."""

    __slots__ = (
        "citations", "dimension", "facts", "high", "how", "inputs", "low", "meaning", "name", "notes", "sheet",
        "spread", "text",
    )  # fmt: skip

    def __init__(self, sheet: Sheet, facts: Facts, name: str, dimension: str, meaning: str = "") -> None:
        self.sheet, self.facts, self.name, self.dimension, self.meaning = sheet, facts, name, dimension, meaning
        self.inputs: list[Quantity] = []
        self.citations: list[Citation] = []
        self.notes: list[str] = []
        self.text = ""
        self.how = "computed"
        self.low: float | None = None
        self.high: float | None = None
        self.spread = ""

    def need(self, facts: Facts | None, name: str, kind: str = "") -> Any:
        """The value of a fact that the measure cannot do without.

        Raises:
            NotStated: If it is not known; `kind` names the element that is wanted where there is none at all.
        """
        if facts is None:
            missing = Missing(self.facts.label, kind or name, self.facts.element.place)
            raise NotStated(Absent(self.name, self.facts.label, (missing,)))
        found = facts.told.get(name) or self.sheet.quantity(facts, name)
        if isinstance(found, Absent):
            raise NotStated(found)
        self.inputs.append(found)
        return found.value

    def maybe(self, facts: Facts | None, name: str) -> Any:
        """The value of a fact if it is known."""
        if facts is None:
            return None
        found = facts.told.get(name) or self.sheet.quantity(facts, name)
        if isinstance(found, Absent):
            return None
        self.inputs.append(found)
        return found.value

    def absent(self, reason: str) -> NotStated:
        """To raise where the measure does not apply, with the reason in words."""
        return NotStated(Absent(self.name, self.facts.label, (), reason))

    def missing(self, facts: Facts, setting: str) -> NotStated:
        """To raise where one setting of an element would settle it."""
        return NotStated(Absent(self.name, self.facts.label, (Missing(facts.label, setting, facts.element.place),)))

    def note(self, words: str) -> None:
        """Keep a note with the result."""
        if words not in self.notes:
            self.notes.append(words)

    def assume(self, name: str, value: float | str, dimension: str, reason: str, citation: Citation) -> Any:
        """Take a value that nobody stated, and keep it with the inputs."""
        place = self.facts.element.place
        self.inputs.append(
            Quantity(
                name, self.facts.label, value, dimension, "assumed by speclint", place, "", reason, (), (citation,)
            )
        )
        return value

    def call(self, function: Callable[..., Any], **inputs: Any) -> Any:
        """Call a function of `science/`, keeping its citation and a note for each input outside its range."""
        citation, bounded = _followed(function)
        self.cite(citation)
        if bounded:
            numbers = {name: inputs[name] for name in bounded if isinstance(inputs.get(name), float | int)}
            for words in range_notes(function, **numbers):
                self.note(words)
        return function(**inputs)

    def range(self, low: float, high: float, words: str) -> None:
        """Keep the bounds of the result, and where they come from."""
        self.low, self.high, self.spread = low, high, words

    def cite(self, citation: Citation) -> None:
        """Keep a citation with the result."""
        if citation not in self.citations:
            self.citations.append(citation)

    def quantity(self, value: Any) -> Quantity:
        """The result with all that was used."""
        return Quantity(
            self.name,
            self.facts.label,
            value,
            self.dimension,
            self.how,
            self.facts.element.place or NOWHERE,
            self.text,
            self.meaning,
            tuple(self.inputs),
            tuple(self.citations),
            tuple(self.notes),
            self.low,
            self.high,
            self.spread,
        )
