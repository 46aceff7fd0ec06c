"""Spanish: what the desk says in its own words."""

SENTENCES = """
put the entries of this job back from a copy of the store
= reponga las anotaciones de este trabajo de una copia de los datos
the job names {=meter_file} for the meter's figures; they were not handed in
= el trabajo nombra {meter_file} para los valores del medidor; no se entregaron
say in the job's sheet where the vehicle works, to a degree
= diga en la hoja del trabajo dónde trabaja el vehículo, con precisión de un grado
say in the job's sheet where the vehicle stands
= diga en la hoja del trabajo dónde está el vehículo
say in the job's sheet how the reports name this unit
= diga en la hoja del trabajo cómo nombran los informes a esta unidad
say in the job's sheet which is this unit
= diga en la hoja del trabajo cuál es esta unidad
write the serial number {=serial} into the job's sheet
= escriba el número de serie {serial} en la hoja del trabajo
put the lead's name right at the joints, or complete the unit's sheet
= corrija el nombre del cable en las uniones, o complete la hoja de la unidad
write the unit's currents, idle and transmitting, into its sheet
= escriba los consumos de la unidad, en reposo y transmitiendo, en su hoja
look again, and put the job's sheet or the walkround right
= mire otra vez, y corrija la hoja del trabajo o la inspección
stop: make sure which vehicle this is; put the job's sheet and the walkround right
= alto: asegúrese de qué vehículo es; corrija la hoja del trabajo y la inspección
"""
