"""A rule page: Markdown with one fenced rule, an explanation, and plan snippets that trip it and cure it."""

from __future__ import annotations

from dataclasses import dataclass

HEADINGS = (
    "What it finds",
    "Why it matters",
    "How to cure it",
    "When to accept it",
    "Trips it",
    "Cured",
    "Limits",
    "Sources",
)


@dataclass(frozen=True, slots=True)
class Snippet:
    """A fenced block of a page, and the line of the page on which its text begins."""

    text: str
    line: int


@dataclass(frozen=True, slots=True)
class Page:
    """A rule page taken apart."""

    file: str
    title: str
    rule: Snippet | None
    sections: dict[str, str]
    trips: tuple[Snippet, ...]
    cured: tuple[Snippet, ...]


def read_page(text: str, file: str) -> Page:
    """A rule page taken apart by its headings and fences."""
    title, heading = "", ""
    rule: Snippet | None = None
    sections: dict[str, list[str]] = {}
    snippets: dict[str, list[Snippet]] = {}
    fence, start, kept = "", 0, list[str]()
    for number, line in enumerate(text.splitlines(), 1):
        if fence:
            if line.strip() == "```":
                snippet = Snippet("\n".join(kept) + "\n", start + 1)
                if fence == "rule":
                    rule = rule or snippet
                else:
                    snippets.setdefault(heading, []).append(snippet)
                fence = ""
            else:
                kept.append(line)
        elif line.startswith("```"):
            fence, start, kept = line.strip("` ") or "text", number, []
        elif line.startswith("## "):
            heading = line[3:].strip()
            sections[heading] = []
        elif line.startswith("# "):
            title = line[2:].strip()
        elif heading:
            sections[heading].append(line)
    return Page(
        file,
        title,
        rule,
        {name: "\n".join(lines).strip() for name, lines in sections.items()},
        tuple(snippets.get("Trips it", ())),
        tuple(snippets.get("Cured", ())),
    )
