-- What counts: the first answer of each person to each family and version, in checks, without help,
-- unless it was found wrong since: no second answer takes its place.
-- Answers of several tablets follow each other by moment, device and sequence.
create or replace view first_answers as
select * from (
    select *, row_number() over (
        partition by person, family, version order by coalesce(moment, -1), device, sequence
    ) as nth
    from answers
    where kind = 'check' and help = 'none'
) as ranked
where nth = 1 and voided = 0;
