# What drawings say in Italian: all from memory, to be checked by a native maker. Terms of stitches stand elsewhere.

# Charts
drawn-chart = Schema
drawn-symbol-chart = { $name }: schema
drawn-shape-disc = Giri intorno a un centro
drawn-shape-oval = Giri intorno ai due lati di una catenella
drawn-shape-rows = Righe
drawn-shape-edge = Lavorato intorno al bordo del pezzo
drawn-shape-unrolled = Giri, srotolati
drawn-shape-3 = Giri di un triangolo
drawn-shape-4 = Giri di un quadrato
drawn-shape-5 = Giri di un pentagono
drawn-shape-6 = Giri di un esagono
drawn-shape-8 = Giri di un ottagono
drawn-shape-n = Giri di una forma con { $n } angoli
drawn-begins = { $name }. { $shape }, sul diritto del lavoro.
drawn-begins-on = Inizia su { $n } cat.
drawn-begins-on-ring = Inizia su { $n } cat, chiuse ad anello.
drawn-next-round = Giro successivo
drawn-next-row = Riga successiva
drawn-row = Riga
drawn-a-row = una riga
drawn-the-chain = la catenella
drawn-right-side = diritto
drawn-wrong-side = rovescio
drawn-clockwise = in senso orario
drawn-counter-clockwise = in senso antiorario
drawn-left-to-right = da sinistra a destra
drawn-right-to-left = da destra a sinistra
drawn-with-yarn = filato { $yarns }
drawn-row-told = { $head }: { $worked }.
drawn-row-told-count = { $head }: { $worked } ({ $count }).
drawn-underside = { $made } (sull’altro lato della catenella)
drawn-with-picot = { $made } con 1 { $picot }
drawn-made-alike = farne { $n }, uguali
drawn-made-mirrored = farne { $n }, speculari
drawn-make = farne { $n }
drawn-too-many = L’insieme ha { $n } maglie, troppe da mostrare: questa è la ripetizione.
drawn-piece-closes = Il pezzo si chiude: dopo { $row } non si può disegnare in piano, perciò i giri sono srotolati.
drawn-piece-stands-up = Il pezzo si alza: dopo { $row } non si può disegnare in piano, perciò i giri sono srotolati.
drawn-last-round = l’ultimo giro
drawn-shown = Mostrato: { $what }.
drawn-whole-rows = righe intere
drawn-rows-shown = da { $first } a { $last }
drawn-rows-of = { $rows } di { $n }
drawn-left-out-between = { $n ->
    [one] la ripetizione con i suoi bordi, { $n } ripetizione omessa in mezzo
   *[other] la ripetizione con i suoi bordi, { $n } ripetizioni omesse in mezzo
}
drawn-left-out-at-line = { $n ->
    [one] la ripetizione con i suoi bordi, { $n } ripetizione omessa alla linea punteggiata
   *[other] la ripetizione con i suoi bordi, { $n } ripetizioni omesse alla linea punteggiata
}
drawn-left-out-middle = la ripetizione con i suoi bordi, le ripetizioni di mezzo omesse alla linea punteggiata
drawn-plain-left-out = { $n ->
    [one] { $many } maglie lisce di ogni riga omesse alla linea punteggiata
   *[other] { $many } maglie lisce di ogni riga omesse alle linee punteggiate
}
drawn-ends-shown = le due estremità delle righe, { $n } simboli omessi nello spazio in mezzo
drawn-edge-left-out = angoli ed estremità del bordo, { $n } simboli omessi alle linee punteggiate
drawn-in-grey = In grigio: il bordo intorno a cui si lavora.
drawn-unrolled = Lavorato in tondo; disegnato srotolato, ogni giro si legge nello stesso verso.
drawn-own-stitch = { $n }: { $words }
drawn-row-unread = { $row } non si è potuto leggere: «{ $words }».
drawn-rows-unread = { $n } altre righe non si sono potute leggere.
drawn-unread-one = { $row } non letto
drawn-unread-range = da { $first } a { $last } non letti
drawn-drawn-up-to = Lo schema è disegnato fino a lì.
drawn-begins-after = Lo schema inizia dopo, su maglie che dovevano esserci.
drawn-between-dashes = Tra le linee tratteggiate, { $n } volte in tutto: { $rows }
drawn-row-counts = { $row }: { $count }
drawn-yarn-rows = Filato { $yarn }: { $rows }
drawn-rs = D
drawn-ws = R
drawn-back-loop = solo nell’asola posteriore
drawn-front-loop = solo nell’asola anteriore
drawn-third-loop = terza asola
drawn-worked-on-ws = { $seen } (sulle righe a rovescio: { $worked })
drawn-front-and-back = I simboli mostrano il lavoro visto dal diritto: sulle righe a rovescio davanti e dietro si scambiano.
drawn-ring-sign = anello in cui si lavora il primo giro
drawn-cut-sign = tagliare il filo e fermare
drawn-join-sign = attaccare il filo
drawn-yarn-named = filato { $name }

