"""Printed units in the units that the science takes, stated apart from the program's own."""

INCH = 0.0254
FOOT = 0.3048
SQUARE_INCH = 0.00064516
SQUARE_FOOT = 0.09290304
POUND = 4.448221615
PSF = 47.88025898
PSI = 6894.757293
PCF = 157.0874638
INCH_AN_HOUR = 25.4
SQUARE_FOOT_INCH_AN_HOUR = SQUARE_FOOT * INCH_AN_HOUR
GALLON_A_MINUTE = 6.30901964e-5


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8
