"""A rates file: read with every mistake at its place; what it leaves out is said to be for demonstration."""

from __future__ import annotations

import pytest

from speclint.forecast.rates import ENTRIES, GALLON, demo_rates, read_rates


def test_what_is_stated_is_taken_and_the_rest_is_for_demonstration() -> None:
    rates, mistakes = read_rates('rates { labour 52;  stain gallon 71;  discount 2%;  currency "EUR" }', "my.rates")
    assert [] == mistakes
    assert 52.0 == rates["labour"]
    assert 71 / GALLON == pytest.approx(rates["stain gallon"])
    assert 0.02 == pytest.approx(rates["discount"])
    assert "EUR 1,000" == rates.money(1000)
    assert {"labour", "stain gallon", "discount"} == set(ENTRIES) - set(rates.demo)


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
        ("rates { labour 52; labour 53 }", 1, 20, "“labour” is stated twice", "keep one"),
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
