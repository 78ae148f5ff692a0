-- Card families, those to look at first. Classical test theory, as `stepboard report` has it:
-- difficulty        share that was right
-- with_rest         correlation with the share right of the person's other families (corrected point-biserial)
-- from_95, to_95    range of it by Fisher's scale, from four people on
-- upper_less_lower  share right of the upper 27 % of people less that of the lower (discrimination)
-- goes_not          1 where who knows more is not right more often: look at rule, words and teaching
with persons as (
    select person, count(*) as asked, sum(is_right) as got
    from first_answers
    group by person
),
ranked as (
    select
        person, asked, got,
        row_number() over (order by got * 1.0e0 / asked desc, person) as place,
        count(*) over () as people
    from persons
),
placed as (
    select
        person, asked, got,
        case when place <= greatest(1.0e0, floor(0.27e0 * people + 0.5e0)) then 1 else 0 end as in_upper,
        case when place > people - greatest(1.0e0, floor(0.27e0 * people + 0.5e0)) then 1 else 0 end as in_lower
    from ranked
),
beside as (
    select
        f.family as family, f.version as version, f.is_right as x, f.sure_and_wrong as sure, f.guess as guess,
        p.in_upper as in_upper, p.in_lower as in_lower,
        case when p.asked > 1 then (p.got - f.is_right) * 1.0e0 / (p.asked - 1) end as rest
    from first_answers as f
    join placed as p on f.person = p.person
),
sums as (
    select
        family, version,
        count(*) as asked,
        sum(x) as right_answers,
        avg(x) as difficulty,
        avg(guess) as luck,
        sum(sure) as sure_wrong,
        var_pop(case when rest is not null then x end) as spread_x,
        var_pop(rest) as spread_rest,
        covar_pop(case when rest is not null then x end, rest) as shared,
        coalesce(avg(case when in_upper = 1 then x end), avg(x)) as upper_share,
        coalesce(avg(case when in_lower = 1 then x end), avg(x)) as lower_share
    from beside
    group by family, version
),
found as (
    select
        family, version, asked, right_answers, difficulty, luck, sure_wrong,
        case when spread_x > 1e-12 and spread_rest > 1e-12 then shared / sqrt(spread_x * spread_rest) end as with_rest,
        upper_share - lower_share as upper_less_lower
    from sums
)
select
    family, version, asked, right_answers, difficulty, luck, with_rest,
    case when asked > 3 and abs(with_rest) < 1 then tanh(atanh(with_rest) - 1.959963984540054e0 / sqrt(asked - 3)) end as from_95,
    case when asked > 3 and abs(with_rest) < 1 then tanh(atanh(with_rest) + 1.959963984540054e0 / sqrt(asked - 3)) end as to_95,
    upper_less_lower, sure_wrong,
    case when with_rest < 0.1e0 then 1 else 0 end as goes_not
from found
order by goes_not desc, difficulty, family, version;
