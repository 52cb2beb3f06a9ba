"""The cut, end to end, on a synthetic video; without ffmpeg these are left out, and say so."""

import hashlib
import io
import json
import shutil
import subprocess
import sys

import pytest
from PIL import Image

from loopwright.source import Source
from loopwright.workshop.designs import find
from loopwright.workshop.files import CannotSave
from loopwright.workshop.film.film import Asked, film
from loopwright.workshop.film.gather import CannotFilm
from loopwright.workshop.film.video import probe

LOG = "0:00 Crown\n0:02 Rnd 2\n0:05 Rnd 5\n0:12 tape\n0:20 Body\n"
needs_ffmpeg = pytest.mark.skipif(shutil.which("ffmpeg") is None or shutil.which("ffprobe") is None, reason="ffmpeg is not installed")


FFMPEG, FFPROBE = shutil.which("ffmpeg") or "ffmpeg", shutil.which("ffprobe") or "ffprobe"


def _source():
    found = find("samphire-beanie")
    assert found is not None
    return Source.of(found.text, "samphire-beanie.txt")


@pytest.fixture(scope="module")
def clip(tmp_path_factory):
    """Thirty seconds: red at the left, blue at the right, a tone."""
    path = tmp_path_factory.mktemp("clip") / "clip.mp4"
    halves = "color=red:s=320x360:r=5:d=36[a];color=blue:s=320x360:r=5:d=36[b];[a][b]hstack"
    subprocess.run(
        [FFMPEG, "-v", "error", "-f", "lavfi", "-i", halves, "-f", "lavfi", "-i", "sine=330:d=36", "-c:v", "libx264", "-preset", "ultrafast",
         "-pix_fmt", "yuv420p", "-c:a", "aac", "-shortest", str(path)], check=True)
    return path


@pytest.fixture(scope="module", params=[False, True], ids=["right", "left"])
def made(request, clip, tmp_path_factory):
    before = hashlib.sha256(clip.read_bytes()).hexdigest()
    shares = []
    kit = film(_source(), Asked("child", left_handed=request.param, log=LOG, video=clip), tmp_path_factory.mktemp("out"), lambda _what, share: shares.append(share))
    assert hashlib.sha256(clip.read_bytes()).hexdigest() == before, "the original was touched"
    assert shares[-1] == 1
    assert any(0.4 < s < 1 for s in shares)
    out = next(f.path for f in kit.files if f.what == "video")
    return request.param, out, kit


def _frame(path, second):
    done = subprocess.run([FFMPEG, "-v", "error", "-ss", str(second), "-i", path, "-frames:v", "1", "-f", "image2pipe", "-c:v", "png", "-"], capture_output=True, check=True)
    return Image.open(io.BytesIO(done.stdout)).convert("RGB")


@needs_ffmpeg
def test_what_the_file_says_of_itself(made):
    _, out, _ = made
    told = json.loads(subprocess.run([FFPROBE, "-v", "error", "-print_format", "json", "-show_format", "-show_streams", "-show_chapters", out], capture_output=True, check=True).stdout)
    assert float(told["format"]["duration"]) == pytest.approx(36, abs=0.3)
    kinds = [(s["codec_type"], s.get("codec_name")) for s in told["streams"] if s["codec_type"] != "data"]
    assert kinds == [("video", "h264"), ("audio", "aac"), ("subtitle", "mov_text"), ("subtitle", "mov_text")]
    assert [(s["width"], s["height"]) for s in told["streams"] if s["codec_type"] == "video"] == [(640, 360)]
    assert [c["tags"]["title"] for c in told["chapters"]][:1] == ["Crown"]
    assert [float(c["start_time"]) for c in told["chapters"]][-1] == 20
    assert told["format"]["tags"]["title"] == "Samphire Beanie"


@needs_ffmpeg
def test_the_picture_is_mirrored_and_the_cards_are_not(made):
    left_handed, out, _ = made
    frame = _frame(out, 8)
    left = frame.getpixel((10, 330))
    assert (left[2] > left[0]) == left_handed, "blue is at the left of the mirrored cut"
    corner = frame.getpixel((40, 60))
    assert corner[0] > 200
    assert corner[2] < corner[0] - 30, "the tape-coloured corner is at the upper left in both"
    under = frame.crop((0, 300, 640, 360))
    assert min(max(p) for p in under.get_flattened_data()) > 180, "nothing stands where captions do"


