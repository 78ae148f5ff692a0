-- Sure and wrong, the latest first: what would have been done on the job. Of everything, practice as well,
-- but for what was found wrong since.
select day, person, family, version, seed, sheet, kind, set_name, slip
from answers
where sure_and_wrong = 1 and voided = 0
order by day desc, person, family, device, sequence;
