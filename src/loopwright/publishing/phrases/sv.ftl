# Words of pages in Swedish: all from memory, to be checked by a native speaker. Terms of stitches stand elsewhere.
decimal = ,
list-separator = ,{" "}
size-separator = ;{" "}

# Headings of parts, in the order of the trade
part-sizes = Storlekar och färdiga mått
part-materials = Material
part-gauge = Masktäthet
part-abbreviations = Förkortningar
part-special = Särskilda maskor
part-notes = Anmärkningar
part-schematic = Måttskiss
part-instructions = Beskrivning
part-charts = Diagram
part-finishing = Montering
part-care = Skötsel
part-cautions = Säkerhet
part-help = Hjälp
part-changes = Ändringar
part-version = Om mönstret
part-terms-of-use = Användarvillkor

# Sizes
size = Storlek
sizes = Storlekar
to-fit = för { $measure }
finished = Färdigt, plant
worn = Buret
whole = Hela arbetet
measure-of = { $section }, { $measure }
yarn = Garn
yarn-of = Garn { $colour }
metres = m
balls = nystan
ball-note = Ett nystan är { $grams } g eller { $metres } m. Metrarna är beräknade ur maskorna; åtgången ligger mellan de två talen, nystanen är för det högre.
ball-note-plain = Metrarna är beräknade ur maskorna; åtgången ligger mellan de två talen.
hours = Tid
hours-unit = timmar
in-cm = cm (tum inom parentes)
open-chain-note = Luftmaskekedjans längd är fri; antal, diagram och mått gäller här en provbit på { $n } luftmaskor.
worked-in = Provplagget är virkat i storlek { $size }.
all-sizes-note = Talen gäller för storlekarna i denna ordning: { $sizes }. Ett ensamt tal gäller för alla.

# Materials and gauge
hook = Virknål
notions = Tillbehör
materials-yarn = Garn
gauge-other = En annan masktäthet
gauge-stitch = 1 { $stitch } är { $width } mm bred, ett varv { $height } mm högt.
gauge-other-corner = { $stitches } m på 10 cm
gauge-other-note = Vad det första måttet blir när maskorna är mindre eller större. Stämmer inte masktätheten, byt först nål; en rad emellan säger vilken storlek som ska virkas.
gauge-guess = Ingen masktäthet är angiven: så blir det oftast med detta garn och denna nål.

# Notes
repeats-note = Det som står efter * upprepas så ofta som det står; ( ) rymmer det som görs på ett ställe, [ ] det som upprepas så många gånger.
left-handed-note = För vänsterhänta: texten är densamma, varv fram och tillbaka går åt andra hållet och varv runt går medurs. Diagram är spegelvända, deras tal inte.
spelled-out-note = Upprepningar är utskrivna.

# Instructions
measure-now = Mät nu: { $what }.
tick = Virkat
notes-of-mine = Mina anteckningar
your-column = Färglägg din kolumn; läs bara dess tal.
every-size = alla storlekar
not-in-this-size = inte i denna storlek
choose-size = Storlek
all-sizes = Alla storlekar
film = Film
film-at = Filmen finns på { $address }.

# Pictures
photograph-alt = { $title }, färdigt
cover-alt = { $title }, så som maskorna formar det
chart-caption = { $section }
chart-of = Diagram: { $section }
schematic-alt = Måttskiss: { $title }
in-words = I ord
description-of = I ord

# Ends
corrections-at = Rättelser finns på { $address }.
version-line = Version { $version }
version-dated = Version { $version }, { $date }
draft = Utkast
page-of = sida { $page } av { $pages }
made-by = Design: { $author }
meets = Denna utgåva är satt i { $points } punkter, en spalt, utan kursiv; varje tal står i texten, och inget beror av färg eller bild.
unchecked-terms = Dessa termer ska ännu granskas av någon som virkar på språket: { $terms }.
own-words-note = Formgivarens egna ord är på { $language }.
no-pictures = Bilderna är utelämnade i denna utgåva.

# Names of measures
measure-across = diameter
measure-around = omkrets
measure-depth = djup
measure-width = bredd
measure-height = höjd
measure-length = längd
measure-width-at-the-start = bredd i början
measure-width-at-the-end = bredd i slutet
measure-around-at-the-start = omkrets i början
measure-around-at-the-end = omkrets i slutet
measure-opening-around = öppningens omkrets
measure-around-worn = omkrets, buret
measure-depth-worn = djup, buret
measure-length-worn = längd, buret

# Measures of the body
body-head-circumference = huvud
body-chest = bröst
body-foot-length = fotens längd
body-foot-circumference = fotens omkrets
body-hand-circumference = handens omkrets

# The web page and the EPUB
web-skip = Hoppa till beskrivningen
web-contents = I detta mönster
web-of = { $n } av { $all }
web-of-all = av { $all }
web-done = { $row } klart
web-done-of = { $row }, { $n } av { $all } klart
web-back = Ett varv tillbaka
web-finished = Alla varv är virkade.
web-kept = Bockarna sparas i denna webbläsare, för varje storlek.
web-not-kept = Bockarna kan inte sparas i denna webbläsare: de finns kvar så länge sidan är öppen.
web-untick = Ta bort alla bockar
web-undo = Återställ bockarna
web-larger = Så stort som det är ritat
epub-summary = All text kan göras större och läsas upp. Varje bild beskrivs i ord, varje diagram står också varv för varv, tabeller har rubriker, och inget beror av färg.
