-- People: what they got right, those first who were sure and wrong most often.
select
    person,
    count(*) as answered,
    sum(is_right) as right_answers,
    sum(sure_and_wrong) as sure_wrong
from first_answers
group by person
order by sure_wrong desc, person;
