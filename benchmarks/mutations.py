"""Lines for fuzzing: written rows of our own with words lost, doubled, swapped and set in, numbers changed, signs from elsewhere.

The same seed gives the same lines.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from pathlib import Path

DESIGNS = Path(__file__).parents[1] / "designs"
FIRST = "Rnd 1: 12 sc in magic ring. (12 sc)\n"

ROWS = tuple(
    """Rnd 2: Ch 1, *sc in next st, 2 sc in next st; rep from * around; join with sl st to first sc. (18 sc)
Row 4 (RS): Ch 3 (counts as dc), *sk 2 sts, (2 dc, ch 1, 2 dc) in next ch-1 sp; rep from * to last 3 sts, dc in last st, turn. (8 shells)
Row 2: Ch 1, sc in each of next 12 sts, turn. (12 sc)
Ch 21 (25, 31), sc in 2nd ch from hook and in each ch across. [20 (24, 30) sc]
Rnd 3: [2 dc in next ch-2 sp, ch 2] 4 times, sl st in top of ch-3.
3rd row: 1 dc in each of the first 3 sts, *miss 1 st, 1 tr in next st, 5 ch; repeat from * to last 4 sts, 1 dc in each st to end.
Rounds 4-6: Continue as established, inc 6 sts each round.
Row 5: Rep Row 3.
Rows 6 and 7: Work even.
Next rnd: *Fpdc around next st, bpdc around next st; rep from * around, sl st to first st, do not turn.
Rnd 8: (Sc2tog, sc in next 2 sts) x 6. <18>
Row 9: Working in back loops only, hdc across to last st, leave last st unworked.
Decrease evenly to {crown sts} sts over the next 3 rows.
Then one double crochet, then two in the next one, and so on all the way around.
Corner: (3 dc, ch 2, 3 dc) all in the corner space; *3 dc in next space** repeat from * ending last repeat at **.
Fasten off. Join B with a sl st in any ch-2 sp, ch 3, 2 dc in same sp.
Row 10: Beg block, 3 bls, 2 sps, 5 bls, turn.
Work 14 (16, 18, 20) rows in pattern until piece measures 6 in (15 cm) from beginning.
Rnd 7: Sc evenly around, working 3 sc in each corner, join. (108 sc)
Next rnd: Work 60 sc evenly around neck edge, join with sl st to first sc. (60 sc)
Row 2: Ch 3 (counts as dc), 2 dc in same st, *sc in 3rd dc of next shell, 5 dc in next sc; rep from * ending with 3 dc in last sc. Turn.
Row 3: Ch 1, sc in first dc, *5 dc in next sc, sc in 3rd dc of next shell; rep from * to end, working last sc in top of ch 3. Turn.
Round 3: sl st into first ch-1 space, ch 3, 1 dc in same space, ch 1, *2 dc in next ch-1 space, ch 1, rep from * around, join - 32 dc
Ch 96; join with sl st to first ch to form a ring, being careful not to twist.
Rnd 1: (Ch 3, 3 dc, ch 3, sl st) in ring 5 times. (5 petals)
Row 1: Dc in 4th ch from hook, dc in each ch to end, changing to B in last st. [100 dc]
Row 8: Work same as Row 6 but inc 1 st at each end. (42 sts)
Row 2: Ch 2 (counts as dc), skip first st, dc in sp between each dc to end, dc in tch. Turn.
Rnd 4: Sc in next 5 (6, 7) sts, ch 8, skip next 8 sts for thumb, sc in each st to end. (40 (44, 48) sts)
2nd Row - Ch. 4, skip 1st d.c., * 1 d.c. in next d.c., ch. 1; repeat from *, ending with 1 d.c. in 2nd st. of turning ch., turn.
Work along the row ends: ch 1, 2 sc in each dc row, 3 sc in the corner, then sc in each ch of the foundation.
A border of shells of 5 dc, a picot of 3 ch at the tip of each, all around the outer edge.
Row 3: Fpdc around each of next 3 sts, bpdc around each of next 3 sts; rep from * 4 more times, hdc in top of ch 2.""".splitlines()
)

WORDS = tuple(
    """rep from * ( ) [ ] { } ** turn join sc dc tr hdc ch sl st sts inc dec sk miss next last first each every 3rd 2nd around across evenly
    to end times x 6 12 100 999999 0 1,5 ½ (18) ring magic loop space ch-2 sp shell cluster picot as row rows rnd and or in of into the same
    until measures blo flo fpdc bptr sc2tog dc3tog yoh counts does not count : ; . , - – — " ' ( ( ) ) *  *""".split()
)
IN_OTHERS = {
    "de": tuple(
        """Rd 2: jede M verdoppeln, mit 1 Km in die erste M schließen. (12)
Rd 3: *1 fM, 2 fM in die nächste M; ab * fortlaufend wdh. (18)
3 Lm (zählen als 1. Stb), *2 M übergehen, (2 Stb, 1 Lm, 2 Stb) in den nächsten Lm-Bogen; ab * wdh, wenden.
R 4: 1 Lm, 1 fM in jede der nächsten 12 M, wenden. (12 M)
21 (25, 31) Lm anschlagen, 1 fM in die 2. Lm ab der Häkelnd und in jede folgende Lm. (20 (24, 30) fM)
7. Rd: 6x (2 M zus abm, 2 fM) => 18 M
R 5-8: wie R 3 und 4 häkeln.
Rd 9: *1 Rstbv um die nächste M, 1 Rstbh um die nächste M; ab * wdh, Km.
1. Rd: 6 fM in einen Fadenring. (6)
Faden abschneiden. Mit Fb B in einen beliebigen Lm-Bogen anschlingen, 3 Lm, 2 Stb in denselben Bogen.""".splitlines()
    ),
    "fr": tuple(
        """Rang 2: 1 ml, *1 ms dans la m suivante, 2 ms dans la m suivante; rép de * tout autour, 1 mc dans la 1re ms. (18 ms)
Rg 4 (endroit): 3 ml, *sauter 2 m, (2 br, 1 ml, 2 br) dans l'arceau suivant; rép de * jusqu'aux 3 dernières m, tourner.
Tour 1: 6 ms dans un cercle magique. (6)
Tour 2: 2 ms dans chaque m. (12)
Faire une chaînette de 21 (25, 31) ml, 1 ms dans la 2e ml à partir du crochet et dans chaque ml. (20 (24, 30) ms)
Tour 8: (2 ms écoulées ensemble, 2 ms) x 6. (18)
Rangs 5 à 8: rép les rangs 3 et 4.
Tour 9: *1 br en relief par l'avant, 1 br en relief par l'arrière; rép de * tout autour, 1 mc.
Arrêter le fil. Joindre le coloris B dans un arceau, 3 ml, 2 br dans le même arceau.""".splitlines()
    ),
    "es": tuple(
        """V 2: 1 cad, *1 pb en el p siguiente, 2 pb en el p siguiente; rep desde * alrededor, unir con pr en el 1er pb. (18 pb)
Hilera 4: 3 cad, *saltar 2 p, (2 pa, 1 cad, 2 pa) en el esp siguiente; rep desde * hasta los últimos 3 p, girar.
Vuelta 1: 6 pb en un anillo mágico. (6)
Vuelta 2: 2 pb en cada p. (12)
Tejer 21 (25, 31) cad, 1 pb en la 2a cad desde el ganchillo y en cada cad. (20 (24, 30) pb)
V 8: (2 pb juntos, 2 pb) 6 veces. (18)
Hileras 5-8: rep las hileras 3 y 4.
V 9: *1 pa en relieve por delante, 1 pa en relieve por detrás; rep desde * alrededor, pr.
Cortar el hilo. Unir el color B en un esp, 3 cad, 2 pa en el mismo esp.""".splitlines()
    ),
}
SIGNS = "\t\u00a0\u00bd\u2019\u201c\u00d7\u2013\u3000\u0301\U0001f9f6\0\u202e\u0663\\/#%&|<>~^`$@"

