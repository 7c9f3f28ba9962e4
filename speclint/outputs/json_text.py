"""Plain data as JSON text."""

from __future__ import annotations

import json
import re
from typing import Any

_OBEYED = re.compile("[\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")


def as_json(found: Any) -> str:
    """Plain data as JSON, with the control characters that JSON would let through written out."""
    return _shown(json.dumps(found, indent=2, ensure_ascii=False)) + "\n"


def as_json_line(found: Any) -> str:
    """The same on one line, without its end."""
    return _shown(json.dumps(found, separators=(",", ":"), ensure_ascii=False))


def _shown(text: str) -> str:
    return _OBEYED.sub(_written_out, text)


def _written_out(found: re.Match[str]) -> str:
    return f"\\u{ord(found[0]):04x}"
