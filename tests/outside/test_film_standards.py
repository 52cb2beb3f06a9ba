"""Captions, chapters and speech against what is outside: general libraries, the standard's grammar, a speech synthesiser.

webvtt-py (https://pypi.org/project/webvtt-py/), pysrt (https://pypi.org/project/pysrt/) and srt (https://pypi.org/project/srt/) read the
files back. The grammar of cues: W3C, WebVTT, section 4 (https://www.w3.org/TR/webvtt1/#syntax). The limits: lines of 42 characters, two of
them, at least 5/6 of a second (https://utk-timed-text-guide.readthedocs.io/en/latest/contents/1_timed_text_style_guide.html), at most 20
characters a second (https://gist.github.com/knarf18/76f3738e970e8efa9243). Chapters: the first at 0:00, at least three, 10 seconds
(https://9to5google.com/2020/05/28/youtube-video-chapters/). Speech: espeak-ng at 150 words a minute.
"""

import io
import itertools
import re
import shutil
import statistics
import subprocess

import pysrt
import pytest
import srt as srt_library
import webvtt

from loopwright.filming import speech
from loopwright.filming.captions import captions, srt, vtt
from loopwright.filming.chapters import chapters
from loopwright.filming.log import read_log
from loopwright.filming.shots import plan
from loopwright.filming.timed import timed
from loopwright.source import Source
from loopwright.workshop.designs import find
from loopwright.workshop.film.gather import gather

LOG = "0:00 Crown\n0:50 Rnd 2\n2:00 Rnd 3\n3:30 Rnd 4\n6:00 next rnd\n8:00 Body\n11:00 Band\n14:00 done\n"
LANGUAGES = ("en", "de", "fr", "es", "nl", "sv", "da", "pt", "it")
_CUE = re.compile(
    r"(?P<id>[^\n]*?)\n(?P<a>(?:\d{2,}:)?[0-5]\d:[0-5]\d\.\d{3})[ \t]+-->[ \t]+(?P<b>(?:\d{2,}:)?[0-5]\d:[0-5]\d\.\d{3})\n(?P<text>(?:[^\n]+\n?)+)",
)
_SPAN = re.compile(r"(?:[^<&]|&(?:amp|lt|gt|lrm|rlm|nbsp|#\d+);)*")


@pytest.fixture(scope="module", params=LANGUAGES)
def cues(request):
    made = plan(gather(Source.of(_text("samphire-beanie"), "hat"), "child", language=request.param).facts)
    return captions(timed(made, read_log(LOG, made))).cues


def test_webvtt_keeps_to_the_grammar_of_the_standard(cues):
    text = vtt(cues, language="en-US")
    head, *blocks = text.rstrip("\n").split("\n\n")
    assert head == "WEBVTT"
    assert re.fullmatch(r"NOTE(?:[ \t].*)?", blocks[0])
    assert len(blocks) == len(cues) + 1
    for block in blocks[1:]:
        found = _CUE.fullmatch(block)
        assert found, block
        assert "-->" not in found["id"] + found["text"]
        assert _SPAN.fullmatch(found["text"]), block
    starts = [m["a"] for m in map(_CUE.fullmatch, blocks[1:]) if m]
    assert starts == sorted(starts), "a cue begins no earlier than those before it"


def test_webvtt_is_read_back_by_a_library(cues):
    read = webvtt.from_buffer(io.StringIO(vtt(cues))).captions
    assert [c.text for c in read] == ["\n".join(c.lines) for c in cues]
    assert [c.start_in_seconds for c in read] == pytest.approx([c.start_s for c in cues], abs=1)


def test_srt_is_read_back_by_two_libraries(cues):
    text = srt(cues)
    one = pysrt.from_string(text)
    two = list(srt_library.parse(text))
    words = ["\n".join(c.lines) for c in cues]
    assert [c.text for c in one] == words
    assert [c.content for c in two] == words
    assert [c.start.total_seconds() for c in two] == pytest.approx([c.start_s for c in cues], abs=0.001)
    assert [c.end.ordinal / 1000 for c in one] == pytest.approx([c.end_s for c in cues], abs=0.001)


def test_limits_of_lines_and_speed_as_they_are_read_back(cues):
    for c in srt_library.parse(srt(cues)):
        lines = c.content.split("\n")
        seconds = (c.end - c.start).total_seconds()
        assert len(lines) <= 2
        assert max(map(len, lines)) <= 42
        assert len(c.content) / seconds <= 20
        assert seconds >= 5 / 6


def test_the_chapters_track_and_rule():
    made = plan(gather(Source.of(_text("samphire-beanie"), "hat"), "child").facts)
    found = chapters(made, timed(made, read_log(LOG, made)))
    read = webvtt.from_buffer(io.StringIO(vtt(found.cues(), kind="chapters"))).captions
    assert [c.text for c in read] == ["Crown", "Body", "Band"]
    starts = [c.start_in_seconds for c in read]
    assert starts[0] == 0
    assert len(starts) >= 3
    assert all(b - a >= 10 for a, b in itertools.pairwise(starts))


@pytest.mark.skipif(shutil.which("espeak-ng") is None, reason="espeak-ng is not installed")
@pytest.mark.parametrize("name", ["samphire-beanie:child", "avocet-bonnet:newborn", "dunlin-booties:", "thrift-shawl:"])
def test_planned_speech_is_as_long_as_a_synthesiser_takes(name):
    design, _, size = name.partition(":")
    text = _text(design)
    made = plan(gather(Source.of(text, design), size or _first_size(text)).facts)
    said = list(dict.fromkeys(s.say for s in made.shots if s.say))
    errors = [abs(speech.seconds(x) - _spoken(x)) / _spoken(x) for x in said]
    assert len(said) >= 12
    assert statistics.median(errors) <= 0.15


def _text(name):
    found = find(name)
    assert found is not None
    return found.text


def _first_size(text):
    found = re.search(r"^Sizes: ([^,\n]+),", text, re.MULTILINE)
    return found[1] if found else None


def _spoken(words):
    """Seconds that the synthesiser takes: 16-bit samples at 22,050 a second after a head of 44 bytes."""
    asked = ["espeak-ng", "-s", "150", "-v", "en-us", "--stdout", words]
    return (len(subprocess.run(asked, capture_output=True, check=True).stdout) - 44) / 2 / 22050
