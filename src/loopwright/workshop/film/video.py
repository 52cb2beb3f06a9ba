"""The video tool as a process of its own: what a video is, cards burned in, chapters and captions put in. The original is only read.

ffmpeg and ffprobe are packages of the system, not of ours; where they are missing everything but the cut is made.
"""

from __future__ import annotations

import json
import shutil
import subprocess
import tempfile
from collections.abc import Callable, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

from loopwright.filming.chapters import Chapter
from loopwright.filming.overlays import Shown
from loopwright.record import record
from loopwright.workshop.files import CannotSave
from loopwright.workshop.film.gather import CannotFilm
from loopwright.workshop.film.rasters import clear, png_on

SILENT_S = 180.0
"""Without a word of progress for so long the tool is stopped."""
_KEPT_SOUND = ("aac", "mp3", "ac3", "alac")
_WORDS = {"ENOSPC": "No space left on device", "EACCES": "Permission denied"}
LANGUAGES = {"en": "eng", "de": "deu", "fr": "fra", "es": "spa", "nl": "nld", "sv": "swe", "da": "dan", "pt": "por", "it": "ita"}
"""ISO 639-2 codes, as the file's tracks name languages."""


@record
class Video:
    """A video as its file says: upright size in pixels, length in seconds, whether and how it sounds ("" for silent)."""

    path: Path
    width_px: int
    height_px: int
    length_s: float
    sound: str


@record
class Track:
    """A track of captions: its WebVTT, its language, its title."""

    vtt: str
    language: str
    title: str


@record
class Cut:
    """What is to be made of a video."""

    video: Video
    shown: tuple[Shown, ...]
    tracks: tuple[Track, ...]
    chapters: tuple[Chapter, ...]
    mirrored: bool
    title: str


def tools() -> tuple[str, str]:
    """Where ffmpeg and ffprobe are. Raises CannotFilm where one is missing."""
    found = shutil.which("ffmpeg"), shutil.which("ffprobe")
    if found[0] is None or found[1] is None:
        raise CannotFilm(
            "ffmpeg is not installed, so the video was not cut; all other files were made. Install the package ffmpeg of your system "
            "(Debian, Ubuntu: apt install ffmpeg; macOS: brew install ffmpeg; Windows: winget install ffmpeg) and run the same line again",
        )
    return found[0], found[1]


def probe(path: Path) -> Video:
    """What a video is. Raises CannotFilm for a file that is missing or no video."""
    if not path.is_file():
        raise CannotFilm(f"there is no video {path}: check its name and folder")
    _, ffprobe = tools()
    asked = [ffprobe, "-v", "error", "-print_format", "json", "-show_format", "-show_streams", "--", str(path)]
    try:
        done = subprocess.run(asked, capture_output=True, timeout=SILENT_S, check=False, stdin=subprocess.DEVNULL)  # noqa: S603
        told = json.loads(done.stdout or b"{}")
    except (subprocess.TimeoutExpired, ValueError, OSError):
        raise CannotFilm(f"{path} cannot be looked at as a video") from None
    streams: list[dict[str, Any]] = told.get("streams", [])
    picture = next((s for s in streams if s.get("codec_type") == "video" and not s.get("disposition", {}).get("attached_pic")), None)
    length = _seconds(told.get("format", {}).get("duration")) or _seconds((picture or {}).get("duration"))
    if picture is None or length <= 0 or not picture.get("width") or not picture.get("height"):
        raise CannotFilm(f"{path} is no video that ffmpeg can read: name the film as the camera saved it (.mp4, .mov, .mkv, .webm)")
    wide, high = int(picture["width"]), int(picture["height"])
    turned = sum(abs(int(float(d.get("rotation", 0)))) for d in picture.get("side_data_list", [])) % 180 == 90
    sound = next((str(s.get("codec_name", "other")) for s in streams if s.get("codec_type") == "audio"), "")
    return Video(path, high if turned else wide, wide if turned else high, length, sound)


def cut(made: Cut, out: Path, *, replace: bool, progress: Callable[[float], None] | None = None) -> None:
    """Writes the cut, whole or not at all. Raises CannotFilm, CannotSave."""
    if out.exists() and out.samefile(made.video.path):
        raise CannotSave(f"{out} is the video itself, which is never written to: name another output folder")
    if out.exists() and not replace:
        raise CannotSave(f"{out} is there already: name another output folder, or add --replace")
    ffmpeg, _ = tools()
    with tempfile.TemporaryDirectory(prefix="loopwright-film-") as scratch:
        draft = out.with_name(f".{out.stem}.part.mp4")
        try:
            given = _given(made, Path(scratch))
            _run([ffmpeg, *given, str(draft)], made.video.length_s, out, progress)
            draft.replace(out)
        except OSError as e:
            raise CannotSave(f"{out} cannot be written ({e.strerror or e}): make room, or name another output folder") from None
        finally:
            with suppress(OSError):
                draft.unlink()


