"""Faults are put where they should be, and nowhere else."""

from __future__ import annotations

import pytest

from tests.hard.faults import Fault, faults_of, places_of
from tests.hard.mutants import Faulty, Mutant, interval, mutants_of

TEXT = '''"""A module of 3 lines."""
LEAST = 0.5

def wide(length: float, ends: int = 2) -> float:
    """More than 4."""
    if length < LEAST or not ends:
        raise ValueError(f"wanted more than {LEAST + 1}")
    work.note(f"taken as {ends - 1}", 7)
    return max(length - (ends * 2), LEAST)

class House:
    def eaves(self) -> list[float]:
        return [wide(length=one, ends=2) for one in self.walls if one]
'''


def test_every_fault_of_a_small_module_is_known() -> None:
    told = [(fault.line, fault.told(TEXT)) for fault in faults_of(TEXT)]
    assert [
        (2, "0.5 -> 0.55"),
        (4, "2 -> 3"),
        (6, "length < LEAST or not ends -> (False)"),
        (6, "length < LEAST or not ends -> (True)"),
        (6, " <  ->  <= "),
        (6, " <  ->  >= "),
        (6, "or -> and"),
        (6, "not  -> "),
        (9, "max -> min"),
        (9, "max(length - (ends * 2), LEAST) -> None"),
        (9, "- -> +"),
        (9, "* -> /"),
        (9, "2 -> 3"),
        (13, "[wide(length=one, ends=2) for one in self.walls if one] -> None"),
        (13, "one, ends=2 -> 2, ends=one"),
        (13, "2 -> 3"),
        (13, "one -> (False)"),
        (13, "one -> (True)"),
    ] == told


def test_a_fault_is_known_by_the_function_that_holds_it() -> None:
    names = {line: name for line, name in places_of(TEXT).items() if name}
    assert {**dict.fromkeys(range(4, 10), "wide"), 12: "House.eaves", 13: "House.eaves"} == names
    called = [Mutant("speclint.science.ice", TEXT, Fault(line, 0, 0, "")).called for line in (2, 9, 13)]
    assert ["speclint.science.ice <module>", "speclint.science.ice wide", "speclint.science.ice House.eaves"] == called


@pytest.mark.parametrize("package", ["science", "measures", "rulebook"])
def test_every_fault_is_python_and_changes_the_text(package: str) -> None:
    found = mutants_of(package, 60, 5)
    assert len(found) == len(set(found)) == 60
    for mutant in found:
        faulty = mutant.fault.made_in(mutant.text)
        assert faulty != mutant.text
        compile(faulty, mutant.module, "exec")


def test_a_sample_is_the_same_for_the_same_seed_only() -> None:
    assert mutants_of("rulebook", 30, 1) == mutants_of("rulebook", 30, 1) != mutants_of("rulebook", 30, 2)


def test_a_module_is_made_with_its_fault() -> None:
    from importlib.util import module_from_spec

    finder = Faulty(Mutant("speclint.science.ice", "LEAST = 1\n", Fault(1, 8, 9, "2")))
    assert finder.find_spec("speclint.science.snow", None) is None
    spec = finder.find_spec("speclint.science.ice", None)
    assert spec is not None
    module = module_from_spec(spec)
    finder.exec_module(module)
    assert module.LEAST == 2


def test_the_interval_of_a_share_is_wilsons() -> None:
    """Wilson 1927: 81 of 263 is 0.308 with 0.255 to 0.366, as Newcombe 1998 tells it (from memory)."""
    least, most = interval(81, 263)
    assert (0.2553, 0.3662) == (round(least, 4), round(most, 4))
