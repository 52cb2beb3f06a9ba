# What drawings say in German: all from memory, to be checked by a native maker. Terms of stitches stand elsewhere.

# Charts
drawn-chart = Häkelschrift
drawn-symbol-chart = { $name }: Häkelschrift
drawn-shape-disc = Runden um einen Mittelpunkt
drawn-shape-oval = Runden um beide Seiten einer Luftmaschenkette
drawn-shape-rows = Reihen
drawn-shape-edge = Um den Rand des Teils gehäkelt
drawn-shape-unrolled = Runden, abgerollt
drawn-shape-3 = Runden eines Dreiecks
drawn-shape-4 = Runden eines Quadrats
drawn-shape-5 = Runden eines Fünfecks
drawn-shape-6 = Runden eines Sechsecks
drawn-shape-8 = Runden eines Achtecks
drawn-shape-n = Runden einer Form mit { $n } Ecken
drawn-begins = { $name }. { $shape }, von der Vorderseite gesehen.
drawn-begins-on = Beginnt auf { $n } Lm.
drawn-begins-on-ring = Beginnt auf { $n } Lm, zum Ring geschlossen.
drawn-next-round = Nächste Runde
drawn-next-row = Nächste Reihe
drawn-row = Reihe
drawn-a-row = eine Reihe
drawn-the-chain = die Luftmaschenkette
drawn-right-side = Vorderseite
drawn-wrong-side = Rückseite
drawn-clockwise = im Uhrzeigersinn
drawn-counter-clockwise = gegen den Uhrzeigersinn
drawn-left-to-right = von links nach rechts
drawn-right-to-left = von rechts nach links
drawn-with-yarn = Garn { $yarns }
drawn-row-told = { $head }: { $worked }.
drawn-row-told-count = { $head }: { $worked } ({ $count }).
drawn-underside = { $made } (an der anderen Seite der Luftmaschenkette)
drawn-with-picot = { $made } mit 1 { $picot }
drawn-made-alike = { $n } Stück, gleich
drawn-made-mirrored = { $n } Stück, gegengleich
drawn-make = { $n } Stück
drawn-too-many = Das Ganze hat { $n } Maschen, zu viele, um sie zu zeigen: dies ist der Rapport.
drawn-piece-closes = Das Teil schließt sich: nach { $row } lässt es sich nicht mehr flach zeichnen, daher sind die Runden abgerollt.
drawn-piece-stands-up = Das Teil richtet sich auf: nach { $row } lässt es sich nicht mehr flach zeichnen, daher sind die Runden abgerollt.
drawn-last-round = der letzten Runde
drawn-shown = Gezeigt: { $what }.
drawn-whole-rows = ganze Reihen
drawn-rows-shown = { $first } bis { $last }
drawn-rows-of = { $rows } von { $n }
drawn-left-out-between = { $n ->
    [one] der Rapport mit seinen Rändern, { $n } Rapport dazwischen ausgelassen
   *[other] der Rapport mit seinen Rändern, { $n } Rapporte dazwischen ausgelassen
}
drawn-left-out-at-line = { $n ->
    [one] der Rapport mit seinen Rändern, { $n } Rapport an der gepunkteten Linie ausgelassen
   *[other] der Rapport mit seinen Rändern, { $n } Rapporte an der gepunkteten Linie ausgelassen
}
drawn-left-out-middle = der Rapport mit seinen Rändern, die Rapporte in der Mitte an der gepunkteten Linie ausgelassen
drawn-plain-left-out = { $n ->
    [one] { $many } glatte Maschen jeder Reihe an der gepunkteten Linie ausgelassen
   *[other] { $many } glatte Maschen jeder Reihe an den gepunkteten Linien ausgelassen
}
drawn-ends-shown = beide Enden der Reihen, { $n } Zeichen an der Lücke dazwischen ausgelassen
drawn-edge-left-out = Ecken und Enden der Kante, { $n } Zeichen an den gepunkteten Linien ausgelassen
drawn-in-grey = In Grau: der Rand, um den gehäkelt wird.
drawn-unrolled = In Runden gehäkelt; abgerollt gezeichnet, jede Runde wird in derselben Richtung gelesen.
drawn-own-stitch = { $n }: { $words }
drawn-row-unread = { $row } konnte nicht gelesen werden: „{ $words }“.
drawn-rows-unread = { $n } weitere Reihen konnten nicht gelesen werden.
drawn-unread-one = { $row } nicht gelesen
drawn-unread-range = { $first } bis { $last } nicht gelesen
drawn-drawn-up-to = Die Häkelschrift ist bis dorthin gezeichnet.
drawn-begins-after = Die Häkelschrift beginnt danach, auf Maschen, die da gewesen sein müssen.
drawn-between-dashes = Zwischen den gestrichelten Linien, insgesamt { $n }-mal: { $rows }
drawn-row-counts = { $row }: { $count }
drawn-yarn-rows = Garn { $yarn }: { $rows }
drawn-rs = Hinr
drawn-ws = Rückr
drawn-back-loop = nur in das hintere Maschenglied
drawn-front-loop = nur in das vordere Maschenglied
drawn-third-loop = drittes Maschenglied
drawn-worked-on-ws = { $seen } (in Rückreihen: { $worked })
drawn-front-and-back = Die Zeichen zeigen die Arbeit von der Vorderseite gesehen: In Rückreihen tauschen vorn und hinten die Plätze.
drawn-ring-sign = Ring, in den die erste Runde gehäkelt wird
drawn-cut-sign = Faden abschneiden und sichern
drawn-join-sign = Garn anschlingen
drawn-yarn-named = Garn { $name }