def _given(made: Cut, scratch: Path) -> list[str]:
    """The arguments: the video, the cards as a list of pictures, the tracks, the chapters."""
    size = made.video.width_px, made.video.height_px
    _pictures(made.shown, size, scratch)
    (scratch / "chapters.txt").write_text(_metadata(made), encoding="utf-8")
    given = ["-nostdin", "-hide_banner", "-loglevel", "error", "-progress", "pipe:1", "-y", "-i", f"file:{made.video.path}",
             "-f", "concat", "-safe", "0", "-i", str(scratch / "cards.txt"), "-f", "ffmetadata", "-i", str(scratch / "chapters.txt")]
    for i, track in enumerate(made.tracks):
        (scratch / f"track{i}.vtt").write_text(track.vtt, encoding="utf-8")
        given += ["-i", str(scratch / f"track{i}.vtt")]
    turn = "hflip," if made.mirrored else ""
    chain = f"[0:v:0]{turn}setsar=1[film];[1:v]format=rgba[cards];[film][cards]overlay=0:0:eof_action=pass:format=auto,format=yuv420p[out]"
    given += ["-filter_complex", chain, "-map", "[out]"]
    given += ["-map", "0:a:0?", "-c:a", "copy" if made.video.sound in _KEPT_SOUND else "aac"]
    for i, track in enumerate(made.tracks):
        given += ["-map", f"{3 + i}:s:0", f"-metadata:s:s:{i}", f"language={LANGUAGES.get(track.language, 'und')}",
                  f"-metadata:s:s:{i}", f"title={track.title}", f"-metadata:s:s:{i}", f"handler_name={track.title}"]
    return [*given, "-c:s", "mov_text", "-map_metadata", "0", "-map_chapters", "2", "-metadata", f"title={made.title}", "-c:v", "libx264",
            "-preset", "veryfast", "-crf", "20", "-t", f"{made.video.length_s:.3f}", "-movflags", "+faststart", "-f", "mp4"]


def _pictures(shown: Sequence[Shown], size: tuple[int, int], scratch: Path) -> None:
    """Cards as pictures of the video's size, each once, and the list of when they stand."""
    named: dict[str, str] = {}
    lines = ["ffconcat version 1.0"]
    for s in shown or (Shown(0.0, 1.0, None),):
        key = s.card.name if s.card is not None else ""
        if key not in named:
            named[key] = f"c{len(named):04}.png"
            (scratch / named[key]).write_bytes(png_on(s.card, size) if s.card is not None else clear(size))
        lines += [f"file {named[key]}", f"duration {s.end_s - s.start_s:.3f}"]
    lines.append(lines[-2])  # the list's last duration counts only where a picture follows it
    (scratch / "cards.txt").write_text("\n".join(lines) + "\n", encoding="utf-8")


def _metadata(made: Cut) -> str:
    """Chapters as the tool's own text file has them (https://ffmpeg.org/ffmpeg-formats.html#Metadata-2)."""
    lines = [";FFMETADATA1"]
    for c in made.chapters:
        title = "".join(f"\\{x}" if x in "=;#\\\n" else x for x in c.title)
        lines += ["[CHAPTER]", "TIMEBASE=1/1000", f"START={round(c.start_s * 1000)}", f"END={round(c.end_s * 1000)}", f"title={title}"]
    return "\n".join(lines) + "\n"


def _run(asked: list[str], length_s: float, out: Path, progress: Callable[[float], None] | None) -> None:
    """Runs the tool, tells how far it is, and stops it where it says nothing any more."""
    import threading  # noqa: PLC0415 - only where a video is cut

    with tempfile.TemporaryFile() as said, subprocess.Popen(  # noqa: S603
        asked, stdout=subprocess.PIPE, stderr=said, stdin=subprocess.DEVNULL, text=True,
    ) as process:
        watch = threading.Timer(SILENT_S, process.kill)
        try:
            watch.start()
            for line in process.stdout or ():
                name, _, value = line.strip().partition("=")
                if name in ("out_time_us", "out_time_ms") and value.isdigit():
                    watch.cancel()
                    watch = threading.Timer(SILENT_S, process.kill)
                    watch.start()
                    if progress is not None:
                        progress(min(1.0, int(value) / 1e6 / max(length_s, 1e-6)))
            code = process.wait()
        except BaseException:
            process.kill()
            raise
        finally:
            watch.cancel()
        said.seek(0)
        words = said.read().decode("utf-8", "replace").strip()
    if code:
        if _WORDS["ENOSPC"] in words:
            raise CannotSave(f"{out} was not written, the disk is full: make room, or name a folder on another disk")
        last = words.splitlines()[-1] if words else f"it stopped with {code}"
        raise CannotFilm(f"ffmpeg could not cut {Path(asked[asked.index('-i') + 1].removeprefix('file:')).name}: {last[:300]}")


def _seconds(value: object) -> float:
    try:
        found = float(str(value))
    except ValueError:
        return 0.0
    return found if 0 < found < 1e7 else 0.0
