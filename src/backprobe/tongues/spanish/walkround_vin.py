"""Spanish: the VIN."""

SENTENCES = """
# stages/walkround/same_type.py
{vin} is no well-formed VIN: which type it is cannot be told
= {vin} no es un VIN bien formado: no se puede saber de qué tipo es
# stages/walkround/vin.py
form of the VIN
= forma del VIN
check digit of the VIN
= dígito de control del VIN
model year
= año de modelo
Read the VIN again, from the plate at the windscreen or the door frame.
= Lea otra vez el VIN, en la placa del parabrisas o del marco de la puerta.
no VIN was given
= no se dio ningún VIN
check digit and model year are not judged: it begins with {vin}, North America with 1 to 5
= no se juzgan dígito de control ni año de modelo: empieza por {vin}; en Norteamérica, por 1 a 5
17 characters, each one that may stand in a VIN
= 17 caracteres, todos admitidos en un VIN
vehicles from before 1981 may have shorter ones
= los vehículos anteriores a 1981 pueden tener menos
it has {len} characters, a VIN has {LENGTH}
= tiene {len} caracteres; un VIN tiene {LENGTH}
{c} in position {at}
= {c} en la posición {at}
(I is mostly a 1, O and Q a 0)
= (I suele ser un 1; O y Q, un 0)
{join}: a VIN has digits and the letters A to Z without I, O and Q{hint}
= {join}: un VIN tiene cifras y las letras A a Z sin I, O ni Q{hint}
position 9 is {CHECK_AT}, as the other 16 characters ask for (49 CFR 565.15)
= la posición 9 es {CHECK_AT}, como piden los otros 16 caracteres (49 CFR 565.15)
position 9 is {CHECK_AT}, the other 16 characters ask for {check_digit} (49 CFR 565.15)
= la posición 9 es {CHECK_AT}; los otros 16 caracteres piden {check_digit} (49 CFR 565.15)
{more} less likely {=misreadings} would fit too
= también servirían otras {more} lecturas menos probables
{READ_AGAIN} It would check out if {likely}.
= {READ_AGAIN} Cuadraría con esto: {likely}.
the VIN itself is in doubt
= el propio VIN está en duda
Settle the VIN first.
= Aclare primero el VIN.
{code} in position 10 stands for no model year that is possible here (49 CFR 565.15)
= {code} en la posición 10 no corresponde a ningún año de modelo posible aquí (49 CFR 565.15)
{code} in position 10 stands for {possible} (49 CFR 565.15)
= {code} en la posición 10 corresponde a {possible} (49 CFR 565.15)
State which, {possible}, from the maker's plate or the papers.
= Indique cuál, {possible}, según la placa del fabricante o los papeles.
Compare VIN and papers: {stated} was stated.
= Compare el VIN con los papeles: se indicó {stated}.
{stated} was stated
= se indicó {stated}
# stages/walkround/vin_number.py
spaces, hyphens, dots or stars left out
= se quitaron espacios, guiones, puntos o asteriscos
small letters read as capitals
= minúsculas leídas como mayúsculas
# stages/walkround/vin_repair.py
positions {it} are
= posiciones {it}:
position {it} is
= posición {it}:
{are} {meant}, not {read}
= {are} {meant}, no {read}
"""