# Grids
drawn-grid-filet = Filetgitter
drawn-grid-colour = Farbgitter
drawn-grid-corner = Gitter von Ecke zu Ecke
drawn-drawn-as-filet = Als Filetgitter gezeichnet.
drawn-drawn-as-colour = Als Farbgitter gezeichnet.
drawn-drawn-as-corner = Als Gitter von Ecke zu Ecke gezeichnet.
drawn-grid-chart = { $name }: { $kind }
drawn-square-filet = Ein Kästchen ist eine Masche des Netzes, { $n } Maschen breit.
drawn-square-corner = Ein Kästchen ist ein Block aus { $stitch }.
drawn-square-colour = Ein Kästchen ist 1 { $stitch }.
drawn-space = { $n ->
    [one] { $n } leeres
   *[other] { $n } leere
}
drawn-block = { $n ->
    [one] { $n } gefülltes
   *[other] { $n } gefüllte
}
drawn-upper-right-to-lower-left = von rechts oben nach links unten
drawn-upper-left-to-lower-right = von links oben nach rechts unten
drawn-lower-left-to-upper-right = von links unten nach rechts oben
drawn-lower-right-to-upper-left = von rechts unten nach links oben
drawn-space-means-us = leer: { $n } Lm, { $n } M auslassen, 1 { $stitch } in die nächste M
drawn-space-means-uk = { drawn-space-means-us }
drawn-block-means = gefüllt: je 1 { $stitch } in { $n } M
drawn-yarn-unnamed = { $sign }: das Garn ohne Namen
drawn-yarn-sign = { $sign }: { $name }
drawn-in-all = { $what } (insgesamt { $n })
drawn-grid-row = { $row }, { $way } gelesen: { $cells }.
drawn-grid-row-all = { $row }, { $way } gelesen: { $cells } (insgesamt { $count }).
drawn-filet-edge = Die erste Masche einer Reihe, oder die Luftmaschen, die als eine zählen, ist die Linie am Rand: sie hat kein Kästchen.
drawn-unrolled-short = In Runden gehäkelt; abgerollt gezeichnet.
drawn-squares-shown-right = Gezeigt: Kästchen { $first } bis { $last } von { $n }, von rechts gezählt; { $rows }. Teil { $part } von { $parts }.
drawn-squares-shown-left = Gezeigt: Kästchen { $first } bis { $last } von { $n }, von links gezählt; { $rows }. Teil { $part } von { $parts }.
drawn-repeat-shown-right = Gezeigt: der Rapport mit seinen Rändern, Kästchen 1 bis { $last } von { $n }, von rechts gezählt; { $rows } von { $of }.
drawn-repeat-shown-left = Gezeigt: der Rapport mit seinen Rändern, Kästchen 1 bis { $last } von { $n }, von links gezählt; { $rows } von { $of }.
drawn-repeats-across = { $n ->
    [one] Jedes Kästchen einer Reihe ist gleich.
   *[other] In der Breite ist das Muster nach { $n } Kästchen wieder dasselbe.
}
drawn-repeats-up = { $n ->
    [one] Alle Reihen sind gleich.
   *[other] In der Höhe ist das Muster nach { $n } Reihen wieder dasselbe.
}
drawn-counts-of-shown = Die Zahlen neben einer Reihe sind die der gezeigten Kästchen.
drawn-parts-left-out = { $n } weitere Teile sind weggelassen.

