"""The site as a shop serves it: on a server that can be shut, at an address that stays; and how tests talk with the keeper."""

import functools
import http.server
import json
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any


class _Quiet(http.server.SimpleHTTPRequestHandler):
    """The site as a server gives it, with its page for what is not there."""

    def log_message(self, *_: object) -> None: ...

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        self._send(code, "text/html; charset=utf-8", Path(self.directory, "404.html").read_bytes())

    def _send(self, code: int, kind: str, body: bytes) -> None:
        self.send_response(code)
        self.send_header("Content-Type", kind)
        self.end_headers()
        self.wfile.write(body)


class _Little(_Quiet):
    """One whose keeper has one file to keep. For a device that is new at each page all of them are two thirds of the work."""

    def do_GET(self) -> None:
        if not self.path.endswith("keeper/list.json"):
            return super().do_GET()
        whole: dict[str, Any] = json.loads(Path(self.translate_path(self.path)).read_text(encoding="utf-8"))
        little = whole | {"files": dict(list(whole["files"].items())[:1]), "desk": {}, "makes": {}}
        return self._send(200, "application/json", json.dumps(little).encode())


class _Server(http.server.ThreadingHTTPServer):
    """Whoever goes away in the middle of an answer is no fault of its own."""

    def handle_error(self, *_: object) -> None: ...


class Shop:
    """The site on a server that can be shut, at an address that stays; `little` where its devices need not keep all of it."""

    def __init__(self, folder: Path, *, little: bool = False) -> None:
        self.folder, self._port = folder, 0
        self._handler = _Little if little else _Quiet
        self._server: _Server | None = None
        self.open()

    def open(self) -> None:
        handler = functools.partial(self._handler, directory=str(self.folder))
        self._server = _Server(("127.0.0.1", self._port), handler)
        self._port = self._server.server_address[1]
        threading.Thread(target=self._server.serve_forever, args=(0.05,), daemon=True).start()

    def shut(self) -> None:
        if self._server:
            self._server.shutdown()
            self._server.server_close()
            self._server = None

    def at(self, name: str) -> str:
        return f"http://127.0.0.1:{self._port}/{name}"


@contextmanager
def serving(folder: Path, *, little: bool = False) -> Iterator[Shop]:
    """A shop that is shut at the end."""
    made = Shop(folder, little=little)
    yield made
    made.shut()


ASK = """async (what) => {
  const { active } = await navigator.serviceWorker.ready;
  return new Promise((resolve) => { const ways = new MessageChannel(); ways.port1.onmessage = (event) => resolve(event.data); active.postMessage(what, [ways.port2]); });
}"""
"""Asks the keeper something, from a page."""
