"""Spanish: single words."""

SENTENCES = """
# findings.py
hand over
= entrega
at least
= como mínimo
at most
= como máximo
common practice, no source
= práctica común, sin fuente
from memory, unverified
= de memoria, sin verificar
our own model
= nuestro propio modelo
# evidence/hand_over.py
no coverage
= sin cobertura
indoor yard
= patio cubierto
parked night
= noche aparcado
# evidence/joint.py
wrapped and tied splice
= empalme envuelto y atado
crimped butt connector
= terminal a tope prensado
soldered sleeve
= manguito soldado
tap connector
= conector de derivación
fuse tap
= derivación en portafusible
ring terminal
= terminal de ojal
pair of leads twisted together
= par de cables retorcidos juntos
cut to {#cut_mm} mm
= cortado a {cut_mm} mm
tied back
= atado atrás
# evidence/photo.py
the unit's serial with the VIN
= la serie de la unidad con el VIN
the joint before it was covered
= la unión antes de cubrirla
the ground point
= el punto de masa
the lamps of the dash
= los testigos del cuadro
where the unit is fixed
= dónde está fijada la unidad
before the work
= antes del trabajo
after the work
= después del trabajo
# stages/named_place.py
no named corner within {#within_m} m
= ninguna esquina con nombre a menos de {within_m} m
where {becomes}
= donde {becomes}
{MOST_STREETS} more
= {MOST_STREETS} más
# stages/given.py
{what} of {#value} {=unit}: {#least} to {#most} {=unit_2} is expected
= {what} de {value} {unit}: se espera de {least} a {most} {unit_2}
{what} of {#value} {=unit}: more than 0 and at most {#most} {=unit_2} is expected
= {what} de {value} {unit}: se espera más de 0 y como máximo {most} {unit_2}
# verdicts, ends of a job
holds
= cumple
thin
= justo
fails
= falla
open
= pendiente
proven
= comprobado
provisional
= provisional
abandoned
= abandonado
# leads, roles of wires
supply
= alimentación
ignition
= contacto
ground
= masa
input
= entrada
output
= salida
data
= datos
constant
= permanente
ignition not in crank
= contacto, no en el arranque
accessory
= accesorios
start
= arranque
retained
= temporizado
running only
= solo en marcha
lighting
= luces
signal
= señal
no supply
= sin alimentación
unknown
= desconocido
Supply wire
= Cable de alimentación
Ignition wire
= Cable de contacto
# the key
off
= quitada
on
= contacto
crank
= arranque
running
= en marcha
after
= tras 10 min
isolated
= batería cortada
charging
= cargando
unlock
= abierto con mando
doors_open
= puertas abiertas
doors_shut
= puertas cerradas
live
= con tensión
dead
= sin tensión
display
= pantalla
Ignition on, as the unit reported it
= Contacto puesto, según lo informó la unidad
Ignition off, as the unit reported it
= Contacto quitado, según lo informó la unidad
a healthy unit reports on within that time
= una unidad sana informa el contacto en ese tiempo
a healthy unit reports off within that time
= una unidad sana informa la desconexión en ese tiempo
the script holds no turn of the key to on
= el guion no tiene ningún giro de la llave a contacto
the script holds no turn of the key to off
= el guion no tiene ningún giro de la llave a quitada
on: no ignition was turned
= activo: no se giró ningún contacto
off: no ignition was turned
= inactivo: no se giró ningún contacto
# the walkround
work
= el trabajo
cranking
= arrancar
a crank
= un arranque
removed
= se retiró
positive
= positivo
negative
= negativo
nobody
= nadie
plate
= matrícula
odometer
= cuentakilómetros
misreading
= lectura
misreadings
= lecturas
stale
= caducado
# sides, directions
front
= delante
rear
= detrás
right
= derecha
left
= izquierda
north
= norte
north-east
= noreste
east
= este
south-east
= sureste
south
= sur
south-west
= suroeste
west
= oeste
north-west
= noroeste
corner
= esquina
roundabout
= rotonda
crossing
= cruce
later
= más tarde
earlier
= antes
behind
= por detrás
inside
= dentro
outside
= fuera
high
= alto
low
= bajo
up
= arriba
down
= abajo
# joints
joints
= las uniones
route
= el recorrido
mount
= el montaje
joint
= unión
lead
= cable
fuse
= fusible
tap
= toma
pull
= tracción
overlap
= solape
days
= días
turns
= vueltas
nothing
= nada
none
= ninguno
wet
= húmedo
# patterns that a fault leaves in reports
swapped serial
= serie cambiada
resets in crank
= se reinicia en el arranque
not live in crank
= sin tensión en el arranque
on in accessory
= activo en accesorios
never off
= nunca inactivo
follows door or timer
= sigue a una puerta o un temporizador
sensed not wired
= detectado, no cableado
body wake
= despertado por la carrocería
inverted
= invertido
floating
= flotante
date rollover
= vuelta de la fecha
time zone
= zona horaria
gps time
= hora GPS
stale position
= posición vieja
backlog
= atraso
late attach
= registro tardío en la red
interval reporting
= informes por intervalo
script too short
= guion demasiado corto
# times, shares
asleep
= dormido
published
= publicado
cut back
= cortado
capped
= con capuchón
# what is named
lamps
= testigos
no lamps
= sin testigos
no codes
= sin códigos
codes
= códigos
wire
= cable
inputs
= las entradas
wires
= cables
used
= usado
plastic
= plástico
fibreglass
= fibra de vidrio
metal
= metal
glass
= vidrio
coated_glass
= vidrio con capa
tinted_glass
= vidrio tintado
wood
= madera
carbon
= fibra de carbono
fabric
= tela
# what to measure
trailer
= remolque
damp
= si puede mojarse
tugged
= si alguien tiró de ella
a number of degrees
= un número de grados
the question
= la pregunta
what is to be proven
= lo que se debe comprobar
not capped
= sin capuchón
not tied back
= sin atar
not cut
= sin cortar
"""
