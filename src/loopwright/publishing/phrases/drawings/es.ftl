# What drawings say in Spanish: all from memory, to be checked by a native maker. Terms of stitches stand elsewhere.

# Charts
drawn-chart = Diagrama
drawn-symbol-chart = { $name }: diagrama
drawn-shape-disc = Vueltas alrededor de un centro
drawn-shape-oval = Vueltas por ambos lados de una cadena
drawn-shape-rows = Hileras
drawn-shape-edge = Tejido alrededor del borde de la pieza
drawn-shape-unrolled = Vueltas, desplegadas
drawn-shape-3 = Vueltas de un triángulo
drawn-shape-4 = Vueltas de un cuadrado
drawn-shape-5 = Vueltas de un pentágono
drawn-shape-6 = Vueltas de un hexágono
drawn-shape-8 = Vueltas de un octógono
drawn-shape-n = Vueltas de una forma de { $n } esquinas
drawn-begins = { $name }. { $shape }, vistas por el derecho.
drawn-begins-on = Empieza sobre { $n } pc.
drawn-begins-on-ring = Empieza sobre { $n } pc, cerrados en anillo.
drawn-next-round = Vuelta siguiente
drawn-next-row = Hilera siguiente
drawn-row = Hilera
drawn-a-row = una hilera
drawn-the-chain = la cadena
drawn-right-side = derecho
drawn-wrong-side = revés
drawn-clockwise = en el sentido de las agujas del reloj
drawn-counter-clockwise = en sentido contrario a las agujas del reloj
drawn-left-to-right = de izquierda a derecha
drawn-right-to-left = de derecha a izquierda
drawn-with-yarn = hilo { $yarns }
drawn-row-told = { $head }: { $worked }.
drawn-row-told-count = { $head }: { $worked } ({ $count }).
drawn-underside = { $made } (por el otro lado de la cadena)
drawn-with-picot = { $made } con 1 { $picot }
drawn-made-alike = hacer { $n }, iguales
drawn-made-mirrored = hacer { $n }, en espejo
drawn-make = hacer { $n }
drawn-too-many = El conjunto tiene { $n } puntos, demasiados para mostrarlos: esta es la repetición.
drawn-piece-closes = La pieza se cierra: después de { $row } no se puede dibujar plana, por eso sus vueltas están desplegadas.
drawn-piece-stands-up = La pieza se levanta: después de { $row } no se puede dibujar plana, por eso sus vueltas están desplegadas.
drawn-last-round = la última vuelta
drawn-shown = Se muestra: { $what }.
drawn-whole-rows = hileras completas
drawn-rows-shown = { $first } a { $last }
drawn-rows-of = { $rows } de { $n }
drawn-left-out-between = { $n ->
    [one] la repetición con sus bordes, { $n } repetición omitida en medio
   *[other] la repetición con sus bordes, { $n } repeticiones omitidas en medio
}
drawn-left-out-at-line = { $n ->
    [one] la repetición con sus bordes, { $n } repetición omitida en la línea de puntos
   *[other] la repetición con sus bordes, { $n } repeticiones omitidas en la línea de puntos
}
drawn-left-out-middle = la repetición con sus bordes, las repeticiones del medio omitidas en la línea de puntos
drawn-plain-left-out = { $n ->
    [one] { $many } puntos lisos de cada hilera omitidos en la línea de puntos
   *[other] { $many } puntos lisos de cada hilera omitidos en las líneas de puntos
}
drawn-ends-shown = ambos extremos de las hileras, { $n } símbolos omitidos en el hueco entre ellos
drawn-edge-left-out = esquinas y extremos del borde, { $n } símbolos omitidos en las líneas de puntos
drawn-in-grey = En gris: el borde alrededor del que se teje.
drawn-unrolled = Tejido en redondo; dibujado desplegado, todas las vueltas se leen en el mismo sentido.
drawn-own-stitch = { $n }: { $words }
drawn-row-unread = { $row } no se pudo leer: «{ $words }».
drawn-rows-unread = { $n } hileras más no se pudieron leer.
drawn-unread-one = { $row } no leída
drawn-unread-range = { $first } a { $last } no leídas
drawn-drawn-up-to = El diagrama está dibujado hasta ahí.
drawn-begins-after = El diagrama empieza después, sobre puntos que tenían que estar ahí.
drawn-between-dashes = Entre las líneas discontinuas, { $n } veces en total: { $rows }
drawn-row-counts = { $row }: { $count }
drawn-yarn-rows = Hilo { $yarn }: { $rows }
drawn-rs = D
drawn-ws = R
drawn-back-loop = solo en la hebra de atrás
drawn-front-loop = solo en la hebra de delante
drawn-third-loop = tercera hebra
drawn-worked-on-ws = { $seen } (en las hileras del revés: { $worked })
drawn-front-and-back = Los símbolos muestran la labor vista por el derecho: en las hileras del revés, delante y detrás se intercambian.
drawn-ring-sign = anillo en el que se teje la primera vuelta
drawn-cut-sign = cortar el hilo y rematar
drawn-join-sign = unir el hilo
drawn-yarn-named = hilo { $name }

