"""The rulebook: every page read, checked and compiled once, and kept ready in the user's cache."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cached_property
from pathlib import Path
from types import CodeType
from typing import Any

from speclint.kept import keep, kept, plain, state_of
from speclint.paths import shipped
from speclint.rulebook.compile import Judge, judges
from speclint.rulebook.lacking import Lacking
from speclint.rulebook.rule import Basis, BrokenRulebook, Limit, PageTrouble, Rule, Tier

GROUPS = (
    "site, grade and ground cover",
    "foundation, sill and crawl space",
    "log walls and courses",
    "corners and log ends",
    "openings",
    "roof overhang and roof edge",
    "roof junctions, valleys and chimneys",
    "gutters and roof water",
    "porches, posts and footings",
    "beams and beam ends",
    "ledgers and deck frames",
    "decking, rails and stairs",
    "stone veneer",
    "chases in timber",
    "fasteners and metals",
    "preservative treatment",
    "finishes and preparation",
    "upkeep access",
    "snow and ice",
    "insects",
    "order of work",
)


class Rulebook:
    """Rules in the order of their groups and names, and the code that judges each kind of element.

    Args:
        rules: The rules.
        code: Their conditions, as `compile_rules` makes it.
    """

    def __init__(self, rules: tuple[Rule, ...], code: CodeType) -> None:
        self.rules, self.code = rules, code
        self._lacking: dict[int, Lacking] = {}

    @cached_property
    def judges(self) -> Mapping[str, Judge]:
        """The function that judges an element, by kind."""
        return judges(self.code, self.rules)

    def lacking(self, index: int) -> Lacking:
        """What tells which facts a rule lacks, by its place in the rulebook; made when it is first asked for."""
        found = self._lacking.get(index)
        if found is None:
            found = self._lacking[index] = Lacking(self.rules[index])
        return found

    @cached_property
    def _by_name(self) -> dict[str, Rule]:
        return {rule.name: rule for rule in self.rules}

    def named(self, name: str) -> Rule | None:
        """The rule of that name, if there is one."""
        return self._by_name.get(name)

    def with_rules(self, rules: tuple[Rule, ...]) -> Rulebook:
        """The same code over rules whose limits or grades were changed; the rules and their order stay."""
        return Rulebook(rules, self.code)


def load_rulebook(house_rules: Path | None = None) -> Rulebook:
    """The rulebook that ships with the program, with a company's own pages added.

    Args:
        house_rules: A folder of further rule pages; a page of the same name takes the place of the shipped one.

    Raises:
        BrokenRulebook: If a page cannot be used, with every trouble found.
    """
    files = _page_files(house_rules)
    key = _key(files)
    name = "rulebook.bin" if house_rules is None else "rulebook-house.bin"
    found = _from_cache(name, key)
    if found is not None:
        return found
    book = read_rulebook({stem: (called, path.read_bytes()) for stem, (called, path) in files.items()})
    keep(name, key, (plain(book.rules), book.code))
    return book


def _page_files(house_rules: Path | None) -> dict[str, tuple[str, Path]]:
    """The file of every page by its stem, with the name by which messages call it."""
    found: dict[str, tuple[str, Path]] = {}
    folders: list[tuple[str, Path]] = [("rules", shipped("rules"))]
    if house_rules is not None:
        if not house_rules.is_dir():
            raise BrokenRulebook([PageTrouble(str(house_rules), 1, 1, "this is not a folder of rule pages")])
        folders.append((str(house_rules), house_rules))
    for called, folder in folders:
        for entry in sorted(folder.iterdir(), key=lambda entry: entry.name):
            if entry.name.endswith(".md") and entry.name != "README.md":
                found[entry.name.removesuffix(".md")] = (f"{called}/{entry.name}", entry)
    return found


def read_rulebook(pages: dict[str, tuple[str, bytes]]) -> Rulebook:
    """The rulebook that the pages make.

    Args:
        pages: For each page its name in messages and its bytes.

    Raises:
        BrokenRulebook: If a page cannot be used, with every trouble found.
    """
    from speclint.rulebook.page import read_page
    from speclint.rulebook.read_rule import read_rule

    rules: list[Rule] = []
    troubles: list[PageTrouble] = []
    for called, raw in pages.values():
        try:
            text = raw.decode("utf-8").removeprefix("\ufeff").replace("\r\n", "\n")
        except UnicodeDecodeError:
            troubles.append(PageTrouble(called, 1, 1, "the page is not text in UTF-8"))
            continue
        rule, found = read_rule(read_page(text, called), GROUPS)
        troubles += found
        if rule is not None:
            rules.append(rule)
    names = {rule.name for rule in rules}
    for rule in rules:
        for other in rule.supersedes:
            if other not in names and not troubles:
                troubles.append(PageTrouble(rule.page, 1, 1, f"it supersedes “{other}”, which is no rule"))
    if troubles:
        raise BrokenRulebook(troubles)
    rules.sort(key=lambda rule: (GROUPS.index(rule.group), rule.name))
    return Rulebook(tuple(rules), compile_rules(rules))


def compile_rules(rules: Iterable[Rule]) -> CodeType:
    """The code that judges every kind of element that the rules are about."""
    from speclint.rulebook.compile import source_for

    by_kind: dict[str, list[tuple[int, Rule]]] = {}
    for index, rule in enumerate(rules):
        for kind in rule.kinds:
            by_kind.setdefault(kind, []).append((index, rule))
    text = "\n".join(source_for(kind, about) for kind, about in by_kind.items())
    return compile(text, "<rulebook>", "exec", optimize=2)


def _key(pages: dict[str, tuple[str, Path]]) -> str:
    """What decides the rulebook: the program, its data, and the names, sizes and times of the pages."""
    import sys

    from speclint import __version__

    called = "\n".join(called for called, _ in pages.values())
    state = state_of([*(path for _, path in pages.values()), *_makers()])
    return f"{__version__} {sys.version}\n{called}\n{state}"


def _makers() -> list[Path]:
    """The files besides the pages that decide what the pages are read as."""
    package = Path(__file__).parent.parent
    folders = ("rulebook", "measures", "model", "language")
    found = [path for folder in folders for path in sorted((package / folder).glob("*.py"))]
    found += [package / "units.py", package / "citation.py"]
    data = (shipped("grammar").joinpath("rule.lark"), shipped("shared").joinpath("citations.csv"))
    return found + [path for path in data if isinstance(path, Path)]  # packed data changes only with the version


def _from_cache(name: str, key: str) -> Rulebook | None:
    found = kept(name, key)
    if not isinstance(found, tuple) or len(found) != 2 or not isinstance(found[1], CodeType):
        return None
    return Rulebook(tuple([_rule(row) for row in found[0]]), found[1])


def _rule(row: tuple[Any, ...]) -> Rule:
    entries = dict(zip(Rule._fields, row, strict=True))
    entries["tiers"] = tuple([Tier(*tier) for tier in entries["tiers"]])
    entries["basis"] = tuple([Basis(*basis) for basis in entries["basis"]])
    entries["limits"] = tuple(
        [
            Limit(name, value, dimension, text, Basis(*basis), exact)
            for name, value, dimension, text, basis, exact in entries["limits"]
        ]
    )
    return Rule(**entries)
