"""Spanish: the job as a whole."""

SENTENCES = """
# job/door.py
the job
= el trabajo
job.toml names {meter_file} for the meter's figures; they are not there
= job.toml nombra {meter_file} para los valores del medidor; no están
# job/joined.py
{=name}, the worst crank: '{=name_2}' down to {#lowest_V} V, read to ±{#half_V} V
= {name}, el peor arranque: '{name_2}' hasta {lowest_V} V, leído a ±{half_V} V
# job/journal_door.py
{=file} is not on this device yet
= {file} aún no está en este aparato
the journal names no file of the kind {kind}
= el diario no nombra ningún archivo de la clase {kind}
entry {about} was corrected in two ways
= la anotación {about} se corrigió de dos maneras
entry {=id} ({kind}) is kept but not understood: {why}
= la anotación {id} ({kind}) se guarda pero no se entiende: {why}
entry {=name} is named by another and has not arrived
= otra anotación nombra la anotación {name}, que no ha llegado
the journal
= el diario
{=name}: a list of texts is expected
= {name}: se espera una lista de textos
{=name}: an object of ids and true or false is expected
= {name}: se espera un objeto de identificadores y verdadero o falso
# job/judge.py
have the battery, its terminals and the starter looked at before anything is fitted; then record a start again
= haga revisar la batería, sus bornes y el motor de arranque antes de montar nada; después grabe otra vez un arranque
the job sheet means {len} wires for one lead; what follows is about the first
= la hoja de trabajo destina {len} cables a un solo cable de la unidad; lo que sigue trata del primero
decide which of them is the {slot}, and give lead = "{slot_2}" to that one alone
= decida cuál de ellos es el de {slot} y dé lead = "{slot_2}" solo a ese
decide which of the two is right and write it down
= decida cuál de los dos es correcto y anótelo
# job/kinds.py
the kind {kind} is not known to this version
= la clase {kind} no se conoce en esta versión
# job/lead_verdicts.py
(and {bad} more)
= (y {bad} más)
# job/mounted.py
The sky from the unit's place
= El cielo desde el sitio de la unidad
{=file} describes the place; the job sheet does not say where the vehicle stands
= {file} describe el sitio; la hoja de trabajo no dice dónde está el vehículo
write lat and lon under [place] into job.toml: where the vehicle works, to a degree
= escriba lat y lon en [place] de job.toml: dónde trabaja el vehículo, al grado
# job/next_step.py
through a crank
= durante un arranque
in a crank
= en un arranque
record a start
= grabe un arranque
record the start
= grabe el arranque
no crank has been allowed: ask somebody who may allow it, and write who under [authority] (crank_by)
= no se ha permitido arrancar: pregunte a quien pueda permitirlo y anote quién en [authority] (crank_by)
before the crank: {BEFORE_CRANK}
= antes de arrancar: {BEFORE_CRANK}
# job/prove_rows.py
{=file}, line {line}
= {file}, línea {line}
key: {text} is no key position known to this version
= llave: {text} no es una posición de la llave conocida en esta versión
t: expected a moment such as 2026-03-31T08:00:00Z
= t: se espera un momento como 2026-03-31T08:00:00Z
after_s: expected seconds such as 41
= after_s: se esperan segundos como 41
# job/proving.py
fetch the unit's reports from its server once it has had coverage, and put them into the job folder
= traiga los informes de la unidad de su servidor cuando haya tenido cobertura, y póngalos en la carpeta del trabajo
nothing was given for it
= no se dio nada para ello
write the unit's id into the job sheet: [unit] id
= escriba el identificador de la unidad en la hoja de trabajo: [unit] id
there is no {and}
= falta {and}
a turn of the key in {SCRIPT} is disputed
= un giro de la llave en {SCRIPT} está en disputa
decide what was done, and write it down
= decida qué se hizo y anótelo
{REPORTS} holds no report: the unit was not heard
= {REPORTS} no contiene ningún informe: no se oyó a la unidad
# job/readings_grid.py
after 10 min
= tras 10 min
battery switch open
= cortabaterías abierto
set aside
= apartado
not readable
= ilegible
at {#load_A} A
= a {load_A} A
after {#after} min
= tras {after} min
# job/reception_door.py
a number of degrees from north over east, or null
= un número de grados desde el norte hacia el este, o null
the log
= el registro
# job/sign_off_door.py
sign: an object is expected, which says who signs and with which key
= sign: se espera un objeto, que dice quién firma y con qué clave
{=name}: 64 hex digits are expected
= {name}: se esperan 64 cifras hexadecimales
# job/signed.py
altered: the signature in {entry} is not that of the key it names over this entry
= alterado: la firma de {entry} no es de la clave que nombra sobre esta anotación
altered: no sign-off any more: {why}
= alterado: ya no es una firma del trabajo: {why}
nobody has signed this job off yet
= nadie ha firmado aún este trabajo
signed off before {named}
= firmado antes de {named}
{because}; its signature was not checked here
= {because}; su firma no se comprobó aquí
sign the job off
= firme el trabajo
look at what came later and sign the job off again
= mire lo que llegó después y firme el trabajo otra vez
let the server check the signature: it does when it has the journal
= deje que el servidor compruebe la firma: lo hace cuando tiene el diario
put the journal back from a copy; backprobe verify JOBDIR names what was altered
= reponga el diario desde una copia; backprobe verify JOBDIR nombra lo que se alteró
{kind} on line {number}
= {kind} en la línea {number}
1 entry came
= 1 anotación
{len} entries came
= {len} anotaciones
# job/signing.py
nothing says how this job ends; write it into job.toml, for example:\\n  [hand_over]\\n  end = "provisional"\\n  told_driver = "what the driver was told"\\n  [[hand_over.missing]]\\n  what = "one parked night"\\n  owed_by = "who"\\n  until = 2026-04-07
= nada dice cómo termina este trabajo; escríbalo en job.toml, por ejemplo:\\n  [hand_over]\\n  end = "provisional"\\n  told_driver = "lo que se dijo al conductor"\\n  [[hand_over.missing]]\\n  what = "una noche aparcado"\\n  owed_by = "quién"\\n  until = 2026-04-07
settle it; or end the job as provisional, saying who owes what until when, in place of [hand_over] in job.toml
= resuélvalo; o termine el trabajo como provisional, diciendo quién debe qué y hasta cuándo, en lugar de [hand_over] en job.toml
put right what fails; or undo the work and end the job as abandoned
= corrija lo que falla; o deshaga el trabajo y termínelo como abandonado
this job cannot be signed as {end}
= este trabajo no se puede firmar como {end}
# job/table.py
capture: {text} is no capture known to this version
= captura: {text} no es una captura conocida en esta versión
volts, after_min, load_A: expected figures such as 12.30
= volts, after_min, load_A: se esperan valores como 12.30
# job/units.py
job {job}
= trabajo {job}
job {job}, vehicle {vehicle}
= trabajo {job}, vehículo {vehicle}
Unit {=serial}
= Unidad {serial}
this serial number is in another vehicle: {where}
= este número de serie está en otro vehículo: {where}
read the number off the unit again; if it is {=serial}, settle with the lead which vehicle has it
= lea otra vez el número en la unidad; si es {serial}, aclare con el encargado qué vehículo la tiene
# job/vehicle.py
the job sheet holds no VIN
= la hoja de trabajo no tiene VIN
write the VIN from the plate into the job sheet
= escriba el VIN de la placa en la hoja de trabajo
# job/places_door.py
The sky as predicted, {name}
= El cielo según la previsión, {name}
# job/signed.py
{end}, over {entries} entries, {with_key}
= {end}, sobre {entries} anotaciones, {with_key}
with the key {key}
= con la clave {key}
with the key {key}, which no phone here has
= con la clave {key}, que ningún teléfono tiene aquí
with {=name}'s key {key}
= con la clave de {name}, {key}
# job/vehicle.py
on the job sheet
= en la hoja de trabajo
as read on the vehicle
= según lo leído en el vehículo
on sheet and vehicle alike
= igual en la hoja y en el vehículo
# job/to_come.py
the unit's reports
= los informes de la unidad
joined to {joined_to}; what is still to be shown of it comes with the unit's reports
= unido a {joined_to}; lo que falta por mostrar de ello llega con los informes de la unidad
# job/opened.py
a log that a phone can read; this is a bus log in the form {form}: give it to the desk, which reads it
= un registro que pueda leer un teléfono; este es un registro de bus de la forma {form}: entréguelo en la oficina, que lo lee
a receiver's log (NMEA), a bus log (candump, or engine data as CSV), the unit's reports, what its lights showed, or a recording; this is none of them
= un registro de un receptor (NMEA), un registro de bus (candump, o datos del motor en CSV), los informes de la unidad, lo que mostraron sus luces, o una grabación; esto no es nada de eso
a file with something in it; this one is empty
= un archivo con algo dentro; este está vacío
{sentences} sentences
= {sentences} frases
{len} lights
= {len} luces
{len} reports
= {len} informes
{EXPECTED} (as a recording: {expected})
= {EXPECTED} (como grabación: {expected})
"""
