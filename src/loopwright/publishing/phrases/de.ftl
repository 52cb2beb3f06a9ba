# Words of pages in German: all from memory, to be checked by a native speaker. Terms of stitches stand elsewhere.
decimal = ,
list-separator = ,{" "}
size-separator = ;{" "}

# Headings of parts, in the order of the trade
part-sizes = Größen und fertige Maße
part-materials = Material
part-gauge = Maschenprobe
part-abbreviations = Abkürzungen
part-special = Besondere Maschen
part-notes = Hinweise
part-schematic = Schnittzeichnung
part-instructions = Anleitung
part-charts = Häkelschriften
part-finishing = Fertigstellung
part-care = Pflege
part-cautions = Sicherheit
part-help = Hilfe
part-changes = Änderungen
part-version = Über diese Anleitung
part-terms-of-use = Nutzungsbedingungen

# Sizes
size = Größe
sizes = Größen
to-fit = für { $measure }
finished = Fertig, flach gelegt
worn = Getragen
whole = Ganzes Stück
measure-of = { $section }, { $measure }
yarn = Garn
yarn-of = Garn { $colour }
metres = m
balls = Knäuel
ball-note = Ein Knäuel hat { $grams } g oder { $metres } m. Die Meter sind aus den Maschen berechnet; der Bedarf liegt zwischen den beiden Zahlen, die Knäuel sind für die höhere.
ball-note-plain = Die Meter sind aus den Maschen berechnet; der Bedarf liegt zwischen den beiden Zahlen.
hours = Zeit
hours-unit = Stunden
in-cm = cm (Zoll in Klammern)
open-chain-note = Die Länge der Luftmaschenkette ist frei; Maschenzahlen, Häkelschrift und Maße gelten hier für eine Probe auf { $n } Luftmaschen.
worked-in = Das Musterstück wurde in Größe { $size } gearbeitet.
all-sizes-note = Die Zahlen gelten für die Größen in dieser Reihenfolge: { $sizes }. Eine einzelne Zahl gilt für alle.

# Materials and gauge
hook = Häkelnadel
notions = Zubehör
materials-yarn = Garn
gauge-other = Eine andere Maschenprobe
gauge-stitch = 1 { $stitch } ist { $width } mm breit, eine Reihe davon { $height } mm hoch.
gauge-other-corner = { $stitches } M auf 10 cm
gauge-other-note = Was das erste Maß ergibt, wenn die Maschen kleiner oder größer sind. Stimmt die eigene Maschenprobe nicht, zuerst die Nadel wechseln; eine Zeile dazwischen sagt, welche Größe zu häkeln ist.
gauge-guess = Keine Maschenprobe ist genannt: so fallen Garn und Nadel meist aus.

# Notes
repeats-note = Was nach * steht, wird so oft wiederholt, wie es heißt; ( ) umfasst, was in eine Stelle kommt, [ ] was so oft wiederholt wird.
left-handed-note = Für Linkshänder: der Text ist derselbe, Reihen laufen anders herum und Runden im Uhrzeigersinn. Häkelschriften sind gespiegelt, ihre Zahlen nicht.
spelled-out-note = Wiederholungen sind ausgeschrieben.

# Instructions
measure-now = Jetzt messen: { $what }.
tick = Gehäkelt
notes-of-mine = Meine Notizen
your-column = Die eigene Spalte farbig markieren; nur ihre Zahlen lesen.
every-size = jede Größe
not-in-this-size = nicht in dieser Größe
choose-size = Größe
all-sizes = Alle Größen
film = Film
film-at = Der Film steht unter { $address }.

# Pictures
photograph-alt = { $title }, fertig
cover-alt = { $title }, wie die Maschen es ergeben
chart-caption = { $section }
chart-of = Häkelschrift: { $section }
schematic-alt = Schnittzeichnung: { $title }
in-words = In Worten
description-of = In Worten

# Ends
corrections-at = Korrekturen stehen unter { $address }.
version-line = Fassung { $version }
version-dated = Fassung { $version }, { $date }
draft = Entwurf
page-of = Seite { $page } von { $pages }
made-by = Entwurf: { $author }
meets = Diese Ausgabe ist in { $points } Punkt gesetzt, einspaltig, ohne Kursivschrift; jede Zahl steht in Worten, und nichts hängt von Farbe oder einem Bild ab.
unchecked-terms = Diese Begriffe muss noch jemand prüfen, der in der Sprache häkelt: { $terms }.
own-words-note = Die eigenen Worte der Designerin sind auf { $language }.
no-pictures = Die Bilder fehlen in dieser Ausgabe.

# Names of measures
measure-across = Durchmesser
measure-around = Umfang
measure-depth = Tiefe
measure-width = Breite
measure-height = Höhe
measure-length = Länge
measure-width-at-the-start = Breite am Anfang
measure-width-at-the-end = Breite am Ende
measure-around-at-the-start = Umfang am Anfang
measure-around-at-the-end = Umfang am Ende
measure-opening-around = Umfang der Öffnung
measure-around-worn = Umfang, getragen
measure-depth-worn = Tiefe, getragen
measure-length-worn = Länge, getragen

# Measures of the body
body-head-circumference = Kopf
body-chest = Brust
body-foot-length = Fußlänge
body-foot-circumference = Fuß, Umfang
body-hand-circumference = Hand, Umfang

# The web page and the EPUB
web-skip = Zur Anleitung springen
web-contents = In dieser Anleitung
web-of = { $n } von { $all }
web-of-all = von { $all }
web-done = { $row } fertig
web-done-of = { $row }, { $n } von { $all } fertig
web-back = Eine Reihe zurück
web-finished = Alle Reihen sind gehäkelt.
web-kept = Die Haken werden in diesem Browser für jede Größe behalten.
web-not-kept = Die Haken können in diesem Browser nicht behalten werden: sie bleiben, solange die Seite offen ist.
web-untick = Alle Haken entfernen
web-undo = Haken wiederherstellen
web-larger = So groß wie gezeichnet
epub-summary = Aller Text lässt sich vergrößern und vorlesen. Jedes Bild ist in Worten beschrieben, jede Häkelschrift auch Reihe für Reihe erzählt, Tabellen haben Köpfe, und nichts hängt von Farbe ab.
