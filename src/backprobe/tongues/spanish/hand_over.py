"""Spanish: the end of a job."""

SENTENCES = """
# stages/hand_over/ending.py
the driver was told
= se informó al conductor
or "nothing had been touched"
= o "nothing had been touched"
nothing shows that the unit works in the vehicle: the job has no finding of the stage 'prove'
= nada muestra que la unidad funcione en el vehículo: el trabajo no tiene ningún resultado de la etapa 'comprobación'
it is said to be proven, yet to lack: {what}
= consta como comprobado, pero también que falta: {what}
what is missing is not said: [[hand_over.missing]] with what, owed_by and until
= no se dice qué falta: [[hand_over.missing]] con what, owed_by y until
{what}: who owes it is not said (owed_by)
= {what}: no se dice quién lo debe (owed_by)
{what}: until when is not said (until)
= {what}: no se dice hasta cuándo (until)
why the job was abandoned is not said (why)
= no se dice por qué se abandonó el trabajo (why)
what was undone is not said (undone = what was taken out again, {NOTHING_TOUCHED})
= no se dice qué se deshizo (undone = lo que se quitó otra vez, {NOTHING_TOUCHED})
what was restored is not said (restored = fuses put back, functions tested again, {NOTHING_TOUCHED})
= no se dice qué se repuso (restored = fusibles repuestos, funciones probadas otra vez, {NOTHING_TOUCHED})
it is said to be abandoned, yet to lack: {what}
= consta como abandonado, pero también que falta: {what}
and {SHOWN} more findings that do not hold
= y {SHOWN} resultados más que no cumplen
How the job ends: {end}
= Cómo termina el trabajo: {end}
settle what is named, or end the job as provisional
= resuelva lo que se nombra, o termine el trabajo como provisional
put right what fails, or undo the work and end the job as abandoned; complete [hand_over]
= corrija lo que falla, o deshaga el trabajo y termínelo como abandonado; complete [hand_over]
write into [hand_over] of the job sheet what is not said
= escriba en [hand_over] de la hoja de trabajo lo que falta por decir
everything holds
= todo cumple
owed by {nobody} until {day}
= lo debe {nobody}, hasta: {day}
no day
= ningún día
# stages/hand_over/lacks.py
the unit could not be heard from where the vehicle stood
= la unidad no pudo comunicar desde donde estaba el vehículo
the unit could not find where it is under a roof
= la unidad no pudo hallar su posición bajo techo
the reports do not cover one night with the vehicle parked
= los informes no cubren una noche con el vehículo aparcado
a day
= un día
{what}: it is said to be missing, and it is there
= {what}: consta que falta, y está
end = "provisional"
= end = "provisional"
what = "{quoted}"
= what = "{quoted}"
owed_by = "who"
= owed_by = "quién"
until = "{UNTIL}"
= until = "{UNTIL}"
# stages/hand_over/ending.py
all that was owed is there: end the job as proven
= está todo lo que se debía: termine el trabajo como comprobado
take what is there by now out of what is missing
= quite de lo que falta lo que ya está
"""
