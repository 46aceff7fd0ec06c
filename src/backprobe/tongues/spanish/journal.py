"""Spanish: the journal and its entries."""

SENTENCES = """
# job/canonical.py
not readable as an entry: {problem}
= no se puede leer como anotación: {problem}
one key is given twice
= una clave se da dos veces
{where}: nested deeper than {DEEPEST} levels
= {where}: anidado a más de {DEEPEST} niveles
{where}: {value} is a float; figures are text as typed ("12.30") or whole numbers
= {where}: {value} es un número con decimales; los valores son texto como se escribió ("12.30") o números enteros
{where}: {value} is too large a whole number; write it as text
= {where}: {value} es un número entero demasiado grande; escríbalo como texto
{where}: {shortened} holds half a character; UTF-8 has no such
= {where}: {shortened} contiene medio carácter; en UTF-8 no existe
{where}: a {name} is neither text, a whole number, a list nor a table
= {where}: un {name} no es ni texto, ni un número entero, ni una lista, ni una tabla
{where}: the key {shortened} is not made of ASCII letters, digits and _
= {where}: la clave {shortened} no se compone de letras ASCII, cifras y _
# job/chain.py
line {number} ({entry})
= línea {number} ({entry})
journal line {line}: {what}
= línea {line} del diario: {what}
entry number {seq} of {=device}, once there, is missing
= falta la anotación número {seq} de {device}, que estuvo ahí
{entry} is not the entry that was there before
= {entry} no es la anotación que estaba ahí antes
out of order: {entry} stands after line {number}, {entry_2}
= fuera de orden: {entry} está después de la línea {number}, {entry_2}
{missing} of {=device}, before {entry}
= {missing} de {device}, antes de {entry}
{entry} names an entry before it, as the first of its device
= {entry} nombra una anotación anterior, siendo la primera de su aparato
two different entries bear one number: {before} and {after}
= dos anotaciones distintas llevan un mismo número: {before} y {after}
{gap} of {=device}, between line {number} and {entry}
= {gap} de {device}, entre la línea {number} y {entry}
{entry} or {entry_2}
= {entry} o {entry_2}
altered after writing: {which}; line {number} keeps another digest
= alterado después de escribirse: {which}; la línea {number} guarda otra huella
missing: entry number {first}
= falta: la anotación número {first}
missing: entries number {first} to {last}
= faltan: las anotaciones número {first} a {last}
# job/changes.py
no longer in the folder
= ya no está en la carpeta
# job/entry.py
an entry of version {v} cannot be made here, only handed on; expected {VERSION}
= una anotación de la versión {v} no se puede hacer aquí, solo entregarla; se espera {VERSION}
entry {=id} ({kind}, number {seq} of {=device})
= anotación {id} ({kind}, número {seq} de {device})
not readable as an entry: expected a table in braces
= no se puede leer como anotación: se espera una tabla entre llaves
not an entry of version {VERSION}: missing or surplus: {join}
= no es una anotación de la versión {VERSION}: falta o sobra: {join}
entry.blobs: expected a list of digests
= entry.blobs: se espera una lista de huellas
{entry}: not written in the one form that entries have; it was altered after writing
= {entry}: no está escrito en la única forma que tienen las anotaciones; se alteró después de escribirse
not an entry of any version: missing: {join}
= no es una anotación de ninguna versión: falta: {join}
an entry of {len} bytes is too large: at most {MOST_BYTES}; larger things are blobs
= una anotación de {len} bytes es demasiado grande: como máximo {MOST_BYTES}; lo mayor va en archivos
a whole number from 1
= un número entero desde 1
a UUID in lower case
= un UUID en minúsculas
the job's id
= el identificador del trabajo
a word in lower case
= una palabra en minúsculas
the device's name
= el nombre del aparato
the sha256 of the device's entry before
= el sha256 de la anotación anterior del aparato
a time as 2026-05-04T09:30:00Z, or null
= una hora como 2026-05-04T09:30:00Z, o null
the id of a person's entry, or null
= el identificador de la anotación de una persona, o null
the version that wrote the entry
= la versión que escribió la anotación
a table
= una tabla
sha256 digests, each once
= huellas sha256, cada una una vez
null for the first entry of a device alone
= null solo para la primera anotación de un aparato
entry.{=name}: {shortened}; expected {expected}
= entry.{name}: {shortened}; se espera {expected}
# job/fold.py
entries of more than one job are mixed: {join}
= hay anotaciones mezcladas de más de un trabajo: {join}
two different entries bear the id {=id}: {other} and {entry}; neither was taken
= dos anotaciones distintas llevan el identificador {id}: {other} y {entry}; no se tomó ninguna
version {v} is later than {VERSION}
= la versión {v} es posterior a {VERSION}
{kind} is no kind of evidence
= {kind} no es ninguna clase de observación
# job/journal.py
and {SHOWN} more
= y {SHOWN} más
{entry} bears the id of line {number}
= {entry} lleva el identificador de la línea {number}
two different entries bear one id: {known} and {entry}; nothing was merged
= dos anotaciones distintas llevan un mismo identificador: {known} y {entry}; no se unió nada
the journal is that of job {job}, not of {job_2}
= el diario es del trabajo {job}, no de {job_2}
the journal has an entry with the id {=id} already
= el diario ya tiene una anotación con el identificador {id}
{entry} belongs to job {job}, not to {first}
= {entry} es del trabajo {job}, no de {first}
# job/roster_preview.py
another one; this is {=name}, as in row {line}
= otro; este es {name}, como en la fila {line}
is planned for
= está previsto para
is that of
= es el de
a {word} of its own; it {verb} {=name}
= {word} propio; {verb} {name}
the VIN {vin}, which is known of {=name}; or another plate and number
= el VIN {vin}, que se conoce de {name}; u otra matrícula y número
its check digit (position 9) would be {check_digit}: is every character right?
= su dígito de control (posición 9) sería {check_digit}: ¿es correcto cada carácter?
# job/rows.py
line {line}
= línea {line}
{where}: a name of {#name} characters: {=name_2}…\\nexpected: at most {#MOST_NAME}
= {where}: un nombre de {name} caracteres: {name_2}…\\nse espera: como máximo {MOST_NAME}
# job/sign_off.py
this is no sign-off
= esto no es una firma de trabajo
heads: one device is named twice
= heads: un aparato se nombra dos veces
"""
