"""Spanish: what the server says to a phone and to the desk."""

SENTENCES = """
# files and pictures
{what}; expected: {expected}
= {what}; se espera: {expected}
a picture (JPEG, PNG, WebP), a text file or a bus log is expected
= se espera una imagen (JPEG, PNG, WebP), un archivo de texto o un registro de bus
the file
= el archivo
the picture claims to have far more pixels than are read
= la imagen dice tener muchos más píxeles de los que se leen
{expected}; this picture is damaged at its beginning ({fault})
= {expected}; esta imagen está dañada al principio ({fault})
the picture has, or claims to have, {width} × {height} pixels; at most {most} million
= la imagen tiene, o dice tener, {width} × {height} píxeles; como mucho {most} millones
there is no such file among your jobs
= no hay tal archivo entre sus trabajos
{bytes} bytes; at most {most} MB
= {bytes} bytes; como mucho {most} MB
this file was erased on purpose; it is not taken again
= este archivo se borró a propósito; no se vuelve a aceptar
the file stands at byte {stands}, not at {offset}
= el archivo está en el byte {stands}, no en el {offset}
more than {most} MB
= más de {most} MB
these bytes have another digest; send the file again
= estos bytes tienen otra huella; envíe el archivo otra vez
this file is no picture
= este archivo no es una imagen
this picture cannot be shown; expected: {expected}
= esta imagen no se puede mostrar; se espera: {expected}
{began} bytes came, {announced} were announced
= llegaron {began} bytes, se habían anunciado {announced}
Content-Range: bytes FIRST-LAST/SIZE is expected
= se espera Content-Range: bytes FIRST-LAST/SIZE
content: the file in base64 is expected
= content: se espera el archivo en base64
# deciding
no job has a unit of this number
= ningún trabajo tiene una unidad con este número
nothing is open about {slot} in this job
= no hay nada pendiente sobre {slot} en este trabajo
value: 1 to {most} letters are expected
= value: se esperan de 1 a {most} letras
value: the digest of one of the sheets is expected
= value: se espera la huella de una de las hojas
nothing of this kind is disputed in this job
= en este trabajo no hay nada así en disputa
slot and value, or about and stands, are expected
= se esperan slot y value, o about y stands
there is nothing of this number to decide on
= no hay nada con este número que decidir
this is no entry: it can only be left out
= esto no es una anotación: solo se puede dejar fuera
another entry bears this id; that one stays as it is
= otra anotación lleva este identificador; aquella queda como está
# jobs and people
after: what an answer gave as `after` is expected
= after: se espera lo que una respuesta dio como `after`
there is no such job
= no hay tal trabajo
there is a job {job} already
= ya hay un trabajo {job}
job.id: at most {most} printable letters are expected
= job.id: se esperan como mucho {most} letras imprimibles
there is no such person
= no hay tal persona
name: letters are expected
= name: se esperan letras
columns: {odd}; names out of {names} are expected
= columns: {odd}; se esperan nombres de entre {names}
there is no such feed
= no hay tal envío de informes
this job could not be judged: the server's log says why
= este trabajo no se pudo evaluar: el registro del servidor dice por qué
this job could not be judged: see the server's log
= este trabajo no se pudo evaluar: vea el registro del servidor
there is no record yet: {fault}
= aún no hay acta: {fault}
# erasing
the reason was not given in letters
= el motivo no se dio en letras
no entry of this job names that file
= ninguna anotación de este trabajo nombra ese archivo
other jobs rest on that file too; it stays
= otros trabajos se apoyan también en ese archivo; se queda
# phones
device: 1 to 64 of a-z 0-9 - _ . are expected, not a name that others bear
= device: se esperan de 1 a 64 de a-z 0-9 - _ . y no un nombre que lleven otros
this code is wrong, late or was used; let the desk show another
= este código es erróneo, caducó o ya se usó; pida otro en la oficina
whose phone this was to be is no longer here
= la persona de quien iba a ser este teléfono ya no está
another person's phone bears this device's name
= el teléfono de otra persona lleva el nombre de este aparato
this phone is not enrolled here
= este teléfono no está dado de alta aquí
no feed has this token
= ningún envío de informes tiene esta clave
there is no such phone
= no hay tal teléfono
this phone was withdrawn; what it still holds can be handed in and goes to the lead
= este teléfono fue retirado; lo que aún guarda se puede entregar y va al encargado
the phone was withdrawn; the lead decides
= el teléfono fue retirado; decide el encargado
key: an Ed25519 public key is expected, 64 hex digits
= key: se espera una clave pública Ed25519, 64 dígitos hexadecimales
proof: a signature by this key over the phone's name is expected; this one does not hold
= proof: se espera una firma de esta clave sobre el nombre del teléfono; esta no vale
another phone signs with this key
= otro teléfono firma con esta clave
this sign-off is by the key of another phone
= esta firma es de la clave de otro teléfono
{=device} is the name of another device
= {device} es el nombre de otro aparato
{count} entries in one batch; at most {most}
= {count} anotaciones en un envío; como mucho {most}
entry.{=name}: {found}; expected at most {most} printable letters
= entry.{name}: {found}; se esperan como mucho {most} letras imprimibles
entry.seq: {seq}; expected a number up to {most}
= entry.seq: {seq}; se espera un número hasta {most}
# who may
a {role} may not {deed}
= este papel no lo permite: {role}: {deed}
withdrawn phone
= teléfono retirado
hand in entries and files
= entregar anotaciones y archivos
give the key it signs with
= dar la clave con la que firma
read the jobs of the day
= leer los trabajos del día
read the jobs they were given
= leer los trabajos recibidos
read all jobs
= leer todos los trabajos
make and assign jobs, import rosters
= crear y asignar trabajos, importar listas
enrol and withdraw phones, and what pushes reports
= dar de alta y retirar teléfonos y lo que envía informes
decide on what is in quarantine
= decidir sobre lo apartado
decide between what two have said
= decidir entre lo que dos han dicho
erase files that hold a person's data
= borrar archivos con datos de una persona
push reports
= enviar informes
login or password is wrong
= el usuario o la contraseña no es correcta
a login of 1 to {most} letters is expected
= se espera un usuario de 1 a {most} letras
a password of {least} to {most} letters is expected
= se espera una contraseña de {least} a {most} letras
log in first
= entre primero con su usuario
a phone's token is needed
= hace falta la clave de un teléfono
a feed's token is needed
= hace falta la clave de un envío de informes
the header {name} with the session's token is needed
= hace falta la cabecera {name} con la clave de la sesión
calls from other sites' pages are not taken
= no se aceptan llamadas de páginas de otros sitios
this server answers to the names of its own machine only
= este servidor solo responde a los nombres de su propia máquina
at most {most} kB are taken in one call
= se aceptan como mucho {most} kB en una llamada
too many tries
= demasiados intentos
{what}; again in {wait} s
= {what}; otra vez dentro de {wait} s
there is no such call
= no hay tal llamada
this call is made in another way
= esta llamada se hace de otro modo
the server could not do this; its log says why
= el servidor no pudo hacerlo; su registro dice por qué
# units
the unit is no longer named here
= la unidad ya no se nombra aquí
the unit is not in another vehicle any more
= la unidad ya no está en otro vehículo
the lead says that the unit has left this vehicle
= el encargado dice que la unidad dejó este vehículo
decided at the desk
= decidido en la oficina
# rosters
a vehicle was given a job meanwhile, so nothing was taken: look at it again
= entretanto un vehículo recibió un trabajo, así que no se tomó nada: mírelo otra vez
jobs are made of a list of vehicles; this one is of units
= los trabajos se crean de una lista de vehículos; esta es de unidades
at most {most} MB are taken as a roster
= se aceptan como mucho {most} MB como lista
{count} cannot be taken, so nothing was: {first}
= {count} no se pueden tomar, así que no se tomó nada: {first}
{count} to be looked at first: {first}
= {count} por mirar antes: {first}
what is kept was changed by somebody else meanwhile, so nothing was taken: look at it again
= entretanto otra persona cambió lo guardado, así que no se tomó nada: mírelo otra vez
{count} jobs; at most {most} are made at once
= {count} trabajos; como mucho se crean {most} de una vez
a workbook (.xlsx) or a table as CSV
= un libro (.xlsx) o una tabla CSV
read from the sheet {sheet}
= leído de la hoja {sheet}
{formulas} cells hold formulas: what the spreadsheet last worked out was taken
= {formulas} celdas contienen fórmulas: se tomó lo último que calculó la hoja
{rounded} numbers have more than 15 digits: a spreadsheet keeps no more
= {rounded} números tienen más de 15 cifras: una hoja de cálculo no guarda más
a sheet with something in it; all are empty or hidden
= una hoja con algo; todas están vacías u ocultas
at most {most} MB; this file is larger
= como mucho {most} MB; este archivo es mayor
a workbook that unpacks to at most {most} MB in {parts} parts
= un libro que se descomprime a {most} MB como mucho, en {parts} partes
{expected}; this is another kind of ZIP file
= {expected}; este es otro tipo de archivo ZIP
a workbook whose XML declares nothing of its own
= un libro cuyo XML no declara nada propio
a file that is there; there is none of this name
= un archivo que exista; no hay ninguno con este nombre
a file that may be read; the system does not allow it
= un archivo que se pueda leer; el sistema no lo permite
{expected} that can be read; {fault}
= {expected} que se pueda leer; {fault}
{expected} that is whole; its reader says: {fault}
= {expected} que esté entero; su lector dice: {fault}
# the store
the disk is nearly full: what is left is kept for entries; files have to wait
= el disco está casi lleno: lo que queda se guarda para anotaciones; los archivos tienen que esperar
the file cannot be kept just now; the system says: {fault}
= ahora no se puede guardar el archivo; el sistema dice: {fault}
the store cannot be used just now; the database says: {fault}
= ahora no se pueden usar los datos; la base de datos dice: {fault}
"""
