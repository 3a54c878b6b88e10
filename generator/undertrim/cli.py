"""The command line: `undertrim <verb>`. Exit 0 fine, 1 problems found, 2 usage, 3 our own fault."""

import argparse
import sys
import traceback
from collections.abc import Sequence

from undertrim import __version__
from undertrim.commands import COMMANDS, Usage
from undertrim.record.store import NoWorkspace

USAGE = 2
OUR_FAULT = 3


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code."""
    options = parser().parse_args(arguments)
    try:
        return int(options.run(options))
    except BrokenPipeError:
        sys.stderr.close()
        return 0
    except (Usage, NoWorkspace) as error:
        print(f"undertrim: {error}", file=sys.stderr)
        return USAGE
    except KeyboardInterrupt:
        return 130
    except Exception:  # noqa: BLE001 - the last stop before the shell
        traceback.print_exc()
        print(
            f"undertrim {__version__}: this is our fault. Report it with the lines above and the record.",
            file=sys.stderr,
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
        verb.set_defaults(run=command.run)
    return top


if __name__ == "__main__":
    sys.exit(main())
