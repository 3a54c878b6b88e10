"""The site as a shop serves it: on a server that can be shut, at an address that stays; and how tests talk with the keeper."""

import functools
import http.server
import threading
from pathlib import Path


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None: ...


class _Server(http.server.ThreadingHTTPServer):
    """Whoever goes away in the middle of an answer is no fault of its own."""

    def handle_error(self, *_: object) -> None: ...


class Shop:
    """The site on a server that can be shut, at an address that stays."""

    def __init__(self, folder: Path) -> None:
        self.folder, self._port = folder, 0
        self._server: _Server | None = None
        self.open()

    def open(self) -> None:
        handler = functools.partial(_Quiet, directory=str(self.folder))
        self._server = _Server(("127.0.0.1", self._port), handler)
        self._port = self._server.server_address[1]
        threading.Thread(target=self._server.serve_forever, daemon=True).start()

    def shut(self) -> None:
        if self._server:
            self._server.shutdown()
            self._server.server_close()
            self._server = None

    def at(self, name: str) -> str:
        return f"http://127.0.0.1:{self._port}/{name}"


ASK = """async (what) => {
  const { active } = await navigator.serviceWorker.ready;
  return new Promise((resolve) => { const ways = new MessageChannel(); ways.port1.onmessage = (event) => resolve(event.data); active.postMessage(what, [ways.port2]); });
}"""
"""Asks the keeper something, from a page."""
