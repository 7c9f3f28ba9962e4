"""`speclint begin`."""

from __future__ import annotations

import argparse
import os
from pathlib import Path

from speclint.commands.common import put
from speclint.commands.files import Refused, write_file
from speclint.outputs.letter import visible
from speclint.paths import shipped


def run(stated: argparse.Namespace) -> int:
    """Write the starter plan, unless something is there already."""
    path = Path(stated.file)
    if not path.name or os.path.isdir(path):
        raise Refused(f"“{stated.file}” is not the name of a file to write", 3)
    if path.suffix != ".plan":
        path = path.with_name(path.name + ".plan")
    if os.path.exists(path):
        raise Refused(f"{path} is already there; it was left as it is", 3)
    write_file(path, shipped("specs").joinpath("starter.plan").read_text(encoding="utf-8"))
    put(visible(f"{path} is written. Change what is stated there, then: speclint review {path}") + "\n")
    return 0
