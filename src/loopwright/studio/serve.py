"""Starting a studio: a port of this machine, the address on standard output, the browser."""

from __future__ import annotations

import socket
import sys
import threading
import webbrowser
from dataclasses import replace

import uvicorn

from loopwright.studio.app import create
from loopwright.studio.settings import HOST, MOST_BODY, Settings, usual_port
from loopwright.workshop.files import CannotSave

_AFTER_S = 0.3  # the server is up by then


def serve(settings: Settings, *, browser: bool) -> None:
    """Serves until it is stopped. Raises CannotOpen for a folder that is none, CannotSave for a port that is taken."""
    app_of = replace(settings, port=settings.port or usual_port(settings.folder))
    listening = _listen(app_of.port, other=not settings.port)
    settings = replace(settings, port=listening.getsockname()[1])
    app = create(settings)
    config = uvicorn.Config(
        app, log_level="warning", access_log=False, ws="websockets-sansio", lifespan="on", server_header=False, ws_max_size=MOST_BODY,
        ws_per_message_deflate=False, timeout_graceful_shutdown=2,
    )
    server = uvicorn.Server(config)
    print(settings.address, flush=True)
    if browser:
        threading.Timer(_AFTER_S, lambda: _open(settings.address)).start()
    server.run(sockets=[listening])


def _open(address: str) -> None:
    try:
        found = webbrowser.open(address)
    except webbrowser.Error:
        found = False
    if not found:
        print("loopwright: no browser could be opened; open the address above in one", file=sys.stderr)


def _listen(port: int, *, other: bool) -> socket.socket:
    """A socket on a port; with `other`, on any port that is free where this one is not."""
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((HOST, port))
        listening.listen()
    except OSError as e:
        listening.close()
        if other:
            return _listen(0, other=False)
        raise CannotSave(f"port {port} cannot be used ({e.strerror or e}): choose another with --port, or leave it out") from None
    return listening
