"""Work for an answer, done in another process: with a time limit, stopped where it is outdated, so that nothing waits for it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from loopwright.studio.desk import VIEW_S, Desk
from loopwright.studio.workers import OutdatedError, TookTooLongError, WorkerError
from loopwright.workshop.files import CannotSave

if TYPE_CHECKING:
    from starlette.requests import Request


async def worked(request: Request, name: str, what: str, *given: Any, newest: bool = False, time_s: float = VIEW_S) -> Any:
    """What a function of studio/pieces.py gives for a design. Raises CannotSave with the words of what it could not do.

    `newest`: where a newer piece of the same kind makes this one needless; it then raises OutdatedError.
    """
    desk: Desk = request.app.state.desk
    try:
        good, value = await desk.work(name, f"pieces:{what}", *given, newest=newest, time_s=time_s)
    except OutdatedError:
        raise
    except TookTooLongError:
        raise CannotSave("this took too long and was stopped; the pattern is safe and saved") from None
    except WorkerError as e:
        raise CannotSave(f"this failed ({e or type(e).__name__}); the pattern is safe and saved") from None
    if not good:
        raise CannotSave(value)
    return value
