"""What the desk says otherwise than the phone: there nobody is sent to the desk, and no phone is at hand."""

SENTENCES = """
put the journal back from a copy; backprobe verify JOBDIR names what was altered
= put the entries of this job back from a copy of the store
job.toml names {=meter_file} for the meter's figures; they are not there
= the job names {meter_file} for the meter's figures; they were not handed in
write lat and lon under [place] into job.toml: where the vehicle works, to a degree
= say in the job's sheet where the vehicle works, to a degree
write where the vehicle stands into the job sheet: [place] lat, lon and accuracy_m
= say in the job's sheet where the vehicle stands
write the unit's id into the job sheet: [unit] id
= say in the job's sheet how the reports name this unit
say which with --unit-id, or as id under [unit] in job.toml
= say in the job's sheet which is this unit
write the serial number {=serial} into the job sheet
= write the serial number {serial} into the job's sheet
put the lead's name right in [[joint]] of the job sheet, or complete the unit's sheet
= put the lead's name right at the joints, or complete the unit's sheet
write the unit's currents, idle_mA and transmit_mA, into its sheet
= write the unit's currents, idle and transmitting, into its sheet
look again, and put sheet or walkround right
= look again, and put the job's sheet or the walkround right
stop: make sure which vehicle this is, and put sheet and walkround right
= stop: make sure which vehicle this is; put the job's sheet and the walkround right
"""
