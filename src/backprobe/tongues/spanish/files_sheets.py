"""Spanish: what is expected of a sheet."""

SENTENCES = """
# formats/job_as_built.py
each lead of the unit once; '{=lead}' stands twice
= cada cable de la unidad una vez; '{lead}' está dos veces
"…", a lead as the unit's sheet names it
= "…", un cable como lo nombra la hoja de la unidad
"photos/…", as seen from the job folder
= "photos/…", visto desde la carpeta del trabajo
each photo once; '{=file}' stands twice
= cada foto una vez; '{file}' está dos veces
# formats/job_join.py
degrees Celsius, from {#COLDEST_C} to {#HOTTEST_C}: are these °F? {#value} °F are {#as_C} °C
= grados Celsius, de {COLDEST_C} a {HOTTEST_C}: ¿son °F? {value} °F son {as_C} °C
{drop_key} and {load_key} together
= {drop_key} y {load_key} juntos
each input once; '{=lead}' stands twice
= cada entrada una vez; '{lead}' está dos veces
# formats/job_parked.py
one figure in mA
= un valor en mA
one reading over all, or one for each of two batteries
= una lectura sobre todas, o una por cada una de dos baterías
degrees Celsius, at most {#HOTTEST_C}: are these °F? {#value} °F are {#as_C} °C
= grados Celsius, como máximo {HOTTEST_C}: ¿son °F? {value} °F son {as_C} °C
a figure from 0 to {#most}, as the meter showed it: {key} = "{example}"
= un valor de 0 a {most}, como lo mostró el medidor: {key} = "{example}"
# formats/job_prove.py
{lacking} beside it: the change between the two is what tells
= {lacking} a su lado: lo que dice algo es el cambio entre los dos
volts as they were shown: {=name} = "12.41"
= voltios como se mostraron: {name} = "12.41"
# formats/job_toml.py
either class or file, not both
= o class o file, no ambos
"unit.toml", the path of the unit's sheet
= "unit.toml", la ruta de la hoja de la unidad
-33.1, degrees north, south negative
= -33.1, grados norte, sur negativo
151.2, degrees east, west negative
= 151.2, grados este, oeste negativo
12 or 24
= 12 o 24
12 or 24, without quotation marks and unit
= 12 o 24, sin comillas ni unidad
each wire once; '{=name}' stands twice
= cada cable una vez; '{name}' está dos veces
a size such as "18 AWG" or "0.75 mm2"
= una sección como "18 AWG" o "0.75 mm2"
"…", as in the readings
= "…", como en las lecturas
"…", what is missing
= "…", lo que falta
# formats/meter_toml.py
MIN hold taken as {#TAKEN_MIN_MS} ms
= retención MIN tomada como {TAKEN_MIN_MS} ms
display taken as {#TAKEN_PER_S} a second
= pantalla tomada como {TAKEN_PER_S} por segundo
as stated in {=file}
= según lo indicado en {file}
0.5, for ±(0.5 % + counts)
= 0.5, para ±(0.5 % + cuentas)
2, for ±(percent + 2 counts)
= 2, para ±(por ciento + 2 cuentas)
a list of: {join}
= una lista de: {join}
# formats/mount_choices.py
one of {join}
= uno de {join}
{rake_deg}° against the floor, up to {#top_mm} mm
= {rake_deg}° respecto al suelo, hasta {top_mm} mm
# formats/mount_toml.py
a material: {join}
= un material: {join}
a table [[place]] for each place that the unit could have; there is none
= una tabla [[place]] por cada sitio que podría tener la unidad; no hay ninguna
at most {MOST_PLACES} places
= como máximo {MOST_PLACES} sitios
a name for each place that no other place has
= un nombre por cada sitio que no tenga otro sitio
degrees from north over east, heading = 90, or heading = "{ANY}"
= grados desde el norte hacia el este, heading = 90, o heading = "{ANY}"
at most {MOST_PARTS} parts for a place
= como máximo {MOST_PARTS} partes por sitio
"…", what the place is called
= "…", cómo se llama el sitio
a place that is described by choices, or one that was measured part by part
= un sitio descrito con opciones, o uno medido parte por parte
{ONE_OF}; '{material}' is none of them
= {ONE_OF}; '{material}' no es ninguno de ellos
millimetres from the unit to it
= milímetros desde la unidad hasta ello
no rake for a part above: it lies flat; a sloping one is ahead, behind, …
= sin inclinación para una parte de arriba: queda plana; una inclinada está delante, detrás, …
a part {side} reaches {join}
= una parte {side} llega a {join}
{one} + {other} above 0: this part would have no width
= {one} + {other} por encima de 0: esta parte no tendría ancho
to_mm above from_mm: this part would have no height
= to_mm mayor que from_mm: esta parte no tendría alto
# formats/policy_toml.py
a policy may tighten a limit, never loosen it
= una política puede apretar un límite, nunca aflojarlo
{#least} to {#most}: {NEVER_LOOSER}
= {least} a {most}: {NEVER_LOOSER}
# formats/roster_cells.py
a day, 2026-03-31 or 31.03.2026; with slashes the month may be meant first
= un día, 2026-03-31 o 31.03.2026; con barras el mes puede ir primero
at most {MOST_LETTERS} letters
= como máximo {MOST_LETTERS} letras
letters that can be read; the file is in another encoding than it seems: save it as UTF-8
= letras legibles; el archivo está en otra codificación de la que parece: guárdelo como UTF-8
printable letters
= letras imprimibles
a value; this is a spreadsheet's error
= un valor; esto es un error de la hoja de cálculo
a value; this is a formula that was not worked out
= un valor; esto es una fórmula sin calcular
the VIN
= el VIN
the serial
= la serie
the plate
= la matrícula
the number
= el número
{what} as it is written on the thing itself: a spreadsheet
= {what} como está escrito en la propia cosa: una hoja de cálculo
{again} took it for a large number; set the column to text and fill it in again
= {again} lo tomó por un número grande; ponga la columna como texto y escríbalo otra vez
{again} took it for a figure; set the column to text and fill it in again
= {again} lo tomó por una cifra; ponga la columna como texto y escríbalo otra vez
a VIN of {VIN_LENGTH} characters; these are {len}
= un VIN de {VIN_LENGTH} caracteres; estos son {len}
a VIN without {join}: letters I, O and Q are not used, 1 and 0 are
= un VIN sin {join}: no se usan las letras I, O y Q; sí 1 y 0
{DAY_EXPECTED}; {plain} is how a spreadsheet counts days: set the column to a date
= {DAY_EXPECTED}; {plain} es como cuenta los días una hoja de cálculo: ponga la columna como fecha
{DAY_EXPECTED}; there is no such day
= {DAY_EXPECTED}; ese día no existe
degrees from -{#most} to {#most_2}, south and west negative: 51.0493
= grados de -{most} a {most_2}, sur y oeste negativos: 51.0493
did a spreadsheet turn it into a day?
= ¿lo convirtió en un día una hoja de cálculo?
did a spreadsheet put zeros behind the first {KEPT_DIGITS} digits? it keeps no more
= ¿puso una hoja de cálculo ceros tras las primeras {KEPT_DIGITS} cifras? no guarda más
# formats/roster_columns.py
a heading with one of {join} or unit_serial; other names need a column map (--columns)
= un título con uno de {join} o unit_serial; otros nombres necesitan un mapa de columnas (--columns)
columns for both degrees of a place, lat and lon, or for neither
= columnas para ambos grados de un lugar, lat y lon, o para ninguno
# formats/roster_csv.py
rows beneath the heading; there are none
= filas bajo los títulos; no hay ninguna
{before} rows above the heading were passed over
= se pasaron por alto {before} filas sobre los títulos
at most {width} cells as in the heading; a comma inside a cell needs quotes
= como máximo {width} celdas como en los títulos; una coma dentro de una celda necesita comillas
cell {width}
= celda {width}
one of {join}, to know it by
= uno de {join}, para conocerlo
both degrees of a place, or neither
= ambos grados de un lugar, o ninguno
a place; 0, 0 is what is written where none is known
= un lugar; 0, 0 es lo que se escribe cuando no se conoce
each {name} once; it stands in row {first} already
= cada {name} una vez; ya está en la fila {first}
{len} digits where most have {usual}: did a spreadsheet drop zeros in front?
= {len} cifras donde la mayoría tiene {usual}: ¿quitó una hoja de cálculo los ceros de delante?
# formats/toml_text.py
one 'key = value' in a line: text in quotation marks, numbers with a decimal point and without a unit
= una 'clave = valor' por línea: texto entre comillas, números con punto decimal y sin unidad
brackets inside brackets a few deep at most
= corchetes dentro de corchetes pocas veces como máximo
each table and each key once; this one stands twice
= cada tabla y cada clave una vez; esta está dos veces
the sheet
= la hoja
[[{=name}]] number {index}
= [[{name}]] número {index}
{key} = {expected}, in {title}
= {key} = {expected}, en {title}
text in quotation marks: {key} = "…"
= texto entre comillas: {key} = "…"
did you mean {near}?
= ¿quiso decir {near}?
text in quotation marks, or a list: {key} = ["…", "…"]
= texto entre comillas, o una lista: {key} = ["…", "…"]
a number from {#least} to {#most}, without quotation marks and unit
= un número de {least} a {most}, sin comillas ni unidad
a whole number from {least} to {most}
= un número entero de {least} a {most}
true or false, in small letters and without quotation marks
= true o false, en minúsculas y sin comillas
a date: {key} = 2026-03-31
= una fecha: {key} = 2026-03-31
a table, headed [{=name}]
= una tabla, con el título [{name}]
a table for each, headed [[{=name}]] with double brackets
= una tabla por cada uno, con el título [[{name}]] con dobles corchetes
{key} under {or}, not here
= {key} en {or}, no aquí
no header
= ningún título
a key of {title} (there are: {here})
= una clave de {title} (hay: {here})
# formats/unit_sheet.py
at least one [[lead]] with purpose = "{=purpose}"
= al menos un [[lead]] con purpose = "{purpose}"
"…", what the unit is called
= "…", cómo se llama la unidad
each name once; '{=name}' stands twice
= cada nombre una vez; '{name}' está dos veces
9, the lowest supply in volts
= 9, la alimentación mínima en voltios
32, the highest supply in volts
= 32, la alimentación máxima en voltios
more than least_V, which is {#least_V}
= más que least_V, que es {least_V}
one or two of the letters of IEC 60757, as RD or RDBU: {codes}
= una o dos de las letras de IEC 60757, como RD o RDBU: {codes}
either mm2 or awg, not both
= o mm2 o awg, no ambos
the name of a lead with purpose ignition or input: {none}
= el nombre de un cable con purpose ignition o input: {none}
3, the highest volts that surely mean off
= 3, los voltios máximos que significan inactivo con seguridad
7, the lowest volts that surely mean on
= 7, los voltios mínimos que significan activo con seguridad
more than low_most_V, which is {#low_most_V}
= más que low_most_V, que es {low_most_V}
# formats/walkround_toml.py
either "{NONE}" or what there was, not both
= o "{NONE}" o lo que había, no ambos
"…", what was found
= "…", lo que se encontró
either odometer_km or odometer_mi, as the odometer shows it, not both
= u odometer_km u odometer_mi, como lo muestra el cuentakilómetros, no ambos
"""
