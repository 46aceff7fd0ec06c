"""Spanish: what is expected of a file."""

SENTENCES = """
# formats/candump_text.py
a frame as candump writes it: (time)  bus  identifier  [length]  bytes; or (time) bus identifier#bytes
= una trama como la escribe candump: (hora)  bus  identificador  [longitud]  bytes; o (hora) bus identificador#bytes
# formats/cells.py
a text table; this looks like a binary file
= una tabla de texto; esto parece un archivo binario
# formats/corner_index.py
an index of corners, as `backprobe corners build` writes it
= un índice de esquinas, como lo escribe `backprobe corners build`
a whole index of corners; this one was cut off or changed on its way: build it again
= un índice de esquinas completo; este se cortó o cambió por el camino: hágalo de nuevo
{len} corners, as there are in the file
= {len} esquinas, como hay en el archivo
an index of version {VERSION}; build it again with this backprobe from the map it was made from
= un índice de la versión {VERSION}; hágalo de nuevo con este backprobe desde el mapa del que se hizo
a JSON object with attribution, source and corners
= un objeto JSON con attribution, source y corners
# formats/instants.py
a date and time, 2026-03-31T08:05:00Z, or a count of seconds from 1970
= una fecha y hora, 2026-03-31T08:05:00Z, o una cuenta de segundos desde 1970
# formats/j1939.py
battery potential
= potencial de la batería
keyswitch battery potential
= potencial de la batería en la llave
wheel-based vehicle speed
= velocidad del vehículo por las ruedas
high-resolution total vehicle distance
= distancia total del vehículo en alta resolución
total vehicle distance
= distancia total del vehículo
# formats/j1939_transport.py
{self} of {packets} packets never came
= {self} de {packets} paquetes nunca llegaron
the log ends: {missing}
= el registro acaba: {missing}
another message began
= empezó otro mensaje
{packets} packets were announced for {size} bytes
= se anunciaron {packets} paquetes para {size} bytes
its receiver has it all, the log does not
= su receptor lo tiene todo, el registro no
packets came without their announcement
= llegaron paquetes sin su anuncio
a packet is shorter than 8 bytes
= un paquete tiene menos de 8 bytes
no packet came for more than {#wait_s} s: {missing}
= no llegó ningún paquete durante más de {wait_s} s: {missing}
packet {number} of {packets} came
= llegó el paquete {number} de {packets}
packet {number} came again with other bytes
= el paquete {number} llegó otra vez con otros bytes
packet {number} came after packet {last}
= el paquete {number} llegó después del paquete {last}
# formats/key_script_csv.py
a header line: t,key
= una línea de títulos: t,key
at most {#MOST_ROWS} rows; are these the unit's reports?
= como máximo {MOST_ROWS} filas; ¿son los informes de la unidad?
a header line t,key with each column once; {=name} stands there {names} times
= una línea de títulos t,key con cada columna una vez; {name} está ahí {names} veces
a time and a key in each row
= una hora y una llave en cada fila
one of: {KEY_WORDS}
= uno de: {KEY_WORDS}
{expected} (not one of {many} rows can be read)
= {expected} (no se puede leer ninguna de {many} filas)
rows beneath the header: what was done with the key, and when
= filas bajo los títulos: qué se hizo con la llave, y cuándo
a script in which the key is turned off; without an off nothing can be said of it, nor of a unit that never goes off
= un guion en que se quita la llave; sin ello no se puede decir nada de la desconexión, ni de una unidad que nunca se apaga
a script in which the key is turned on; there is only: {done}
= un guion en que se gira la llave a contacto; solo hay: {done}
# formats/lights_csv.py
a header line: {join}
= una línea de títulos: {join}
at most {MOST_ROWS} rows
= como máximo {MOST_ROWS} filas
the name of a light, and the pattern it showed
= el nombre de una luz, y el patrón que mostró
seconds since power-up, from 0 to {#MOST_AFTER_S}
= segundos desde el encendido, de 0 a {MOST_AFTER_S}
# formats/nmea_0183.py
the receiver's clock jumps here
= el reloj del receptor salta aquí
the receiver's date jumps by 1,024 weeks here
= la fecha del receptor salta aquí 1,024 semanas
the receiver's clock stands still here
= el reloj del receptor está parado aquí
the log has a gap before this
= el registro tiene un hueco antes de esto
NMEA 0183 sentences ($GPGGA,…*47); none is good in the {read} lines that were read
= frases NMEA 0183 ($GPGGA,…*47); ninguna es buena en las {read} líneas leídas
# formats/nmea_sentence.py
what the checksum after * says: characters are lost or changed, or two sentences run together
= lo que dice la suma de control tras *: se perdieron o cambiaron caracteres, o dos frases se juntan
a sentence to its end, * and two digits
= una frase hasta su final, * y dos cifras
an NMEA 0183 sentence, $GPGGA,…*47
= una frase NMEA 0183, $GPGGA,…*47
figures that can be: degrees, minutes below 60, a time of day
= valores posibles: grados, minutos menores de 60, una hora del día
each sentence once
= cada frase una vez
# formats/parts.py
a number
= un número
{=name}: {expected} is expected
= {name}: se espera {expected}
{=name}: an object of names and texts is expected
= {name}: se espera un objeto de nombres y textos
{what} is no JSON: {fault}
= {what} no es JSON: {fault}
{what} is no JSON object
= {what} no es un objeto JSON
# formats/readings_columns.py
a header line with wire,key,volts; missing: {join}
= una línea de títulos con wire,key,volts; falta: {join}
each column once; {=name} stands there {names} times
= cada columna una vez; {name} está ahí {names} veces
# formats/readings_csv.py
a header line: wire,key,volts
= una línea de títulos: wire,key,volts
at most {#MOST_ROWS} rows; is this a recording?
= como máximo {MOST_ROWS} filas; ¿es una grabación?
at least wire, key and volts in a row; a wire still to be read is written: Red
= como mínimo wire, key y volts en una fila; un cable aún por leer se escribe: Red
at most {width} cells as in the header; a decimal comma needs quotes, or ; between cells
= como máximo {width} celdas como en los títulos; una coma decimal necesita comillas, o ; entre celdas
a wire name
= un nombre de cable
a wire name of at most {MOST_NAME} plain characters
= un nombre de cable de como máximo {MOST_NAME} caracteres simples
a wire name of its own; already written as "{first}"
= un nombre de cable propio; ya escrito como "{first}"
a key position: {KEY_WORDS}
= una posición de la llave: {KEY_WORDS}
how the meter held the value: {CAPTURE_WORDS}
= cómo retuvo el valor el medidor: {CAPTURE_WORDS}
a figure: this vehicle has {key}, line {key_2} was read there
= un valor: este vehículo tiene {key}, la línea {key_2} se leyó ahí
# formats/readings_figures.py
a figure in volts such as 12.30, or na where the vehicle lacks this position
= un valor en voltios como 12.30, o na si el vehículo no tiene esta posición
direct voltage in V or mV, not {=unit}
= tensión continua en V o mV, no {unit}
not below {#LEAST_V} V: the probes the wrong way round?
= no por debajo de {LEAST_V} V: ¿las puntas al revés?
at most {#most_V} V in a {#system_V} V system: a 24 V vehicle? use --system 24
= como máximo {most_V} V en un sistema de {system_V} V: ¿un vehículo de 24 V? use --system 24
millivolts? write mV behind the figure
= ¿milivoltios? escriba mV detrás del valor
{#LEAST_V} to {#most_V} V in a {#system_V} V system{#in_mV}
= de {LEAST_V} a {most_V} V en un sistema de {system_V} V{in_mV}
minutes since key-off
= minutos desde que se quitó la llave
the key position 'after' where after_min is given; {key} stands there
= la posición 'after' donde se da after_min; ahí está {key}
the load in amperes
= la carga en amperios
{what}, 0 to {#most}, or nothing
= {what}, de 0 a {most}, o nada
# formats/recording_block.py
a time as in the rows around it
= una hora como en las filas de alrededor
a whole row; the zeros here are what a power cut leaves
= una fila completa; estos ceros son lo que deja un corte de corriente
at most {width} cells as in the header
= como máximo {width} celdas como en los títulos
a whole row of {width} cells; this one is torn
= una fila completa de {width} celdas; esta está rota
a figure in {quantity} in column {=name}, or nothing
= un valor en {quantity} en la columna {name}, o nada
{=name} within {#least} to {#most}
= {name} entre {least} y {most}
# formats/recording_csv.py
a key that is turned at most {#MOST_MARKS} times in one recording
= una llave que se gira como máximo {MOST_MARKS} veces en una grabación
{expected} (not one row can be read)
= {expected} (no se puede leer ni una fila)
a voltage in at least one row of {names}
= una tensión en al menos una fila de {names}
a value in at least one row of this column
= un valor en al menos una fila de esta columna
{self}; times are row numbers times about {#row_s} s
= {self}; los tiempos son números de fila por unos {row_s} s
the clock was set back by {#back_s} s at line {line}; what follows was joined on
= el reloj se atrasó {back_s} s en la línea {line}; lo que sigue se unió a continuación
the only clock counts whole seconds of running and stands at 0 while the engine is cranked
= el único reloj cuenta segundos enteros de marcha y está en 0 mientras gira el motor de arranque
the clock never goes on, so how fast the rows follow is a guess
= el reloj no avanza nunca, así que la velocidad de las filas se supone
the clock shows the same time on about {usual_run} rows running
= el reloj muestra la misma hora en unas {usual_run} filas seguidas
the clock stands still at {#longest_at_s} s over {longest} rows
= el reloj está parado a los {longest_at_s} s durante {longest} filas
# formats/recording_layout.py
a header line such as time_s,battery,red, and rows below it
= una línea de títulos como time_s,battery,red, y filas debajo
a header line such as time_s,battery,red
= una línea de títulos como time_s,battery,red
rows below the header
= filas bajo los títulos
a column with voltages beside the time{hint}
= una columna con tensiones junto a la hora{hint}
below the time a count of seconds, or a date and time such as 2024-05-01 08:30:00
= bajo la hora, una cuenta de segundos, o fecha y hora como 2024-05-01 08:30:00
mostly words
= casi todo palabras
{#values} and the like: is (mV) missing in its name?
= {values} y parecidos: ¿falta (mV) en su nombre?
voltages in V; {=name} holds {hint}
= tensiones en V; {name} contiene {hint}
channel {=place}
= canal {place}
each channel once; {=name} stands there {names} times
= cada canal una vez; {name} está ahí {names} veces
# formats/recording_rows.py
a time that goes on from the row before
= una hora que avance desde la fila anterior
as many decimals as in the lines above; the end of the last line is missing
= tantos decimales como en las líneas de arriba; falta el final de la última línea
# formats/report_columns.py
--columns {text}: name=theirs,… is expected, each name once: {join}
= --columns {text}: se espera nombre=suyo,… cada nombre una vez: {join}
a column {=name} for {=name_2}, as the column map says
= una columna {name} para {name_2}, como dice el mapa de columnas
a header line with t, of the columns {join}; other names need a column map (--columns)
= una línea de títulos con t, de las columnas {join}; otros nombres necesitan un mapa de columnas (--columns)
# formats/reports_csv.py
at most {width} cells as in the header; a decimal comma needs quotes, or
= como máximo {width} celdas como en los títulos; una coma decimal necesita comillas, o
reports beneath the header; there are none
= informes bajo los títulos; no hay ninguno
# formats/reports_jsonl.py
one JSON object a line, with texts, numbers, true, false or null in it
= un objeto JSON por línea, con textos, números, true, false o null
# formats/text.py
a photo (JPEG)
= una foto (JPEG)
a picture (PNG)
= una imagen (PNG)
a picture (GIF)
= una imagen (GIF)
a PDF
= un PDF
a ZIP file or a spreadsheet workbook; save the sheet as CSV
= un archivo ZIP o un libro de hoja de cálculo; guarde la hoja como CSV
an old spreadsheet workbook; save the sheet as CSV
= un libro antiguo de hoja de cálculo; guarde la hoja como CSV
a compressed file; unpack it first
= un archivo comprimido; descomprímalo primero
a database
= una base de datos
a text file; this holds nothing but zeros, as an interrupted copy does
= un archivo de texto; este no contiene más que ceros, como deja una copia interrumpida
a text file; this looks like a binary file
= un archivo de texto; este parece un archivo binario
a text file; this looks like {looks}
= un archivo de texto; este parece {looks}
"""
