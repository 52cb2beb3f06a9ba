# What drawings say in Danish: all from memory, to be checked by a native maker. Terms of stitches stand elsewhere.

# Charts
drawn-chart = Diagram
drawn-symbol-chart = { $name }: diagram
drawn-shape-disc = Omgange om en midte
drawn-shape-oval = Omgange om begge sider af en luftmaskekæde
drawn-shape-rows = Rækker
drawn-shape-edge = Hæklet rundt om delens kant
drawn-shape-unrolled = Omgange, rullet ud
drawn-shape-3 = Omgange i en trekant
drawn-shape-4 = Omgange i en firkant
drawn-shape-5 = Omgange i en femkant
drawn-shape-6 = Omgange i en sekskant
drawn-shape-8 = Omgange i en ottekant
drawn-shape-n = Omgange i en form med { $n } hjørner
drawn-begins = { $name }. { $shape }, set fra retsiden.
drawn-begins-on = Begynder på { $n } lm.
drawn-begins-on-ring = Begynder på { $n } lm, samlet til en ring.
drawn-next-round = Næste omgang
drawn-next-row = Næste række
drawn-row = Række
drawn-a-row = en række
drawn-the-chain = luftmaskekæden
drawn-right-side = retside
drawn-wrong-side = vrangside
drawn-clockwise = med uret
drawn-counter-clockwise = mod uret
drawn-left-to-right = fra venstre mod højre
drawn-right-to-left = fra højre mod venstre
drawn-with-yarn = garn { $yarns }
drawn-row-told = { $head }: { $worked }.
drawn-row-told-count = { $head }: { $worked } ({ $count }).
drawn-underside = { $made } (på den anden side af luftmaskekæden)
drawn-with-picot = { $made } med 1 { $picot }
drawn-made-alike = lav { $n }, ens
drawn-made-mirrored = lav { $n }, spejlvendt
drawn-make = lav { $n }
drawn-too-many = Det hele har { $n } masker, for mange til at vise: dette er mønsterrapporten.
drawn-piece-closes = Delen lukker sig: efter { $row } kan den ikke tegnes fladt, derfor er omgangene rullet ud.
drawn-piece-stands-up = Delen rejser sig: efter { $row } kan den ikke tegnes fladt, derfor er omgangene rullet ud.
drawn-last-round = sidste omgang
drawn-shown = Vist: { $what }.
drawn-whole-rows = hele rækker
drawn-rows-shown = { $first } til { $last }
drawn-rows-of = { $rows } af { $n }
drawn-left-out-between = { $n ->
    [one] rapporten med sine kanter, { $n } rapport udeladt imellem
   *[other] rapporten med sine kanter, { $n } rapporter udeladt imellem
}
drawn-left-out-at-line = { $n ->
    [one] rapporten med sine kanter, { $n } rapport udeladt ved den prikkede linje
   *[other] rapporten med sine kanter, { $n } rapporter udeladt ved den prikkede linje
}
drawn-left-out-middle = rapporten med sine kanter, rapporterne i midten udeladt ved den prikkede linje
drawn-plain-left-out = { $n ->
    [one] { $many } glatte masker i hver række udeladt ved den prikkede linje
   *[other] { $many } glatte masker i hver række udeladt ved de prikkede linjer
}
drawn-ends-shown = begge ender af rækkerne, { $n } tegn udeladt i mellemrummet
drawn-edge-left-out = kantens hjørner og ender, { $n } tegn udeladt ved de prikkede linjer
drawn-in-grey = I gråt: kanten, der hækles rundt om.
drawn-unrolled = Hæklet rundt; tegnet rullet ud, alle omgange læses samme vej.
drawn-own-stitch = { $n }: { $words }
drawn-row-unread = { $row } kunne ikke læses: »{ $words }«.
drawn-rows-unread = { $n } andre rækker kunne ikke læses.
drawn-unread-one = { $row } ikke læst
drawn-unread-range = { $first } til { $last } ikke læst
drawn-drawn-up-to = Diagrammet er tegnet indtil da.
drawn-begins-after = Diagrammet begynder derefter, på masker som må have været der.
drawn-between-dashes = Mellem de stiplede linjer, { $n } gange i alt: { $rows }
drawn-row-counts = { $row }: { $count }
drawn-yarn-rows = Garn { $yarn }: { $rows }
drawn-rs = RS
drawn-ws = VS
drawn-back-loop = kun bagerste maskeled
drawn-front-loop = kun forreste maskeled
drawn-third-loop = tredje maskeled
drawn-worked-on-ws = { $seen } (på vrangsiden: { $worked })
drawn-front-and-back = Symbolerne viser arbejdet set fra retsiden: på rækker fra vrangsiden bytter forside og bagside plads.
drawn-ring-sign = ring som første omgang hækles i
drawn-cut-sign = klip garnet og hæft
drawn-join-sign = sæt garnet på
drawn-yarn-named = garn { $name }

