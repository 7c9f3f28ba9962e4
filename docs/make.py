"""Builds the documentation site: hand-written pages, and pages made from model, rules, science and tests.

`sh .ci/tasks site` runs it: pages are gathered in build/site-pages, and mkdocs sets them in build/site.
"""

from __future__ import annotations

import csv
import importlib
import inspect
import pkgutil
import shutil
import subprocess
import sys
from collections import Counter
from pathlib import Path

import speclint.science
from speclint.citation import publications
from speclint.outputs.reference import glossary, language_reference
from speclint.rulebook.book import load_rulebook
from speclint.science.after import source_of

ROOT = Path(__file__).resolve().parents[1]
PAGES, BUILT = ROOT / "build" / "site-pages", ROOT / "build" / "site"


def gather() -> None:
    """Put every page in place."""
    shutil.rmtree(PAGES, ignore_errors=True)
    shutil.copytree(ROOT / "docs" / "pages", PAGES)
    shutil.copytree(ROOT / "rules", PAGES / "rules")
    shutil.copytree(ROOT / "tests" / "drawing" / "sheets", PAGES / "sheets")
    (PAGES / "language.md").write_text(language_reference(), encoding="utf-8")
    (PAGES / "measures.md").write_text(measures_page(), encoding="utf-8")
    (PAGES / "trust.md").write_text(trust_page(), encoding="utf-8")


def measures_page() -> str:
    """What is computed: every quantity of a plan, then every function of the science with its units and source."""
    parts = ["# What is computed", "", "## Quantities of a plan", "", glossary(), "## Equations", ""]
    parts.append(
        "SI units throughout, temperatures in degrees Celsius, moisture in percent, as publications print them."
    )
    for found in pkgutil.iter_modules(speclint.science.__path__):
        module = importlib.import_module(f"speclint.science.{found.name}")
        functions = [one for one in vars(module).values() if inspect.isfunction(one) and _sourced(one, module.__name__)]
        if functions:
            parts += ["", f"### {found.name.replace('_', ' ').capitalize()}", "", (module.__doc__ or "").strip()]
        for function in functions:
            told = inspect.cleandoc(function.__doc__ or "")
            parts += ["", f"#### {function.__name__}", "", "```text", told, "```"]
    return "\n".join(parts) + "\n"


def _sourced(function: object, module: str) -> bool:
    if getattr(function, "__module__", "") != module:
        return False
    try:
        source_of(function)  # type: ignore[arg-type]
    except LookupError:
        return False
    return True


def trust_page() -> str:
    """How far each source was read, and what of it is checked in tests."""
    keys = publications()
    counted: dict[str, Counter[str]] = {}
    disagree: list[str] = []
    for path in sorted((ROOT / "tests" / "published" / "cases").glob("*.csv")):
        key = path.stem.rsplit("_", 1)[0]
        with path.open(encoding="utf-8", newline="") as opened:
            for row in csv.DictReader(opened):
                counted.setdefault(key, Counter())[row["standing"]] += 1
                if row.get("disagrees"):
                    name = keys[key].title if key in keys else key.replace("-", " ")
                    disagree.append(f"| {name} | {row['case']} | {row['printed']} | {row['disagrees']} |")
    rows = []
    for key, standings in sorted(counted.items()):
        name = f"{keys[key].title} ({keys[key].year})" if key in keys else key.replace("-", " ")
        told = ", ".join(f"{count} {standing}" for standing, count in standings.most_common())
        rows.append(f"| {name} | {sum(standings.values())} | {told} |")
    rules = load_rulebook().rules
    standing = Counter(basis.standing for rule in rules for basis in rule.basis)
    return "\n".join(
        [
            "# Why trust this number",
            "",
            "Every value that speclint shows is computed or cited, and says how far its source was read.",
            "",
            "- `published`: the publication itself, or a mirror of it, was read.",
            "- `second-hand`: it was read in a copy, a reproduction or a summary by others.",
            "- `memory`: recalled, and not found again. It says so wherever it is shown.",
            "- `common practice`: what the trade does; there is no source.",
            "- `ours`: a judgement of this project, which can be changed.",
            "",
            f"The bases of the {len(rules)} rules: "
            + ", ".join(f"{count} {name}" for name, count in standing.most_common())
            + ".",
            "",
            "## Values checked against print",
            "",
            "Each row is a test: the printed value, digits as printed, against what the program computes.",
            "",
            "| publication | values | how far it was read |",
            "|---|---|---|",
            *rows,
            "",
            "## Where print and program disagree",
            "",
            "These rows stay as printed and are expected to fail, so that the day they agree is noticed.",
            "",
            "| publication | case | printed | why |",
            "|---|---|---|---|",
            *disagree,
            "",
        ]
    )


def main() -> int:
    """Gather the pages and set them."""
    gather()
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "-q", "-f", str(ROOT / "docs" / "mkdocs.yml")]
    return subprocess.run(command, check=False).returncode


if __name__ == "__main__":
    sys.exit(main())
