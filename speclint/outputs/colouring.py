"""The words of the plan language for programs that do not hold the model: a list, and a grammar for colouring."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from typing import Any

from speclint.model.build import STRUCTURE
from speclint.model.element import settings_of
from speclint.model.kinds import KINDS
from speclint.paths import shipped

MADE = "Made from the model by `sh .ci/tasks reference`; do not edit by hand."
VARIANCE = ("because", "accepted by", "until")
_SUFFIX = "speclint"
_NOTE_BEGINS = r"(?:^|(?<=[;{}]))[ \t]*"
_SETTING_BEGINS = r"(?:^|(?<=[;{,]))[ \t]*"
_WORD_ENDS = r"(?![\w-])"


def language_words() -> str:
    """The structure words of the language and the settings of each kind of element, as JSON."""
    settings = {kind: ["like", *settings_of(model)] for kind, model in KINDS.items()}
    return _as_json({"made": MADE, "structure": STRUCTURE, "settings": {**settings, "variance": VARIANCE}})


def colouring() -> str:
    """A grammar for colouring plans in the open TextMate form, as JSON.

    Its expressions keep to what both Oniguruma and Python read in the same way.
    """
    rules = {
        "comment": _rule(r"#.*$", "comment.line.number-sign"),
        "text": _rule(r'"[^"\n]*"', "string.quoted.double"),
        "unclosed": _rule(_terminal("UNCLOSED"), "invalid.unclosed"),
        **_heads(),
        "setting": _rule(f"{_SETTING_BEGINS}({_any(_setting_names())}){_WORD_ENDS}", "", "variable.parameter"),
        "certainty": _rule(rf"(?<![\w-])(?:unknown|assumed){_WORD_ENDS}", "keyword.other"),
        "choice": _rule(rf"(?<![\w-])(?:{_any(_choices())}){_WORD_ENDS}", "constant.language"),
        "bearing": _rule(rf"(?<!\w){_terminal('BEARING')}", "constant.numeric.bearing"),
        "quantity": _rule(rf"(?<![\w.-]){_terminal('QUANTITY')}", "constant.numeric"),
        "punctuation": _rule(r"[{};,]", "punctuation.separator"),
    }
    return _as_json(
        {
            "comment": MADE,
            "name": "Plan",
            "scopeName": f"source.{_SUFFIX}",
            "fileTypes": ["plan"],
            "patterns": [{"include": f"#{name}"} for name in rules],
            "repository": rules,
        }
    )


def _heads() -> dict[str, Any]:
    """The rules for what stands before a block."""
    kinds = _any(KINDS)
    words = '[^\\s{};,"#][^{};"#\\n]*?'
    return {
        "variance": _rule(
            rf"{_NOTE_BEGINS}(variance)[ \t]+([\w-]+)(?:[ \t]+(on)(?:[ \t]+({words}))?)?(?=[ \t]*(?:$|[{{;#]))",
            "",
            "keyword.control",
            "entity.name.function",
            "keyword.control",
            "entity.name.type",
        ),
        "element": _rule(
            rf"{_NOTE_BEGINS}(?:(typical)[ \t]+)?({kinds})(?:[ \t]+({words}))?(?=[ \t]*\{{)",
            "",
            "keyword.control",
            "storage.type",
            "entity.name.type",
        ),
        "structure": _rule(f"{_NOTE_BEGINS}({_any(STRUCTURE)}){_WORD_ENDS}", "", "keyword.control"),
    }


def _rule(match: str, whole: str, *groups: str) -> dict[str, Any]:
    """One rule: an expression, the scope of all it matches, and those of its groups."""
    rule: dict[str, Any] = {"match": match}
    if whole:
        rule["name"] = f"{whole}.{_SUFFIX}"
    if groups:
        rule["captures"] = {str(at): {"name": f"{group}.{_SUFFIX}"} for at, group in enumerate(groups, 1)}
    return rule


def _terminal(name: str) -> str:
    """The expression of a terminal of the language's own grammar."""
    grammar = shipped("grammar").joinpath("plan.lark").read_text(encoding="utf-8")
    found = re.search(rf"^{name}(?:\.-?\d+)?: /(.*)/$", grammar, re.MULTILINE)
    if found is None:
        raise LookupError(f"wanted a terminal {name} in plan.lark; got none")
    return f"(?:{found[1]})"


def _setting_names() -> set[str]:
    return {"like", *VARIANCE, *(name for model in KINDS.values() for name in settings_of(model))}


def _choices() -> set[str]:
    return {
        phrase
        for model in KINDS.values()
        for setting in settings_of(model).values()
        for phrase in setting.choices or ()
        if re.search(r"[^\W\d_]", phrase)
    }


def _any(phrases: Iterable[str]) -> str:
    """An expression for any of the phrases, the longest first, with any blanks between their words."""
    longest_first = sorted(phrases, key=lambda phrase: (-len(phrase), phrase))
    return "|".join(r"[ \t]+".join(map(re.escape, phrase.split())) for phrase in longest_first)


def _as_json(value: dict[str, Any]) -> str:
    return json.dumps(value, ensure_ascii=False, indent=2) + "\n"