# Grids
drawn-grid-filet = Filetgitter
drawn-grid-colour = Farvegitter
drawn-grid-corner = Gitter fra hjørne til hjørne
drawn-drawn-as-filet = Tegnet som filetgitter.
drawn-drawn-as-colour = Tegnet som farvegitter.
drawn-drawn-as-corner = Tegnet som gitter fra hjørne til hjørne.
drawn-grid-chart = { $name }: { $kind }
drawn-square-filet = En rude er en maske i nettet, { $n } masker bred.
drawn-square-corner = En rude er en blok af { $stitch }.
drawn-square-colour = En rude er 1 { $stitch }.
drawn-space = { $n ->
    [one] { $n } tom
   *[other] { $n } tomme
}
drawn-block = { $n ->
    [one] { $n } fyldt
   *[other] { $n } fyldte
}
drawn-upper-right-to-lower-left = fra øverst til højre til nederst til venstre
drawn-upper-left-to-lower-right = fra øverst til venstre til nederst til højre
drawn-lower-left-to-upper-right = fra nederst til venstre til øverst til højre
drawn-lower-right-to-upper-left = fra nederst til højre til øverst til venstre
drawn-space-means-us = tom: { $n } lm, spring { $n } m over, 1 { $stitch } i næste m
drawn-space-means-uk = { drawn-space-means-us }
drawn-block-means = fyldt: 1 { $stitch } i hver af { $n } m
drawn-yarn-unnamed = { $sign }: garnet uden navn
drawn-yarn-sign = { $sign }: { $name }
drawn-in-all = { $what } ({ $n } i alt)
drawn-grid-row = { $row }, læses { $way }: { $cells }.
drawn-grid-row-all = { $row }, læses { $way }: { $cells } (i alt { $count }).
drawn-filet-edge = Første maske i en række, eller luftmaskerne der tæller som en, er linjen i kanten: den har ingen rude.
drawn-unrolled-short = Hæklet rundt; tegnet rullet ud.
drawn-squares-shown-right = Vist: ruder { $first } til { $last } af { $n }, talt fra højre; { $rows }. Del { $part } af { $parts }.
drawn-squares-shown-left = Vist: ruder { $first } til { $last } af { $n }, talt fra venstre; { $rows }. Del { $part } af { $parts }.
drawn-repeat-shown-right = Vist: rapporten med sine kanter, ruder 1 til { $last } af { $n }, talt fra højre; { $rows } af { $of }.
drawn-repeat-shown-left = Vist: rapporten med sine kanter, ruder 1 til { $last } af { $n }, talt fra venstre; { $rows } af { $of }.
drawn-repeats-across = { $n ->
    [one] Alle ruder i en række er ens.
   *[other] I bredden er mønstret det samme igen efter { $n } ruder.
}
drawn-repeats-up = { $n ->
    [one] Alle rækker er ens.
   *[other] I højden er mønstret det samme igen efter { $n } rækker.
}
drawn-counts-of-shown = Tallene ved en række gælder de viste ruder.
drawn-parts-left-out = { $n } andre dele er udeladt.