# Grids
drawn-grid-filet = Cuadrícula de filet
drawn-grid-colour = Cuadrícula de colores
drawn-grid-corner = Cuadrícula de esquina a esquina
drawn-drawn-as-filet = Dibujado como cuadrícula de filet.
drawn-drawn-as-colour = Dibujado como cuadrícula de colores.
drawn-drawn-as-corner = Dibujado como cuadrícula de esquina a esquina.
drawn-grid-chart = { $name }: { $kind }
drawn-square-filet = Un cuadro es una malla de la red, de { $n } puntos de ancho.
drawn-square-corner = Un cuadro es un bloque de { $stitch }.
drawn-square-colour = Un cuadro es 1 { $stitch }.
drawn-space = { $n ->
    [one] { $n } vacío
   *[other] { $n } vacíos
}
drawn-block = { $n ->
    [one] { $n } lleno
   *[other] { $n } llenos
}
drawn-upper-right-to-lower-left = de arriba a la derecha a abajo a la izquierda
drawn-upper-left-to-lower-right = de arriba a la izquierda a abajo a la derecha
drawn-lower-left-to-upper-right = de abajo a la izquierda a arriba a la derecha
drawn-lower-right-to-upper-left = de abajo a la derecha a arriba a la izquierda
drawn-space-means-us = vacío: { $n } pc, saltar { $n } p, 1 { $stitch } en el siguiente p
drawn-space-means-uk = { drawn-space-means-us }
drawn-block-means = lleno: 1 { $stitch } en cada uno de { $n } p
drawn-yarn-unnamed = { $sign }: el hilo sin nombre
drawn-yarn-sign = { $sign }: { $name }
drawn-in-all = { $what } ({ $n } en total)
drawn-grid-row = { $row }, se lee { $way }: { $cells }.
drawn-grid-row-all = { $row }, se lee { $way }: { $cells } (en total { $count }).
drawn-filet-edge = El primer punto de una hilera, o la cadena que cuenta como uno, es la línea del borde: no tiene cuadro.
drawn-unrolled-short = Tejido en redondo; dibujado desplegado.
drawn-squares-shown-right = Se muestra: cuadros { $first } a { $last } de { $n }, contados desde la derecha; { $rows }. Parte { $part } de { $parts }.
drawn-squares-shown-left = Se muestra: cuadros { $first } a { $last } de { $n }, contados desde la izquierda; { $rows }. Parte { $part } de { $parts }.
drawn-repeat-shown-right = Se muestra: la repetición con sus bordes, cuadros 1 a { $last } de { $n }, contados desde la derecha; { $rows } de { $of }.
drawn-repeat-shown-left = Se muestra: la repetición con sus bordes, cuadros 1 a { $last } de { $n }, contados desde la izquierda; { $rows } de { $of }.
drawn-repeats-across = { $n ->
    [one] Todos los cuadros de una hilera son iguales.
   *[other] A lo ancho, el dibujo se repite cada { $n } cuadros.
}
drawn-repeats-up = { $n ->
    [one] Todas las hileras son iguales.
   *[other] A lo alto, el dibujo se repite cada { $n } hileras.
}
drawn-counts-of-shown = Los números junto a una hilera son los de los cuadros mostrados.
drawn-parts-left-out = Se omiten { $n } partes más.

