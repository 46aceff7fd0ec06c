"""Spanish: the vehicle's bus."""

SENTENCES = """
# stages/bus/caution.py
listen only, at the maker's diagnostic plug, with a logger that sends nothing and acknowledges nothing; never tap bus wires with the unit's power leads
= escuche solamente, en la toma de diagnosis del fabricante, con un registrador que no envíe ni confirme nada; no derive nunca cables de bus con los cables de alimentación de la unidad
# stages/bus/dip.py
lowest voltage reported while the starter turns
= tensión más baja informada mientras gira el motor de arranque
{said}; a report outside the limit disproves however seldom they come
= {said}; un informe fuera del límite lo refuta por muy pocos que lleguen
{said}; reported often enough to have seen the whole dip
= {said}; informado bastante a menudo para haber visto toda la caída
the value shown is inside the limit
= el valor mostrado está dentro del límite
no report fell noticeably
= ningún informe cayó apreciablemente
from {#rest_V} V before it
= desde {rest_V} V antes de él
the vehicle's own computers reported {#lowest_V} V at the lowest in the crank{rest}
= los ordenadores del vehículo informaron {lowest_V} V como mínimo en el arranque{rest}
the file's clock stands still, so it cannot be said to have been often enough to prove a dip
= el reloj del archivo está parado, así que no se puede decir que fuera bastante a menudo para comprobar una caída
hardly ever
= casi nunca
every {#step_s} s
= cada {step_s} s
reported {pace}, too slow to prove the dip, which takes one every {#asked_ms} ms ({basis})
= informado {pace}, demasiado lento para comprobar la caída, que pide uno cada {asked_ms} ms ({basis})
with a recorder at the battery
= con un registrador en la batería
the starter turned between two reports of the voltage
= el motor de arranque giró entre dos informes de la tensión
the starter does not turn in this log
= el motor de arranque no gira en este registro
# stages/bus/door.py
a bus log as candump writes it, or engine data as CSV with an engine speed
= un registro de bus como lo escribe candump, o datos del motor en CSV con el régimen
the bus log
= el registro de bus
system_V: 12 or 24 is expected, or null
= system_V: se espera 12 o 24, o null
# stages/bus/health.py
per 1000 frames
= por 1000 tramas
a bus without a fault
= un bus sin avería
a bus on which late messages still arrive in time
= un bus en el que los mensajes tardíos aún llegan a tiempo
computers that fall silent
= ordenadores que se callan
quantities on the bus
= magnitudes en el bus
lost packets
= paquetes perdidos
what the log lacks
= lo que le falta al registro
lines that hold no whole frame
= líneas sin una trama completa
times that fall back
= horas que retroceden
times that leap ahead
= horas que saltan adelante
places that cannot be read
= sitios ilegibles
{errors_between} error frames among {frames} good ones
= {errors_between} tramas de error entre {frames} buenas
{errors_before} before the first good one, as when a logger wakes before the bus does
= {errors_before} antes de la primera buena, como cuando un registrador despierta antes que el bus
leave the bus alone and tell the fleet: a bus with a fault is the workshop's, before anything is fitted
= no toque el bus y avise a la flota: un bus averiado es cosa del taller, antes de montar nada
error frames on the bus
= tramas de error en el bus
{#average} % on average
= {average} % de media
{#low} to {#high} % in the busiest second, without stuffed bits and with the most of them{mean}; {bit_rate_kbit} kbit/s is assumed, a log does not say it
= {low} a {high} % en el segundo más cargado, sin bits de relleno y con el máximo de ellos{mean}; se suponen {bit_rate_kbit} kbit/s, un registro no lo dice
do not add a device that sends; tell the fleet
= no añada un aparato que envíe; avise a la flota
load of the bus in its busiest second
= carga del bus en su segundo más cargado
the one computer that talks
= el único ordenador que habla
none of {nodes} computers
= ninguno de {nodes} ordenadores
{talking} fell silent while the key was on
= {talking} se calló con el contacto puesto
{talking} did not fall silent while the key was on
= no se calló con el contacto puesto: {talking}
and {more} more times
= y {more} veces más
look whether its fuse, plug or ground was touched; where none was, tell the fleet before anything is fitted
= mire si se tocó su fusible, conector o masa; si no, avise a la flota antes de montar nada
and did not come back
= y no volvió
until {#back_s} s
= hasta {back_s} s
computer {address} was silent from {#silent_s} s {after}, with the key on
= el ordenador {address} calló desde {silent_s} s {after}, con el contacto puesto
all {eleven_bit} frames have 11-bit identifiers, each maker's own: they are counted, not guessed
= todas las {eleven_bit} tramas tienen identificadores de 11 bits, propios de cada fabricante: se cuentan, no se adivinan
log the diagnostic quantities with an adapter that writes them as CSV, or a heavy vehicle's J1939 bus
= registre las magnitudes de diagnosis con un adaptador que las escriba en CSV, o el bus J1939 de un vehículo pesado
{many} long {lack} packets: the log does not hold all frames
= {many} largos, {lack} paquetes: el registro no tiene todas las tramas
message lacks
= mensaje al que le faltan
messages lack
= mensajes a los que les faltan
log again with a logger that keeps up, or a shorter lead to it
= registre otra vez con un registrador que dé abasto, o con un cable más corto hasta él
the first: {places}
= el primero: {places}
passed over: {=place}
= pasado por alto: {place}
# stages/bus/key_finding.py
begin the log with the key off, then on, crank, ten seconds of running, off, ten seconds more
= empiece el registro con la llave quitada, luego contacto, arranque, diez segundos en marcha, llave quitada, diez segundos más
begin the log with the key off, then on, READY for ten seconds, off, ten seconds more
= empiece el registro con la llave quitada, luego contacto, READY diez segundos, llave quitada, diez segundos más
key cycle seen from inside
= ciclo de la llave visto desde dentro
the engine ran when the log began
= el motor giraba cuando empezó el registro
the key was on when the log began
= el contacto estaba puesto cuando empezó el registro
key on at {#on_s} s
= contacto puesto a los {on_s} s
with {#first_V} V
= con {first_V} V
at {#off_s} s
= a los {off_s} s
off {at}, when the engine stood; the first computers fell silent at {#silent_s} s
= quitado {at}, cuando paró el motor; los primeros ordenadores callaron a los {silent_s} s
off {at}, when computers fell silent together
= quitado {at}, cuando callaron varios ordenadores a la vez
the file's clock stands still: times are estimates from the row numbers
= el reloj del archivo está parado: los tiempos se estiman por el número de fila
no computer reports an engine speed
= ningún ordenador informa un régimen del motor
engine speed up to {#rpm_max} rpm
= régimen del motor hasta {rpm_max} rpm
the engine stood
= el motor estaba parado
no turn of the key in {#length_s} s; {ran}
= ningún giro de la llave en {length_s} s; {ran}
off at {#off_s} s, when computers fell silent together
= quitado a los {off_s} s, cuando callaron varios ordenadores a la vez
off at {#off_s} s, when the engine stood; the first computers fell silent at {#silent_s} s
= quitado a los {off_s} s, cuando paró el motor; los primeros ordenadores callaron a los {silent_s} s
crank at {#start_s} s
= arranque a los {start_s} s
{begun}; the log breaks off in it
= {begun}; el registro se corta en él
{begun}, running {#length_s} s later
= {begun}, en marcha {length_s} s después
{begun} for {#length_s} s; the engine did not start
= {begun} durante {length_s} s; el motor no arrancó
distance that the vehicle has come, as it says
= distancia recorrida por el vehículo, según él mismo
SPN {spn} says {#km} km; the dash may show another computer's figure
= SPN {spn} dice {km} km; el cuadro puede mostrar el valor de otro ordenador
{#ahead_s} s {behind} the logger's
= {ahead_s} s {behind} del registrador
ahead of
= por delante
the vehicle's clock
= el reloj del vehículo
it said {said} UTC at {#at_s} s{against}; nobody says that either is right
= dijo {said} UTC a los {at_s} s{against}; nadie dice que ninguno esté bien
# stages/bus/listen.py
{expected} (not one frame can be read)
= {expected} (no se puede leer ni una trama)
this holds {errors} error frames and nothing else
= este contiene {errors} tramas de error y nada más
a bus log with at least one frame in it{held}
= un registro de bus con al menos una trama{held}
# stages/bus/listener.py
frame {#frames} of the log
= trama {frames} del registro
a time not before that of the frame before; it is {#time_s} s earlier
= una hora no anterior a la de la trama anterior; es {time_s} s anterior
# stages/bus/picture.py
Key cycle seen from inside
= Ciclo de la llave visto desde dentro
As the vehicle's own computers report it: what happens between two reports is not seen.
= Según lo informan los ordenadores del vehículo: no se ve lo que ocurre entre dos informes.
supply {side} {#value} V
= alimentación {side} {value} V
engine speed
= régimen del motor
# stages/bus/script.py
the log does not say what time it was when it began: give the moment of its first frame, --start 2026-03-31T08:05:00Z
= el registro no dice qué hora era cuando empezó: indique el momento de su primera trama, --start 2026-03-31T08:05:00Z
a log in which the key goes off and stays off for some ten seconds; in this one it does not
= un registro en que se quita la llave y sigue quitada unos diez segundos; en este no
a log in which the key goes off, for ten seconds at least; it does not
= un registro en que se quita la llave, diez segundos como mínimo; en este no
# stages/bus/script_check.py
what a hand writes down as it turns the key
= lo que una mano anota al girar la llave
find out which clock is wrong, the writer's or the logger's, and right the script before it proves anything
= averigüe qué reloj está mal, el de quien anota o el del registrador, y corrija el guion antes de que compruebe nada
the bus shows {key} {#value_s} s {side} than the script, of {len} turns the furthest apart
= el bus muestra {key} {value_s} s {side} que el guion, el más alejado de {len} giros
the script lacks {join}, which the bus shows
= al guion le falta {join}, que el bus muestra
key script against the bus
= el guion de la llave frente al bus
# stages/bus/steady.py
a time near those of the frames around it
= una hora cercana a las de las tramas de alrededor
# stages/bus/vin.py
VIN on the bus
= VIN en el bus
compare the plate at the windscreen or the door frame with the job sheet
= compare la placa del parabrisas o del marco de la puerta con la hoja de trabajo
stop: is this the job's vehicle? Compare the plate with the job sheet; where both agree, an engine computer of another vehicle may have been fitted, so ask the fleet
= pare: ¿es este el vehículo del trabajo? Compare la placa con la hoja de trabajo; si coinciden, puede llevar el ordenador de motor de otro vehículo, así que pregunte a la flota
computer {source}
= ordenador {source}
computers of this vehicle say different VINs: {join}
= los ordenadores de este vehículo dicen VIN distintos: {join}
decide which is right: {READ_THE_PLATE}
= decida cuál es correcto: {READ_THE_PLATE}
{senders} says {said}, the job says {wanted}
= {senders} dice {said}, el trabajo dice {wanted}
{senders} says {said}: {because}
= {senders} dice {said}: {because}
as the job does
= como el trabajo
{senders} says {said}; its form and check digit are right
= {senders} dice {said}; su forma y dígito de control son correctos
the log holds no VIN; many vehicles send theirs only when they are asked
= el registro no tiene VIN; muchos vehículos envían el suyo solo cuando se les pide
"""
