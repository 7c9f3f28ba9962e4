"""The cricket that turns roof water around a chimney."""

from __future__ import annotations

from speclint.science.after import after
from speclint.science.inputs import above_zero, not_negative
from speclint.science.trade_units import INCH

WIDEST_WITHOUT = 30 * INCH


@after("irc-2021", "R1003.20", "second-hand")
def chimney_cricket_required(width: float) -> bool:
    """Whether a chimney that does not cross the ridge needs a cricket on its upper side.

    Args:
        width: Width of the chimney along the ridge. [m]

    Returns:
        Whether a cricket is needed. [-]

    Valid:
        Chimneys below the ridge.

    Raises:
        ValueError: If the width is not above zero.

    Sources:
        irc-2021, R1003.20; second-hand.

    Example:
        >>> chimney_cricket_required(0.9)
        True
    """
    above_zero(width=width)
    return width > WIDEST_WITHOUT + 1e-9


@after("irc-2021", "Table R1003.20", "second-hand", pitch=(0.25, 1))
def chimney_cricket_height(width: float, pitch: float) -> float:
    """Height of the cricket behind a chimney: the rise of the roof over half the width of the chimney.

    Args:
        width: Width of the chimney along the ridge. [m]
        pitch: Rise over run of the roof. [-]

    Returns:
        Height of the cricket. [m]

    Valid:
        pitch: 0.25 to 1.

    Raises:
        ValueError: If the width is not above zero or the pitch is negative.

    Sources:
        irc-2021, Table R1003.20; second-hand.

    Example:
        >>> chimney_cricket_height(1.2, 0.5)
        0.3
    """
    above_zero(width=width)
    not_negative(pitch=pitch)
    return width / 2 * pitch
