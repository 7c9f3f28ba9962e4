"""Shades for amounts: even steps of lightness, one hue family, told apart in grey and by the colour-blind."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

DARK, LIGHT = "#1b1b1b", "#ffffff"
# Ends of the ramp in the Oklab space: lightness, green to red, blue to yellow.
PALE, DEEP = (0.975, -0.005, 0.020), (0.30, -0.008, -0.100)


@dataclass(frozen=True, slots=True)
class Scale:
    """Classes of an amount, each with its shade.

    Attributes:
        title: What is shown.
        bounds: Where one class ends and the next begins, least first; one fewer than there are classes.
        names: The classes as the legend tells them.
        shades: The fill of each class.
        ink: The colour of numbers written on each class.
        digits: Behind the point, to which an amount is written: it is put in the class of the number that is read.
    """

    title: str
    bounds: tuple[float, ...]
    names: tuple[str, ...]
    shades: tuple[str, ...]
    ink: tuple[str, ...]
    digits: int = 2

    def at(self, value: float) -> int:
        """The class of a value, as it is written."""
        return sum(round(value, self.digits) >= bound for bound in self.bounds)


def scale(
    title: str,
    bounds: Sequence[float],
    told: Callable[[float], str],
    *,
    worse_high: bool = True,
    digits: int = 2,
) -> Scale:
    """A scale with a class below the first bound, one between each two, and one above the last.

    Args:
        title: What is shown.
        bounds: Bounds of the classes, rising.
        told: A bound in words.
        worse_high: Whether more is worse; the deepest shade is always the worst.
        digits: Behind the point, to which an amount is written.
    """
    words = [told(bound) for bound in bounds]
    names = [f"below {words[0]}", *(f"{low} to under {high}" for low, high in pairwise(words))]
    names.append(f"{words[-1]} and more")
    shades = ramp(len(names))
    ink = [max((DARK, LIGHT), key=lambda letters: contrast(letters, shade)) for shade in shades]
    if not worse_high:
        shades, ink = shades[::-1], ink[::-1]
    return Scale(title, tuple(bounds), tuple(names), tuple(shades), tuple(ink), digits)


def ramp(count: int) -> list[str]:
    """Shades from pale to deep, in even steps of the Oklab space, as `#rrggbb`.

    Sources:
        ours: two ends of one blue, a straight line between them in the Oklab space.
    """
    found = []
    for at in range(count):
        share = at / max(1, count - 1)
        lab = [pale + share * (deep - pale) for pale, deep in zip(PALE, DEEP, strict=True)]
        found.append("#" + "".join(f"{round(255 * channel):02x}" for channel in _from_oklab(*lab)))
    return found


def _from_oklab(lightness: float, a: float, b: float) -> list[float]:
    """Red, green and blue, 0 to 1, gamma applied."""
    long = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3
    middle = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (lightness - 0.0894841775 * a - 1.2914855480 * b) ** 3
    linear = (
        4.0767416621 * long - 3.3077115913 * middle + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * middle - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * middle + 1.7076147010 * short,
    )
    return [min(1.0, max(0.0, 12.92 * v if v <= 0.0031308 else 1.055 * v ** (1 / 2.4) - 0.055)) for v in linear]


def luminance(shade: str) -> float:
    """Relative luminance of a colour, black 0 to white 1."""
    channels = (int(shade[at : at + 2], 16) / 255 for at in (1, 3, 5))
    red, green, blue = (v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast of two colours, 1 to 21."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)