# How motifs are joined
drawn-motifs-joined = Cómo se unen los motivos
drawn-motifs-read-right = Cómo se unen los motivos. Filas de { $n } motivos, se leen de izquierda a derecha y de arriba abajo, vistas por el derecho.
drawn-motifs-read-left = Cómo se unen los motivos. Filas de { $n } motivos, se leen de derecha a izquierda y de arriba abajo, vistas por el derecho.
drawn-motifs-row = Fila { $row } de motivos: { $first } a { $last }.
drawn-motifs-row-one = Fila { $row } de motivos: { $first }.
drawn-motifs-ties = { $n ->
    [one] Un lado se une en { $n } lugar.
   *[other] Un lado se une en { $n } lugares.
}
drawn-motifs-order = Los motivos de la primera fila se unen al de al lado, el primero de una fila al de arriba, todos los demás a ambos.
drawn-motifs-around = { $row } rodea todos los motivos.
drawn-motifs-many = { $across } motivos a lo ancho y { $down } a lo alto, { $n } en total, numerados fila por fila.
drawn-motifs-shown = Se muestra: los primeros { $across } a lo ancho y { $down } a lo alto.
drawn-motifs-tied = 1 es: { $first }; 2 a { $n } se unen en { $row }, donde líneas cortas cruzan un borde.
drawn-motifs-any-order = Sirve otro orden, siempre que cada motivo se una a todos los terminados que tiene al lado.
drawn-motifs-meet = Los motivos se juntan donde las líneas cruzan un borde.
drawn-motifs-border = { $n ->
    [one] Alrededor, en línea discontinua: { $name }, { $n } vuelta.
   *[other] Alrededor, en línea discontinua: { $name }, { $n } vueltas.
}
drawn-motif = Motivo
drawn-border = borde

# Schematics
drawn-schematic = Esquema
drawn-schematic-of = Esquema: { $title }
drawn-sheet = { $title }, hoja { $n }
drawn-size = Talla { $size }
drawn-sizes = Tallas { $sizes }
drawn-arrow = Flecha: dirección del trabajo.
drawn-dashed = Discontinua: un doblez, o donde empieza una parte.
drawn-dotted = Punteada: unido.
drawn-half = ½: en plano, la mitad del contorno o del ancho.
drawn-drawn-in-size = Dibujado en la talla { $size }.
drawn-mirrored = En espejo para la mano izquierda.
drawn-to-scale = Contorno dibujado a escala.
drawn-to-scale-in-size = Contorno dibujado a escala en la talla { $size }.
drawn-times-as-large = dibujado { $n } veces más grande
drawn-the-piece = La pieza
drawn-piece = pieza
drawn-figure-told = { $name }: { $how }.
drawn-figure-measured = { $name }: { $how }; se mide en { $letters }.
drawn-figure-copied = { $how }; { $copies }
drawn-measure-told = { $name }: { $values }.
drawn-measure-of = { $part }, { $measure }
drawn-whole = Pieza entera
drawn-in-all-of = { $measure } en total
drawn-front = Delantero
drawn-cm = cm
drawn-in = pulg.
drawn-together-of = { $title }: cómo se juntan las piezas
drawn-together = Cómo se juntan las piezas
drawn-joined-to = { $name }, unido a { $letter }
drawn-letter-name = { $letter }: { $name }
drawn-letter-copies = { $letter }: { $name } ({ $copies })
drawn-made-disc = tejido en vueltas del centro hacia fuera
drawn-made-oval = tejido en vueltas por ambos lados de una cadena
drawn-made-rows = tejido en hileras de ida y vuelta, de abajo arriba
drawn-made-tie = una cadena, con puntos tejidos de vuelta sobre ella
drawn-made-tip = tejido en hileras desde el centro del borde superior, que giran en la punta
drawn-made-half-circle = tejido en hileras desde el centro del borde superior, cada hilera un semicírculo
drawn-made-front = canesú, cuerpo y mangas puestos en plano, cerrados por delante; todo tejido del cuello hacia abajo
drawn-made-yoke = tejido en hileras del cuello hacia abajo, creciendo en las líneas donde se juntan los paños; dibujado abierto en plano
drawn-made-rounds-bottom-up = tejido en vueltas del centro de la base hacia arriba; dibujado en plano
drawn-made-rounds-top-down = tejido en vueltas del centro de arriba hacia abajo; dibujado en plano
drawn-made-rounds-lower-up = tejido en vueltas del borde inferior hacia arriba; dibujado en plano
drawn-made-rounds-upper-down = tejido en vueltas del borde superior hacia abajo; dibujado en plano
drawn-made-filled = tejido en vueltas del centro de arriba hacia abajo; dibujado relleno, cada vuelta un círculo
drawn-made-joined = motivos unidos lado a lado, con el borde alrededor