# How motifs are joined
drawn-motifs-joined = Wie die Motive verbunden werden
drawn-motifs-read-right = Wie die Motive verbunden werden. { $n } Motive je Reihe, von links nach rechts und von oben nach unten gelesen, von der Vorderseite gesehen.
drawn-motifs-read-left = Wie die Motive verbunden werden. { $n } Motive je Reihe, von rechts nach links und von oben nach unten gelesen, von der Vorderseite gesehen.
drawn-motifs-row = Reihe { $row } der Motive: { $first } bis { $last }.
drawn-motifs-row-one = Reihe { $row } der Motive: { $first }.
drawn-motifs-ties = { $n ->
    [one] Eine Seite wird an { $n } Stelle verbunden.
   *[other] Eine Seite wird an { $n } Stellen verbunden.
}
drawn-motifs-order = Motive der ersten Reihe werden mit dem daneben verbunden, das erste einer Reihe mit dem darüber, alle anderen mit beiden.
drawn-motifs-around = { $row } geht um alle Motive herum.
drawn-motifs-many = { $across } Motive in der Breite und { $down } in der Höhe, insgesamt { $n }, Reihe für Reihe nummeriert.
drawn-motifs-shown = Gezeigt: die ersten { $across } in der Breite und { $down } in der Höhe.
drawn-motifs-tied = 1 ist: { $first }; 2 bis { $n } werden in { $row } verbunden, wo kurze Linien einen Rand kreuzen.
drawn-motifs-any-order = Eine andere Reihenfolge geht auch, solange jedes Motiv mit allen fertigen daneben verbunden wird.
drawn-motifs-meet = Motive treffen sich, wo Linien einen Rand kreuzen.
drawn-motifs-border = { $n ->
    [one] Außen herum, gestrichelt: { $name }, { $n } Runde.
   *[other] Außen herum, gestrichelt: { $name }, { $n } Runden.
}
drawn-motif = Motiv
drawn-border = Rand

# Schematics
drawn-schematic = Schnittzeichnung
drawn-schematic-of = Schnittzeichnung: { $title }
drawn-sheet = { $title }, Blatt { $n }
drawn-size = Größe { $size }
drawn-sizes = Größen { $sizes }
drawn-arrow = Pfeil: Arbeitsrichtung.
drawn-dashed = Gestrichelt: ein Umbruch, oder wo ein Abschnitt beginnt.
drawn-dotted = Gepunktet: verbunden.
drawn-half = ½: flach gelegt, die Hälfte von Umfang oder Breite.
drawn-drawn-in-size = In Größe { $size } gezeichnet.
drawn-mirrored = Für die linke Hand gespiegelt.
drawn-to-scale = Umriss maßstäblich gezeichnet.
drawn-to-scale-in-size = Umriss maßstäblich in Größe { $size } gezeichnet.
drawn-times-as-large = { $n }-mal so groß gezeichnet
drawn-the-piece = Das Teil
drawn-piece = Teil
drawn-figure-told = { $name }: { $how }.
drawn-figure-measured = { $name }: { $how }; gemessen bei { $letters }.
drawn-figure-copied = { $how }; { $copies }
drawn-measure-told = { $name }: { $values }.
drawn-measure-of = { $part }, { $measure }
drawn-whole = Ganzes Stück
drawn-in-all-of = { $measure } insgesamt
drawn-front = Vorderseite
drawn-cm = cm
drawn-in = Zoll
drawn-together-of = { $title }: wie die Teile zusammengehören
drawn-together = Wie die Teile zusammengehören
drawn-joined-to = { $name }, verbunden mit { $letter }
drawn-letter-name = { $letter }: { $name }
drawn-letter-copies = { $letter }: { $name } ({ $copies })
drawn-made-disc = in Runden von der Mitte nach außen gehäkelt
drawn-made-oval = in Runden um beide Seiten einer Luftmaschenkette gehäkelt
drawn-made-rows = in hin- und hergehenden Reihen von unten nach oben gehäkelt
drawn-made-tie = eine Luftmaschenkette, auf der zurückgehäkelt wird
drawn-made-tip = in Reihen von der Mitte der oberen Kante aus gehäkelt, die an der Spitze abknicken
drawn-made-half-circle = in Reihen von der Mitte der oberen Kante aus gehäkelt, jede Reihe ein Halbkreis
drawn-made-front = Passe, Rumpf und Ärmel, wie sie flach liegen, vorne geschlossen; alles vom Hals nach unten gehäkelt
drawn-made-yoke = in Reihen vom Hals nach unten gehäkelt, mit Zunahmen an den Linien, an denen die Teile aneinanderstoßen; aufgeklappt gezeichnet
drawn-made-rounds-bottom-up = in Runden von der Mitte des Bodens nach oben gehäkelt; flach gelegt gezeichnet
drawn-made-rounds-top-down = in Runden von der Mitte oben nach unten gehäkelt; flach gelegt gezeichnet
drawn-made-rounds-lower-up = in Runden von der unteren Kante nach oben gehäkelt; flach gelegt gezeichnet
drawn-made-rounds-upper-down = in Runden von der oberen Kante nach unten gehäkelt; flach gelegt gezeichnet
drawn-made-filled = in Runden von der Mitte oben nach unten gehäkelt; gefüllt gezeichnet, jede Runde ein Kreis
drawn-made-joined = Motive Seite an Seite verbunden, mit der Umrandung darum
