"""Spanish: where the unit sits and how its leads run."""

SENTENCES = """
# stages/join/mount.py
not fixed to something solid
= sin fijar a algo firme
cannot be reached for service
= no se puede alcanzar para el servicio
gets wet
= se moja
gets hot
= se calienta
excess cable is not tied
= el cable sobrante no está atado
inside a zone into which an airbag unfolds: it becomes a missile
= dentro de una zona donde se despliega un airbag: se convierte en un proyectil
in the way of the steering column
= estorba a la columna de dirección
in the way of the pedals
= estorba a los pedales
on a heater or air duct
= sobre un conducto de calefacción o de aire
move it to the windscreen's edge, or off the windscreen
= pásela al borde del parabrisas, o fuera de él
look up in 49 CFR 393.5 whether the device is vehicle safety technology, and write safety_technology = true; or take it off the windscreen
= consulte en 49 CFR 393.5 si el aparato es tecnología de seguridad del vehículo y anote safety_technology = true; o quítelo del parabrisas
where the unit sits
= dónde está la unidad
Where the unit sits
= Dónde está la unidad
{place}: nothing speaks against it ({COMMON_PRACTICE})
= {place}: nada habla en contra ({COMMON_PRACTICE})
its place
= su lugar
move the unit, or put right what is named
= mueva la unidad, o corrija lo que se nombra
in the way of an airbag, the steering column, pedals or ducts
= si estorba a un airbag, la columna de dirección, los pedales o los conductos
'{=place}': no place for a unit ({bad})
= '{place}': no es lugar para una unidad ({bad})
of the windscreen top_mm or bottom_mm, and in_sight
= del parabrisas top_mm o bottom_mm, e in_sight
The unit on the windscreen
= La unidad en el parabrisas
it is in the driver's line of sight: {basis}
= está a la vista del conductor: {basis}
out of the driver's sight; counted as vehicle safety technology, as somebody looked up
= fuera de la vista del conductor; cuenta como tecnología de seguridad del vehículo, según alguien consultó
out of the driver's sight; that such a unit is vehicle safety technology is from memory and decides nothing (an antenna alone: {side} {#value} mm, {warrant})
= fuera de la vista del conductor; que tal unidad sea tecnología de seguridad del vehículo es de memoria y no decide nada (una antena sola: {side} {value} mm, {warrant})
# stages/join/route.py
a hole in sheet metal without a grommet: its edge cuts the insulation (13 CCR 1249)
= un agujero de chapa sin pasacables: su borde corta el aislante (13 CCR 1249)
not covered all round (49 CFR 393.28 by SAE J1292 and the agency's guidance: the whole circumference)
= sin cubrir por completo (49 CFR 393.28 según SAE J1292 y la guía de la agencia: todo el contorno)
not tied along the way
= sin atar por el camino
no low point before the unit: water runs along the leads into it
= sin punto bajo antes de la unidad: el agua corre por los cables hasta ella
beside exhaust, heater or engine: the insulation ages
= junto a escape, calefactor o motor: el aislante envejece
beside fuel lines or tanks: a spark there starts a fire (13 CCR 1249)
= junto a conductos o depósitos de combustible: ahí una chispa provoca un incendio (13 CCR 1249)
touches what moves: it chafes through
= toca lo que se mueve: acaba rozándose
How the leads run
= Por dónde van los cables
grommets, sheath, ties, drip loop; clear of heat, fuel and what moves ({COMMON_PRACTICE})
= pasacables, funda, ataduras, bucle de goteo; lejos de calor, combustible y lo que se mueve ({COMMON_PRACTICE})
lead them another way, or put right what is named
= llévelos por otro camino, o corrija lo que se nombra
"""
