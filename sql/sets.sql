-- Sets: how far each agrees with itself, over those who were asked every family of it that anybody was asked.
-- A set that nobody was asked whole is left out. kr20 is KR-20, standard_error that of a person's right answers.
with tried as (
    select *, row_number() over (
        partition by set_name, person, family, version order by coalesce(moment, -1), device, sequence
    ) as nth
    from answers
    where kind = 'check' and help = 'none'
),
asked as (
    select set_name, person, family, version, is_right from tried where nth = 1 and voided = 0
),
sizes as (
    select set_name, count(*) as families
    from (select distinct set_name, family, version from asked) as items
    group by set_name
),
persons as (
    select set_name, person, count(*) as answered, sum(is_right) as total from asked group by set_name, person
),
whole as (
    select p.set_name as set_name, p.person as person, p.total as total, s.families as families
    from persons as p
    join sizes as s on p.set_name = s.set_name
    where p.answered = s.families and s.families > 1
),
shares as (
    select a.set_name as set_name, a.family as family, a.version as version, avg(a.is_right) as share
    from asked as a
    join whole as w on a.set_name = w.set_name and a.person = w.person
    group by a.set_name, a.family, a.version
),
alone as (
    select set_name, sum(share * (1 - share)) as apart from shares group by set_name
),
spreads as (
    select set_name, max(families) as families, count(*) as people, avg(total) as mean_right, var_pop(total) as variance
    from whole
    group by set_name
),
found as (
    select
        s.set_name as set_name, s.people as people, s.families as families, s.mean_right as mean_right,
        s.variance as variance,
        case when s.variance > 1e-12
            then s.families / (s.families - 1.0e0) * (1 - a.apart / s.variance) end as kr20
    from spreads as s
    join alone as a on s.set_name = a.set_name
)
select
    set_name, people, families, mean_right, variance, kr20,
    case when kr20 is not null then sqrt(variance * greatest(1 - kr20, 0.0e0)) end as standard_error
from found
order by set_name;
