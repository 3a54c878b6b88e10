"""A server of the language YAML as editors start it, spoken to over its standard input and output."""

import json
import os
import shutil
import subprocess
from pathlib import Path
from types import TracebackType
from typing import Any

import pytest

from pages import ROOT

PROGRAM = ROOT / "node_modules" / "yaml-language-server" / "bin" / "yaml-language-server"


def command() -> list[str]:
    """How to start it. Without Node or the server the test is skipped, or fails where UNDERTRIM_NODE=required."""
    node = shutil.which("node")
    if node and PROGRAM.is_file():
        return [node, str(PROGRAM), "--stdio"]
    why = "no server of the language YAML here: '.ci/lint-web --fetch' fetches it, where there is Node and npm"
    if os.environ.get("UNDERTRIM_NODE") == "required":
        pytest.fail(why)
    pytest.skip(why)


class Server:
    """A running server; texts are opened one by one, under the path that they would have."""

    def __init__(self) -> None:
        self.process = subprocess.Popen(
            command(), stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL
        )
        self.number = 0
        self.told: dict[str, list[Any]] = {}

    def __enter__(self) -> "Server":
        self.ask("initialize", {"processId": os.getpid(), "rootUri": ROOT.as_uri(), "capabilities": _ABLE})
        self.tell("initialized", {})
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.process.kill()
        self.process.communicate()

    def tell(self, method: str, given: Any) -> None:
        """Send a note."""
        self._send({"method": method, "params": given})

    def ask(self, method: str, given: Any) -> Any:
        """Send a question and wait for its answer."""
        self.number += 1
        mine = self.number
        self._send({"id": mine, "method": method, "params": given})
        while True:
            said = self._next()
            if said.get("id") == mine and "method" not in said:
                assert "error" not in said, said
                return said["result"]

    def problems(self, path: Path, text: str) -> list[Any]:
        """Open a text, or change the one that is open there, and wait for what is said of it."""
        uri = path.as_uri()
        self.number += 1
        self.told.pop(uri, None)
        document = {"uri": uri, "languageId": "yaml", "version": self.number, "text": text}
        self.tell("textDocument/didOpen", {"textDocument": document})
        while uri not in self.told:
            self._next()
        return self.told[uri]

    def hover(self, path: Path, line: int, column: int) -> str:
        """What is shown over a place, counted from 0."""
        found = self.ask("textDocument/hover", _place(path, line, column))
        return found["contents"]["value"] if found else ""

    def offered(self, path: Path, line: int, column: int) -> list[str]:
        """What may be completed at a place."""
        found = self.ask("textDocument/completion", _place(path, line, column))
        return [item["label"] for item in found["items"]]

    def _send(self, said: dict[str, Any]) -> None:
        assert self.process.stdin
        body = json.dumps({"jsonrpc": "2.0", **said}).encode()
        self.process.stdin.write(f"Content-Length: {len(body)}\r\n\r\n".encode() + body)
        self.process.stdin.flush()

    def _next(self) -> dict[str, Any]:
        assert self.process.stdout
        size = 0
        while line := self.process.stdout.readline().strip():
            name, _, value = line.partition(b":")
            size = int(value) if name.lower() == b"content-length" else size
        assert size, "the server has ended"
        said: dict[str, Any] = json.loads(self.process.stdout.read(size))
        if said.get("method") == "textDocument/publishDiagnostics":
            self.told[said["params"]["uri"]] = said["params"]["diagnostics"]
        elif "id" in said and "method" in said:
            answer = [_SETTINGS.get(item["section"]) for item in said["params"]["items"]] if said["method"] == "workspace/configuration" else None  # fmt: skip
            self._send({"id": said["id"], "result": answer})
        return said


_SETTINGS = {"yaml": {"schemaStore": {"enable": False}, "validate": True, "hover": True, "completion": True}}
_ABLE = {
    "workspace": {"configuration": True, "didChangeConfiguration": {"dynamicRegistration": True}},
    "textDocument": {
        "hover": {"contentFormat": ["markdown"]},
        "completion": {"completionItem": {"snippetSupport": True}},
    },
}


def _place(path: Path, line: int, column: int) -> dict[str, Any]:
    return {"textDocument": {"uri": path.as_uri()}, "position": {"line": line, "character": column}}
