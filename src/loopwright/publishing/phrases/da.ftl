# Words of pages in Danish: all from memory, to be checked by a native speaker. Terms of stitches stand elsewhere.
decimal = ,
list-separator = ,{" "}
size-separator = ;{" "}

# Headings of parts, in the order of the trade
part-sizes = Størrelser og færdige mål
part-materials = Materialer
part-gauge = Hæklefasthed
part-abbreviations = Forkortelser
part-special = Særlige masker
part-notes = Bemærkninger
part-schematic = Målskitse
part-instructions = Fremgangsmåde
part-charts = Diagrammer
part-finishing = Montering
part-care = Vask og pleje
part-cautions = Sikkerhed
part-help = Hjælp
part-changes = Ændringer
part-version = Om opskriften
part-terms-of-use = Brugsbetingelser

# Sizes
size = Størrelse
sizes = Størrelser
to-fit = til { $measure }
finished = Færdig, lagt fladt
worn = Båret
whole = Hele arbejdet
measure-of = { $section }, { $measure }
yarn = Garn
yarn-of = Garn { $colour }
metres = m
balls = nøgler
ball-note = Et nøgle er { $grams } g eller { $metres } m. Meterne er beregnet ud fra maskerne; forbruget ligger mellem de to tal, nøglerne er til det højeste.
ball-note-plain = Meterne er beregnet ud fra maskerne; forbruget ligger mellem de to tal.
hours = Tid
hours-unit = timer
in-cm = cm (tommer i parentes)
open-chain-note = Luftmaskekædens længde er fri; antal, diagrammer og mål gælder her en prøve på { $n } luftmasker.
worked-in = Prøven er hæklet i størrelse { $size }.
all-sizes-note = Tallene gælder for størrelserne i denne rækkefølge: { $sizes }. Et enkelt tal gælder for alle.

# Materials and gauge
hook = Hæklenål
notions = Tilbehør
materials-yarn = Garn
gauge-other = En anden hæklefasthed
gauge-stitch = 1 { $stitch } er { $width } mm bred, en række { $height } mm høj.
gauge-other-corner = { $stitches } m på 10 cm
gauge-other-note = Hvad det første mål bliver, når maskerne er mindre eller større. Passer hæklefastheden ikke, så skift først nål; en linje imellem siger, hvilken størrelse der skal hækles.
gauge-guess = Ingen hæklefasthed er angivet: sådan bliver det som regel med dette garn og denne nål.

# Notes
repeats-note = Det, der står efter *, gentages så ofte, som der står; ( ) rummer det, der hækles ét sted, [ ] det, der gentages så mange gange.
left-handed-note = For venstrehåndede: teksten er den samme, rækker går den anden vej og omgange med uret. Diagrammer er spejlvendt, deres tal ikke.
spelled-out-note = Gentagelser er skrevet helt ud.

# Instructions
measure-now = Mål nu: { $what }.
tick = Hæklet
notes-of-mine = Mine noter
your-column = Farv din kolonne; læs kun dens tal.
every-size = alle størrelser
not-in-this-size = ikke i denne størrelse
choose-size = Størrelse
all-sizes = Alle størrelser
film = Film
film-at = Filmen findes på { $address }.

# Pictures
photograph-alt = { $title }, færdig
cover-alt = { $title }, som maskerne danner det
chart-caption = { $section }
chart-of = Diagram: { $section }
schematic-alt = Målskitse: { $title }
in-words = I ord
description-of = I ord

# Ends
corrections-at = Rettelser findes på { $address }.
version-line = Version { $version }
version-dated = Version { $version }, { $date }
draft = Udkast
page-of = side { $page } af { $pages }
made-by = Design: { $author }
meets = Denne udgave er sat i { $points } punkt, én spalte, uden kursiv; hvert tal står i teksten, og intet afhænger af farve eller billede.
unchecked-terms = Disse udtryk skal endnu ses efter af en, der hækler på sproget: { $terms }.
own-words-note = Designerens egne ord er på { $language }.
no-pictures = Billederne er udeladt i denne udgave.

# Names of measures
measure-across = diameter
measure-around = omkreds
measure-depth = dybde
measure-width = bredde
measure-height = højde
measure-length = længde
measure-width-at-the-start = bredde i begyndelsen
measure-width-at-the-end = bredde i slutningen
measure-around-at-the-start = omkreds i begyndelsen
measure-around-at-the-end = omkreds i slutningen
measure-opening-around = åbningens omkreds
measure-around-worn = omkreds, båret
measure-depth-worn = dybde, båret
measure-length-worn = længde, båret

# Measures of the body
body-head-circumference = hoved
body-chest = bryst
body-foot-length = fodens længde
body-foot-circumference = fodens omkreds
body-hand-circumference = håndens omkreds

# The web page and the EPUB
web-skip = Gå til fremgangsmåden
web-contents = I denne opskrift
web-of = { $n } af { $all }
web-of-all = af { $all }
web-done = { $row } færdig
web-done-of = { $row }, { $n } af { $all } færdig
web-back = En række tilbage
web-finished = Alle rækker er hæklet.
web-kept = Fluebenene gemmes i denne browser, for hver størrelse.
web-not-kept = Fluebenene kan ikke gemmes i denne browser: de bliver, så længe siden er åben.
web-untick = Fjern alle flueben
web-undo = Sæt fluebenene igen
web-larger = Så stort som tegnet
epub-summary = Al tekst kan gøres større og læses op. Hvert billede er beskrevet i ord, hvert diagram står også række for række, tabeller har overskrifter, og intet afhænger af farve.