@needs_ffmpeg
def test_cards_stand_at_their_times(made):
    _, out, _ = made
    rnd2, rnd5, later = (_frame(out, s).crop((34, 30, 182, 138)) for s in (3, 8, 9))
    differing = sum(max(abs(x - y) for x, y in zip(a, b, strict=True)) > 60 for a, b in zip(rnd2.get_flattened_data(), rnd5.get_flattened_data(), strict=True))
    still = sum(max(abs(x - y) for x, y in zip(a, b, strict=True)) > 60 for a, b in zip(rnd5.get_flattened_data(), later.get_flattened_data(), strict=True))
    assert differing > 500
    assert still < 20


@needs_ffmpeg
def test_captions_come_back_out_of_the_file(made, tmp_path):
    _, out, kit = made
    subprocess.run([FFMPEG, "-v", "error", "-y", "-i", out, "-map", "0:s:1", str(tmp_path / "uk.srt")], check=True)
    words = (tmp_path / "uk.srt").read_text(encoding="utf-8")
    assert "half trebles" in words
    assert kit.not_cut == ""


@needs_ffmpeg
def test_a_portrait_video_has_portrait_cards(tmp_path):
    path = tmp_path / "tall.mp4"
    subprocess.run([FFMPEG, "-v", "error", "-f", "lavfi", "-i", "color=gray:s=180x320:r=5:d=6", "-pix_fmt", "yuv420p", str(path)], check=True)
    kit = film(_source(), Asked("child", log="0:00 Rnd 3\n", video=path), tmp_path / "out")
    frame = _frame(next(f.path for f in kit.files if f.what == "video"), 2)
    assert frame.size == (180, 320)
    assert frame.getpixel((25, 20))[2] < frame.getpixel((25, 20))[0] - 30
    assert probe(path).sound == ""


@needs_ffmpeg
@pytest.mark.parametrize(("name", "data", "said"), [("gone.mp4", None, "there is no video"), ("text.mp4", b"not a film", "is no video that ffmpeg can read"), ("empty.mp4", b"", "is no video")])
def test_what_is_no_video_is_told_and_everything_else_made(tmp_path, name, data, said):
    path = tmp_path / name
    if data is not None:
        path.write_bytes(data)
    kit = film(_source(), Asked("child", log=LOG, video=path), tmp_path / "out")
    assert said in kit.not_cut
    assert (tmp_path / "out" / "captions-us.vtt").exists()
    assert not list((tmp_path / "out").glob("*.mp4"))


@needs_ffmpeg
def test_the_video_is_never_written_over(clip, tmp_path):
    own = tmp_path / "film-with-cards.mp4"
    shutil.copy(clip, own)
    with pytest.raises(CannotSave, match="the video itself"):
        film(_source(), Asked("child", log=LOG, video=own, replace=True), tmp_path)
    assert own.read_bytes() == clip.read_bytes()


@needs_ffmpeg
def test_a_full_disk_leaves_nothing_half_done(clip, tmp_path, monkeypatch):
    fake = tmp_path / "bin" / "ffmpeg"
    fake.parent.mkdir()
    fake.write_text(f"#!{sys.executable}\nimport sys\nprint('av_interleaved_write_frame(): No space left on device', file=sys.stderr)\nsys.exit(1)\n", encoding="utf-8")
    fake.chmod(0o755)
    monkeypatch.setenv("PATH", str(fake.parent), prepend=":")
    with pytest.raises(CannotSave, match="the disk is full"):
        film(_source(), Asked("child", log=LOG, video=clip), tmp_path / "out")
    assert not list((tmp_path / "out").glob("*.mp4"))


def test_without_ffmpeg_the_rest_is_made_and_a_clear_word_said(tmp_path, monkeypatch):
    monkeypatch.setenv("PATH", str(tmp_path))
    video = tmp_path / "any.mp4"
    video.write_bytes(b"x")
    kit = film(_source(), Asked("child", log=LOG, video=video), tmp_path / "out")
    assert kit.not_cut.startswith("ffmpeg is not installed")
    assert (tmp_path / "out" / "chapters.txt").exists()


def test_a_log_with_nothing_in_it_is_refused(tmp_path):
    with pytest.raises(CannotFilm, match="the log holds nothing"):
        film(_source(), Asked("child", log="hello\n"), tmp_path / "out")
