# Words of pages in Italian: all from memory, to be checked by a native speaker. Terms of stitches stand elsewhere.
decimal = ,
list-separator = ,{" "}
size-separator = ;{" "}

# Headings of parts, in the order of the trade
part-sizes = Taglie e misure finite
part-materials = Materiali
part-gauge = Campione
part-abbreviations = Abbreviazioni
part-special = Punti speciali
part-notes = Note
part-schematic = Schema delle misure
part-instructions = Istruzioni
part-charts = Schemi
part-finishing = Finiture
part-care = Cura del capo
part-cautions = Sicurezza
part-help = Aiuto
part-changes = Modifiche
part-version = Informazioni sullo schema
part-terms-of-use = Condizioni d'uso

# Sizes
size = Taglia
sizes = Taglie
to-fit = per { $measure }
finished = Finito, in piano
worn = Indossato
whole = Capo intero
measure-of = { $section }, { $measure }
yarn = Filato
yarn-of = Filato { $colour }
metres = m
balls = gomitoli
ball-note = Un gomitolo è di { $grams } g o { $metres } m. I metri sono calcolati dalle maglie; il fabbisogno sta tra i due numeri, i gomitoli sono per il maggiore.
ball-note-plain = I metri sono calcolati dalle maglie; il fabbisogno sta tra i due numeri.
hours = Tempo
hours-unit = ore
in-cm = cm (pollici tra parentesi)
open-chain-note = La lunghezza della catenella è libera; i numeri, gli schemi e le misure sono qui quelli di un campione su { $n } catenelle.
worked-in = Il campione è stato lavorato nella taglia { $size }.
all-sizes-note = I numeri valgono per le taglie in quest'ordine: { $sizes }. Un numero solo vale per tutte.

# Materials and gauge
hook = Uncinetto
notions = Accessori
materials-yarn = Filato
gauge-other = Un altro campione
gauge-stitch = 1 { $stitch } è larga { $width } mm, una riga è alta { $height } mm.
gauge-other-corner = { $stitches } m su 10 cm
gauge-other-note = Quanto dà la prima misura quando le maglie sono più piccole o più grandi. Se il campione non corrisponde, cambiare prima l'uncinetto; una riga intermedia dice quale taglia fare.
gauge-guess = Nessun campione è indicato: è quanto danno di solito questo filato e questo uncinetto.

# Notes
repeats-note = Ciò che segue * si ripete quante volte è detto; ( ) contiene ciò che va in un solo punto, [ ] ciò che si ripete tante volte.
left-handed-note = Per mancini: il testo è lo stesso, le righe vanno nell'altro verso e i giri in senso orario. Gli schemi sono specchiati, i loro numeri no.
spelled-out-note = Le ripetizioni sono scritte per esteso.

# Instructions
measure-now = Misurare ora: { $what }.
tick = Fatto
notes-of-mine = I miei appunti
your-column = Colorare la propria colonna; leggere solo i suoi numeri.
every-size = tutte le taglie
not-in-this-size = non in questa taglia
choose-size = Taglia
all-sizes = Tutte le taglie
film = Video
film-at = Il video è su { $address }.

# Pictures
photograph-alt = { $title }, finito
cover-alt = { $title }, come lo formano le maglie
chart-caption = { $section }
chart-of = Schema: { $section }
schematic-alt = Schema delle misure: { $title }
in-words = A parole
description-of = A parole

# Ends
corrections-at = Le correzioni sono su { $address }.
version-line = Versione { $version }
version-dated = Versione { $version }, { $date }
draft = Bozza
page-of = pagina { $page } di { $pages }
made-by = Progetto: { $author }
meets = Questa edizione è composta in corpo { $points }, a una colonna, senza corsivo; ogni numero è nel testo, e nulla dipende dal colore o da un'immagine.
unchecked-terms = Questi termini devono ancora essere controllati da chi lavora in questa lingua: { $terms }.
own-words-note = I testi propri della designer sono in { $language }.
no-pictures = Questa edizione è senza immagini.

# Names of measures
measure-across = diametro
measure-around = circonferenza
measure-depth = profondità
measure-width = larghezza
measure-height = altezza
measure-length = lunghezza
measure-width-at-the-start = larghezza all'inizio
measure-width-at-the-end = larghezza alla fine
measure-around-at-the-start = circonferenza all'inizio
measure-around-at-the-end = circonferenza alla fine
measure-opening-around = circonferenza dell'apertura
measure-around-worn = circonferenza, indossato
measure-depth-worn = profondità, indossato
measure-length-worn = lunghezza, indossato

# Measures of the body
body-head-circumference = testa
body-chest = torace
body-foot-length = lunghezza del piede
body-foot-circumference = circonferenza del piede
body-hand-circumference = circonferenza della mano

# The web page and the EPUB
web-skip = Vai alle istruzioni
web-contents = In questo schema
web-of = { $n } di { $all }
web-of-all = di { $all }
web-done = { $row } fatto
web-done-of = { $row }, { $n } di { $all } fatto
web-back = Una riga indietro
web-finished = Tutte le righe sono fatte.
web-kept = Le spunte restano in questo browser, per ogni taglia.
web-not-kept = Le spunte non possono essere conservate in questo browser: durano finché la pagina è aperta.
web-untick = Togliere tutte le spunte
web-undo = Rimettere le spunte
web-larger = Grande come è disegnato
epub-summary = Tutto il testo può essere ingrandito e letto ad alta voce. Ogni immagine è descritta a parole, ogni schema è dato anche riga per riga, le tabelle hanno intestazioni, e nulla dipende dal colore.
