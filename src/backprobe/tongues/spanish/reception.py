"""Spanish: a receiver's log."""

SENTENCES = """
# stages/mount/reception/answer.py
The log begins with a position: how long the first one takes does not show.
= El registro empieza con una posición: no muestra cuánto tarda la primera.
No minute of rest in it: no scatter.
= Ni un minuto de reposo en él: sin dispersión.
The receiver holds its position while it rests: no scatter shows.
= El receptor mantiene su posición en reposo: no se ve dispersión.
{odd} times
= {odd} veces
first in line{else} {=join}
= la primera en la línea {else}
with a wrong checksum (letters were lost, or one sentence runs into another)
= con suma de control errónea (se perdieron letras, o una frase se mete en otra)
broken off
= cortadas
lines, or parts of lines, that are no sentence
= líneas, o partes de líneas, que no son una frase
with figures that cannot be
= con valores imposibles
written twice by the logger
= escritas dos veces por el registrador
The receiver's clock jumped
= El reloj del receptor saltó
The receiver's date jumped by 1,024 weeks
= La fecha del receptor saltó 1,024 semanas
The receiver's clock stood still
= El reloj del receptor estaba parado
The log has a gap
= El registro tiene un hueco
# stages/mount/reception/findings.py
park in the open, nothing higher than the cab nearby, and record 20 minutes
= aparque al aire libre, sin nada más alto que la cabina cerca, y grabe 20 minutos
move the unit to where it sees more of the sky, away from metal and coated glass, and record again
= lleve la unidad a donde vea más cielo, lejos de metal y de vidrio con capa, y grabe otra vez
see that the vehicle stands in the open; if it does
= compruebe que el vehículo está al aire libre; si lo está
let the receiver send GSV and GSA sentences too, and record again
= haga que el receptor envíe también las frases GSV y GSA, y grabe otra vez
turn the vehicle by half a circle and record again: if the sector turns with it, it is the cab's metal; move the unit away from that side
= gire el vehículo media vuelta y grabe otra vez: si el sector gira con él, es el metal de la cabina; aleje la unidad de ese lado
the log holds good sentences, none of them with a position or a time
= el registro tiene frases buenas, ninguna con posición ni hora
Position kept
= Posición mantenida
Time to the first position
= Tiempo hasta la primera posición
Satellites used
= Satélites usados
HDOP at half of all moments
= HDOP en la mitad de los momentos
HDOP at 95 of 100 moments
= HDOP en 95 de 100 momentos
The four strongest signals
= Las cuatro señales más fuertes
Scatter at rest, 95 % radius
= Dispersión en reposo, radio del 95 %
Blocked part of the sky
= Parte tapada del cielo
{because}; the limit is from memory and decides nothing alone
= {because}; el límite es de memoria y no decide nada solo
not one position in {epochs} moments, {long}
= ni una posición en {epochs} momentos, {long}
{lost} of {since_first} moments without a position since the first one
= {lost} de {since_first} momentos sin posición desde la primera
the log is too short to show it: {LONGER}
= el registro es demasiado corto para mostrarlo: {LONGER}
from the log's first line to the first position {#first_s} s
= de la primera línea del registro a la primera posición, {first_s} s
at half of all moments {#values}, at eight of ten {#values_2} to {#values_3}
= en la mitad de los momentos {values}, en ocho de diez de {values_2} a {values_3}
at eight of ten moments {#values} to {#values_2}
= en ocho de diez momentos de {values} a {values_2}
95 of 100 moments are at {#p95} or better
= 95 de 100 momentos están en {p95} o mejor
never four signals at once
= nunca cuatro señales a la vez
the receiver says nothing of signals (no GSV sentences)
= el receptor no dice nada de señales (sin frases GSV)
mean of the four strongest; four are heard at {#share} of the moments; receivers differ by {#doubt} dB
= media de las cuatro más fuertes; se oyen cuatro en el {share} de los momentos; los receptores difieren en {doubt} dB
half within {#r50_m} m of their mean, {fixes} positions in {long} that count as {#independent}; how far the mean is off does not show
= la mitad a menos de {r50_m} m de su media, {fixes} posiciones en {long} que cuentan como {independent}; no se ve cuánto se desvía la media
the vehicle was under way, so that the sky's directions are not those of the cab
= el vehículo iba en marcha, de modo que las direcciones del cielo no son las de la cabina
{count} satellites all round, fewer than the {#value} that would show a blocked sector
= {count} satélites alrededor, menos de los {value} que mostrarían un sector tapado
no side of the sky is weaker than the others by more than chance, of {count} satellites
= ningún lado del cielo es más débil que los otros más allá del azar, con {count} satélites
{unheard} of them not heard at all
= {unheard} de ellos no se oyen en absoluto
{side}, {degrees}: {satellites} satellites are {#loss_dB} dB weaker than elsewhere{unheard}; by our own model an open sky looks so in less than 1 of {#odds} logs
= {side}, {degrees}: {satellites} satélites son {loss_dB} dB más débiles que en otras partes{unheard}; según nuestro propio modelo, un cielo abierto se ve así en menos de 1 de {odds} registros
Blocked part of the sky: {side}, {=file}
= Parte tapada del cielo: {side}, {file}
{#seconds} min
= {seconds} min
# stages/mount/reception/sky.py
The sky as the receiver heard it, {=file}
= El cielo como lo oyó el receptor, {file}
blocked: {direction}
= tapado: {direction}
Figures: dB-Hz.
= Cifras: dB-Hz.
Each satellite stands where it was longest.
= Cada satélite está donde estuvo más tiempo.
# stages/mount/reception/words.py
right front
= delante a la derecha
right rear
= detrás a la derecha
left rear
= detrás a la izquierda
left front
= delante a la izquierda
all but the {named}
= todo menos {named}
up to {below_deg}° high
= hasta {below_deg}° de alto
{from_deg}° to {to_deg}°{height}
= {from_deg}° a {to_deg}°{height}
"""
