# Words of pages in Spanish: all from memory, to be checked by a native speaker. Terms of stitches stand elsewhere.
decimal = ,
list-separator = ,{" "}
size-separator = ;{" "}

# Headings of parts, in the order of the trade
part-sizes = Tallas y medidas finales
part-materials = Materiales
part-gauge = Muestra
part-abbreviations = Abreviaturas
part-special = Puntos especiales
part-notes = Notas
part-schematic = Esquema de medidas
part-instructions = Instrucciones
part-charts = Diagramas
part-finishing = Acabado
part-care = Cuidados
part-cautions = Seguridad
part-help = Ayuda
part-changes = Cambios
part-version = Sobre este patrón
part-terms-of-use = Condiciones de uso

# Sizes
size = Talla
sizes = Tallas
to-fit = para { $measure }
finished = Terminado, en plano
worn = Puesto
whole = Pieza entera
measure-of = { $section }, { $measure }
yarn = Hilo
yarn-of = Hilo { $colour }
metres = m
balls = ovillos
ball-note = Un ovillo tiene { $grams } g o { $metres } m. Los metros se calculan a partir de los puntos; lo necesario está entre los dos números, los ovillos son para el mayor.
ball-note-plain = Los metros se calculan a partir de los puntos; lo necesario está entre los dos números.
hours = Tiempo
hours-unit = horas
in-cm = cm (pulgadas entre paréntesis)
open-chain-note = El largo de la cadeneta es libre; los números de puntos, los gráficos y las medidas son aquí los de una muestra sobre { $n } cadenetas.
worked-in = La muestra se tejió en talla { $size }.
all-sizes-note = Los números van para las tallas en este orden: { $sizes }. Un solo número vale para todas.

# Materials and gauge
hook = Ganchillo
notions = Accesorios
materials-yarn = Hilo
gauge-other = Otra muestra
gauge-stitch = 1 { $stitch } mide { $width } mm de ancho, una hilera { $height } mm de alto.
gauge-other-corner = { $stitches } p en 10 cm
gauge-other-note = Lo que da la primera medida cuando los puntos son más pequeños o más grandes. Si la muestra no coincide, cambiar primero el ganchillo; una línea intermedia dice qué talla hacer.
gauge-guess = No se indica muestra: esto es lo que suelen dar este hilo y este ganchillo.

# Notes
repeats-note = Lo que sigue a * se repite las veces que se dice; ( ) encierra lo que va en un mismo lugar, [ ] lo que se repite tantas veces.
left-handed-note = Para zurdos: el texto es el mismo, las hileras van al revés y las vueltas en el sentido de las agujas del reloj. Los diagramas están reflejados, sus números no.
spelled-out-note = Las repeticiones están escritas por completo.

# Instructions
measure-now = Medir ahora: { $what }.
tick = Hecho
notes-of-mine = Mis notas
your-column = Colorear la columna propia; leer solo sus números.
every-size = todas las tallas
not-in-this-size = no en esta talla
choose-size = Talla
all-sizes = Todas las tallas
film = Vídeo
film-at = El vídeo está en { $address }.

# Pictures
photograph-alt = { $title }, terminado
cover-alt = { $title }, tal como lo forman sus puntos
chart-caption = { $section }
chart-of = Diagrama: { $section }
schematic-alt = Esquema de medidas: { $title }
in-words = En palabras
description-of = En palabras

# Ends
corrections-at = Las correcciones están en { $address }.
version-line = Versión { $version }
version-dated = Versión { $version }, { $date }
draft = Borrador
page-of = página { $page } de { $pages }
made-by = Diseño: { $author }
meets = Esta edición está compuesta en cuerpo { $points }, a una columna, sin cursiva; cada cuenta está en el texto, y nada depende del color ni de una imagen.
unchecked-terms = Estos términos aún debe revisarlos alguien que teja en este idioma: { $terms }.
own-words-note = Los textos propios de la diseñadora están en { $language }.
no-pictures = Esta edición va sin imágenes.

# Names of measures
measure-across = diámetro
measure-around = contorno
measure-depth = profundidad
measure-width = ancho
measure-height = alto
measure-length = largo
measure-width-at-the-start = ancho al principio
measure-width-at-the-end = ancho al final
measure-around-at-the-start = contorno al principio
measure-around-at-the-end = contorno al final
measure-opening-around = contorno de la abertura
measure-around-worn = contorno, puesto
measure-depth-worn = profundidad, puesto
measure-length-worn = largo, puesto

# Measures of the body
body-head-circumference = cabeza
body-chest = pecho
body-foot-length = largo del pie
body-foot-circumference = contorno del pie
body-hand-circumference = contorno de la mano

# The web page and the EPUB
web-skip = Ir a las instrucciones
web-contents = En este patrón
web-of = { $n } de { $all }
web-of-all = de { $all }
web-done = { $row } hecho
web-done-of = { $row }, { $n } de { $all } hecho
web-back = Una hilera atrás
web-finished = Todas las hileras están hechas.
web-kept = Las marcas se guardan en este navegador, por talla.
web-not-kept = Las marcas no se pueden guardar en este navegador: duran mientras la página esté abierta.
web-untick = Quitar todas las marcas
web-undo = Volver a poner las marcas
web-larger = Tan grande como está dibujado
epub-summary = Todo el texto se puede ampliar y leer en voz alta. Cada imagen se describe en palabras, cada diagrama se da también hilera por hilera, las tablas tienen encabezados y nada depende del color.
