# What drawings say in Swedish: all from memory, to be checked by a native maker. Terms of stitches stand elsewhere.

# Charts
drawn-chart = Diagram
drawn-symbol-chart = { $name }: diagram
drawn-shape-disc = Varv runt en mittpunkt
drawn-shape-oval = Varv runt båda sidor av en luftmaskkedja
drawn-shape-rows = Varv fram och tillbaka
drawn-shape-edge = Virkat runt delens kant
drawn-shape-unrolled = Varv runt, utrullade
drawn-shape-3 = Varv till en triangel
drawn-shape-4 = Varv till en kvadrat
drawn-shape-5 = Varv till en femhörning
drawn-shape-6 = Varv till en sexhörning
drawn-shape-8 = Varv till en åttahörning
drawn-shape-n = Varv till en form med { $n } hörn
drawn-begins = { $name }. { $shape }, sett från rätsidan.
drawn-begins-on = Börjar på { $n } lm.
drawn-begins-on-ring = Börjar på { $n } lm, slutna till en ring.
drawn-next-round = Nästa varv
drawn-next-row = Nästa varv
drawn-row = Varv
drawn-a-row = ett varv
drawn-the-chain = luftmaskkedjan
drawn-right-side = rätsida
drawn-wrong-side = avigsida
drawn-clockwise = medurs
drawn-counter-clockwise = moturs
drawn-left-to-right = från vänster till höger
drawn-right-to-left = från höger till vänster
drawn-with-yarn = garn { $yarns }
drawn-row-told = { $head }: { $worked }.
drawn-row-told-count = { $head }: { $worked } ({ $count }).
drawn-underside = { $made } (på andra sidan av luftmaskkedjan)
drawn-with-picot = { $made } med 1 { $picot }
drawn-made-alike = gör { $n }, lika
drawn-made-mirrored = gör { $n }, spegelvända
drawn-make = gör { $n }
drawn-too-many = Helheten har { $n } maskor, för många för att visas: det här är rapporten.
drawn-piece-closes = Delen sluts: efter { $row } kan den inte ritas plant, därför är varven utrullade.
drawn-piece-stands-up = Delen reser sig: efter { $row } kan den inte ritas plant, därför är varven utrullade.
drawn-last-round = sista varvet
drawn-shown = Visas: { $what }.
drawn-whole-rows = hela varv
drawn-rows-shown = { $first } till { $last }
drawn-rows-of = { $rows } av { $n }
drawn-left-out-between = { $n ->
    [one] rapporten med sina kanter, { $n } rapport utelämnad däremellan
   *[other] rapporten med sina kanter, { $n } rapporter utelämnade däremellan
}
drawn-left-out-at-line = { $n ->
    [one] rapporten med sina kanter, { $n } rapport utelämnad vid den prickade linjen
   *[other] rapporten med sina kanter, { $n } rapporter utelämnade vid den prickade linjen
}
drawn-left-out-middle = rapporten med sina kanter, rapporterna i mitten utelämnade vid den prickade linjen
drawn-plain-left-out = { $n ->
    [one] { $many } släta maskor i varje varv utelämnade vid den prickade linjen
   *[other] { $many } släta maskor i varje varv utelämnade vid de prickade linjerna
}
drawn-ends-shown = varvens båda ändar, { $n } tecken utelämnade i mellanrummet
drawn-edge-left-out = kantens hörn och ändar, { $n } tecken utelämnade vid de prickade linjerna
drawn-in-grey = I grått: kanten som det virkas runt.
drawn-unrolled = Virkat runt; ritat utrullat, alla varv läses åt samma håll.
drawn-own-stitch = { $n }: { $words }
drawn-row-unread = { $row } kunde inte läsas: ”{ $words }”.
drawn-rows-unread = { $n } andra varv kunde inte läsas.
drawn-unread-one = { $row } inte läst
drawn-unread-range = { $first } till { $last } inte lästa
drawn-drawn-up-to = Diagrammet är ritat fram till dess.
drawn-begins-after = Diagrammet börjar därefter, på maskor som måste ha funnits där.
drawn-between-dashes = Mellan de streckade linjerna, { $n } gånger totalt: { $rows }
drawn-row-counts = { $row }: { $count }
drawn-yarn-rows = Garn { $yarn }: { $rows }
drawn-rs = RS
drawn-ws = AS
drawn-back-loop = endast bakre maskbågen
drawn-front-loop = endast främre maskbågen
drawn-third-loop = tredje maskbågen
drawn-worked-on-ws = { $seen } (på avigsidan: { $worked })
drawn-front-and-back = Symbolerna visar arbetet sett från rätsidan: på varv från avigsidan byter framför och bakom plats.
drawn-ring-sign = ring som första varvet virkas i
drawn-cut-sign = klipp av garnet och fäst
drawn-join-sign = fäst garnet
drawn-yarn-named = garn { $name }