# How motifs are joined
drawn-motifs-joined = Hvordan motiverne samles
drawn-motifs-read-right = Hvordan motiverne samles. Rækker med { $n } motiver, læses fra venstre mod højre og oppefra og ned, set fra retsiden.
drawn-motifs-read-left = Hvordan motiverne samles. Rækker med { $n } motiver, læses fra højre mod venstre og oppefra og ned, set fra retsiden.
drawn-motifs-row = Række { $row } af motiver: { $first } til { $last }.
drawn-motifs-row-one = Række { $row } af motiver: { $first }.
drawn-motifs-ties = { $n ->
    [one] En side samles { $n } sted.
   *[other] En side samles { $n } steder.
}
drawn-motifs-order = Motiver i første række samles med det ved siden af, det første i en række med det ovenover, alle andre med begge.
drawn-motifs-around = { $row } går rundt om alle motiver.
drawn-motifs-many = { $across } motiver i bredden og { $down } i højden, { $n } i alt, nummereret række for række.
drawn-motifs-shown = Vist: de første { $across } i bredden og { $down } i højden.
drawn-motifs-tied = 1 er: { $first }; 2 til { $n } samles i { $row }, hvor korte linjer krydser en kant.
drawn-motifs-any-order = En anden rækkefølge går også, når blot hvert motiv samles med alle færdige ved siden af.
drawn-motifs-meet = Motiver mødes hvor linjer krydser en kant.
drawn-motifs-border = { $n ->
    [one] Udenom, stiplet: { $name }, { $n } omgang.
   *[other] Udenom, stiplet: { $name }, { $n } omgange.
}
drawn-motif = Motiv
drawn-border = kant

# Schematics
drawn-schematic = Målskitse
drawn-schematic-of = Målskitse: { $title }
drawn-sheet = { $title }, ark { $n }
drawn-size = Størrelse { $size }
drawn-sizes = Størrelser { $sizes }
drawn-arrow = Pil: arbejdets retning.
drawn-dashed = Stiplet: en fold, eller hvor en del begynder.
drawn-dotted = Prikket: samlet.
drawn-half = ½: lagt fladt, halvdelen af omkreds eller bredde.
drawn-drawn-in-size = Tegnet i størrelse { $size }.
drawn-mirrored = Spejlvendt til venstre hånd.
drawn-to-scale = Omridset er tegnet i målestok.
drawn-to-scale-in-size = Omridset er tegnet i målestok i størrelse { $size }.
drawn-times-as-large = tegnet { $n } gange så stor
drawn-the-piece = Delen
drawn-piece = del
drawn-figure-told = { $name }: { $how }.
drawn-figure-measured = { $name }: { $how }; måles ved { $letters }.
drawn-figure-copied = { $how }; { $copies }
drawn-measure-told = { $name }: { $values }.
drawn-measure-of = { $part }, { $measure }
drawn-whole = Hele arbejdet
drawn-in-all-of = { $measure } i alt
drawn-front = Forside
drawn-cm = cm
drawn-in = tommer
drawn-together-of = { $title }: hvordan delene hører sammen
drawn-together = Hvordan delene hører sammen
drawn-joined-to = { $name }, samlet med { $letter }
drawn-letter-name = { $letter }: { $name }
drawn-letter-copies = { $letter }: { $name } ({ $copies })
drawn-made-disc = hæklet rundt fra midten og udad
drawn-made-oval = hæklet rundt om begge sider af en luftmaskekæde
drawn-made-rows = hæklet frem og tilbage nedefra og op
drawn-made-tie = en luftmaskekæde med masker hæklet tilbage langs den
drawn-made-tip = hæklet i rækker fra midten af overkanten, der drejer ved spidsen
drawn-made-half-circle = hæklet i rækker fra midten af overkanten, hver række en halvcirkel
drawn-made-front = bærestykke, krop og ærmer som de ligger fladt, lukket foran; alt hæklet fra halsen og ned
drawn-made-yoke = hæklet i rækker fra halsen og ned, vokser langs linjerne hvor delene mødes; tegnet foldet ud
drawn-made-rounds-bottom-up = hæklet rundt fra bundens midte og op; tegnet fladt
drawn-made-rounds-top-down = hæklet rundt fra toppens midte og ned; tegnet fladt
drawn-made-rounds-lower-up = hæklet rundt fra nederkanten og op; tegnet fladt
drawn-made-rounds-upper-down = hæklet rundt fra overkanten og ned; tegnet fladt
drawn-made-filled = hæklet rundt fra toppens midte og ned; tegnet fyldt, hver omgang en cirkel
drawn-made-joined = motiver sat sammen side om side, med kanten rundt om
