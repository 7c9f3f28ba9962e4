"""speclint: plan review for the exterior of log and timber homes."""

__version__ = "0.1.0"