# Grids
drawn-grid-filet = Griglia filet
drawn-grid-colour = Griglia di colori
drawn-grid-corner = Griglia da angolo ad angolo
drawn-drawn-as-filet = Disegnato come griglia filet.
drawn-drawn-as-colour = Disegnato come griglia di colori.
drawn-drawn-as-corner = Disegnato come griglia da angolo ad angolo.
drawn-grid-chart = { $name }: { $kind }
drawn-square-filet = Un quadretto è una maglia della rete, larga { $n } maglie.
drawn-square-corner = Un quadretto è un blocco di { $stitch }.
drawn-square-colour = Un quadretto è 1 { $stitch }.
drawn-space = { $n ->
    [one] { $n } vuoto
   *[other] { $n } vuoti
}
drawn-block = { $n ->
    [one] { $n } pieno
   *[other] { $n } pieni
}
drawn-upper-right-to-lower-left = da in alto a destra a in basso a sinistra
drawn-upper-left-to-lower-right = da in alto a sinistra a in basso a destra
drawn-lower-left-to-upper-right = da in basso a sinistra a in alto a destra
drawn-lower-right-to-upper-left = da in basso a destra a in alto a sinistra
drawn-space-means-us = vuoto: { $n } cat, saltare { $n } m, 1 { $stitch } nella m successiva
drawn-space-means-uk = { drawn-space-means-us }
drawn-block-means = pieno: 1 { $stitch } in ognuna di { $n } m
drawn-yarn-unnamed = { $sign }: il filato senza nome
drawn-yarn-sign = { $sign }: { $name }
drawn-in-all = { $what } ({ $n } in tutto)
drawn-grid-row = { $row }, letta { $way }: { $cells }.
drawn-grid-row-all = { $row }, letta { $way }: { $cells } (in tutto { $count }).
drawn-filet-edge = La prima maglia di una riga, o le catenelle che valgono per una, è la linea del bordo: non ha quadretto.
drawn-unrolled-short = Lavorato in tondo; disegnato srotolato.
drawn-squares-shown-right = Mostrato: quadretti da { $first } a { $last } di { $n }, contati da destra; { $rows }. Parte { $part } di { $parts }.
drawn-squares-shown-left = Mostrato: quadretti da { $first } a { $last } di { $n }, contati da sinistra; { $rows }. Parte { $part } di { $parts }.
drawn-repeat-shown-right = Mostrato: la ripetizione con i suoi bordi, quadretti da 1 a { $last } di { $n }, contati da destra; { $rows } di { $of }.
drawn-repeat-shown-left = Mostrato: la ripetizione con i suoi bordi, quadretti da 1 a { $last } di { $n }, contati da sinistra; { $rows } di { $of }.
drawn-repeats-across = { $n ->
    [one] Tutti i quadretti di una riga sono uguali.
   *[other] In larghezza il motivo si ripete ogni { $n } quadretti.
}
drawn-repeats-up = { $n ->
    [one] Tutte le righe sono uguali.
   *[other] In altezza il motivo si ripete ogni { $n } righe.
}
drawn-counts-of-shown = I numeri accanto a una riga sono quelli dei quadretti mostrati.
drawn-parts-left-out = { $n } altre parti sono omesse.

