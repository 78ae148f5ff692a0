-- People by competencies: a family that gives evidence for several counts for each.
select
    a.person as person,
    c.competency as competency,
    count(*) as answered,
    sum(a.is_right) as right_answers,
    sum(a.sure_and_wrong) as sure_wrong
from first_answers as a
join competencies as c on a.family = c.family
group by a.person, c.competency
order by person, competency;
