"""The command line: `undertrim <verb>`. Exit 0 fine, 1 problems found, 2 usage or surroundings, 3 our own fault."""

import argparse
import sys
import traceback
from collections.abc import Sequence
from pathlib import Path

from undertrim import __version__
from undertrim.commands import COMMANDS, Usage
from undertrim.commands.ending import end_tidily_when_told, leave_output, of_the_surroundings, show_anything
from undertrim.derive.cars import TooMany
from undertrim.record.collection import settings, spoken_in
from undertrim.record.store import NoWorkspace, Workspace
from undertrim.words import ENGLISH, Language, say, speaking
from undertrim.work.refused import Refused

PROBLEMS = 1
USAGE = 2
OUR_FAULT = 3


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code."""
    show_anything()
    end_tidily_when_told()
    try:
        return _ended(arguments)
    except BrokenPipeError:
        leave_output()
        return 0
    except (Usage, NoWorkspace, Refused) as error:
        return _say(str(error), USAGE)
    except TooMany as error:
        return _say(say(error.said), PROBLEMS)
    except MemoryError:
        return _say("there is not enough memory for this: end something else, or leave some of it out", USAGE)
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
        with speaking(_asked(arguments)):
            options = parser().parse_args(arguments)
            return int(options.run(options))
    finally:
        sys.stdout.flush()


def _asked(arguments: Sequence[str] | None) -> Language:
    """The language of whoever asks, else that of the collection. It is looked up before anything is said, help included.

    Raises NoSuchLanguage and BadSettings.
    """
    first = argparse.ArgumentParser(add_help=False, allow_abbrev=False, exit_on_error=False)
    first.add_argument("--language")
    first.add_argument("--in", dest="root", type=Path)
    try:
        options, _ = first.parse_known_args(arguments)
    except argparse.ArgumentError:
        return ENGLISH  # the parser of all commands says what is wrong with it
    return spoken_in(options.language or _of_the_collection(options.root or Path.cwd()))


def _of_the_collection(start: Path) -> str:
    try:
        return settings(Workspace.around(start).root).language
    except NoWorkspace:
        return ENGLISH.tag


def _say(text: str, code: int) -> int:
    print(f"undertrim: {text}", file=sys.stderr)
    return code


def _our_fault() -> int:
    traceback.print_exc()
    print(
        f"undertrim {__version__}: this is our fault. Report it with the lines above and the record.", file=sys.stderr
    )
    return OUR_FAULT


def parser() -> argparse.ArgumentParser:
    """The argument parser with all commands."""
    top = argparse.ArgumentParser(prog="undertrim", description="Check, plan and publish fitment records.")
    top.add_argument("--version", action="version", version=f"undertrim {__version__}")
    verbs = top.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for name, command in COMMANDS.items():
        summary = (command.__doc__ or "").strip().splitlines()[0]
        verb = verbs.add_parser(
            name, help=summary, description=command.__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
        )
        command.configure(verb)
        verb.add_argument("--language", metavar="TAG", help="the language to speak (default: the collection's)")
        verb.set_defaults(run=command.run)
    return top


if __name__ == "__main__":
    sys.exit(main())
