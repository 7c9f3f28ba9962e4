"""Lines with roles on a terminal, in colours that tell themselves apart in brightness as well as in hue."""

from __future__ import annotations

from speclint.outputs.letter import Line, Role, visible

STYLES: dict[Role, str] = {
    "plain": "",
    "title": "bold",
    "hold": "bold reverse",
    "revise": "bold yellow",
    "note": "bold cyan",
    "number": "bold",
    "element": "underline",
    "label": "bold blue",
    "quiet": "dim",
    "good": "bold cyan",
}


def styled(lines: list[Line], width: int) -> str:
    """The lines as text with the terminal's colour codes."""
    import io

    from rich.console import Console
    from rich.text import Text

    out = io.StringIO()
    console = Console(file=out, force_terminal=True, width=width, highlight=False, emoji=False, legacy_windows=False)
    for line in lines:
        text = Text(no_wrap=True, overflow="ignore")
        for part in line:
            text.append(visible(part.text), STYLES[part.role])
        console.print(text, soft_wrap=True)
    return out.getvalue()