# How motifs are joined
drawn-motifs-joined = Come si uniscono i motivi
drawn-motifs-read-right = Come si uniscono i motivi. File di { $n } motivi, lette da sinistra a destra e dall’alto in basso, sul diritto.
drawn-motifs-read-left = Come si uniscono i motivi. File di { $n } motivi, lette da destra a sinistra e dall’alto in basso, sul diritto.
drawn-motifs-row = Fila { $row } di motivi: da { $first } a { $last }.
drawn-motifs-row-one = Fila { $row } di motivi: { $first }.
drawn-motifs-ties = { $n ->
    [one] Un lato si unisce in { $n } punto.
   *[other] Un lato si unisce in { $n } punti.
}
drawn-motifs-order = I motivi della prima fila si uniscono a quello accanto, il primo di una fila a quello sopra, tutti gli altri a entrambi.
drawn-motifs-around = { $row } gira intorno a tutti i motivi.
drawn-motifs-many = { $across } motivi in larghezza e { $down } in altezza, { $n } in tutto, numerati fila per fila.
drawn-motifs-shown = Mostrato: i primi { $across } in larghezza e { $down } in altezza.
drawn-motifs-tied = 1 è: { $first }; da 2 a { $n } si uniscono in { $row }, dove brevi linee attraversano un bordo.
drawn-motifs-any-order = Va bene anche un altro ordine, purché ogni motivo sia unito a tutti quelli finiti accanto.
drawn-motifs-meet = I motivi si incontrano dove le linee attraversano un bordo.
drawn-motifs-border = { $n ->
    [one] Intorno, tratteggiato: { $name }, { $n } giro.
   *[other] Intorno, tratteggiato: { $name }, { $n } giri.
}
drawn-motif = Motivo
drawn-border = bordo

# Schematics
drawn-schematic = Schema delle misure
drawn-schematic-of = Schema delle misure: { $title }
drawn-sheet = { $title }, foglio { $n }
drawn-size = Taglia { $size }
drawn-sizes = Taglie { $sizes }
drawn-arrow = Freccia: direzione del lavoro.
drawn-dashed = Tratteggio: una piega, o dove inizia una parte.
drawn-dotted = Puntini: unito.
drawn-half = ½: in piano, metà della circonferenza o della larghezza.
drawn-drawn-in-size = Disegnato nella taglia { $size }.
drawn-mirrored = Speculare per la mano sinistra.
drawn-to-scale = Contorno disegnato in scala.
drawn-to-scale-in-size = Contorno disegnato in scala nella taglia { $size }.
drawn-times-as-large = disegnato { $n } volte più grande
drawn-the-piece = Il pezzo
drawn-piece = pezzo
drawn-figure-told = { $name }: { $how }.
drawn-figure-measured = { $name }: { $how }; misurato in { $letters }.
drawn-figure-copied = { $how }; { $copies }
drawn-measure-told = { $name }: { $values }.
drawn-measure-of = { $part }, { $measure }
drawn-whole = Pezzo intero
drawn-in-all-of = { $measure } in tutto
drawn-front = Davanti
drawn-cm = cm
drawn-in = poll.
drawn-together-of = { $title }: come si uniscono i pezzi
drawn-together = Come si uniscono i pezzi
drawn-joined-to = { $name }, unito a { $letter }
drawn-letter-name = { $letter }: { $name }
drawn-letter-copies = { $letter }: { $name } ({ $copies })
drawn-made-disc = lavorato in giri dal centro verso l’esterno
drawn-made-oval = lavorato in giri intorno ai due lati di una catenella
drawn-made-rows = lavorato in righe di andata e ritorno, dal basso verso l’alto
drawn-made-tie = una catenella, con maglie lavorate a ritroso su di essa
drawn-made-tip = lavorato in righe dal centro del bordo superiore, che girano alla punta
drawn-made-half-circle = lavorato in righe dal centro del bordo superiore, ogni riga un semicerchio
drawn-made-front = sprone, corpo e maniche come stanno in piano, chiusi davanti; tutto lavorato dal collo in giù
drawn-made-yoke = lavorato in righe dal collo in giù, crescendo lungo le linee dove i pannelli si incontrano; disegnato aperto in piano
drawn-made-rounds-bottom-up = lavorato in giri dal centro del fondo verso l’alto; disegnato in piano
drawn-made-rounds-top-down = lavorato in giri dal centro della cima verso il basso; disegnato in piano
drawn-made-rounds-lower-up = lavorato in giri dal bordo inferiore verso l’alto; disegnato in piano
drawn-made-rounds-upper-down = lavorato in giri dal bordo superiore verso il basso; disegnato in piano
drawn-made-filled = lavorato in giri dal centro della cima verso il basso; disegnato riempito, ogni giro un cerchio
drawn-made-joined = motivi uniti fianco a fianco, con il bordo intorno