# Grids
drawn-grid-filet = Filérutnät
drawn-grid-colour = Färgrutnät
drawn-grid-corner = Rutnät från hörn till hörn
drawn-drawn-as-filet = Ritat som filérutnät.
drawn-drawn-as-colour = Ritat som färgrutnät.
drawn-drawn-as-corner = Ritat som rutnät från hörn till hörn.
drawn-grid-chart = { $name }: { $kind }
drawn-square-filet = En ruta är en maska i nätet, { $n } maskor bred.
drawn-square-corner = En ruta är ett block av { $stitch }.
drawn-square-colour = En ruta är 1 { $stitch }.
drawn-space = { $n ->
    [one] { $n } tom
   *[other] { $n } tomma
}
drawn-block = { $n ->
    [one] { $n } fylld
   *[other] { $n } fyllda
}
drawn-upper-right-to-lower-left = från övre högra till nedre vänstra
drawn-upper-left-to-lower-right = från övre vänstra till nedre högra
drawn-lower-left-to-upper-right = från nedre vänstra till övre högra
drawn-lower-right-to-upper-left = från nedre högra till övre vänstra
drawn-space-means-us = tom: { $n } lm, hoppa över { $n } m, 1 { $stitch } i nästa m
drawn-space-means-uk = { drawn-space-means-us }
drawn-block-means = fylld: 1 { $stitch } i var och en av { $n } m
drawn-yarn-unnamed = { $sign }: garnet utan namn
drawn-yarn-sign = { $sign }: { $name }
drawn-in-all = { $what } ({ $n } totalt)
drawn-grid-row = { $row }, läses { $way }: { $cells }.
drawn-grid-row-all = { $row }, läses { $way }: { $cells } (totalt { $count }).
drawn-filet-edge = Första maskan i ett varv, eller luftmaskorna som räknas som en, är linjen i kanten: den har ingen ruta.
drawn-unrolled-short = Virkat runt; ritat utrullat.
drawn-squares-shown-right = Visas: rutor { $first } till { $last } av { $n }, räknade från höger; { $rows }. Del { $part } av { $parts }.
drawn-squares-shown-left = Visas: rutor { $first } till { $last } av { $n }, räknade från vänster; { $rows }. Del { $part } av { $parts }.
drawn-repeat-shown-right = Visas: rapporten med sina kanter, rutor 1 till { $last } av { $n }, räknade från höger; { $rows } av { $of }.
drawn-repeat-shown-left = Visas: rapporten med sina kanter, rutor 1 till { $last } av { $n }, räknade från vänster; { $rows } av { $of }.
drawn-repeats-across = { $n ->
    [one] Alla rutor i ett varv är lika.
   *[other] På bredden är mönstret detsamma igen efter { $n } rutor.
}
drawn-repeats-up = { $n ->
    [one] Alla varv är lika.
   *[other] På höjden är mönstret detsamma igen efter { $n } varv.
}
drawn-counts-of-shown = Antalen bredvid ett varv gäller rutorna som visas.
drawn-parts-left-out = { $n } andra delar är utelämnade.

