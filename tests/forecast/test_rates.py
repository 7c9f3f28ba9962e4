"""A rates file: read with every mistake at its place; what it leaves out is said to be for demonstration."""

from __future__ import annotations

import pytest

from speclint.forecast.rates import ENTRIES, GALLON, METRIC, demo_rates, read_rates


def test_what_is_stated_is_taken_and_the_rest_is_for_demonstration() -> None:
    rates, mistakes = read_rates('rates { labour 52;  stain gallon 71;  discount 2%;  currency "EUR" }', "my.rates")
    assert [] == mistakes
    assert 52.0 == rates["labour"]
    assert 71 / GALLON == pytest.approx(rates["stain gallon"])
    assert 0.02 == pytest.approx(rates["discount"])
    assert "EUR 1,000" == rates.money(1000)
    assert {"labour", "stain gallon", "discount"} == set(ENTRIES) - set(rates.demo)


def test_money_is_written_as_the_currency_is() -> None:
    rates = demo_rates()
    assert "$1,000" == rates.money(1000)
    assert ("$45", "$15.85") == (rates.price("labour"), rates.price("stain gallon"))


def test_the_demonstration_of_a_metric_rate_is_in_its_own_unit() -> None:
    for name, (ours, _) in METRIC.items():
        _, (mistake,) = read_rates(f"rates {{ {name} }}", "x")
        shown = mistake.help.rsplit(" ", 1)[1]
        rates, mistakes = read_rates(f"rates {{ {name} {shown} }}", "x")
        assert [] == mistakes
        assert rates[ours] == pytest.approx(demo_rates()[ours], rel=1e-3)


def test_litres_and_gallons_and_feet_and_metres_agree() -> None:
    one, _ = read_rates("rates { stain gallon 37.85411784; wash feet 1076.391; cleaner feet 1000 }", "a")
    two, _ = read_rates("rates { stain litre 10; wash metres 100; cleaner metres 24.5424 }", "b")
    for name in ("stain gallon", "wash feet", "cleaner feet"):
        assert one[name] == pytest.approx(two[name], rel=1e-4)


def test_without_a_file_every_rate_is_for_demonstration() -> None:
    assert set(ENTRIES) == set(demo_rates().demo)


@pytest.mark.parametrize(
    ("text", "line", "column", "says", "help"),
    [
        ("rates { labor 52 }", 1, 9, "“labor” is not a rate", "labour"),
        ("rates { labour much }", 1, 16, "“labour” needs a plain number", "money for an hour"),
        ("rates { labour }", 1, 9, "“labour” needs a plain number", "for demonstration 45"),
        ("rates { labour -4 }", 1, 16, "“-4” is out of range for “labour”", "0 to 1000"),
        ("rates {\n  labour 99999\n}", 2, 10, "“99999” is out of range for “labour”", "0 to 1000"),
        ("rates { discount 40% }", 1, 18, "“40%” is out of range for “discount”", "0 to 15"),
        ("rates { labour 52 an hour }", 1, 19, "“an hour” is not expected after “labour”", "end the note"),
        ("rates {\n labour 52\n labour 53 }", 3, 2, "“labour” is stated twice, first in line 2", "keep one"),
        ("rates { stain gallon 60; stain litre 15 }", 1, 26, "“stain gallon” is stated twice", "“stain litre” states"),
        ('rates { currency "A"\ncurrency "B" }', 2, 1, "“currency” is stated twice, first in line 1", "keep one"),
        ("rates { stain litre }", 1, 9, "needs a plain number", "money for a litre of finish; for demonstration 15.85"),
        ("rates { cleaner metres x }", 1, 24, "needs a plain number", "square metres that a litre of cleaner washes"),
        ("rates { currency EUR }", 1, 18, "“currency” needs a text in quotes", 'currency "EUR"'),
        ("wall south { faces S }", 1, 1, "a rates file holds one block “rates”", "rates {"),
        ("", 1, 1, "my.rates states no rates", "rates {"),
    ],
)
def test_a_mistake_is_told_at_its_place(text: str, line: int, column: int, says: str, help: str) -> None:
    _, mistakes = read_rates(text, "my.rates")
    assert any(
        (line, column) == (one.line, one.column) and says in one.message and help in one.help for one in mistakes
    ), mistakes
