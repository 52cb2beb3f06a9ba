# Words of pages in Dutch: all from memory, to be checked by a native speaker. Terms of stitches stand elsewhere.
decimal = ,
list-separator = ,{" "}
size-separator = ;{" "}

# Headings of parts, in the order of the trade
part-sizes = Maten en afmetingen
part-materials = Materialen
part-gauge = Stekenverhouding
part-abbreviations = Afkortingen
part-special = Bijzondere steken
part-notes = Opmerkingen
part-schematic = Maattekening
part-instructions = Beschrijving
part-charts = Haakschema's
part-finishing = Afwerking
part-care = Verzorging
part-cautions = Veiligheid
part-help = Hulp
part-changes = Wijzigingen
part-version = Over dit patroon
part-terms-of-use = Gebruiksvoorwaarden

# Sizes
size = Maat
sizes = Maten
to-fit = voor { $measure }
finished = Klaar, plat gelegd
worn = Gedragen
whole = Hele stuk
measure-of = { $section }, { $measure }
yarn = Garen
yarn-of = Garen { $colour }
metres = m
balls = bollen
ball-note = Een bol is { $grams } g of { $metres } m. De meters zijn uit de steken berekend; de behoefte ligt tussen de twee getallen, de bollen zijn voor het hoogste.
ball-note-plain = De meters zijn uit de steken berekend; de behoefte ligt tussen de twee getallen.
hours = Tijd
hours-unit = uur
in-cm = cm (inch tussen haakjes)
open-chain-note = De lengte van de ketting is vrij; aantallen, schema’s en maten gelden hier voor een proeflapje op { $n } lossen.
worked-in = Het voorbeeld is gehaakt in maat { $size }.
all-sizes-note = De getallen gelden voor de maten in deze volgorde: { $sizes }. Eén getal geldt voor alle.

# Materials and gauge
hook = Haaknaald
notions = Fournituren
materials-yarn = Garen
gauge-other = Een andere stekenverhouding
gauge-stitch = 1 { $stitch } is { $width } mm breed, een toer ervan { $height } mm hoog.
gauge-other-corner = { $stitches } st op 10 cm
gauge-other-note = Wat de eerste maat wordt als de steken kleiner of groter zijn. Klopt de stekenverhouding niet, neem dan eerst een andere naald; een regel ertussen zegt welke maat te haken.
gauge-guess = Er is geen stekenverhouding gegeven: dit geven dit garen en deze naald meestal.

# Notes
repeats-note = Wat na * staat wordt zo vaak herhaald als er staat; ( ) bevat wat op één plaats komt, [ ] wat zo vaak wordt herhaald.
left-handed-note = Voor linkshandigen: de tekst is dezelfde, toeren lopen andersom en rondes met de klok mee. Schema's zijn gespiegeld, hun getallen niet.
spelled-out-note = Herhalingen zijn voluit geschreven.

# Instructions
measure-now = Meet nu: { $what }.
tick = Gehaakt
notes-of-mine = Mijn aantekeningen
your-column = Kleur je eigen kolom; lees alleen de getallen daarin.
every-size = elke maat
not-in-this-size = niet in deze maat
choose-size = Maat
all-sizes = Alle maten
film = Film
film-at = De film staat op { $address }.

# Pictures
photograph-alt = { $title }, klaar
cover-alt = { $title }, zoals de steken het maken
chart-caption = { $section }
chart-of = Schema: { $section }
schematic-alt = Maattekening: { $title }
in-words = In woorden
description-of = In woorden

# Ends
corrections-at = Correcties staan op { $address }.
version-line = Versie { $version }
version-dated = Versie { $version }, { $date }
draft = Concept
page-of = pagina { $page } van { $pages }
made-by = Ontwerp: { $author }
meets = Deze uitgave is gezet in { $points } punt, één kolom, zonder cursief; elk aantal staat in de tekst, en niets hangt af van kleur of een afbeelding.
unchecked-terms = Deze termen moet iemand die in deze taal haakt nog nakijken: { $terms }.
own-words-note = De eigen woorden van de ontwerper zijn in het { $language }.
no-pictures = Deze uitgave is zonder afbeeldingen.

# Names of measures
measure-across = doorsnede
measure-around = omtrek
measure-depth = diepte
measure-width = breedte
measure-height = hoogte
measure-length = lengte
measure-width-at-the-start = breedte aan het begin
measure-width-at-the-end = breedte aan het einde
measure-around-at-the-start = omtrek aan het begin
measure-around-at-the-end = omtrek aan het einde
measure-opening-around = omtrek van de opening
measure-around-worn = omtrek, gedragen
measure-depth-worn = diepte, gedragen
measure-length-worn = lengte, gedragen

# Measures of the body
body-head-circumference = hoofd
body-chest = borst
body-foot-length = voetlengte
body-foot-circumference = voet, omtrek
body-hand-circumference = hand, omtrek

# The web page and the EPUB
web-skip = Naar de beschrijving
web-contents = In dit patroon
web-of = { $n } van { $all }
web-of-all = van { $all }
web-done = { $row } klaar
web-done-of = { $row }, { $n } van { $all } klaar
web-back = Eén toer terug
web-finished = Alle toeren zijn gehaakt.
web-kept = De vinkjes blijven in deze browser bewaard, per maat.
web-not-kept = De vinkjes kunnen in deze browser niet bewaard worden: ze blijven zolang de pagina open is.
web-untick = Alle vinkjes weghalen
web-undo = Vinkjes terugzetten
web-larger = Zo groot als getekend
epub-summary = Alle tekst kan worden vergroot en voorgelezen. Elke afbeelding is in woorden beschreven, elk schema staat er ook toer voor toer, tabellen hebben koppen, en niets hangt af van kleur.
