"""`speclint completion`: scripts made from the parser itself, so that they cannot fall behind it."""

from __future__ import annotations

import argparse

from speclint.commands.common import put
from speclint.commands.words import parser


def run(stated: argparse.Namespace) -> int:
    """Print the completion script of a shell."""
    commands = _commands()
    put({"bash": _bash, "zsh": _zsh, "fish": _fish}[stated.shell](commands))
    return 0


def _commands() -> dict[str, list[str]]:
    """The options of each command."""
    found: dict[str, list[str]] = {}
    for action in parser()._actions:
        if isinstance(action, argparse._SubParsersAction):
            for name, command in action.choices.items():
                options = [text for one in command._actions for text in one.option_strings if text.startswith("--")]
                found[name] = options
    return found


def _bash(commands: dict[str, list[str]]) -> str:
    cases = "\n".join(f'        {name}) words="{" ".join(options)}" ;;' for name, options in commands.items())
    return f"""_speclint() {{
    local here="${{COMP_WORDS[COMP_CWORD]}}" words=""
    if [ "$COMP_CWORD" -eq 1 ]; then
        COMPREPLY=($(compgen -W "{" ".join(commands)} --version --help" -- "$here"))
        return
    fi
    case "${{COMP_WORDS[1]}}" in
{cases}
    esac
    if [[ "$here" == -* ]]; then
        COMPREPLY=($(compgen -W "$words" -- "$here"))
    else
        COMPREPLY=($(compgen -f -- "$here"))
    fi
}}
complete -o filenames -F _speclint speclint
"""


def _zsh(commands: dict[str, list[str]]) -> str:
    return "autoload -U +X bashcompinit && bashcompinit\n" + _bash(commands)


def _fish(commands: dict[str, list[str]]) -> str:
    names = " ".join(commands)
    lines = [f"complete -c speclint -n __fish_use_subcommand -f -a '{names}'"]
    for name, options in commands.items():
        for option in options:
            lines.append(f"complete -c speclint -n '__fish_seen_subcommand_from {name}' -l {option.lstrip('-')}")
    return "\n".join(lines) + "\n"
