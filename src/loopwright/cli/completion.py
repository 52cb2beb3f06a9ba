"""Shell completion, made from the command's own parser so that the two cannot differ."""

from __future__ import annotations

import argparse

from loopwright.record import record

SHELLS = ("bash", "zsh", "fish")


@record
class Option:
    """A flag and its help; `choices` are the words that may follow it, `takes` whether anything follows."""

    flag: str
    about: str
    choices: tuple[str, ...]
    takes: bool


@record
class Verb:
    """A verb with its options, and the words that it may be given (none: files)."""

    name: str
    about: str
    options: tuple[Option, ...]
    words: tuple[str, ...]


def script(parser: argparse.ArgumentParser, shell: str) -> str:
    """The completion script for a shell. Raises KeyError for one that is not known."""
    return {"bash": _bash, "zsh": _zsh, "fish": _fish}[shell](_verbs(parser))


def _verbs(parser: argparse.ArgumentParser) -> tuple[Verb, ...]:
    actions = [a for a in parser._actions if isinstance(a, argparse._SubParsersAction)]  # noqa: SLF001 (argparse tells it in no other way)
    about = {c.dest: c.help or "" for a in actions for c in a._choices_actions}  # noqa: SLF001
    return tuple(_verb(name, about.get(name, ""), sub) for a in actions for name, sub in a.choices.items())


def _verb(name: str, about: str, parser: argparse.ArgumentParser) -> Verb:
    options = []
    words: list[str] = []
    for action in parser._actions:  # noqa: SLF001
        if not action.option_strings:
            words += map(str, action.choices or ())
            continue
        takes = action.nargs != 0
        options += [Option(f, action.help or "", tuple(map(str, action.choices or ())), takes) for f in action.option_strings]
    return Verb(name, about, tuple(options), tuple(words))


_BASH = """\
# To have it in every shell:  loopwright completion bash >> ~/.bashrc
_loopwright() {
    local word="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}" verb="${COMP_WORDS[1]}" found="" flags=""
    COMPREPLY=()
    if [ "$COMP_CWORD" -eq 1 ]; then
        COMPREPLY=($(compgen -W "@VERBS@ --help --version" -- "$word"))
        return
    fi
    case "$verb $before" in
@CHOICES@
    esac
    case "$verb" in
@FLAGS@
    esac
    if [ -n "$found" ]; then
        COMPREPLY=($(compgen -W "$found" -- "$word"))
    elif [[ "$word" == -* ]]; then
        COMPREPLY=($(compgen -W "$flags" -- "$word"))
    else
        COMPREPLY=($(compgen -f -- "$word"))
    fi
}
complete -o filenames -F _loopwright loopwright
"""
_ZSH = """\
#compdef loopwright
# To have it in every shell:  loopwright completion zsh > _loopwright   in a folder of $fpath
_loopwright() {
    local -a verbs
    verbs=(
@VERBS@
    )
    if (( CURRENT == 2 )); then
        _describe verb verbs
        return
    fi
    case $words[2] in
@CASES@
    esac
}
compdef _loopwright loopwright
"""


def _bash(verbs: tuple[Verb, ...]) -> str:
    choices = [f'        "{v.name} {o.flag}") found="{" ".join(o.choices)}" ;;' for v in verbs for o in v.options if o.choices]
    flags = []
    for v in verbs:
        words = f' found="${{found:-{" ".join(v.words)}}}"' if v.words else ""
        flags.append(f'        {v.name}) flags="{" ".join(o.flag for o in v.options)}"{words} ;;')
    text = _BASH.replace("@VERBS@", " ".join(v.name for v in verbs))
    return text.replace("@CHOICES@", "\n".join(choices)).replace("@FLAGS@", "\n".join(flags))


def _zsh(verbs: tuple[Verb, ...]) -> str:
    cases = []
    for v in verbs:
        rest = f"'*:word:({' '.join(v.words)})'" if v.words else "'*:file:_files'"
        options = "".join(f"                '{o.flag}[{_quiet(o.about)}]{_zsh_value(o)}' \\\n" for o in v.options)
        cases.append(f"        {v.name})\n            _arguments \\\n{options}                {rest}\n            ;;")
    named = "\n".join(f"        '{v.name}:{_quiet(v.about)}'" for v in verbs)
    return _ZSH.replace("@VERBS@", named).replace("@CASES@", "\n".join(cases))


def _zsh_value(option: Option) -> str:
    if option.choices:
        return f":value:({' '.join(option.choices)})"
    return ":value:_files" if option.takes else ""


def _fish(verbs: tuple[Verb, ...]) -> str:
    names = " ".join(v.name for v in verbs)
    lines = ["# loopwright completion fish > ~/.config/fish/completions/loopwright.fish"]
    for v in verbs:
        lines.append(f"complete -c loopwright -n 'not __fish_seen_subcommand_from {names}' -f -a {v.name} -d '{_quiet(v.about)}'")
        here = f"complete -c loopwright -n '__fish_seen_subcommand_from {v.name}'"
        if v.words:
            lines.append(f"{here} -f -a '{' '.join(v.words)}'")
        for o in v.options:
            flag = f"-l {o.flag[2:]}" if o.flag.startswith("--") else f"-s {o.flag[1:]}"
            value = f" -x -a '{' '.join(o.choices)}'" if o.choices else " -r" if o.takes else ""
            lines.append(f"{here} {flag}{value} -d '{_quiet(o.about)}'")
    return "\n".join(lines) + "\n"


def _quiet(about: str) -> str:
    """Help without the signs that shells read."""
    return about.replace("'", "").replace("[", "(").replace("]", ")").replace(":", ",").replace('"', "").replace("%%", "%")
