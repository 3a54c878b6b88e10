"""The command line: `undertrim <verb>`. Exit 0 fine, 1 problems found, 2 usage or surroundings, 3 our own fault."""

import argparse
import gc
import os
import sys
import traceback
from collections.abc import Callable, Collection, Sequence
from pathlib import Path

from undertrim import __version__
from undertrim.commands import COMMANDS, Command
from undertrim.commands import help as help_of_commands
from undertrim.commands.ending import end_tidily_when_told, leave_output, of_the_surroundings, show_anything
from undertrim.commands.usage import Usage
from undertrim.record.collection import settings, spoken_in
from undertrim.record.combinations import TooMany
from undertrim.record.root import NoWorkspace, root
from undertrim.words import ENGLISH, Language, Value, docs, message, of_environment, say, speaking
from undertrim.work.refused import Refused

PROBLEMS = 1
USAGE = 2
OUR_FAULT = 3


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code."""
    gc.set_threshold(
        200_000, 20, 50
    )  # what is made stays to the end: looking for what may go took a twentieth of a build
    show_anything()
    end_tidily_when_told()
    return _told(lambda: _in_its_language(arguments))


def _in_its_language(arguments: Sequence[str] | None) -> int:
    """Run one command in the language of its reader, and tell in it too what ends it early."""
    with speaking(_asked(arguments)):
        return _told(lambda: _ended(arguments))


def _told(work: Callable[[], int]) -> int:
    """The exit code of some work; whatever ends it early is told."""
    try:
        return work()
    except BrokenPipeError:
        leave_output()
        return 0
    except (Usage, NoWorkspace, Refused) as error:
        return _say(error.said, USAGE)
    except TooMany as error:
        return _say(error.said, PROBLEMS)
    except MemoryError:
        return _say(message("ending/no-memory"), USAGE)
    except KeyboardInterrupt:
        return 130
    except OSError as error:
        if error.filename is None:
            leave_output()  # it may be the output itself that is full
        said = of_the_surroundings(error)
        return _say(said, USAGE) if said else _our_fault()
    except Exception:  # noqa: BLE001 - the last stop before the shell
        return _our_fault()


def _ended(arguments: Sequence[str] | None) -> int:
    """Run it to the end, which is when all it says has been written."""
    try:
        options = parser(_named(arguments)).parse_args(arguments)
        return int(options.run(options))
    finally:
        sys.stdout.flush()


def _named(arguments: Sequence[str] | None) -> set[str]:
    """The commands that may be meant: all others need not be loaded."""
    return set(COMMANDS).intersection(sys.argv[1:] if arguments is None else arguments)


def _asked(arguments: Sequence[str] | None) -> Language:
    """The language of whoever asks, by option or by environment, else the first of the collection. It is looked up before anything is said, help included.

    Raises NoSuchLanguage and BadSettings.
    """
    first = argparse.ArgumentParser(add_help=False, allow_abbrev=False, exit_on_error=False)
    first.add_argument("--language")
    first.add_argument("--in", dest="root", type=Path)
    try:
        options, _ = first.parse_known_args(arguments)
    except argparse.ArgumentError:
        return ENGLISH  # the parser of all commands says what is wrong with it
    return spoken_in(options.language or of_environment(os.environ) or _of_the_collection(options.root or Path.cwd()))


def _of_the_collection(start: Path) -> str:
    try:
        return settings(root(start)).language[0]
    except NoWorkspace:
        return ENGLISH.tag


def _say(said: Value, code: int) -> int:
    print(f"undertrim: {say(said)}", file=sys.stderr)
    return code


def _our_fault() -> int:
    traceback.print_exc()
    print(f"undertrim {__version__}: {say(message('ending/our-fault'))}.", file=sys.stderr)
    return OUR_FAULT


class _OfSome(argparse.ArgumentParser):
    """Knows what is said of some commands; its help is about all."""

    def format_help(self) -> str:
        return parser().format_help()


def parser(loaded: Collection[str] = COMMANDS) -> argparse.ArgumentParser:
    """The argument parser, in the reader's language; of commands that are not to be loaded it knows the name alone."""
    help_of_commands.answer_argparse()
    made = argparse.ArgumentParser if loaded is COMMANDS else _OfSome
    top = made(prog="undertrim", description="Check, plan and publish fitment records.")
    top.add_argument(
        "--version",
        action="version",
        version=f"undertrim {__version__}",
        help="show program's version number and exit",
    )
    verbs = top.add_subparsers(title="commands", metavar="COMMAND", required=True, parser_class=argparse.ArgumentParser)
    for name in COMMANDS:
        if name in loaded:
            _add(verbs, name, COMMANDS[name])
        else:
            verbs.add_parser(name)
    help_of_commands.tell(top)
    return top


def _add(verbs: "argparse._SubParsersAction[argparse.ArgumentParser]", name: str, command: Command) -> None:
    page = docs.page(f"commands/{name}", command.__doc__)
    verb = verbs.add_parser(
        name,
        help=docs.first_line(page),
        description=page,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.configure(verb)
    verb.add_argument(
        "--language",
        metavar="TAG",
        help="the language to speak (default: that of the environment, else the collection's)",
    )
    verb.set_defaults(run=command.run)


if __name__ == "__main__":
    sys.exit(main())