_PIECE = re.compile(r"\s+|\w+|[^\w\s]")


def seeds(language: str = "en") -> tuple[str, ...]:
    """Every row that mutations begin from: the ones above, in English the lines of the designs too."""
    if language != "en":
        return IN_OTHERS[language]
    own = [line for path in sorted(DESIGNS.glob("*.txt")) for line in path.read_text(encoding="utf-8").splitlines() if line.strip()]
    return (*ROWS, *own)


def lines(seed: int, language: str = "en") -> Iterator[str]:
    """Lines without end: mostly mutated rows, some random words, some random signs."""
    chance = random.Random(seed)
    begin = seeds(language)
    words = WORDS if language == "en" else tuple(w for row in begin for w in row.split())
    while True:
        kind = chance.random()
        if kind < 0.8:
            yield _mutated(chance, begin, words)
        elif kind < 0.95:
            yield " ".join(chance.choice(words) for _ in range(chance.randrange(1, 40)))
        else:
            yield "".join(chr(chance.choice((chance.randrange(32, 127), chance.randrange(0x110000 - 0x2000) % 0xD800))) for _ in range(60))


def _mutated(chance: random.Random, begin: tuple[str, ...], words: tuple[str, ...]) -> str:
    pieces = _PIECE.findall(chance.choice(begin))
    for _ in range(1 + int(chance.expovariate(0.5))):
        at = chance.randrange(len(pieces) + 1)
        what = chance.randrange(8)
        if what == 0 and pieces:
            del pieces[at - 1]
        elif what == 1:
            pieces[at:at] = [" ", chance.choice(words), " "]
        elif what == 2:
            pieces.insert(at, chance.choice(SIGNS))
        elif what == 3:
            end = min(len(pieces), at + chance.randrange(1, 12))
            pieces[at:at] = pieces[at:end] * chance.choice((1, 1, 2, 20))
        elif what == 4:
            numbers = [i for i, p in enumerate(pieces) if p.isdigit()]
            if numbers:
                pieces[chance.choice(numbers)] = str(chance.choice((0, 1, 2, 3, 7, 12, 13, 64, 500, 10**6, 10**20)))
        elif what == 5:
            other = _PIECE.findall(chance.choice(begin))
            pieces[at:] = other[chance.randrange(len(other)) :]
        elif what == 6 and pieces:
            other_at = chance.randrange(len(pieces))
            pieces[at - 1], pieces[other_at] = pieces[other_at], pieces[at - 1]
        else:
            pieces[at:] = pieces[at + chance.randrange(1, 6) :]
        if not pieces:
            pieces = [" "]
    return "".join(pieces)[:4000]
