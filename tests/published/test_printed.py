"""What counts as equal to a printed number."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from speclint.science import inputs
from tests.published.printed import printed, printed_feet


@pytest.mark.parametrize("value", [872.55, 872.6, 872.65])
def test_a_number_that_rounds_to_the_printed_digits_is_equal(value: float) -> None:
    assert printed("872.6") == value


@pytest.mark.parametrize("value", [872.549, 872.651, -872.6, True, "872.6"])
def test_a_number_that_rounds_to_other_digits_is_not_equal(value: object) -> None:
    assert printed("872.6") != value


def test_trailing_zeros_count_as_printed_digits() -> None:
    assert (printed("9.50") == 9.504, printed("9.50") == 9.52) == (True, False)


def test_two_digits_of_a_large_number_may_be_meant() -> None:
    assert (printed("1.5E+2") == 149.1, printed("150") == 149.1) == (True, False)


def test_feet_and_inches_equal_whole_inches() -> None:
    assert (printed_feet("13-1") == 157.4, printed_feet("13-1") == 158) == (True, False)


@pytest.mark.parametrize(
    ("refuse", "message"),
    [
        (lambda: inputs.above_zero(wall_width=0), "wall width: wanted a number above 0; got 0"),
        (lambda: inputs.above_zero(width=float("nan")), "width: wanted a number above 0; got nan"),
        (lambda: inputs.not_negative(height=-1), "height: wanted 0 or more; got -1"),
        (lambda: inputs.between(0, 100, humidity=101), "humidity: wanted 0 to 100; got 101"),
        (lambda: inputs.known(("ogee",), profile="box"), "profile: wanted one of ogee; got 'box'"),
    ],
)
def test_an_impossible_input_is_refused_with_what_was_wanted_and_got(refuse: Callable[[], None], message: str) -> None:
    with pytest.raises(ValueError, match=f"^{message}$"):
        refuse()
