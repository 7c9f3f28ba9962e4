"""Trade units in SI, for publications that print feet, inches and pounds."""

INCH = 0.0254
FOOT = 0.3048
POUND = 4.4482216152605
PSI = POUND / INCH**2
PSF = POUND / FOOT**2
PCF = POUND / FOOT**3
INCH_AN_HOUR = 25.4
"""One inch of rain an hour. [mm/h]"""
SQUARE_FOOT_INCH = FOOT**2 * INCH_AN_HOUR
"""One square foot of roof at one inch of rain an hour. [m2 mm/h]"""
GALLON_A_MINUTE = 231 * INCH**3 / 60
"""One US gallon a minute. [m3/s]"""
