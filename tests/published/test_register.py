"""The register of publications, the marks on the functions and the printed rows hold together."""

from __future__ import annotations

import csv
import doctest
import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from types import ModuleType

import pytest

import speclint.science
from speclint.citation import STANDINGS, publications
from speclint.science.after import after, source_of

HERE = Path(__file__).parent
TOOLS = {"after", "inputs", "trade_units"}
SECTIONS = ("Args", "Returns", "Valid", "Raises", "Sources", "Example")
# keys that science cites without a test of their own: key, (reason, date)
EXEMPT: dict[str, tuple[str, str]] = {}


def _modules() -> Iterator[ModuleType]:
    for found in pkgutil.iter_modules(speclint.science.__path__):
        if found.name not in TOOLS:
            yield importlib.import_module(f"speclint.science.{found.name}")


def _functions() -> list[Callable[..., object]]:
    return [
        function
        for module in _modules()
        for name, function in inspect.getmembers(module, inspect.isfunction)
        if function.__module__ == module.__name__ and not name.startswith("_")
    ]


def _sections(function: Callable[..., object]) -> dict[str, str]:
    """The sections of a docstring, by heading."""
    text = inspect.getdoc(function) or ""
    parts = re.split(r"^(\w+):\n", text, flags=re.MULTILINE)
    return dict(zip(parts[1::2], (part.strip() for part in parts[2::2]), strict=True))


def _problems(function: Callable[..., object]) -> list[str]:
    """What is wrong with the docstring of a science function."""
    name = function.__name__
    source = source_of(function)
    sections = _sections(function)
    arguments = list(inspect.signature(function).parameters)
    wanted = [section for section in SECTIONS if arguments or section not in {"Args", "Raises"}]
    problems = []
    if list(sections) != wanted:
        problems.append(f"{name}: wanted sections {wanted}; got {list(sections)}")
    lines = re.findall(r"^ {0,4}(\w+): .*?\[(.+?)\]$", sections.get("Args", ""), flags=re.MULTILINE)
    if [argument for argument, _ in lines] != arguments:
        problems.append(f"{name}: wanted arguments {arguments} with units; got {[argument for argument, _ in lines]}")
    if not re.search(r"\[.+\]$", sections.get("Returns", "")):
        problems.append(f"{name}: Returns names no unit")
    stated = (
        f"{source.key}, {source.place}; {source.standing}." if source.key else f"{source.standing}: {source.place}."
    )
    if sections.get("Sources") != stated:
        problems.append(f"{name}: wanted Sources {stated!r}; got {sections.get('Sources')!r}")
    bounds = "; ".join(f"{argument}: {low:g} to {high:g}" for argument, (low, high) in source.valid.items())
    if bounds and sections.get("Valid") != f"{bounds}.":
        problems.append(f"{name}: wanted Valid {bounds!r}; got {sections.get('Valid')!r}")
    problems += [f"{name}: {argument} is no argument" for argument in source.valid if argument not in arguments]
    if source.standing not in STANDINGS:
        problems.append(f"{name}: unknown standing {source.standing!r}")
    if not source.key and source.standing in {"published", "second-hand"}:
        problems.append(f"{name}: {source.standing} without a key")
    if ">>>" not in sections.get("Example", ""):
        problems.append(f"{name}: no example")
    return problems


def _rows() -> list[tuple[str, dict[str, str]]]:
    rows = []
    for path in sorted((HERE / "cases").glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            rows += [(path.stem, row) for row in csv.DictReader(file)]
    return rows


def test_every_science_function_is_looked_at() -> None:
    assert len(_functions()) >= 40


@pytest.mark.parametrize("function", _functions(), ids=lambda function: function.__name__)
def test_the_docstring_of_a_science_function_equals_its_mark_and_signature(function: Callable[..., object]) -> None:
    assert _problems(function) == []


def test_a_docstring_that_departs_from_its_function_is_caught() -> None:
    @after("fpl-gtr-190", "Eq. 1", width=(0, 1))
    def planted(width: float, height: float) -> float:
        """A planted fault.

        Args:
            height: Height. [m]

        Returns:
            Area.

        Valid:
            width: 0 to 2.

        Raises:
            ValueError: Never.

        Sources:
            fpl-gtr-190, Eq. 2; published.

        Example:
            None.
        """
        return width * height

    assert _problems(planted) == [
        "planted: wanted arguments ['width', 'height'] with units; got ['height']",
        "planted: Returns names no unit",
        "planted: wanted Sources 'fpl-gtr-190, Eq. 1; published.'; got 'fpl-gtr-190, Eq. 2; published.'",
        "planted: wanted Valid 'width: 0 to 1'; got 'width: 0 to 2.'",
        "planted: no example",
    ]


@pytest.mark.parametrize("module", list(_modules()), ids=lambda module: module.__name__.rsplit(".", 1)[-1])
def test_the_examples_of_a_science_module_run(module: ModuleType) -> None:
    result = doctest.testmod(module)
    assert (result.failed, result.attempted > 0) == (0, True)


def test_every_key_that_science_cites_is_registered() -> None:
    cited = {source_of(function).key for function in _functions()} - {""}
    assert cited
    assert cited - set(publications()) == set()


def test_every_key_that_science_cites_has_a_test_or_a_dated_exemption() -> None:
    cited = {source_of(function).key for function in _functions()} - {""}
    tested = {key for key in cited if (HERE / f"test_{key.replace('-', '_')}.py").is_file()}
    assert (cited - tested, set(EXEMPT) & tested) == (set(EXEMPT), set())


def test_the_register_is_complete_and_in_plain_keys() -> None:
    assert publications()
    faults = [
        key
        for key, entry in publications().items()
        if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", key)
        or not all([entry.title, entry.issuer, entry.year, entry.note])
        or "://" in "".join([entry.title, entry.issuer, entry.note])
    ]
    assert faults == []


def test_every_printed_row_says_how_far_it_was_read() -> None:
    rows = _rows()
    assert len(rows) >= 500
    faults = [
        f"{name}: {row['case']}"
        for name, row in rows
        if row["standing"] not in STANDINGS or not row["printed"] or not row["source_place"]
    ]
    assert faults == []


def test_printed_rows_come_from_many_publications() -> None:
    read = [name for name, row in _rows() if row["standing"] in {"published", "second-hand", "memory"}]
    keys = {name.split("_", 1)[0] for name in read}
    assert (len(read) >= 400, len(keys & set(publications())) >= 15) == (True, True)


def test_every_file_of_printed_rows_is_run_by_the_test_of_its_key() -> None:
    names = {name for name, _ in _rows()}
    idle = [
        name
        for name in sorted(names)
        if f'cases("{name}")' not in (HERE / f"test_{name.split('_', 1)[0].replace('-', '_')}.py").read_text("utf-8")
    ]
    assert (bool(names), idle) == (True, [])


def test_the_list_of_disagreements_equals_the_rows_that_disagree() -> None:
    listed = re.findall(r"^\| ([^|]+) \| ([^|]+) \| ([^|]+) \| ([^|]+) \|$", _disagreements(), flags=re.MULTILINE)[1:]
    rows = [(name, row["case"], row["printed"], row["disagrees"]) for name, row in _rows() if row["disagrees"]]
    assert listed == rows


def _disagreements() -> str:
    return (HERE / "DISAGREEMENTS.md").read_text(encoding="utf-8")