# How motifs are joined
drawn-motifs-joined = Hur motiven fogas ihop
drawn-motifs-read-right = Hur motiven fogas ihop. Rader med { $n } motiv, läses från vänster till höger och uppifrån och ned, sett från rätsidan.
drawn-motifs-read-left = Hur motiven fogas ihop. Rader med { $n } motiv, läses från höger till vänster och uppifrån och ned, sett från rätsidan.
drawn-motifs-row = Rad { $row } av motiv: { $first } till { $last }.
drawn-motifs-row-one = Rad { $row } av motiv: { $first }.
drawn-motifs-ties = { $n ->
    [one] En sida fogas på { $n } ställe.
   *[other] En sida fogas på { $n } ställen.
}
drawn-motifs-order = Motiven i första raden fogas till det bredvid, det första i en rad till det ovanför, alla andra till båda.
drawn-motifs-around = { $row } går runt alla motiv.
drawn-motifs-many = { $across } motiv på bredden och { $down } på höjden, { $n } totalt, numrerade rad för rad.
drawn-motifs-shown = Visas: de första { $across } på bredden och { $down } på höjden.
drawn-motifs-tied = 1 är: { $first }; 2 till { $n } fogas i { $row }, där korta linjer korsar en kant.
drawn-motifs-any-order = En annan ordning går också bra, så länge varje motiv fogas till alla färdiga bredvid.
drawn-motifs-meet = Motiven möts där linjer korsar en kant.
drawn-motifs-border = { $n ->
    [one] Runt om, streckat: { $name }, { $n } varv.
   *[other] Runt om, streckat: { $name }, { $n } varv.
}
drawn-motif = Motiv
drawn-border = kant

# Schematics
drawn-schematic = Måttskiss
drawn-schematic-of = Måttskiss: { $title }
drawn-sheet = { $title }, blad { $n }
drawn-size = Storlek { $size }
drawn-sizes = Storlekar { $sizes }
drawn-arrow = Pil: arbetets riktning.
drawn-dashed = Streckat: ett vik, eller där en del börjar.
drawn-dotted = Prickat: ihopfogat.
drawn-half = ½: plant lagt, hälften av omkrets eller bredd.
drawn-drawn-in-size = Ritad i storlek { $size }.
drawn-mirrored = Spegelvänd för vänster hand.
drawn-to-scale = Konturen är ritad i skala.
drawn-to-scale-in-size = Konturen är ritad i skala i storlek { $size }.
drawn-times-as-large = ritad { $n } gånger så stor
drawn-the-piece = Delen
drawn-piece = del
drawn-figure-told = { $name }: { $how }.
drawn-figure-measured = { $name }: { $how }; mäts vid { $letters }.
drawn-figure-copied = { $how }; { $copies }
drawn-measure-told = { $name }: { $values }.
drawn-measure-of = { $part }, { $measure }
drawn-whole = Hela arbetet
drawn-in-all-of = { $measure } totalt
drawn-front = Framsida
drawn-cm = cm
drawn-in = tum
drawn-together-of = { $title }: hur delarna hör ihop
drawn-together = Hur delarna hör ihop
drawn-joined-to = { $name }, fogad till { $letter }
drawn-letter-name = { $letter }: { $name }
drawn-letter-copies = { $letter }: { $name } ({ $copies })
drawn-made-disc = virkad runt från mitten och utåt
drawn-made-oval = virkad runt båda sidor av en luftmaskkedja
drawn-made-rows = virkad fram och tillbaka nedifrån och upp
drawn-made-tie = en luftmaskkedja med maskor virkade tillbaka längs den
drawn-made-tip = virkad i varv från övre kantens mitt, som vänder vid spetsen
drawn-made-half-circle = virkad i varv från övre kantens mitt, varje varv en halvcirkel
drawn-made-front = ok, bål och ärmar som de ligger plant, stängda fram; allt virkat från halsen och nedåt
drawn-made-yoke = virkad i varv från halsen och nedåt, växer längs linjerna där delarna möts; ritad utfälld
drawn-made-rounds-bottom-up = virkad runt från bottnens mitt och uppåt; ritad plant
drawn-made-rounds-top-down = virkad runt från toppens mitt och nedåt; ritad plant
drawn-made-rounds-lower-up = virkad runt från nedre kanten och uppåt; ritad plant
drawn-made-rounds-upper-down = virkad runt från övre kanten och nedåt; ritad plant
drawn-made-filled = virkad runt från toppens mitt och nedåt; ritad fylld, varje varv en cirkel
drawn-made-joined = motiv sammanfogade sida vid sida, med kanten runt om
