-- What was misread, most often first.
select family, version, slip, count(*) as answered
from first_answers
where slip is not null
group by family, version, slip
order by answered desc, family, version, slip;
